package deferent.motion.pairing;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
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

    /** The same path at that radius, metres. */
    default HandPath resized(double radius) {
        return scaled(radius / radius());
    }

    /** Whether the hand stays where it is. */
    default boolean still() {
        return radius() == 0 && !rides();
    }

    /** Whether it is the path of the other hand's head. */
    default boolean rides() {
        return false;
    }

    /** How far it is turned from the way its word draws it; empty where that cannot be told. */
    default OptionalDouble tilt() {
        return OptionalDouble.empty();
    }

    /** The one circle it goes round, however often. */
    default Optional<Series.Term> circle() {
        return Optional.empty();
    }

    /** The circles that add up to it, where a few do so exactly. */
    default Optional<List<Series.Term>> asTerms() {
        return Optional.empty();
    }

    /** The arc of a circle that it comes and goes along. */
    default Optional<Arc> arc() {
        return Optional.empty();
    }

    /** What it is: "square", "ellipse". */
    String noun();

    /** What the hand does: "goes round a square". */
    String goes();

    /** Which way it goes round as it stands, 1 from u toward v, −1 the other; 0 if it does not. */
    default int sense() {
        return 0;
    }

    /** The forms that few sizes make; a path of another form is a sum of circles or a drawing. */
    static List<Form> forms() {
        return List.of(Arc.FORM, Polygon.FORM, Riding.FORM);
    }

    /** What the function for its form makes of it. */
    <T> T match(
            Function<Form.Sized, T> sized, Function<Series, T> summed, Function<Drawn, T> drawn);

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
