package deferent.reading.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import java.util.Arrays;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.SingularValueDecomposition;
import org.junit.jupiter.api.Test;

/** Laying one path on another. */
class RigidTest {
    private static final int POINTS = 9;

    @Property(tries = 60)
    void aPathThatWasTurnedMirroredAndShiftedIsLaidBackOnItself(Any any) {
        boolean flat = any.of(true, false);
        boolean mirrored = any.of(false, true);
        double[] path = path(any, flat);
        double[] moved = moved(any, path, flat, mirrored);
        Rigid best = best(path, moved, even(), flat, mirrored);
        assertThat(best.mirrored()).isEqualTo(mirrored);
        assertThat(laid(best, moved)).containsExactly(path, within(1e-8));
    }

    // Turned over about a line of its own sheet, a flat path in space lies as well.
    @Property(tries = 60)
    void aFlatPathInSpaceIsLaidBackEitherWayRound(Any any) {
        double[] path = path(any, true);
        double[] moved = moved(any, path, false, any.of(false, true));
        for (boolean mirrored : new boolean[] {false, true}) {
            Rigid best = best(path, moved, even(), false, mirrored);
            assertThat(best.mirrored()).isEqualTo(mirrored);
            assertThat(laid(best, moved)).containsExactly(path, within(1e-7));
        }
    }

    @Test
    void aLineInSpaceIsLaidOnAnotherEitherWayRound() {
        double[] upright = {0, -1, 0, 0, 0, 0, 0, 1, 0};
        double[] aside = {3, 0.5, 2, 4, 0.5, 2, 5, 0.5, 2};
        for (boolean mirrored : new boolean[] {false, true}) {
            Rigid best = best(upright, aside, new double[] {1, 1, 1}, false, mirrored);
            assertThat(best.mirrored()).isEqualTo(mirrored);
            assertThat(laid(best, aside)).containsExactly(upright, within(1e-12));
        }
    }

    @Test
    void pathsWithNothingInCommonAreOnlyLaidMiddleOnMiddle() {
        double[] still = {0.3, 0.2, 0.1, 0.3, 0.2, 0.1};
        double[] line = {0, 0, 0, 2, 0, 0};
        Rigid best = best(still, line, new double[] {1, 1}, false, true);
        assertThat(best.mirrored()).isTrue();
        double[] laid = laid(best, line);
        for (int a = 0; a < 3; a++) {
            assertThat((laid[a] + laid[3 + a]) / 2).isCloseTo(still[a], within(1e-12));
        }
    }

    // Kabsch (1976): what is left is the spread of both less twice the singular values of their
    // covariance, the least of them turned round where the wanted handedness is not its own.
    @Property(tries = 60)
    void whatIsLeftBetweenUnlikePathsIsKabschs(Any any) {
        boolean mirrored = any.of(false, true);
        double[] p = middled(path(any, false));
        double[] h = middled(path(any, false));
        double[][] c = new double[3][3];
        double spread = 0;
        for (int i = 0; i < p.length; i++) {
            spread += p[i] * p[i] + h[i] * h[i];
            for (int b = 0; b < 3; b++) {
                c[i % 3][b] += p[i] * h[i - i % 3 + b];
            }
        }
        double[] s =
                new SingularValueDecomposition(MatrixUtils.createRealMatrix(c)).getSingularValues();
        boolean own =
                new Vector3D(c[0]).crossProduct(new Vector3D(c[1])).dotProduct(new Vector3D(c[2]))
                                < 0
                        == mirrored;
        Rigid best = best(p, h, even(), false, mirrored);
        assertThat(best.mirrored()).isEqualTo(mirrored);
        assertThat(left(p, h, best, even()))
                .isCloseTo(spread - 2 * (s[0] + s[1] + (own ? s[2] : -s[2])), within(1e-9));
    }

    @Property(tries = 60)
    void noSmallTurnOrShiftBringsWeightedPairsNearer(Any any) {
        boolean flat = any.of(true, false);
        double[] p = path(any, flat);
        double[] h = path(any, flat);
        double[] weight =
                any.list(POINTS, POINTS, () -> any.number(0.1, 3)).stream()
                        .mapToDouble(x -> x)
                        .toArray();
        Rigid best = best(p, h, weight, flat, any.of(false, true));
        double least = left(p, h, best, weight);
        for (int i = 0; i < (flat ? 3 : 6); i++) {
            for (double by : new double[] {-0.01, 0.01}) {
                double[] nudge = new double[flat ? 3 : 6];
                nudge[i] = by;
                assertThat(left(p, h, best.nudged(nudge), weight)).isGreaterThan(least - 1e-9);
            }
        }
    }

    // Rodrigues' formula. A nudge turns the path about where it was drawn from, then shifts it.
    @Property(tries = 60)
    void aNudgeTurnsThePathAsItLiesAndAddsToItsShift(Any any) {
        double[] path = path(any, false);
        Rigid before = Rigid.flat(any.number(-3, 3), any.of(false, true), 0.3, -0.2);
        double[] lying = laid(new Rigid(before.turn(), new double[3]), path);
        Vector3D axis = new Vector3D(any.number(-1, 1), any.number(-1, 1), any.number(-1, 1));
        double angle = axis.getNorm();
        double[] after =
                laid(
                        before.nudged(
                                new double[] {
                                    axis.getX(), axis.getY(), axis.getZ(), 0.1, 0.2, -0.4
                                }),
                        path);
        for (int i = 0; i < path.length; i += 3) {
            Vector3D v = new Vector3D(lying[i], lying[i + 1], lying[i + 2]);
            Vector3D turned = v;
            if (angle > 0) {
                Vector3D k = axis.normalize();
                turned =
                        new Vector3D(
                                Math.cos(angle),
                                v,
                                Math.sin(angle),
                                k.crossProduct(v),
                                (1 - Math.cos(angle)) * k.dotProduct(v),
                                k);
            }
            Vector3D there = turned.add(new Vector3D(0.3 + 0.1, -0.2 + 0.2, -0.4));
            assertThat(there.distance(new Vector3D(after[i], after[i + 1], after[i + 2])))
                    .isLessThan(1e-9);
        }
    }

    @Property(tries = 40)
    void inThePlaneANudgeIsThatAboutTheLineAcrossIt(Any any) {
        double[] path = path(any, true);
        Rigid before = Rigid.flat(any.number(-3, 3), any.of(false, true), 0.3, -0.2);
        double angle = any.number(-1, 1);
        double[] flat = laid(before.nudged(new double[] {angle, 0.1, 0.5}), path);
        double[] space = laid(before.nudged(new double[] {0, 0, angle, 0.1, 0.5, 0}), path);
        assertThat(flat).containsExactly(space, within(1e-12));
    }

    private static Rigid best(
            double[] p, double[] h, double[] weight, boolean flat, boolean mirrored) {
        int[] pairs = new int[2 * weight.length];
        Arrays.setAll(pairs, k -> k / 2);
        return Rigid.best(p, h, pairs, weight.length, weight, flat, mirrored);
    }

    private static double left(double[] p, double[] h, Rigid motion, double[] weight) {
        double[] laid = laid(motion, h);
        double sum = 0;
        for (int i = 0; i < p.length; i++) {
            sum += weight[i / 3] * (p[i] - laid[i]) * (p[i] - laid[i]);
        }
        return sum;
    }

    private static double[] laid(Rigid motion, double[] path) {
        double[] out = new double[path.length];
        motion.move(path, out);
        return out;
    }

    private static double[] even() {
        double[] weight = new double[POINTS];
        Arrays.fill(weight, 1);
        return weight;
    }

    // Four points that span what they should, and some more.
    private static double[] path(Any any, boolean flat) {
        double[] p =
                any.list(3 * POINTS, 3 * POINTS, () -> any.number(-1, 1)).stream()
                        .mapToDouble(x -> x)
                        .toArray();
        double[] spanning = {0, 0, 0, 2, 0, 0, 0, 3, 0, 0, 0, 4};
        System.arraycopy(spanning, 0, p, 0, spanning.length);
        for (int i = 2; flat && i < p.length; i += 3) {
            p[i] = 0;
        }
        return p;
    }

    private static double[] middled(double[] p) {
        double[] out = p.clone();
        for (int a = 0; a < 3; a++) {
            double mean = 0;
            for (int i = a; i < p.length; i += 3) {
                mean += p[i] / POINTS;
            }
            for (int i = a; i < p.length; i += 3) {
                out[i] -= mean;
            }
        }
        return out;
    }

    private static double[] moved(Any any, double[] path, boolean flat, boolean mirrored) {
        Vector3D axis =
                flat
                        ? Vector3D.PLUS_K
                        : new Vector3D(any.number(-1, 1), any.number(-1, 1), any.number(1, 2));
        Rotation turn = new Rotation(axis, any.number(-3, 3), RotationConvention.VECTOR_OPERATOR);
        double[] out = new double[path.length];
        for (int i = 0; i < path.length; i += 3) {
            double y = mirrored ? -path[i + 1] : path[i + 1];
            Vector3D there = turn.applyTo(new Vector3D(path[i], y, path[i + 2]));
            out[i] = there.getX() + 0.7;
            out[i + 1] = there.getY() - 0.4;
            out[i + 2] = there.getZ() + (flat ? 0 : 0.2);
        }
        return out;
    }
}
