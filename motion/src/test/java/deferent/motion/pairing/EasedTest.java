package deferent.motion.pairing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Stretches.Ease;
import deferent.motion.pairing.Stretches.Stretch;
import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import org.hipparchus.analysis.differentiation.DSFactory;
import org.hipparchus.analysis.differentiation.DerivativeStructure;
import org.hipparchus.analysis.integration.RombergIntegrator;
import org.hipparchus.analysis.interpolation.HermiteInterpolator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A poi that changes its rate eases into it. */
class EasedTest {
    private static final int ORDER = 4;
    private static final double RADIUS = 0.6;
    private static final double TETHER = 0.6;

    /** Four petals: five turns a cycle in-spin, three antispin. */
    private static Stretches halfAndHalf(double ease) {
        return new Stretches(
                0,
                List.of(new Stretch(0.5, 2.5, Ease.EVEN), new Stretch(0.5, -1.5, Ease.EVEN)),
                ease);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.125, 0.01, 0.3, 1})
    void theHeadOfAnEasedHalfAndHalfFlowerIsFourTimesContinuouslyDifferentiable(double ease) {
        assertSmooth(halfAndHalf(ease));
    }

    @Test
    void atTheEdgesOfAWindowTheRateIsTheStretchsOwnAndNothingElseMoves() {
        Stretches law = halfAndHalf(0.125);
        for (double edge : new double[] {0.0625, 0.4375}) {
            assertThat(law.course().at(edge).d1()).isCloseTo(10 * Math.PI, within(1e-11));
            assertThat(law.course().at(edge).d2()).isCloseTo(0, within(1e-9));
            assertThat(law.course().at(edge).d3()).isCloseTo(0, within(1e-7));
        }
        assertThat(law.course().at(0.5).d1()).isCloseTo(2 * Math.PI, within(1e-11));
    }

    @Test
    void besideItsWindowsAnEasedFlowerIsTheDrawnOne() {
        SpinLaw.Course eased = halfAndHalf(0.125).course();
        SpinLaw.Course drawn = halfAndHalf(0).course();
        for (double phase :
                new double[] {0.0625, 0.1, 0.3, 0.4375, 0.5625, 0.8, 0.9375, 1.3, -0.2}) {
            assertThat(eased.angle(phase)).isCloseTo(drawn.angle(phase), within(1e-12));
        }
        assertThat(eased.angle(1.02) - eased.angle(0.02)).isCloseTo(2 * Math.PI, within(1e-12));
    }

    // Independent calculation: its windows are alike, so what is odd about a join stays odd.
    @Test
    void anEasedFlowerTurnsAlikeOnBothSidesOfAChange() {
        Stretches law = halfAndHalf(0.2);
        double mean = 2 * Math.PI;
        for (double join : new double[] {0, 0.5}) {
            for (double by : new double[] {0.01, 0.05, 0.09, 0.2}) {
                double after = law.course().at(join + by).d1() - mean;
                double before = law.course().at(join - by).d1() - mean;
                assertThat(after).isCloseTo(-before, within(1e-10));
            }
        }
    }

    // Independent calculation: the smooth step spelt out in powers of 0 to 1, and integrated by
    // Romberg's rule.
    @Test
    void theAngleIsWhatTheRateAddsUpTo() {
        Stretches law =
                new Stretches(
                        0.3,
                        List.of(
                                new Stretch(0.5, 2.5, Ease.EVEN),
                                new Stretch(0.1, -0.5, Ease.EVEN),
                                new Stretch(0.4, -1, Ease.EVEN)),
                        0.125);
        double[] joins = {0, 0.5, 0.6, 1};
        double[] widths = {0.125, 0.1, 0.1, 0.125};
        double[] rates = {-2.5, 5, -5, -2.5, 5};
        double before = 0.2;
        for (double phase = 0; phase < 1; phase += 0.0437) {
            double to = phase;
            double turned =
                    phase == before
                            ? 0
                            : new RombergIntegrator(1e-11, 1e-11, 3, 25)
                                    .integrate(
                                            1 << 24,
                                            s -> rate(s, joins, widths, rates),
                                            Math.min(before, to),
                                            Math.max(before, to));
            double expected = 0.3 + 2 * Math.PI * (1 + Math.signum(to - before) * turned);
            assertThat(law.course().angle(phase))
                    .as("at " + phase)
                    .isCloseTo(expected, within(1e-8));
        }
    }

    private static double rate(double s, double[] joins, double[] widths, double[] rates) {
        double rate = rates[0];
        for (int i = 0; i < joins.length; i++) {
            double x = Math.max(0, Math.min(1, (s - joins[i]) / widths[i] + 0.5));
            double step =
                    35 * Math.pow(x, 4)
                            - 84 * Math.pow(x, 5)
                            + 70 * Math.pow(x, 6)
                            - 20 * Math.pow(x, 7);
            rate += (rates[i + 1] - rates[i]) * step;
        }
        return rate;
    }

    @Test
    void aPoiThatStallsStillRestsAndMakesItsTurns() {
        for (double ease : new double[] {0, 0.01, 0.125, 0.5}) {
            Stretches stall =
                    new Stretches(
                            -Math.PI,
                            List.of(
                                    new Stretch(0.5, 0.5, Ease.RESTING),
                                    new Stretch(0.5, -0.5, Ease.RESTING)),
                            ease);
            SpinLaw.Course course = stall.course();
            assertThat(course.at(0).value()).isCloseTo(-Math.PI, within(1e-12));
            assertThat(course.at(0).d1()).isZero();
            assertThat(course.at(0.5).value()).isCloseTo(0, within(1e-12));
            assertThat(course.at(0.5).d1()).isCloseTo(0, within(1e-11));
            assertThat(course.at(0.25).value()).isCloseTo(-Math.PI / 2, within(1e-12));
            assertThat(stall.breaks().isEmpty()).isEqualTo(ease > 0);
        }
    }

    @Test
    void withoutEaseTheRateChangesAtOnceAndTheBreakIsListed() {
        assertThat(halfAndHalf(0).breaks())
                .extracting(Break::order, Break::phase)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(1, 0.0),
                        org.assertj.core.groups.Tuple.tuple(1, 0.5));
        assertThat(halfAndHalf(0).eased()).isZero();
        assertThat(halfAndHalf(-0.0)).isEqualTo(halfAndHalf(0));
        assertThat(halfAndHalf(0).course().at(0).value()).isZero();
        assertThat(halfAndHalf(0).course().at(0).d1()).isEqualTo(10 * Math.PI);
        assertThat(halfAndHalf(0).course().before(0.5).d1()).isEqualTo(10 * Math.PI);
        assertThat(halfAndHalf(0).course().at(0.5).d1()).isEqualTo(-6 * Math.PI);
        assertThat(halfAndHalf(0).course().at(0.75).value())
                .isCloseTo(3.5 * Math.PI, within(1e-12));
    }

    @Test
    void whatEasingMovesGrowsWithTheWindow() {
        double before = Math.PI;
        for (double ease : new double[] {0.5, 0.25, 0.125, 0.0625, 0.02, 0.01}) {
            double moved = halfAndHalf(ease).eased();
            // Eight turns a cycle, 35/512 of a window.
            assertThat(moved).isCloseTo(2 * Math.PI * 8 * ease * 35 / 512, within(1e-9));
            assertThat(moved).isLessThan(before);
            before = moved;
        }
        Stretches stall = halfAndHalf(0.02).resting();
        assertThat(stall.eased()).isBetween(1e-6, stall.withEase(0.2).eased() / 100);
    }

    @Test
    void aWindowIsNoWiderThanEitherStretchAndAStretchTooShortStaysSharp() {
        Stretches law =
                new Stretches(
                        0,
                        List.of(
                                new Stretch(0.5, 1, Ease.EVEN),
                                new Stretch(0.05, 1, Ease.EVEN),
                                new Stretch(0.442, 2, Ease.EVEN),
                                new Stretch(0.008, 0, Ease.EVEN)));
        assertThat(law.window(1)).isEqualTo(0.05);
        assertThat(law.window(2)).isEqualTo(0.05);
        assertThat(law.window(3)).isZero();
        assertThat(law.window(0)).isZero();
        assertThat(law.breaks()).hasSize(2).allMatch(b -> b.order() == 1);
        // Ten windows of a twentieth: half a turn each.
        assertThat(law.fastest()).isEqualTo(20);
    }

    @Property
    void aPoiThatTurnsInAnyStretchesIsSmoothAndComesRound(Any any) {
        Stretches law = stretches(any);
        assertThat(law.breaks()).isEmpty();
        assertSmooth(law);
        SpinLaw.Course course = law.course();
        double at = any.number(0, 1);
        assertThat(course.angle(at + 1) - course.angle(at))
                .isCloseTo(2 * Math.PI * law.turns(), within(1e-9));
        assertThat(course.angle(at)).isEqualTo(course.at(at).value());
        Stretches half = law.withEase(law.ease() / 2);
        assertThat(half.eased()).isLessThanOrEqualTo(law.eased() + 1e-12);
    }

    @Property
    void inTheMiddleOfAnEvenStretchTheTetherPointsWhereItIsDrawn(Any any) {
        Stretches law = stretches(any);
        SpinLaw.Course eased = law.course();
        SpinLaw.Course drawn = law.withEase(0).course();
        double from = 0;
        for (Stretch stretch : law.stretches()) {
            double middle = from + stretch.share() / 2;
            if (stretch.ease() == Ease.EVEN) {
                assertThat(eased.angle(middle)).isCloseTo(drawn.angle(middle), within(1e-9));
            }
            from += stretch.share();
        }
    }

    private static Stretches stretches(Any any) {
        int count = any.whole(1, 5);
        double[] shares = DoubleStream.generate(() -> any.number(0.2, 1)).limit(count).toArray();
        double all = Arrays.stream(shares).sum();
        List<Stretch> list = new ArrayList<>();
        double turns = 0;
        for (int i = 0; i < count; i++) {
            double each = i + 1 < count ? any.number(-3, 3) : any.whole(-4, 4) - turns;
            turns += each;
            list.add(new Stretch(shares[i] / all, each, any.of(Ease.class)));
        }
        return new Stretches(any.number(-3, 3), list, any.number(0.02, 1));
    }

    /** In the middle of every window and at its edges. */
    private static void assertSmooth(Stretches law) {
        double join = 0;
        for (int i = 0; i < law.stretches().size(); i++) {
            double width = law.window(i);
            for (double at : width == 0 ? new double[0] : new double[] {-0.5, 0, 0.5}) {
                double room = room(law, i, at);
                // So near that no other piece begins; from nearer still, rounding would decide.
                double near = room > 0 ? Math.min(width / 4, room) : width / 4;
                if (near > width / 50) {
                    assertSmooth(law, join + at * width, near, width);
                }
            }
            join += law.stretches().get(i).share();
        }
    }

    /** How far it is from a window's outer edge to the next window; 0 where they touch. */
    private static double room(Stretches law, int i, double at) {
        int count = law.stretches().size();
        int stretch = at < 0 ? (i + count - 1) % count : i;
        double between =
                law.stretches().get(stretch).share()
                        - (law.window(stretch) + law.window((stretch + 1) % count)) / 2;
        return between < 1e-9 ? 0 : between;
    }

    private static void assertSmooth(Stretches law, double phase, double near, double width) {
        double[][] before = headDerivatives(law, phase, -near);
        double[][] after = headDerivatives(law, phase, near);
        double rate =
                2
                        * Math.PI
                        * (1
                                + law.stretches().stream()
                                        .mapToDouble(s -> 3 * Math.abs(s.turns()) / s.share())
                                        .max()
                                        .orElse(0));
        for (int order = 1; order <= ORDER; order++) {
            // As large as that derivative may be: a turn of the tether, a window's own changes.
            double size = Math.pow(Math.max(rate, 8 / width), order);
            for (int axis = 0; axis < 2; axis++) {
                assertThat(before[axis][order] / size)
                        .as("derivative " + order + " at " + phase + " of " + law)
                        .isCloseTo(after[axis][order] / size, within(1e-6));
            }
        }
    }

    /**
     * Derivatives of the head from one side. The angle there is a polynomial of degree 12 at most,
     * which the exact jets of four places on that side determine.
     */
    private static double[][] headDerivatives(Stretches law, double phase, double reach) {
        SpinLaw.Course course = law.course();
        HermiteInterpolator angle = new HermiteInterpolator();
        for (int i = 0; i < 4; i++) {
            double s = phase + reach * i / 3;
            Jet jet = i == 0 && reach < 0 ? course.before(s) : course.at(s);
            double unit = Math.abs(reach);
            angle.addSamplePoint(
                    i * Math.signum(reach) / 3,
                    new double[] {jet.value()},
                    new double[] {jet.d1() * unit},
                    new double[] {jet.d2() * unit * unit},
                    new double[] {jet.d3() * unit * unit * unit});
        }
        double[][] turned = angle.derivatives(0, ORDER);
        double[] taylor = new double[ORDER + 1];
        for (int order = 0; order <= ORDER; order++) {
            taylor[order] = turned[order][0] / Math.pow(Math.abs(reach), order);
        }
        DSFactory factory = new DSFactory(1, ORDER);
        DerivativeStructure poi = factory.build(taylor);
        DerivativeStructure hand = factory.variable(0, phase).multiply(2 * Math.PI);
        return new double[][] {
            hand.cos().multiply(RADIUS).add(poi.cos().multiply(TETHER)).getAllDerivatives(),
            hand.sin().multiply(RADIUS).add(poi.sin().multiply(TETHER)).getAllDerivatives()
        };
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.1, 0.005, 1.1, Double.NaN})
    void anEaseThatIsNoShareOfTheCycleIsRefused(double ease) {
        assertThatThrownBy(() -> halfAndHalf(ease))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("ease")
                .hasMessageContaining("0.01 to 1 of the cycle, or 0");
    }

    @Test
    void theEaseStaysWhateverElseIsChanged() {
        Stretches law = halfAndHalf(0.2);
        assertThat(law.turned(1).ease()).isEqualTo(0.2);
        assertThat(law.resting().ease()).isEqualTo(0.2);
        assertThat(law.from(1).inStretches().orElseThrow().ease()).isEqualTo(0.2);
        assertThat(new Stretches(0, law.stretches()).ease()).isEqualTo(0.125);
    }
}
