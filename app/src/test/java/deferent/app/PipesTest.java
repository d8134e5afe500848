package deferent.app;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import deferent.record.DemoShelf;
import deferent.record.PatternJson;
import deferent.sound.WaveFile;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Standard input and output as files, and what happens when they end too soon. */
class PipesTest {
    private static final String PAIRING = "static spin vs triquetra";
    private static final String RING = PatternJson.write(DemoShelf.documents().get(0));

    @TempDir Path folder;
    private Desk desk = new Desk(Path.of("."));

    @BeforeEach
    void ask() {
        desk = new Desk(folder);
    }

    private String[] shelved(String... words) {
        String[] all = Arrays.copyOf(words, words.length + 2);
        all[words.length] = "--shelf";
        all[words.length + 1] = folder.resolve("shelf").toString();
        return all;
    }

    /** Bytes out, whatever they are; the error stream must hold what is told. */
    private record Sent(int code, byte[] out, String err) {
        String begins() {
            return new String(out, 0, Math.min(out.length, 16), ISO_8859_1);
        }
    }

    private Sent sent(byte[] in, String... words) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int code = Deferent.execute(new ByteArrayInputStream(in), out, err, shelved(words));
        return new Sent(code, out.toByteArray(), err.toString(UTF_8));
    }

    @Test
    void aDocumentComesFromStandardInput() {
        assertThat(Desk.given(RING, shelved("read", "-")).out())
                .startsWith("Ring under the eaves")
                .contains("It links");
        assertThat(Desk.given(RING, shelved("shelf", "import", "-")).out())
                .contains("On the shelf: ring-under-the-eaves");
        assertThat(desk.good("read", "Ring under the eaves").out()).contains("It links");
        Desk.Answer wrong = Desk.given("{", shelved("read", "-"));
        assertThat(wrong.code()).isEqualTo(Exit.WRONG_WORDS.code());
        assertThat(wrong.err()).contains("is not JSON");
    }

    @Test
    void aSetComesFromStandardInput() {
        String set =
                """
                {"format": 1, "kind": "set", "name": "Twice", "steps": [
                  {"counts": 4, "pattern": %s}]}
                """
                        .formatted(RING);
        assertThat(Desk.given(set, shelved("set", "-")).out()).contains("1. Ring under the eaves");
    }

    @ParameterizedTest
    @CsvSource({"svg,<svg", "png,\u0089PNG", "csv,time_s", "glb,glTF"})
    void aPictureAPrintATableAndAClipGoToStandardOutput(String kind, String begins) {
        Sent answer =
                kind.equals("png")
                        ? sent(
                                new byte[0],
                                "draw",
                                PAIRING,
                                "--size",
                                "96",
                                "--out",
                                "-",
                                "--as",
                                kind)
                        : sent(new byte[0], "draw", PAIRING, "--out", "-", "--as", kind);
        assertThat(answer.code()).as(answer.err()).isZero();
        assertThat(answer.begins()).startsWith(begins);
        assertThat(answer.err()).doesNotContain("Drawn").doesNotContain("answer.");
    }

    @Test
    void aCautionIsToldThoughQuietIsAskedForAndTheFileIsTheAnswer() {
        Sent answer =
                sent(
                        new byte[0],
                        "draw",
                        PAIRING + ", tempo 120",
                        "--size",
                        "96",
                        "--out",
                        "-",
                        "--as",
                        "zip",
                        "--quiet");
        assertThat(answer.begins()).startsWith("PK");
        assertThat(answer.err()).startsWith("Caution: ");
    }

    @Test
    void aSheetOfASetAndDaysOfAPlanGoThereToo() {
        Sent plan = sent(new byte[0], "learn", PAIRING, "--out", "-", "--as", "svg");
        assertThat(plan.begins()).startsWith("<svg");
        assertThat(plan.err()).contains("At 20 minutes a day");
        Sent sheet =
                sent(
                        new byte[0],
                        "set",
                        PAIRING + ", 4",
                        PAIRING + ", 8",
                        "--out",
                        "-",
                        "--as",
                        "csv",
                        "--quiet");
        assertThat(new String(sheet.out(), ISO_8859_1)).contains("static spin vs triquetra");
        assertThat(sheet.err()).isEmpty();
    }

    @Test
    void aSongComesFromStandardInput() {
        float[] clicks = new float[11_025 * 12];
        for (int at = 0; at < clicks.length; at += 11_025 / 2) {
            for (int i = 0; i < 200 && at + i < clicks.length; i++) {
                clicks[at + i] = (float) (0.8 * Math.sin(i * 0.7) * Math.exp(-i / 40.0));
            }
        }
        byte[] wave = WaveFile.bytes(clicks, 11_025);
        Sent heard = sent(wave, "song", "-");
        assertThat(heard.code()).as(heard.err()).isZero();
        assertThat(new String(heard.out(), ISO_8859_1))
                .startsWith("standard input, 0:12")
                .contains("120 beats a minute");
        assertThat(sent(wave, "song", "-", "--keep", "Clicks").err())
                .contains("--keep of standard input")
                .hasLineCount(1);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "draw static@spin@vs@triquetra --out -|say it with --as",
                "draw static@spin@vs@triquetra --out - --as svg --json|give one of them",
                "draw static@spin@vs@triquetra --out a.svg --as png|let the name end in .png",
                "draw static@spin@vs@triquetra --out - --as doc|nothing here writes",
                "learn static@spin@vs@triquetra --out - --out - --as pdf|is said twice",
                "lesson static@spin@vs@triquetra --out -|a lesson is many",
                "song demo --out -|give a folder",
                "film - --keep|--keep of standard input",
            })
    void whatCannotBeIsRefusedInOneSentence(String line, String told) {
        String[] words =
                Arrays.stream(line.split(" "))
                        .map(word -> word.replace('@', ' '))
                        .toArray(String[]::new);
        Desk.Answer answer =
                line.startsWith("song demo") ? Desk.asked(words) : Desk.asked(shelved(words));
        assertThat(answer.code()).isEqualTo(Exit.WRONG_WORDS.code());
        assertThat(answer.err()).contains(told).hasLineCount(1);
        assertThat(answer.out()).isEmpty();
    }

    /** A stream that takes so many bytes, and then says what a system says. */
    private static OutputStream full(int room, String why) {
        return new OutputStream() {
            private int left = room;

            @Override
            public void write(int one) throws IOException {
                if (left-- <= 0) {
                    throw new IOException(why);
                }
            }
        };
    }

    private static Sent into(OutputStream out, String... words) {
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int code = Deferent.execute(InputStream.nullInputStream(), out, err, words);
        return new Sent(code, new byte[0], err.toString(UTF_8));
    }

    @Test
    void aFullDiskIsToldAndAClosedPipeEndsQuietly() {
        for (String line : List.of("words", "--help", "schema fit", "letgo --angle 60deg --csv")) {
            Sent full = into(full(100, "No space left on device"), line.split(" "));
            assertThat(full.code()).as(line).isEqualTo(Exit.FAILED.code());
            assertThat(full.err())
                    .contains("the answer cannot be written: No space left on device")
                    .hasLineCount(1);
            Sent closed = into(full(100, "Broken pipe"), line.split(" "));
            assertThat(closed.code()).as(line).isEqualTo(Exit.CLOSED.code());
            assertThat(closed.err()).isEmpty();
        }
        Sent json = into(full(9, "No space left on device"), "words", "--json");
        assertThat(CommandAnswerTest.against(Schemas.ASIDE, json.err())).isEmpty();
        Sent drawn =
                into(
                        full(9, "No space left on device"),
                        shelved("draw", PAIRING, "--out", "-", "--as", "svg", "--quiet"));
        assertThat(drawn.code()).isEqualTo(Exit.FAILED.code());
        assertThat(drawn.err()).contains("No space left on device").hasLineCount(1);
    }

    @Test
    void theSystemsOwnFullDeviceIsOne() throws IOException {
        Path device = Path.of("/dev/full");
        Assumptions.assumeTrue(Files.exists(device));
        try (OutputStream out = new FileOutputStream(device.toFile())) {
            Sent answer = into(out, "words", "CAP");
            assertThat(answer.code()).isEqualTo(Exit.FAILED.code());
            assertThat(answer.err()).contains("the answer cannot be written").hasLineCount(1);
        }
    }
}
