package deferent.search.crossing;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Origin;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import deferent.reading.tether.KeepTheFigure;
import deferent.reading.tether.Kit;
import deferent.reading.tether.Pull;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A way through one crossing, or through several one after the other, that can be played.
 *
 * <p>On a cord the head leads: the heads' paths are blended ({@link Splice}) and each hand goes
 * where {@link KeepTheFigure} says a hand must go to give that head its path, before, through and
 * after the blend. The head is smooth to its fourth derivative, so the hand is to its acceleration,
 * wherever the motions themselves are. Where no cord can do it, the passage is that of the motions
 * as said, on rods, and {@link #why} says why; its pull then shows what a cord would lack.
 *
 * @param trace the whole passage, from time 0; corded or ideal, not periodic
 * @param joints the moments of crossing in it, seconds
 * @param why why it is not corded; {@link Hindrance#NONE} where it is
 * @param hindered the time in the trace at which a cord fails, seconds; 0 where none does
 * @param extraHands greatest acceleration of a hand beyond what its motion asks for, weights; on a
 *     cord, what the hands do to keep the figures is not counted and this is the ideal hands'
 * @param extraHeads the same of the heads
 * @param left the pull in the left tether
 * @param right the pull in the right tether
 * @param astray greatest distance of a corded hand from where the motions as said have it, metres
 */
public record Passage(
        Trace trace,
        List<Double> joints,
        Hindrance why,
        double hindered,
        double extraHands,
        double extraHeads,
        Pull left,
        Pull right,
        double astray) {
    /** Why a passage cannot be on a cord. */
    public enum Hindrance {
        /** It is on a cord. */
        NONE,
        /** The figure asks for free fall, and the cord has no direction. */
        FREE_FALL,
        /** The head's acceleration jumps, and the hand would have to. */
        JUMP,
        /** The head turns a corner, which takes an infinite force. */
        CORNER,
        /** The two pairings' tethers are not of one length. */
        TETHERS
    }

    private static final double LEAD = 0.5;
    private static final int LOOKS = 240;

    public Pull pull(Side side) {
        return side == Side.LEFT ? left : right;
    }

    public boolean corded() {
        return why == Hindrance.NONE;
    }

    /** Whether both cords pull all the way. */
    public boolean taut() {
        return left.taut() && right.taut();
    }

    /** Through one crossing, with half a second of either pairing before and after it. */
    public static Passage of(Crossing crossing) {
        return of(crossing, LEAD, Kit.USUAL);
    }

    /**
     * Through one crossing.
     *
     * @param lead how much of either pairing is played beside the blend, seconds
     */
    public static Passage of(Crossing crossing, double lead, Kit kit) {
        Refusal.within(lead, 0, 600, "lead of a passage", "s");
        Trace from = Trace.of(crossing.from());
        Trace to = Trace.of(crossing.to());
        double length = lead + crossing.blend() / 2;
        Splice.Leg first = Splice.Leg.of(from, crossing.fromTime() - length, length);
        Splice.Leg second =
                new Splice.Leg(
                        crossing.who() == Who.RIGHT ? from : to,
                        crossing.who() == Who.LEFT ? from : to,
                        // What stays goes on from the very number the first leg ends with.
                        crossing.who() == Who.RIGHT
                                ? first.from() + first.length()
                                : crossing.toTime(),
                        crossing.who() == Who.LEFT
                                ? first.from() + first.length()
                                : crossing.toTime(),
                        length);
        return of(
                new Splice(List.of(first, second), new double[] {crossing.blend()}),
                1,
                crossing.keepsTethers(),
                kit);
    }

    static Passage of(Splice splice, int joints, boolean keepsTethers, Kit kit) {
        Trace rods = splice.trace(Splice.Heads.ON_RODS);
        Trace figures = splice.trace(Splice.Heads.AS_THEY_ARE);
        Hindered hindered =
                keepsTethers ? Hindered.of(figures, kit) : Hindered.at(Hindrance.TETHERS, 0);
        Trace trace = hindered.why == Hindrance.NONE ? corded(figures, hindered.keeps) : rods;
        double astray = 0;
        for (KeepTheFigure keep : hindered.keeps.values()) {
            astray = Math.max(astray, keep.away().greatest());
        }
        boolean corded = hindered.why == Hindrance.NONE;
        return new Passage(
                trace,
                IntStream.range(0, joints).mapToObj(splice::joint).toList(),
                hindered.why,
                hindered.time,
                extra(splice, rods, true),
                extra(splice, trace, false),
                Pull.of(trace, Side.LEFT, kit),
                Pull.of(trace, Side.RIGHT, kit),
                corded ? astray : 0);
    }

    private record Hindered(Hindrance why, double time, Map<Side, KeepTheFigure> keeps) {
        static Hindered at(Hindrance why, double time) {
            return new Hindered(why, time, Map.of());
        }

        static Hindered of(Trace figures, Kit kit) {
            Map<Side, KeepTheFigure> keeps = new EnumMap<>(Side.class);
            for (Side side : Side.values()) {
                var corner =
                        figures.breaks().stream()
                                .filter(b -> b.side() == side && b.order() <= 1)
                                .findFirst();
                if (corner.isPresent()) {
                    return at(Hindrance.CORNER, corner.get().time());
                }
                KeepTheFigure keep = KeepTheFigure.of(figures, side, kit);
                if (!keep.freeFalls().isEmpty()) {
                    return at(Hindrance.FREE_FALL, keep.freeFalls().get(0).time());
                }
                if (!keep.jumps().isEmpty()) {
                    return at(Hindrance.JUMP, keep.jumps().get(0));
                }
                keeps.put(side, keep);
            }
            return new Hindered(Hindrance.NONE, 0, keeps);
        }
    }

    private static Trace corded(Trace figures, Map<Side, KeepTheFigure> keeps) {
        Trace both = figures;
        for (KeepTheFigure keep : keeps.values()) {
            both = keep.in(both);
        }
        Interval over = both.interval();
        Map<Side, Course> hands = new EnumMap<>(Side.class);
        Map<Side, Course> heads = new EnumMap<>(Side.class);
        for (Side side : Side.values()) {
            hands.put(side, within(both.hand(side), over));
            heads.put(side, both.head(side));
        }
        return new Trace(
                both.pairing(),
                Origin.CORDED,
                over,
                false,
                hands,
                heads,
                both.breaks(),
                Map.of(),
                both.gaps(),
                0);
    }

    // At its end a passage that doesn't come round has only a state just before.
    private static Course within(Course course, Interval over) {
        return new Course() {
            @Override
            public State at(double time) {
                return time >= over.end()
                        ? course.before(over.end())
                        : course.at(Math.max(time, over.start()));
            }

            @Override
            public State before(double time) {
                return time <= over.start()
                        ? course.at(over.start())
                        : course.before(Math.min(time, over.end()));
            }
        };
    }

    private static double extra(Splice splice, Trace trace, boolean hands) {
        double most = 0;
        for (int i = 1; i < LOOKS * 4; i++) {
            double t = splice.end() * i / (LOOKS * 4);
            for (Side side : Side.values()) {
                Course course = hands ? trace.hand(side) : trace.head(side);
                Vector3D asked = splice.asked(side, hands, t);
                most = Math.max(most, course.at(t).acceleration().distance(asked));
            }
        }
        return most / Gravity.STANDARD;
    }
}
