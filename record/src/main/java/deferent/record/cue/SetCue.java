package deferent.record.cue;

import java.util.List;
import java.util.Optional;

/**
 * One cue of a set: what is called, and when.
 *
 * @param kind what comes
 * @param plan seconds of the set's plan
 * @param time seconds from the start of the sound; of a set without a song, of the plan
 * @param place in the song's bars, where there is a song
 * @param step the number of the pattern that it belongs to, from 0
 * @param call what is called, short: "Long arms, 8 counts"
 * @param pattern what the pattern is called that it belongs to; of a transition, that it leads to
 * @param counts for how many counts a pattern is kept; 0 of what is no pattern
 * @param more sentences on it
 * @param cautions what can hurt in it, or what is wrong with it
 */
public record SetCue(
        Kind kind,
        double plan,
        double time,
        Optional<Place> place,
        int step,
        String call,
        String pattern,
        double counts,
        List<String> more,
        List<String> cautions) {
    /** What comes. */
    public enum Kind {
        PATTERN("pattern"),
        TRANSITION("transition"),
        TURN("body turn"),
        END("end");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** "body turn". */
        public String words() {
            return words;
        }
    }

    /**
     * A place in a song's bars.
     *
     * @param bar from 1; beats before the first whole bar stand in bar 0
     * @param beat from 1; between two beats a fraction
     */
    public record Place(int bar, double beat) {}

    public SetCue {
        more = List.copyOf(more);
        cautions = List.copyOf(cautions);
    }
}
