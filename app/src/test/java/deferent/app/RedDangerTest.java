package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.reading.worked.Detail;
import deferent.record.PatternDocument;
import deferent.search.whole.Readings;
import java.util.List;
import org.junit.jupiter.api.Test;
import picocli.CommandLine.Help.Ansi;

/** What can hurt, as the terminal has it. */
class RedDangerTest {
    private static final String RED = "\u001B[1;31m";

    private static List<String> few(String phrase, Ansi ansi) {
        PatternDocument pattern =
                PatternDocument.of("tried", Phrase.parse(phrase).pairing(), Performer.USUAL);
        Readings readings = Readings.of(pattern.pairing(), pattern.performer(), Detail.PRINTED);
        return new ReadText(readings, pattern, false, ansi).few();
    }

    @Test
    void aDangerIsRedOnATerminalAndOnlyThere() {
        String fast = "static spin vs triquetra, tempo 180";
        List<String> red = few(fast, Ansi.ON);
        List<String> plain = few(fast, Ansi.OFF);
        assertThat(plain).noneMatch(line -> line.contains("\u001B"));
        assertThat(plain).anyMatch(line -> line.startsWith("!! Danger: the right grip holds "));
        assertThat(red)
                .filteredOn(line -> line.contains("!! Danger"))
                .hasSize(2)
                .allMatch(line -> line.startsWith(RED) && line.endsWith("\u001B[0m"));
        assertThat(red.stream().map(line -> line.replaceAll("\u001B\\[[0-9;]*m", "")))
                .containsExactlyElementsOf(plain);
    }

    @Test
    void aDangerIsTheFirstThatIsSaid() {
        List<String> lines = few("static spin vs triquetra, tempo 180", Ansi.OFF);
        assertThat(lines.get(lines.indexOf("") + 1)).startsWith("!! Danger: ");
        assertThat(String.join(" ", lines).replaceAll(" +", " ")).contains("The danger ends at");
        assertThat(lines).hasSizeLessThanOrEqualTo(ReadText.FEW);
    }

    @Test
    void whatIsCalmIsNotRed() {
        assertThat(few("isolation vs isolation, split time", Ansi.ON))
                .noneMatch(line -> line.contains("\u001B"));
    }
}
