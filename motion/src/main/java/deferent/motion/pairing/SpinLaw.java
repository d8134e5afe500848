package deferent.motion.pairing;

import java.util.List;

/**
 * Which way the tether points over one cycle: an angle in the motion's plane, from the hand to the
 * head, radians from u toward v.
 */
public sealed interface SpinLaw permits Turns, Stretches, Swing {
    Course course();

    /** Where the angle is not smooth, by phase. */
    List<Break> breaks();

    /** Whole turns over one cycle, the positive way; 0 when the poi comes back the way it went. */
    int turns();

    /** The same law with every angle turned by {@code angle} radians. */
    SpinLaw turned(double angle);

    /**
     * An angle as a function of phase; over a cycle it grows by 2π times {@link SpinLaw#turns()}.
     */
    interface Course {
        /** Angle and derivatives in phase; at a break, those just after it. */
        Jet at(double phase);

        /** The angle alone, for sampling. */
        default double angle(double phase) {
            return at(phase).value();
        }

        /** As {@link #at}, but at a break those just before it. */
        default Jet before(double phase) {
            return at(phase);
        }
    }
}
