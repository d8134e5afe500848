package deferent.motion.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Polygons whose areas school geometry knows. */
class WoundAreaTest {
    private static double area(double... corners) {
        double[] u = new double[corners.length / 2];
        double[] v = new double[corners.length / 2];
        for (int i = 0; i < u.length; i++) {
            u[i] = corners[2 * i];
            v[i] = corners[2 * i + 1];
        }
        return WoundArea.of(u, v);
    }

    @Test
    void aTriangleHoldsHalfItsBaseTimesItsHeightEitherWayRound() {
        assertThat(area(0, 0, 3, 0, 1, 2)).isCloseTo(3, within(1e-12));
        assertThat(area(0, 0, 1, 2, 3, 0)).isCloseTo(3, within(1e-12));
        assertThat(area(5, -7, 8, -7, 6, -5)).isCloseTo(3, within(1e-12));
    }

    /** Similar triangles: the sides of 3 and 1, two apart, cross at a height of 1.5. */
    @Test
    void aBowHoldsBothItsHalvesWhereverItLies() {
        for (double up : new double[] {0, -1, 7, 100}) {
            assertThat(area(-4, up, -1, up, -4, up + 2, -3, up + 2))
                    .as("%s up", up)
                    .isCloseTo(3 * 1.5 / 2 + 0.5 / 2, within(1e-6));
        }
    }

    /** Ten triangles between the star's points at 1 and its notches at 1/φ², 36° apart. */
    @Test
    void aFivePointedStarHoldsItsMiddleAsWell() {
        double[] star = new double[10];
        for (int i = 0; i < 5; i++) {
            star[2 * i] = Math.cos(4 * Math.PI * i / 5 + 0.1);
            star[2 * i + 1] = Math.sin(4 * Math.PI * i / 5 + 0.1);
        }
        double golden = (1 + Math.sqrt(5)) / 2;
        double whole = 5 * Math.sin(Math.PI / 5) / (golden * golden);
        assertThat(area(star)).isCloseTo(whole, within(1e-5));
    }

    @Test
    void whatIsGoneRoundTwiceCountsOnceAndWhatIsGoneRoundBackCountsNot() {
        assertThat(area(0, 0, 3, 0, 3, 3, 0, 3, 0, 0, 1, 0, 1, 1, 0, 1))
                .isCloseTo(9, within(1e-12));
        assertThat(area(0, 0, 3, 0, 3, 3, 0, 3, 0, 0, 0, 1, 1, 1, 1, 0))
                .isCloseTo(8, within(1e-12));
        assertThat(area(0, 0, 2, 1, 5, 4, 2, 1)).isCloseTo(0, within(1e-12));
    }
}
