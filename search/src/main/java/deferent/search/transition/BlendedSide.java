package deferent.search.transition;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Jet;
import deferent.motion.pairing.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Origin;
import deferent.motion.trace.State;
import deferent.motion.trace.TetherAngle;
import deferent.motion.trace.Trace;
import deferent.search.crossing.SpaceJet;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * What a passage draws, exactly: the blend of {@link Attempt} with its derivatives to the third, on
 * a clock that starts when the passage does.
 */
final class BlendedSide {
    /** Of the passage. */
    private static final double STEP = 3e-4;

    private final Trace from;
    private final Trace to;
    private final Bridge bridge;
    private final Side side;
    private final double length;
    private final TetherAngle fromAngle;
    private final TetherAngle toAngle;
    private final Vector3D u;
    private final Vector3D v;
    private final Vector3D axis;
    private final double bend;

    private BlendedSide(Trace from, Trace to, Bridge bridge) {
        this.from = from;
        this.to = to;
        this.bridge = bridge;
        this.side = bridge.side();
        this.length = from.pairing().part(side).tether().length();
        this.fromAngle = TetherAngle.of(from, side);
        this.toAngle = TetherAngle.of(to, side);
        var plane = from.pairing().part(side).place().plane();
        var next = to.pairing().part(side).place().plane();
        this.u = plane.u();
        this.v = plane.v();
        Rotation turn = new Rotation(u, v, next.u(), next.v());
        this.axis = turn.getAxis(RotationConvention.VECTOR_OPERATOR);
        this.bend = turn.getAngle();
    }

    /**
     * The passage of one side, ideal hand and head, the other side going on as it was.
     *
     * @return a trace over the passage, from 0
     */
    static Trace trace(Trace from, Trace to, Bridge bridge) {
        BlendedSide blend = new BlendedSide(from, to, bridge);
        Map<Side, Course> hands = new EnumMap<>(Side.class);
        Map<Side, Course> heads = new EnumMap<>(Side.class);
        Side other = bridge.side().other();
        hands.put(bridge.side(), blend.course(false));
        heads.put(bridge.side(), blend.course(true));
        hands.put(other, DrawnSide.shifted(from.hand(other), bridge.leaves()));
        heads.put(other, DrawnSide.shifted(from.head(other), bridge.leaves()));
        return new Trace(
                from.pairing(),
                Origin.IDEAL,
                new Interval(0, bridge.seconds()),
                false,
                hands,
                heads,
                List.of(),
                Map.of(),
                List.of(),
                0);
    }

    /**
     * The hand behind which a cord draws the head's path, hand = p + L·b/|b| with b = p″ − g: place
     * and velocity from the head's derivatives, acceleration and jerk from differences of that
     * velocity, which are right to 1e-4 m/s² and 0.1 m/s³.
     */
    static Course hand(Course head, double length, double seconds) {
        double h = STEP * seconds;
        return time -> {
            // At a join the jerk jumps, so differences are taken just within it.
            double within = Math.max(h, Math.min(seconds - h, time));
            State before = led(head.at(within - h), length);
            State middle = led(head.at(within), length);
            State after = led(head.at(within + h), length);
            State now = led(head.at(time), length);
            Vector3D more = after.velocity().subtract(before.velocity());
            Vector3D bend =
                    after.velocity()
                            .add(before.velocity())
                            .subtract(middle.velocity().scalarMultiply(2))
                            .scalarMultiply(1 / (h * h));
            return new State(
                    now.position(),
                    now.velocity(),
                    more.scalarMultiply(1 / (2 * h)).add(bend.scalarMultiply(time - within)),
                    bend);
        };
    }

    private static State led(State head, double length) {
        Vector3D force = head.acceleration().add(new Vector3D(0, Gravity.STANDARD, 0));
        double size = force.getNorm();
        Vector3D n = force.scalarMultiply(1 / size);
        Vector3D jerk = head.jerk();
        Vector3D turn = jerk.subtract(n.scalarMultiply(n.dotProduct(jerk)));
        return new State(
                head.position().add(n.scalarMultiply(length)),
                head.velocity().add(turn.scalarMultiply(length / size)),
                Vector3D.ZERO,
                Vector3D.ZERO);
    }

    private Course course(boolean head) {
        return time -> state(time, head);
    }

    private State state(double time, boolean head) {
        double t = bridge.leaves() + time;
        double there = t + bridge.later();
        Jet x = Jet.line(time / bridge.seconds(), 1 / bridge.seconds());
        Jet share = Ease.share(x);
        SpaceJet hand = SpaceJet.of(from.hand(side).at(t));
        SpaceJet next = SpaceJet.of(to.hand(side).at(there));
        hand = hand.plus(next.minus(hand).times(share));
        if (!head) {
            return hand.state();
        }
        Jet angle = angle(from, fromAngle, t);
        Jet nextAngle = angle(to, toAngle, there).plus(2 * Math.PI * bridge.turns());
        Jet blended = angle.plus(nextAngle.minus(angle).times(share));
        SpaceJet out = SpaceJet.along(u, blended.cos()).plus(SpaceJet.along(v, blended.sin()));
        return hand.plus(bent(out, share.times(bend)).times(Jet.constant(length)))
                .plus(SpaceJet.along(u, bridge.swell().along(0, x)))
                .plus(SpaceJet.along(v, bridge.swell().along(1, x)))
                .state();
    }

    /** Rodrigues' formula: turned about the axis by an angle. */
    private SpaceJet bent(SpaceJet c, Jet angle) {
        if (bend < 1e-9) {
            return c;
        }
        SpaceJet w = SpaceJet.along(axis, Jet.constant(1));
        SpaceJet across = w.cross(c);
        SpaceJet twice = w.cross(across);
        return c.plus(across.times(angle.sin()))
                .plus(twice.times(Jet.constant(1).minus(angle.cos())));
    }

    private Jet angle(Trace trace, TetherAngle unwrapped, double time) {
        double cycles = Math.floor(time / trace.period());
        double value = unwrapped.at(time - cycles * trace.period(), (long) cycles);
        var plane = trace.pairing().part(side).place().plane();
        SpaceJet r =
                SpaceJet.of(trace.head(side).at(time))
                        .minus(SpaceJet.of(trace.hand(side).at(time)));
        Jet a = r.along(plane.u());
        Jet b = r.along(plane.v());
        double square = length * length;
        double rate = a.value() * b.d1() - b.value() * a.d1();
        double quick = a.value() * b.d2() - b.value() * a.d2();
        double third = a.value() * b.d3() + a.d1() * b.d2() - b.value() * a.d3() - b.d1() * a.d2();
        return new Jet(value, rate / square, quick / square, third / square);
    }
}
