package deferent.motion.pairing;

import java.util.List;

/**
 * A part of a circle swept to and fro as a raised cosine: the hand rests at either end and is
 * fastest in the middle. The cycle starts at the end of lower angle; out is the positive way.
 *
 * @param radius in metres
 * @param middle direction of the arc's middle as seen from the circle's centre, radians
 * @param halfSweep angle from the middle to either end, radians, above 0 and at most π
 */
public record Arc(double radius, double middle, double halfSweep) implements HandPath {
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
    public Arc turned(double angle) {
        return new Arc(radius, middle + angle, halfSweep);
    }
}
