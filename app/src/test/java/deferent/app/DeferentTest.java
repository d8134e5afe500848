package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.record.DemoShelf;
import deferent.record.PatternJson;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class DeferentTest {
    @TempDir Path folder;

    private Desk.Answer run(String... args) {
        List<String> all = new ArrayList<>(List.of(args));
        if (!all.isEmpty() && !List.of("--help", "--version").contains(args[0])) {
            all.add("--shelf");
            all.add(folder.resolve("shelf").toString());
        }
        return Desk.asked(all.toArray(String[]::new));
    }

    private Desk.Answer good(String... args) {
        Desk.Answer answer = run(args);
        assertThat(answer.err()).isEmpty();
        assertThat(answer.code()).isZero();
        return answer;
    }

    private Desk.Answer none(String... args) {
        Desk.Answer answer = run(args);
        assertThat(answer.code()).as(answer.err()).isEqualTo(Exit.NOT_FOUND.code());
        return answer;
    }

    private Desk.Answer bad(String... args) {
        Desk.Answer answer = run(args);
        assertThat(answer.code()).as(answer.err()).isEqualTo(2);
        assertThat(answer.err()).isNotBlank();
        return answer;
    }

    @Test
    void aPhraseIsReadInPlainWordsOnLinesThatFit() {
        Desk.Answer answer = good("read", "isolation", "vs", "four-petal", "antispin", "--all");
        assertThat(answer.out().replaceAll("\\s+", " "))
                .startsWith("isolation vs four-petal antispin")
                .contains("up to 90 cm apart now, at best 30 cm all the way round")
                .contains("Take care")
                .contains("left head, right hand");
        assertThat(answer.out().lines()).allMatch(line -> line.length() <= 100);
    }

    /** The twelve pairings that tables of the house are made of. */
    @ParameterizedTest
    @MethodSource("deferent.motion.trial.TwelveClassics#all")
    void unlessAskedForAllAReadingTakesFifteenLinesAndBeginsWithWhetherItLinks(String phrase) {
        List<String> lines = good("read", phrase).out().lines().toList();
        assertThat(lines).hasSizeLessThanOrEqualTo(15);
        assertThat(lines.get(2)).matches(". It (links|does not link).*|!! Danger: [a-z ]+[.]");
        assertThat(lines).anyMatch(line -> line.startsWith("Take care: "));
        assertThat(lines.get(lines.size() - 1)).startsWith("--all");
    }

    @Test
    void aLongNoteLeavesRoomForTheFirstSentence() {
        String note = "count the beats aloud\n".repeat(20);
        good("shelf", "add", "static spin vs triquetra", "--name", "My ring", "--note", note);
        assertThat(good("read", "My ring").out()).contains("It links, ");
    }

    @Test
    void everyHeadingStandsOnceAndWhatClosesALinkStandsUnderLink() {
        for (String phrase :
                List.of("isolation vs four-petal antispin", "static spin vs triquetra")) {
            List<String> lines = good("read", phrase, "--all").out().lines().toList();
            assertThat(lines.stream().filter(line -> line.matches("[A-Z][a-z ]+")))
                    .contains("Link", "On a cord", "Reach and room")
                    .doesNotHaveDuplicates();
        }
        String out = good("read", "isolation vs four-petal antispin", "--all").out();
        assertThat(out.indexOf("To close it")).isLessThan(out.indexOf("Figures and tempo"));
    }

    @Test
    void eachHeadingStandsOnce() {
        List<String> headings =
                good("read", "triquetra hand radius 130 cm vs static spin", "--all")
                        .out()
                        .lines()
                        .filter(
                                List.of("Link", "Figures and tempo", "On a cord", "Reach and room")
                                        ::contains)
                        .toList();
        assertThat(headings).hasSize(4).doesNotHaveDuplicates();
    }

    @Test
    void whySaysBelowEachSentenceWhereItComesFrom() {
        assertThat(good("read", "static spin vs triquetra", "--why").out()).contains("why: ");
        assertThat(good("read", "static spin vs triquetra").out()).doesNotContain("why: ");
    }

    @Test
    void jsonIsOneObjectForOtherPrograms() {
        JsonNode read =
                new JsonMapper().readTree(good("read", "static spin vs triquetra", "--json").out());
        assertThat(read.at("/links/0/kind").stringValue()).isEqualTo("touching");
        assertThat(read.at("/hands/left/tether_m").doubleValue()).isEqualTo(0.6);
    }

    @ParameterizedTest
    @CsvSource({
        "--tether,48cm,/hands/left/tether_m,0.48",
        "--tether,0.48 m,/hands/right/tether_m,0.48",
        "--tether,480mm,/hands/right/hand_radius_m,0.48",
        "--tether,20in,/hands/left/tether_m,0.508",
        "--tempo,90,/tempo_cycles_per_min,90",
        "--tempo,90/min,/tempo_cycles_per_min,90",
        "--hand-radius,45cm,/hands/right/hand_radius_m,0.45",
        "--stature,172cm,/reach/performer/stature_m,1.72",
        "--arm,61cm,/reach/performer/arm_m,0.61",
        "--shoulders,41cm,/reach/performer/shoulder_width_m,0.41",
        "--hand-speed,6m/s,/closest_figure/left/limits/speed_m_per_s,6",
        "--hand-acceleration,80m/s2,/closest_figure/right/limits/acceleration_m_per_s2,80",
        "--hand-leave,15cm,/closest_figure/right/limits/leave_m,0.15",
        "--set,right.hand_radius=0.5m,/hands/right/hand_radius_m,0.5",
        "--set,right.hand_radius_m=50cm,/hands/right/hand_radius_m,0.5",
        "--set,left.tether=70cm,/hands/left/tether_m,0.7",
        "--set,right.centre_x=20cm,/links/0/offset_m/0,0.2",
        "--set,tempo=72,/tempo_cycles_per_min,72",
    })
    void numbersTakeUnits(String option, String value, String where, double number) {
        JsonNode read =
                new JsonMapper()
                        .readTree(
                                good("read", "static spin vs triquetra", "--json", option, value)
                                        .out());
        assertThat(read.at(where).doubleValue()).isEqualTo(number);
    }

    @Test
    void aFitSaysTheSizesThatCloseAndWhatAMissCosts() {
        String out = good("fit", "static spin vs triquetra hand radius 45 cm").out();
        assertThat(out)
                .contains("It can close in ")
                .contains("Make the right hand radius 60 cm (now 45 cm).")
                .contains("= static spin vs triquetra")
                .contains("What it costs to be a little out, once closed")
                .contains("1 cm out, head and hand are 1 cm");
    }

    @Test
    void aFitChangesOnlyWhatIsFree() {
        String out =
                good("fit", "static spin vs triquetra hand radius 45 cm", "--free", "hand_radius")
                        .out();
        assertThat(out).contains("hand radius 60 cm").doesNotContain("Make the left tether");
        assertThat(bad("fit", "static spin vs triquetra", "--free", "nose").err())
                .contains("right.hand_radius_m");
    }

    @Test
    void aFitThatCannotCloseSaysHowFarApartAtBestAndWhy() {
        assertThat(
                        none("fit", "pendulum vs triquetra", "--carrier", "left")
                                .out()
                                .replaceAll("\\s+", " "))
                .contains(
                        "Let the right hand ride and it closes: \"pendulum vs triquetra riding\". As it is said it cannot close: with the best sizes tried the left head and the right hand are still 5 cm apart")
                .contains("an arc is no circle");
        Desk.Answer unsaved =
                run("fit", "pendulum vs triquetra", "--carrier", "left", "--save", "x");
        assertThat(unsaved.code()).isEqualTo(Exit.NOT_FOUND.code());
        assertThat(unsaved.err()).contains("nothing is saved");
    }

    @Test
    void aFitToTheArmsIsWhatReadThenFindsInReach() throws IOException {
        JsonMapper mapper = JsonMapper.shared();
        JsonNode fit =
                mapper.readTree(good("fit", "static spin vs triquetra", "--arms", "--json").out());
        assertThat(fit.get("reached").booleanValue()).isTrue();
        JsonNode read =
                mapper.readTree(good("read", fit.get("phrase").stringValue(), "--json").out());
        assertThat(read.at("/reach/trunk/reached").booleanValue()).isTrue();
        assertThat(read.at("/reach/trunk/turn_deg").doubleValue()).isBetween(1.0, 45.0);
        assertThat(read.at("/links/0/kind").stringValue()).isEqualTo("touching");
        assertThat(good("fit", "static spin vs triquetra", "--arms", "--owned", "35cm,60cm").out())
                .contains("tethers of 35 cm");
        assertThat(none("fit", "static spin vs triquetra", "--arms", "--owned", "60cm").out())
                .contains("No tether tried");
    }

    @Test
    void aFitOnRealCordsNarrowsTheGapAndSaysWhatItLeaves() {
        JsonNode fit =
                new JsonMapper()
                        .readTree(
                                good("fit", "static spin vs triquetra", "--cord", "--json").out());
        assertThat(fit.get("gap_after_m").doubleValue())
                .isLessThan(fit.get("gap_before_m").doubleValue());
        assertThat(fit.get("closes").booleanValue())
                .isEqualTo(
                        fit.get("gap_after_m").doubleValue()
                                <= fit.get("tolerance_m").doubleValue());
        assertThat(none("fit", "CAP riding pendulum", "--cord").out())
                .contains("On real cords the link");
    }

    @Test
    void aFitIsSavedOnTheShelf() {
        good(
                "fit",
                "static spin vs triquetra hand radius 45 cm",
                "--free",
                "right.hand_radius",
                "--save",
                "closed ring");
        assertThat(good("read", "closed ring").out())
                .contains("Linked, touching")
                .contains("static spin vs triquetra");
    }

    @Test
    void aFitAnswersInJsonWithWholePatterns() {
        JsonNode fit =
                new JsonMapper()
                        .readTree(good("fit", "isolation vs horizontal cat-eye", "--json").out());
        assertThat(fit.get("closes").booleanValue()).isTrue();
        assertThat(fit.at("/answers/0/changes/0/size").stringValue()).isEqualTo("timing_cycles");
        assertThat(fit.at("/answers/0/changes/0/to").doubleValue()).isEqualTo(0.5);
        assertThat(fit.at("/answers/0/phrase").stringValue())
                .isEqualTo("isolation vs horizontal cat-eye, split time");
        assertThat(PatternJson.readPattern(fit.at("/answers/0/pattern")).pairing().timing().ahead())
                .isEqualTo(0.5);
    }

    @Test
    void theFitFindsTheCarriersSizeForARiderNamedOnTheShelf() {
        good("shelf", "name", "lantern loop", "half-and-half flower hand radius 42 cm");
        JsonNode fit =
                new JsonMapper()
                        .readTree(
                                good(
                                                "fit",
                                                "isolation vs lantern loop",
                                                "--free",
                                                "left.hand_radius,timing",
                                                "--json")
                                        .out());
        // An isolation's head goes round on the difference of hand circle and tether, and
        // 60 - 18 = 102 - 60 = 42.
        List<Double> radii =
                fit.get("answers")
                        .valueStream()
                        .flatMap(answer -> answer.get("changes").valueStream())
                        .filter(c -> c.get("size").stringValue().equals("left.hand_radius_m"))
                        .map(c -> c.get("to").doubleValue())
                        .toList();
        assertThat(radii).contains(0.18, 1.02);
        assertThat(fit.get("answers").valueStream())
                .allMatch(answer -> answer.get("gap_left_m").doubleValue() < 1e-3);
    }

    @Test
    void aPatternDocumentIsReadFromItsFile() throws IOException {
        Path file = folder.resolve("ring.json");
        Files.writeString(file, PatternJson.write(DemoShelf.documents().get(0)));
        Desk.Answer answer = good("read", file.toString());
        assertThat(answer.out())
                .startsWith("Ring under the eaves")
                .contains("static spin vs triquetra")
                .contains("invented demo data")
                .contains("Linked, touching");
    }

    @Test
    void aWordIsExplained() {
        assertThat(good("words", "CAP").out())
                .contains("continuous assembly pattern")
                .contains("Unless you say otherwise:");
        assertThat(good("words").out()).contains("isolation").contains("triquetra");
        assertThat(bad("words", "isolashun").err()).contains("isolation");
    }

    @Test
    void aPatternGoesOnTheShelfAndComesBack() {
        assertThat(good("shelf", "list").out()).contains("is empty");
        good("shelf", "add", "static spin vs triquetra", "--name", "My ring", "--note", "slow");
        assertThat(good("shelf", "list").out()).contains("my-ring").contains("My ring");
        assertThat(good("read", "My ring").out()).startsWith("My ring").contains("touching");
        assertThat(good("read", "my-ring").out()).contains("slow");
        assertThat(good("shelf", "show", "my ring").out()).contains("\"name\": \"My ring\"");
        assertThat(good("shelf", "remove", "my-ring").out()).contains("my-ring.json");
        assertThat(none("shelf", "remove", "my-ring").err()).contains("is not on the shelf");
    }

    @Test
    void aShelfIsCarriedOverInOneFile() throws IOException {
        good("shelf", "demo");
        int all = DemoShelf.documents().size();
        assertThat(good("shelf", "list").out().lines().filter(l -> !l.startsWith(" ")))
                .hasSize(all);
        Path bundle = folder.resolve("all.json");
        good("shelf", "export", "--out", bundle.toString());
        assertThat(PatternJson.readBundle(Files.readString(bundle))).hasSize(all);
        good("shelf", "import", bundle.toString());
        assertThat(good("shelf", "list").out().lines().filter(l -> !l.startsWith(" ")))
                .hasSize(all);
        assertThat(good("shelf", "export", "two-against-three").out())
                .contains("Two against three")
                .doesNotContain("Ring under");
    }

    @Test
    void aMotionOfOnesOwnIsThenAWord() {
        good("shelf", "name", "lantern loop", "triquetra hand radius 42 cm", "--also", "lamp loop");
        assertThat(good("read", "static spin vs lamp loop", "--all").out()).contains("42 cm");
        assertThat(good("words", "lantern loop").out()).contains("a motion of your own");
        good("shelf", "name", "drop", "--svg", "M0 0 L2 0 L1 2 Z", "--radius", "30cm");
        assertThat(good("read", "drop vs static spin").out()).contains("drop");
        assertThat(bad("shelf", "name", "isolation", "triquetra").err())
                .contains("is a word of the trade");
        assertThat(bad("shelf", "name", "blank").err()).contains("has no motion");
    }

    @Test
    void aBrokenFileOnTheShelfIsListedWithItsError() throws IOException {
        good("shelf", "add", "static spin vs triquetra");
        Files.writeString(folder.resolve("shelf/torn.json"), "{");
        assertThat(good("shelf", "list").out())
                .contains("static-spin-vs-triquetra")
                .contains("torn.json: ")
                .contains("is not JSON");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "isolashun vs triquetra",
                "isolation vs",
                "isolation vs triquetra vs pendulum",
                "isolation vs 4-pettal antispin",
                "isolation vs triquetra tether 60",
                "isolation vs triquetra tether -1 cm",
                "pendulum riding pendulum riding",
                "pendulum vs pendulum, tempo 90",
                "isolation vs triquetra, tempo 100000",
                "isolation tilt 30 vs triquetra",
            })
    void tenKindsOfBadPhraseEachGetTheirErrorUnderlined(String phrase) {
        Desk.Answer answer = bad("read", phrase);
        assertThat(answer.out()).isEmpty();
        assertThat(answer.err().lines().findFirst()).contains(phrase);
        assertThat(answer.err().lines().skip(1).findFirst().orElseThrow())
                .containsPattern("^ *\\^+$");
        assertThat(answer.err()).contains("Expected: ");
    }

    @Test
    void aWordNotKnownOffersTheNearest() {
        assertThat(bad("read", "isolashun vs triquetra").err())
                .startsWith("isolashun vs triquetra\n^^^^^^^^^\n")
                .contains("Nearest: isolation");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"format\": 1|\"format\": 7|newer than this deferent",
                "\"tether_m\": 0.45|\"tether_m\": 0|give more than 0",
                "\"tether_m\": 0.45|\"tether\": 0.45|tether_m",
                "\"path\": \"still\"|\"path\": \"stil\"|is \"still\" meant?",
                "\"turns\": 1|\"turns\": 1.5|give a whole number",
                "\"name\":|\"nam\":|has no \"name\"",
                "\"timing_cycles\": 0|\"timing_cycles\": 2|give from 0 to 1",
                "\"kind\": \"wall\"|\"kind\": \"roof\"|\"wheel\"",
                "\"format\": 1,|\"format\": 1|is not JSON",
                "\"centre_m\": [0, 0, 0.34]|\"centre_m\": [0, 0]|give 3",
            })
    void tenKindsOfBadDocumentEachGetTheirError(String right, String wrong, String said)
            throws IOException {
        Path file = folder.resolve("wrong.json");
        String good = PatternJson.write(DemoShelf.documents().get(0));
        assertThat(good).contains(right);
        Files.writeString(file, good.replace(right, wrong));
        Desk.Answer answer = bad("read", file.toString());
        assertThat(answer.err()).contains("wrong.json, line ").contains("column ").contains(said);
        assertThat(answer.err()).contains("^");
    }

    @Test
    void tenKindsOfBadRequestEachGetTheirError() throws IOException {
        Path binary = folder.resolve("binary.json");
        Files.write(binary, new byte[] {(byte) 0xff, (byte) 0xfe, 0});
        assertThat(bad("read").err()).contains("PHRASE|FILE|NAME");
        assertThat(bad("reed", "isolation").err()).contains("read");
        assertThat(bad("read", "isolation vs triquetra", "--tehter", "60cm").err())
                .contains("--tehter");
        assertThat(bad("read", "isolation vs triquetra", "--tether", "60").err())
                .contains("has no unit")
                .contains("60cm");
        assertThat(bad("read", "isolation vs triquetra", "--tether", "sixty").err())
                .contains("is no length")
                .contains("is 60cm meant?");
        assertThat(bad("read", "isolation vs triquetra", "--tether", "60deg").err())
                .contains("no unit of length");
        assertThat(bad("read", "isolation vs triquetra", "--tether", "0cm").err())
                .contains("give more than 0");
        assertThat(bad("read", "isolation vs triquetra", "--stature", "9m").err())
                .contains("give from 1 m to 2.5 m");
        assertThat(bad("read", "isolation vs triquetra", "--set", "left.radius=3cm").err())
                .contains("left.hand_radius_m");
        assertThat(bad("read", "isolation vs triquetra", "--set", "left.tether").err())
                .contains("says no value");
        assertThat(none("read", folder.resolve("none.json").toString()).err())
                .contains("is not there");
        assertThat(bad("read", binary.toString()).err()).contains("is not UTF-8");
        assertThat(bad("read", "pendulum vs CAP", "--tempo", "90").err()).contains("pendulum");
        assertThat(none("shelf", "show", "../secret").err()).contains("is not on the shelf");
        assertThat(bad("studio", "--port", "99999").err()).contains("port");
    }

    @Test
    void aShelfThatIsNoFolderIsNotTheAskersFault() throws IOException {
        Files.writeString(folder.resolve("shelf"), "a file");
        Desk.Answer answer = run("shelf", "add", "static spin vs triquetra");
        assertThat(answer.code()).isEqualTo(1);
        assertThat(answer.err()).contains("is a file");
    }

    @ParameterizedTest
    @CsvSource({"schema, urn:deferent:document:1", "schema --readings, urn:deferent:readings:1"})
    void theSchemasOfDocumentsAndOfReadingsArePublished(String asked, String id) {
        Desk.Answer answer = Desk.asked(("shelf " + asked).split(" "));
        assertThat(answer.code()).isZero();
        JsonNode schema = answer.json();
        assertThat(schema.get("$schema").stringValue())
                .isEqualTo("https://json-schema.org/draft/2020-12/schema");
        assertThat(schema.get("$id").stringValue()).isEqualTo(id);
    }

    @Test
    void anUnforeseenErrorIsOneLineUnlessTheTraceIsAskedFor() {
        StringWriter plain = new StringWriter();
        StringWriter traced = new StringWriter();
        Throwable unforeseen = new IllegalStateException("first\nsecond");
        assertThat(Deferent.failed(unforeseen, new PrintWriter(plain, true), false, false))
                .isEqualTo(1);
        assertThat(Deferent.failed(unforeseen, new PrintWriter(traced, true), true, false))
                .isEqualTo(1);
        assertThat(plain.toString().lines()).hasSize(1);
        assertThat(plain.toString()).contains("IllegalStateException: first").contains("--trace");
        assertThat(traced.toString()).contains("\tat deferent.app.DeferentTest");
    }

    @Test
    void helpAndVersionAreAnswers() {
        assertThat(good("--help").out()).contains("read").contains("shelf").contains("studio");
        assertThat(good("--version").out()).startsWith("deferent ");
        assertThat(good("read", "--help").out()).contains("--tether");
        assertThat(Desk.asked().code()).isZero();
    }

    @Test
    void textIsWrappedWithItsContinuationIndented() {
        assertThat(Paragraphs.wrapped("- ", "one two three four", 10))
                .containsExactly("- one two", "  three", "  four");
    }

    @Test
    void aCentimetreIsExactlyAHundredthOfAMetre() {
        assertThat(Quantity.length("57cm")).isEqualTo(0.57);
        assertThat(Quantity.length("57,5 cm")).isEqualTo(0.575);
        assertThat(Quantity.mass("120g")).isEqualTo(0.12);
        assertThat(Quantity.angle("90deg")).isEqualTo(Math.PI / 2);
        assertThat(Quantity.angle("0.25turn")).isEqualTo(Math.PI / 2);
        assertThat(Quantity.share("1/4")).isEqualTo(0.25);
        assertThat(Quantity.share("25%")).isEqualTo(0.25);
        assertThat(Quantity.length("−3cm")).isEqualTo(-0.03);
        assertThat(Quantity.length("0.5 tethers", OptionalDouble.of(0.6))).isEqualTo(0.3);
        assertThat(Quantity.length("2ft", OptionalDouble.of(0.6))).isEqualTo(0.6096);
    }
}
