package deferent.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.PathIterator;
import java.util.List;
import org.junit.jupiter.api.Test;

class FittedCurveTest {
    private static final int POINTS = 360;
    private static final double RADIUS = 200;

    private static double[][] circle() {
        double[][] xy = new double[2][POINTS + 1];
        for (int i = 0; i <= POINTS; i++) {
            double angle = 2 * Math.PI * (i % POINTS) / POINTS;
            xy[0][i] = RADIUS * Math.cos(angle);
            xy[1][i] = RADIUS * Math.sin(angle);
        }
        return xy;
    }

    @Test
    void aCircleTakesFewCurvesAndStaysRound() {
        double[][] xy = circle();
        List<double[]> cubics = FittedCurve.through(xy[0], xy[1], true).between(0, POINTS);
        assertThat(cubics.size()).isBetween(4, 8);
        for (double[] c : cubics) {
            for (double t = 0; t <= 1; t += 0.05) {
                double s = 1 - t;
                double[] p = new double[2];
                for (int axis = 0; axis < 2; axis++) {
                    p[axis] =
                            s * s * s * c[axis]
                                    + 3 * s * s * t * c[2 + axis]
                                    + 3 * s * t * t * c[4 + axis]
                                    + t * t * t * c[6 + axis];
                }
                assertThat(Math.hypot(p[0], p[1])).isCloseTo(RADIUS, within(0.06));
            }
        }
    }

    @Test
    void aPartBeginsAndEndsWhereItIsAsked() {
        double[][] xy = circle();
        FittedCurve curve = FittedCurve.through(xy[0], xy[1], true);
        List<double[]> part = curve.between(37, 203.5);
        double[] first = part.get(0);
        double[] last = part.get(part.size() - 1);
        assertThat(first[0]).isCloseTo(xy[0][37], within(0.1));
        assertThat(first[1]).isCloseTo(xy[1][37], within(0.1));
        double angle = 2 * Math.PI * 203.5 / POINTS;
        assertThat(last[6]).isCloseTo(RADIUS * Math.cos(angle), within(0.1));
        assertThat(last[7]).isCloseTo(RADIUS * Math.sin(angle), within(0.1));
    }

    @Test
    void aCornerStaysACorner() {
        double[] x = new double[41];
        double[] y = new double[41];
        for (int i = 0; i <= 40; i++) {
            x[i] = i <= 20 ? 5 * i : 100;
            y[i] = i <= 20 ? 0 : 5 * (i - 20);
        }
        List<double[]> cubics = FittedCurve.through(x, y, false).between(0, 40);
        assertThat(cubics).hasSize(2);
        assertThat(cubics.get(0)).endsWith(100.0, 0.0);
        assertThat(cubics.get(0)[5]).isCloseTo(0, within(1e-9));
        assertThat(cubics.get(1)[2]).isCloseTo(100, within(1e-9));
    }

    @Test
    void aPointThatStaysIsNoLine() {
        double[] still = new double[12];
        assertThat(
                        FittedCurve.path(
                                        FittedCurve.through(still, still, true).between(0, 11),
                                        true)
                                .getPathIterator(null)
                                .currentSegment(new double[6]))
                .isEqualTo(PathIterator.SEG_MOVETO);
    }
}
