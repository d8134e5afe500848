package deferent.far;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import deferent.motion.pairing.Refusal;
import deferent.search.seek.Answers;
import deferent.search.seek.BandMatches;
import deferent.search.seek.Bands;
import deferent.search.seek.FoundAfar;
import deferent.search.seek.Seek;
import deferent.search.seek.SeekRequest;
import deferent.search.seek.Space;
import deferent.search.seek.Tethers;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What is found on Spark is what is found here: {@code -Ddeferent.far.motions=1000000} asks it of
 * more.
 */
class FarSeekTest {
    private static final long MOTIONS = Long.getLong("deferent.far.motions", 100_000);
    private static final SeekRequest REQUEST =
            SeekRequest.of(Space.about(MOTIONS)).withTolerance(0.005);

    @TempDir private static Path folders;
    private static SparkSession session;
    private static JavaSparkContext spark;

    @BeforeAll
    static void start() throws IOException {
        Engine engine = new Engine();
        engine.master = "local[2]";
        session = engine.start();
        spark = new JavaSparkContext(session.sparkContext());
    }

    @AfterAll
    static void stop() throws IOException {
        session.close();
    }

    private static Dataset<Row> kept(Path folder) {
        return session.read()
                .parquet(folder.resolve("answers").toString())
                .select("carrier", "rider_path", "gap");
    }

    @Test
    void theAnswersAreThoseOfASeekHereAndUnitsThatStandAreNotSoughtAgain() throws IOException {
        Path folder = folders.resolve("equal");
        FarSeek seek = FarSeek.into(spark, folder.toString(), Errand.of(REQUEST, MOTIONS / 12));
        List<UnitReport> reports = seek.run();
        Answers whole = new Seek(REQUEST).found();
        assertThat(reports.stream().mapToLong(UnitReport::answers).sum())
                .isEqualTo(whole.count())
                .isGreaterThan(500);
        assertThat(reports.stream().mapToLong(UnitReport::exact).sum())
                .isEqualTo(whole.exactCount());
        assertThat(reports.stream().mapToLong(UnitReport::heads).sum())
                .isEqualTo(whole.headPaths());
        assertThat(reports.stream().mapToLong(UnitReport::motions).sum())
                .isEqualTo(REQUEST.space().count());
        assertThat(SameFar.unlike(seek.errand(), kept(folder))).isEmpty();
        long[] sizes = reports.stream().mapToLong(UnitReport::motions).sorted().toArray();
        assertThat(sizes[sizes.length - 1]).isLessThan(3 * sizes[sizes.length / 2]);

        // two units are lost, one of them in the middle of being written
        Path lost = folder.resolve(seek.errand().file(3));
        Path half = folder.resolve(seek.errand().file(8));
        Path stands = folder.resolve(seek.errand().file(5));
        FileTime before = Files.getLastModifiedTime(stands);
        Files.delete(lost);
        Files.move(half, half.resolveSibling("." + half.getFileName() + ".17"));
        FarSeek again = FarSeek.into(spark, folder.toString(), Errand.of(REQUEST, MOTIONS / 12));
        assertThat(again.missing()).isEqualTo(BitSet.valueOf(new long[] {1 << 3 | 1 << 8}));
        assertThat(again.run()).extracting(UnitReport::unit).containsExactlyInAnyOrder(3, 8);
        assertThat(half.resolveSibling("." + half.getFileName() + ".17")).doesNotExist();
        assertThat(again.run()).isEmpty();
        assertThat(again.reports())
                .extracting(UnitReport::answers)
                .containsExactlyElementsOf(
                        reports.stream()
                                .sorted(Comparator.comparingInt(UnitReport::unit))
                                .map(UnitReport::answers)
                                .toList());
        assertThat(Files.getLastModifiedTime(stands)).isEqualTo(before);
        assertThat(SameFar.unlike(seek.errand(), kept(folder))).isEmpty();

        pagesTellEachFamilyOnceTheSimplestFirst(folder, seek.errand());

        SeekRequest other = REQUEST.withTolerance(0.004);
        assertThatThrownBy(() -> FarSeek.into(spark, folder.toString(), Errand.of(other, 10_000)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("another request");
        Path request = folder.resolve(Errand.FILE);
        Files.writeString(
                request,
                Files.readString(request).replace("\"deferent_far\" : 1", "\"deferent_far\" : 2"));
        Files.deleteIfExists(folder.resolve("." + Errand.FILE + ".crc"));
        assertThatThrownBy(() -> FarSeek.into(spark, folder.toString(), Errand.of(REQUEST, 10_000)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("version 2");
    }

    private static void pagesTellEachFamilyOnceTheSimplestFirst(Path folder, Errand errand)
            throws IOException {
        Space space = errand.request().space();
        BandMatches here = Bands.at(errand.request(), new double[0]).seek(0);
        Map<String, Integer> links = new HashMap<>();
        Map<String, Integer> simplest = new HashMap<>();
        for (int i = 0; i < here.count(); i++) {
            if (here.exact(i)) {
                long carrier = here.simplest()[i];
                long rider = FoundAfar.simplest(space, here.riders()[i]);
                String family = FoundAfar.family(space, carrier, rider);
                links.merge(family, 1, Integer::sum);
                simplest.merge(family, FoundAfar.simplicity(space, carrier, rider), Integer::min);
            }
        }
        int families = Pages.write(session, folder.toString(), errand);
        assertThat(families).isEqualTo(links.size()).isGreaterThan(20);
        int told = 0;
        int before = 0;
        for (int page = 1; page <= (families + Pages.SIZE - 1) / Pages.SIZE; page++) {
            Path file = folder.resolve(Pages.FOLDER).resolve(Pages.file(page));
            for (JsonNode one : new JsonMapper().readTree(Files.readString(file))) {
                String family = one.path("family").asText();
                long carrier = one.path("carrier").asLong();
                long rider = one.path("rider").asLong();
                assertThat(FoundAfar.family(space, carrier, rider)).isEqualTo(family);
                assertThat(one.path("links").asInt()).as(family).isEqualTo(links.get(family));
                int simplicity = FoundAfar.simplicity(space, carrier, rider);
                assertThat(simplicity)
                        .as(family)
                        .isEqualTo(simplest.get(family))
                        .isGreaterThanOrEqualTo(before);
                before = simplicity;
                told++;
            }
        }
        assertThat(told).isEqualTo(families);
    }

    /** Where tethers are free very many curves have one number: their band is split. */
    @Test
    void aBandThatIsHotIsSplitAndFindsTheSame() throws IOException {
        SeekRequest free =
                SeekRequest.of(Space.about(20_000)).with(Tethers.FREE).withTolerance(0.002);
        Errand errand = Errand.of(free, 1_000);
        assertThat(errand.shares()).contains(1);
        assertThat(Arrays.stream(errand.shares()).max().orElseThrow()).isGreaterThan(1);
        Path folder = folders.resolve("free");
        FarSeek seek = FarSeek.into(spark, folder.toString(), errand);
        List<UnitReport> reports = seek.run();
        assertThat(SameFar.unlike(errand, kept(folder))).isEmpty();
        long[] sizes = reports.stream().mapToLong(UnitReport::motions).sorted().toArray();
        assertThat(sizes[sizes.length - 1]).isLessThan(4 * sizes[sizes.length / 2]);
    }

    @Test
    void anErrandIsWhatItsFileSays() {
        Errand errand = Errand.of(REQUEST, 20_000);
        Errand read = Errand.parse(errand.json());
        assertThat(read.json()).isEqualTo(errand.json());
        assertThat(read.edges()).isEqualTo(errand.edges());
        assertThat(read.asksAs(errand)).isTrue();
        assertThat(read.asksAs(Errand.of(REQUEST.with(Tethers.FREE), 20_000))).isFalse();
        assertThatThrownBy(() -> Errand.parse("{}")).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> Errand.parse("no")).isInstanceOf(Refusal.class);
    }
}
