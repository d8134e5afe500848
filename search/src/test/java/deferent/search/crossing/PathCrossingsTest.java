package deferent.search.crossing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.Tether;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Where figures cross, against closed-form geometry. */
class PathCrossingsTest {
    private static final double TETHER = 0.6;
    private static final CrossingRequest LIGHTS =
            CrossingRequest.USUAL
                    .with(Who.LEFT)
                    .with(Compared.HEADS)
                    .withTolerance(1e-3, Double.POSITIVE_INFINITY);

    static Pairing both(Motion motion, double tether, double x) {
        Place left = Place.usual(Side.LEFT, Plane.WALL);
        Place right = Place.usual(Side.RIGHT, Plane.WALL);
        Vector3D aside = new Vector3D(x, 0, 0);
        return Pairing.of(
                new Part(motion, Tether.of(tether), left.withCentre(left.centre().add(aside)), 1),
                new Part(
                        motion, Tether.of(tether), right.withCentre(right.centre().add(aside)), 1));
    }

    // Two circles of radii r and s whose centres are d apart meet twice where |r − s| < d < r + s,
    // touch once where d is either bound, and else not at all; never more than twice (Euclid,
    // Elements III.10, III.11 to III.13).
    @ParameterizedTest(name = "centres {1} m apart, the other {0} m: {2}")
    @CsvSource({
        "0.6, 0.5, 2",
        "0.6, 1.15, 2",
        "0.45, 0.3, 2",
        "0.45, 0.16, 2",
        "0.6, 1.2, 1",
        "0.45, 0.15, 1",
        "0.6, 1.25, 0",
        "0.45, 0.1, 0",
        "0.3, 0.0, 0"
    })
    void twoStaticSpinsLightsMeetAsOftenAsTwoCirclesDo(double other, double apart, int count) {
        Crossings crossings =
                Crossings.between(
                        both(Motion.staticSpin(1, 0), TETHER, 0),
                        both(Motion.staticSpin(1, 0), other, apart),
                        LIGHTS);
        assertThat(crossings.list()).hasSize(count);
    }

    // The points stand on the circles' common chord, at (d² + r² − s²)/2d along the centres' line.
    @Test
    void twoStaticSpinsLightsMeetOnTheCirclesCommonChord() {
        double r = 0.6;
        double s = 0.45;
        double d = 0.5;
        Crossings crossings =
                Crossings.between(
                        both(Motion.staticSpin(1, 0), r, 0),
                        both(Motion.staticSpin(1, 0), s, d),
                        LIGHTS);
        double along = (d * d + r * r - s * s) / (2 * d);
        double share = Math.acos(along / r) / (2 * Math.PI);
        assertThat(crossings.list()).hasSize(2);
        assertThat(crossings.list().get(0).fromShare()).isCloseTo(share, within(1e-7));
        assertThat(crossings.list().get(1).fromShare()).isCloseTo(1 - share, within(1e-7));
        assertThat(crossings.list()).allMatch(c -> c.placeGap() < 1e-7);
    }

    // Two equal circles d apart, both turned at the rate ω the same way: where they meet, the
    // velocities are at right angles to two radii whose ends are d apart, so they differ by ω·d;
    // the
    // hands by d. (Similar triangles.)
    @Test
    void neighbouringStaticSpinsDifferThereByTheTurnTimesTheDistance() {
        double d = 0.07;
        Crossings crossings =
                Crossings.between(
                        both(Motion.staticSpin(1, 0), TETHER, 0),
                        both(Motion.staticSpin(1, 0), TETHER, d),
                        LIGHTS.withTolerance(1e-3, 2));
        assertThat(crossings.list()).hasSize(2);
        for (Crossing c : crossings.list()) {
            // The least of place and speed together lies a hair beside that of place alone.
            assertThat(c.speedGap()).isCloseTo(2 * Math.PI * d, within(1e-5));
            assertThat(c.roughness().heads())
                    .isCloseTo(2 * Math.PI * d / 0.25 / 9.80665, within(1e-4));
        }
    }

    // A flower R·e^{iωt} + L·e^{inωt} and the extension of the same hand circle and tether: their
    // hands agree only at the same angle, and then their heads do where (n − 1)ωt is a whole turn:
    // at |n − 1| moments, the petals' tips, where the flower touches the circle R + L that bounds
    // it
    // (Lawrence, A Catalog of Special Plane Curves, 1972, sections 6.2 and 6.3: a trochoid's
    // vertices
    // on the circle of radius R + L).
    @ParameterizedTest
    @ValueSource(ints = {-5, -3, -2, -1, 2, 3, 5})
    void aFlowerMeetsItsExtensionOnceAPetal(int n) {
        int petals = Math.abs(n - 1);
        CrossingRequest places =
                CrossingRequest.USUAL.withTolerance(0.01, Double.POSITIVE_INFINITY);
        Crossings crossings =
                Crossings.between(
                        both(Motion.flower(TETHER, n, 0), TETHER, 0),
                        both(Motion.flower(TETHER, 1, 0), TETHER, 0),
                        places);
        assertThat(crossings.list()).hasSize(petals);
        for (int k = 0; k < petals; k++) {
            Crossing c = crossings.list().get(k);
            assertThat(c.fromShare()).isCloseTo((double) k / petals, within(1e-6));
            assertThat(c.toShare()).isCloseTo((double) k / petals, within(1e-6));
            assertThat(c.placeGap()).isLessThan(1e-6);
            // The hands go alike; the heads turn at n and at once: (n − 1)·ω·L.
            assertThat(c.speedGap()).isCloseTo(petals * 2 * Math.PI * TETHER, within(1e-4));
        }
    }

    // A circle of radius ρ about a flower's centre meets it where |R + L·e^{i(n−1)ωt}| = ρ, so
    // where
    // cos((n − 1)ωt) = (ρ² − R² − L²)/2RL: twice a petal while |R − L| < ρ < R + L.
    @ParameterizedTest
    @ValueSource(ints = {-3, -2, 3, 4})
    void aSmallerExtensionsFigureCutsEachPetalTwice(int n) {
        double hand = 0.5;
        double circle = 0.9;
        Crossings crossings =
                Crossings.between(
                        both(Motion.flower(hand, n, 0), TETHER, 0),
                        both(Motion.flower(circle - TETHER, 1, 0), TETHER, 0),
                        LIGHTS);
        assertThat(crossings.list()).hasSize(2 * Math.abs(n - 1));
        double first =
                Math.acos((circle * circle - hand * hand - TETHER * TETHER) / (2 * hand * TETHER))
                        / (2 * Math.PI * Math.abs(n - 1));
        assertThat(crossings.list().get(0).fromShare()).isCloseTo(first, within(1e-7));
    }
}
