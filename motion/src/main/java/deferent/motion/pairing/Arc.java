package deferent.motion.pairing;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * A part of a circle swept to and fro: the hand rests for an instant at either end and is fastest
 * in the middle. The cycle starts at the end of lower angle; out is the positive way.
 *
 * <p>How far the hand is from the arc's middle is the half sweep times sin u, where u is the angle
 * of the cycle in an uneven time, tan(u/2) = tan(x/2) / tan(a/2): a is the half of the cycle's
 * angle that the way out takes, and x the angle of the cycle from the middle of the way out. That
 * is
 *
 * <pre>sin u = sin a sin x / (1 − cos a cos x)</pre>
 *
 * <p>smooth to every order, the same backwards about the middle of either way, and a plain sine
 * where out and back take half a cycle each. Derivation: a fractional linear map of the circle onto
 * itself that keeps 0 and π and brings a to a quarter turn.
 *
 * @param radius in metres
 * @param middle direction of the arc's middle as seen from the circle's centre, radians
 * @param halfSweep angle from the middle to either end, radians, above 0 and at most π
 * @param out share of the cycle that the way out takes
 */
public record Arc(double radius, double middle, double halfSweep, double out) implements HandPath {
    /** The least share of the cycle that either way may take. */
    public static final double LEAST_WAY = 0.02;

    /** The size that says how uneven out and back are. */
    public static final Measure OUT =
            Measure.share("out_share", "way out", 0.5)
                    .within(LEAST_WAY, 1 - LEAST_WAY)
                    .meaning(
                            "share of the cycle that the way out along an arc takes: \"way out 1/3\"",
                            "half; of a CAP as long as the poi turns in extension");

    /** What documents and phrases know of it. */
    public static final Form FORM =
            new Form(
                    "arc",
                    "the hand goes to and fro on an arc of a circle",
                    "the lower half, hand radius one tether",
                    List.of(
                            Measure.length("radius", "hand radius", 1),
                            Measure.angle("middle", "middle", Swing.DOWN, true)
                                    .meaning(
                                            "direction of an arc's middle from its centre",
                                            "-90°, straight down"),
                            Measure.angle("half_sweep", "sweep", Math.PI / 2, true)
                                    .within(0, Math.PI)
                                    .meaning("of an arc, from the middle to either end", "90°"),
                            OUT),
                    sizes -> new Arc(sizes.get(0), sizes.get(1), sizes.get(2), sizes.get(3)));

    public Arc {
        Refusal.positive(radius, 10, "radius of an arc", "m");
        Refusal.angle(middle, "middle of an arc");
        Refusal.positive(halfSweep, Math.PI, "half sweep of an arc", "rad");
        Refusal.within(out, LEAST_WAY, 1 - LEAST_WAY, "way out along an arc", "of the cycle");
    }

    /** An arc on which out and back take half the cycle each, as a raised cosine. */
    public Arc(double radius, double middle, double halfSweep) {
        this(radius, middle, halfSweep, 0.5);
    }

    @Override
    public Course course() {
        // At a half exactly none, so that the even arc is a sine to the last bit.
        double cosine = out == 0.5 ? 0 : Math.cos(Math.PI * out);
        double sine = Math.sin(Math.PI * out);
        return phase -> {
            Jet x = Jet.line(2 * Math.PI * (phase - out / 2), 2 * Math.PI);
            Jet below = x.cos().times(-cosine).plus(1);
            Jet swing = x.sin().times(below.reciprocal()).times(halfSweep * sine);
            return PlaneJet.polar(radius, swing.plus(middle));
        };
    }

    @Override
    public List<Break> breaks() {
        return List.of();
    }

    @Override
    public Arc scaled(double factor) {
        return new Arc(radius * factor, middle, halfSweep, out);
    }

    @Override
    public Arc resized(double other) {
        return new Arc(other, middle, halfSweep, out);
    }

    @Override
    public OptionalDouble tilt() {
        return OptionalDouble.of(middle - Swing.DOWN);
    }

    @Override
    public Optional<Arc> arc() {
        return Optional.of(this);
    }

    @Override
    public String noun() {
        return FORM.key();
    }

    @Override
    public String goes() {
        return "comes and goes along an arc";
    }

    @Override
    public <T> T match(
            Function<Form.Sized, T> sized, Function<Series, T> summed, Function<Drawn, T> drawn) {
        return sized.apply(FORM.of(radius, middle, halfSweep, out));
    }

    @Override
    public Arc turned(double angle) {
        return new Arc(radius, middle + angle, halfSweep, out);
    }
}
