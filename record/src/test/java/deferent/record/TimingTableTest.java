package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Rate;
import deferent.motion.trace.Trace;
import deferent.reading.tether.Kit;
import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TimingTableTest {
    private static final SchemaRegistry SCHEMAS =
            SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);

    private static Trace trace(String phrase) {
        return Trace.of(Phrase.parse(phrase).with(Tether.USUAL));
    }

    private static TimingTable table(Trace trace, Rate rate, int cycles) {
        return new TimingTable(trace, Kit.USUAL, rate, cycles);
    }

    private static String csv(Trace trace, Rate rate, int cycles) {
        StringBuilder out = new StringBuilder();
        try {
            table(trace, rate, cycles).lines(",", out, share -> {}, () -> false);
        } catch (IOException cannot) {
            throw new AssertionError(cannot);
        }
        return out.toString();
    }

    private static double[][] rows(String csv) {
        String[] lines = csv.split("\r\n", -1);
        assertThat(lines[lines.length - 1]).as("the last line ends too").isEmpty();
        double[][] rows = new double[lines.length - 2][];
        for (int i = 0; i < rows.length; i++) {
            String[] cells = lines[i + 1].split(",", -1);
            rows[i] = new double[cells.length];
            for (int k = 0; k < cells.length; k++) {
                rows[i][k] = Double.parseDouble(cells[k]);
            }
        }
        return rows;
    }

    private static int column(String name) {
        int at = TimingTable.columns().indexOf(name);
        assertThat(at).as(name).isNotNegative();
        return at;
    }

    @Test
    void theHeaderNamesEveryColumnWithItsUnit() {
        String header = csv(trace("isolation vs triquetra"), Rate.of(60), 1).split("\r\n", 2)[0];
        assertThat(header.split(","))
                .containsExactlyElementsOf(TimingTable.columns())
                .hasSize(19)
                .allMatch(name -> name.matches("[a-z_]+_(s|m|deg|n|weights)"));
    }

    /** Source: RFC 4180, section 2: as many fields in each line, CR LF after each. */
    @Test
    void everyLineHasAsManyFieldsAndEndsInCrLf() {
        String csv = csv(trace("extension vs cat-eye"), Rate.of(48), 1);
        assertThat(csv).endsWith("\r\n").doesNotContain("\"");
        assertThat(csv.replace("\r\n", "")).doesNotContain("\r").doesNotContain("\n");
        assertThat(csv.split("\r\n"))
                .hasSize(1 + 48)
                .allMatch(line -> line.split(",", -1).length == 19);
    }

    @Test
    void everyRowIsTheTraceAtThatTimeToTheLastDigit() {
        Trace trace = trace("isolation vs four-petal antispin, split time, opposite");
        double[][] rows = rows(csv(trace, Rate.of(97), 1));
        for (double[] row : rows) {
            for (Side side : Side.values()) {
                int at = column(side.word() + "_head_x_m");
                var head = trace.head(side).position(row[0]);
                assertThat(row[at]).isEqualTo(head.getX());
                assertThat(row[at + 1]).isEqualTo(head.getY());
                assertThat(row[at + 2]).isEqualTo(head.getZ());
            }
        }
    }

    @Test
    void theTimeOfTheLastOfManyFramesIsAsExactAsTheFirst() {
        Trace trace = trace("static spin vs triquetra");
        double[][] rows = rows(csv(trace, Rate.of("29.97"), 1001));
        // 1001 cycles of one second hold 30 000 frames at 30000/1001 a second, exactly.
        assertThat(rows).hasNumberOfRows(30_000);
        assertThat(rows[30][0]).isEqualTo(30 * 1001 / 30_000.0);
        assertThat(rows[29_999][0]).isEqualTo(29_999 * 1001L / 30_000.0);
        // Ten thousand frames on, both are where a third of the table says.
        int x = column("right_head_x_m");
        double[] late = rows[29_970];
        assertThat(late[x])
                .isCloseTo(trace.head(Side.RIGHT).position(late[0] - 999).getX(), within(1e-11));
    }

    @Test
    void overACycleTheAngleGrowsByTheTurnsOfThePoiAndNeverJumps() {
        double[][] rows = rows(csv(trace("extension vs triquetra"), Rate.of(240), 3));
        int left = column("left_tether_unwrapped_deg");
        int right = column("right_tether_unwrapped_deg");
        assertThat(Math.abs(rows[480][left] - rows[0][left])).isCloseTo(720, within(1e-9));
        assertThat(rows[480][right] - rows[0][right])
                .as("antispin: twice as fast, against the hand")
                .isCloseTo(-2 * (rows[480][left] - rows[0][left]), within(1e-9));
        for (int i = 1; i < rows.length; i++) {
            assertThat(Math.abs(rows[i][right] - rows[i - 1][right])).isCloseTo(3, within(1e-9));
        }
    }

    @Test
    void anAngleIsRightHoweverFewRowsThereAre() {
        double[][] often = rows(csv(trace("static spin vs triquetra"), Rate.of(60), 2));
        double[][] seldom = rows(csv(trace("static spin vs triquetra"), Rate.of(2), 2));
        int angle = column("right_tether_unwrapped_deg");
        for (int i = 0; i < seldom.length; i++) {
            assertThat(seldom[i][angle]).isCloseTo(often[30 * i][angle], within(1e-9));
        }
    }

    /** Source: uniform circular motion, any mechanics textbook: T = m(ω²L ± g). */
    @Test
    void theCordOfAStaticSpinPullsByItsSpeedAndByGravity() {
        double[][] rows = rows(csv(trace("static spin vs static spin"), Rate.of(4), 1));
        double carried = 4 * Math.PI * Math.PI * 0.6 / Gravity.STANDARD;
        int weights = column("left_pull_weights");
        int y = column("left_head_y_m");
        for (double[] row : rows) {
            assertThat(row[weights]).isCloseTo(carried - row[y] / 0.6, within(1e-9));
            assertThat(row[weights - 1])
                    .isCloseTo(row[weights] * 0.12 * Gravity.STANDARD, within(1e-9));
        }
    }

    @Test
    void jsonHoldsTheSameRowsAndKeepsToItsSchema() throws IOException {
        Trace trace = trace("isolation vs horizontal cat-eye");
        StringBuilder out = new StringBuilder();
        table(trace, new Rate(24_000, 1001), 2).json(out, share -> {}, () -> false);
        var schema = SCHEMAS.getSchema(TimingTable.schema());
        assertThat(schema.validate(out.toString(), InputFormat.JSON)).isEmpty();
        var tree = Text.tree(out.toString(), PatternJson.MOST_BUNDLE_CHARACTERS);
        double[][] rows = rows(csv(trace, new Rate(24_000, 1001), 2));
        assertThat(tree.get("rows").size()).isEqualTo(rows.length);
        for (int i = 0; i < rows.length; i++) {
            for (int k = 0; k < rows[i].length; k++) {
                assertThat(tree.get("rows").get(i).get(k).doubleValue()).isEqualTo(rows[i][k]);
            }
        }
        assertThat(schema.validate(out.toString().replace("_deg", "_rad"), InputFormat.JSON))
                .isNotEmpty();
        assertThat(
                        schema.validate(
                                out.toString().replace("\"cycles\": 2", "\"cycles\": 0"),
                                InputFormat.JSON))
                .isNotEmpty();
    }

    @Test
    void theSchemaIsItselfADraft202012Schema() {
        var meta =
                SCHEMAS.getSchema(
                        SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
        assertThat(meta.validate(TimingTable.schema(), InputFormat.JSON)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "-5", "1e9", "2000000", "fast", "", "60 fps", "1/0", "1/2000000"})
    void aRateThatCannotBeIsRefused(String said) {
        assertThatThrownBy(() -> Rate.of(said))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("rate");
    }

    @Test
    void aTableBeyondAllMeasureIsRefusedBeforeItsFirstLine() {
        Trace trace = trace("static spin vs triquetra");
        assertThatThrownBy(() -> table(trace, Rate.of(1_000_000), 11))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("rows");
        assertThatThrownBy(() -> table(trace, new Rate(1, 1000), 1))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("higher rate");
        assertThatThrownBy(() -> table(trace, Rate.of(60), 0)).isInstanceOf(Refusal.class);
    }

    @Test
    void aTableGoesOutRowByRowAndStopsWhenAsked() throws IOException {
        // A writer that keeps nothing sees a million rows go by.
        long[] seen = new long[2];
        Writer through =
                new Writer() {
                    @Override
                    public void write(char[] part, int from, int length) {
                        seen[0] += length;
                        seen[1] = Math.max(seen[1], length);
                    }

                    @Override
                    public void flush() {}

                    @Override
                    public void close() {}
                };
        List<Double> told = new ArrayList<>();
        TimingTable table = table(trace("static spin vs triquetra"), Rate.of(1000), 100);
        boolean whole = table.lines(",", through, told::add, () -> false);
        assertThat(whole).isTrue();
        assertThat(seen[0]).isGreaterThan(100_000L * 100);
        assertThat(seen[1]).as("the longest piece handed over").isLessThan(1000);
        assertThat(told).isSorted().endsWith(1.0);
        StringBuilder cut = new StringBuilder();
        boolean done = table.lines(",", cut, share -> {}, () -> cut.length() > 5000);
        assertThat(done).isFalse();
        assertThat(cut.length()).isLessThan(6000);
    }

    @Test
    void aToroidsTetherTurnsEvenlyInItsTurningPlane() {
        Pairing pairing = Phrase.parse("toroid vs triquetra").with(Tether.USUAL);
        Trace trace = Trace.of(pairing.withTempo(OptionalDouble.of(60)));
        double[][] rows = rows(csv(trace, Rate.of(360), 1));
        int angle = column("left_tether_unwrapped_deg");
        double step = rows[1][angle] - rows[0][angle];
        assertThat(Math.abs(step)).isGreaterThan(0.5);
        for (int i = 1; i < rows.length; i++) {
            assertThat(rows[i][angle] - rows[i - 1][angle]).isCloseTo(step, within(1e-7));
        }
    }
}
