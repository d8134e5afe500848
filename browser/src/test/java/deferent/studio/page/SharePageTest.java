package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Download;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.io.IOException;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

/** Where a pattern goes is one press: the file that fits there is made and saved. */
class SharePageTest extends InChromium {
    /** What a browser that can hand files to a messenger offers, with what was handed to it. */
    private static final String MESSENGER =
            """
            () => {
              navigator.canShare = ({ files }) => files.length === 1;
              navigator.share = async ({ files }) => { window.given = files[0]; };
            }""";

    private static Locator place(Visit visit, String place) {
        return visit.page().locator(".share-place", new Page.LocatorOptions().setHasText(place));
    }

    private static void open(Visit visit) {
        visit.page().locator("deferent-stage canvas").focus();
        visit.page().keyboard().press("y");
        visit.until("document.querySelector('.sharing').open");
    }

    @Test
    void aMessageIsASquareClipOfWholeCyclesThatOnePressMakesAndSays() throws IOException {
        try (Visit visit = visit()) {
            visit.say("isolation vs four-petal antispin, tempo 60");
            open(visit);
            Download file =
                    visit.page()
                            .waitForDownload(
                                    new Page.WaitForDownloadOptions().setTimeout(120_000),
                                    () -> {
                                        place(visit, "A message to a friend").click();
                                        visit.until(
                                                "document.querySelector('.share-state progress')");
                                        assertThat(place(visit, "Printed").isDisabled()).isTrue();
                                    });
            assertThat(file.suggestedFilename()).endsWith(".mp4");
            // Four cycles of a second at half speed.
            assertThat(visit.text("JSON.stringify(deferentDesk.take.said)"))
                    .isEqualTo(
                            "{\"size\":\"1080\",\"slow\":\"1/2\",\"dark\":\"yes\",\"cycles\":\"4\"}");
            visit.until("document.querySelector('.share-done')");
            assertThat(visit.page().locator(".share-state").innerText())
                    .contains("Saved as " + file.suggestedFilename());
            assertThat(visit.is("document.querySelector('.take').open")).isFalse();
        }
    }

    @Test
    void whatABrowserCanHandOnIsSentFromHere() throws IOException {
        try (Visit visit = visit()) {
            visit.settled();
            visit.page().evaluate(MESSENGER);
            open(visit);
            Download file =
                    visit.page().waitForDownload(() -> place(visit, "A picture to keep").click());
            assertThat(ImageIO.read(file.path().toFile()).getWidth()).isGreaterThan(500);
            visit.page().locator(".share-send").click();
            visit.until("window.given");
            assertThat(visit.text("window.given.name + ' ' + window.given.type"))
                    .isEqualTo(file.suggestedFilename() + " image/png");
            assertThat(visit.number("window.given.size")).isGreaterThan(1000);
        }
    }

    @Test
    void whateverThePlaceItsFileBeginsToBeMadeAndCanBeStopped() {
        try (Visit visit = visit()) {
            visit.settled();
            open(visit);
            for (String place : new String[] {"A post", "A big screen", "A video edit"}) {
                place(visit, place).click();
                visit.until(
                        "deferentDesk.take.writing?.told || deferentDesk.take.failed ||"
                                + " deferentDesk.take.done");
                visit.page().locator(".share-stop").click();
                visit.until("deferentDesk.take.done?.stopped");
                assertThat(visit.page().locator(".share-state").innerText())
                        .as(place)
                        .isEqualTo("Stopped; nothing was saved.");
            }
            for (String place : new String[] {"Printed for class", "A screen in the hall"}) {
                Download file = visit.page().waitForDownload(() -> place(visit, place).click());
                visit.until("document.querySelector('.share-done')");
                assertThat(file.failure()).as(place).isNull();
            }
        }
    }

    @Test
    void aFriendIsGivenThePhraseAndNoAddressOfThisMachine() {
        try (Visit visit = visit()) {
            visit.say("isolation vs triquetra");
            visit.page()
                    .evaluate(
                            "() => { navigator.clipboard.writeText = async (text) => { window.copied = text; }; }");
            open(visit);
            assertThat(visit.page().locator(".sharing").innerText())
                    .doesNotContainIgnoringCase("address");
            place(visit, "Copy the phrase").click();
            visit.until("window.copied === 'isolation vs triquetra'");
            visit.until("document.querySelector('.share-copied')");
            assertThat(visit.page().locator(".share-state").innerText())
                    .isEqualTo("Copied: isolation vs triquetra");
            place(visit, "Other ways").click();
            visit.until("document.querySelector('.take').open");
        }
    }
}
