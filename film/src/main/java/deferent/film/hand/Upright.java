package deferent.film.hand;

import deferent.motion.pairing.Refusal;

/**
 * How a film's picture is turned against gravity.
 *
 * @param roll radians by which what is upright is turned counter-clockwise in the picture
 * @param error standard deviation of that, radians
 * @param how how it is known
 */
public record Upright(double roll, double error, How how) {
    /** How it is known which way up is. */
    public enum How {
        /** Somebody said it. */
        GIVEN,
        /** The cord of a hand that keeps still shows it. */
        STILL_HAND,
        /** Nothing shows it; the camera is taken to stand level. */
        ASSUMED
    }

    /** As sure as two clicks a few pixels off can be (our choice). */
    private static final double CLICKS = Math.toRadians(0.3);

    public Upright {
        Refusal.within(roll, -Math.PI, Math.PI, "a camera's roll", "rad");
        Refusal.within(error, 0, Math.PI, "a camera's roll's doubt", "rad");
    }

    /** A camera that is taken to stand level. */
    public static final Upright ASSUMED = new Upright(0, Doubt.USUAL.upright(), How.ASSUMED);

    /** As somebody said it, radians. */
    public static Upright given(double roll) {
        return new Upright(roll, CLICKS, How.GIVEN);
    }
}
