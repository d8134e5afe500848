package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Download;
import com.microsoft.playwright.options.ReducedMotion;
import deferent.record.DemoShelf;
import deferent.record.Shelf;
import java.io.IOException;
import java.nio.file.Files;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

/** The panel in which patterns are taken away. */
class TakePageTest extends InChromium {
    private static final String SEEN =
            "!deferentDesk.take.looking && (deferentDesk.take.preview || deferentDesk.take.error)";

    private static void open(Visit visit) {
        visit.settled();
        visit.tools();
        visit.page()
                .locator(
                        "desk-menu button",
                        new com.microsoft.playwright.Page.LocatorOptions()
                                .setHasText("Save as a file"))
                .click();
        visit.until(SEEN);
    }

    private static void as(Visit visit, String ending) {
        visit.page().locator("[name=take-as][value=" + ending + "] + span").click();
        visit.until(SEEN + " && deferentDesk.take.preview.as === '" + ending + "'");
    }

    private static Download written(Visit visit) {
        return visit.page().waitForDownload(() -> visit.page().locator(".take-write").click());
    }

    @Test
    void aPictureIsPreviewedAndArrivesAsItWasWished() throws IOException {
        try (Visit visit = visit()) {
            open(visit);
            visit.until("document.querySelector('.take-sight img')?.naturalWidth === 640");
            visit.page().locator("#wish-size").selectOption("wide");
            visit.until(
                    SEEN + " && document.querySelector('.take-sight img')?.naturalHeight === 360");
            assertThat(visit.text("document.querySelector('.take-told').textContent"))
                    .contains("1920 by 1080 pixels");
            Download file = written(visit);
            assertThat(file.suggestedFilename()).isEqualTo("isolation-vs-four-petal-antispin.png");
            var image = ImageIO.read(file.path().toFile());
            assertThat(image.getWidth()).isEqualTo(1920);
            assertThat(image.getHeight()).isEqualTo(1080);
            visit.until("document.querySelector('.take-done a')");
            assertThat(visit.text("document.querySelector('.take-done').textContent"))
                    .contains("isolation-vs-four-petal-antispin.png");
        }
    }

    @Test
    void thePanelBeginsWithWhatTheStageShows() {
        try (Visit visit = visit()) {
            visit.settled();
            visit.page()
                    .evaluate(
                            "() => { deferentDesk.clock.play(false); deferentDesk.clock.seek(0.25); deferentDesk.stage.see('mirror'); deferentDesk.session.keep('figure'); deferentDesk.setTheme('dark'); }");
            visit.settled();
            open(visit);
            assertThat(visit.text("JSON.stringify(deferentDesk.take.wishes())"))
                    .isEqualTo(
                            "{\"cord\":\"figure\",\"view\":\"mirror\",\"at\":\"0.25\",\"dark\":\"yes\"}");
        }
    }

    @Test
    void aClipTellsHowFarItIsAndCanBeStopped() throws IOException {
        try (Visit visit = movingVisit()) {
            open(visit);
            as(visit, "mp4");
            assertThat(visit.text("document.querySelector('.take-sight img').src"))
                    .startsWith("data:image/webp");
            visit.page().locator("#wish-cycles").fill("300");
            visit.until(SEEN + " && deferentDesk.take.preview.told.startsWith('18000 frames')");
            visit.page().locator(".take-write").click();
            visit.until("document.querySelector('.take-state progress')?.value > 0");
            assertThat(visit.text("document.querySelector('.take-state').textContent"))
                    .contains("of 18000");
            visit.page().locator(".take-stop").click();
            visit.until("document.querySelector('.take-state').textContent.includes('Stopped')");
            visit.page().locator("#wish-cycles").fill("1");
            visit.page().locator("#wish-size").selectOption("other …");
            visit.page().locator("#wish-size-other").fill("320");
            visit.until(SEEN + " && deferentDesk.take.preview.told.includes('320 by 320')");
            Download file = written(visit);
            assertThat(file.suggestedFilename()).endsWith(".mp4");
            assertThat(Files.readAllBytes(file.path()))
                    .contains("ftyp".getBytes(java.nio.charset.StandardCharsets.US_ASCII));
            visit.until("document.querySelectorAll('.take-done a').length === 2");
        }
    }

    @Test
    void aWishThatCannotBeIsToldInItsPlaceAndNothingIsWritten() {
        try (Visit visit = visit()) {
            open(visit);
            visit.page().locator("#wish-size").selectOption("other …");
            visit.page().locator("#wish-size-other").fill("huge");
            visit.until("document.querySelector('.take-error')");
            assertThat(visit.text("document.querySelector('.take-error').textContent"))
                    .isEqualTo("Size is \"huge\"; give 1200, 1920x1080, or square, wide or tall.");
            assertThat(visit.page().locator("#wish-size-other").getAttribute("aria-invalid"))
                    .isEqualTo("true");
            assertThat(visit.page().locator(".take-write").isDisabled()).isTrue();
            visit.page().locator("#wish-size-other").fill("300");
            visit.until("!document.querySelector('.take-error')");
            assertThat(visit.page().locator(".take-write").isDisabled()).isFalse();
        }
    }

    @Test
    void onePageIsPreviewedInItsFrameAndPlaysThere() {
        try (Visit visit = visit()) {
            open(visit);
            as(visit, "html");
            visit.until("document.querySelector('.take-sight iframe')");
            var frame = visit.page().frameLocator(".take-sight iframe");
            frame.locator("body.ready").waitFor();
            assertThat(frame.locator("h1").textContent()).contains("isolation");
        }
    }

    @Test
    void everythingIsDoneWithoutAMouse() throws IOException {
        try (Visit visit = visit()) {
            visit.settled();
            var keyboard = visit.page().keyboard();
            visit.page().locator("deferent-stage canvas").focus();
            keyboard.press("e");
            visit.until(SEEN);
            for (int i = 0; i < 12 && !visit.is("document.activeElement.name === 'take-as'"); i++) {
                keyboard.press("Tab");
            }
            // The arrows go from ending to ending across the groups.
            keyboard.press("ArrowLeft");
            visit.until(SEEN + " && deferentDesk.take.preview.as === 'svg'");
            for (int i = 0;
                    i < 40 && !visit.is("document.activeElement.matches('.take-write')");
                    i++) {
                keyboard.press("Tab");
            }
            Download file = visit.page().waitForDownload(() -> keyboard.press("Enter"));
            assertThat(Files.readString(file.path())).startsWith("<svg");
            keyboard.press("Escape");
            assertThat(visit.is("document.querySelector('.take').open")).isFalse();
        }
    }

    @Test
    void theWholeShelfBecomesABookletAndEndingsThatCannotHoldItAreBarred() throws IOException {
        Shelf full = Shelf.at(shelf);
        DemoShelf.documents().stream().limit(2).forEach(full::saveNew);
        try (Visit visit = visit()) {
            open(visit);
            visit.page().locator("[name=take-what][value=shelf]").click();
            visit.until(SEEN + " && deferentDesk.take.preview.as === 'pdf'");
            assertThat(visit.page().locator("[name=take-as][value=mp4]").isDisabled()).isTrue();
            assertThat(Files.readAllBytes(written(visit).path())).startsWith('%', 'P', 'D', 'F');
        }
    }

    @Test
    void aPhotographIsToldAndItsExposureIsTakenAway() throws IOException {
        try (Visit visit = visit()) {
            open(visit);
            visit.page().locator("#take-tab-photo").click();
            visit.until("document.querySelector('.photo-told')");
            visit.page().locator("#photo-hertz").fill("60");
            visit.until(
                    "document.querySelector('.photo-told').textContent.includes('Blinking 60 times')");
            visit.page().locator(".take footer button").click();
            visit.until(SEEN + " && deferentDesk.take.preview.mode === 'file'");
            assertThat(visit.page().locator("#wish-form").inputValue()).isEqualTo("exposure");
            assertThat(visit.page().locator("#wish-led").inputValue()).isEqualTo("60,50%");
            assertThat(Files.readAllBytes(written(visit).path())).startsWith(0x89, 'P', 'N', 'G');
        }
    }

    @Test
    void fastLightsAreWarnedOfAndTheirPreviewStandsStillUntilItIsPlayed() {
        try (Visit visit = movingVisit()) {
            visit.say("isolation vs isolation, split time");
            visit.page()
                    .evaluate(
                            "() => deferentDesk.session.change([{ set: 'tempo_cycles_per_min', to: 200 }])");
            open(visit);
            as(visit, "mp4");
            assertThat(visit.text("document.querySelector('.take-care').textContent"))
                    .contains("photosensitive");
            assertThat(visit.text("document.querySelector('.take-sight img').src"))
                    .startsWith("data:image/png");
            visit.page().locator(".take-care button").click();
            visit.until(
                    SEEN
                            + " && document.querySelector('.take-sight img').src.startsWith('data:image/webp')");
        }
    }

    @Test
    void nothingIsWiderThanAPhoneAndEverythingHasAName() {
        try (Visit visit = visit(screen(400, 800).setReducedMotion(ReducedMotion.REDUCE), "")) {
            open(visit);
            as(visit, "webm");
            assertThat(visit.text("document.querySelector('.take-sight img').src"))
                    .as("who asks for less motion sees one frame")
                    .startsWith("data:image/png");
            assertThat(visit.number("document.querySelector('.take-body').scrollWidth"))
                    .isLessThanOrEqualTo(400);
            assertThat(visit.number("document.documentElement.scrollWidth"))
                    .isLessThanOrEqualTo(400);
            assertThat(
                            visit.text(
                                    "[...document.querySelectorAll('.take button, .take input, .take select')]"
                                            + ".filter((e) => !(e.getAttribute('aria-label') || e.textContent.trim() || e.labels?.length))"
                                            + ".map((e) => e.outerHTML.slice(0, 80)).join(' | ')"))
                    .isEmpty();
        }
    }
}
