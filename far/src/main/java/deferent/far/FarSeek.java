package deferent.far;

import deferent.motion.pairing.Refusal;
import deferent.search.seek.BandMatches;
import deferent.search.seek.Keyed;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Iterator;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FSDataInputStream;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;
import org.apache.spark.Partitioner;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.api.java.function.Function2;
import org.apache.spark.api.java.function.PairFlatMapFunction;
import scala.Tuple2;

/**
 * A seek on Spark: the key range is cut and each part keyed where it falls; one shuffle brings each
 * unit's motions together; there they become classes, ask that unit's hands, which are made from
 * the space anew, and the answers are written. One stage a step, no driver in between.
 *
 * <p>What stands in the folder when it begins is left as it is, so a seek that was stopped, however
 * hard, goes on when it is asked again: motions of units that stand are not sent, and those outside
 * all wanted bands are ruled out by their power alone.
 */
final class FarSeek {
    /** So many motions are keyed in one task: some 20 MB. */
    static final long MOTIONS_A_CUT = 1_000_000;

    private final JavaSparkContext spark;
    private final Path folder;
    private final Errand errand;

    private FarSeek(JavaSparkContext spark, Path folder, Errand errand) {
        this.spark = spark;
        this.folder = folder;
        this.errand = errand;
    }

    /** A seek into a folder, which is new, or holds part of the same seek. */
    static FarSeek into(JavaSparkContext spark, String folder, Errand asked) throws IOException {
        Path at = new Path(folder);
        Configuration conf = spark.hadoopConfiguration();
        FileSystem files = at.getFileSystem(conf);
        Path request = new Path(at, Errand.FILE);
        if (!files.exists(request)) {
            if (files.exists(at) && files.listStatus(at).length > 0) {
                throw new Refusal(
                        "holds something else", folder, "give a folder that is new or empty");
            }
            files.mkdirs(at);
            Path beside = new Path(at, "." + Errand.FILE);
            try (OutputStream out = files.create(beside, true)) {
                out.write(asked.json().getBytes(StandardCharsets.UTF_8));
            }
            files.rename(beside, request);
        }
        Errand kept = read(conf, folder);
        if (!kept.asksAs(asked)) {
            throw new Refusal(
                    "holds answers of another request",
                    folder,
                    "ask as " + Errand.FILE + " there says, or give a new folder");
        }
        return new FarSeek(spark, files.makeQualified(at), kept);
    }

    /** What a folder's answers are answers to. */
    static Errand read(Configuration conf, String folder) throws IOException {
        Path request = new Path(folder, Errand.FILE);
        FileSystem files = request.getFileSystem(conf);
        if (!files.exists(request)) {
            throw new Refusal("holds no answers", folder, "give a folder that deferent-far wrote");
        }
        try (FSDataInputStream in = files.open(request)) {
            return Errand.parse(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        }
    }

    Errand errand() {
        return errand;
    }

    /** The units whose answers are not there yet. */
    BitSet missing() throws IOException {
        BitSet missing = new BitSet();
        for (int unit = 0; unit < errand.units(); unit++) {
            Path place = new Path(folder, errand.file(unit));
            missing.set(unit, !place.getFileSystem(spark.hadoopConfiguration()).exists(place));
        }
        return missing;
    }

    /** Seeks what is missing; what was told of each unit of these, in no order. */
    List<UnitReport> run() throws IOException {
        BitSet wanted = missing();
        if (wanted.isEmpty()) {
            return List.of();
        }
        int cuts = (int) Math.max(1, errand.request().space().count() / MOTIONS_A_CUT);
        int[] units = wanted.stream().toArray();
        String json = errand.json();
        List<String> reports =
                spark.parallelize(IntStream.range(0, cuts).boxed().toList(), cuts)
                        .flatMapToPair(new Keying(json, cuts, wanted.toLongArray()))
                        .partitionBy(new ByUnit(units))
                        .mapPartitionsWithIndex(new Joining(json, units, folder.toString()), false)
                        .collect();
        sweep();
        return reports.stream().map(UnitReport::parse).toList();
    }

    // What killed attempts left half written; all that was wanted stands by now.
    private void sweep() throws IOException {
        FileSystem files = folder.getFileSystem(spark.hadoopConfiguration());
        for (FileStatus left : files.globStatus(new Path(folder, "answers/*/.share-*.parquet.*"))) {
            files.delete(left.getPath(), false);
        }
    }

    /** What was told of all units that stand, also by earlier runs. */
    List<UnitReport> reports() throws IOException {
        List<UnitReport> found = new ArrayList<>();
        for (int unit = 0; unit < errand.units(); unit++) {
            AnswerFile.report(spark.hadoopConfiguration(), new Path(folder, errand.file(unit)))
                    .map(UnitReport::parse)
                    .ifPresent(found::add);
        }
        return found;
    }

    /** Keys one part of the key range. */
    private record Keying(String json, int cuts, long[] wanted)
            implements PairFlatMapFunction<Integer, Integer, byte[]> {
        @Override
        public Iterator<Tuple2<Integer, byte[]>> call(Integer cut) {
            Errand.Made made = Errand.made(json);
            BitSet units = BitSet.valueOf(wanted);
            BitSet bands = made.errand().bandsOf(units);
            long all = made.errand().request().space().keys();
            Keyed keyed =
                    made.bands()
                            .key(
                                    part(all, cut, cuts),
                                    part(all, cut + 1, cuts),
                                    bands.nextSetBit(0),
                                    bands.length());
            return Chunk.parted(keyed, made.errand().firsts(), made.errand().shares(), units)
                    .iterator();
        }

        private static long part(long all, long cut, long cuts) {
            return all / cuts * cut + all % cuts * cut / cuts;
        }
    }

    /** Brings each wanted unit to a partition of its own. */
    private static final class ByUnit extends Partitioner {
        private static final long serialVersionUID = 1;

        private final int[] units;

        ByUnit(int[] units) {
            this.units = units;
        }

        @Override
        public int numPartitions() {
            return units.length;
        }

        @Override
        public int getPartition(Object unit) {
            return Arrays.binarySearch(units, (Integer) unit);
        }
    }

    /** Joins one unit and writes its answers. */
    private record Joining(String json, int[] units, String folder)
            implements Function2<Integer, Iterator<Tuple2<Integer, byte[]>>, Iterator<String>> {
        @Override
        public Iterator<String> call(Integer partition, Iterator<Tuple2<Integer, byte[]>> sent) {
            long began = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            Errand.Made made = Errand.made(json);
            int unit = units[partition];
            List<byte[]> chunks = new ArrayList<>();
            sent.forEachRemaining(pair -> chunks.add(pair._2));
            long[][] motions = Chunk.joined(chunks);
            chunks.clear();
            BandMatches found = made.bands().join(made.errand().band(unit), motions[0], motions[1]);
            int exact = (int) IntStream.range(0, found.count()).filter(found::exact).count();
            double seconds =
                    (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - began) / 1e9;
            String report =
                    new UnitReport(
                                    unit,
                                    motions[0].length,
                                    found.heads(),
                                    found.count(),
                                    exact,
                                    found.compared(),
                                    seconds)
                            .json();
            try {
                AnswerFile.write(
                        new Configuration(),
                        new Path(folder, made.errand().file(unit)),
                        UUID.randomUUID().toString(),
                        found,
                        report);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            return List.of(report).iterator();
        }
    }
}
