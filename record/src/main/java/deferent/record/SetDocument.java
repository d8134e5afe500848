package deferent.record;

import deferent.motion.pairing.Refusal;
import deferent.search.transition.Grade;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * Patterns in order, each for so many counts: a set as kept on the shelf. What leads from one to
 * the next is not kept; it is worked out anew each time, from the patterns as they are then.
 *
 * @param name how the user calls it
 * @param note free text, may be empty
 * @param author whose it is, or that it is invented
 * @param tags words to find it by
 * @param steps in order; none in a set that is only begun
 * @param hardest the hardest transition that it takes; of a file that does not say, the usual
 * @param song to which it is spun; none where there is no music
 * @param extras what other programs keep in it
 */
public record SetDocument(
        String name,
        String note,
        Optional<String> author,
        List<String> tags,
        List<SetStep> steps,
        Grade hardest,
        Optional<SetSong> song,
        Extras extras)
        implements Document {
    /** No set is longer: more than an hour of four counts a step at the usual tempo. */
    public static final int MOST_STEPS = 1000;

    public SetDocument {
        Wording.line(name, Wording.NAME, "name");
        Wording.note(note);
        author.ifPresent(a -> Wording.line(a, Wording.NAME, "author"));
        tags = Wording.tags(tags);
        steps = List.copyOf(steps);
        if (steps.size() > MOST_STEPS) {
            throw new Refusal(
                    "has " + steps.size() + " steps", "a set", "give at most " + MOST_STEPS);
        }
    }

    @Override
    public String kind() {
        return "set";
    }

    public static SetDocument of(String name, List<SetStep> steps) {
        return new SetDocument(
                name,
                "",
                Optional.empty(),
                List.of(),
                steps,
                Grade.USUAL,
                Optional.empty(),
                Extras.NONE);
    }

    /** In a word or two: "a set of 6 patterns". */
    public String told() {
        return switch (steps.size()) {
            case 0 -> "a set with no patterns yet";
            case 1 -> "a set of one pattern";
            default -> "a set of " + steps.size() + " patterns";
        };
    }

    public SetDocument withName(String other) {
        return new SetDocument(other, note, author, tags, steps, hardest, song, extras);
    }

    public SetDocument withHardest(Grade other) {
        return new SetDocument(name, note, author, tags, steps, other, song, extras);
    }

    /** The same to a song, or to none. */
    public SetDocument withSong(Optional<SetSong> other) {
        return new SetDocument(name, note, author, tags, steps, hardest, other, extras);
    }

    /** The same with other steps. */
    public SetDocument withSteps(List<SetStep> other) {
        return new SetDocument(name, note, author, tags, other, hardest, song, extras);
    }

    /** The same with each of its steps as {@code change} makes it. */
    SetDocument withEach(UnaryOperator<SetStep> change) {
        return new SetDocument(
                name,
                note,
                author,
                tags,
                steps.stream().map(change).toList(),
                hardest,
                song,
                extras);
    }
}
