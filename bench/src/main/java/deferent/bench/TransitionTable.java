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
import deferent.motion.pairing.Stretches;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Timing;
import deferent.motion.pairing.Turns;
import deferent.motion.shared.Side;
import deferent.record.DemoShelf;
import deferent.record.PatternDocument;
import deferent.search.route.Route;
import deferent.search.route.RouteFound;
import deferent.search.route.RouteSearch;
import deferent.search.route.ShelfTable;
import deferent.search.route.TableProgress;
import deferent.search.set.PairBook;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * How long transitions take: one pair, one pattern against a shelf, a route over it, and the map of
 * the demo shelf; each once, with nothing known beforehand. Wall-clock time, after one pair of
 * another shelf to warm up.
 *
 * <p>Run with <code>
 * java -XX:ActiveProcessorCount=2 -cp 'bench/target/classes:bench/target/lib/*'
 * deferent.bench.TransitionTable 200</code>; the number is how many patterns the shelf has.
 */
public final class TransitionTable {
    private static final int FAMILIES = 7;

    private TransitionTable() {}

    public static void main(String[] args) {
        int count = args.length > 0 ? Integer.parseInt(args[0]) : 50;
        new ShelfTable(shelf(4, 9), book()).slice(0, 2);
        List<Pairing> shelf = shelf(count, 5);
        double start = now();
        ShelfTable first = new ShelfTable(shelf, book());
        first.pair(0, 1);
        row("one pair, both patterns new", start, first.progress());
        start = now();
        ShelfTable one = new ShelfTable(shelf, book());
        IntStream.range(1, count).parallel().forEach(i -> one.pair(0, i));
        row("one pattern into all others", start, one.progress());
        start = now();
        one.run(at -> {}, pairs -> {}, () -> one.progress().done() >= 3 * count);
        row("and on, all patterns drawn, to 3 pairs each", start, one.progress());
        start = now();
        ShelfTable route = new ShelfTable(shelf, book());
        RouteFound found = new RouteSearch(route, 0, count - 1).run();
        row(
                "a route, nothing known: " + found.route().map(Route::patterns),
                start,
                route.progress());
        start = now();
        ShelfTable demo = new ShelfTable(demo(), book());
        demo.run(at -> {}, pairs -> {}, () -> false);
        row("the demo shelf's map", start, demo.progress());
    }

    private static PairBook book() {
        return PairBook.unread();
    }

    private static List<Pairing> demo() {
        return DemoShelf.documents().stream()
                .filter(PatternDocument.class::isInstance)
                .map(document -> ((PatternDocument) document).pairing())
                .toList();
    }

    private static double now() {
        return System.nanoTime() * 1e-9;
    }

    private static void row(String what, double start, TableProgress at) {
        System.out.printf(
                Locale.ROOT,
                "%8.2f s  %d pairs, %d lead on: %s%n",
                now() - start,
                at.done(),
                at.leading(),
                what);
    }

    private static List<Pairing> shelf(int count, long seed) {
        Random random = new Random(seed);
        List<Pairing> shelf = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int family = random.nextInt(FAMILIES);
            shelf.add(
                    new Pairing(
                            part(Side.LEFT, motion(family, random)),
                            part(Side.RIGHT, motion(family, random)),
                            Timing.of(random.nextInt(4) / 4.0),
                            random.nextBoolean() ? Direction.SAME : Direction.OPPOSITE,
                            Sense.CLOCKWISE,
                            OptionalDouble.of(60)));
        }
        return shelf;
    }

    private static Part part(Side side, Motion motion) {
        return new Part(motion, Tether.of(0.45), Place.usual(side, Plane.WALL), 1);
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
