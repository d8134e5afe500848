package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assumptions.assumeThat;

import deferent.motion.pairing.Drawn;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Turns;
import deferent.motion.shared.Side;
import deferent.record.landing.FullDisk;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * A shelf, a bundle or a disk with no more room loses nothing and stays readable. The limits are
 * the true ones in either form; with {@code -Ddeferent.deep=true} every document of a full shelf is
 * a whole one and a full bundle is of the largest there are, which takes a minute to read.
 */
class FullShelfTest {
    private static final boolean DEEP = Boolean.getBoolean("deferent.deep");

    /** How many of a full shelf's documents are whole, the first and the last by name. */
    private static final int WHOLE = DEEP ? PatternJson.MOST_DOCUMENTS : 40;

    private static final PatternDocument RING = PatternJsonTest.linked();

    @TempDir Path folder = Path.of("");

    private Shelf filled(int documents) throws IOException {
        String text = PatternJson.write(RING);
        for (int i = 0; i < documents; i++) {
            boolean whole = i < WHOLE / 2 || i >= PatternJson.MOST_DOCUMENTS - WHOLE / 2;
            Files.writeString(folder.resolve(String.format("p-%05d.json", i)), whole ? text : "");
        }
        return Shelf.at(folder);
    }

    @Test
    void aFullShelfRefusesOneMoreAndStaysReadable() throws IOException {
        Shelf shelf = filled(PatternJson.MOST_DOCUMENTS - 1);
        Kept last = shelf.saveNew(RING.withName("the last"));
        assertThatThrownBy(() -> shelf.saveNew(RING.withName("one more")))
                .isInstanceOfSatisfying(
                        ShelfError.class,
                        full -> assertThat(full.kind()).isEqualTo(ShelfError.Kind.SIZE))
                .hasMessageContaining("is full: it holds 5000 documents")
                .hasMessageContaining("remove some, or keep another shelf");
        assertThatThrownBy(() -> shelf.saveNew("one-more", RING)).hasMessageContaining("is full");
        assertThatThrownBy(() -> shelf.putAll(List.of(RING.withName("one more"))))
                .hasMessageContaining("is full");
        assertThat(shelf.look().entries()).hasSize(PatternJson.MOST_DOCUMENTS);
        assertThat(shelf.look().kept()).hasSize(WHOLE).contains(last);
        // What stands there may still be changed, imported again, and removed to make room.
        Kept changed = shelf.save(last.id(), RING.withName("the last, changed"), last.revision());
        assertThat(shelf.putAll(List.of(RING, changed.document()))).contains(changed);
        shelf.remove(changed.id(), changed.revision());
        assertThat(shelf.saveNew(RING.withName("one more")).id()).isEqualTo("one-more");
    }

    @Test
    void aFolderOfMoreThanAShelfHoldsIsStillReadAndSaysWhatIsLeft() throws IOException {
        Shelf shelf = filled(PatternJson.MOST_DOCUMENTS + 2);
        Shelf.Listing listing = shelf.look();
        assertThat(listing.entries()).hasSize(PatternJson.MOST_DOCUMENTS);
        assertThat(listing.kept()).hasSize(WHOLE);
        assertThat(listing.notListed())
                .hasSize(1 + PatternJson.MOST_DOCUMENTS - WHOLE)
                .contains(
                        new NotListed(
                                "p-05000.json",
                                "and every file after it, 2 in all, are beyond the 5000 documents"
                                        + " that a shelf lists"));
        assertThat(shelf.words().trouble().orElseThrow())
                .contains("2 documents more than the 5000");
        assertThat(shelf.load("p-05001").document()).isEqualTo(RING);
        assertThat(PatternJson.readBundle(shelf.exportAll())).hasSize(WHOLE);
    }

    /** Every bit of its numbers counts, so that they are as long as numbers get. */
    private static PatternDocument largest(int seed) {
        Random random = new Random(seed);
        List<Drawn.Cubic> pieces = new ArrayList<>();
        for (int i = 0; i < 400; i++) {
            double[] n = random.doubles(8, 1e-4, 1e-3).toArray();
            pieces.add(
                    new Drawn.Cubic(
                            -n[0],
                            -n[1],
                            -n[2],
                            -n[3],
                            -n[4],
                            -n[5],
                            -n[6],
                            i == 399 ? -n[1] : -n[7]));
        }
        pieces = joined(pieces);
        Motion motion = new Motion(new Drawn(pieces), new Turns(1, 0.1234567890123));
        PatternDocument document = RING.withName("x".repeat(120)).withNote("\n".repeat(4000));
        for (Side side : Side.values()) {
            Part part = document.pairing().part(side);
            document =
                    document.withPairing(
                            document.pairing()
                                    .with(
                                            side,
                                            new Part(
                                                    motion,
                                                    part.tether(),
                                                    part.place(),
                                                    part.cycles())));
        }
        StringBuilder list = new StringBuilder("[1");
        while (list.length() < Extras.MOST - 100) {
            list.append(", ").append(1);
        }
        return document.withExtras(new Extras(Map.of("/x_other", list.append(']').toString())));
    }

    /** Not the largest, but soon read for its length: most of it is two texts. */
    private static PatternDocument bulky() {
        return RING.withNote("\n".repeat(4000))
                .withExtras(
                        new Extras(Map.of("/x_other", '"' + "x".repeat(Extras.MOST - 100) + '"')));
    }

    // Each piece begins where the one before it ends.
    private static List<Drawn.Cubic> joined(List<Drawn.Cubic> pieces) {
        List<Drawn.Cubic> chain = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            Drawn.Cubic c = pieces.get(i);
            Drawn.Cubic from = pieces.get(Math.floorMod(i - 1, pieces.size()));
            chain.add(
                    new Drawn.Cubic(
                            from.u3(), from.v3(), c.u1(), c.v1(), c.u2(), c.v2(), c.u3(), c.v3()));
        }
        return chain;
    }

    @Test
    void theLargestDocumentIsSavedAndReadAgain() {
        PatternDocument largest = largest(1);
        assertThat(PatternJson.write(largest).length())
                .isBetween(300_000, PatternJson.MOST_CHARACTERS);
        Kept kept = Shelf.at(folder).saveNew(largest);
        assertThat(Shelf.at(folder).load(kept.id()).document()).isEqualTo(largest);
    }

    @Test
    void anExportOfTheMostPatternsImports() {
        List<Document> most = new ArrayList<>();
        for (int i = 0; i < PatternJson.MOST_DOCUMENTS; i++) {
            most.add(RING.withName("pattern " + i).withNote("n".repeat(DEEP ? 4000 : 40)));
        }
        assertThat(PatternJson.readBundle(PatternJson.writeBundle(most))).isEqualTo(most);
        most.add(RING);
        assertThatThrownBy(() -> PatternJson.writeBundle(most))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("would hold 5001 documents");
    }

    @Test
    void anExportOfLargestDocumentsImportsOrIsRefused() {
        PatternDocument largest = DEEP ? largest(2) : bulky();
        int each = PatternJson.writeBundle(List.of(largest)).length();
        int fit = PatternJson.MOST_BUNDLE_CHARACTERS / each;
        List<PatternDocument> most = Collections.nCopies(fit, largest);
        String bundle = PatternJson.writeBundle(most);
        assertThat(bundle.length()).isGreaterThan(PatternJson.MOST_BUNDLE_CHARACTERS / 10 * 9);
        assertThat(PatternJson.readBundle(bundle)).hasSize(fit).allMatch(largest::equals);
        assertThatThrownBy(
                        () ->
                                PatternJson.writeBundle(
                                        Collections.nCopies(fit + 2 + fit / 100, largest)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("name some of them, then the others");
    }

    @Test
    void anExportOfAnEmptyShelfImports() {
        assertThat(PatternJson.readBundle(Shelf.at(folder).exportAll())).isEmpty();
    }

    /** 20000° is an angle that a pairing may have had, and no document holds. */
    @Test
    void whatCouldNotBeReadAgainIsNotSaved() {
        PatternDocument tooDeep =
                RING.withExtras(
                        new Extras(Map.of("/x_deep", "[".repeat(17) + "1" + "]".repeat(17))));
        assertThatThrownBy(() -> Shelf.at(folder).saveNew(tooDeep))
                .isInstanceOf(DocumentError.class)
                .hasMessageContaining("nested deeper than 16");
        assertThat(Shelf.at(folder).look().kept()).isEmpty();
    }

    @Test
    void aSaveOnAFullDiskLeavesTheOldFileAndTheShelfReadable() throws IOException {
        Optional<FullDisk> disk = FullDisk.of(folder.resolve("small"), 64);
        assumeThat(disk).as("only the superuser mounts a small disk").isPresent();
        try (FullDisk full = disk.get()) {
            Shelf shelf = Shelf.at(full.folder());
            Kept kept = shelf.saveNew(RING);
            full.fill();
            assertThatThrownBy(
                            () ->
                                    shelf.save(
                                            kept.id(),
                                            RING.withNote("n".repeat(4000)),
                                            kept.revision()))
                    .isInstanceOf(ShelfError.class)
                    .hasMessageContaining("No space left on device");
            assertThatThrownBy(() -> shelf.saveNew(RING.withNote("n".repeat(4000))))
                    .isInstanceOf(ShelfError.class);
            assertThat(shelf.look().kept()).containsExactly(kept);
            assertThat(full.folder().toFile().list())
                    .containsExactlyInAnyOrder(".lock", "ballast", kept.id() + ".json");
        }
    }

    /** A device of Linux that has no room for anything: man 4 full. */
    @EnabledOnOs(OS.LINUX)
    @Test
    void anImportThatIsCutShortSaysHowFarItCame() {
        int[] files = {0};
        Shelf shelf =
                Shelf.at(
                        folder,
                        file ->
                                ++files[0] <= 2
                                        ? FileChannel.open(
                                                file,
                                                StandardOpenOption.CREATE_NEW,
                                                StandardOpenOption.WRITE)
                                        : FileChannel.open(
                                                Path.of("/dev/full"), StandardOpenOption.WRITE));
        List<PatternDocument> three =
                List.of(RING.withName("one"), RING.withName("two"), RING.withName("three"));
        assertThatThrownBy(() -> shelf.putAll(three))
                .hasMessageContaining("2 of 3 documents are on the shelf")
                .hasMessageContaining("importing them again adds only the rest");
        assertThat(Shelf.at(folder).putAll(three)).hasSize(3);
        assertThat(Shelf.at(folder).look().kept()).hasSize(3);
    }
}
