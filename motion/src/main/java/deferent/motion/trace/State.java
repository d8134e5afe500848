package deferent.motion.trace;

import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** Where a point is and how it moves: metres and seconds, in the frame. */
public record State(Vector3D position, Vector3D velocity, Vector3D acceleration, Vector3D jerk) {
    State shifted(Vector3D by) {
        return new State(position.add(by), velocity, acceleration, jerk);
    }
}
