package deferent.reading.danger;

import deferent.motion.pairing.Refusal;

/**
 * Where a level ends: just there it is gone.
 *
 * @param kind what has to change
 * @param value to which tempo, hand cycles a minute; by how many metres forward or apart; to which
 *     share of tethers and hand paths; 0 where nothing of the kind ends it, or nothing in reach
 */
public record DangerEnd(Kind kind, double value) {
    /** What has to change. */
    public enum Kind {
        /** The tempo, to no more than so many hand cycles a minute. */
        TEMPO,
        /** All of it, by so many metres toward the audience. */
        FORWARD,
        /** The side nearer to the audience, by so many metres further toward it. */
        APART,
        /** Tethers and hand paths, to that share of what they are. */
        SIZE,
        /** A place further forward or apart that the performer's arms do not get to. */
        BEYOND_REACH,
        /** No tempo, place or size of this kind that a performer can take. */
        NONE
    }

    /** Nothing that is looked for ends it. */
    public static final DangerEnd NONE = new DangerEnd(Kind.NONE, 0);

    /** What would end it is further away than the arms are long. */
    public static final DangerEnd BEYOND_REACH = new DangerEnd(Kind.BEYOND_REACH, 0);

    public DangerEnd {
        Refusal.numbers("the end of a danger", value);
    }
}
