package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Practice kept beside the shelf and compared: the film is the invented one that ships. */
class PracticeCommandTest {
    private static final Path CLIP = Path.of("../docs/practice.mp4");
    private static final String PHRASE = "static spin vs triquetra";

    @TempDir private Path folder;

    private Desk.Answer run(String... args) {
        return new Desk(folder).run(args);
    }

    private Path record() throws IOException {
        try (var files = Files.list(folder.resolve("shelf/practice"))) {
            return files.filter(f -> f.toString().endsWith(".json")).findFirst().orElseThrow();
        }
    }

    @Test
    void aFilmIsKeptComparedAndReplacedOnlyWhenTold() throws IOException {
        Path film = Files.copy(CLIP, folder.resolve("tonight.mp4"));
        Desk.Answer kept = run("film", film.toString(), PHRASE, "--keep", "Behind the barn");
        assertThat(kept.err()).isEmpty();
        assertThat(kept.out())
                .contains("Kept: ", "-behind-the-barn, practised ", " as its file says.")
                .contains("Compare it: deferent practice static spin vs triquetra");
        String text = Files.readString(record());
        // Nobody learns from a record where on this machine anything lies.
        assertThat(text)
                .contains("\"name\": \"tonight.mp4\"", "\"key\": \"size\"", "\"key\": \"link\"")
                .doesNotContain(folder.toString());
        assertThat(folder.resolve("shelf/practice/films")).doesNotExist();

        Desk.Answer again = run("film", film.toString(), PHRASE, "--keep", "Once more");
        assertThat(again.code()).isEqualTo(Exit.WRONG_WORDS.code());
        assertThat(again.err())
                .contains("this film: is kept already, as ", "-behind-the-barn", "--replace")
                .hasLineCount(1);
        assertThat(Files.readString(record())).isEqualTo(text);
        Desk.Answer replaced =
                run(
                        "film",
                        film.toString(),
                        PHRASE,
                        "--replace",
                        "--keep-film",
                        "--keep",
                        "Once more");
        assertThat(replaced.out()).contains("Kept in place of the one before: ");
        assertThat(folder.resolve("shelf/practice/films")).isDirectoryContaining("glob:**.mp4");

        assertThat(run("practice").out())
                .contains("Once more: static spin vs triquetra. The right");
        assertThat(run("practice", "once more").out()).contains("kept once");
        Desk.Answer other = run("practice", "isolation vs isolation");
        assertThat(other.err())
                .contains("practice of isolation", "was never kept", "kept is " + PHRASE)
                .hasLineCount(1);
    }

    @Test
    void theDateIsTheFilmsOwnWhereItSaysOne() throws IOException {
        byte[] bytes = Files.readAllBytes(CLIP);
        int at = new String(bytes, StandardCharsets.ISO_8859_1).indexOf("mvhd");
        // Seconds since 1904, behind the box's name, version and flags (ISO/IEC 14496-12, 8.2.2).
        ByteBuffer.wrap(bytes).putInt(at + 8, (int) (2_082_844_800L + 1_795_000_000L));
        Path film = Files.write(folder.resolve("dated.mp4"), bytes);
        Desk.Answer kept = run("film", film.toString(), PHRASE, "--keep");
        assertThat(kept.out()).containsPattern("practised 2026-11-1[89] as the film says\\.");
        assertThat(Files.readString(record())).contains("\"dated_by\": \"film\"", "2026-11-18T");
    }

    @Test
    void anEmptyLogSaysHowToFillIt() {
        assertThat(run("practice").out())
                .contains("No practice is kept beside the shelf", "--keep", "practice demo");
        assertThat(run("practice", PHRASE).err())
                .contains("was never kept", "nothing is kept yet")
                .hasLineCount(1);
        assertThat(run("practice", "--out", "weeks.svg").err()).contains("say a phrase");
    }

    @Test
    void theDemosWeeksComeCloser() throws IOException {
        assertThat(run("practice", "demo").out())
                .hasLineCount(6)
                .contains("Demo log: 19 new entries in the log.");
        Path picture = folder.resolve("weeks.svg");
        Desk.Answer weeks = run("practice", PHRASE, "--out", picture.toString());
        assertThat(weeks.err()).isEmpty();
        assertThat(weeks.out())
                .contains("static spin vs triquetra, kept 5 times", "Over 4 weeks the ")
                .containsPattern("right circle came from 1[123] cm too small to [234] cm\\.")
                .containsPattern("2026-10-2[56]  1[123] ± \\S+ cm too small");
        assertThat(Files.readString(picture)).startsWith("<svg");
        assertThat(run("practice", PHRASE, "--json").out()).contains("\"kinds\"", "\"told\"");
        assertThat(run("practice", PHRASE, "--out", "weeks.doc").err()).contains(".svg, .png");
    }

    @Test
    void aRecordThatCannotBeReadIsToldAndLeft() throws IOException {
        run("practice", "demo");
        Path broken = folder.resolve("shelf/practice/broken.json");
        Files.writeString(broken, "{");
        Path newer = folder.resolve("shelf/practice/newer.json");
        Files.writeString(
                newer, Files.readString(record()).replace("\"format\": 1", "\"format\": 9"));
        assertThat(run("practice").out())
                .contains("Cannot be read, and left as it is:", "broken.json: ", "newer.json: ")
                .containsPattern("newer\\s+than\\s+this\\s+deferent");
        assertThat(broken).hasContent("{");
    }
}
