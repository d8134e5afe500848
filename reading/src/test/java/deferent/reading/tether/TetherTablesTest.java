package deferent.reading.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Polygon;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Timing;
import deferent.motion.pairing.Turns;
import deferent.motion.shared.Side;
import deferent.motion.trace.Interval;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.linear.LUDecomposition;
import org.junit.jupiter.api.Test;

/** Small things beneath a cord's readings, each by its own closed form. */
class TetherTablesTest {
    private static final double TURN = 2 * Math.PI;

    /** A head of mass m on a rod of mass μL hangs as m + μL/2 does at its centre of oscillation. */
    @Test
    void halfACordsMassGoesWithTheHead() {
        Cord cord = new Cord(0.6, new Kit(0.12, 0.07, 0.05, false), Gravity.STANDARD);
        assertThat(cord.swingMass()).isCloseTo(0.12 + 0.05 * 0.6 / 2, within(1e-15));
        double first = 0.12 * 0.6 + 0.05 * 0.36 / 2;
        double second = 0.12 * 0.36 + 0.05 * 0.216 / 3;
        assertThat(cord.swingLength()).isCloseTo(second / first, within(1e-15));
    }

    /** Rω² on a circle. */
    @Test
    void theQuickestOfAHandCircleIsItsCentripetalAcceleration() {
        Trace trace = Spun.triquetra(0.8);
        HandTables tables = HandTables.of(trace.hand(Side.LEFT), Times.cuts(trace, Side.LEFT, 2));
        double rate = TURN / 0.8;
        assertThat(tables.quickest()).isCloseTo(0.6 * rate * rate, within(1e-9));
        Trace slow = Spun.triquetra(1.6);
        assertThat(tables.slowed(2, slow.hand(Side.LEFT)).quickest())
                .isCloseTo(0.6 * rate * rate / 4, within(1e-9));
    }

    @Test
    void theNearestStepIsThatOfTheSamePhaseOfAnyCycle() {
        Trace trace = Spun.triquetra(0.8);
        HandTable table = HandTable.of(trace.hand(Side.LEFT), Times.cuts(trace, Side.LEFT, 2), 8);
        assertThat(table.nearest(0.31)).isEqualTo(3);
        assertThat(table.nearest(0.31 + 1.6)).isEqualTo(3);
        assertThat(table.nearest(-0.29)).isEqualTo(5);
        assertThat(table.nearest(0.79)).isZero();
    }

    @Test
    void aPointsDistanceFromACircleIsThatFromItsNearestPoint() {
        double r = 0.6;
        Polyline circle =
                Polyline.of(
                        t ->
                                new State(
                                        new Vector3D(
                                                r * Math.cos(TURN * t),
                                                0.1,
                                                r * Math.sin(TURN * t)),
                                        Vector3D.ZERO,
                                        Vector3D.ZERO,
                                        Vector3D.ZERO),
                        new Interval(0, 1));
        for (double angle = 0.1; angle < 6; angle += 0.7) {
            for (double from : new double[] {0, 0.3, 0.6, 1.1}) {
                for (double up : new double[] {-0.4, 0, 0.9}) {
                    Vector3D p =
                            new Vector3D(from * Math.cos(angle), 0.1 + up, from * Math.sin(angle));
                    assertThat(circle.distance(p))
                            .isCloseTo(Math.hypot(from - r, up), within(1e-5));
                }
            }
        }
    }

    /** Lanczos's factor sin(x)/x, x = πk/(highest + 1), and nothing turned. */
    @Test
    void roundingLowersEachTurningVectorByItsFactor() {
        Series path =
                new Series(List.of(new Series.Term(1, 0.5, 0.3), new Series.Term(-2, 0.2, 1.0)));
        Rounded rounded = Rounded.of(path, 5);
        for (Series.Term term : rounded.path().terms()) {
            double x = Math.PI * term.k() / 6;
            double factor = Math.sin(x) / x;
            if (term.k() == 1) {
                assertThat(term.radius()).isCloseTo(0.5 * factor, within(1e-12));
                assertThat(term.angle()).isCloseTo(0.3, within(1e-12));
            } else if (term.k() == -2) {
                assertThat(term.radius()).isCloseTo(0.2 * factor, within(1e-12));
                assertThat(term.angle()).isCloseTo(1.0, within(1e-12));
            } else {
                assertThat(term.radius()).isCloseTo(0, within(1e-12));
            }
        }
        // Both vectors point one way at some instant: there the path gives most.
        double first = Math.sin(Math.PI / 6) / (Math.PI / 6);
        double second = Math.sin(Math.PI / 3) / (Math.PI / 3);
        assertThat(rounded.farthest())
                .isCloseTo(0.5 * (1 - first) + 0.2 * (1 - second), within(1e-5));
    }

    @Test
    void aFreeHeadFliesOnAParabolaBetweenTheStepsToo() {
        Cord cord = new Cord(0.6, Kit.USUAL, Gravity.STANDARD);
        Vector3D v = new Vector3D(1, 2, -0.5);
        double[] times = {0, 0.3, 0.5};
        double[] states = new double[18];
        for (int i = 0; i < 3; i++) {
            put(states, i, thrown(v, times[i]), v.add(new Vector3D(times[i], cord.fall())));
        }
        Flying flying = new Flying(cord, times, states);
        for (double t : new double[] {0, 0.07, 0.3, 0.41, 0.5}) {
            State at = flying.at(t);
            assertThat(at.position().distance(thrown(v, t))).isLessThan(1e-12);
            assertThat(at.velocity().distance(v.add(new Vector3D(t, cord.fall()))))
                    .isLessThan(1e-12);
            assertThat(at.acceleration()).isEqualTo(cord.fall());
            assertThat(at.jerk()).isEqualTo(Vector3D.ZERO);
        }
    }

    private static Vector3D thrown(Vector3D v, double t) {
        return new Vector3D(t, v).add(new Vector3D(0, -Gravity.STANDARD * t * t / 2, 0));
    }

    private static void put(double[] states, int step, Vector3D p, Vector3D v) {
        System.arraycopy(p.toArray(), 0, states, 6 * step, 3);
        System.arraycopy(v.toArray(), 0, states, 6 * step + 3, 3);
    }

    /** Newton: m·a = m·g + D; and a jerk is how an acceleration changes. */
    @Test
    void inAirAFlyingHeadIsSlowedAgainstItsWayWhicheverWayThatIs() {
        Cord cord = new Cord(0.6, Kit.USUAL.withAir(true), Gravity.STANDARD);
        for (Vector3D v :
                new Vector3D[] {
                    new Vector3D(3, 0.1, 0.1), new Vector3D(0.1, -4, 0.2), new Vector3D(1, 2, 5)
                }) {
            double[] rate = new double[Flying.SIZE];
            double[] state = {0, 0, 0, v.getX(), v.getY(), v.getZ()};
            Flying.rate(cord, state, rate);
            Vector3D expected =
                    cord.fall().add(cord.drag(v).scalarMultiply(1 / cord.kit().headMass()));
            Vector3D found = new Vector3D(rate[3], rate[4], rate[5]);
            assertThat(found.distance(expected)).isLessThan(1e-12);
            double[] states = new double[12];
            double h = 0.004;
            put(states, 0, Vector3D.ZERO, v);
            put(
                    states,
                    1,
                    new Vector3D(h, v).add(new Vector3D(h * h / 2, expected)),
                    v.add(new Vector3D(h, expected)));
            Flying flying = new Flying(cord, new double[] {0, h}, states);
            Vector3D change =
                    flying.at(h * 0.75)
                            .acceleration()
                            .subtract(flying.at(h * 0.25).acceleration())
                            .scalarMultiply(2 / h);
            Vector3D jerk = flying.at(h / 2).jerk();
            assertThat(jerk.distance(change)).isLessThan(0.02 * jerk.getNorm());
        }
    }

    @Test
    void aCornerIsRefusedOnItsOwnSideAndWhereTheHandHasIt() {
        Polygon box = new Polygon(4, 0.3, Math.PI / 4);
        Trace trace =
                Spun.pair(
                        new Motion(box, new Turns(-3, 0)),
                        Motion.flower(0.6, -2, 0),
                        OptionalDouble.of(60));
        assertThatThrownBy(() -> Corners.refuse(trace, Side.LEFT)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> Corners.refuseHand(trace, Side.LEFT)).isInstanceOf(Refusal.class);
        Corners.refuse(trace, Side.RIGHT);
        Corners.refuseHand(trace, Side.RIGHT);
    }

    @Test
    void aSlippedHeadStaysOnItsCordAndGoesOnTheWayItWent() {
        Trace spin = Spun.staticSpin(0.8);
        State hand = spin.hand(Side.LEFT).at(0.1);
        State head = spin.head(Side.LEFT).at(0.1);
        LetGo.Start ahead = LetGo.Start.slipped(spin, Side.LEFT, 0.1, 0.06);
        // A tenth of a radian on: where the head is that much later.
        State later = spin.head(Side.LEFT).at(0.1 + 0.1 / TURN * 0.8);
        assertThat(ahead.head().distance(later.position())).isLessThan(1e-9);
        assertThat(ahead.velocity().distance(later.velocity())).isLessThan(1e-9);
        assertThat(LetGo.Start.slipped(spin, Side.LEFT, 0.1, 0).head().distance(head.position()))
                .isLessThan(1e-12);
        // At the end of its swing a pendulum has no way: it is turned in its plane.
        Trace pendulum = Spun.pendulum(1.0);
        double end = lastOf(pendulum);
        LetGo.Start turned = LetGo.Start.slipped(pendulum, Side.LEFT, end, 0.06);
        State still = pendulum.head(Side.LEFT).at(end);
        assertThat(turned.head().distance(still.position()))
                .isCloseTo(2 * 0.6 * Math.sin(0.05), within(1e-9));
        assertThat(turned.head().distance(pendulum.hand(Side.LEFT).at(end).position()))
                .isCloseTo(0.6, within(1e-9));
        assertThat(hand.velocity().getNorm()).isZero();
    }

    private static double lastOf(Trace pendulum) {
        double best = 0;
        for (int i = 0; i <= 4; i++) {
            double t = pendulum.period() * i / 4;
            if (speed(pendulum, t) < speed(pendulum, best)) {
                best = t;
            }
        }
        return best;
    }

    private static double speed(Trace trace, double t) {
        return trace.head(Side.LEFT).at(t).velocity().getNorm();
    }

    /** ½mv² at the 2πL/T of a static spin; 2π · 0.6 m a second and 120 g: 0.853 J. */
    @Test
    void aStaticSpinsJoulesAreThoseOfItsSpeed() {
        Pull pull = Pull.of(Spun.staticSpin(1), Side.LEFT, Kit.USUAL);
        double speed = TURN * 0.6;
        assertThat(pull.energy()).isCloseTo(0.06 * speed * speed, within(1e-9));
        assertThat(pull.energy()).isCloseTo(0.853, within(5e-4));
    }

    /** By hand: a triquetra at 180 a minute with a head of 300 g holds 173 J. */
    @Test
    void aQuickTriquetraHoldsAHundredAndSeventyJoules() {
        Pull pull = Pull.of(Spun.triquetra(1.0 / 3), Side.LEFT, Kit.USUAL.withHeadMass(0.3));
        assertThat(pull.energy()).isCloseTo(173, within(0.5));
        assertThat(pull.headSpeed()).isCloseTo(34, within(0.1));
    }

    /** m(ω²L − g·e), e toward the head: each of the ribbon's even times has its own. */
    @Test
    void theRibbonShowsEachInstantsPull() {
        Trace spin = Spun.staticSpin(0.5);
        Pull pull = Pull.of(spin, Side.LEFT, Kit.USUAL);
        double rate = TURN / 0.5;
        for (int i = 0; i < pull.newtons().length; i += 17) {
            double t = 0.5 * i / pull.newtons().length;
            double down =
                    spin.hand(Side.LEFT)
                                    .at(t)
                                    .position()
                                    .subtract(spin.head(Side.LEFT).at(t).position())
                                    .getY()
                            / 0.6;
            assertThat(pull.newtons()[i])
                    .isCloseTo(0.12 * (rate * rate * 0.6 + Gravity.STANDARD * down), within(1e-9));
            assertThat(pull.sidewaysNewtons()[i])
                    .isCloseTo(0.12 * Gravity.STANDARD * Math.sqrt(1 - down * down), within(1e-6));
        }
    }

    @Test
    void whatIsNoNumberIsNoReading() {
        assertThatThrownBy(() -> new Away(Double.NaN, 0, 0, 0, 0, 0, 0))
                .isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> new Pull.Jerk(0, Double.NaN, 0, "corner"))
                .isInstanceOf(Refusal.class);
    }

    @Test
    void aTimeOfAnotherCycleIsWrappedAndAnEndStaysAnEnd() {
        Interval over = new Interval(0.5, 1.3);
        assertThat(KeepTheFigure.wrapped(0.7, over, false)).isEqualTo(0.7);
        assertThat(KeepTheFigure.wrapped(0.7 + 1.6, over, false)).isCloseTo(0.7, within(1e-12));
        assertThat(KeepTheFigure.wrapped(0.7 - 0.8, over, true)).isCloseTo(0.7, within(1e-12));
        assertThat(KeepTheFigure.wrapped(1.3, over, false)).isCloseTo(0.5, within(1e-12));
        assertThat(KeepTheFigure.wrapped(1.3, over, true)).isEqualTo(1.3);
        assertThat(KeepTheFigure.wrapped(0.5, over, false)).isEqualTo(0.5);
        assertThat(KeepTheFigure.wrapped(0.5, over, true)).isCloseTo(1.3, within(1e-12));
    }

    /** Loop the loop: 2π/agm(√5, 1)·√(L/g) = 4.037811640·√(L/g), DLMF 19.8(i). */
    @Test
    void theSlowestLoopTakesLongerOnALongCordAndUnderWeakGravity() {
        for (double length : new double[] {0.3, 0.6, 1.2}) {
            for (double gravity : new double[] {1.62, 9.80665}) {
                assertThat(SlowestTempo.loop(length, gravity))
                        .isCloseTo(4.037811640 * Math.sqrt(length / gravity), within(1e-8));
            }
        }
    }

    @Test
    void aHandThatTrailsItsHeadIsLinkedOnceItsLagIsTakenOut() {
        Trace trace =
                Spun.pair(
                        Motion.staticSpin(1, 0), Motion.flower(0.6, -2, 0), OptionalDouble.of(90));
        Trace late = Trace.of(trace.pairing().with(Timing.of(0.2)));
        double period = late.period();
        Vector3D hand = flat(late.hand(Side.RIGHT).at(0.5 * period).position());
        Vector3D before = flat(late.head(Side.LEFT).at(0.3 * period).position());
        double lag = hand.distance(before) < 1e-9 ? 0.2 : -0.2;
        LinkedTruth truth = LinkedTruth.of(late, Side.LEFT, Kit.USUAL, Vector3D.ZERO, lag, 0.08);
        assertThat(truth.ideal().greatest()).isLessThan(1e-9);
        // The wrong way, four tenths of a turn lie between: a chord of the circle.
        assertThat(
                        LinkedTruth.of(late, Side.LEFT, Kit.USUAL, Vector3D.ZERO, -lag, 0.08)
                                .ideal()
                                .greatest())
                .isCloseTo(2 * 0.6 * Math.sin(0.4 * Math.PI), within(1e-9));
    }

    private static Vector3D flat(Vector3D p) {
        return new Vector3D(p.getX(), p.getY(), 0);
    }

    /** Round a box's corner the hand pulls inward; a poi held inward would have to be pushed. */
    @Test
    void atABoxsCornersOnlyAPoiThatPointsOutwardStaysTaut() {
        Polygon box = new Polygon(4, 0.1, Math.PI / 4);
        Pull outward =
                Pull.of(
                        Spun.of(new Motion(box, new Turns(1, Math.PI / 4)), 0.4),
                        Side.LEFT,
                        Kit.USUAL);
        assertThat(outward.jerks()).isNotEmpty().allMatch(jerk -> jerk.along() > 0);
        assertThat(outward.slack()).isEmpty();
        assertThat(outward.taut()).isTrue();
        Pull inward =
                Pull.of(
                        Spun.of(new Motion(box, new Turns(1, -3 * Math.PI / 4)), 0.4),
                        Side.LEFT,
                        Kit.USUAL);
        assertThat(inward.jerks()).isNotEmpty().allMatch(jerk -> jerk.along() < 0);
        assertThat(inward.taut()).isFalse();
    }

    @Test
    void aSlipGoesTheWayThePoiGoesAlsoWhenItGoesTheOther() {
        Trace spin = Spun.of(Motion.staticSpin(-1, 0), 0.8);
        LetGo.Start ahead = LetGo.Start.slipped(spin, Side.LEFT, 0.1, 0.06);
        State later = spin.head(Side.LEFT).at(0.1 + 0.1 / TURN * 0.8);
        assertThat(ahead.head().distance(later.position())).isLessThan(1e-9);
    }

    @Test
    void theKeepingHandsSpeedIsItsGreatest() {
        KeepTheFigure kept = KeepTheFigure.of(Spun.triquetra(0.5), Side.LEFT, Kit.USUAL);
        double most = 0;
        for (int i = 0; i < 5000; i++) {
            most = Math.max(most, kept.hand().at(0.5 * i / 5000).velocity().getNorm());
        }
        assertThat(kept.handSpeed()).isCloseTo(most, within(2e-3 * most));
    }

    /**
     * Let go level with a still hand, half a swing later it hangs level on the other side; a
     * quarter turn's swing takes 1.180340599 of a small one's (DLMF 22.19(i)).
     */
    @Test
    void aPendulumMissesItsStartByTwoCordsAfterHalfASwing() {
        double half = Math.PI * Math.sqrt(0.6 / Gravity.STANDARD) * 1.180340599;
        Trace still = Spun.staticSpin(half);
        Cord cord = Cord.of(still, Side.LEFT, Kit.USUAL);
        HandTable table = HandTable.of(still.hand(Side.LEFT), Times.cuts(still, Side.LEFT, 2), 96);
        Vector3D level = still.hand(Side.LEFT).at(0).position().add(new Vector3D(0.6, 0, 0));
        Orbit orbit =
                new Orbit(
                        table,
                        cord,
                        t -> new State(level, Vector3D.ZERO, Vector3D.ZERO, Vector3D.ZERO),
                        Vector3D.PLUS_K);
        assertThat(orbit.closing()).isCloseTo(1.2, within(1e-6));
    }

    /** Liouville: without drag slips fill the volume they filled before; drag takes some away. */
    @Test
    void slipsKeepTheirVolumeUnlessAirTakesIt() {
        for (boolean air : new boolean[] {false, true}) {
            Orbit orbit =
                    KeepTheFigure.of(Spun.triquetra(0.8), Side.LEFT, Kit.USUAL.withAir(air))
                            .orbit();
            Floquet floquet = Floquet.of(orbit);
            double volume =
                    floquet.legs().stream()
                            .mapToDouble(
                                    leg ->
                                            Math.log(
                                                    Math.abs(
                                                            new LUDecomposition(leg.slips())
                                                                    .getDeterminant())))
                            .sum();
            assertThat(floquet.volume()).isCloseTo(volume, within(1e-6));
            if (air) {
                assertThat(volume).isLessThan(-0.01);
            } else {
                assertThat(volume).isCloseTo(0, within(1e-6));
            }
        }
    }

    @Test
    void aNarrowDipBetweenSamplesAndOneAcrossTheSeamAreFound() {
        Interval over = new Interval(0, 1);
        Times times = Times.of(over, new double[] {0, 1}, 16);
        DoubleUnaryOperator narrow =
                t -> Math.min(10 * Math.abs(t - 0.25), 40 * Math.abs(t - 0.7) - 0.45);
        assertThat(times.least(times.of(narrow), narrow)).isCloseTo(0.7, within(1e-7));
        DoubleUnaryOperator seam = t -> Math.abs(Math.IEEEremainder(t + 0.01, 1));
        assertThat(times.refined(0, times.of(seam), seam)).isCloseTo(0.99, within(1e-7));
    }

    /**
     * Beside a cord of 0.3 mm a hand goes its circle's 3.8 m in 12 000 radians, thirty thousand
     * parts and more than anybody waits for.
     */
    @Test
    void aStepIsPartedAsOftenAsAShortCordAsksAndNoOftener() {
        Trace trace = Spun.triquetra(1);
        HandTable table = HandTable.of(trace.hand(Side.LEFT), new double[] {0, 1}, 96);
        Cord usual = Cord.of(trace, Side.LEFT, Kit.USUAL);
        double[] start =
                Orbit.state(trace.hand(Side.LEFT).at(0), trace.head(Side.LEFT).at(0), usual);
        double[] whole = start.clone();
        double[] close = start.clone();
        new Marching(usual, 0).step(table, 0, whole);
        new Marching(usual, 0).closely(table, 0, close);
        assertThat(close).containsExactly(whole);
        Marching tiny = new Marching(new Cord(0.6 * TURN / 12_000, Kit.USUAL, Gravity.STANDARD), 0);
        assertThatThrownBy(() -> tiny.closely(table, 0, start.clone())).isInstanceOf(Refusal.class);
        Marching small = new Marching(new Cord(0.05, Kit.USUAL, Gravity.STANDARD), 0);
        double[] parted = start.clone();
        small.closely(table, 0, 0.2, parted);
        double[] stepped = start.clone();
        for (int i = 0; i < 1000; i++) {
            small.step(table, 0.2 * i / 1000, 0.2 * (i + 1) / 1000, stepped);
        }
        for (int i = 0; i < 6; i++) {
            assertThat(parted[i]).isCloseTo(stepped[i], within(1e-3));
        }
    }
}
