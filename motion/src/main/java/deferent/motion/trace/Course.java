package deferent.motion.trace;

import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** One point of a trace, a hand or a head, as a function of time in seconds. */
public interface Course {
    /** State at a time; at a break, the one just after it. */
    State at(double time);

    /** Where the point is, in the frame, metres: the same as {@link #at}'s, and cheaper. */
    default Vector3D position(double time) {
        return at(time).position();
    }

    /** As {@link #at}, but at a break the one just before it. */
    default State before(double time) {
        return at(time);
    }
}
