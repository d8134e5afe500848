package deferent.bench;

import deferent.search.seek.Answers;
import deferent.search.seek.BruteForce;
import deferent.search.seek.Seek;
import deferent.search.seek.SeekProgress;
import deferent.search.seek.SeekRequest;
import deferent.search.seek.Space;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;

/**
 * How a seek grows: spaces of 10^4, 10^5 and 10^6 motions built, keyed, gathered, indexed and asked
 * for all linked pairs, a million a question that is asked a few times, so wall-clock time of
 * single runs after one to warm up, not a microbenchmark. Before it, in the same run, brute force
 * on about 5,000 motions, which the seek must agree with.
 *
 * <p>Run with <code>
 * java -Xmx3g -XX:ActiveProcessorCount=2 -cp 'bench/target/classes:bench/target/lib/*'
 * deferent.bench.SeekTable [tolerance in metres]</code>.
 */
public final class SeekTable {
    private static final Space.Grid FIVE_THOUSAND = new Space.Grid(10, 1, 2, 5, 12, 2, false);

    private SeekTable() {}

    public static void main(String[] args) {
        double tolerance = args.length > 0 ? Double.parseDouble(args[0]) : 0.005;
        System.out.printf(
                Locale.ROOT,
                "%d processors, heap at most %d MiB, tolerance %.1f mm on a tether of 60 cm%n",
                Runtime.getRuntime().availableProcessors(),
                Runtime.getRuntime().maxMemory() >> 20,
                1000 * tolerance);
        brute(tolerance);
        new Seek(request(100_000, tolerance)).run();
        System.out.printf(
                "%9s %8s %8s %8s %8s %9s %9s %9s %9s %9s %9s %11s %8s%n",
                "motions",
                "build s",
                "key s",
                "join s",
                "all s",
                "us/n ln n",
                "heads",
                "hands",
                "answers",
                "exact",
                "compared",
                "pairs",
                "peak MiB");
        for (int motions : new int[] {10_000, 100_000, 1_000_000}) {
            row(motions, tolerance);
        }
    }

    private static SeekRequest request(int motions, double tolerance) {
        return SeekRequest.of(Space.about(motions)).withTolerance(tolerance);
    }

    private static void brute(double tolerance) {
        SeekRequest request = SeekRequest.of(Space.of(FIVE_THOUSAND)).withTolerance(tolerance);
        new Seek(request).run();
        long start = System.nanoTime();
        Seek seek = new Seek(request);
        seek.run();
        double indexed = seconds(start);
        Answers answers = seek.answers();
        start = System.nanoTime();
        BruteForce all = BruteForce.of(request);
        double brute = seconds(start);
        System.out.printf(
                Locale.ROOT,
                "%,d motions, all against all: %.2f s, %,d comparisons, %,d pairs link;"
                        + " by classes and index: %.3f s, %,d comparisons, %,d pairs: %s%n",
                all.motions(),
                brute,
                all.comparisons(),
                all.links(),
                indexed,
                answers.comparisons(),
                answers.pairs(),
                all.links() == answers.pairs() ? "the same" : "NOT THE SAME");
    }

    private static void row(int motions, double tolerance) {
        System.gc();
        ManagementFactory.getMemoryPoolMXBeans().forEach(MemoryPoolMXBean::resetPeakUsage);
        Map<SeekProgress.Stage, Double> ends = new EnumMap<>(SeekProgress.Stage.class);
        long start = System.nanoTime();
        SeekRequest request = request(motions, tolerance);
        Seek seek = new Seek(request);
        seek.run(progress -> ends.put(progress.stage(), seconds(start)), () -> false);
        double all = seconds(start);
        long peak =
                ManagementFactory.getMemoryPoolMXBeans().stream()
                        .mapToLong(pool -> pool.getPeakUsage().getUsed())
                        .sum();
        Answers answers = seek.answers();
        long count = request.space().count();
        double build = ends.getOrDefault(SeekProgress.Stage.BUILD, 0.0);
        double keyed = ends.getOrDefault(SeekProgress.Stage.KEY, 0.0);
        System.out.printf(
                Locale.ROOT,
                "%9d %8.2f %8.2f %8.2f %8.2f %9.3f %9d %9d %9d %9d %9d %11d %8d%n",
                count,
                build,
                keyed - build,
                all - keyed,
                all,
                1e6 * all / ((double) count * Math.log((double) count)),
                answers.headPaths(),
                answers.handPaths(),
                answers.count(),
                answers.exactCount(),
                answers.comparisons(),
                answers.pairs(),
                peak >> 20);
    }

    private static double seconds(long since) {
        return (System.nanoTime() - since) / 1e9;
    }
}
