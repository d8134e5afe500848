package deferent.record;

import deferent.motion.pairing.Refusal;
import deferent.search.set.BodyTurn;
import deferent.search.set.ToSong;
import deferent.search.set.Wanted;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * One step of a set as it is kept: which pattern, and for how many counts.
 *
 * <p>A count is a poi beat ({@link Wanted}).
 *
 * @param what the pattern, by its place on the shelf or written out
 * @param counts how many counts it is to be kept, 1 to {@link #MOST_COUNTS}
 * @param turn of the body on one of its counts, with which all that follows is turned; empty for
 *     none
 * @param beatsACycle how many beats of the set's song a cycle lasts, as the pattern's tempo counts
 *     cycles, 1 to {@link #MOST_BEATS}; unsaid they are chosen, and without a song they mean
 *     nothing
 */
public record SetStep(What what, int counts, Optional<BodyTurn> turn, OptionalInt beatsACycle) {
    public static final int MOST_BEATS = ToSong.MOST_BEATS;

    /** No step is kept longer. */
    public static final int MOST_COUNTS = Wanted.MOST_COUNTS;

    /** Which pattern. */
    public sealed interface What permits OfShelf, Held {
        /** What the pattern was called when the step was kept. */
        String name();
    }

    /**
     * A pattern of the shelf.
     *
     * @param id its file's name without ".json"
     * @param name what it was called, by which it is found where its file has another name now
     */
    public record OfShelf(String id, String name) implements What {
        public OfShelf {
            Wording.line(id, Wording.NAME, "place on the shelf");
            Wording.line(name, Wording.NAME, "name");
        }
    }

    /** A pattern that the set itself holds. */
    public record Held(PatternDocument pattern) implements What {
        @Override
        public String name() {
            return pattern.name();
        }
    }

    public SetStep {
        if (counts < 1 || counts > MOST_COUNTS) {
            throw new Refusal(
                    "is kept for " + counts + " counts",
                    "\"" + what.name() + "\"",
                    "give 1 to " + MOST_COUNTS);
        }
        turn.ifPresent(t -> t.within(counts));
        beatsACycle.ifPresent(
                beats ->
                        Refusal.within(
                                beats,
                                1,
                                MOST_BEATS,
                                "a cycle of \"" + what.name() + "\"",
                                "beats"));
    }

    /** With the beats a cycle chosen. */
    public SetStep(What what, int counts, Optional<BodyTurn> turn) {
        this(what, counts, turn, OptionalInt.empty());
    }

    /** Without a turn of the body. */
    public SetStep(What what, int counts) {
        this(what, counts, Optional.empty());
    }

    /** A pattern on the shelf, for so many counts. */
    public static SetStep of(Kept kept, int counts) {
        return new SetStep(new OfShelf(kept.id(), kept.document().name()), counts);
    }

    /** A pattern written out, for so many counts. */
    public static SetStep of(PatternDocument pattern, int counts) {
        return new SetStep(new Held(pattern), counts);
    }

    SetStep with(What other) {
        return new SetStep(other, counts, turn, beatsACycle);
    }

    /** The same with a turn of the body. */
    public SetStep with(BodyTurn other) {
        return new SetStep(what, counts, Optional.of(other), beatsACycle);
    }

    /** The same with so many beats a cycle, or with those that are chosen. */
    public SetStep with(OptionalInt other) {
        return new SetStep(what, counts, turn, other);
    }
}
