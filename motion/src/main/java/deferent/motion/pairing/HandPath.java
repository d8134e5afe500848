package deferent.motion.pairing;

import java.util.List;
import org.hipparchus.geometry.euclidean.twod.Vector2D;

/**
 * Where a hand goes over one cycle, in its motion's plane about the motion's centre. Values only;
 * {@link #course()} works out what is costly once and then answers for any phase.
 */
public sealed interface HandPath permits Series, Arc, Polygon, Drawn, Riding {

    /** The path as a function of phase. */
    Course course();

    /** Where the path is not smooth, by phase; empty for a smooth one. */
    List<Break> breaks();

    /** Greatest distance of the hand from the path's centre, in metres; 0 for a still hand. */
    double radius();

    /** The same path, {@code factor} (above 0) times the size. */
    HandPath scaled(double factor);

    /** The same path turned by {@code angle} radians about its centre, from u toward v. */
    HandPath turned(double angle);

    /** Whether the hand stays where it is. */
    default boolean still() {
        return radius() == 0 && !(this instanceof Riding);
    }

    /** A point of the plane as a function of phase, periodic with period 1. */
    interface Course {
        /** Place and derivatives in phase; at a break, those just after it. */
        PlaneJet at(double phase);

        /** The place alone, for sampling. */
        default Vector2D place(double phase) {
            PlaneJet here = at(phase);
            return new Vector2D(here.u().value(), here.v().value());
        }

        /** As {@link #at}, but at a break those just before it. */
        default PlaneJet before(double phase) {
            return at(phase);
        }
    }
}
