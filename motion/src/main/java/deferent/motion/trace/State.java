package deferent.motion.trace;

import deferent.motion.pairing.Jet;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** Where a point is and how it moves: metres and seconds, in the frame. */
public record State(Vector3D position, Vector3D velocity, Vector3D acceleration, Vector3D jerk) {
    static State of(Jet x, Jet y, Jet z) {
        return new State(
                new Vector3D(x.value(), y.value(), z.value()),
                new Vector3D(x.d1(), y.d1(), z.d1()),
                new Vector3D(x.d2(), y.d2(), z.d2()),
                new Vector3D(x.d3(), y.d3(), z.d3()));
    }

    State shifted(Vector3D by) {
        return new State(position.add(by), velocity, acceleration, jerk);
    }
}
