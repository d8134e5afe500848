package deferent.search.transition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Course;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import java.util.List;
import java.util.OptionalDouble;
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
        Course hand = trace.hand(side);
        Vector3D from = trace.head(side).position(0).subtract(hand.position(0));
        Vector3D speed = trace.head(side).at(0).velocity().subtract(hand.at(0).velocity());
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
        double end = trace.period();
        double[] last =
                new ClassicalRungeKuttaIntegrator(1e-4)
                        .integrate(pendulum, new ODEState(0, y), end)
                        .getPrimaryState();
        Vector3D head = new Vector3D(last[0], last[1], last[2]).add(hand.position(end));
        return head.distance(trace.head(side).position(end));
    }
}
