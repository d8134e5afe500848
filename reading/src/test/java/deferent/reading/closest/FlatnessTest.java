package deferent.reading.closest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class FlatnessTest {
    private static Flatness solved(double[][] f) {
        Flatness flat = new Flatness(f[0].length);
        for (int k = 0; k < f.length; k++) {
            System.arraycopy(f[k], 0, flat.f()[k], 0, f[k].length);
        }
        flat.solve(3);
        return flat;
    }

    /** F(t) = Σ f⁽ᵏ⁾tᵏ/k!, so that directions at ±h give derivatives by differences. */
    private static double[] direction(double[][] f, double t) {
        double[] at = new double[f[0].length];
        double sum = 0;
        for (int d = 0; d < at.length; d++) {
            at[d] = f[0][d] + t * (f[1][d] + t / 2 * (f[2][d] + t / 3 * f[3][d]));
            sum += at[d] * at[d];
        }
        for (int d = 0; d < at.length; d++) {
            at[d] /= Math.sqrt(sum);
        }
        return at;
    }

    private static double[][] random(Random random, int size) {
        double[][] f = new double[4][size];
        for (double[] k : f) {
            for (int d = 0; d < size; d++) {
                k[d] = random.nextGaussian();
            }
        }
        f[0][0] += 3;
        return f;
    }

    @Test
    void derivativesOfTheDirectionAreThoseOfDifferences() {
        Random random = new Random(4);
        for (int size = 2; size <= 3; size++) {
            double[][] f = random(random, size);
            Flatness flat = solved(f);
            double h = 0.01;
            for (int d = 0; d < size; d++) {
                double a = direction(f, -2 * h)[d];
                double b = direction(f, -h)[d];
                double c = direction(f, h)[d];
                double e = direction(f, 2 * h)[d];
                double middle = direction(f, 0)[d];
                assertThat(flat.n()[0][d]).isCloseTo(middle, within(1e-14));
                assertThat(flat.n()[1][d])
                        .isCloseTo((a - 8 * b + 8 * c - e) / (12 * h), within(1e-6));
                assertThat(flat.n()[2][d])
                        .isCloseTo(
                                (-a + 16 * b - 30 * middle + 16 * c - e) / (12 * h * h),
                                within(1e-5));
                assertThat(flat.n()[3][d])
                        .isCloseTo((e - 2 * c + 2 * b - a) / (2 * h * h * h), within(1e-2));
            }
        }
    }

    @Test
    void itsChangesAreThoseOfDifferences() {
        Random random = new Random(5);
        for (int size = 2; size <= 3; size++) {
            double[][] f = random(random, size);
            Flatness flat = solved(f);
            flat.differentiate(3);
            double h = 1e-6;
            for (int by = 0; by < 4; by++) {
                for (int d = 0; d < size; d++) {
                    f[by][d] += h;
                    double[][] more = solved(f).n();
                    f[by][d] -= 2 * h;
                    double[][] less = solved(f).n();
                    f[by][d] += h;
                    for (int level = by; level < 4; level++) {
                        for (int e = 0; e < size; e++) {
                            assertThat(flat.change()[level][by][e][d])
                                    .isCloseTo(
                                            (more[level][e] - less[level][e]) / (2 * h),
                                            within(1e-7));
                        }
                    }
                }
            }
        }
    }
}
