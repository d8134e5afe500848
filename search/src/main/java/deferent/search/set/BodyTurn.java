package deferent.search.set;

import deferent.motion.pairing.Refusal;

/**
 * A turn of the performer's body in a set, on a count of a pattern: the pattern turns with the body
 * and stays turned until it is turned back (common practice, no source).
 *
 * @param quarters quarter turns to the left, 1 or 2; below 0 to the right
 * @param count on which count of its pattern it begins, from 1
 */
public record BodyTurn(int quarters, int count) {
    public BodyTurn {
        if (quarters == 0 || Math.abs(quarters) > 2) {
            throw new Refusal(
                    "is of " + quarters + " quarters",
                    "a body turn",
                    "give 1 or 2 to the left, or -1 or -2 to the right");
        }
        if (count < 1) {
            throw new Refusal("is on count " + count, "a body turn", "give a count from 1 on");
        }
    }

    /** Refused where its pattern is not kept so long. */
    public void within(int counts) {
        if (count > counts) {
            throw new Refusal(
                    "is on count " + count + " of " + counts,
                    "a body turn",
                    "give a count from 1 to " + counts + ", or keep the pattern longer");
        }
    }
}
