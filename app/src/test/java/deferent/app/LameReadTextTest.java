package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.reading.body.Performer;
import deferent.record.PatternDocument;
import deferent.search.whole.Readings;
import deferent.tell.Lame;
import java.util.List;
import org.junit.jupiter.api.Test;
import picocli.CommandLine.Help.Ansi;

/** The page of text, where readings could not be worked out. */
class LameReadTextTest {
    @Test
    void everyLineIsThereAndSaysWhatIsNotWorkedOut() {
        Readings lame = Lame.wholly("CAP riding pendulum");
        List<String> lines =
                new ReadText(
                                lame,
                                PatternDocument.of("lame", lame.pairing(), Performer.USUAL),
                                true,
                                Ansi.OFF)
                        .all();
        assertThat(lines)
                .anyMatch(line -> line.matches("  figure's width +not worked out +not worked out"))
                .anyMatch(line -> line.matches("  farthest out +not worked out +not worked out"))
                .anyMatch(line -> line.matches("  kind +not worked out +not worked out"))
                .anyMatch(
                        line ->
                                line.matches(
                                        "  at best, as shapes +not worked out +not worked out"))
                .anyMatch(line -> line.matches("  hand radius +not worked out +0 cm"))
                .anyMatch(line -> line.matches("  tether +60 cm +60 cm"));
        assertThat(String.join(" ", lines).replaceAll("\\s+", " "))
                .contains("could not be worked out: its sums run in a ring.")
                .contains("why: Inside: a test.")
                .contains("people, animals and lamps stand well outside the figures");
    }
}
