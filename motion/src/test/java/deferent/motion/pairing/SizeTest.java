package deferent.motion.pairing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.shared.Side;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class SizeTest {
    private static Part part(Motion motion, Side side) {
        return new Part(motion, Tether.USUAL, Place.usual(side, Plane.WALL), 1);
    }

    private static Pairing pairing(Motion left, Motion right) {
        return Pairing.of(part(left, Side.LEFT), part(right, Side.RIGHT));
    }

    private static List<String> keys(Pairing pairing) {
        return Size.of(pairing).stream().map(Size::key).toList();
    }

    @Test
    void aPairingHasTheSizesThatItsMotionsHave() {
        assertThat(keys(pairing(Motion.flower(0.3, -1, 0), Motion.staticSpin(1, 0))))
                .containsExactly(
                        "left.hand_radius_m",
                        "left.tether_m",
                        "right.tether_m",
                        "left.centre_x_m",
                        "right.centre_x_m",
                        "left.centre_y_m",
                        "right.centre_y_m",
                        "left.centre_z_m",
                        "right.centre_z_m",
                        "left.start_deg",
                        "right.start_deg",
                        "left.tilt_deg",
                        "timing_cycles",
                        "tempo_cycles_per_min");
    }

    @Test
    void aPendulumHasAnAmplitudeAndLeavesNoTempoToSet() {
        Motion rider = new Motion(new Riding(), new Turns(1, 0));
        assertThat(keys(pairing(Motion.pendulum(1), rider)))
                .contains("left.amplitude_deg", "timing_cycles")
                .doesNotContain("tempo_cycles_per_min", "right.hand_radius_m", "left.start_deg");
    }

    @Test
    void aKindOfSizeIsALengthAnAngleOrNeither() {
        for (Size.Kind kind : Size.Kind.values()) {
            switch (kind) {
                case START, TILT, AMPLITUDE -> {
                    assertThat(kind.angle()).as(kind.key()).isTrue();
                    assertThat(kind.length()).as(kind.key()).isFalse();
                    assertThat(kind.shared()).as(kind.key()).isFalse();
                }
                case TIMING, TEMPO -> {
                    assertThat(kind.angle()).as(kind.key()).isFalse();
                    assertThat(kind.length()).as(kind.key()).isFalse();
                    assertThat(kind.shared()).as(kind.key()).isTrue();
                }
                default -> {
                    assertThat(kind.angle()).as(kind.key()).isFalse();
                    assertThat(kind.length()).as(kind.key()).isTrue();
                    assertThat(kind.shared()).as(kind.key()).isFalse();
                }
            }
        }
    }

    @Test
    void whatBelongsToBothHandsIsOneSize() {
        assertThat(Size.of(Side.RIGHT, Size.Kind.TIMING))
                .isEqualTo(Size.of(Side.LEFT, Size.Kind.TIMING));
        assertThat(Size.of(Side.RIGHT, Size.Kind.TETHER))
                .isNotEqualTo(Size.of(Side.LEFT, Size.Kind.TETHER));
    }

    @Test
    void aMirroredFigureTiltsTheOtherWay() {
        Size tilt = Size.of(Side.RIGHT, Size.Kind.TILT);
        Pairing same = pairing(Motion.staticSpin(1, 0), Motion.flower(0.3, -1, 0.8));
        // The cat-eye of start angle φ is tilted by φ/2.
        assertThat(tilt.read(same)).hasValue(0.4);
        Pairing opposite = same.with(Direction.OPPOSITE);
        assertThat(tilt.read(opposite)).hasValue(-0.4);
        Turns set = tilt.set(opposite, 0.1).right().motion().spin().even().orElseThrow();
        assertThat(set.start()).isCloseTo(-0.2, within(1e-15));
    }

    @Test
    void whatDoesNotStartAsItsWordDrawsItTiltsWholeWithItsHand() {
        List<Motion> whole =
                List.of(
                        new Motion(
                                new Series(List.of(new Series.Term(2, 0.5, 0))), new Turns(1, 0.2)),
                        new Motion(
                                new Series(List.of(new Series.Term(1, 0.5, 0.3))),
                                new Turns(1, 0.2)),
                        new Motion(new Polygon(4, 0.5, 0), new Turns(1, 0.2)));
        for (Motion motion : whole) {
            double before = Tilt.of(motion).orElseThrow();
            Motion tilted = Tilt.set(motion, before + 0.25);
            assertThat(tilted.path()).isEqualTo(motion.path().turned(0.25));
            assertThat(tilted.spin().starts().orElseThrow()).isCloseTo(0.45, within(1e-15));
        }
    }

    @Test
    void aSizeThatThePairingLacksOrThatNobodyKnowsIsRefused() {
        Pairing spins = pairing(Motion.staticSpin(1, 0), Motion.staticSpin(1, 0));
        assertThatThrownBy(() -> Size.of(Side.LEFT, Size.Kind.HAND_RADIUS).set(spins, 0.3))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("left.hand_radius_m");
        assertThatThrownBy(() -> Size.named("left.girth_m"))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("left.girth_m");
    }

    @Test
    void theHandsHaveNamesAndEachIsTheOthersOther() {
        assertThat(Arrays.stream(Side.values()).map(Side::word)).containsExactly("left", "right");
        assertThat(Side.LEFT.other()).isEqualTo(Side.RIGHT);
        assertThat(Side.RIGHT.other()).isEqualTo(Side.LEFT);
        assertThat(Side.LEFT.head()).isEqualTo("the left head");
        assertThat(Side.RIGHT.hand()).isEqualTo("the right hand");
        assertThat(Sense.CLOCKWISE.reversed()).isEqualTo(Sense.COUNTER_CLOCKWISE);
        assertThat(Sense.COUNTER_CLOCKWISE.reversed()).isEqualTo(Sense.CLOCKWISE);
    }
}
