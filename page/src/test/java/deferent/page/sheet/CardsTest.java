package deferent.page.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.record.PatternDocument;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Cards to cut. */
class CardsTest {
    private static List<Leaf> leaves(PageSize size) {
        return new Cards("Cards", Patterns.demo(), Edition.USUAL.with(size))
                .leaves(p -> {}, () -> false)
                .orElseThrow();
    }

    @ParameterizedTest
    @EnumSource(PageSize.class)
    void cardsLieSideBySideAndWhatIsOnThemStaysOnThem(PageSize size) {
        List<Leaf> leaves = leaves(size);
        assertThat(leaves).hasSize(2);
        for (Leaf leaf : leaves) {
            Laid.check(leaf);
            for (Block block : leaf.blocks()) {
                if (block.name().startsWith("card")) {
                    assertThat(block.box().width()).isEqualTo(3.5 * 72);
                    assertThat(block.box().height()).isEqualTo(2.5 * 72);
                    // Five points from every cut, however it is cut.
                    for (Mark mark : block.marks()) {
                        assertThat(block.box().inset(5).holds(mark.box(), 0)).isTrue();
                    }
                }
            }
        }
    }

    @Test
    void aCutMarkStandsAtBothEndsOfEveryCutAndOnNoCard() {
        Leaf leaf = leaves(PageSize.A4).get(0);
        List<Block> cards =
                leaf.blocks().stream().filter(b -> b.name().startsWith("card")).toList();
        List<Mark> marks =
                leaf.blocks().stream()
                        .filter(b -> b.name().startsWith("cut"))
                        .flatMap(b -> b.marks().stream())
                        .toList();
        assertThat(marks).hasSize(2 * (3 + 5));
        for (Mark mark : marks) {
            assertThat(cards).noneMatch(card -> card.box().overlaps(grown(mark.box()), 0));
            assertThat(cards)
                    .anyMatch(
                            card ->
                                    mark.box().width() == 0
                                            ? at(mark.box().x(), card.box().x(), card.box().right())
                                            : at(
                                                    mark.box().y(),
                                                    card.box().y(),
                                                    card.box().bottom()));
        }
    }

    private static boolean at(double place, double one, double other) {
        return Math.abs(place - one) < 1e-9 || Math.abs(place - other) < 1e-9;
    }

    private static Box grown(Box box) {
        return box.inset(-0.5);
    }

    @Test
    void aCardNamesItsPatternAndItsSizes() {
        Printed cards = Printed.of(new Cards("Cards", Patterns.demo(), Edition.USUAL)::write);
        assertThat(cards.foreignFonts()).isEmpty();
        assertThat(cards.pages().get(0).text())
                .contains("The late lantern isolation vs horizontal cat-eye")
                .contains("Both: hand 25 cm, tether 50 cm")
                .contains("Seen by the audience · invented demo data");
    }

    @Test
    void whatIsTooLongForACardIsCutAndSaysSo() {
        PatternDocument long120 =
                Patterns.of("Wonderful ".repeat(12).strip(), "isolation vs triquetra");
        Leaf leaf =
                new Cards("Cards", List.of(long120), Edition.USUAL)
                        .leaves(p -> {}, () -> false)
                        .orElseThrow()
                        .get(0);
        Laid.check(leaf);
        assertThat(leaf.marks())
                .filteredOn(Mark.Text.class::isInstance)
                .extracting(m -> ((Mark.Text) m).words())
                .anyMatch(words -> words.endsWith("…"));
    }
}
