package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import org.junit.jupiter.api.Test;

/** Taken away in two steps: where it goes, then the file that fits there. */
class SharePageTest extends InChromium {
    private static Locator place(Visit visit, String place) {
        return visit.page().locator(".share-place", new Page.LocatorOptions().setHasText(place));
    }

    @Test
    void aMessageIsAShortSquareClipAndAPrintIsASheetEachOnePressFromWritten() {
        try (Visit visit = visit()) {
            visit.settled();
            visit.page().locator("deferent-stage canvas").focus();
            visit.page().keyboard().press("y");
            place(visit, "A message to a friend").click();
            visit.until("deferentDesk.take.preview?.as === 'mp4'");
            assertThat(visit.text("deferentDesk.take.preview.told")).contains("1080 by 1080");
            assertThat(visit.page().locator(".take-write").isEnabled()).isTrue();
            visit.page().locator(".take-close").click();
            visit.page().locator("deferent-stage canvas").focus();
            visit.page().keyboard().press("y");
            place(visit, "Printed for class").click();
            visit.until("deferentDesk.take.preview?.as === 'pdf' && !deferentDesk.take.looking");
            assertThat(visit.page().locator("#wish-form").inputValue()).isEqualTo("sheet");
        }
    }

    @Test
    void whateverThePlaceItsFileCanBeWritten() {
        try (Visit visit = visit()) {
            visit.settled();
            int places = 0;
            for (String place :
                    new String[] {"A post", "A picture", "A screen", "A big screen", "A video"}) {
                visit.page().locator("deferent-stage canvas").focus();
                visit.page().keyboard().press("y");
                place(visit, place).first().click();
                visit.until(
                        "!deferentDesk.take.looking && deferentDesk.take.preview?.as ==="
                                + " deferentDesk.take.as");
                assertThat(visit.is("deferentDesk.take.error")).as(place).isFalse();
                assertThat(visit.is("deferentDesk.take.preview.writable")).as(place).isTrue();
                visit.page().locator(".take-close").click();
                places++;
            }
            assertThat(places).isEqualTo(5);
        }
    }
}
