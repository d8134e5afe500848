package deferent.search.transition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import deferent.reading.tether.KeepTheFigure;
import deferent.reading.tether.Steadiness;
import java.util.List;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.ClassicalRungeKuttaIntegrator;
import org.junit.jupiter.api.Test;

class TransitionsTest {
    private static final double WEIGHT = 9.80665;

    private static Pairing at(String phrase, double tempo) {
        return Phrase.parse(phrase).with(Tether.of(0.40)).withTempo(OptionalDouble.of(tempo));
    }

    private static final TransitionFinder FINDER = new TransitionFinder(TransitionRequest.USUAL);
    private static final Pairing EXTENSIONS = at("extension vs extension, opposites", 50);
    private static final Pairing STATIC = at("static spin vs triquetra", 60);
    private static final Pairing MIXED = at("extension vs triquetra", 50);

    @Test
    void anExtensionThatGoesOnKeepsGoingWhileTheOtherHandChanges() {
        Transitions found =
                FINDER.between(
                        at("extension vs extension", 60), at("extension vs static spin", 60));
        assertTrue(
                found.list().stream().anyMatch(t -> t.left().keeps()),
                found.why() + " " + found.list());
    }

    @Test
    void aPassageIsThatOfACordBehindItsHand() {
        // Independent of how it was found: a point mass on a rod of that length behind the hand,
        // integrated from where the passage begins, with the pull watched (Lagrange's equations of
        // a pendulum whose pivot is led).
        for (Transition transition : found()) {
            Trace trace = played(transition, 0);
            for (Side side : Side.values()) {
                double miss = missed(trace, side);
                assertTrue(miss < 0.03, transition.from() + " misses by " + miss);
            }
        }
    }

    @Test
    void handsGoOnWithoutAJumpOfPlaceOrSpeedThroughBothJoins() {
        for (Transition transition : found()) {
            double before = 0.3;
            Trace trace = played(transition, before);
            for (Side side : Side.values()) {
                Bridge bridge = transition.bridge(side);
                if (bridge.keeps()) {
                    continue;
                }
                double leaves = before + bridge.leaves() - transition.leaves();
                for (double join : new double[] {leaves, leaves + bridge.seconds()}) {
                    for (Course course : List.of(trace.hand(side), trace.head(side))) {
                        State one = course.at(join - 1e-7);
                        State two = course.at(join + 1e-7);
                        assertEquals(0, one.position().distance(two.position()), 1e-5);
                        assertEquals(0, one.velocity().distance(two.velocity()), 1e-3);
                        assertEquals(0, one.acceleration().distance(two.acceleration()), 0.5);
                    }
                }
            }
        }
    }

    @Test
    void theCordPullsAllTheWay() {
        for (Transition transition : found()) {
            Trace trace = played(transition, 0);
            for (Side side : Side.values()) {
                if (transition.bridge(side).keeps()) {
                    continue;
                }
                for (int i = 0; i <= 200; i++) {
                    double t = trace.period() * i / 200;
                    State head = trace.head(side).at(t);
                    State hand = trace.hand(side).at(t);
                    Vector3D force = head.acceleration().add(new Vector3D(0, WEIGHT, 0));
                    Vector3D cord = hand.position().subtract(head.position());
                    assertEquals(0.40, cord.getNorm(), 1e-6);
                    double pull = force.dotProduct(cord) / 0.40 / WEIGHT;
                    assertTrue(pull > 0.28, "pull " + pull + " at " + t);
                    assertEquals(0, force.crossProduct(cord).getNorm() / WEIGHT, 1e-3);
                }
            }
        }
    }

    @Test
    void whatIsFoundKeepsTheLimitsOfItsGrade() {
        for (Transition t : found()) {
            assertTrue(t.stray() <= t.grade().stray() + 1e-9);
            assertTrue(t.leastPull() >= t.grade().leastPull());
            for (Side side : Side.values()) {
                assertTrue(t.bridge(side).quickening() <= t.grade().quickening() + 1e-9);
            }
        }
    }

    @Test
    void otherTethersAreAnotherMatter() {
        Transitions none =
                FINDER.between(
                        EXTENSIONS,
                        Phrase.parse("extension vs extension, opposites")
                                .with(Tether.of(0.35))
                                .withTempo(OptionalDouble.of(50)));
        assertEquals(Hindrance.TETHERS, none.why());
    }

    @Test
    void aPatternBeyondTheArmsHasNoTransitions() {
        Pairing far =
                Phrase.parse("extension vs extension")
                        .with(Tether.of(0.9))
                        .withTempo(OptionalDouble.of(50));
        assertEquals(Hindrance.REACH, FINDER.between(far, far).why());
    }

    @Test
    void afterTheArrivalASlipGrowsOnlyWhereThePatternItselfRunsAway() {
        Pairing swings =
                Phrase.parse("pendulum amplitude 60° vs pendulum amplitude 60°")
                        .with(Tether.of(0.40));
        int running = 0;
        int staying = 0;
        for (Pairing to : List.of(EXTENSIONS, MIXED, swings)) {
            Transition transition = FINDER.between(STATIC, to).best().orElseThrow();
            double stays = 4 * to.period();
            double over = transition.seconds();
            Trace trace = FINDER.play(List.of(transition), transition.leaves(), 0, stays).trace();
            Trace ideal = Trace.of(to);
            for (Side side : Side.values()) {
                double worst = 0;
                for (int i = 1; i <= 8; i++) {
                    double until = over + stays * i / 8;
                    worst = Math.max(worst, missed(trace, side, over, 0.01, until));
                }
                Steadiness alone = Steadiness.of(KeepTheFigure.of(ideal, side, DrawnSide.KIT));
                boolean runsAway = alone.verdict() == Steadiness.Verdict.RUNS_AWAY;
                running += runsAway ? 1 : 0;
                staying += runsAway ? 0 : 1;
                assertEquals(runsAway, worst > 0.10, to + " " + side.word() + ": " + worst);
            }
        }
        assertTrue(running > 0 && staying > 0, running + " run away, " + staying + " stay");
    }

    @Test
    void fromTheWallToTheWheelPlaneAPoiBendsItsPlane() {
        Pairing wall = at("extension vs extension", 50);
        Pairing wheel = at("extension in the wheel plane vs extension", 50);
        Transition bent = FINDER.between(wall, wheel).best().orElseThrow();
        assertEquals(TransitionKind.PLANE_BEND, bent.left().kind());
        Trace trace = played(bent, 0);
        double begins = bent.left().leaves() - bent.leaves();
        double ends = begins + bent.left().seconds();
        assertEquals(0, cord(trace, begins + 1e-6).getZ(), 0.01, "it begins in the wall plane");
        assertEquals(0, cord(trace, ends - 1e-6).getX(), 0.01, "it ends in the wheel plane");
        assertTrue(missed(trace, Side.LEFT) < 0.03);
    }

    private static Vector3D cord(Trace trace, double time) {
        return trace.head(Side.LEFT).position(time).subtract(trace.hand(Side.LEFT).position(time));
    }

    private static List<Transition> found() {
        List<Transition> all =
                List.of(
                        FINDER.between(EXTENSIONS, MIXED).best().orElseThrow(),
                        FINDER.between(STATIC, MIXED).best().orElseThrow(),
                        FINDER.between(MIXED, EXTENSIONS).best().orElseThrow());
        assertEquals(3, all.size());
        return all;
    }

    private static Trace played(Transition transition, double beside) {
        return FINDER.play(List.of(transition), transition.leaves() - beside, beside, beside)
                .trace();
    }

    private static double missed(Trace trace, Side side) {
        return missed(trace, side, 0, 0, trace.period());
    }

    /**
     * How far a head is off at the end behind that hand, metres.
     *
     * @param start when it starts from the head's own place, its cord turned in the wall plane
     * @param slip by so much, metres
     */
    private static double missed(Trace trace, Side side, double start, double slip, double end) {
        Course hand = trace.hand(side);
        Rotation turned =
                new Rotation(Vector3D.PLUS_K, slip / 0.40, RotationConvention.VECTOR_OPERATOR);
        Vector3D from =
                turned.applyTo(trace.head(side).position(start).subtract(hand.position(start)));
        Vector3D speed =
                turned.applyTo(
                        trace.head(side).at(start).velocity().subtract(hand.at(start).velocity()));
        double[] y = {
            from.getX(), from.getY(), from.getZ(), speed.getX(), speed.getY(), speed.getZ()
        };
        OrdinaryDifferentialEquation pendulum =
                new OrdinaryDifferentialEquation() {
                    @Override
                    public int getDimension() {
                        return 6;
                    }

                    @Override
                    public double[] computeDerivatives(double t, double[] s) {
                        Vector3D r = new Vector3D(s[0], s[1], s[2]);
                        Vector3D v = new Vector3D(s[3], s[4], s[5]);
                        Vector3D drive =
                                new Vector3D(0, -WEIGHT, 0).subtract(hand.at(t).acceleration());
                        double square = r.getNormSq();
                        double pull = (v.getNormSq() + drive.dotProduct(r)) / square;
                        Vector3D a = drive.subtract(r.scalarMultiply(pull));
                        return new double[] {
                            v.getX(), v.getY(), v.getZ(), a.getX(), a.getY(), a.getZ()
                        };
                    }
                };
        double[] last =
                new ClassicalRungeKuttaIntegrator(1e-4)
                        .integrate(pendulum, new ODEState(start, y), end)
                        .getPrimaryState();
        Vector3D head = new Vector3D(last[0], last[1], last[2]).add(hand.position(end));
        return head.distance(trace.head(side).position(end));
    }
}
