package deferent.film.measured;

import deferent.film.cycle.Drift;
import deferent.film.cycle.Wave;
import deferent.film.hand.HandSight;
import deferent.film.hand.PixelScale;
import deferent.film.hand.Upright;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Origin;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * What was read from a film, in metres in the house's frame: x to the performer's left, y up, from
 * the middle of what both heads draw.
 *
 * @param period seconds of the cycle in which both come back
 * @param drift how far ahead of an even clock they were, over the film
 * @param seconds how long the film is
 * @param left the left hand's
 * @param right the right hand's
 * @param exchanged whether the head that was followed first is the right hand's
 * @param sides how it was settled which head is which hand's
 * @param scale of the upright picture
 * @param how how the scale is known
 * @param upright which way up is in it
 */
public record Measured(
        double period,
        Drift drift,
        double seconds,
        MeasuredSide left,
        MeasuredSide right,
        boolean exchanged,
        HowSided sides,
        PixelScale scale,
        HowScaled how,
        Upright upright) {
    /** How it was settled which head is which hand's. */
    public enum HowSided {
        /** It was said. */
        SAID,
        /** One hand stays to the left of the other. */
        HANDS,
        /** The phrase says what each hand does, and it lies better that way round. */
        PHRASE,
        /**
         * Nothing tells; the head that is further to the picture's right at first is the left's.
         */
        ASSUMED
    }

    public Measured {
        Refusal.positive(period, 60, "a film's cycle", "s");
        Refusal.positive(seconds, 86400, "a film", "s");
    }

    /** One side's. */
    public MeasuredSide side(Side side) {
        return side == Side.LEFT ? left : right;
    }

    /** The same with the hands exchanged. */
    public Measured swapped(HowSided why) {
        return new Measured(
                period, drift, seconds, right, left, !exchanged, why, scale, how, upright);
    }

    /** The same, its sides settled in that way. */
    public Measured sided(HowSided why) {
        return new Measured(
                period, drift, seconds, left, right, exchanged, why, scale, how, upright);
    }

    /**
     * The mean cycle as a trace, which readings, sheets and stills take like any other. Across the
     * picture's depth nothing is known: the heads stand in the pairing's own planes.
     *
     * @param pairing what it is taken for
     */
    public Trace trace(Pairing pairing) {
        Map<Side, Course> hands = new EnumMap<>(Side.class);
        Map<Side, Course> heads = new EnumMap<>(Side.class);
        Map<Side, List<Interval>> slack = new EnumMap<>(Side.class);
        double error = 0;
        for (Side side : Side.values()) {
            MeasuredSide one = side(side);
            double z = pairing.part(side).place().centre().getZ();
            heads.put(side, time -> state(one.head().at(time), z));
            Wave hand = one.hand();
            hands.put(side, time -> state(hand.at(time), z));
            slack.put(side, slack(one));
            error = Math.max(error, one.head().error(0, 0));
        }
        return new Trace(
                pairing,
                Origin.MEASURED,
                new Interval(0, period),
                true,
                hands,
                heads,
                List.of(),
                slack,
                List.of(),
                error);
    }

    private static State state(double[][] at, double z) {
        return new State(
                new Vector3D(at[0][0], at[0][1], z),
                new Vector3D(at[1][0], at[1][1], 0),
                new Vector3D(at[2][0], at[2][1], 0),
                new Vector3D(at[3][0], at[3][1], 0));
    }

    /** Stretches in which the cord does not pull enough for a hand to be told. */
    private static List<Interval> slack(MeasuredSide side) {
        double step = side.head().period() / MeasuredSide.MOMENTS;
        List<Interval> found = new ArrayList<>();
        double last = 0;
        for (HandSight sight : side.hands()) {
            if (sight.time() - last > 1.5 * step) {
                found.add(new Interval(last, sight.time()));
            }
            last = sight.time();
        }
        if (side.head().period() - last > 1.5 * step) {
            found.add(new Interval(last, side.head().period()));
        }
        return List.copyOf(found);
    }
}
