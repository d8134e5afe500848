package deferent.bench;

import com.sun.management.OperatingSystemMXBean;
import deferent.search.seek.BandMatches;
import deferent.search.seek.Bands;
import deferent.search.seek.SeekRequest;
import deferent.search.seek.Space;
import java.lang.management.ManagementFactory;
import java.util.Locale;

/**
 * A seek on this machine one band after the other, which keeps the memory of one band: what a seek
 * over several machines is measured against. The space's motions are looked at once a band, most of
 * them ruled out by their power.
 *
 * <p>Run with <code>
 * java -Xmx1536m -cp 'bench/target/classes:bench/target/lib/*'
 * deferent.bench.BandTable motions tolerance-in-metres motions-a-band</code>.
 */
public final class BandTable {
    private BandTable() {}

    public static void main(String[] args) {
        long motions = Long.parseLong(args[0]);
        double tolerance = Double.parseDouble(args[1]);
        long each = Long.parseLong(args[2]);
        OperatingSystemMXBean system =
                (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
        long clock = System.nanoTime();
        SeekRequest request = SeekRequest.of(Space.about(motions)).withTolerance(tolerance);
        Bands bands = Bands.of(request, (int) Math.max(1, request.space().count() / each));
        long answers = 0;
        long heads = 0;
        long exact = 0;
        for (int band = 0; band < bands.count(); band++) {
            BandMatches found = bands.seek(band);
            answers += found.count();
            heads += found.heads();
            for (int i = 0; i < found.count(); i++) {
                exact += found.exact(i) ? 1 : 0;
            }
        }
        System.out.printf(
                Locale.ROOT,
                "%s%n%d bands, tolerance %.2f mm: %,d head paths, %,d answers, %,d of them exact;"
                        + " %.1f s by the clock, %.1f s of processor%n",
                request.space(),
                bands.count(),
                1000 * tolerance,
                heads,
                answers,
                exact,
                (System.nanoTime() - clock) / 1e9,
                system.getProcessCpuTime() / 1e9);
    }
}
