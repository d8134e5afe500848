package deferent.page.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import deferent.record.PatternDocument;
import deferent.record.SetPlaces;
import deferent.record.SetReading;
import deferent.record.SetStep;
import deferent.record.Shelf;
import deferent.search.set.PairBook;
import deferent.search.transition.Grade;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SetSheetTest {
    /** The same pattern again and again: nothing has to be looked for between. */
    private static final PatternDocument RINGS =
            PatternDocument.of(
                    "Rings", Phrase.parse("static spin vs static spin").pairing(), Performer.USUAL);

    @TempDir Path folder;

    private SetReading set(int steps) {
        List<SetStep> all = new ArrayList<>();
        for (int i = 0; i < steps; i++) {
            all.add(SetStep.of(RINGS, 8));
        }
        all.add(new SetStep(new SetStep.OfShelf("gone", "Lost lanterns"), 8));
        return SetReading.of(
                        "Evening",
                        SetPlaces.on(Shelf.at(folder).look()).of(all),
                        new PairBook(Grade.USUAL, Performer.USUAL, Kit.USUAL),
                        false,
                        p -> {},
                        () -> false)
                .orElseThrow();
    }

    private static List<Leaf> leaves(SetReading set) {
        return new SetSheet(set, Edition.USUAL).leaves(p -> {}, () -> false).orElseThrow();
    }

    private static String words(Leaf leaf) {
        return leaf.marks().stream()
                .filter(Mark.Text.class::isInstance)
                .map(mark -> ((Mark.Text) mark).words())
                .collect(Collectors.joining(" "));
    }

    @Test
    void aShortSetFitsOnePageInOrderWithItsCounts() {
        List<Leaf> leaves = leaves(set(3));
        assertThat(leaves).hasSize(1);
        assertThat(words(leaves.get(0)))
                .contains("Evening")
                .containsSubsequence("1.", "2.", "3.", "4.", "Lost lanterns")
                .contains("8 counts", "gone from the shelf", "no longer on the shelf")
                .contains("\"Rings\" goes on.");
    }

    @Test
    void aLongSetGoesOnInASecondColumnAndOverleafAndNothingOverlaps() {
        List<Leaf> leaves = leaves(set(60));
        assertThat(leaves.size()).isBetween(2, 6);
        int steps = 0;
        for (Leaf leaf : leaves) {
            Laid.check(leaf);
            steps +=
                    (int)
                            leaf.blocks().stream()
                                    .filter(block -> block.name().startsWith("step"))
                                    .count();
        }
        assertThat(steps).isEqualTo(61);
    }

    @Test
    void aStoppedSheetIsNone() {
        assertThat(new SetSheet(set(3), Edition.USUAL).leaves(p -> {}, () -> true)).isEmpty();
    }
}
