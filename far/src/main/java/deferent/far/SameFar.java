package deferent.far;

import deferent.search.seek.Answers;
import deferent.search.seek.BandMatches;
import deferent.search.seek.Bands;
import deferent.search.seek.Seek;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Seeks once more on this machine, uncut, and holds a folder's answers against that. */
@Command(
        name = "same",
        mixinStandardHelpOptions = true,
        description = "Whether a folder holds just the answers that a seek on this machine finds.")
final class SameFar implements Callable<Integer> {
    @Spec private CommandLine.Model.CommandSpec spec;
    @Mixin private Engine engine;

    @Parameters(paramLabel = "FOLDER")
    private String folder = "";

    /** One answer by the names of its classes; gaps to a thousand-millionth. */
    record Name(long carrier, int rider) {}

    @Override
    public Integer call() throws Exception {
        PrintWriter told = spec.commandLine().getOut();
        try (SparkSession session = engine.start()) {
            Errand errand = FarSeek.read(session.sparkContext().hadoopConfiguration(), folder);
            Dataset<Row> kept = session.read().parquet(folder + "/answers");
            List<String> unlike = unlike(errand, kept.select("carrier", "rider_path", "gap"));
            Answers whole = new Seek(errand.request()).found();
            told.printf(
                    Locale.ROOT,
                    "%,d answers in the folder, %,d found here: %s%n",
                    kept.count(),
                    whole.count(),
                    unlike.isEmpty() && kept.count() == whole.count()
                            ? "the same"
                            : "NOT THE SAME");
            unlike.stream().limit(10).forEach(told::println);
            told.flush();
            return unlike.isEmpty() ? 0 : 1;
        }
    }

    /** What one has and the other has not, or with another gap. */
    static List<String> unlike(Errand errand, Dataset<Row> kept) {
        BandMatches here = Bands.at(errand.request(), new double[0]).seek(0);
        Map<Name, Double> wanted = new HashMap<>();
        for (int i = 0; i < here.count(); i++) {
            wanted.put(new Name(here.carriers()[i], here.riders()[i]), here.gaps()[i]);
        }
        List<String> unlike = new ArrayList<>();
        for (Row row : kept.collectAsList()) {
            Name name = new Name(row.getLong(0), row.getInt(1));
            Double gap = wanted.remove(name);
            if (gap == null || Math.abs(gap - row.getDouble(2)) > 1e-9) {
                unlike.add("only in the folder, or twice, or with another gap: " + row);
            }
        }
        wanted.forEach((name, gap) -> unlike.add("only here: " + name + " " + gap));
        return unlike;
    }
}
