package deferent.motion.pairing;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * A part of a circle swept to and fro as a raised cosine: the hand rests at either end and is
 * fastest in the middle. The cycle starts at the end of lower angle; out is the positive way.
 *
 * @param radius in metres
 * @param middle direction of the arc's middle as seen from the circle's centre, radians
 * @param halfSweep angle from the middle to either end, radians, above 0 and at most π
 */
public record Arc(double radius, double middle, double halfSweep) implements HandPath {
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
                                    .meaning("of an arc, from the middle to either end", "90°")),
                    sizes -> new Arc(sizes.get(0), sizes.get(1), sizes.get(2)));

    public Arc {
        Refusal.positive(radius, 10, "radius of an arc", "m");
        Refusal.angle(middle, "middle of an arc");
        Refusal.positive(halfSweep, Math.PI, "half sweep of an arc", "rad");
    }

    @Override
    public Course course() {
        return phase -> {
            Jet swing = Jet.line(2 * Math.PI * phase, 2 * Math.PI).cos().times(-halfSweep);
            return PlaneJet.polar(radius, swing.plus(middle));
        };
    }

    @Override
    public List<Break> breaks() {
        return List.of();
    }

    @Override
    public Arc scaled(double factor) {
        return new Arc(radius * factor, middle, halfSweep);
    }

    @Override
    public Arc resized(double other) {
        return new Arc(other, middle, halfSweep);
    }

    @Override
    public OptionalDouble tilt() {
        return OptionalDouble.of(middle - Swing.DOWN);
    }

    @Override
    public OptionalDouble swept() {
        return OptionalDouble.of(halfSweep);
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
        return sized.apply(FORM.of(radius, middle, halfSweep));
    }

    @Override
    public Arc turned(double angle) {
        return new Arc(radius, middle + angle, halfSweep);
    }
}
