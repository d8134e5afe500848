package deferent.motion.phrase;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Arc;
import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.pairing.Riding;
import deferent.motion.pairing.Sense;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Stretches;
import deferent.motion.pairing.Swing;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Tilt;
import deferent.motion.pairing.Timing;
import deferent.motion.pairing.Turns;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Trade phrases say the motions the trade means. Words and defaults: common practice, no source.
 */
class TradePhrasesTest {
    private static final Motion TRIQUETRA = Motion.flower(0.6, -2, 0);
    private static final Motion ISOLATION = Motion.flower(0.3, 1, Math.PI);

    private static Pairing pairing(String phrase) {
        return Phrase.parse(phrase).pairing();
    }

    private static Motion first(String phrase) {
        return pairing(phrase).left().motion();
    }

    private static Motion only(String motion) {
        return first(motion + " vs static spin");
    }

    @Test
    void aStaticSpinAndATriquetraAsLongAsItsTether() {
        Pairing pairing = pairing("static spin vs triquetra");
        assertThat(pairing.left().motion()).isEqualTo(Motion.staticSpin(1, 0));
        assertThat(pairing.right().motion()).isEqualTo(TRIQUETRA);
        assertThat(pairing.left().tether()).isEqualTo(Tether.USUAL);
        assertThat(pairing.timing()).isEqualTo(Timing.TOGETHER);
        assertThat(pairing.direction()).isEqualTo(Direction.SAME);
        assertThat(pairing.left().place()).isEqualTo(Place.usual(Side.LEFT, Plane.WALL));
    }

    @Test
    void anIsolationAndAHorizontalCatEyeOnHalfATether() {
        Pairing pairing = pairing("isolation vs horizontal cat-eye");
        assertThat(pairing.left().motion()).isEqualTo(ISOLATION);
        assertThat(pairing.right().motion()).isEqualTo(Motion.flower(0.3, -1, 0));
    }

    @Test
    void anExtensionGoesRoundOnItsTether() {
        assertThat(first("extension vs triquetra")).isEqualTo(Motion.flower(0.6, 1, 0));
    }

    @Test
    void aPendulumSwingsAQuarterTurnAndACapSweepsTheLowerHalf() {
        Pairing pairing = pairing("pendulum vs CAP");
        assertThat(pairing.left().motion()).isEqualTo(Motion.pendulum(Math.PI / 2));
        assertThat(pairing.right().motion())
                .isEqualTo(
                        new Motion(
                                new Arc(0.6, -Math.PI / 2, Math.PI / 2, 0.25),
                                new Turns(2, -Math.PI)));
    }

    @Test
    void aCapRidingAPendulumPutsItsHandOnThePendulumsHead() {
        Pairing pairing = pairing("CAP riding pendulum");
        assertThat(pairing.rider()).contains(Side.LEFT);
        assertThat(pairing.left().motion())
                .isEqualTo(new Motion(new Riding(), new Turns(2, -1.5 * Math.PI)));
        assertThat(pairing.right().motion()).isEqualTo(Motion.pendulum(Math.PI / 2));
    }

    @Test
    void theSecondHandMayRideToo() {
        Motion rider = new Motion(new Riding(), new Turns(-2, 0));
        assertThat(pairing("pendulum vs triquetra riding").right().motion()).isEqualTo(rider);
        assertThat(pairing("pendulum vs riding triquetra").right().motion()).isEqualTo(rider);
        assertThat(pairing("pendulum vs triquetra, riding").right().motion()).isEqualTo(rider);
    }

    @Test
    void aOnePetalInSpinTurnsTwice() {
        assertThat(pairing("pendulum vs one-petal in-spin").right().motion())
                .isEqualTo(Motion.flower(0.6, 2, 0));
    }

    @Test
    void aHandCircleIsAlsoSaidInTethers() {
        Phrase phrase = Phrase.parse("static spin vs flower with a hand circle of 0.9 tether");
        assertThat(phrase.pairing().right().motion().path().radius())
                .isCloseTo(0.54, within(1e-15));
        assertThat(phrase.with(Tether.of(1)).right().motion().path().radius()).isEqualTo(0.9);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "four-petal antispin",
                "four-petal antispin flower",
                "4 petal antispin",
                "4-petal anti-spin flower",
                "four petals, anti spin",
                "flower, 4 petals antispin",
                "flower turns -3",
                "antispin",
                "Flowers",
                "diamond antispin flower"
            })
    void aFourPetalAntispinIsSaidManyWays(String words) {
        assertThat(only(words)).isEqualTo(Motion.flower(0.6, -3, 0));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"cat-eye", "cateye", "cat eye", "CAT EYE", "Cat-Eyes", "horizontal cateyes"})
    void aCatEyeIsSaidManyWays(String words) {
        assertThat(only(words)).isEqualTo(Motion.flower(0.3, -1, 0));
    }

    @ParameterizedTest
    @ValueSource(strings = {"vs", "vs.", "VS", "versus", "against"})
    void versusIsSaidManyWays(String versus) {
        assertThat(pairing("isolation " + versus + " three-petal antispin"))
                .isEqualTo(pairing("isolation vs triquetra"));
    }

    @Test
    void secondNamesMeanTheSameMotion() {
        assertThat(only("long-arm")).isEqualTo(only("extension"));
        assertThat(only("three-petal antispin")).isEqualTo(only("triquetra"));
        assertThat(only("3-petal inspin flower")).isEqualTo(Motion.flower(0.6, 4, 0));
    }

    @Test
    void petalsCountAntispinBelowOneTurnAndInSpinAboveIt() {
        for (int petals = 2; petals <= 23; petals++) {
            assertThat(only(petals + "-petal in-spin"))
                    .isEqualTo(Motion.flower(0.6, 1 + petals, 0));
            if (petals > 2) {
                assertThat(only(petals + "-petal antispin"))
                        .isEqualTo(Motion.flower(0.6, 1 - petals, 0));
                assertThat(only(petals + "-petal antispin").petals()).isEqualTo(petals);
            }
            assertThat(only(petals + "-petal in-spin").petals()).isEqualTo(petals);
        }
    }

    @Test
    void aVerticalCatEyeStandsUprightHoweverItIsMirrored() {
        for (String way : List.of("", ", counter-clockwise")) {
            Trace trace = Trace.of(pairing("vertical cat-eye vs static spin" + way));
            double width = 0;
            double height = 0;
            for (int i = 0; i < 720; i++) {
                Vector3D head = trace.head(Side.LEFT).at(i / 720.0).position();
                width = Math.max(width, Math.abs(head.getX()));
                height = Math.max(height, Math.abs(head.getY()));
            }
            assertThat(width).isCloseTo(0.3, within(1e-12));
            assertThat(height).isCloseTo(0.9, within(1e-12));
        }
    }

    @Test
    void aTiltIsTheFiguresAsPlacedEvenOnAMirroredHand() {
        Pairing pairing = pairing("cat-eye tilt 30° vs cat-eye tilt 30°, opposites");
        Trace trace = Trace.of(pairing);
        for (Side side : Side.values()) {
            double furthest = 0;
            double angle = 0;
            for (int i = 0; i < 3600; i++) {
                Vector3D head = trace.head(side).at(i / 3600.0).position();
                double out = Math.hypot(head.getX(), head.getY());
                if (out > furthest) {
                    furthest = out;
                    angle = Math.atan2(head.getY(), head.getX());
                }
            }
            assertThat(Math.abs(Math.IEEEremainder(angle - Math.toRadians(30), Math.PI)))
                    .isLessThan(1e-3);
        }
    }

    @Test
    void aBoxFlowerStandsOnTheDiagonals() {
        Motion box = only("box four-petal antispin");
        assertThat(Tilt.of(box).orElseThrow()).isCloseTo(Math.PI / 4, within(1e-15));
        Trace trace = Trace.of(pairing("box four-petal antispin vs static spin"));
        Vector3D corner = trace.head(Side.LEFT).at(0.125).position();
        assertThat(corner.getX()).isCloseTo(1.2 * Math.sqrt(0.5), within(1e-12));
        assertThat(corner.getY()).isCloseTo(1.2 * Math.sqrt(0.5), within(1e-12));
    }

    @Test
    void aLinearExtensionsHandCircleIsItsTether() {
        assertThat(only("linear extension tether 50 cm")).isEqualTo(Motion.flower(0.5, -1, 0));
    }

    @Test
    void aLinearIsolationRunsItsHeadOnTheLineAcrossTheHands() {
        Trace trace = Trace.of(pairing("linear isolation vs static spin"));
        for (int i = 0; i < 16; i++) {
            assertThat(trace.head(Side.LEFT).at(i / 16.0).position().getX())
                    .isCloseTo(0, within(1e-12));
            assertThat(trace.hand(Side.LEFT).at(i / 16.0).position().getY())
                    .isCloseTo(0, within(1e-12));
        }
    }

    @Test
    void anIsolationMayTurnAboutAnyPointOfItsTether() {
        assertThat(only("isolation hand radius 10 cm")).isEqualTo(Motion.flower(0.1, 1, Math.PI));
    }

    @Test
    void aCapMayTurnMoreOnTheWayOutThanOnTheWayBack() {
        assertThat(only("CAP turns 1.5 out 0.5 back"))
                .isEqualTo(
                        new Motion(
                                new Arc(0.6, Swing.DOWN, Math.PI / 2, 0.75),
                                new Turns(2, Swing.DOWN - 1.5 * Math.PI)));
    }

    @Test
    void halfATurnOutAndOneAndAHalfBackIsWhatACapDoesUnsaid() {
        assertThat(only("CAP turns 0.5 out 1.5 back")).isEqualTo(only("CAP"));
        assertThat(only("C-CAP")).isEqualTo(only("CAP"));
        assertThat(only("4-petal CAP")).isEqualTo(only("CAP"));
    }

    @Test
    void aCapOfThreePetalsSweepsTwoThirdsOfACircleInAThirdOfTheCycle() {
        assertThat(only("CAP with 3 petals"))
                .isEqualTo(
                        new Motion(
                                new Arc(0.6, Swing.DOWN, 2 * Math.PI / 3, 1.0 / 3),
                                new Turns(2, Swing.DOWN - 2 * Math.PI / 3)));
        assertThat(only("triquetra CAP")).isEqualTo(only("CAP with 3 petals"));
    }

    @Test
    void aCatEyeCapTurnsHalfATurnEachWay() {
        assertThat(only("cat-eye CAP"))
                .isEqualTo(
                        new Motion(
                                new Arc(0.6, Swing.DOWN, Math.PI / 2, 0.5),
                                new Turns(1, -Math.PI)));
        assertThat(only("CAP turns 0.5 out 0.5 back")).isEqualTo(only("cat-eye CAP"));
    }

    @Test
    void aHalfAndHalfFlowerIsInSpinThenAntispin() {
        Stretches spin = (Stretches) only("four-petal half-and-half flower").spin();
        assertThat(spin.stretches().get(0).turns() / spin.stretches().get(0).share()).isEqualTo(5);
        assertThat(spin.stretches().get(1).turns() / spin.stretches().get(1).share()).isEqualTo(-3);
    }

    @Test
    void aPoiThatChangesItsRateEasesIntoItOverAnEighthUnlessSaidOtherwise() {
        Motion usual = only("half-and-half flower");
        assertThat(((Stretches) usual.spin()).ease()).isEqualTo(0.125);
        assertThat(only("half-and-half flower ease 1/8")).isEqualTo(usual);
        assertThat(((Stretches) only("half-and-half flower ease 0").spin()).ease()).isZero();
        assertThat(((Stretches) only("stall ease 0.2").spin()).ease()).isEqualTo(0.2);
        assertThat(((Stretches) only("square turns 2 stalling, easing 1/5").spin()).ease())
                .isEqualTo(0.2);
        assertThat(usual.breaks()).isEmpty();
        assertThat(only("half-and-half flower ease 0").breaks()).hasSize(2);
    }

    @Test
    void aStallComesToRestAtEitherEnd() {
        Trace trace = Trace.of(pairing("stall vs static spin"));
        assertThat(trace.head(Side.LEFT).at(0).velocity().getNorm()).isZero();
        assertThat(trace.head(Side.LEFT).at(0.5).velocity().getNorm()).isCloseTo(0, within(1e-12));
        assertThat(trace.head(Side.LEFT).at(0.25).position().getY()).isCloseTo(-0.6, within(1e-12));
    }

    @Test
    void aToroidIsAFlowerWhosePlaneTurns() {
        Pairing pairing =
                pairing(
                        "toroid of a four-petal antispin vs toroid triquetra plane turns 2, about"
                                + " level, right poi alone");
        assertThat(pairing.left().place().turn())
                .isEqualTo(new PlaneTurn(1, PlaneTurn.Axis.LEVEL, PlaneTurn.Carries.FIGURE));
        assertThat(pairing.right().place().turn())
                .isEqualTo(new PlaneTurn(2, PlaneTurn.Axis.LEVEL, PlaneTurn.Carries.POI));
        assertThat(only("toroid")).isEqualTo(Motion.flower(0.6, -3, 0));
    }

    @Test
    void handPathsAreSaidByTheirShape() {
        assertThat(only("square turns -3").path().radius()).isEqualTo(0.6);
        assertThat(only("7-corner polygon").path().breaks()).hasSize(7);
        assertThat(only("line hand radius 40 cm").path()).isEqualTo(Series.line(0.4, 0));
        assertThat(only("ellipse axes 50 cm by 20 cm").path())
                .isEqualTo(Series.ellipse(0.5, 0.2, 0));
        assertThat(only("point").path()).isEqualTo(Series.STILL);
        assertThat(only("arc sweep 40°").path())
                .isEqualTo(new Arc(0.6, Swing.DOWN, Math.toRadians(40)));
        assertThat(only("loops 1 of 30 cm plus -3 of 10 cm 45°").path())
                .isEqualTo(
                        new Series(
                                List.of(
                                        new Series.Term(1, 0.3, 0),
                                        new Series.Term(-3, 0.1, Math.PI / 4))));
    }

    @Test
    void timingDirectionSenseAndTempoStandAnywhere() {
        Pairing pairing =
                pairing("split-time isolation vs triquetra, opposite, counter-clockwise, tempo 90");
        assertThat(pairing.timing()).isEqualTo(Timing.SPLIT);
        assertThat(pairing.direction()).isEqualTo(Direction.OPPOSITE);
        assertThat(pairing.sense()).isEqualTo(Sense.COUNTER_CLOCKWISE);
        assertThat(pairing.tempoSaid()).hasValue(90);
        assertThat(pairing("isolation vs triquetra, timing 1/3").timing().ahead())
                .isEqualTo(1.0 / 3);
        assertThat(pairing("isolation vs triquetra, opposites"))
                .isEqualTo(pairing("isolation vs triquetra together opposite direction"));
        assertThat(pairing("isolation vs triquetra, same time"))
                .isEqualTo(pairing("isolation vs triquetra"));
    }

    @Test
    void aSizeBeforeVersusIsTheFirstHandsAndAfterACommaBothHands() {
        Pairing apart = pairing("isolation tether 50 cm vs triquetra 70cm tether");
        assertThat(apart.left().tether()).isEqualTo(Tether.of(0.5));
        assertThat(apart.right().tether()).isEqualTo(Tether.of(0.7));
        Pairing both = pairing("isolation vs triquetra, tether 0.5 m, wheel plane");
        assertThat(both.left().tether()).isEqualTo(Tether.of(0.5));
        assertThat(both.right().tether()).isEqualTo(Tether.of(0.5));
        assertThat(both.left().place()).isEqualTo(Place.usual(Side.LEFT, Plane.WHEEL));
        Pairing named = pairing("isolation vs triquetra, right tether 500 mm");
        assertThat(named.left().tether()).isEqualTo(Tether.USUAL);
        assertThat(named.right().tether()).isEqualTo(Tether.of(0.5));
    }

    @Test
    void theHandsMayCycleAtDifferentRates() {
        Pairing pairing = pairing("isolation 3 cycles vs triquetra cycles 2");
        assertThat(pairing.left().cycles()).isEqualTo(3);
        assertThat(pairing.right().cycles()).isEqualTo(2);
    }

    @Test
    void aCentreIsMovedFromWhereItUsuallyIsOrPutWhereItIsSaid() {
        Vector3D usual = Place.usual(Side.LEFT, Plane.WALL).centre();
        assertThat(pairing("isolation centre 10 cm left 20 cm down vs CAP").left().place().centre())
                .isEqualTo(usual.add(new Vector3D(0.1, -0.2, 0)));
        assertThat(pairing("isolation centre at 0.1 m 0.2 m 0.4 m vs CAP").left().place().centre())
                .isEqualTo(new Vector3D(0.1, 0.2, 0.4));
    }

    @Test
    void sizesUnsaidScaleWithTheTetherAndSizesSaidDoNot() {
        Phrase phrase = Phrase.parse("isolation vs triquetra hand radius 40 cm");
        assertThat(phrase.with(Tether.of(1)).left().motion().path().radius()).isEqualTo(0.5);
        assertThat(phrase.with(Tether.of(1)).right().motion().path().radius()).isEqualTo(0.4);
    }

    @Test
    void anglesAreSaidInDegreesRadiansAndTurns() {
        assertThat(only("pendulum amplitude 45 degrees")).isEqualTo(Motion.pendulum(Math.PI / 4));
        assertThat(only("pendulum amplitude a quarter turn")).isEqualTo(only("pendulum"));
        assertThat(only("pendulum amplitude 1.25 rad")).isEqualTo(Motion.pendulum(1.25));
        assertThat(only("30° tilt cat-eye")).isEqualTo(only("cat-eye, tilt 30 deg"));
    }
}
