package deferent.reading.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** A path seen along its own axes. */
class OwnAxesTest {
    private static final int POINTS = 12;

    @Property(tries = 60)
    void seenAlongItsOwnAxesAPathKeepsItsShape(Any any) {
        double[] path =
                any.list(3 * POINTS, 3 * POINTS, () -> any.number(-1, 1)).stream()
                        .mapToDouble(x -> x)
                        .toArray();
        double[] spanning = {0, 0, 0, 2, 0, 0, 0, 3, 0, 0, 0, 4};
        System.arraycopy(spanning, 0, path, 0, spanning.length);
        OwnAxes own = OwnAxes.of(path);
        assertThat(own.dimension()).isEqualTo(3);
        for (int i = 0; i < path.length; i += 3) {
            for (int j = 0; j < i; j += 3) {
                assertThat(apart(own.xyz(), i, j)).isCloseTo(apart(path, i, j), within(1e-9));
            }
        }
        double[][] about = new double[3][3];
        double[] middle = new double[3];
        for (int i = 0; i < path.length; i++) {
            middle[i % 3] += own.xyz()[i];
            for (int b = 0; b < 3; b++) {
                about[i % 3][b] += own.xyz()[i] * own.xyz()[i - i % 3 + b];
            }
        }
        assertThat(middle).containsExactly(new double[3], within(1e-9));
        // Longest axis first, and no way of leaning left in any.
        assertThat(about[0][0]).isGreaterThanOrEqualTo(about[1][1] - 1e-9);
        assertThat(about[1][1]).isGreaterThanOrEqualTo(about[2][2] - 1e-9);
        assertThat(new double[] {about[0][1], about[0][2], about[1][2]})
                .containsExactly(new double[3], within(1e-7));
    }

    @Test
    void aFigureInATiltedPlaneComesOntoTheSheet() {
        Vector3D along = new Vector3D(1, 2, 2).normalize();
        Vector3D across = new Vector3D(2, 1, -2).normalize();
        double[] path = new double[3 * POINTS];
        for (int i = 0; i < POINTS; i++) {
            double angle = 2 * Math.PI * i / POINTS;
            Vector3D p =
                    new Vector3D(0.6 * Math.cos(angle), along, 0.2 * Math.sin(angle), across)
                            .add(new Vector3D(0.1, 0.2, 0.3));
            System.arraycopy(p.toArray(), 0, path, 3 * i, 3);
        }
        OwnAxes own = OwnAxes.of(path);
        assertThat(own.dimension()).isEqualTo(2);
        for (int i = 0; i < path.length; i += 3) {
            double x = own.xyz()[i] / 0.6;
            double y = own.xyz()[i + 1] / 0.2;
            assertThat(x * x + y * y).isCloseTo(1, within(1e-9));
            assertThat(own.xyz()[i + 2]).isZero();
        }
    }

    @Test
    void aPendulumsTinySwingIsALineAndAStillHandAPoint() {
        double[] line = {0.3, 0.1, 0, 0.301, 0.102, 0.002, 0.302, 0.104, 0.004};
        assertThat(OwnAxes.of(line).dimension()).isEqualTo(1);
        double[] still = {0.3, 0.1, 0.2, 0.3, 0.1, 0.2};
        assertThat(OwnAxes.of(still).dimension()).isZero();
        assertThat(OwnAxes.of(still).xyz()).containsOnly(0);
    }

    private static double apart(double[] xyz, int i, int j) {
        double dx = xyz[i] - xyz[j];
        double dy = xyz[i + 1] - xyz[j + 1];
        double dz = xyz[i + 2] - xyz[j + 2];
        return Math.sqrt(dx * dx + dy * dy + dz * dz);
    }
}
