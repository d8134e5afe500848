package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.app.Desk.Answer;
import deferent.record.PatternJson;
import deferent.record.Shelf;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A phrase is read without the shelf; what the shelf cannot give is told in one line. */
class BrokenShelfTest {
    @TempDir Path folder = Path.of("");

    /** A file stands where the folder should. */
    private void breakShelf() throws IOException {
        Files.writeString(folder.resolve("shelf"), "");
    }

    private Answer told(String... args) {
        Answer answer = new Desk(folder).run(args);
        assertThat(answer.code()).as(answer.err()).isZero();
        assertThat(answer.err().lines())
                .singleElement()
                .asString()
                .contains("The shelf's own names are not ");
        return answer;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "read isolation vs triquetra",
                "read isolation vs triquetra --json",
                "fit isolation vs triquetra",
                "words CAP",
                "photo isolation vs triquetra",
            })
    void aPhraseIsReadThoughTheShelfCannotBe(String line) throws IOException {
        breakShelf();
        assertThat(told(line.split(" ")).out()).isNotBlank();
    }

    @Test
    void aPhraseIsDrawnThoughTheShelfCannotBeRead() throws IOException {
        breakShelf();
        for (String ending : new String[] {"svg", "pdf", "json"}) {
            Path file = folder.resolve("drawn." + ending);
            told("draw", "isolation vs triquetra", "--out", file.toString());
            assertThat(file).isNotEmptyFile();
        }
    }

    @Test
    void twoPhrasesAreComparedThoughTheShelfCannotBeRead() throws IOException {
        breakShelf();
        told(
                "transitions",
                "extension vs extension",
                "extension vs static spin",
                "--tether",
                "40cm");
    }

    @Test
    void aWordThatNobodyKnowsIsStillAWrongPhrase() throws IOException {
        breakShelf();
        Answer answer = new Desk(folder).run("read", "lantern loop vs triquetra");
        assertThat(answer.code()).isEqualTo(2);
        assertThat(answer.err())
                .contains("The shelf's own names are not known: ")
                .contains("is a file")
                .contains("is no word of the trade known here");
    }

    @Test
    void onAnOverfullShelfAPhraseIsReadAndTheSaveIsRefused() throws IOException {
        Path shelf = Files.createDirectory(folder.resolve("shelf"));
        for (int i = 0; i <= PatternJson.MOST_DOCUMENTS; i++) {
            Files.writeString(shelf.resolve("p" + i + ".json"), "");
        }
        told("read", "isolation vs triquetra");
        Answer add = new Desk(folder).run("shelf", "add", "isolation vs triquetra");
        assertThat(add.code()).isEqualTo(2);
        assertThat(add.err()).contains("is full: it holds 5001 documents");
        assertThat(new Desk(folder).run("shelf", "list").code()).isZero();
    }

    @Test
    void anExportReplacesTheOldOneWholeAndSaysWhatIsNotInIt() throws IOException {
        Desk desk = new Desk(folder);
        desk.good("shelf", "add", "isolation vs triquetra");
        Files.writeString(folder.resolve("shelf/torn.json"), "{");
        Path out = Files.writeString(folder.resolve("backup.json"), "old");
        Files.setPosixFilePermissions(out, PosixFilePermissions.fromString("rw-r-----"));
        Object inode =
                Files.readAttributes(out, java.nio.file.attribute.BasicFileAttributes.class)
                        .fileKey();
        Answer export = desk.run("shelf", "export", "--out", out.toString());
        assertThat(export.code()).isZero();
        assertThat(export.err()).startsWith("Not in it: torn.json: line 1");
        assertThat(PatternJson.readBundle(Files.readString(out))).hasSize(1);
        assertThat(
                        Files.readAttributes(out, java.nio.file.attribute.BasicFileAttributes.class)
                                .fileKey())
                .as("another file, moved there")
                .isNotEqualTo(inode);
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(out)))
                .isEqualTo("rw-r-----");
    }

    @EnabledOnOs(OS.LINUX)
    @Test
    void anExportToADeviceIsRefused() {
        assertThat(new Desk(folder).run("shelf", "export", "--out", "/dev/full").err())
                .contains("is a device or a pipe");
    }

    @Test
    void whatARunThatWasCutShortLeftIsSweptAndTold() throws IOException {
        Desk desk = new Desk(folder);
        desk.good("shelf", "add", "isolation vs triquetra");
        // No process has so high a number: Linux stops at 4194304.
        String part = ".deferent-999999999-" + UUID.randomUUID() + ".part";
        Files.writeString(folder.resolve("shelf").resolve(part), "half");
        Files.writeString(folder.resolve("shelf/mine.part"), "mine");
        Answer list = desk.run("shelf", "list");
        assertThat(list.err().lines())
                .containsExactly(
                        "Swept from "
                                + folder.resolve("shelf")
                                + ": one unfinished file of a run that was cut short.");
        assertThat(folder.resolve("shelf").resolve(part)).doesNotExist();
        assertThat(list.out()).contains("mine.part: its name does not end in .json");
        desk.good("shelf", "list");

        Files.writeString(folder.resolve(part), "half");
        Answer draw = desk.run("draw", "isolation vs triquetra", "--out", folder + "/drawn.svg");
        assertThat(draw.err()).startsWith("Swept from " + folder + ": one unfinished file");
    }

    @Test
    void theListSaysInJsonToo() throws IOException {
        Desk desk = new Desk(folder);
        desk.good("shelf", "add", "isolation vs triquetra");
        Files.createDirectory(folder.resolve("shelf/weaves"));
        var json = desk.good("shelf", "list", "--json").json();
        assertThat(json.get("patterns").get(0).get("id").asString())
                .isEqualTo("isolation-vs-triquetra");
        assertThat(json.get("not_listed").get(0).get("why").asString()).isEqualTo("is a folder");
    }

    @Test
    void aDocumentWhosePhraseSaysOtherSizesIsToldOf() throws IOException {
        Desk desk = new Desk(folder);
        desk.good("shelf", "add", "isolation vs triquetra");
        Path file = folder.resolve("shelf/isolation-vs-triquetra.json");
        Files.writeString(
                file,
                Files.readString(file)
                        .replace(
                                "\"phrase\": \"isolation", "\"phrase\": \"isolation tether 50 cm"));
        Answer read = desk.run("read", file.toString());
        assertThat(read.code()).isZero();
        assertThat(read.err())
                .contains("left tether 50 cm in the phrase, 60 cm in the sizes")
                .contains("The sizes count");
        assertThat(desk.good("shelf", "list").text()).contains("left tether 50 cm in the phrase");
        // What options set, the kept phrase says.
        desk.good("shelf", "add", "extension vs triquetra", "--hand-radius", "45cm");
        assertThat(Shelf.at(folder.resolve("shelf")).find("extension vs triquetra").orElseThrow())
                .satisfies(
                        k ->
                                assertThat(
                                                ((deferent.record.PatternDocument) k.document())
                                                        .phrase()
                                                        .orElseThrow())
                                        .contains("45 cm"));
    }
}
