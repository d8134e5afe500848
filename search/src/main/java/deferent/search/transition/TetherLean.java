package deferent.search.transition;

import deferent.motion.pairing.Jet;

/**
 * Which way a tether points, by its angle in a plane and by the sine of how far it leans out of it:
 * what a passage blends. A cord leaves the plane of its motion where gravity or the hand pulls it
 * across, as in a leaned plane or in a pattern that passes across the body.
 */
final class TetherLean {
    private TetherLean() {}

    /**
     * The angle's derivatives from those of the tether's shares along u and along v, of any length.
     *
     * @param value of the angle, radians, its whole turns counted
     */
    static Jet angle(double value, Jet a, Jet b) {
        Jet square = a.times(a).plus(b.times(b)).reciprocal();
        // θ′ = (a b′ − b a′)/(a² + b²), and its own derivatives by the rules.
        Jet rate = a.times(derived(b)).minus(b.times(derived(a))).times(square);
        return new Jet(value, rate.value(), rate.d1(), rate.d2());
    }

    // The third derivative of what is derived is not needed by anybody.
    private static Jet derived(Jet of) {
        return new Jet(of.d1(), of.d2(), of.d3(), 0);
    }

    /** How much of a unit tether that leans so is left in the plane. */
    static Jet inPlane(Jet lean) {
        Jet square = Jet.constant(1).minus(lean.times(lean));
        double root = Math.sqrt(square.value());
        return square.into(
                root,
                0.5 / root,
                -0.25 / (root * square.value()),
                0.375 / (root * square.value() * square.value()));
    }
}
