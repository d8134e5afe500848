package deferent.far;

import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Tether;
import deferent.search.seek.SeekRequest;
import deferent.search.seek.Space;
import deferent.search.seek.Tethers;
import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.sql.SparkSession;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Seeks, and keeps the answers in a folder; what stands there already is not sought again. */
@Command(
        name = "seek",
        mixinStandardHelpOptions = true,
        description = {
            "Seeks all links among a space's motions and keeps them in a folder.",
            "Stopped, it goes on where it stood when it is asked again."
        })
final class SeekFar implements Callable<Integer> {
    private static final Pattern LENGTH = Pattern.compile("([0-9.]+) ?(mm|cm|m)");

    @Spec private CommandLine.Model.CommandSpec spec;
    @Mixin private Engine engine;

    @Option(
            names = "--motions",
            required = true,
            paramLabel = "N",
            description = "About how many motions, 10000 to 10000000000.")
    private long motions;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "FOLDER",
            description = "Where the answers go; on a cluster a folder that all machines see.")
    private String out = "";

    @Option(
            names = "--tolerance",
            defaultValue = "5mm",
            paramLabel = "LENGTH",
            description = "Greatest clock gap of a link; unsaid, 5mm.")
    private String tolerance = "5mm";

    @Option(
            names = "--tether",
            defaultValue = "60cm",
            paramLabel = "LENGTH",
            description = "Length of the tethers; unsaid, 60cm.")
    private String tether = "60cm";

    @Option(names = "--free", description = "Tethers as long as each link asks.")
    private boolean free;

    @Option(
            names = "--unit",
            defaultValue = "1000000",
            paramLabel = "N",
            description = "About how many motions are joined in one task; unsaid, a million.")
    private long unit;

    @Override
    public Integer call() throws Exception {
        Refusal.within((double) unit, 1_000, 20_000_000, "motions a task", "motions");
        long began = System.nanoTime();
        SeekRequest request =
                SeekRequest.of(Space.about(motions))
                        .with(Tether.of(metres("--tether", tether)))
                        .with(free ? Tethers.FREE : Tethers.EQUAL)
                        .withTolerance(metres("--tolerance", tolerance));
        PrintWriter told = spec.commandLine().getOut();
        try (SparkSession session = engine.start()) {
            Engine.Cost cost = new Engine.Cost();
            session.sparkContext().addSparkListener(cost);
            JavaSparkContext spark = new JavaSparkContext(session.sparkContext());
            FarSeek seek = FarSeek.into(spark, out, Errand.of(request, unit));
            int stood = seek.errand().units() - seek.missing().cardinality();
            told.printf(
                    Locale.ROOT,
                    "%s; %d bands in %d units, %d of them done before%n",
                    request.space(),
                    seek.errand().shares().length,
                    seek.errand().units(),
                    stood);
            told.flush();
            List<UnitReport> now = seek.run();
            tell(told, seek.reports(), now, (System.nanoTime() - began) / 1e9);
            session.sparkContext().listenerBus().waitUntilEmpty();
            for (double[] stage : cost.stages.values()) {
                told.printf(
                        Locale.ROOT,
                        "stage: %.1f s of processor (%.1f s of it looking for memory), %.1f MB sent%n",
                        stage[0],
                        stage[2],
                        stage[1] / 1e6);
            }
            told.printf(
                    Locale.ROOT,
                    "%,d families to leaf through: ./deferent seek --from %s%n",
                    Pages.write(session, out, seek.errand()),
                    out);
            told.flush();
        }
        return 0;
    }

    private static void tell(
            PrintWriter told, List<UnitReport> all, List<UnitReport> now, double seconds) {
        long[] sizes = all.stream().mapToLong(UnitReport::motions).sorted().toArray();
        told.printf(
                Locale.ROOT,
                "%,d motions, %,d head paths, %,d answers, %,d of them exact, %,d compared%n",
                all.stream().mapToLong(UnitReport::motions).sum(),
                all.stream().mapToLong(UnitReport::heads).sum(),
                all.stream().mapToLong(UnitReport::answers).sum(),
                all.stream().mapToLong(UnitReport::exact).sum(),
                all.stream().mapToLong(UnitReport::compared).sum());
        told.printf(
                Locale.ROOT,
                "units: the largest has %,d motions, %.2f times the middle one; joined now %d, in"
                        + " %.1f s of processor; all in %.1f s by the clock%n",
                sizes[sizes.length - 1],
                sizes[sizes.length - 1] / (double) Math.max(1, sizes[sizes.length / 2]),
                now.size(),
                now.stream().mapToDouble(UnitReport::seconds).sum(),
                seconds);
        told.flush();
    }

    static double metres(String option, String said) {
        Matcher found = LENGTH.matcher(said.strip());
        if (!found.matches()) {
            throw new Refusal("is \"" + said + "\"", option, "give a length such as 5mm or 60cm");
        }
        double unit =
                switch (found.group(2)) {
                    case "mm" -> 1e-3;
                    case "cm" -> 1e-2;
                    default -> 1;
                };
        return Double.parseDouble(found.group(1)) * unit;
    }
}
