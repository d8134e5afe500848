package deferent.search.transition;

import deferent.motion.pairing.HandLimits;
import deferent.motion.pairing.Part;
import deferent.motion.shared.Refused;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import deferent.reading.closest.ClosestFigure;
import deferent.reading.tether.Cord;
import deferent.reading.tether.KeepTheFigure;
import deferent.reading.tether.Kit;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * One side of a pattern as a practised hand draws it on a cord: with the figure kept where that
 * asks no more of the hand than {@link #LIMITS}, else the closest figure that such a hand draws
 * ({@link ClosestFigure}); a pendulum that nobody drives as it swings. Cords weigh nothing here and
 * the air is left out.
 *
 * @param hand over all times
 * @param head over all times, on its cord
 * @param off how far the head is from its ideal at most, metres; infinite where no such hand draws
 *     it
 */
record DrawnSide(Course hand, Course head, double off) {
    /** Cord and air that passages count with. */
    static final Kit KIT = Kit.USUAL.withAir(false).withCordMass(0);

    /**
     * What a hand is held to, turn after turn: the usual speed and acceleration, a jerk of twice
     * what a harmonic swing with both has (60²/5 = 720 m/s³, our choice), and the pull that every
     * passage has.
     */
    static final HandLimits LIMITS =
            new HandLimits(
                    HandLimits.USUAL.speed(),
                    HandLimits.USUAL.acceleration(),
                    OptionalDouble.of(1500),
                    Grade.EASY.leastPull(),
                    OptionalDouble.empty());

    /** A head farther off its ideal draws another figure, metres (our choice). */
    static final double NEAR_ENOUGH = 0.05;

    private static final int LOOKS = 180;

    /** A poi beat; a cell's polynomial is then right to 1e-9 m. */
    private static final int KNOTS = 128;

    static DrawnSide of(Trace ideal, Side side) {
        Part part = ideal.pairing().part(side);
        if (part.motion().undriven()) {
            return tabled(ideal, side, ideal.hand(side), ideal.head(side), 0);
        }
        try {
            KeepTheFigure keep = KeepTheFigure.of(ideal, side, KIT);
            if (keep.possible() && keep.getsRound() && easy(keep, ideal)) {
                return tabled(ideal, side, keep.hand(), keep.head(), 0);
            }
        } catch (Refused impossible) {
            // The closest figure may be near all the same.
        }
        try {
            Cord cord = Cord.of(ideal, side, KIT);
            ClosestFigure closest = ClosestFigure.of(ideal, side, cord, LIMITS);
            double off = closest.met() ? closest.figure().greatest() : Double.POSITIVE_INFINITY;
            return tabled(ideal, side, closest.hand(), closest.head(), off);
        } catch (Refused impossible) {
            return new DrawnSide(ideal.hand(side), ideal.head(side), Double.POSITIVE_INFINITY);
        }
    }

    private static DrawnSide tabled(Trace ideal, Side side, Course hand, Course head, double off) {
        Trace own = ideal.ownCycle(side);
        double start = own.interval().start();
        double period = own.period();
        int cells = KNOTS * Math.max(1, ideal.pairing().part(side).motion().spin().liveliest());
        return new DrawnSide(
                TabledCourse.of(hand, start, period, cells),
                TabledCourse.of(head, start, period, cells),
                off);
    }

    private static boolean easy(KeepTheFigure keep, Trace ideal) {
        if (keep.handSpeed() > LIMITS.speed() || keep.leastPullWeights() < LIMITS.leastPull()) {
            return false;
        }
        double step = ideal.period() / LOOKS;
        double start = ideal.interval().start();
        for (int i = 0; i < LOOKS; i++) {
            State hand = keep.hand().at(start + i * step);
            if (hand.acceleration().getNorm() > LIMITS.acceleration()
                    || hand.jerk().getNorm() > LIMITS.jerk().orElseThrow()) {
                return false;
            }
        }
        return true;
    }

    boolean near() {
        return off <= NEAR_ENOUGH;
    }

    /** The same on a clock that is so much ahead, seconds. */
    DrawnSide ahead(double seconds) {
        return seconds == 0
                ? this
                : new DrawnSide(shifted(hand, seconds), shifted(head, seconds), off);
    }

    static Course shifted(Course course, double by) {
        return new Course() {
            @Override
            public State at(double time) {
                return course.at(time + by);
            }

            @Override
            public Vector3D position(double time) {
                return course.position(time + by);
            }

            @Override
            public State before(double time) {
                return course.before(time + by);
            }
        };
    }
}
