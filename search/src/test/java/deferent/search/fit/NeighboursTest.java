package deferent.search.fit;

import static deferent.search.fit.Neighbour.Into.LINEAR_EXTENSION;
import static deferent.search.fit.Neighbour.Into.POINTED_PETALS;
import static deferent.search.fit.Neighbour.Into.STATIC_SPIN;
import static deferent.search.fit.Neighbour.Into.STILL_HEAD;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Size;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Figure;
import deferent.motion.trace.Trace;
import java.util.List;
import org.junit.jupiter.api.Test;

class NeighboursTest {
    // Common practice, no source: short axis |R − L|.
    @Test
    void aCatEyeFallsIntoALinearExtensionAsItsHandCircleNearsTheTether() {
        Neighbour near = into(flower(0.55, -1, 0), LINEAR_EXTENSION, Size.Kind.HAND_RADIUS);
        assertThat(near.at()).isCloseTo(0.6, within(1e-12));
        assertThat(near.away()).isCloseTo(0.05, within(1e-12));
        assertThat(near.strays()).isCloseTo(0.05, within(1e-12));
        assertThat(near.already()).isTrue();
        Neighbour far = into(flower(0.3, -1, 0), LINEAR_EXTENSION, Size.Kind.HAND_RADIUS);
        assertThat(far.already()).isFalse();
    }

    @Test
    void whereItSaysTheCatEyeFallsItsFigureIsALineOfNoHeight() {
        Pairing pairing = flower(0.55, -1, 0);
        for (Size.Kind kind : List.of(Size.Kind.HAND_RADIUS, Size.Kind.TETHER)) {
            Neighbour line = into(pairing, LINEAR_EXTENSION, kind);
            Figure figure = Figure.of(Trace.of(line.size().set(pairing, line.at())), Side.LEFT);
            assertThat(figure.height()).isCloseTo(0, within(1e-9));
            assertThat(figure.unionArea()).isCloseTo(0, within(1e-6));
        }
    }

    @Test
    void anIsolationsHeadStandsStillWhenItsHandCircleIsAsLongAsTheTether() {
        Pairing pairing = flower(0.55, 1, Math.PI);
        Neighbour still = into(pairing, STILL_HEAD, Size.Kind.HAND_RADIUS);
        assertThat(still.already()).isTrue();
        Figure figure = Figure.of(Trace.of(still.size().set(pairing, still.at())), Side.LEFT);
        assertThat(figure.outerRadius()).isCloseTo(0, within(1e-9));
    }

    @Test
    void aFlowerWithASmallHandCircleReadsAsAStaticSpin() {
        assertThat(into(flower(0.07, -3, 0), STATIC_SPIN, Size.Kind.HAND_RADIUS).already())
                .isTrue();
        Neighbour extension = into(flower(0.6, 1, 0), STATIC_SPIN, Size.Kind.HAND_RADIUS);
        assertThat(extension.already()).isFalse();
        assertThat(extension.strays()).isCloseTo(0.6, within(1e-12));
    }

    // Lawrence, A Catalog of Special Plane Curves (1972): deltoid, astroid, cardioid, nephroid.
    @Test
    void petalsComeToPointsWhereTheHandCircleIsAsManyTethersAsThePoiTurns() {
        for (int n : new int[] {-2, -3, 2, 3}) {
            Pairing pairing = flower(0.6, n, 0);
            Neighbour pointed = into(pairing, POINTED_PETALS, Size.Kind.HAND_RADIUS);
            assertThat(pointed.at()).isCloseTo(Math.abs(n) * 0.6, within(1e-12));
            Figure figure =
                    Figure.of(Trace.of(pointed.size().set(pairing, pointed.at())), Side.LEFT);
            assertThat(figure.cusps()).isEqualTo(Math.abs(n - 1));
        }
    }

    @Test
    void theNearestNeighbourIsToldFirst() {
        List<Neighbour> all = Neighbours.of(flower(0.55, -1, 0), Side.LEFT);
        assertThat(all.get(0).into()).isEqualTo(LINEAR_EXTENSION);
        assertThat(all.get(all.size() - 1).into()).isEqualTo(STATIC_SPIN);
    }

    @Test
    void aPendulumHasNoneOfThese() {
        assertThat(Neighbours.of(Phrase.parse("pendulum vs CAP").pairing(), Side.LEFT)).isEmpty();
    }

    private static Neighbour into(Pairing pairing, Neighbour.Into into, Size.Kind kind) {
        return Neighbours.of(pairing, Side.LEFT).stream()
                .filter(n -> n.into() == into && n.size().kind() == kind)
                .findFirst()
                .orElseThrow();
    }

    private static Pairing flower(double radius, int n, double start) {
        return Pairing.of(
                new Part(
                        Motion.flower(radius, n, start),
                        Tether.USUAL,
                        Place.usual(Side.LEFT, Plane.WALL),
                        1),
                new Part(
                        Motion.staticSpin(1, 0),
                        Tether.USUAL,
                        Place.usual(Side.RIGHT, Plane.WALL),
                        1));
    }
}
