package deferent.page.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.motion.pairing.Refusal;
import deferent.record.PatternDocument;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A shelf or a route as a book. */
class BookletTest {
    private static final List<PatternDocument> SHELF = Patterns.demo();
    private static final String SMALL = "static spin vs triquetra hand radius 42 cm, tether 45 cm";
    private static final String LEAVES = "static spin vs triquetra, tether 45 cm";
    private static final String LARGE = "static spin vs triquetra hand radius 48 cm, tether 45 cm";
    private static final Printed BOOK =
            Printed.of(Booklet.of("Lessons for the market", SHELF, Edition.USUAL)::write);

    @Test
    void theContentsNameThePageOnWhichEachPatternBegins() {
        List<Printed.Page> pages = BOOK.pages();
        String contents = pages.get(1).text();
        assertThat(contents).startsWith("Contents");
        List<Integer> links = BOOK.links(1);
        assertThat(links).hasSize(SHELF.size());
        for (int i = 0; i < SHELF.size(); i++) {
            int page = links.get(i);
            assertThat(pages.get(page - 1).text())
                    .startsWith(SHELF.get(i).name())
                    .endsWith(" " + page);
            String entry = contents.substring(contents.indexOf(SHELF.get(i).name()));
            assertThat(entry.substring(0, Math.min(entry.length(), 160)))
                    .containsPattern("\\D" + page + "( |$)");
        }
    }

    @Test
    void theBookmarksAreTheCoverTheContentsTheCautionsAndThePatterns() {
        List<String> expected = new ArrayList<>();
        expected.add("Lessons for the market");
        expected.add("Contents");
        expected.add("Take care");
        SHELF.forEach(p -> expected.add(p.name()));
        assertThat(BOOK.bookmarks()).isEqualTo(expected);
    }

    @Test
    void inventedDataIsMarkedSoOnTheCoverAndAtTheFootOfEveryPage() {
        List<Printed.Page> pages = BOOK.pages();
        assertThat(pages.get(0).text()).contains("Invented demo data");
        for (int i = 1; i < pages.size(); i++) {
            assertThat(pages.get(i).text())
                    .endsWith("Lessons for the market · invented demo data " + (i + 1));
        }
    }

    @Test
    void thereIsAPageOfCautionsBeforeTheFirstPattern() {
        assertThat(BOOK.pages().get(2).text())
                .startsWith("Take care")
                .contains("Fire only with qualified practice")
                .contains("How to read these pages");
    }

    @Test
    void whatToMindIsSaidOnceInABooklet() {
        assertThat(BOOK.pages().stream().filter(page -> page.text().contains("safety person")))
                .hasSize(1);
    }

    @Test
    void everyLetterComesWithItsFont() {
        assertThat(BOOK.foreignFonts()).isEmpty();
        assertThat(BOOK.embeddedFonts()).hasSize(2);
    }

    @Test
    void aDemoPatternTakesOnePage() {
        assertThat(BOOK.pages()).hasSize(3 + SHELF.size());
    }

    @Test
    void aRouteTellsHowEachGrowsFromTheOneBeforeAndLeadsToTheNext() {
        List<PatternDocument> route =
                List.of(
                        Patterns.of("Small leaves", SMALL),
                        Patterns.of("Leaves", LEAVES),
                        Patterns.of("Large leaves", LARGE));
        Booklet way = Booklet.of("A way & more", route, Edition.USUAL).asRoute();
        List<Leaf> leaves = way.leaves(p -> {}, () -> false).orElseThrow();
        leaves.forEach(Laid::check);
        Printed book =
                Printed.of(out -> Press.print(leaves, way.title(), out, page -> {}, () -> false));
        // Cover, contents with links, lists, a table, figures and passages: every kind of tag.
        assertThat(Accessible.faults(book.bytes())).isEmpty();
        List<Printed.Page> pages = book.pages();
        assertThat(pages.get(3).text())
                .containsPattern("Leads to Leaves: \\p{Lu}.* in \\d.*: (easy|with practice)\\.")
                .doesNotContain("Grows from");
        assertThat(pages.get(4).text())
                .contains("Grows from Small leaves: ")
                .contains("Leads to Large leaves: ");
        assertThat(pages.get(5).text()).contains("Grows from Leaves: ").doesNotContain("Leads to");
    }

    @Test
    void aRouteSaysWhyNothingLeadsOver() {
        List<PatternDocument> route =
                List.of(
                        Patterns.of("Short", "static spin vs static spin, tether 45 cm"),
                        Patterns.of("Long", "static spin vs static spin, tether 60 cm"));
        List<Printed.Page> pages =
                Printed.of(Booklet.of("A way", route, Edition.USUAL).asRoute()::write).pages();
        assertThat(pages.get(3).text())
                .contains("Leads to – Long: Nothing leads over: the tethers differ.");
        assertThat(pages.get(4).text())
                .contains("Grows from – Short: Nothing leads over: the tethers differ.");
    }

    @Test
    void aShelfCanTellAllItsTransitions() {
        List<PatternDocument> shelf =
                List.of(Patterns.of("Small leaves", SMALL), Patterns.of("Leaves", LEAVES));
        List<Printed.Page> pages =
                Printed.of(Booklet.of("Both", shelf, Edition.USUAL).amongThemselves()::write)
                        .pages();
        assertThat(pages.get(3).text())
                .contains("Grows from Leaves: ")
                .contains("Leads to Leaves: ");
        assertThat(pages.get(4).text())
                .contains("Grows from Small leaves: ")
                .contains("Leads to Small leaves: ");
    }

    @Test
    void longContentsGoOnAndStillNameTheRightPages() {
        List<PatternDocument> many = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            many.add(Patterns.demo("A ring too small").withName("Pattern number " + i));
        }
        Printed book = Printed.of(Booklet.of("Many", many, Edition.USUAL)::write);
        List<Integer> links = new ArrayList<>(book.links(1));
        links.addAll(book.links(2));
        assertThat(book.pages().get(2).text()).startsWith("Contents, continued");
        assertThat(links).hasSize(20);
        for (int i = 0; i < 20; i++) {
            assertThat(book.pages().get(links.get(i) - 1).text())
                    .startsWith("Pattern number " + i + " ");
        }
    }

    @Test
    void everyPageIsAsLargeAsThePaperAndTheSameBookletIsTheSameFile() {
        Booklet letter =
                Booklet.of("Few", SHELF.subList(0, 3), Edition.USUAL.with(PageSize.LETTER));
        Printed once = Printed.of(letter::write);
        assertThat(once.pages())
                .hasSize(6)
                .allMatch(page -> page.width() == 612 && page.height() == 792);
        assertThat(Printed.of(letter::write).bytes()).isEqualTo(once.bytes());
    }

    @Test
    void aStoppedBookletWritesNothing() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        List<PrintProgress> told = new ArrayList<>();
        boolean written =
                Booklet.of("Stopped", SHELF.subList(0, 3), Edition.USUAL)
                        .write(
                                out,
                                told::add,
                                () ->
                                        told.stream()
                                                .anyMatch(
                                                        p ->
                                                                p.step()
                                                                        == PrintProgress.Step
                                                                                .PRINTING));
        assertThat(written).isFalse();
        assertThat(out.size()).isZero();
        assertThat(told.get(told.size() - 1))
                .isEqualTo(new PrintProgress(PrintProgress.Step.PRINTING, 1, 6));
    }

    @Test
    void aBookOfNothingIsRefused() {
        assertThatThrownBy(() -> Booklet.of("Empty", List.of(), Edition.USUAL))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("save one on the shelf first");
    }
}
