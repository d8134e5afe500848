package deferent.record;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Lexicon;
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
 * @param extras what other programs keep in it
 */
public record MotionDocument(
        String name,
        List<String> alsoSaid,
        String note,
        Optional<String> author,
        List<String> tags,
        Motion motion,
        Tether tether,
        Extras extras)
        implements Document {
    public MotionDocument {
        Wording.line(name, Wording.NAME, "name");
        alsoSaid = Wording.tags(alsoSaid);
        Wording.note(note);
        author.ifPresent(a -> Wording.line(a, Wording.NAME, "author"));
        tags = Wording.tags(tags);
        // Refuses names that no phrase could say.
        inTo(Lexicon.EMPTY, name, alsoSaid, motion, tether);
    }

    /** The lexicon with this motion under all its names. */
    public Lexicon in(Lexicon lexicon) {
        return inTo(lexicon, name, alsoSaid, motion, tether);
    }

    private static Lexicon inTo(
            Lexicon lexicon, String name, List<String> alsoSaid, Motion motion, Tether tether) {
        Lexicon more = lexicon.with(name, motion, tether);
        for (String other : alsoSaid) {
            more = more.with(other, motion, tether);
        }
        return more;
    }

    @Override
    public String kind() {
        return "motion";
    }

    public static MotionDocument of(String name, Motion motion, Tether tether) {
        return new MotionDocument(
                name, List.of(), "", Optional.empty(), List.of(), motion, tether, Extras.NONE);
    }
}
