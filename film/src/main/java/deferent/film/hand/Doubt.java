package deferent.film.hand;

import deferent.motion.pairing.Refusal;

/**
 * How sure metres and upright are.
 *
 * @param scale standard deviation of the scale, as a share: how well a pixel's metres are known,
 *     and how far a head's plane lies before or behind the one they were measured in
 * @param upright standard deviation of what is taken for upright, radians
 * @param place standard deviation of where the whole lies, on either axis, metres
 */
public record Doubt(double scale, double upright, double place) {
    /**
     * A phone put up against something four metres away, the scale from something as long as a
     * tether in the spinner's own plane, heads a hand's breadth before or behind it (our choice).
     */
    public static final Doubt USUAL = new Doubt(0.013, Math.toRadians(0.8), 0.005);

    public Doubt {
        Refusal.within(scale, 0, 1, "a scale's doubt", "of it");
        Refusal.within(upright, 0, Math.PI, "doubt about upright", "rad");
        Refusal.within(place, 0, 10, "doubt about the place", "m");
    }
}
