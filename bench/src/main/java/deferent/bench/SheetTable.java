package deferent.bench;

import com.sun.management.OperatingSystemMXBean;
import deferent.page.sheet.Booklet;
import deferent.page.sheet.Cards;
import deferent.page.sheet.Edition;
import deferent.page.sheet.PrintProgress;
import deferent.reading.worked.Detail;
import deferent.record.DemoShelf;
import deferent.record.PatternDocument;
import deferent.search.whole.Readings;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.Locale;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * How long a booklet of the demo shelf takes: the first one of a fresh machine (cold), then again
 * and again (warm), with what of it goes into readings, into transitions and into printing; beside
 * it, as the baseline of the same run, the readings alone one after another on one thread, in full
 * as the studio settles them. Wall-clock time and the processor's time of the whole process.
 *
 * <p>Run with <code>
 * java -Djava.awt.headless=true -XX:ActiveProcessorCount=2 -cp
 * 'bench/target/classes:bench/target/lib/*' deferent.bench.SheetTable</code>.
 */
public final class SheetTable {
    private static final int ROUNDS = 5;

    private SheetTable() {}

    public static void main(String[] args) throws IOException {
        List<PatternDocument> shelf = PatternDocument.among(DemoShelf.documents());
        System.out.printf(
                Locale.ROOT,
                "%d processors; %d patterns%n%-28s %8s %8s %8s %8s %8s %8s%n",
                Runtime.getRuntime().availableProcessors(),
                shelf.size(),
                "what",
                "wall s",
                "cpu s",
                "read s",
                "print s",
                "pages",
                "kB");
        Booklet plain = Booklet.of("Lessons", shelf, Edition.USUAL);
        row("booklet, cold", plain::write);
        for (int i = 0; i < ROUNDS; i++) {
            row("booklet, warm", plain::write);
        }
        row("booklet with transitions", plain.amongThemselves()::write);
        row("cards", new Cards("Cards", shelf, Edition.USUAL)::write);
        double start = wall();
        double cpu = cpu();
        for (PatternDocument pattern : shelf) {
            Readings.of(pattern.pairing(), pattern.performer(), Detail.SETTLED);
        }
        System.out.printf(
                Locale.ROOT,
                "%-28s %8.2f %8.2f%n",
                "baseline: settled readings",
                wall() - start,
                cpu() - cpu);
    }

    private interface Work {
        boolean write(OutputStream out, Consumer<PrintProgress> listener, BooleanSupplier stop)
                throws IOException;
    }

    private static void row(String name, Work work) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        double[] read = {0};
        long[] pages = {0};
        double cpu = cpu();
        double start = wall();
        work.write(
                out,
                p -> {
                    if (p.step() == PrintProgress.Step.PRINTING) {
                        pages[0] = p.all();
                    } else {
                        read[0] = wall() - start;
                    }
                },
                () -> false);
        double all = wall() - start;
        System.out.printf(
                Locale.ROOT,
                "%-28s %8.2f %8.2f %8.2f %8.2f %8d %8d%n",
                name,
                all,
                cpu() - cpu,
                read[0],
                all - read[0],
                pages[0],
                out.size() / 1000);
    }

    private static double wall() {
        return System.nanoTime() * 1e-9;
    }

    private static double cpu() {
        return ((OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                        .getProcessCpuTime()
                * 1e-9;
    }
}
