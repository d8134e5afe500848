package deferent.reading.body;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Interval;
import java.util.Optional;

/**
 * One thing passing before or over another for a spell.
 *
 * @param one what is nearer to the audience, or above; of two that touch, the one that is named
 *     first
 * @param other what is behind it, or below
 * @param way whether it passes before or over the other
 * @param spell how long the two overlap so, seconds; one that runs over the cycle's end ends beyond
 *     the period
 * @param time the middle of it, seconds
 * @param by how far they are apart then along the line of sight, metres: between the lines of two
 *     cords or arms, and from a line to the body's surface, below 0 where it runs into that
 */
public record Pass(Thing one, Thing other, Way way, Interval spell, double time, double by) {
    /** From where it is seen. */
    public enum Way {
        /** As the audience sees it from far off along z. */
        BEFORE,
        /** As it is seen from above. */
        OVER
    }

    /** What passes or is passed. */
    public enum Kind {
        /** The cord, from grip to head. */
        POI,
        /** From elbow to wrist. */
        FOREARM,
        /** From shoulder to elbow. */
        UPPER_ARM,
        /** The performer's, not the poi's. */
        HEAD,
        NECK,
        TRUNK,
        LEGS;

        /** Whether it is of the body, which has no sides here. */
        public boolean body() {
            return compareTo(HEAD) >= 0;
        }

        /** Whether it is of an arm. */
        public boolean arm() {
            return this == FOREARM || this == UPPER_ARM;
        }
    }

    /**
     * A cord or a part of an arm, or of the body.
     *
     * @param side whose; none for the body's
     */
    public record Thing(Kind kind, Optional<Side> side) {
        public Thing {
            if (kind.body() == side.isPresent()) {
                throw new Refusal(
                        kind.body() ? "has a side" : "has no side",
                        "what passes",
                        "name a side of cords and arms alone");
            }
        }

        static Thing of(Side side, Kind kind) {
            return new Thing(kind, Optional.of(side));
        }

        /** The same of the other side; the body is its own. */
        public Thing mirrored() {
            return new Thing(kind, side.map(Side::other));
        }
    }

    /** Nearer to each other than this they touch, metres. */
    static final double TOUCHING = 1e-6;

    public Pass {
        Refusal.numbers("a pass", time, by);
        if (!other.kind().body() && !one.kind().body() && one.side().equals(other.side())) {
            throw new Refusal("is of one side", "what passes", "compare the two sides");
        }
    }

    /** Whether there is no depth between the two, so that neither passes the other. */
    public boolean touching() {
        return !one.kind().body() && !other.kind().body() && by < TOUCHING;
    }
}
