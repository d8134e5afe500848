package deferent.motion.pairing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.shared.Side;
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

    private static Part hung(Motion motion, Plane plane, PlaneTurn turn) {
        Place place = Place.usual(Side.LEFT, plane).withTurn(turn);
        return new Part(motion, Tether.USUAL, place, 1);
    }

    private static Motion resting(double degrees) {
        return PENDULUM.withSpin(new Swing(1, Math.toRadians(degrees)));
    }

    /** Gravity pulls straight down, so it swings a head about that in any plane that holds it. */
    @Test
    void aPendulumHangsStraightDownInAnyUprightPlane() {
        for (double swivel : new double[] {0, 0.4, Math.PI / 2, -3}) {
            for (Plane.Kind kind : new Plane.Kind[] {Plane.Kind.WALL, Plane.Kind.WHEEL}) {
                Part part = hung(PENDULUM, new Plane(kind, 0, swivel), PlaneTurn.NONE);
                assertThat(Pairing.of(part, part(TRIQUETRA, Side.RIGHT)).period())
                        .isEqualTo(
                                PENDULUM.spin()
                                        .swing()
                                        .orElseThrow()
                                        .period(Tether.USUAL.length(), Gravity.STANDARD));
            }
        }
        // A floor plane stood on its edge, and a wall plane turned upside down: down is another
        // angle there.
        assertThat(hung(resting(90), new Plane(Plane.Kind.FLOOR, Math.PI / 2, 0), PlaneTurn.NONE))
                .isNotNull();
        assertThat(hung(resting(90), new Plane(Plane.Kind.WALL, Math.PI, 0), PlaneTurn.NONE))
                .isNotNull();
        assertThat(hung(resting(270), Plane.WALL, PlaneTurn.NONE)).isNotNull();
    }

    @Test
    void gravitySwingsNoPendulumInALevelOrLeanedOrTurningPlaneNorAboutATiltedRest() {
        PlaneTurn turning = new PlaneTurn(1, PlaneTurn.Axis.UPRIGHT, PlaneTurn.Carries.FIGURE);
        assertThatThrownBy(() -> hung(PENDULUM, Plane.FLOOR, PlaneTurn.NONE))
                .isInstanceOf(Refusal.class)
                .hasMessage(
                        "plane of a pendulum: is level; give an upright one, wall or wheel: gravity"
                                + " swings a pendulum in no other");
        assertThatThrownBy(
                        () ->
                                hung(
                                        PENDULUM,
                                        new Plane(Plane.Kind.WALL, Math.toRadians(20), 1),
                                        PlaneTurn.NONE))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("leans 20° from upright");
        assertThatThrownBy(() -> hung(PENDULUM, Plane.WALL, turning))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("turning plane of a pendulum");
        assertThatThrownBy(() -> hung(resting(-60), Plane.WALL, PlaneTurn.NONE))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("is 30° off straight down");
        assertThatThrownBy(() -> hung(resting(90), Plane.WHEEL, PlaneTurn.NONE))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("is 180° off straight down");
        // Whoever drives it may swing it anywhere.
        Motion driven = resting(0).withPath(Series.circle(0.2));
        assertThat(hung(driven, Plane.FLOOR, turning)).isNotNull();
    }

    @Test
    void aPendulumHasNoTiltToSetWhereAnArcThatIsDrivenHasOne() {
        Size tilt = Size.of(Side.LEFT, Size.Kind.TILT);
        Part other = part(TRIQUETRA, Side.RIGHT);
        assertThat(tilt.read(Pairing.of(part(PENDULUM, Side.LEFT), other))).isEmpty();
        Motion driven = PENDULUM.withPath(Series.line(0.2, 0));
        assertThat(tilt.read(Pairing.of(part(driven, Side.LEFT), other))).isPresent();
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
