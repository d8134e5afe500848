package deferent.far;

import java.io.File;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.spark.SparkConf;
import org.apache.spark.executor.TaskMetrics;
import org.apache.spark.scheduler.SparkListener;
import org.apache.spark.scheduler.SparkListenerTaskEnd;
import org.apache.spark.sql.SparkSession;
import picocli.CommandLine.Option;

/** Where the work runs, and what it has cost there. */
final class Engine {
    /** Our own jars and theirs, by the beginning of their names; a cluster has the engine's. */
    private static final List<String> OURS =
            List.of(
                    "deferent-",
                    "hipparchus-",
                    "jgrapht-",
                    "jheaps-",
                    "apfloat-",
                    "jts-",
                    "batik-",
                    "xmlgraphics-",
                    "jspecify-",
                    "picocli-");

    @Option(
            names = "--master",
            defaultValue = "local[*]",
            paramLabel = "MASTER",
            description =
                    "Where the work runs, as Spark says it: local[2], spark://host:7077, yarn; unsaid,"
                            + " this machine.")
    String master = "local[*]";

    @Option(
            names = "--conf",
            paramLabel = "KEY=VALUE",
            description = "A setting for Spark; may be given several times.")
    Map<String, String> settings = new TreeMap<>();

    SparkSession start() throws IOException {
        SparkConf conf = new SparkConf().setMaster(master).setAppName("deferent-far");
        conf.set("spark.ui.enabled", "false");
        conf.set("spark.serializer", "org.apache.spark.serializer.KryoSerializer");
        // a task uses one processor; what it splits further would run in its neighbours' time
        String alone = "-Djava.util.concurrent.ForkJoinPool.common.parallelism=1";
        String opens = System.getProperty("deferent.far.opens", "");
        conf.set("spark.executor.extraJavaOptions", opens + " " + alone);
        if (!master.startsWith("local")) {
            conf.set("spark.jars", String.join(",", jars()));
        }
        settings.forEach(conf::set);
        return SparkSession.builder().config(conf).getOrCreate();
    }

    private static List<String> jars() throws IOException {
        List<String> found = new ArrayList<>();
        for (String entry : System.getProperty("java.class.path", "").split(File.pathSeparator)) {
            Path folder = Path.of(entry.replace("*", ""));
            if (entry.endsWith(".jar") && ours(Path.of(entry))) {
                found.add(entry);
            } else if (Files.isDirectory(folder)) {
                try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "*.jar")) {
                    for (Path file : files) {
                        if (ours(file)) {
                            found.add(file.toString());
                        }
                    }
                }
            }
        }
        return found;
    }

    private static boolean ours(Path jar) {
        String name = String.valueOf(jar.getFileName());
        return OURS.stream().anyMatch(name::startsWith);
    }

    /** What tasks have cost, stage by stage. */
    static final class Cost extends SparkListener {
        final Map<Integer, double[]> stages = new TreeMap<>();

        @Override
        public synchronized void onTaskEnd(SparkListenerTaskEnd end) {
            TaskMetrics metrics = end.taskMetrics();
            if (metrics == null) {
                return;
            }
            double[] sums = stages.computeIfAbsent(end.stageId(), s -> new double[3]);
            sums[0] += metrics.executorCpuTime() / 1e9;
            sums[1] += metrics.shuffleWriteMetrics().bytesWritten();
            sums[2] += metrics.jvmGCTime() / 1e3;
        }
    }
}
