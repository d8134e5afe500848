package deferent.search.crossing;

import deferent.motion.pairing.Jet;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Origin;
import deferent.motion.trace.State;
import deferent.motion.trace.TimedBreak;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Traces played one after the other, each for a while, and blended where they meet: over the
 * passage's time about each joint the share of the next grows from 0 to 1 as
 *
 * <pre>  s(x) = x⁵·(126 − 420x + 540x² − 315x³ + 70x⁴), </pre>
 *
 * the polynomial of least degree whose first four derivatives vanish at both ends. On a cord the
 * hand follows the head's acceleration, so a head that is smooth to its fourth derivative gives a
 * hand that is smooth to acceleration.
 *
 * <p>Hands are blended as they are. Heads are blended either as they are, to keep their figures on
 * a cord, or by their tethers, whose length is kept, for the motions as said.
 */
final class Splice {
    /** How heads are blended. */
    enum Heads {
        AS_THEY_ARE,
        ON_RODS
    }

    /**
     * One stretch.
     *
     * @param left the trace whose left side is played
     * @param right the trace whose right side is played
     * @param from when it starts in the left one, seconds; beyond a cycle it comes round again
     * @param rightFrom when in the right one
     * @param length seconds
     */
    record Leg(Trace left, Trace right, double from, double rightFrom, double length) {
        static Leg of(Trace trace, double from, double length) {
            return new Leg(trace, trace, from, from, length);
        }

        Trace trace(Side side) {
            return side == Side.LEFT ? left : right;
        }

        double from(Side side) {
            return side == Side.LEFT ? from : rightFrom;
        }
    }

    private final List<Leg> legs;
    private final double[] starts;
    private final double[] blends;
    private final double end;

    /**
     * @param blends the time of each joint's blend, one fewer than legs
     */
    Splice(List<Leg> legs, double[] blends) {
        this.legs = List.copyOf(legs);
        this.blends = blends.clone();
        starts = new double[legs.size()];
        double at = 0;
        for (int i = 0; i < starts.length; i++) {
            starts[i] = at;
            at += legs.get(i).length();
            double taken =
                    (i > 0 ? blends[i - 1] / 2 : 0) + (i < blends.length ? blends[i] / 2 : 0);
            if (legs.get(i).length() < taken - 1e-9) {
                throw new Refusal(
                        "lasts " + legs.get(i).length() + " s, but its blends take " + taken,
                        "a stretch between two passages",
                        "stay a cycle longer, or blend in less time");
            }
        }
        end = at;
    }

    double end() {
        return end;
    }

    double joint(int i) {
        return starts[i + 1];
    }

    /** The trace, under the name of the first leg's pairing. */
    Trace trace(Heads blend) {
        Map<Side, Course> hands = new EnumMap<>(Side.class);
        Map<Side, Course> heads = new EnumMap<>(Side.class);
        for (Side side : Side.values()) {
            hands.put(side, course(side, Want.HAND));
            heads.put(side, course(side, blend == Heads.ON_RODS ? Want.ROD : Want.FIGURE));
        }
        return new Trace(
                legs.get(0).left().pairing(),
                Origin.IDEAL,
                new Interval(0, end),
                false,
                hands,
                heads,
                breaks(),
                Map.of(),
                List.of(),
                0);
    }

    private enum Want {
        HAND,
        FIGURE,
        ROD
    }

    private Course course(Side side, Want want) {
        return new Course() {
            @Override
            public State at(double time) {
                return state(side, want, time, time >= end);
            }

            @Override
            public State before(double time) {
                return state(side, want, time, true);
            }
        };
    }

    private State state(Side side, Want want, double time, boolean before) {
        double t = Math.max(0, Math.min(end, time));
        int i = 0;
        while (i + 1 < starts.length && t >= starts[i + 1]) {
            i++;
        }
        if (i > 0 && t < starts[i] + blends[i - 1] / 2) {
            return blended(side, want, i - 1, t, before);
        }
        if (i < blends.length && t > starts[i + 1] - blends[i] / 2) {
            return blended(side, want, i, t, before);
        }
        return leg(i, side, want == Want.HAND, t, before);
    }

    private State leg(int i, Side side, boolean hand, double t, boolean before) {
        Leg leg = legs.get(i);
        Course course = hand ? leg.trace(side).hand(side) : leg.trace(side).head(side);
        double own = leg.from(side) + t - starts[i];
        return before ? course.before(own) : course.at(own);
    }

    private State blended(Side side, Want want, int joint, double t, boolean before) {
        if (sameThrough(side, joint)) {
            return leg(joint, side, want == Want.HAND, t, before);
        }
        double x = (t - starts[joint + 1]) / blends[joint] + 0.5;
        Jet share = share(Jet.line(x, 1 / blends[joint]));
        if (want != Want.ROD) {
            return mixed(
                            SpaceJet.of(leg(joint, side, want == Want.HAND, t, before)),
                            SpaceJet.of(leg(joint + 1, side, want == Want.HAND, t, before)),
                            share)
                    .state();
        }
        SpaceJet oneHand = SpaceJet.of(leg(joint, side, true, t, before));
        SpaceJet otherHand = SpaceJet.of(leg(joint + 1, side, true, t, before));
        SpaceJet one = SpaceJet.of(leg(joint, side, false, t, before)).minus(oneHand);
        SpaceJet other = SpaceJet.of(leg(joint + 1, side, false, t, before)).minus(otherHand);
        double from = legs.get(joint).trace(side).pairing().part(side).tether().length();
        double to = legs.get(joint + 1).trace(side).pairing().part(side).tether().length();
        Jet length = share.times(to - from).plus(from);
        return mixed(oneHand, otherHand, share).plus(mixed(one, other, share).made(length)).state();
    }

    // A hand that does not cross is played from the same trace without a jump.
    private boolean sameThrough(Side side, int joint) {
        Leg one = legs.get(joint);
        Leg other = legs.get(joint + 1);
        return one.trace(side) == other.trace(side)
                && one.from(side) + one.length() == other.from(side);
    }

    private static SpaceJet mixed(SpaceJet one, SpaceJet other, Jet share) {
        return one.plus(other.minus(one).times(share));
    }

    static Jet share(Jet x) {
        double v = Math.max(0, Math.min(1, x.value()));
        double v2 = v * v;
        double v3 = v2 * v;
        double w = 1 - v;
        return x.into(
                v3 * v2 * (126 - 420 * v + 540 * v2 - 315 * v3 + 70 * v2 * v2),
                630 * v2 * v2 * w * w * w * w,
                2520 * v3 * w * w * w * (1 - 2 * v),
                // d/dv of v³w³(1 − 2v), w = 1 − v
                2520 * v2 * w * w * (3 * (1 - 2 * v) * (1 - 2 * v) - 2 * v * w));
    }

    private List<TimedBreak> breaks() {
        List<TimedBreak> found = new ArrayList<>();
        for (int i = 0; i < legs.size(); i++) {
            double from = Math.max(0, starts[i] - (i > 0 ? blends[i - 1] / 2 : 0));
            double to =
                    Math.min(
                            end,
                            starts[i]
                                    + legs.get(i).length()
                                    + (i < blends.length ? blends[i] / 2 : 0));
            for (Side side : Side.values()) {
                add(i, side, from, to, found);
            }
        }
        found.sort(Comparator.comparingDouble(TimedBreak::time).thenComparing(TimedBreak::side));
        return found;
    }

    private void add(int i, Side side, double from, double to, List<TimedBreak> found) {
        Leg leg = legs.get(i);
        Trace trace = leg.trace(side);
        double period = trace.period();
        double offset = starts[i] - leg.from(side);
        for (TimedBreak b : trace.breaks()) {
            if (b.side() != side) {
                continue;
            }
            double time = b.time() + offset;
            time += period * Math.ceil((from - time) / period);
            for (; time < to; time += period) {
                if (time > from) {
                    found.add(new TimedBreak(time, b.order(), side, b.why()));
                }
            }
        }
    }

    /**
     * What the motions themselves ask of a point at a time: the one before a joint, then the next.
     */
    Vector3D asked(Side side, boolean hand, double t) {
        int i = 0;
        while (i + 1 < starts.length && t >= starts[i + 1]) {
            i++;
        }
        return leg(i, side, hand, t, false).acceleration();
    }
}
