package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * How far head and hand are apart is one number: in the sentence, beside the link and on the strip.
 */
class NumberPageTest extends InChromium {
    private static final boolean DEEP = Boolean.getBoolean("deferent.deep");

    private static final Pattern UP_TO = Pattern.compile("up to ([0-9.]+) ?(mm|cm|m) apart now");

    /**
     * Pairings over which the numbers are compared: what is meant by what spinners type, and
     * motions of the trade with one another.
     */
    private static List<String> phrases() throws IOException {
        Path typed = Path.of("../motion/src/test/resources/deferent/motion/phrase/typed.tsv");
        List<String> all =
                new ArrayList<>(
                        Files.readAllLines(typed).stream()
                                .map(line -> line.split("\t"))
                                .filter(line -> line.length > 1 && line[1].startsWith("= "))
                                .map(line -> line[1].substring(2))
                                .distinct()
                                .limit(44)
                                .toList());
        assertThat(all).hasSizeGreaterThan(40);
        List<String> hands =
                List.of(
                        "isolation",
                        "extension",
                        "static spin",
                        "triquetra",
                        "four-petal antispin",
                        "horizontal cat-eye",
                        "four-petal in-spin",
                        "CAP");
        List<String> ways =
                List.of("", ", split time", ", opposite direction", ", quarter time, tether 50 cm");
        for (int i = 0; i < hands.size(); i++) {
            for (int j = 0; j < hands.size() && all.size() < 52; j++) {
                if (i != j) {
                    all.add(hands.get(i) + " vs " + hands.get(j) + ways.get((i + j) % 4));
                }
            }
        }
        return all;
    }

    private static String plain(String text) {
        return text.replace('\u202f', ' ').trim();
    }

    @Test
    void sentenceLabelAndStripSayOneNumberWhateverThePairing() throws IOException {
        try (Visit visit = visit()) {
            visit.settled();
            visit.hands();
            int compared = 0;
            List<String> phrases = phrases();
            assertThat(phrases.size()).isGreaterThanOrEqualTo(50);
            // Every third, or in the long form all.
            for (int i = 0; i < phrases.size(); i += DEEP ? 1 : 3) {
                String phrase = phrases.get(i);
                visit.page().evaluate("phrase => deferentDesk.session.say(phrase)", phrase);
                visit.until("!deferentDesk.session.live.busy");
                assertThat(visit.is("!deferentDesk.session.error")).as(phrase).isTrue();
                // When it is greatest the label's two numbers are one.
                visit.page()
                        .evaluate(
                                "() => { const g = deferentDesk.session.answer.strip.gap_m;"
                                        + " deferentDesk.clock.play(false);"
                                        + " deferentDesk.clock.seek((g.indexOf(Math.max(...g)) +"
                                        + " 0.5) / g.length); }");
                String label = plain(visit.page().locator(".link-label").innerText());
                String strip =
                        plain(visit.page().locator(".strip-scrub").getAttribute("aria-valuetext"));
                String now = plain(visit.page().locator(".link-label b").innerText());
                assertThat(strip).as(phrase).contains("apart now " + now + ",");
                String sentence =
                        plain(
                                visit.text(
                                        "(deferentDesk.session.answer.readings.told.find((t) => t.key === 'first') || {}).text"));
                Matcher said = UP_TO.matcher(sentence);
                if (said.find()) {
                    compared++;
                    String number = said.group(1) + " " + said.group(2);
                    assertThat(label.endsWith("up to " + number) || label.equals(number))
                            .as("%s: label \"%s\", sentence \"%s\"", phrase, label, sentence)
                            .isTrue();
                }
                double most = visit.number("Math.max(...deferentDesk.session.answer.strip.gap_m)");
                assertThat(most)
                        .as(phrase)
                        .isCloseTo(
                                visit.number(
                                        "deferentDesk.session.answer.readings.links.find((l) => l.head === deferentDesk.session.answer.strip.carrier).inplane_gap_m"),
                                within(0.003));
            }
            assertThat(compared).as("sentences that say the number").isGreaterThan(5);
        }
    }

    @Test
    void theGhostOfWhatIsBestHasItsNumberAndOneTapGoesThere() throws IOException {
        try (Visit visit = visit()) {
            visit.say("isolation vs isolation, split time, right centre 20 cm up");
            visit.hands();
            visit.until("deferentStage.best.found");
            double now =
                    visit.number(
                            "deferentDesk.session.answer.readings.links.find((l) => l.head === deferentDesk.session.answer.strip.carrier).inplane_gap_m");
            double best = visit.number("deferentStage.best.found.gap");
            assertThat(best).isLessThan(now - 0.1);
            visit.page()
                    .screenshot(
                            new com.microsoft.playwright.Page.ScreenshotOptions()
                                    .setPath(Path.of("target", "best.png")));
            assertThat(Files.size(Path.of("target", "best.png"))).isPositive();
            String said = plain(visit.page().locator(".best-label").innerText());
            assertThat(said).matches("(at|placed) best [0-9.]+ (mm|cm|m)");
            visit.page().locator(".best-label").click();
            visit.until("!deferentStage.best.found");
            visit.settled();
            assertThat(
                            visit.number(
                                    "deferentDesk.session.answer.readings.links.find((l) => l.head === deferentDesk.session.answer.strip.carrier).inplane_gap_m"))
                    .isCloseTo(best, within(0.003));
            visit.page().keyboard().press("Control+z");
            visit.until("deferentDesk.session.size('right.centre_y_m').value === 0.2");
            visit.settled();
        }
    }

    @Test
    void theWholeScreenIsOneButtonAwayAndOneTapBack() {
        try (Visit visit = visit()) {
            visit.settled();
            visit.tools();
            visit.page().locator("stage-tools button:has-text('Full screen')").click();
            visit.frames(3);
            assertThat(visit.page().locator("transport-bar").isVisible()).isFalse();
            assertThat(visit.page().locator(".alone-leave").boundingBox().width)
                    .isGreaterThanOrEqualTo(44);
            visit.page().locator(".alone-leave").click();
            visit.frames(3);
            assertThat(visit.page().locator("transport-bar").isVisible()).isTrue();
            assertThat(visit.page().locator(".alone-leave").isVisible()).isFalse();
        }
    }
}
