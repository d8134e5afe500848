package deferent.reading.link;

import static deferent.reading.link.Hands.CAP;
import static deferent.reading.link.Hands.CAT_EYE;
import static deferent.reading.link.Hands.EXTENSION;
import static deferent.reading.link.Hands.ISOLATION;
import static deferent.reading.link.Hands.PENDULUM;
import static deferent.reading.link.Hands.STATIC_SPIN;
import static deferent.reading.link.Hands.TRIQUETRA;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Motion;
import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.distance.DiscreteFrechetDistance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;

/** Source: Eiter and Mannila, Computing discrete Fréchet distance (1994); and JTS. */
class FrechetTest {
    private static final GeometryFactory SHEET = new GeometryFactory();

    @Property
    void theDistanceIsThatOfTheDefinitionOnAnyPoints(Any any) {
        double[] p = any.from(FrechetTest::path);
        double[] h = any.from(FrechetTest::path);
        double[] a = points(p);
        double[] b = points(h);
        double[][] known = new double[a.length / 3][b.length / 3];
        double defined = defined(a, b, a.length / 3 - 1, b.length / 3 - 1, known);
        assertThat(Frechet.distance(a, b)).isCloseTo(defined, within(1e-12));
    }

    // JTS 1.20 takes a shortcut along the diagonal, which on about one random pair in forty ends
    // above the definition; it is never below.
    @Property
    void itIsNeverAboveThatOfJtsOnAnyPoints(Any any) {
        double[] p = any.from(FrechetTest::path);
        double[] h = any.from(FrechetTest::path);
        double jts = DiscreteFrechetDistance.distance(line(p), line(h));
        assertThat(Frechet.distance(points(p), points(h))).isLessThanOrEqualTo(jts + 1e-12);
    }

    @Test
    void itIsThatOfJtsOnHeadAndHandPathsOfTheTrade() {
        for (Motion carrier :
                new Motion[] {STATIC_SPIN, EXTENSION, ISOLATION, TRIQUETRA, PENDULUM}) {
            for (Motion rider : new Motion[] {TRIQUETRA, CAT_EYE, CAP}) {
                Samples samples = Trace.of(Hands.pair(carrier, rider)).samples(240);
                double[] head = flat(samples.head(Side.LEFT));
                double[] hand = flat(samples.hand(Side.RIGHT));
                assertThat(Frechet.distance(points(head), points(hand)))
                        .isCloseTo(
                                DiscreteFrechetDistance.distance(line(head), line(hand)),
                                within(1e-12));
            }
        }
    }

    // Points set ever closer along two polygons come to the polygons' own distance: it is at most
    // theirs, and less by no more than their spacing (Eiter and Mannila, lemma 4).
    @Property
    void walkersMayStepAnywhereAlongThePolygons(Any any) {
        double[] p = points(any.from(FrechetTest::path));
        double[] h = points(any.from(FrechetTest::path));
        double[] a = parted(p, 60);
        double[] b = parted(h, 60);
        double spacing = Math.max(longest(a), longest(b));
        double above = Frechet.distance(a, b);
        assertThat(Frechet.within(above + 1e-9, p, h)).isTrue();
        if (above > spacing + 1e-9) {
            assertThat(Frechet.within(above - spacing - 1e-9, p, h)).isFalse();
        }
    }

    @Test
    void walkersWhoMayStopBetweenCornersAreNearer() {
        double[] p = {0, 0, 0, 4, 0, 0};
        double[] h = {0, 1, 0, 2, 1, 0, 4, 1, 0};
        assertThat(Frechet.distance(p, h)).isGreaterThan(2);
        assertThat(Frechet.within(1, p, h)).isTrue();
        assertThat(Frechet.within(0.999, p, h)).isFalse();
        // A step back has to be waited for: half of it is the least lead.
        double[] back = {0, 0, 0, 3, 0, 0, 1, 0, 0, 4, 0, 0};
        assertThat(Frechet.within(1.001, p, back)).isTrue();
        assertThat(Frechet.within(0.999, p, back)).isFalse();
    }

    private static double[] parted(double[] points, int parts) {
        int pieces = points.length / 3 - 1;
        double[] out = new double[3 * (pieces * parts + 1)];
        for (int i = 0; i <= pieces * parts; i++) {
            int piece = Math.min(i / parts, pieces - 1);
            double share = (double) (i - piece * parts) / parts;
            for (int c = 0; c < 3; c++) {
                double from = points[3 * piece + c];
                out[3 * i + c] = from + share * (points[3 * piece + 3 + c] - from);
            }
        }
        return out;
    }

    private static double longest(double[] points) {
        double most = 0;
        for (int i = 3; i < points.length; i += 3) {
            most =
                    Math.max(
                            most,
                            Samples.point(points, i / 3)
                                    .distance(Samples.point(points, i / 3 - 1)));
        }
        return most;
    }

    @Test
    void twoConcentricCirclesWalkedTogetherAreTheirRadiiApart() {
        double[] a = new double[3 * 100];
        double[] b = new double[3 * 100];
        for (int i = 0; i < 100; i++) {
            double t = 2 * Math.PI * i / 99;
            a[3 * i] = Math.cos(t);
            a[3 * i + 1] = Math.sin(t);
            b[3 * i] = 0.4 * Math.cos(t);
            b[3 * i + 1] = 0.4 * Math.sin(t);
        }
        assertThat(Frechet.distance(a, b)).isCloseTo(0.6, within(1e-12));
    }

    @Property
    void aCorridorOnlyLengthensTheLead(Any any) {
        double[] p = any.from(FrechetTest::twelve);
        double[] h = any.from(FrechetTest::twelve);
        int n = 12;
        int[] pairs = new int[4 * n];
        double[] a = points(p);
        double[] b = points(h);
        int count = Frechet.walk(a, b, Corridor.whole(n, n), 1, pairs);
        Corridor about = Corridor.about(pairs, count, n - 1, 1, 0);
        double kept = Frechet.squared(a, b, about, new long[n], Double.MAX_VALUE);
        assertThat(Math.sqrt(kept)).isGreaterThanOrEqualTo(Frechet.distance(a, b) - 1e-12);
        assertThat(kept).isFinite();
    }

    private static double[] path(Any any) {
        return path(any, any.whole(2, 30));
    }

    private static double[] twelve(Any any) {
        return path(any, 12);
    }

    private static double[] path(Any any, int points) {
        return any.list(2 * points, 2 * points, () -> any.number(-2, 2)).stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
    }

    // Eiter and Mannila's recursion as they print it.
    private static double defined(double[] p, double[] h, int i, int j, double[][] known) {
        if (known[i][j] > 0) {
            return known[i][j];
        }
        double lead = Math.hypot(p[3 * i] - h[3 * j], p[3 * i + 1] - h[3 * j + 1]);
        double before = 0;
        if (i > 0 && j > 0) {
            before =
                    Math.min(
                            defined(p, h, i - 1, j - 1, known),
                            Math.min(
                                    defined(p, h, i - 1, j, known),
                                    defined(p, h, i, j - 1, known)));
        } else if (i > 0) {
            before = defined(p, h, i - 1, 0, known);
        } else if (j > 0) {
            before = defined(p, h, 0, j - 1, known);
        }
        known[i][j] = Math.max(Math.max(before, lead), Double.MIN_VALUE);
        return known[i][j];
    }

    private static double[] flat(double[] xyz) {
        double[] xy = new double[xyz.length / 3 * 2];
        for (int i = 0; i < xyz.length / 3; i++) {
            xy[2 * i] = xyz[3 * i];
            xy[2 * i + 1] = xyz[3 * i + 1];
        }
        return xy;
    }

    private static double[] points(double[] xy) {
        double[] out = new double[xy.length / 2 * 3];
        for (int i = 0; i < xy.length / 2; i++) {
            out[3 * i] = xy[2 * i];
            out[3 * i + 1] = xy[2 * i + 1];
        }
        return out;
    }

    private static LineString line(double[] xy) {
        Coordinate[] at = new Coordinate[xy.length / 2];
        for (int i = 0; i < at.length; i++) {
            at[i] = new Coordinate(xy[2 * i], xy[2 * i + 1]);
        }
        return SHEET.createLineString(at);
    }
}
