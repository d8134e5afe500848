package deferent.film.hand;

import deferent.motion.pairing.Refusal;

/**
 * How sure metres and upright are.
 *
 * @param scale standard deviation of the scale, as a share: how well a pixel's metres are known,
 *     and how far the heads' planes lie before or behind the one they were measured in
 * @param upright standard deviation of what is taken for upright, radians
 */
public record Doubt(double scale, double upright) {
    /**
     * A phone put up against something, the scale from something as long as a tether in the
     * spinner's own plane, planes a hand's breadth apart at four metres (our choice).
     */
    public static final Doubt USUAL = new Doubt(0.012, Math.toRadians(0.8));

    public Doubt {
        Refusal.within(scale, 0, 1, "a scale's doubt", "of it");
        Refusal.within(upright, 0, Math.PI, "doubt about upright", "rad");
    }
}
