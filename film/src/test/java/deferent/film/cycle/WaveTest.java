package deferent.film.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.linear.MatrixUtils;
import org.junit.jupiter.api.Test;

class WaveTest {
    private static final Wave WAVE =
            new Wave(
                    1.3,
                    new double[] {5, 3, -2, 0.5, 0.7, -0.2, 0.1},
                    new double[] {1, -1, 2, 0.3, -0.4, 0.2, 0.6},
                    MatrixUtils.createRealIdentityMatrix(7).scalarMultiply(0.01),
                    0.5);

    @Test
    void eachDerivativeIsThatOfTheOneBefore() {
        double h = 1e-5;
        for (int d = 0; d < 3; d++) {
            double slope = (WAVE.at(0.4 + h)[d][0] - WAVE.at(0.4 - h)[d][0]) / (2 * h);
            assertThat(WAVE.at(0.4)[d + 1][0]).isCloseTo(slope, within(1e-4 * Math.abs(slope)));
        }
    }

    @Test
    void theMeanOverAnExposureSharpenedIsThePlaceAtItsMiddle() {
        double exposure = 0.05;
        Wave blurred = blurred(exposure);
        assertThat(blurred.sharpened(exposure).at(0.3)[0][0])
                .isCloseTo(WAVE.at(0.3)[0][0], within(1e-9));
        assertThat(Math.abs(blurred.at(0.3)[0][0] - WAVE.at(0.3)[0][0])).isGreaterThan(1e-3);
    }

    private static Wave blurred(double exposure) {
        double[] x = WAVE.x().clone();
        double[] y = WAVE.y().clone();
        for (int k = 1; k <= 3; k++) {
            double half = Math.PI * k / WAVE.period() * exposure;
            for (int i = 2 * k - 1; i <= 2 * k; i++) {
                x[i] *= Math.sin(half) / half;
                y[i] *= Math.sin(half) / half;
            }
        }
        return new Wave(WAVE.period(), x, y, WAVE.spread(), WAVE.scatter());
    }

    @Test
    void placeAndPullErrTogether() {
        // All coefficients are equally unsure: of one turn at rate w the place and e times the
        // acceleration err as (1 - e w^2) times the place alone.
        Wave one =
                new Wave(
                        2,
                        new double[] {0, 1, 0},
                        new double[] {0, 0, 1},
                        MatrixUtils.createRealDiagonalMatrix(new double[] {0, 0.04, 0.04}),
                        1);
        double rate = Math.PI;
        assertThat(one.error(0.3, 1, 0.05))
                .isCloseTo(0.2 * (1 - 0.05 * rate * rate), within(1e-12));
    }
}
