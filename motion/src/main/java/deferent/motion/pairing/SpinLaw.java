package deferent.motion.pairing;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

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

    /** Turns a cycle, rounded up, where it turns fastest either way; a swing counts as one. */
    default int liveliest() {
        return match(even -> Math.abs(even.turns()), Stretches::fastest, swing -> 1);
    }

    /** The same law with every angle turned by {@code angle} radians. */
    SpinLaw turned(double angle);

    /** The angle at the cycle's start, where that is a size of its own. */
    default OptionalDouble starts() {
        return match(
                even -> OptionalDouble.of(even.start()),
                stretches -> OptionalDouble.of(stretches.start()),
                swing -> OptionalDouble.empty());
    }

    /** The same law from that angle, where the start is a size of its own. */
    default SpinLaw from(double start) {
        return match(
                even -> new Turns(even.turns(), start),
                stretches -> new Stretches(start, stretches.stretches(), stretches.ease()),
                swing -> swing);
    }

    /** The law, if it is even turning. */
    default Optional<Turns> even() {
        return match(Optional::of, stretches -> Optional.empty(), swing -> Optional.empty());
    }

    /** The law, if it is turning in stretches. */
    default Optional<Stretches> inStretches() {
        return match(even -> Optional.empty(), Optional::of, swing -> Optional.empty());
    }

    /** The law, if it is a pendulum's. */
    default Optional<Swing> swing() {
        return match(even -> Optional.empty(), stretches -> Optional.empty(), Optional::of);
    }

    default boolean swings() {
        return swing().isPresent();
    }

    /** What the function for its kind makes of it. */
    <T> T match(
            Function<Turns, T> even, Function<Stretches, T> inStretches, Function<Swing, T> swing);

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
