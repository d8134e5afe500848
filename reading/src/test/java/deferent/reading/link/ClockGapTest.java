package deferent.reading.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.SingularValueDecomposition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Hands that trail heads by known lags. */
class ClockGapTest {
    private static final double TURN = 2 * Math.PI;

    /** A point that moves over one cycle, told by the share of it that has passed. */
    private interface Path {
        Vector3D at(double share);
    }

    // No symmetry: only one turn and one lag lay it on itself.
    private static final Path LOPSIDED =
            s -> terms(s, 0.6, 1).add(terms(s, 0.25, 2)).add(terms(s + 0.05, 0.1, -3));
    private static final Path LEAVING =
            s -> LOPSIDED.at(s).add(new Vector3D(0, 0, 0.2 * Math.cos(TURN * 2 * s + 0.3)));

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.23, -0.23, 0.1234567, -0.4999, 0.31415, -0.007})
    void aHandThatTrailsTheHeadTrailsByThatLag(double lag) {
        for (Path path : new Path[] {LOPSIDED, LEAVING}) {
            for (int count : new int[] {720, 11_520}) {
                ClockGap gap = ClockGap.of(at(path, count), at(late(path, lag), count), true, true);
                assertThat(gap.gap()).isLessThan(1e-5);
                assertThat(gap.lag()).isCloseTo(lag, within(1e-6));
                assertThat(gap.unturnedLag()).isCloseTo(lag, within(1e-6));
            }
            ClockGap quick = ClockGap.of(at(path, 720), at(late(path, lag), 720), true, false);
            assertThat(quick.lag()).isCloseTo(lag, within(1e-4));
            assertThat(quick.gap()).isLessThan(1e-3);
        }
    }

    @Test
    void halfACycleBehindAndHalfACycleAheadAreOneLag() {
        for (double half : new double[] {0.5, -0.5}) {
            ClockGap gap =
                    ClockGap.of(at(LOPSIDED, 720), at(late(LOPSIDED, half), 720), true, true);
            assertThat(gap.lag()).isEqualTo(-0.5);
            assertThat(gap.unturnedLag()).isEqualTo(-0.5);
        }
    }

    @Test
    void turningShiftingAndMirroringLeaveLagAndGapAlone() {
        Rotation turn =
                new Rotation(new Vector3D(1, -2, 0.5), 2.2, RotationConvention.VECTOR_OPERATOR);
        for (Path path : new Path[] {LOPSIDED, LEAVING}) {
            for (double side : new double[] {1, -1}) {
                Path moved =
                        s -> {
                            Vector3D p = late(path, 0.2).at(s);
                            return turn.applyTo(new Vector3D(p.getX(), side * p.getY(), p.getZ()))
                                    .add(new Vector3D(0.3, 0.1, -0.2));
                        };
                ClockGap gap = ClockGap.of(at(path, 720), at(moved, 720), true, true);
                assertThat(gap.lag()).isCloseTo(0.2, within(1e-6));
                assertThat(gap.gap()).isLessThan(1e-5);
            }
        }
    }

    /** Any lag between two circles can be turned away; the one that need not be is told. */
    @Test
    void ofTwoCirclesTheLagIsTheOneThatNeedsNoTurning() {
        Path head = s -> terms(s, 0.6, 1);
        Path hand = late(s -> terms(s, 0.5, 1), 0.2);
        ClockGap gap = ClockGap.of(at(head, 720), at(hand, 720), true, true);
        assertThat(gap.gap()).isCloseTo(0.1, within(1e-6));
        assertThat(gap.lag()).isCloseTo(0.2, within(1e-6));
        assertThat(gap.unturnedLag()).isCloseTo(0.2, within(1e-6));
    }

    /**
     * An ellipse of two turning vectors a and b, leant by α: without turning it is nearest where
     * a²cos(α − x) + b²cos(α + x) is greatest, so at tan x = tan α (a² − b²)/(a² + b²).
     */
    @Test
    void aLeaningEllipseIsNearestUnturnedAtALagOfItsOwn() {
        double lean = 0.7;
        Path head = s -> terms(s, 0.6, 1).add(terms(s, 0.3, -1));
        Path hand =
                s -> {
                    Vector3D p = late(head, 0.1).at(s);
                    return new Rotation(Vector3D.PLUS_K, lean, RotationConvention.VECTOR_OPERATOR)
                            .applyTo(p);
                };
        ClockGap gap = ClockGap.of(at(head, 720), at(hand, 720), true, true);
        double x = Math.atan(Math.tan(lean) * (0.36 - 0.09) / (0.36 + 0.09));
        assertThat(gap.lag()).isCloseTo(0.1, within(1e-6));
        assertThat(gap.gap()).isLessThan(1e-5);
        assertThat(gap.unturnedLag()).isCloseTo(0.1 - x / TURN, within(1e-6));
    }

    /** What turns otherwise than all of the head cannot be matched by it: its own size is left. */
    @Test
    void aLoopThatTheHeadHasNotStaysOver() {
        Path hand = s -> LOPSIDED.at(s - 0.15).add(terms(s, 0.05, 7));
        ClockGap flat = ClockGap.of(at(LOPSIDED, 720), at(hand, 720), true, true);
        assertThat(flat.gap()).isCloseTo(0.05, within(1e-6));
        assertThat(flat.lag()).isCloseTo(0.15, within(1e-6));
        // To and fro across the plane: the mean square of a cosine is a half.
        Path across =
                s -> LEAVING.at(s - 0.15).add(new Vector3D(0, 0, 0.05 * Math.cos(TURN * 7 * s)));
        ClockGap space = ClockGap.of(at(LEAVING, 720), at(across, 720), true, true);
        assertThat(space.gap()).isCloseTo(0.05 / Math.sqrt(2), within(1e-6));
        assertThat(space.lag()).isCloseTo(0.15, within(1e-6));
    }

    @Test
    void whatDoesNotComeRoundAgainHasNoLag() {
        Path head = s -> new Vector3D(s, 0, 0);
        Path hand = s -> new Vector3D(0, 3 * s, 0);
        ClockGap gap = ClockGap.of(at(head, 100), at(hand, 100), false, true);
        assertThat(gap.lag()).isZero();
        assertThat(gap.unturnedLag()).isZero();
        // Even steps of a hundredth: their mean square about the middle is (n² − 1)/12 steps².
        double spread = Math.sqrt((100 * 100 - 1) / 12.0) / 100;
        assertThat(gap.gap()).isCloseTo((3 - 1) * spread, within(1e-9));
    }

    // Kabsch (1976) at every lag of the samples, by Hipparchus's singular values.
    @Property(tries = 8)
    void unlikePathsAreAsFarApartAsTheBestMotionAtTheBestLagLeavesThem(Any any) {
        boolean flat = any.of(false, true);
        double[] head = middled(at(loops(any, flat), 360));
        double[] hand = middled(at(loops(any, flat), 360));
        double least = Double.POSITIVE_INFINITY;
        for (int lag = 0; lag < 360; lag++) {
            double[][] c = new double[3][3];
            double spread = 0;
            for (int i = 0; i < 360; i++) {
                for (int a = 0; a < 3; a++) {
                    double p = head[3 * ((i + lag) % 360) + a];
                    spread += (p * p + hand[3 * i + a] * hand[3 * i + a]) / 360;
                    for (int b = 0; b < 3; b++) {
                        c[a][b] += p * hand[3 * i + b] / 360;
                    }
                }
            }
            double[] s =
                    new SingularValueDecomposition(MatrixUtils.createRealMatrix(c))
                            .getSingularValues();
            least = Math.min(least, Math.sqrt(Math.max(0, spread - 2 * (s[0] + s[1] + s[2]))));
        }
        double gap = ClockGap.of(head, hand, true, true).gap();
        assertThat(gap).isLessThan(least + 1e-3);
        // Between two samples it may be a little less; of two lags as good to a hair, either.
        assertThat(gap).isGreaterThan(least - 1e-3);
    }

    private static Path loops(Any any, boolean flat) {
        double a = any.number(0.2, 0.9);
        double b = any.number(0.1, 0.5);
        double c = flat ? 0 : any.number(0.1, 0.5);
        double d = any.number(0, 1);
        return s ->
                terms(s, a, 1)
                        .add(terms(s + d, b, -2))
                        .add(
                                new Vector3D(
                                        0.1 * Math.cos(TURN * s),
                                        0,
                                        c * Math.sin(TURN * 2 * s + d)));
    }

    private static double[] middled(double[] points) {
        double[] out = points.clone();
        for (int a = 0; a < 3; a++) {
            double mean = 0;
            for (int i = a; i < points.length; i += 3) {
                mean += 3 * points[i] / points.length;
            }
            for (int i = a; i < points.length; i += 3) {
                out[i] -= mean;
            }
        }
        return out;
    }

    private static Vector3D terms(double share, double radius, int turns) {
        double angle = TURN * turns * share;
        return new Vector3D(radius * Math.cos(angle), radius * Math.sin(angle), 0);
    }

    private static Path late(Path path, double lag) {
        return s -> path.at(s - lag);
    }

    private static double[] at(Path path, int count) {
        double[] out = new double[3 * count];
        for (int i = 0; i < count; i++) {
            System.arraycopy(path.at((double) i / count).toArray(), 0, out, 3 * i, 3);
        }
        return out;
    }
}
