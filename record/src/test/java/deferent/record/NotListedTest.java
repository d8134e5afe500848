package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every file in the shelf's folder is on the shelf, or is named with what keeps it off. */
class NotListedTest {
    private static final String RING = PatternJson.write(PatternJsonTest.linked());

    @TempDir Path folder = Path.of("");

    private String why(String file) {
        return Shelf.at(folder).look().notListed().stream()
                .filter(n -> n.file().equals(file))
                .map(NotListed::why)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void whatCannotBeADocumentIsNamedWithItsReason() throws IOException {
        Path outside = Files.writeString(folder.resolve("outside.txt"), RING);
        Files.createSymbolicLink(folder.resolve("link.json"), folder.resolve("../elsewhere.json"));
        Files.createSymbolicLink(folder.resolve("lost.json"), folder.resolve("nowhere"));
        Files.createDirectory(folder.resolve("weaves"));
        Files.createDirectory(folder.resolve("folder.json"));
        Files.writeString(folder.resolve(".hidden.json"), RING);
        Files.writeString(folder.resolve("UPPER.JSON"), RING);
        Files.writeString(folder.resolve("saved.json.tmp"), RING);
        Files.writeString(folder.resolve("what? when.json"), RING);
        Files.writeString(folder.resolve("two\nlines.json"), RING);
        Files.writeString(folder.resolve("x".repeat(101) + ".json"), RING);
        assertThat(why(outside.getFileName().toString()))
                .isEqualTo("its name does not end in .json");
        assertThat(why("link.json")).isEqualTo("is a link out of the folder");
        assertThat(why("lost.json")).isEqualTo("is a link out of the folder");
        assertThat(why("weaves")).isEqualTo("is a folder");
        assertThat(why("folder.json")).isEqualTo("is a folder");
        assertThat(why(".hidden.json")).isEqualTo("its name begins with a dot");
        assertThat(why("UPPER.JSON")).contains("does not end in .json");
        assertThat(why("saved.json.tmp")).contains("does not end in .json");
        assertThat(why("what? when.json")).contains("a letter that not every system allows");
        assertThat(why("two\uFFFDlines.json")).contains("a letter that not every system allows");
        assertThat(why("x".repeat(101) + ".json")).contains("longer than 100 letters");
        assertThat(Shelf.at(folder).list()).isEmpty();
    }

    @Test
    void whatHoldsNoDocumentIsNamedWithItsReason() throws IOException {
        Files.write(
                folder.resolve("latin.json"),
                RING.replace("Ring", "Rïng").getBytes(StandardCharsets.ISO_8859_1));
        Files.writeString(folder.resolve("large.json"), " ".repeat(4_000_001));
        Files.writeString(folder.resolve("long.json"), " ".repeat(1_000_001));
        Files.writeString(folder.resolve("torn.json"), "{\"format\": 1,");
        Files.writeString(folder.resolve("deep.json"), "[".repeat(100_000));
        Files.writeString(folder.resolve("empty.json"), "");
        Files.writeString(
                folder.resolve("newer.json"), RING.replace("\"format\": 1", "\"format\": 2"));
        assertThat(why("latin.json")).contains("is not UTF-8 text");
        assertThat(why("large.json")).contains("is 4000001 bytes long");
        assertThat(why("long.json")).contains("has 1000001 characters");
        assertThat(why("torn.json")).startsWith("line 1, column ").contains("is not JSON");
        assertThat(why("deep.json")).contains("is not JSON");
        assertThat(why("empty.json")).contains("is empty");
        assertThat(why("newer.json")).contains("newer than this deferent");
        assertThat(ShelfJson.write(Shelf.at(folder)))
                .contains("\"not_listed\": [")
                .contains("{\"file\": \"latin.json\", \"why\": \"document: is not UTF-8 text;");
    }

    @Test
    void namesWithAccentsAndPicturesAreListed() throws IOException {
        Files.writeString(folder.resolve("été.json"), RING);
        Files.writeString(folder.resolve("🔥.json"), RING);
        Files.writeString(folder.resolve("inside.json"), RING);
        Files.createSymbolicLink(folder.resolve("second.json"), folder.resolve("inside.json"));
        Shelf.Listing listing = Shelf.at(folder).look();
        assertThat(listing.kept())
                .extracting(Kept::id)
                .containsExactlyInAnyOrder("été", "🔥", "inside", "second");
        assertThat(listing.notListed()).isEmpty();
        assertThat(Shelf.at(folder).load("été").document().name())
                .isEqualTo("Ring under the eaves");
    }

    @Test
    void aFolderThatIsALinkIsAShelf() throws IOException {
        Path shelf = Files.createDirectory(folder.resolve("shelf"));
        Path link = Files.createSymbolicLink(folder.resolve("link"), shelf);
        Kept kept = Shelf.at(link).saveNew(PatternJsonTest.linked());
        assertThat(shelf.resolve(kept.id() + ".json")).exists();
        assertThat(Shelf.at(link).look().kept()).containsExactly(kept);
        assertThat(Shelf.at(link).look().notListed()).isEmpty();
    }

    @Test
    void ownWordsOfAShelfThatCannotBeReadAreNoneAndSaySo() throws IOException {
        Path file = Files.writeString(folder.resolve("file"), "");
        OwnWords words = Shelf.at(file).words();
        assertThat(words.lexicon().motions()).isEmpty();
        assertThat(words.trouble().orElseThrow())
                .isEqualTo("The shelf's own names are not known: " + file + " is a file.");
        assertThatThrownBy(() -> Shelf.at(file).look()).isInstanceOf(ShelfError.class);
        assertThat(Shelf.at(folder.resolve("none")).words().trouble()).isEmpty();
    }
}
