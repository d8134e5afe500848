package deferent.bench;

import deferent.motion.pairing.Arc;
import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Polygon;
import deferent.motion.pairing.Sense;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.Stretches;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Timing;
import deferent.motion.pairing.Turns;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import deferent.search.crossing.CrossingRequest;
import deferent.search.crossing.FlowingSet;
import deferent.search.crossing.ShelfCrossings;
import deferent.search.crossing.ShelfMap;
import deferent.search.crossing.ShelfTable;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * How long a shelf takes against itself: 50, 100 and 200 pairings of seven families, then 200 of
 * one family, which nearly all meet; each with brute force over sampled states as baseline in the
 * same run, whose meeting pairs the table must all have. Wall-clock time of single runs after one
 * to warm up.
 *
 * <p>Run with <code>
 * java -XX:ActiveProcessorCount=2 -cp 'bench/target/classes:bench/target/lib/*'
 * deferent.bench.CrossingTable</code>.
 */
public final class CrossingTable {
    private static final int SAMPLES = 96;
    private static final int POINTS = 4;

    private CrossingTable() {}

    public static void main(String[] args) {
        CrossingRequest request = CrossingRequest.USUAL;
        System.out.printf(
                Locale.ROOT,
                "%d processors; tolerance %.0f cm, %.1f m/s%n",
                Runtime.getRuntime().availableProcessors(),
                100 * request.place(),
                request.speed());
        new ShelfTable(shelf(60, 7, 9), request).run();
        System.out.printf(
                "%9s %9s %9s %9s %9s %9s %9s %9s %s%n",
                "pairings",
                "families",
                "table s",
                "crossings",
                "brute s",
                "meet",
                "missed",
                "set s",
                "set");
        for (int[] row : new int[][] {{50, 7}, {100, 7}, {200, 7}, {200, 1}}) {
            row(row[0], row[1], request);
        }
    }

    private static void row(int count, int families, CrossingRequest request) {
        List<Pairing> shelf = shelf(count, families, 5);
        long start = System.nanoTime();
        ShelfTable table = new ShelfTable(shelf, request);
        table.run();
        double tabled = seconds(start);
        start = System.nanoTime();
        Set<Integer> meeting = brute(shelf, request);
        double brute = seconds(start);
        int all = meeting.size();
        ShelfCrossings crossings = table.crossings();
        for (int i = 0; i < crossings.count(); i++) {
            meeting.remove(crossings.get(i).from() * count + crossings.get(i).to());
        }
        start = System.nanoTime();
        FlowingSet set = ShelfMap.of(table).set(0, 8);
        System.out.printf(
                Locale.ROOT,
                "%9d %9d %9.2f %9d %9.2f %9d %9d %9.2f %s%n",
                count,
                families,
                tabled,
                crossings.count(),
                brute,
                all,
                meeting.size(),
                seconds(start),
                set.outcome());
    }

    private static double seconds(long start) {
        return (System.nanoTime() - start) * 1e-9;
    }

    /** Pairs of pairings of which some sampled state of each is within tolerance. */
    private static Set<Integer> brute(List<Pairing> shelf, CrossingRequest request) {
        List<double[]> states = shelf.stream().map(CrossingTable::states).toList();
        int n = shelf.size();
        return new HashSet<>(
                IntStream.range(0, n)
                        .parallel()
                        .boxed()
                        .flatMap(
                                i ->
                                        IntStream.range(i + 1, n)
                                                .filter(
                                                        j ->
                                                                meet(
                                                                        states.get(i),
                                                                        states.get(j),
                                                                        request))
                                                .mapToObj(j -> i * n + j))
                        .toList());
    }

    private static boolean meet(double[] a, double[] b, CrossingRequest request) {
        boolean found = false;
        for (int i = 0; i < SAMPLES; i++) {
            for (int j = 0; j < SAMPLES; j++) {
                found |= within(a, 6 * POINTS * i, b, 6 * POINTS * j, request);
            }
        }
        return found;
    }

    private static boolean within(double[] a, int i, double[] b, int j, CrossingRequest request) {
        for (int k = 0; k < 6 * POINTS; k += 3) {
            double x = a[i + k] - b[j + k];
            double y = a[i + k + 1] - b[j + k + 1];
            double z = a[i + k + 2] - b[j + k + 2];
            double most = k % 6 == 0 ? request.place() : request.speed();
            if (x * x + y * y + z * z > most * most) {
                return false;
            }
        }
        return true;
    }

    private static double[] states(Pairing pairing) {
        Trace trace = Trace.of(pairing);
        double[] out = new double[6 * POINTS * SAMPLES];
        for (int i = 0; i < SAMPLES; i++) {
            double t = trace.period() * i / SAMPLES;
            int at = 6 * POINTS * i;
            for (Side side : Side.values()) {
                put(trace.hand(side).at(t), out, at + 12 * side.ordinal());
                put(trace.head(side).at(t), out, at + 12 * side.ordinal() + 6);
            }
        }
        return out;
    }

    private static void put(State s, double[] out, int at) {
        out[at] = s.position().getX();
        out[at + 1] = s.position().getY();
        out[at + 2] = s.position().getZ();
        out[at + 3] = s.velocity().getX();
        out[at + 4] = s.velocity().getY();
        out[at + 5] = s.velocity().getZ();
    }

    private static List<Pairing> shelf(int count, int families, long seed) {
        Random random = new Random(seed);
        List<Pairing> shelf = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int family = random.nextInt(families);
            shelf.add(
                    new Pairing(
                            part(Side.LEFT, motion(family, random)),
                            part(Side.RIGHT, motion(family, random)),
                            Timing.of(families == 1 ? 0 : random.nextInt(4) / 4.0),
                            families == 1 || random.nextBoolean()
                                    ? Direction.SAME
                                    : Direction.OPPOSITE,
                            Sense.CLOCKWISE,
                            OptionalDouble.of(60)));
        }
        return shelf;
    }

    private static Part part(Side side, Motion motion) {
        return new Part(motion, Tether.USUAL, Place.usual(side, Plane.WALL), 1);
    }

    private static Motion motion(int family, Random random) {
        double by = 0.1 * random.nextDouble();
        double tilt = Math.toRadians(15) * random.nextDouble();
        return switch (family) {
            case 0 -> new Motion(Series.circle(0.52 + by), new Turns(-2, tilt));
            case 1 -> new Motion(Series.circle(0.05 + by), new Turns(1, tilt));
            case 2 -> new Motion(Series.circle(0.3 + by), new Turns(-1, tilt));
            case 3 -> new Motion(Series.circle(0.52 + by), new Turns(1, 0));
            case 4 -> new Motion(new Arc(0.52 + by, Math.PI / 2, Math.PI / 2), new Turns(2, tilt));
            case 5 -> new Motion(new Polygon(4, 0.52 + by, tilt), new Turns(1, 0));
            default ->
                    new Motion(
                            Series.ellipse(0.52 + by, 0.5, tilt),
                            new Stretches(
                                    tilt,
                                    List.of(
                                            new Stretches.Stretch(0.5, 1.5, Stretches.Ease.EVEN),
                                            new Stretches.Stretch(
                                                    0.5, -0.5, Stretches.Ease.RESTING))));
        };
    }
}
