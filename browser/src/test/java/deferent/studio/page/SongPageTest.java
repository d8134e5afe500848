package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import deferent.record.Kept;
import deferent.record.Shelf;
import deferent.record.SongDocument;
import deferent.sound.WaveFile;
import deferent.sound.tune.Manner;
import deferent.sound.tune.Tune;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import org.junit.jupiter.api.Test;

/** A song that is dropped: its beats seen, set right, kept, and a set spun to it. */
class SongPageTest extends InChromium {
    private static final int RATE = 12_000;

    private static final String DROP =
            """
            ([name, bytes]) => {
              const files = new DataTransfer();
              files.items.add(new File([Uint8Array.from(atob(bytes), (c) => c.charCodeAt(0))], name));
              document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: files, bubbles: true, cancelable: true }));
            }
            """;

    private static byte[] waltz() {
        return WaveFile.bytes(Tune.of(Manner.plain(96, 3, 24), 8).sound(RATE), RATE);
    }

    private static double number(Visit visit, String script) {
        return ((Number) visit.page().evaluate("() => " + script)).doubleValue();
    }

    private static double beat(Visit visit, int beat) {
        return number(visit, "deferentDesk.sung.song.heard.beats_s[" + beat + "]");
    }

    private static void rests(Visit visit) {
        visit.until("!deferentDesk.sung.song.running");
    }

    @Test
    void aSongThatIsDroppedIsSetRightKeptAndSpunTo() throws IOException {
        try (Visit visit = visit()) {
            visit.say("static spin vs triquetra");
            Page page = visit.page();
            page.keyboard().press("Escape");
            page.evaluate("() => deferentDesk.act('set-add')");
            whatIsNoSongIsTold(visit);
            page.evaluate(
                    DROP,
                    new Object[] {"The waltz.wav", Base64.getEncoder().encodeToString(waltz())});
            visit.until("document.querySelector('.song-says li')");
            assertThat(page.innerText(".song-says"))
                    .contains("96 beats a minute all along")
                    .contains("Bars of three beats, the first at 0.50 s.");
            visit.until("document.querySelectorAll('.song-beat').length > 10");
            assertThat(page.getAttribute(".song-beat[data-beat='4']", "aria-label"))
                    .startsWith("Beat 5: bar 2, beat 2, at 3.0");

            drag(visit);
            byKeys(visit);
            taps(visit);
            keeps(visit);
            aSetGoesByIt(visit);
        }
    }

    private static void whatIsNoSongIsTold(Visit visit) {
        visit.page().evaluate("() => deferentDesk.act('song')");
        visit.page().locator(".song-drop input").setInputFiles(Path.of("pom.xml"));
        visit.until("document.querySelector('.song-told [role=alert]')");
        assertThat(visit.page().innerText(".song-told")).contains("is no sound file");
        assertThat(visit.page().locator(".song-other input").count()).isEqualTo(1);
    }

    /** By pointer, and back. */
    private static void drag(Visit visit) {
        double was = beat(visit, 4);
        BoundingBox box = visit.page().locator(".song-beat[data-beat='4']").boundingBox();
        double y = box.y + box.height / 2;
        visit.page().mouse().move(box.x + box.width / 2, y);
        visit.page().mouse().down();
        visit.page().mouse().move(box.x + box.width / 2 + 6, y);
        visit.page().mouse().move(box.x + box.width / 2 + 8, y);
        visit.page().mouse().up();
        rests(visit);
        assertThat(beat(visit, 4)).isBetween(was + 0.1, was + 0.15);
        visit.page().keyboard().press("Control+z");
        rests(visit);
        assertThat(beat(visit, 4)).isEqualTo(was);
    }

    private static void byKeys(Visit visit) {
        Page page = visit.page();
        page.locator(".song-beat[data-beat='4']").focus();
        page.keyboard().press("ArrowRight");
        visit.until("document.activeElement.dataset.beat === '5'");
        assertThat(page.innerText(".song-where")).startsWith("Beat 6: bar 2, beat 3");
        double was = beat(visit, 5);
        page.keyboard().press("Shift+ArrowLeft");
        page.keyboard().press("Shift+ArrowLeft");
        rests(visit);
        assertThat(beat(visit, 5)).isBetween(was - 0.0211, was - 0.0189);
        page.locator(".song-double").click();
        rests(visit);
        assertThat(page.innerText(".song-says")).contains("192 beats a minute");
        assertThat(number(visit, "deferentDesk.sung.song.chosen")).isEqualTo(10);
        page.locator(".song-first").click();
        rests(visit);
        assertThat(number(visit, "deferentDesk.sung.song.heard.first_bar")).isEqualTo(1);
        page.locator(".song-bars").selectOption("4");
        rests(visit);
        assertThat(page.innerText(".song-says")).contains("Bars of four beats");
    }

    /** Two taps on every other beat make its tempo half; what was set right before is gone. */
    private static void taps(Visit visit) {
        Page page = visit.page();
        page.locator(".song-click").check();
        page.locator(".song-play").click();
        visit.until("deferentDesk.sung.player.time > 0.1");
        page.locator(".song-tap").click();
        page.waitForTimeout(1250);
        page.keyboard().press("t");
        page.locator(".song-play").click();
        visit.until("!deferentDesk.sung.player.playing");
        visit.until("document.querySelector('.song-use')");
        assertThat(page.innerText(".song-taps")).contains("2 taps");
        // As a steady hand would have tapped.
        page.evaluate("() => { deferentDesk.sung.song.taps = [4.25, 5.5]; }");
        page.locator(".song-use").click();
        rests(visit);
        assertThat(page.innerText(".song-says")).contains("48 beats a minute");
    }

    private void keeps(Visit visit) throws IOException {
        Page page = visit.page();
        assertThat(page.inputValue("#song-name")).isEqualTo("The waltz");
        Locator keep = page.locator(".song-keep [type=submit]");
        keep.click();
        visit.until("document.querySelector('.song-to-set')");
        keep.click();
        visit.until("document.querySelector('.song-replace')");
        page.locator(".song-replace").click();
        visit.until("document.querySelector('.song-to-set')");
        Kept kept = Shelf.at(shelf).load("the-waltz");
        assertThat(kept.document())
                .isInstanceOfSatisfying(
                        SongDocument.class,
                        song -> {
                            assertThat(song.mended()).isTrue();
                            assertThat(song.beats().tempo()).isBetween(47.0, 49.0);
                            assertThat(song.sound().find(shelf).file()).isPresent();
                        });
        assertThat(Files.size(shelf.resolve("sound").resolve("the-waltz.wav")))
                .isEqualTo(waltz().length);
    }

    private static void aSetGoesByIt(Visit visit) {
        Page page = visit.page();
        page.locator(".song-to-set").click();
        visit.until("deferentDesk.set.known && document.querySelector('.set-song select')");
        assertThat(page.locator(".set-song option:checked").innerText())
                .isEqualTo("The waltz, 0:24, 48 beats a minute");
        assertThat(page.innerText("set-list")).contains("song beats");
        page.locator(".set-song select").selectOption("");
        visit.until("deferentDesk.set.known && !deferentDesk.set.stands.song");
        page.locator(".set-song select").selectOption("the-waltz");
        visit.until("deferentDesk.set.known && deferentDesk.set.stands.song?.id === 'the-waltz'");
        page.locator(".set-song input").fill("3");
        page.locator(".set-song input").press("Enter");
        visit.until("deferentDesk.set.known && deferentDesk.set.stands.song.from_beat === 2");
    }
}
