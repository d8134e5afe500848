package deferent.search.seek;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.PlaneJet;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Turns;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class SpaceTest {
    private static final Space SPACE = Space.of(new Space.Grid(2, 2, 1, 3, 8, 2, true));

    // Lags that can bring one start angle of eight on another, for all paths and turns of the
    // space.
    private static final int LAGS = 480;
    private static final Map<Long, double[][]> SEEN = new HashMap<>();

    /** The hand about its mean and the tether's direction, u and v in turn, over a cycle. */
    private static double[][] seen(long key) {
        return SEEN.computeIfAbsent(
                key,
                k -> {
                    Motion motion =
                            new Motion(
                                    SPACE.handShape(k).path(1),
                                    SPACE.law(k).turned(SPACE.startOf(k)));
                    HandPath.Course path = motion.path().course();
                    SpinLaw.Course spin = motion.spin().course();
                    double[] mean = SPACE.handMean(k);
                    double[][] out = new double[2][2 * LAGS];
                    for (int i = 0; i < LAGS; i++) {
                        PlaneJet hand = path.at((double) i / LAGS);
                        double angle = spin.at((double) i / LAGS).value();
                        out[0][2 * i] = hand.u().value() - mean[0];
                        out[0][2 * i + 1] = hand.v().value() - mean[1];
                        out[1][2 * i] = Math.cos(angle);
                        out[1][2 * i + 1] = Math.sin(angle);
                    }
                    return out;
                });
    }

    /** Whether one turn, mirror and lag lay hand on hand and tether along tether. */
    private static boolean sameMotion(long a, long b) {
        double[][] pa = seen(a);
        double[][] pb = seen(b);
        for (int lag = 0; lag < LAGS; lag++) {
            for (int mirror = 1; mirror >= -1; mirror -= 2) {
                double re = 0;
                double im = 0;
                double power = 0;
                for (int p = 0; p < 2; p++) {
                    for (int i = 0; i < LAGS; i += 8) {
                        int j = (i + lag) % LAGS;
                        double x = pa[p][2 * i];
                        double y = pa[p][2 * i + 1];
                        double u = pb[p][2 * j];
                        double v = mirror * pb[p][2 * j + 1];
                        re += x * u + y * v;
                        im += y * u - x * v;
                        power += x * x + y * y + u * u + v * v;
                    }
                }
                if (power - 2 * Math.hypot(re, im) < 1e-8) {
                    return true;
                }
            }
        }
        return false;
    }

    private static Map<String, List<Long>> alike(long[] keys) {
        Map<String, List<Long>> alike = new TreeMap<>();
        for (long key : keys) {
            StringBuilder print = new StringBuilder();
            for (double d : Descriptor.of(SPACE.hand(SPACE.path(key)))) {
                print.append(Math.round(d * 1e6)).append(' ');
            }
            for (double d : Descriptor.of(SPACE.head(key))) {
                print.append(Math.round(d * 1e6)).append(' ');
            }
            alike.computeIfAbsent(print.toString(), k -> new ArrayList<>()).add(key);
        }
        return alike;
    }

    @Test
    void noMotionStandsTwiceInASpace() {
        long[] keys = SPACE.build(0, SPACE.keys());
        assertThat(keys).hasSize((int) SPACE.count());
        int compared = 0;
        for (List<Long> group : alike(keys).values()) {
            for (int i = 0; i < group.size(); i++) {
                for (int j = Math.max(0, i - 4); j < i; j++) {
                    long a = group.get(i);
                    long b = group.get(j);
                    compared++;
                    assertThat(sameMotion(a, b)).as("keys %d and %d", a, b).isFalse();
                }
            }
        }
        assertThat(compared).isGreaterThan(500);
    }

    @Test
    void whatASpaceLeavesOutItHasAlreadySeenFromElsewhere() {
        long[] keys = SPACE.build(0, SPACE.keys());
        Map<String, List<Long>> known = alike(keys);
        int checked = 0;
        for (long key = 0; key < SPACE.keys(); key += 7) {
            HandShape hand = SPACE.handShape(key);
            boolean turning = SPACE.law(key) instanceof Turns;
            int n = SPACE.law(key).turns();
            // more turns about a still hand, and common divisors, are other tempos of what is there
            if (SPACE.holds(key)
                    || !turning
                    || hand.kind() == HandShape.Kind.STILL
                    || hand.kind() == HandShape.Kind.CIRCLE
                            && SeriesCurve.gcd(hand.first(), n) != 1) {
                continue;
            }
            checked++;
            String print = alike(new long[] {key}).keySet().iterator().next();
            long wanted = key;
            assertThat(known).containsKey(print);
            assertThat(known.get(print)).anyMatch(k -> sameMotion(wanted, k));
        }
        assertThat(checked).isGreaterThan(100);
    }

    @Test
    void aMotionsCurvesAreWhereItsTraceIs() {
        long[] keys = SPACE.build(0, SPACE.keys());
        Map<String, Long> kinds = new HashMap<>();
        for (long key : keys) {
            kinds.putIfAbsent(
                    SPACE.handShape(key).kind() + SPACE.law(key).getClass().getSimpleName(), key);
        }
        assertThat(kinds).hasSizeGreaterThan(8);
        for (long key : kinds.values()) {
            Motion motion = SPACE.motion(key, 0.6);
            Part part = new Part(motion, Tether.of(0.6), Place.usual(Side.LEFT, Plane.WALL), 1);
            Part other =
                    new Part(
                            Motion.staticSpin(1, 0),
                            Tether.of(0.6),
                            Place.usual(Side.RIGHT, Plane.WALL),
                            1);
            Trace trace = Trace.of(Pairing.of(part, other));
            SeriesCurve head = Portrait.head(trace, Side.LEFT);
            SeriesCurve own = SPACE.head(key).scaled(0.6);
            assertThat(Descriptor.distance(Descriptor.of(head), Descriptor.of(own)))
                    .as("key %d", key)
                    .isLessThan(2e-4);
        }
    }

    @Test
    void keysMeanTheSameMotionInEverySpaceOfTheSameGrid() {
        Space again = Space.of(SPACE.grid());
        long[] keys = SPACE.build(0, SPACE.keys());
        assertThat(again.build(0, again.keys())).isEqualTo(keys);
        long cut = SPACE.keys() / 3;
        long[] first = SPACE.build(0, cut);
        long[] rest = SPACE.build(cut, SPACE.keys());
        long[] joined = Arrays.copyOf(first, first.length + rest.length);
        System.arraycopy(rest, 0, joined, first.length, rest.length);
        assertThat(joined).isEqualTo(keys);
        for (int i = 0; i < keys.length; i += 97) {
            assertThat(again.motion(keys[i], 0.6)).isEqualTo(SPACE.motion(keys[i], 0.6));
        }
    }

    @Test
    void aSpaceIsAboutAsLargeAsAskedFor() {
        assertThat(Space.about(10_000).count()).isBetween(7_500L, 13_000L);
        assertThat(Space.about(100_000).count()).isBetween(98_000L, 102_000L);
    }

    /** A space is how it is laid out, not what stands in it, so the largest costs nothing. */
    @Test
    void aSpaceOfTenThousandMillionMotionsIsNamedWithoutBuildingIt() {
        for (long motions : new long[] {1_000_000, 100_000_000, 10_000_000_000L}) {
            Space space = Space.about(motions);
            assertThat(space.count()).isBetween(motions / 100 * 99, motions / 100 * 101);
            long last = space.keys() - 1;
            long[] end = space.build(last - 20_000, last + 1);
            assertThat(end).isNotEmpty();
            for (long key : end) {
                assertThat(space.holds(key)).isTrue();
            }
            assertThat(space.motion(end[0], 0.6)).isNotNull();
        }
    }

    /** Paths are told by their number alone; laid out in the order in which they are counted. */
    @Test
    void everyHandPathHasOneNumber() {
        Map<HandShape, Integer> numbers = new HashMap<>();
        for (int path = 0; path < SPACE.paths(); path++) {
            assertThat(numbers.put(SPACE.shape(path), path)).isNull();
        }
        Space space = Space.of(new Space.Grid(1, 300, 1, 0, 4, 0, false));
        double before = 0;
        int ellipses = 0;
        for (int path = 0; path < space.paths(); path++) {
            HandShape shape = space.shape(path);
            if (shape.kind() == HandShape.Kind.ELLIPSE) {
                assertThat(shape.other()).isBetween(1 / 300.0, shape.size());
                assertThat(1000 * shape.size() + shape.other()).isGreaterThan(before);
                before = 1000 * shape.size() + shape.other();
                ellipses++;
            }
        }
        assertThat(ellipses).isEqualTo(300 * 301 / 2);
    }

    /** 105° is Math.toRadians(105) to the last bit, so that a phrase says it in degrees. */
    @Test
    void startAnglesAreWholeDegreesWhereTheGridHasSo() {
        Space space = Space.of(new Space.Grid(2, 2, 1, 3, 24, 2, true));
        for (long key = 0; key < space.keys(); key++) {
            double degrees = Math.rint(Math.toDegrees(space.startOf(key)));
            assertThat(space.startOf(key)).isEqualTo(Math.toRadians(degrees));
        }
    }
}
