package deferent.motion.pairing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MotionTest {
    @ParameterizedTest
    @CsvSource({"-5,6", "-3,4", "-2,3", "-1,0", "0,0", "1,0", "2,1", "3,2", "5,4"})
    void aFlowerHasAsManyPetalsAsItsTurnsLessOne(int turns, int petals) {
        assertThat(Motion.flower(0.5, turns, 0.3).petals()).isEqualTo(petals);
    }

    @Test
    void aStillHandDrawsNoPetals() {
        assertThat(Motion.staticSpin(3, 0).petals()).isZero();
    }

    @Test
    void stretchesThatDoNotCloseAreRefused() {
        assertThatThrownBy(
                        () ->
                                new Stretches(
                                        0,
                                        List.of(
                                                new Stretches.Stretch(
                                                        0.5, 1.25, Stretches.Ease.EVEN),
                                                new Stretches.Stretch(
                                                        0.5, 1, Stretches.Ease.EVEN))))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("come back");
        assertThatThrownBy(
                        () ->
                                new Stretches(
                                        0,
                                        List.of(
                                                new Stretches.Stretch(
                                                        0.5, 1, Stretches.Ease.EVEN))))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("sum to 1");
    }

    @Test
    void stretchesMayMissACycleByRoundingButNotByWhatSomebodyTyped() {
        var tenth = new Stretches.Stretch(0.1, 0.3, Stretches.Ease.EVEN);
        Stretches tenths = new Stretches(0, Collections.nCopies(10, tenth));
        assertThat(tenths.turns()).isEqualTo(3);
        var third = new Stretches.Stretch(0.3333, 1, Stretches.Ease.EVEN);
        assertThatThrownBy(() -> new Stretches(0, Collections.nCopies(3, third)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("sum to 1");
        var turn = new Stretches.Stretch(0.25, 0.2501, Stretches.Ease.EVEN);
        assertThatThrownBy(() -> new Stretches(0, Collections.nCopies(4, turn)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("whole number");
    }

    @Test
    void aPoiThatRestsBetweenStretchesStopsWithoutAJerkOfItsRate() {
        Stretches law =
                new Stretches(
                        0,
                        List.of(
                                new Stretches.Stretch(0.5, 1, Stretches.Ease.RESTING),
                                new Stretches.Stretch(0.5, -1, Stretches.Ease.RESTING)),
                        0);
        Jet stall = law.course().at(0.5);
        assertThat(stall.d1()).isCloseTo(0, within(1e-12));
        assertThat(stall.d2()).isCloseTo(0, within(1e-9));
        assertThat(law.breaks()).isNotEmpty().allMatch(b -> b.order() == 3);
    }

    @Test
    void theHandRestsAtEitherEndOfAnArc() {
        HandPath.Course arc = new Arc(0.5, Swing.DOWN, Math.PI / 2).course();
        for (double end : new double[] {0, 0.5}) {
            PlaneJet at = arc.at(end);
            assertThat(Math.hypot(at.u().d1(), at.v().d1())).isCloseTo(0, within(1e-12));
        }
        assertThat(arc.at(0).u().value()).isCloseTo(-0.5, within(1e-12));
        assertThat(arc.at(0.5).u().value()).isCloseTo(0.5, within(1e-12));
        assertThat(arc.at(0.25).v().value()).isCloseTo(-0.5, within(1e-12));
    }

    @Test
    void aQuarterFurtherFourTimesIsTheTimingItself() {
        assertThat(Timing.of(-0.25)).isEqualTo(new Timing(0.75));
        assertThat(Timing.of(-0.0)).isEqualTo(Timing.TOGETHER);
        assertThat(Timing.of(-Double.MIN_VALUE)).isEqualTo(Timing.TOGETHER);
        assertThat(Timing.QUARTER.stepped()).isEqualTo(Timing.SPLIT);
        assertThat(new Timing(0.75).stepped()).isEqualTo(Timing.TOGETHER);
    }

    @Test
    void anEllipseStartsAlongItsTiltAndIsAsFarAcrossAQuarterOn() {
        for (double across : new double[] {0.5, 0.1, -0.5}) {
            HandPath.Course course = Series.ellipse(0.2, across, Math.PI / 2).course();
            assertThat(course.at(0).v().value()).isCloseTo(0.2, within(1e-12));
            assertThat(course.at(0.25).u().value()).isCloseTo(-across, within(1e-12));
        }
    }

    @Test
    void thePoiIsLiveliestWhereItTurnsFastest() {
        assertThat(new Turns(-3, 0).liveliest()).isEqualTo(3);
        assertThat(new Swing(1, 0).liveliest()).isEqualTo(1);
        assertThat(
                        new Stretches(
                                        0,
                                        List.of(
                                                new Stretches.Stretch(
                                                        0.25, -1, Stretches.Ease.EVEN),
                                                new Stretches.Stretch(
                                                        0.75, 2, Stretches.Ease.EVEN)))
                                .liveliest())
                .isEqualTo(4);
    }
}
