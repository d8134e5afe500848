package deferent.motion.trace;

import deferent.motion.pairing.Jet;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A course turned about an upright axis as a body turns: a right-handed turn about y by the
 * heading, times a sign, with exact derivatives.
 *
 * @param axis what it turns about
 * @param sign 1 to go with the body, −1 to see it as the turning body does
 */
record Turned(Course course, Heading heading, BodyAxis axis, int sign) implements Course {
    @Override
    public State at(double time) {
        return turned(course.at(time), time);
    }

    @Override
    public State before(double time) {
        return turned(course.before(time), time);
    }

    @Override
    public Vector3D position(double time) {
        return axis.turned(course.position(time), sign * heading.at(time).value());
    }

    private State turned(State state, double time) {
        Jet angle = heading.at(time).times(sign);
        Jet c = angle.cos();
        Jet s = angle.sin();
        Vector3D v = state.velocity();
        Vector3D a = state.acceleration();
        Vector3D j = state.jerk();
        Vector3D p = state.position();
        Jet across = new Jet(p.getX(), v.getX(), a.getX(), j.getX());
        Jet ahead = new Jet(p.getZ() + axis.behind(), v.getZ(), a.getZ(), j.getZ());
        Jet x = c.times(across).plus(s.times(ahead));
        Jet z = c.times(ahead).minus(s.times(across));
        return new State(
                new Vector3D(x.value(), p.getY(), z.value() - axis.behind()),
                new Vector3D(x.d1(), v.getY(), z.d1()),
                new Vector3D(x.d2(), a.getY(), z.d2()),
                new Vector3D(x.d3(), j.getY(), z.d3()));
    }
}
