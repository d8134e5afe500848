package deferent.record;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Tether;
import java.util.List;
import java.util.Optional;

/**
 * A motion under a name of the user's own, which may then be said in phrases.
 *
 * @param name the word for it
 * @param alsoSaid second names that mean the same motion
 * @param note free text
 * @param author whose it is
 * @param tags words to find it by
 * @param motion what hand and poi do over a cycle
 * @param tether the tether its sizes were chosen for; another tether scales them
 */
public record MotionDocument(
        String name,
        List<String> alsoSaid,
        String note,
        Optional<String> author,
        List<String> tags,
        Motion motion,
        Tether tether)
        implements Document {
    public MotionDocument {
        Wording.line(name, Wording.NAME, "name");
        alsoSaid = Wording.tags(alsoSaid);
        Wording.note(note);
        author.ifPresent(a -> Wording.line(a, Wording.NAME, "author"));
        tags = Wording.tags(tags);
        if (motion.riding()) {
            throw new Refusal(
                    "rides another poi's head",
                    "motion \"" + name + "\"",
                    "give it a hand path of its own; say \"riding\" in the phrase");
        }
    }

    public static MotionDocument of(String name, Motion motion, Tether tether) {
        return new MotionDocument(name, List.of(), "", Optional.empty(), List.of(), motion, tether);
    }
}
