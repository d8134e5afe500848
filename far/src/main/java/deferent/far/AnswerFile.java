package deferent.far;

import deferent.search.seek.BandMatches;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;
import org.apache.parquet.example.data.simple.SimpleGroup;
import org.apache.parquet.hadoop.ParquetFileReader;
import org.apache.parquet.hadoop.ParquetWriter;
import org.apache.parquet.hadoop.example.ExampleParquetWriter;
import org.apache.parquet.hadoop.metadata.CompressionCodecName;
import org.apache.parquet.hadoop.util.HadoopInputFile;
import org.apache.parquet.hadoop.util.HadoopOutputFile;
import org.apache.parquet.schema.MessageType;
import org.apache.parquet.schema.MessageTypeParser;

/**
 * The answers of one unit, a row a class match. Written beside its place under a name of this
 * attempt, which readers pass over, and moved there when it is whole: a file that stands is done,
 * and of two attempts at one unit either may win, as both have found the same.
 *
 * <p>{@code gap} is in tethers, or in shares of the size where tethers are free.
 */
final class AnswerFile {
    private static final MessageType ROW =
            MessageTypeParser.parseMessageType(
                    "message answer {"
                            + " required int64 carrier; required int32 carriers;"
                            + " required int64 simplest;"
                            + " required int32 rider_path; required int32 riders;"
                            + " required double gap; required boolean exact; }");

    private static final String REPORT = "deferent.report";

    private AnswerFile() {}

    static void write(
            Configuration conf, Path place, String attempt, BandMatches found, String report)
            throws IOException {
        FileSystem files = place.getFileSystem(conf);
        Path beside = new Path(place.getParent(), "." + place.getName() + "." + attempt);
        files.mkdirs(place.getParent());
        try (ParquetWriter<org.apache.parquet.example.data.Group> writer =
                ExampleParquetWriter.builder(HadoopOutputFile.fromPath(beside, conf))
                        .withType(ROW)
                        .withExtraMetaData(Map.of(REPORT, report))
                        .withCompressionCodec(CompressionCodecName.ZSTD)
                        .build()) {
            for (int i = 0; i < found.count(); i++) {
                SimpleGroup row = new SimpleGroup(ROW);
                row.add(0, found.carriers()[i]);
                row.add(1, found.leads()[i]);
                row.add(2, found.simplest()[i]);
                row.add(3, found.riders()[i]);
                row.add(4, found.follows()[i]);
                row.add(5, found.gaps()[i]);
                row.add(6, found.exact(i));
                writer.write(row);
            }
        }
        if (!files.rename(beside, place)) {
            files.delete(beside, false);
            if (!files.exists(place)) {
                throw new IOException("could not move answers to " + place);
            }
        }
    }

    /** What was told of the unit whose answers stand there, if they do. */
    static Optional<String> report(Configuration conf, Path place) throws IOException {
        if (!place.getFileSystem(conf).exists(place)) {
            return Optional.empty();
        }
        try (ParquetFileReader reader =
                ParquetFileReader.open(HadoopInputFile.fromPath(place, conf))) {
            return Optional.ofNullable(reader.getFileMetaData().getKeyValueMetaData().get(REPORT));
        }
    }
}
