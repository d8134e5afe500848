package deferent.motion.pairing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class PairingTest {
    private static final Motion PENDULUM = Motion.pendulum(Math.PI / 2);
    private static final Motion TRIQUETRA = Motion.flower(0.6, -2, 0);

    private static Part part(Motion motion, Side side) {
        return new Part(motion, Tether.USUAL, Place.usual(side, Plane.WALL), 1);
    }

    private static Pairing of(Motion left, Motion right) {
        return Pairing.of(part(left, Side.LEFT), part(right, Side.RIGHT));
    }

    @Test
    void aPendulumThatNobodyDrivesSetsTheTempo() {
        Pairing pairing = of(PENDULUM, TRIQUETRA);
        double small = 2 * Math.PI * Math.sqrt(0.6 / Gravity.STANDARD);
        assertThat(pairing.setsOwnTempo()).isTrue();
        // 1.180340599: DLMF 22.19(i) at an amplitude of 90 degrees.
        assertThat(pairing.period()).isCloseTo(1.180340599 * small, within(1e-8));
        assertThat(pairing.tempo()).isCloseTo(60 / pairing.period(), within(1e-9));
    }

    @Test
    void anotherTempoThanThePendulumsIsRefusedAndTheRightOneNamed() {
        Refusal refusal =
                catchThrowableOfType(
                        Refusal.class,
                        () -> of(PENDULUM, TRIQUETRA).withTempo(OptionalDouble.of(60)));
        assertThat(refusal.where()).isEqualTo("tempo");
        assertThat(refusal.right())
                .contains(
                        String.format(
                                java.util.Locale.ROOT, "%.3f", of(PENDULUM, TRIQUETRA).tempo()));
    }

    @Test
    void thePendulumsOwnTempoMayBeSaid() {
        Pairing unsaid = of(PENDULUM, TRIQUETRA);
        assertThat(unsaid.withTempo(OptionalDouble.of(unsaid.tempo())).period())
                .isEqualTo(unsaid.period());
    }

    @Test
    void twoPendulumsOfUnlikeTetherCannotKeepOneTempo() {
        assertThatThrownBy(
                        () ->
                                Pairing.of(
                                        part(PENDULUM, Side.LEFT),
                                        part(PENDULUM, Side.RIGHT).with(Tether.of(0.3))))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("two tempos");
    }

    @Test
    void aPendulumHasNoSwingInALevelPlane() {
        assertThatThrownBy(
                        () ->
                                Pairing.of(
                                        new Part(
                                                PENDULUM,
                                                Tether.USUAL,
                                                Place.usual(Side.LEFT, Plane.FLOOR),
                                                1),
                                        part(TRIQUETRA, Side.RIGHT)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("upright plane");
    }

    @Test
    void tempoCountsHandCyclesOrThePoisBeatsWhereBothHandsAreStill() {
        Pairing flowers =
                Pairing.of(
                        new Part(TRIQUETRA, Tether.USUAL, Place.usual(Side.LEFT, Plane.WALL), 3),
                        part(TRIQUETRA, Side.RIGHT));
        assertThat(flowers.withTempo(OptionalDouble.of(90)).period())
                .isCloseTo(3 * 60 / 90.0, within(1e-12));
        Pairing spins = of(Motion.staticSpin(2, 0), Motion.staticSpin(1, 0));
        assertThat(spins.withTempo(OptionalDouble.of(60)).period()).isCloseTo(2, within(1e-12));
    }

    @Test
    void handsCannotRideEachOther() {
        Motion rider = TRIQUETRA.withPath(new Riding());
        assertThatThrownBy(() -> of(rider, rider))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("let one of them lead");
    }

    @Test
    void oppositeDirectionMirrorsTheRightHandAndTheSenseMirrorsBoth() {
        Pairing same = of(TRIQUETRA, TRIQUETRA);
        assertThat(same.mirrored(Side.LEFT)).isFalse();
        assertThat(same.mirrored(Side.RIGHT)).isFalse();
        Pairing opposite = same.with(Direction.OPPOSITE);
        assertThat(opposite.mirrored(Side.LEFT)).isFalse();
        assertThat(opposite.mirrored(Side.RIGHT)).isTrue();
        Pairing reversed = opposite.with(Sense.COUNTER_CLOCKWISE);
        assertThat(reversed.mirrored(Side.LEFT)).isTrue();
        assertThat(reversed.mirrored(Side.RIGHT)).isFalse();
    }

    @Test
    void aMirrorImageLeavesAnUnsaidTempoUnsaidAndCountsASaidOneByItsOwnLeftHand() {
        Pairing even = of(TRIQUETRA, Motion.flower(0.6, 3, 0));
        assertThat(MirrorImage.of(even).tempoSaid()).isEmpty();
        Pairing uneven =
                Pairing.of(
                        new Part(TRIQUETRA, Tether.USUAL, Place.usual(Side.LEFT, Plane.WALL), 2),
                        new Part(TRIQUETRA, Tether.USUAL, Place.usual(Side.RIGHT, Plane.WALL), 3));
        Pairing image = MirrorImage.of(uneven.withTempo(OptionalDouble.of(40)));
        assertThat(image.tempo()).isCloseTo(60, within(1e-9));
        assertThat(image.period()).isCloseTo(3, within(1e-12));
        assertThat(MirrorImage.of(image).tempo()).isCloseTo(40, within(1e-9));
    }
}
