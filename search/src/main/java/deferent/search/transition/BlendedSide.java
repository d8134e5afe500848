package deferent.search.transition;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Jet;
import deferent.motion.pairing.SmoothStep;
import deferent.motion.trace.Course;
import deferent.motion.trace.State;
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

    private final SpunSide from;
    private final SpunSide to;
    private final Bridge bridge;
    private final double length;
    private final Vector3D u;
    private final Vector3D v;
    private final Vector3D axis;
    private final double bend;
    private final Stagger stagger;
    private final Vector3D left;
    private final Vector3D joined;

    private BlendedSide(SpunSide from, SpunSide to, Bridge bridge) {
        this.from = from;
        this.to = to;
        this.bridge = bridge;
        this.length = from.length();
        this.u = from.u();
        this.v = from.v();
        Rotation turn = new Rotation(u, v, to.u(), to.v());
        this.axis = turn.getAxis(RotationConvention.VECTOR_OPERATOR);
        this.bend = turn.getAngle();
        this.stagger = Stagger.of(from, to);
        this.left = from.middle();
        this.joined = to.middle();
    }

    static BlendedSide of(SpunPattern from, SpunPattern to, Bridge bridge) {
        SpunSide left = from.side(bridge.side());
        return new BlendedSide(left, to.side(bridge.side()).toward(left), bridge);
    }

    /** Where the blend has the hand. */
    Course plainHand() {
        return time -> hand(time).state();
    }

    /** What the head draws. */
    Course head() {
        return this::drawn;
    }

    /**
     * The hand behind which a cord draws the head's path, hand = p + L·b/|b| with b = p″ − g: place
     * and velocity from the head's derivatives, acceleration and jerk from differences of that
     * velocity, which are right to 1e-4 m/s² and 0.1 m/s³.
     */
    Course hand() {
        double seconds = bridge.seconds();
        double h = STEP * seconds;
        return time -> {
            // At a join the jerk jumps, so differences are taken just within it.
            double within = Math.max(h, Math.min(seconds - h, time));
            State before = led(drawn(within - h), length);
            State middle = led(drawn(within), length);
            State after = led(drawn(within + h), length);
            State now = led(drawn(time), length);
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

    private double there(double time) {
        return bridge.leaves() + time + bridge.later();
    }

    private Jet share(double time) {
        return Jet.line(time / bridge.seconds(), 1 / bridge.seconds());
    }

    private SpaceJet hand(double time) {
        Jet x = share(time);
        return middle(x).plus(bent(about(time, x), bends(x)));
    }

    /** Where the middle of the hand's path is. */
    private SpaceJet middle(Jet x) {
        Jet goes = SmoothStep.share(stagger.hand().share(x));
        return still(left).plus(still(joined.subtract(left)).times(goes));
    }

    /** The hand about that, as before its plane bends. */
    private SpaceJet about(double time, Jet x) {
        SpaceJet hand = SpaceJet.of(from.hand().at(bridge.leaves() + time)).minus(still(left));
        SpaceJet next = SpaceJet.of(to.hand().at(there(time))).minus(still(joined));
        SpaceJet back = bent(next, Jet.constant(-bend));
        return hand.plus(back.minus(hand).times(SmoothStep.share(x)));
    }

    private Jet bends(Jet x) {
        return SmoothStep.share(stagger.bend().share(x)).times(bend);
    }

    private static SpaceJet still(Vector3D place) {
        return new SpaceJet(
                Jet.constant(place.getX()), Jet.constant(place.getY()), Jet.constant(place.getZ()));
    }

    private State drawn(double time) {
        Jet x = share(time);
        Jet share = SmoothStep.share(x);
        Jet angle = angle(from, bridge.leaves() + time);
        Jet next = angle(to, there(time)).plus(2 * Math.PI * bridge.turns());
        Jet blended = angle.plus(next.minus(angle).times(share));
        Jet lean = lean(from, bridge.leaves() + time);
        Jet leans = lean.plus(lean(to, there(time)).minus(lean).times(share));
        Jet flat = TetherLean.inPlane(leans);
        SpaceJet out =
                SpaceJet.along(u, flat.times(blended.cos()))
                        .plus(SpaceJet.along(v, flat.times(blended.sin())))
                        .plus(SpaceJet.along(u.crossProduct(v), leans));
        SpaceJet head = about(time, x).plus(out.times(Jet.constant(length)));
        return middle(x)
                .plus(bent(head, bends(x)))
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

    private static Jet angle(SpunSide side, double time) {
        SpaceJet r = tether(side, time);
        return TetherLean.angle(side.angle(time), r.along(side.u()), r.along(side.v()));
    }

    private static Jet lean(SpunSide side, double time) {
        return tether(side, time).along(side.u().crossProduct(side.v())).times(1 / side.length());
    }

    private static SpaceJet tether(SpunSide side, double time) {
        return SpaceJet.of(side.head().at(time)).minus(SpaceJet.of(side.hand().at(time)));
    }
}
