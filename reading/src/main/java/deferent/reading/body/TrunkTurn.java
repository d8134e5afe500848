package deferent.reading.body;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;

/**
 * The least turn of the trunk with which both hands get where their paths go.
 *
 * <p>The trunk turns about the upright axis midway between the shoulder joints, hips and feet
 * staying: one angle for both hands at one instant, positive to the performer's left. A hand at the
 * distance ρ from that axis sees its shoulder joint, half a shoulder width w out, at the squared
 * distance |q|² + w² − 2wρ cos(φ − ψ): so at each instant the turns φ at which a straight arm is
 * long enough are one interval about the turn ψ that faces the hand. A trunk turns at most so fast,
 * r; the highest function of slope r at most that stays under the upper ends of all instants, and
 * the lowest that stays over the lower ends, bound every turn that does. Where these two never
 * cross there is one, and the least at every instant at once is the middle one of lower bound, zero
 * and upper bound. Where they cross, the least that an arm would have to be longer is found by
 * halving.
 *
 * <p>How near a hand may come to its own shoulder is left to {@link HandReach}: a bent arm and the
 * shoulder girdle give way there. Ranges: thoracolumbar rotation 45° to each side, American Academy
 * of Orthopaedic Surgeons (1965), in Norkin and White, Measurement of Joint Motion (from memory).
 * Rate: young adults turned their trunk at up to 268°/s with 20 kg on the shoulders and 699°/s with
 * 1 kg, Zemková, Jeleň and Zapletalová, on peak and mean velocity of trunk rotations in young and
 * older adults; {@value #RATE_DEG}°/s at most is our choice, as what goes on for long.
 *
 * @param greatest the greatest turn, radians, by size
 * @param greatestTime when, seconds
 * @param toThe the side to which it is turned then
 * @param tooFar by how much an arm is still too short with the trunk turned at best, metres; 0
 *     where none is
 * @param tooFarSide whose
 * @param tooFarTime when, seconds
 */
public record TrunkTurn(
        double greatest,
        double greatestTime,
        Side toThe,
        double tooFar,
        Side tooFarSide,
        double tooFarTime) {
    /** The farthest a trunk turns to each side, radians. */
    public static final double MOST = Math.toRadians(45);

    private static final double RATE_DEG = 240;

    /** Less is no turn, radians: what an arm's slack makes of it. */
    private static final double STILL = Math.toRadians(0.05);

    private static final double EXACT = 2e-4;
    private static final double ABOUT = 1e-3;

    /**
     * It is sought at every sixth sample, between which a hand on an arm's circle strays 0.2 mm.
     */
    static final int STRIDE = 6;

    /** Where it is only compared, between which it strays 2 mm. */
    static final int QUICK = 18;

    public TrunkTurn {
        Refusal.numbers("the trunk's turn", greatest, greatestTime, tooFar, tooFarTime);
    }

    /**
     * The least turn for both hands of a trace.
     *
     * @param most the farthest to each side, radians, 0 to a quarter turn
     */
    static TrunkTurn of(Trace trace, Samples samples, Performer performer, double most) {
        Refusal.within(most, 0, Math.PI / 2, "the trunk's turn", "rad");
        return of(trace, samples, hands(samples), performer, most);
    }

    /**
     * As {@link #of(Trace, Samples, Performer, double)} for hands as a trunk sees them.
     *
     * @param hands by side, x, y, z at each sample, metres
     */
    static TrunkTurn of(
            Trace trace, Samples samples, double[][] hands, Performer performer, double most) {
        Sought sought = new Sought(trace, samples, hands, STRIDE, performer, most);
        double longer = sought.longer();
        double[] turns = sought.turns(longer);
        int greatest = 0;
        for (int i = 0; i < turns.length; i++) {
            if (Math.abs(turns[i]) > Math.abs(turns[greatest])) {
                greatest = i;
            }
        }
        Side side = Side.LEFT;
        int worst = 0;
        double beyond = Double.NEGATIVE_INFINITY;
        for (Side one : Side.values()) {
            for (int i = 0; i < turns.length; i++) {
                double here = sought.beyond(one, i, turns[i]);
                if (here > beyond + EXACT) {
                    beyond = here;
                    side = one;
                    worst = i;
                }
            }
        }
        return new TrunkTurn(
                Math.abs(turns[greatest]),
                samples.time(STRIDE * greatest),
                turns[greatest] >= 0 ? Side.LEFT : Side.RIGHT,
                longer == 0 ? 0 : Math.max(0, beyond),
                side,
                samples.time(STRIDE * worst));
    }

    /** Whether both hands get everywhere, which takes less than to find the least turn. */
    static boolean reaches(
            Trace trace, Samples samples, double[][] hands, Performer performer, double most) {
        return new Sought(trace, samples, hands, STRIDE, performer, most).reaches(0);
    }

    private static double[][] hands(Samples samples) {
        return new double[][] {samples.hand(Side.LEFT), samples.hand(Side.RIGHT)};
    }

    /** About by how much an arm is too short with the trunk turned at best, metres; quick. */
    static double tooFar(
            Trace trace, Samples samples, double[][] hands, Performer performer, double most) {
        return new Sought(trace, samples, hands, QUICK, performer, most).longer(ABOUT);
    }

    /** The turn at each of these instants, radians, to the left above 0. */
    static double[] turns(Trace trace, Samples samples, Performer performer, double most) {
        return turns(trace, samples, hands(samples), performer, 1, most);
    }

    /** The turn at every so manieth of these instants, for hands as a trunk sees them. */
    static double[] turns(
            Trace trace,
            Samples samples,
            double[][] hands,
            Performer performer,
            int stride,
            double most) {
        Sought sought = new Sought(trace, samples, hands, stride, performer, most);
        return sought.turns(sought.longer());
    }

    /** Whether both hands get everywhere, the trunk turned as far as it turns. */
    public boolean reached() {
        return tooFar <= Reach.SLACK;
    }

    /** Whether it turns at all. */
    public boolean turned() {
        return greatest > STILL;
    }

    /** A search for turns, all instants of both hands laid out. */
    private static final class Sought {
        private final int count;
        private final boolean round;
        private final double step;
        private final double most;
        private final double arm;
        // By side, then by instant: |q|² + w², 2wρ and ψ.
        private final double[][] square = new double[2][];
        private final double[][] swing = new double[2][];
        private final double[][] facing = new double[2][];

        Sought(
                Trace trace,
                Samples samples,
                double[][] hands,
                int stride,
                Performer performer,
                double most) {
            this.count = samples.count() / stride;
            this.round = trace.periodic();
            this.step = Math.toRadians(RATE_DEG) * (samples.time(stride) - samples.time(0));
            this.most = most;
            this.arm = performer.arm();
            double out = performer.shoulderWidth() / 2;
            for (Side side : Side.values()) {
                int s = side.ordinal();
                double sign = side == Side.LEFT ? 1 : -1;
                double height = performer.shoulder(side).getY();
                double behind = performer.shoulder(side).getZ();
                double[] hand = hands[s];
                square[s] = new double[count];
                swing[s] = new double[count];
                facing[s] = new double[count];
                for (int i = 0; i < count; i++) {
                    double x = hand[3 * stride * i];
                    double y = hand[3 * stride * i + 1] - height;
                    double z = hand[3 * stride * i + 2] - behind;
                    square[s][i] = x * x + y * y + z * z + out * out;
                    swing[s][i] = 2 * out * Math.sqrt(x * x + z * z);
                    facing[s][i] = Math.atan2(-sign * z, sign * x);
                }
            }
        }

        /** By how much an arm must be longer, metres; 0 where it is long enough. */
        double longer() {
            return longer(EXACT);
        }

        double longer(double exact) {
            if (reaches(0)) {
                return 0;
            }
            double no = 0;
            double yes = 0;
            for (Side side : Side.values()) {
                for (int i = 0; i < count; i++) {
                    no = Math.max(no, beyond(side, i, nearest(facing[side.ordinal()][i])));
                    yes = Math.max(yes, beyond(side, i, 0) + exact);
                }
            }
            // Mostly one hand at one instant decides, whatever the others ask for.
            if (no + exact < yes && reaches(no + exact)) {
                return no + exact;
            }
            while (yes - no > exact) {
                double half = (no + yes) / 2;
                if (reaches(half)) {
                    yes = half;
                } else {
                    no = half;
                }
            }
            return yes;
        }

        /** Of the turns there are, the one that brings a shoulder nearest to its hand. */
        private double nearest(double facing) {
            if (Math.abs(facing) <= most) {
                return facing;
            }
            return facing > 0 ? most : -most;
        }

        /** By how much a straight arm ends before the hand at a turn; below 0 where it doesn't. */
        double beyond(Side side, int i, double turn) {
            int s = side.ordinal();
            double d = square[s][i] - swing[s][i] * Math.cos(turn - facing[s][i]);
            return Math.sqrt(Math.max(0, d)) - arm;
        }

        private boolean reaches(double longer) {
            double[][] bounds = bounds(longer);
            for (int i = 0; i < count; i++) {
                if (!(bounds[0][i] <= bounds[1][i] + 1e-12)) {
                    return false;
                }
            }
            return true;
        }

        double[] turns(double longer) {
            double[][] bounds = bounds(longer);
            double[] turns = new double[count];
            for (int i = 0; i < count; i++) {
                turns[i] = Math.max(bounds[0][i], Math.min(0, bounds[1][i]));
            }
            return turns;
        }

        /** Lower and upper bound at every instant, no steeper than a trunk turns. */
        private double[][] bounds(double longer) {
            double[] low = new double[count];
            double[] high = new double[count];
            for (int i = 0; i < count; i++) {
                low[i] = -most;
                high[i] = most;
                for (int s = 0; s < 2; s++) {
                    narrow(low, high, i, s, arm + longer + Reach.SLACK / 2);
                }
            }
            int last = round ? 2 * count : count;
            for (int i = 1; i < last; i++) {
                int here = i % count;
                int before = (i - 1) % count;
                low[here] = Math.max(low[here], low[before] - step);
                high[here] = Math.min(high[here], high[before] + step);
            }
            for (int i = last - 2; i >= 0; i--) {
                int here = i % count;
                int after = (i + 1) % count;
                low[here] = Math.max(low[here], low[after] - step);
                high[here] = Math.min(high[here], high[after] + step);
            }
            return new double[][] {low, high};
        }

        private void narrow(double[] low, double[] high, int i, int s, double length) {
            double cos = (square[s][i] - length * length) / swing[s][i];
            if (!(cos > -1)) {
                return;
            }
            double wide = cos >= 1 ? -1 : Math.acos(cos);
            low[i] = Math.max(low[i], facing[s][i] - wide);
            high[i] = Math.min(high[i], facing[s][i] + wide);
        }
    }
}
