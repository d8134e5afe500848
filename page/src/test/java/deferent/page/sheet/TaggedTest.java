package deferent.page.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Trace;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.record.PatternDocument;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What is printed can be read by somebody who does not see it. */
class TaggedTest {
    private static final List<PatternDocument> TWO = Patterns.demo().subList(0, 2);

    @Test
    void anIndependentCheckerFindsNothingWrongWithCardsNorWithAStill() {
        assertThat(
                        Accessible.faults(
                                Printed.of(new Cards("Cards", TWO, Edition.USUAL)::write).bytes()))
                .isEmpty();
        Scene scene = Scene.of(Trace.of(Phrase.parse("isolation vs triquetra").pairing()));
        assertThat(Accessible.faults(Pdf.still(scene, Still.of(400, 300)))).isEmpty();
    }

    @Test
    void aPictureThatNobodyToldOfIsAFault() throws IOException {
        PatternDocument pattern = TWO.get(0);
        Leaf leaf =
                new Cards("Card", List.of(pattern), Edition.USUAL)
                        .leaves(p -> {}, () -> false)
                        .orElseThrow()
                        .get(0);
        Mark.Plate told =
                leaf.marks().stream()
                        .filter(Mark.Plate.class::isInstance)
                        .map(Mark.Plate.class::cast)
                        .findFirst()
                        .orElseThrow();
        Mark untold =
                new Mark.Plate(told.box(), told.scene(), told.still(), Optional.of(Tag.figure("")));
        Leaf bare =
                new Leaf(
                        leaf.size(),
                        leaf.margins(),
                        List.of(new Block("figure", told.box(), List.of(untold))),
                        leaf.bookmark());
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Press.print(List.of(bare), "Bare", out, page -> {}, () -> false);
        assertThat(Accessible.faults(out.toByteArray()))
                .anyMatch(fault -> fault.startsWith("7.3-1"));
    }
}
