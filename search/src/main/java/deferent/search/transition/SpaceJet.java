package deferent.search.transition;

import deferent.motion.pairing.Jet;
import deferent.motion.trace.State;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** A point of space with its first three derivatives in time. */
record SpaceJet(Jet x, Jet y, Jet z) {
    static SpaceJet of(State s) {
        return new SpaceJet(
                new Jet(
                        s.position().getX(),
                        s.velocity().getX(),
                        s.acceleration().getX(),
                        s.jerk().getX()),
                new Jet(
                        s.position().getY(),
                        s.velocity().getY(),
                        s.acceleration().getY(),
                        s.jerk().getY()),
                new Jet(
                        s.position().getZ(),
                        s.velocity().getZ(),
                        s.acceleration().getZ(),
                        s.jerk().getZ()));
    }

    /** A vector that keeps its direction. */
    static SpaceJet along(Vector3D direction, Jet size) {
        return new SpaceJet(
                size.times(direction.getX()),
                size.times(direction.getY()),
                size.times(direction.getZ()));
    }

    /** Its share along a unit vector. */
    public Jet along(Vector3D direction) {
        return x.times(direction.getX())
                .plus(y.times(direction.getY()))
                .plus(z.times(direction.getZ()));
    }

    public SpaceJet cross(SpaceJet o) {
        return new SpaceJet(
                y.times(o.z).minus(z.times(o.y)),
                z.times(o.x).minus(x.times(o.z)),
                x.times(o.y).minus(y.times(o.x)));
    }

    public State state() {
        return new State(
                new Vector3D(x.value(), y.value(), z.value()),
                new Vector3D(x.d1(), y.d1(), z.d1()),
                new Vector3D(x.d2(), y.d2(), z.d2()),
                new Vector3D(x.d3(), y.d3(), z.d3()));
    }

    public SpaceJet plus(SpaceJet o) {
        return new SpaceJet(x.plus(o.x), y.plus(o.y), z.plus(o.z));
    }

    public SpaceJet minus(SpaceJet o) {
        return new SpaceJet(x.minus(o.x), y.minus(o.y), z.minus(o.z));
    }

    public SpaceJet times(Jet k) {
        return new SpaceJet(x.times(k), y.times(k), z.times(k));
    }

    Jet length() {
        Jet square = x.times(x).plus(y.times(y)).plus(z.times(z));
        double r = Math.sqrt(square.value());
        return square.into(r, 0.5 / r, -0.25 / (r * r * r), 0.375 / (r * r * r * r * r));
    }

    /** The same direction, {@code length} long. */
    SpaceJet made(Jet length) {
        Jet own = length();
        double r = own.value();
        Jet inverse = own.into(1 / r, -1 / (r * r), 2 / (r * r * r), -6 / (r * r * r * r));
        return times(length.times(inverse));
    }
}
