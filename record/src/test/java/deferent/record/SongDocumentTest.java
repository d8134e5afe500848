package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.networknt.schema.InputFormat;
import deferent.motion.pairing.Refusal;
import deferent.motion.song.Beats;
import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SongDocumentTest {
    @TempDir Path folder;

    private static final SongDocument WALTZ =
            SongDocument.of(
                    "Snow waltz",
                    new SongSound("snow-waltz.wav", "0".repeat(64), 3.5),
                    new Beats(List.of(0.25, 0.875, 1.5, 2.125), 3, 1));

    @Test
    void aSongReadsAsAPersonWouldWriteIt() {
        String text = PatternJson.write(WALTZ);
        assertThat(text)
                .isEqualTo(
                        """
                        {
                          "format": 1,
                          "kind": "song",
                          "name": "Snow waltz",
                          "sound": {
                            "file": "snow-waltz.wav",
                            "sha256": "%s",
                            "seconds": 3.5
                          },
                          "beats_a_bar": 3,
                          "first_bar": 1,
                          "beats_s": [0.25, 0.875, 1.5, 2.125]
                        }
                        """
                                .formatted("0".repeat(64)));
        assertThat(PatternJson.read(text)).isEqualTo(WALTZ);
        assertThat(WALTZ.told()).isEqualTo("a song of 0:04 at 96 beats a minute");
    }

    @Property(tries = 150)
    void everySongReadsBackAsItWasAndIsValidAfterThePublishedSchema(Any any) {
        SongDocument song = any.from(AnySong::of);
        String text = PatternJson.write(song);
        assertThat(PatternJson.read(text)).isEqualTo(song);
        assertThat(DocumentProperties.SCHEMA.validate(text, InputFormat.JSON)).isEmpty();
        assertThat(PatternJson.readBundle(PatternJson.writeBundle(List.of(song))))
                .containsExactly(song);
    }

    @ParameterizedTest(name = "{1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"format\": 1|\"format\": 2|format",
                "\"seconds\": 3.5|\"seconds\": 0|sound.seconds",
                "\"seconds\": 3.5|\"seconds\": 7201|sound.seconds",
                "\"sha256\": \"0|\"sha256\": \"A|sound.sha256",
                "\"file\": \"snow-waltz.wav\"|\"file\": \"\"|sound.file",
                "\"beats_a_bar\": 3|\"beats_a_bar\": 17|beats_a_bar",
                "\"first_bar\": 1|\"first_bar\": -1|first_bar",
                "[0.25, 0.875, 1.5, 2.125]|[0.25]|beats_s",
                "0.25, |-0.25, |beats_s.0",
                "\"beats_s\"|\"beats\"|document",
            })
    void aWrongSongIsWrongForReaderAndSchema(String right, String wrong, String where) {
        String good = PatternJson.write(WALTZ);
        assertThat(good).contains(right);
        String text = good.replace(right, wrong);
        assertThatThrownBy(() -> PatternJson.read(text))
                .isInstanceOfSatisfying(
                        DocumentError.class,
                        e -> {
                            assertThat(e.line()).isPositive();
                            assertThat(e.where()).isEqualTo(where);
                        });
        assertThat(DocumentProperties.SCHEMA.validate(text, InputFormat.JSON)).isNotEmpty();
    }

    @Test
    void whatNoSchemaCanSayIsRefusedAllTheSame() {
        String good = PatternJson.write(WALTZ);
        assertThatThrownBy(
                        () ->
                                PatternJson.read(
                                        good.replace("\"first_bar\": 1", "\"first_bar\": 3")))
                .hasMessageContaining("first_bar");
        assertThatThrownBy(() -> PatternJson.read(good.replace("1.5, 2.125", "2.125, 1.5")))
                .hasMessageContaining("beats_s")
                .hasMessageContaining("after the one before");
        assertThatThrownBy(() -> PatternJson.read(good.replace("2.125", "3.75")))
                .hasMessageContaining("let each fall while the sound plays");
        assertThatThrownBy(
                        () ->
                                WALTZ.withMended(
                                        Beats.even(0, 60_000, SongDocument.MOST_BEATS + 1, 4)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("40000");
    }

    @Test
    void aSongStandsOnTheShelfWithItsTempoAndComesAlongInABundle() {
        Shelf shelf = Shelf.at(folder.resolve("shelf"));
        Kept kept = shelf.saveNew(WALTZ.withMended(WALTZ.beats()));
        assertThat(shelf.find("snow waltz")).contains(kept);
        assertThat(shelf.look().notListed()).isEmpty();
        assertThat(shelf.look().patterns()).isEmpty();
        var song = ShelfJson.tree(shelf).at("/songs/0");
        assertThat(song.at("/id").asString("")).isEqualTo("snow-waltz");
        assertThat(song.at("/beats_per_min").asDouble(0)).isEqualTo(96);
        assertThat(song.at("/seconds").asDouble(0)).isEqualTo(3.5);
        // It goes out without its folders, and comes back as the one that is there.
        SongSound far = new SongSound("/home/far/away.ogg", "1".repeat(64), 3.5);
        shelf.saveNew(SongDocument.of("Far", far, WALTZ.beats()));
        assertThat(shelf.exportAll()).contains("\"away.ogg\"").doesNotContain("/home/far");
        assertThat(shelf.importAll(shelf.exportAll())).hasSize(2);
        assertThat(shelf.list()).hasSize(2);
        Shelf other = Shelf.at(folder.resolve("other"));
        assertThat(other.importAll(shelf.exportAll()))
                .extracting(Kept::document)
                .contains(kept.document());
    }

    /** A song as long as is kept fits in a file, however its beats fall. */
    @Test
    void theLongestSongIsKept() {
        List<Double> times = new java.util.ArrayList<>();
        for (int i = 0; i < SongDocument.MOST_BEATS; i++) {
            times.add((i + 1) * 0.17 + 1 / 3.0);
        }
        SongDocument song =
                SongDocument.of(
                        "All night",
                        new SongSound("night.flac", "f".repeat(64), SongSound.LONGEST),
                        new Beats(times, 4, 0));
        Shelf shelf = Shelf.at(folder);
        assertThat(shelf.saveNew(song).document()).isEqualTo(song);
        assertThat(shelf.look().kept()).hasSize(1);
    }

    @Test
    void theSoundIsFoundWhereItLiesAndOneSentenceSaysWhereItIsNot() throws IOException {
        Path file = Files.writeString(folder.resolve("waltz.wav"), "not yet sound");
        SongSound sound = SongSound.of(file, 3.5);
        Path elsewhere = folder.resolve("elsewhere");
        assertThat(sound.find(elsewhere).file()).contains(file);
        assertThat(sound.find(elsewhere).told()).isEmpty();

        Files.writeString(file, "another sound");
        assertThat(sound.find(elsewhere).file()).isEmpty();
        assertThat(sound.find(elsewhere).told().orElseThrow())
                .contains("\"waltz.wav\" has changed since its beats were kept")
                .contains("beats still count")
                .doesNotContain(folder.toString());

        Files.delete(file);
        assertThat(sound.find(elsewhere).told().orElseThrow()).contains("is not where it was");
    }

    @Test
    void aSoundKnownByItsNameAloneIsLookedForOnTheShelf() throws IOException {
        Path file = Files.writeString(folder.resolve("waltz.wav"), "sound");
        SongSound named = new SongSound("waltz.wav", SongSound.of(file, 1).sha256(), 1);
        Path shelf = folder.resolve("shelf");
        assertThat(named.find(shelf).file()).isEmpty();
        Path beside = Files.createDirectories(shelf.resolve(SongSound.FOLDER));
        Files.move(file, beside.resolve("waltz.wav"));
        assertThat(named.find(shelf).file()).contains(beside.resolve("waltz.wav"));
        assertThat(new SongSound("C:\\Music\\waltz.wav", named.sha256(), 1).name())
                .isEqualTo("waltz.wav");
    }
}
