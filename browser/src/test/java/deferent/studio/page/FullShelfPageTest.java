package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.record.Document;
import deferent.record.PatternDocument;
import deferent.record.PatternJson;
import deferent.record.Shelf;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A shelf of hundreds, and what is asked before anything on it could be lost. */
class FullShelfPageTest extends InChromium {
    private static final int MANY = 500;

    /** What it may take from the press on the tab until all cards in sight are drawn. */
    private static final double ONE_SECOND = 1000;

    private static final List<String> PHRASES =
            List.of(
                    "isolation vs triquetra",
                    "static spin vs four-petal antispin",
                    "extension vs cat-eye",
                    "three-petal in-spin vs isolation, split time");

    private void put(String name, String phrase, String... labels) {
        Document pattern =
                PatternDocument.of(name, Phrase.parse(phrase).pairing(), Performer.USUAL)
                        .withPhrase(Optional.of(phrase));
        String tags = String.join("\", \"", labels);
        String text = PatternJson.write(pattern);
        if (labels.length > 0) {
            text = text.replaceFirst("\"name\"", "\"tags\": [\"" + tags + "\"], \"name\"");
        }
        Shelf.at(shelf).saveNew(PatternJson.read(text));
    }

    private void fill(int count) {
        List<Document> all = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            String phrase = PHRASES.get(i % PHRASES.size()) + ", tether " + (40 + i % 41) + " cm";
            all.add(
                    PatternDocument.of(
                                    String.format(Locale.ROOT, "Pattern %03d", i),
                                    Phrase.parse(phrase).pairing(),
                                    Performer.USUAL)
                            .withPhrase(Optional.of(phrase)));
        }
        Shelf.at(shelf).putAll(all);
    }

    private static void openShelf(Visit visit) {
        visit.page().locator("#tab-shelf").click();
        visit.until("document.querySelector('.card[data-id] b')");
    }

    private static List<?> names(Visit visit) {
        return (List<?>)
                visit.page()
                        .evaluate(
                                "() => [...document.querySelectorAll('.card[data-id]"
                                        + " b')].map(b => b.textContent.trim())");
    }

    @Test
    void fiveHundredPatternsAreThereInASecond() {
        fill(MANY);
        try (Visit visit = visit()) {
            visit.settled();
            visit.until("deferentDesk.shelf.patterns.length === " + MANY);
            double took =
                    ((Number)
                                    visit.page()
                                            .evaluate(
                                                    """
                                                    () => new Promise((done) => {
                                                      const from = performance.now();
                                                      document.querySelector('#tab-shelf').click();
                                                      const panel = document.querySelector('.panels').getBoundingClientRect();
                                                      const drawn = () => {
                                                        const cards = [...document.querySelectorAll('.card[data-id]')].filter((card) => {
                                                          const box = card.getBoundingClientRect();
                                                          return box.height && box.top < innerHeight && box.bottom > 0;
                                                        });
                                                        if (cards.length > 3 && cards.every((card) => card.querySelector('moving-thumb')?.drawn)) {
                                                          requestAnimationFrame(() => done(performance.now() - from));
                                                        } else requestAnimationFrame(drawn);
                                                      };
                                                      drawn();
                                                    })
                                                    """))
                            .doubleValue();
            assertThat(took).as("milliseconds").isLessThan(ONE_SECOND);
            assertThat(visit.number("document.querySelectorAll('.card[data-id]').length"))
                    .isEqualTo(MANY);
            assertThat(visit.number("document.querySelectorAll('.card moving-thumb').length"))
                    .as("thumbnails out of sight")
                    .isLessThan(30);
        }
    }

    @Test
    void whatIsTypedFindsByNamePhraseAndLabelAndEnterGoesToTheFirst() {
        put("Moth", "isolation vs triquetra", "fire");
        put("Clover", "static spin vs four-petal antispin", "fire", "market");
        put("Lantern", "extension vs cat-eye");
        try (Visit visit = visit()) {
            openShelf(visit);
            assertThat(names(visit)).asString().isEqualTo("[Clover, Lantern, Moth]");
            visit.page().locator("#shelf-find").fill("antispin");
            visit.until("document.querySelectorAll('.card[data-id]').length === 1");
            assertThat(names(visit)).asString().isEqualTo("[Clover]");
            visit.page().locator("#shelf-find").fill("fire mo");
            visit.until("document.querySelector('.card b')?.textContent === 'Moth'");
            visit.page().keyboard().press("Enter");
            visit.page().keyboard().press("Enter");
            visit.until("deferentDesk.session.shelved?.name === 'Moth'");
            visit.page().locator("#shelf-find").fill("nobody");
            visit.until("!document.querySelector('.card[data-id]')");
            assertThat(visit.page().innerText("#panel-shelf"))
                    .contains("Nothing on the shelf says all of that");
        }
    }

    @Test
    void theShelfIsOrderedByTempoAndGroupedByLabelAndStaysSo() {
        put("Slow", "isolation vs triquetra, tempo 40", "market");
        put("Fast", "isolation vs triquetra, tempo 90", "fire", "market");
        put("Plain", "isolation vs triquetra");
        try (Visit visit = visit()) {
            openShelf(visit);
            visit.page().locator("#shelf-order").selectOption("fast");
            visit.until("document.querySelector('.card b').textContent === 'Fast'");
            assertThat(names(visit)).asString().isEqualTo("[Fast, Plain, Slow]");
            visit.page().locator("#shelf-grouped").check();
            visit.until("document.querySelectorAll('.shelf-head').length === 4");
            assertThat(names(visit)).asString().isEqualTo("[Fast, Fast, Slow, Plain]");
            assertThat(
                            visit.text(
                                    "[...document.querySelectorAll('.shelf-head')].slice(0,"
                                            + " 3).map(h => h.textContent.trim())"))
                    .isEqualTo("fire 1,market 2,no label 1");
            visit.page().reload();
            visit.until("document.body?.classList.contains('ready')");
            visit.until("document.querySelectorAll('.card[data-id]').length === 4");
        }
    }

    @Test
    void aPatternGetsALabelAndKeepsItInItsFile() {
        put("Moth", "isolation vs triquetra");
        try (Visit visit = visit()) {
            openShelf(visit);
            visit.page().locator("[aria-label='Name and labels of Moth']").click();
            visit.page().locator("#relabel").fill("fire,  two bells , fire");
            visit.page().keyboard().press("Enter");
            visit.until("document.querySelectorAll('.card-label').length === 2");
            assertThat(Shelf.at(shelf).load("moth").document().tags())
                    .containsExactly("fire", "two bells");
        }
    }

    @Test
    void aNameThatIsTakenIsAskedAboutAndBothStay() {
        put("Moth", "isolation vs triquetra");
        try (Visit visit = visit()) {
            visit.say("static spin vs triquetra");
            openShelf(visit);
            visit.page().locator("#save-name").fill("moth");
            visit.page().keyboard().press("Enter");
            visit.until("document.querySelector('.conflict')");
            assertThat(visit.page().innerText(".conflict"))
                    .contains("There is one called Moth already");
            visit.page().locator(".conflict button").nth(2).click();
            visit.until("document.activeElement.id === 'save-name'");
            assertThat(Shelf.at(shelf).list()).hasSize(1);
            visit.page().keyboard().press("Enter");
            visit.until("document.querySelector('.conflict')");
            visit.page().locator(".conflict button").nth(0).click();
            visit.until("deferentDesk.session.shelved?.name === 'moth 2'");
            assertThat(Shelf.at(shelf).look().patterns())
                    .extracting(PatternDocument::name)
                    .containsExactlyInAnyOrder("Moth", "moth 2");
        }
    }

    @Test
    void whatIsPutInAnothersPlaceGivesItBackWhenThatIsUndone() {
        put("Moth", "isolation vs triquetra");
        try (Visit visit = visit()) {
            String before = phrase("moth");
            visit.say("static spin vs triquetra");
            openShelf(visit);
            visit.page().locator("#save-name").fill("Moth");
            visit.page().keyboard().press("Enter");
            visit.until("document.querySelector('.conflict')");
            visit.page().locator(".conflict button").nth(1).click();
            visit.until("document.querySelector('.notice button')");
            assertThat(phrase("moth")).isNotEqualTo(before);
            visit.page().locator(".notice button").click();
            visit.until("!deferentDesk.session.shelved");
            assertThat(phrase("moth")).isEqualTo(before);
        }
    }

    private String phrase(String id) {
        return PatternJson.write(Shelf.at(shelf).load(id).document());
    }

    @Test
    void changesThatAreNotSavedShowAndAreAskedAboutBeforeAnotherIsOpened() {
        put("Moth", "isolation vs triquetra");
        put("Clover", "static spin vs four-petal antispin");
        try (Visit visit = visit()) {
            openShelf(visit);
            visit.page().locator(".card[data-id=moth] .card-open").click();
            visit.until("document.querySelector('shelf-mark')?.textContent.includes('Moth')");
            assertThat(visit.is("document.querySelector('.shelf-changed')")).isFalse();
            visit.page().locator("deferent-stage canvas").focus();
            visit.page().keyboard().press("d");
            visit.until("document.querySelector('.shelf-changed')");
            visit.page().keyboard().press("Control+z");
            visit.until("!document.querySelector('.shelf-changed')");
            visit.page().keyboard().press("d");
            visit.until("document.querySelector('.shelf-changed')");

            visit.page().locator(".card[data-id=clover] .card-open").click();
            visit.until("document.querySelector('.conflict')");
            visit.page().locator(".conflict button").nth(2).click();
            visit.until("!document.querySelector('.conflict')");
            assertThat(visit.text("deferentDesk.session.shelved.id")).isEqualTo("moth");
            visit.page().locator(".card[data-id=clover] .card-open").click();
            visit.until("document.querySelector('.conflict')");
            visit.page().locator(".conflict button").nth(0).click();
            visit.until("deferentDesk.session.shelved.id === 'clover'");
            assertThat(phrase("moth")).contains("\"opposite\"");
        }
    }

    @Test
    void aThumbnailMovesUnderThePointerAlone() {
        put("Moth", "isolation vs triquetra");
        put("Clover", "static spin vs four-petal antispin");
        try (Visit visit = movingVisit()) {
            openShelf(visit);
            visit.until(
                    "[...document.querySelectorAll('.card moving-thumb')].filter(t => t.drawn)"
                            + ".length === 2");
            visit.page().mouse().move(300, 300);
            visit.page()
                    .evaluate(
                            "() => { window.drawn = { moth: 0, clover: 0 }; for (const thumb of"
                                    + " document.querySelectorAll('.card moving-thumb')) { const"
                                    + " own = thumb.draw; const id ="
                                    + " thumb.closest('.card').dataset.id; thumb.draw = (at) => {"
                                    + " drawn[id]++; own.call(thumb, at); }; } }");
            visit.frames(10);
            assertThat(visit.text("drawn.moth + drawn.clover")).isEqualTo("0");
            visit.page().locator(".card[data-id=moth] .card-open").hover();
            visit.until("drawn.moth > 3");
            assertThat(visit.number("drawn.clover")).isZero();
            visit.page().mouse().move(300, 300);
            visit.until("drawn.moth > 3");
            visit.rests("drawn.moth");
        }
    }
}
