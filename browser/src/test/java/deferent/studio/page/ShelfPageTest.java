package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class ShelfPageTest extends InChromium {
    private List<String> files() throws IOException {
        try (var all = Files.list(shelf)) {
            return all.map(Path::getFileName)
                    .map(Path::toString)
                    .filter(name -> name.endsWith(".json"))
                    .sorted()
                    .toList();
        }
    }

    private static void save(Visit visit, String name) {
        visit.page().locator("#tab-shelf").click();
        visit.page().locator("#save-name").fill(name);
        visit.page().keyboard().press("Enter");
        visit.until(
                "document.querySelector('.card[data-id] b')?.textContent.includes('" + name + "')");
    }

    @Test
    void aSavedPatternIsAFileAndIsThereAfterAReload() throws IOException {
        try (Visit visit = visit()) {
            visit.say("static spin vs triquetra");
            save(visit, "Market opening");
            assertThat(files()).containsExactly("market-opening.json");
            visit.say("isolation vs triquetra");
            visit.page().reload();
            visit.until("document.body?.classList.contains('ready')");
            visit.page().locator("#tab-shelf").click();
            visit.page().locator(".card-open").click();
            visit.until("deferentDesk.session.answer.phrase === 'static spin vs triquetra'");
            visit.settled();
            visit.until("document.querySelector('.card moving-thumb')?.drawn");
        }
    }

    @Test
    void aPatternCanBeRenamedAndRemovedAndComeBack() throws IOException {
        try (Visit visit = visit()) {
            save(visit, "First");
            visit.page().locator(".card-verbs button:has-text('Name, labels')").click();
            visit.page().locator("#rename").fill("Second");
            visit.page().keyboard().press("Enter");
            visit.until("document.querySelector('.card b')?.textContent === 'Second'");
            visit.page().locator(".card-verbs button:has-text('Remove')").click();
            visit.until("!document.querySelector('.card')");
            assertThat(files()).isEmpty();
            visit.page().locator(".notice button").click();
            visit.until("document.querySelector('.card b')?.textContent === 'Second'");
            assertThat(files()).hasSize(1);
        }
    }

    @Test
    void twoTabsOnOneShelfLoseNothing() throws IOException {
        try (Visit visit = visit()) {
            save(visit, "Shared");
            Page second = visit.secondTab();
            second.locator("#tab-shelf").click();
            second.locator(".card-open").click();
            Chromium.until(second, "deferentDesk.session.shelved");
            second.locator("deferent-stage canvas").focus();
            second.keyboard().press("t");
            Chromium.until(second, "deferentDesk.session.size('timing_cycles').value === 0.25");
            second.keyboard().press("Control+s");
            Chromium.until(
                    second, "document.querySelector('.notice')?.textContent.includes('Saved')");
            visit.page().locator("deferent-stage canvas").focus();
            visit.page().keyboard().press("d");
            visit.until("deferentDesk.session.pattern.pairing.direction === 'opposite'");
            visit.page().keyboard().press("Control+s");
            visit.until("document.querySelector('.conflict')");
            visit.page().locator(".conflict button").first().click();
            visit.until("document.querySelectorAll('.card[data-id]').length === 2");
            assertThat(files()).hasSize(2);
        }
    }

    @Test
    void aMotionNamedOnTheShelfCanBeSaid() throws IOException {
        try (Visit visit = visit()) {
            visit.say("three-petal in-spin vs triquetra");
            visit.page().locator("#tab-shelf").click();
            visit.page().locator("#motion-name").fill("rose window");
            visit.page().keyboard().press("Enter");
            visit.until("document.querySelector('.card.motion b')?.textContent === 'rose window'");
            assertThat(files()).containsExactly("rose-window.json");
            visit.say("static spin vs rose window");
            assertThat(visit.text("deferentDesk.session.error")).isEqualTo("null");
            assertThat(
                            visit.number(
                                    "deferentDesk.session.answer.readings.hands.right.figure.petals"))
                    .isEqualTo(3);
        }
    }
}
