package deferent.reading.closest;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.HandLimits;
import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Lowest;
import deferent.motion.trace.TetherAngle;
import deferent.motion.trace.Trace;
import deferent.reading.tether.Away;
import deferent.reading.tether.Cord;
import deferent.reading.tether.KeepTheHandPath;
import deferent.reading.tether.Kit;
import deferent.reading.tether.Orbit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The closest figure that a real hand can draw: of all periodic motions of a taut cord whose hand
 * keeps its {@link HandLimits}, one whose head departs least, at its greatest, from the ideal.
 *
 * <p>Its unknowns are the harmonics of the poi's flat point, so that every one of them is an exact
 * motion of the cord and the hand's velocity, acceleration and jerk come from derivatives, not from
 * differences ({@link Flatness}). How it is made least stands in {@link NearestHead}, from where it
 * is begun in {@link Nearing}: since that goes downhill only, a nearer one may exist, and what is
 * said of a departure is an upper bound. Over a dozen usual motions at four tempos another start
 * led up to a third nearer at the worst (a horizontal cat-eye at 60 a minute: 2.5 cm instead of
 * 3.7).
 *
 * <p>Bounds are asked at even instants, sixteen or more for each harmonic, a little drawn in;
 * {@link #handSpeed}, {@link #handAcceleration} and {@link #leastPull} are sought between the
 * instants too, and {@link #met} is judged by these. The poi gets round as often as the ideal's.
 *
 * @param side whose
 * @param cord the poi
 * @param limits what the hand was held to
 * @param hand its course
 * @param head the figure it draws
 * @param figure how far that is from the ideal figure
 * @param path how far the hand goes from its ideal path
 * @param handSpeed greatest, m/s
 * @param handAcceleration greatest, m/s²
 * @param handJerk greatest, m/s³
 * @param leastPull least pull of the centre of oscillation, head weights
 * @param leastPullTime when, seconds
 * @param binding the bounds that it comes up to, the tightest first
 * @param met whether all are kept, to a hundredth between the instants at which they were asked
 * @param turns of the cord over the hand's own cycle, as the ideal's
 * @param orbit the same as a periodic motion behind its hand
 * @param beginning what a later search may begin from
 */
public record ClosestFigure(
        Side side,
        Cord cord,
        HandLimits limits,
        Course hand,
        Course head,
        Away figure,
        Away path,
        double handSpeed,
        double handAcceleration,
        double handJerk,
        double leastPull,
        double leastPullTime,
        List<HandBound> binding,
        boolean met,
        int turns,
        Orbit orbit,
        Beginning beginning) {
    public ClosestFigure {
        binding = List.copyOf(binding);
        Refusal.numbers(
                "the closest " + side.word() + " figure",
                handSpeed,
                handAcceleration,
                handJerk,
                leastPull,
                leastPullTime);
    }

    /** What a search found, to begin a later one for nearly the same question from. */
    public static final class Beginning {
        private final Nearing.Found found;

        private Beginning(Nearing.Found found) {
            this.found = found;
        }
    }

    /** So much may a bound be passed between two of the instants at which it was asked, a share. */
    public static final double BETWEEN = 0.01;

    /** What comes so near to a bound comes up to it, a share. */
    private static final double UP_TO = 0.98;

    /** A figure so near to the ideal is held off by nothing, metres. */
    private static final double DRAWN = 1e-4;

    private static final int COUNT = 720;
    private static final int EACH_ORDER = 32;
    private static final int SECTIONS = 24;
    private static final double STEP_TURN = 0.4;
    private static final int STEPS = 96;
    private static final int MOST_STEPS = 20_000;

    /** For the usual hand, whose arm is as long as it takes. */
    public static ClosestFigure of(Trace ideal, Side side, Kit kit) {
        return of(ideal, side, Cord.of(ideal, side, kit), HandLimits.USUAL);
    }

    public static ClosestFigure of(Trace ideal, Side side, Cord cord, HandLimits limits) {
        return of(ideal, side, cord, Closely.of(limits), List.of());
    }

    /**
     * The closest figure, from all there is to begin with.
     *
     * @param starts heads of motions of the same cord to begin from too
     */
    public static ClosestFigure of(
            Trace ideal, Side side, Cord cord, Closely closely, List<Course> starts) {
        HandLimits limits = closely.limits();
        Optional<Arm> arm = closely.arm();
        Trace own = ideal.ownCycle(side);
        Nearing nearing = new Nearing(own, side, cord, closely);
        Nearing.Found found = nearing.found(starts, closely.near().map(n -> n.beginning().found));
        FlatMotion motion = nearing.motion(found);
        Course hand = motion.hand();
        Course head = motion.head();
        Greatest greatest =
                new Greatest(own.interval(), Math.max(COUNT, EACH_ORDER * found.order()));
        double speed = greatest.of(t -> hand.at(t).velocity().getNorm()).value();
        double acceleration = greatest.of(t -> hand.at(t).acceleration().getNorm()).value();
        double jerk = greatest.of(t -> hand.at(t).jerk().getNorm()).value();
        Most pull = greatest.of(t -> -motion.pull(t));
        double leastPull = -pull.value() / Gravity.STANDARD;
        Away figure = Away.of(head, own.head(side), own, side);
        Away path = Away.of(hand, own.hand(side), own, side);
        double[] used = new double[HandBound.values().length];
        used[HandBound.SPEED.ordinal()] = speed / limits.speed();
        used[HandBound.ACCELERATION.ordinal()] = acceleration / limits.acceleration();
        limits.jerk().ifPresent(j -> used[HandBound.JERK.ordinal()] = jerk / j);
        used[HandBound.PULL.ordinal()] = 1 + limits.leastPull() - leastPull;
        arm.ifPresent(
                a ->
                        used[HandBound.REACH.ordinal()] =
                                greatest.of(t -> hand.position(t).distance(a.shoulder())).value()
                                        / a.length());
        limits.leave().ifPresent(l -> used[HandBound.LEAVE.ordinal()] = path.greatest() / l);
        boolean met = true;
        List<HandBound> binding = new ArrayList<>();
        for (HandBound bound : HandBound.values()) {
            met &= used[bound.ordinal()] <= 1 + BETWEEN;
            if (used[bound.ordinal()] >= UP_TO && figure.greatest() > DRAWN) {
                binding.add(bound);
            }
        }
        binding.sort((a, b) -> Double.compare(used[b.ordinal()], used[a.ordinal()]));
        return new ClosestFigure(
                side,
                cord,
                limits,
                hand,
                head,
                figure,
                path,
                speed,
                acceleration,
                jerk,
                leastPull,
                pull.time(),
                binding,
                met,
                turned(own, side, hand, head, nearing),
                orbit(own, side, cord, hand, head, greatest, motion),
                new Beginning(found));
    }

    /** The trace with this side's hand and head put in the place of its own; corded. */
    public Trace in(Trace trace) {
        return Orbit.in(trace, side, hand, head);
    }

    private static int turned(Trace own, Side side, Course hand, Course head, Nearing nearing) {
        Trace drawn = Orbit.in(own, side, hand, head);
        int turns =
                nearing.counted()
                        ? (int) Math.rint(TetherAngle.of(drawn, side).growth() / (2 * Math.PI))
                        : nearing.turns();
        if (turns != nearing.turns()) {
            throw nearing.lost();
        }
        return turns;
    }

    private static Orbit orbit(
            Trace own,
            Side side,
            Cord cord,
            Course hand,
            Course head,
            Greatest greatest,
            FlatMotion motion) {
        double turning =
                greatest.of(t -> hand.at(t).velocity().distance(head.at(t).velocity())).value()
                        / cord.length();
        // A slip swings to and fro as a pendulum's, √(pull/(mass·length)).
        double trembling = Math.sqrt(greatest.of(motion::pull).value() / cord.length());
        double steps = Math.max(turning, trembling) * own.period() / STEP_TURN;
        Vector3D normal = KeepTheHandPath.planeNormal(own, side, cord);
        return Orbit.of(
                hand,
                head,
                cord,
                own.interval(),
                (int) Math.min(MOST_STEPS, Math.max(STEPS, Math.ceil(steps))),
                normal);
    }

    private record Most(double time, double value) {}

    /**
     * Greatest values over a cycle, sought between samples too: about every sample that its
     * neighbours do not top and that comes near the greatest, since where a cord hardly pulls a
     * hand jerks between two samples.
     */
    private record Greatest(Interval over, int count) {
        private static final double NEARLY = 0.7;

        Most of(DoubleUnaryOperator f) {
            double step = over.length() / count;
            double[] values = new double[count];
            double least = Double.POSITIVE_INFINITY;
            Most most = new Most(over.start(), Double.NEGATIVE_INFINITY);
            for (int i = 0; i < count; i++) {
                values[i] = f.applyAsDouble(over.start() + i * step);
                least = Math.min(least, values[i]);
                if (values[i] > most.value()) {
                    most = new Most(over.start() + i * step, values[i]);
                }
            }
            double nearly = least + NEARLY * (most.value() - least);
            boolean even = most.value() - least < 1e-6 * Math.abs(most.value());
            for (int i = 0; i < count && !even; i++) {
                double before = values[(i + count - 1) % count];
                double after = values[(i + 1) % count];
                if (values[i] >= nearly && values[i] >= before && values[i] >= after) {
                    double time = over.start() + i * step;
                    Lowest near =
                            Lowest.within(
                                    t -> -f.applyAsDouble(t), time - step, time + step, SECTIONS);
                    if (-near.value() > most.value()) {
                        most = new Most(near.at(), -near.value());
                    }
                }
            }
            return most;
        }
    }
}
