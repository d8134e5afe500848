package deferent.search.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Riding;
import deferent.motion.pairing.Size;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Turns;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.tether.Kit;
import deferent.reading.tether.LinkedTruth;
import java.util.Set;
import org.junit.jupiter.api.Test;

class CordedFitTest {
    private static Pairing pair(Motion left, Motion right) {
        return Pairing.of(
                new Part(left, Tether.of(0.6), Place.usual(Side.LEFT, Plane.WALL), 1),
                new Part(right, Tether.of(0.6), Place.usual(Side.RIGHT, Plane.WALL), 1));
    }

    @Test
    void aStaticSpinAndATriquetraCloseWithCordsOnceTheyAreSizedForIt() {
        Pairing pictured = pair(Motion.staticSpin(1, 0), Motion.flower(0.6, -2, 0));
        CordedFit fit = CordedFit.of(pictured, Side.LEFT, Kit.USUAL);
        assertThat(fit.gapBefore()).isCloseTo(0.215, within(1e-3));
        assertThat(fit.closes()).isTrue();
        assertThat(fit.changes()).isNotEmpty();
        // What is claimed is read again, by other code and at other instants.
        LinkedTruth truth = LinkedTruth.of(Trace.of(fit.pairing()), Side.LEFT, Kit.USUAL);
        assertThat(truth.figureKept().greatest()).isCloseTo(fit.gapAfter(), within(1e-3));
    }

    @Test
    void aStaticSpinAndAnExtensionCloseByTempoAlone() {
        Pairing pictured = pair(Motion.staticSpin(1, 0), Motion.flower(0.6, 1, 0));
        Size tempo = Size.of(Side.LEFT, Size.Kind.TEMPO);
        CordedFit fit = CordedFit.of(pictured, Side.LEFT, Kit.USUAL, Set.of(tempo), Limits.USUAL);
        assertThat(fit.changes()).extracting(SizeChange::size).containsExactly(tempo);
        assertThat(fit.changes().get(0).to()).isBetween(60.0, 90.0);
        assertThat(fit.gapAfter()).isLessThan(fit.gapBefore());
        assertThat(fit.closes()).isTrue();
    }

    @Test
    void sizesStayWithinTheirLimits() {
        Pairing pictured = pair(Motion.staticSpin(1, 0), Motion.flower(0.6, -2, 0));
        Size radius = Size.of(Side.RIGHT, Size.Kind.HAND_RADIUS);
        Size tether = Size.of(Side.LEFT, Size.Kind.TETHER);
        CordedFit fit =
                CordedFit.of(
                        pictured,
                        Side.LEFT,
                        Kit.USUAL,
                        Set.of(radius, tether),
                        Limits.USUAL.with(radius, 0.5, 0.7).with(tether, 0.55, 0.65));
        assertThat(radius.read(fit.pairing()).orElseThrow()).isBetween(0.5, 0.7);
        assertThat(tether.read(fit.pairing()).orElseThrow()).isBetween(0.55, 0.65);
        assertThat(fit.gapAfter()).isLessThanOrEqualTo(fit.gapBefore());
        assertThat(fit.closes()).isFalse();
    }

    @Test
    void withNothingFreeThePairingStays() {
        Pairing pictured = pair(Motion.staticSpin(1, 0), Motion.flower(0.6, -2, 0));
        CordedFit fit = CordedFit.of(pictured, Side.LEFT, Kit.USUAL, Set.of(), Limits.USUAL);
        assertThat(fit.changes()).isEmpty();
        assertThat(fit.pairing()).isEqualTo(pictured);
        assertThat(fit.closes()).isFalse();
    }

    @Test
    void aTruePendulumsTempoIsNotTheFitsToSet() {
        Pairing swinging = pair(Motion.pendulum(1.2), new Motion(new Riding(), new Turns(2, 0)));
        CordedFit fit = CordedFit.of(swinging, Side.LEFT, Kit.USUAL);
        assertThat(fit.changes())
                .extracting(c -> c.size().kind())
                .doesNotContain(Size.Kind.TEMPO, Size.Kind.HAND_RADIUS);
        assertThat(fit.gapAfter()).isLessThan(fit.gapBefore());
    }
}
