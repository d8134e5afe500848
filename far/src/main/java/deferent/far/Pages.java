package deferent.far;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import deferent.search.seek.FoundAfar;
import deferent.search.seek.Space;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;
import org.apache.spark.api.java.function.MapFunction;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.functions;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;

/**
 * Answers to leaf through, for those who have neither Spark nor Parquet: the exact ones (all of
 * them where none is exact), a family once, its simplest link standing for it, the simplest first.
 * Written beside their place and moved there when they are whole.
 */
final class Pages {
    static final String FOLDER = "pages";
    static final int VERSION = 1;

    /** Families a page. */
    static final int SIZE = 100;

    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final StructType NAMED =
            new StructType()
                    .add("family", DataTypes.StringType)
                    .add("simplicity", DataTypes.IntegerType)
                    .add("gap", DataTypes.DoubleType)
                    .add("carrier", DataTypes.LongType)
                    .add("rider", DataTypes.LongType)
                    .add("carriers", DataTypes.IntegerType)
                    .add("riders", DataTypes.IntegerType);

    private Pages() {}

    /** Names a link by its simplest pair; the space is made once in a process. */
    private record Naming(String json) implements MapFunction<Row, Row> {
        @Override
        public Row call(Row link) {
            Space space = Errand.made(json).errand().request().space();
            long carrier = link.getLong(0);
            long rider = FoundAfar.simplest(space, link.getInt(1));
            return RowFactory.create(
                    FoundAfar.family(space, carrier, rider),
                    FoundAfar.simplicity(space, carrier, rider),
                    link.getDouble(2),
                    carrier,
                    rider,
                    link.getInt(3),
                    link.getInt(4));
        }
    }

    /**
     * Writes them anew.
     *
     * @return how many families there are
     */
    static int write(SparkSession session, String folder, Errand errand) throws IOException {
        Dataset<Row> links =
                session.read()
                        .parquet(folder + "/answers")
                        .select("simplest", "rider_path", "gap", "carriers", "riders", "exact");
        Dataset<Row> exact = links.filter("exact");
        Dataset<Row> told = exact.isEmpty() ? links : exact;
        List<Row> families =
                told.map(new Naming(errand.json()), Encoders.row(NAMED))
                        .groupBy("family")
                        .agg(
                                functions
                                        .min(
                                                functions.struct(
                                                        "simplicity",
                                                        "gap",
                                                        "carrier",
                                                        "rider",
                                                        "carriers",
                                                        "riders"))
                                        .as("best"),
                                functions.count(functions.lit(1)).as("sizes"),
                                functions
                                        .sum(functions.expr("cast(carriers as long) * riders"))
                                        .as("pairs"))
                        .orderBy("best", "family")
                        .collectAsList();
        Configuration conf = session.sparkContext().hadoopConfiguration();
        Path place = new Path(folder, FOLDER);
        Path beside = new Path(folder, "." + FOLDER + "." + UUID.randomUUID());
        FileSystem files = place.getFileSystem(conf);
        int pages = (families.size() + SIZE - 1) / SIZE;
        for (int page = 1; page <= pages; page++) {
            ArrayNode array = JSON.createArrayNode();
            families.subList((page - 1) * SIZE, Math.min(families.size(), page * SIZE))
                    .forEach(row -> put(array.addObject(), row));
            text(files, new Path(beside, file(page)), array.toPrettyString());
        }
        ObjectNode index = JSON.createObjectNode();
        index.put("deferent_pages", VERSION);
        index.setAll(errand.asked());
        index.put("links", links.count());
        index.put("exact_links", exact.count());
        index.put("families", families.size());
        index.put("page_size", SIZE);
        text(files, new Path(beside, "index.json"), index.toPrettyString());
        files.delete(place, true);
        if (!files.rename(beside, place)) {
            throw new IOException("could not move pages to " + place);
        }
        return families.size();
    }

    static String file(int page) {
        return String.format(Locale.ROOT, "page-%05d.json", page);
    }

    private static void put(ObjectNode node, Row row) {
        Row best = row.getStruct(1);
        node.put("family", row.getString(0));
        node.put("carrier", best.getLong(2));
        node.put("rider", best.getLong(3));
        node.put("gap", best.getDouble(1));
        node.put("carriers", best.getInt(4));
        node.put("riders", best.getInt(5));
        node.put("links", row.getLong(2));
        node.put("pairs", row.getLong(3));
    }

    private static void text(FileSystem files, Path place, String text) throws IOException {
        try (OutputStream out = files.create(place, true)) {
            out.write((text + "\n").getBytes(StandardCharsets.UTF_8));
        }
    }
}
