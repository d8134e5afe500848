package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.body.Performer;
import deferent.motion.pairing.Side;
import deferent.motion.phrase.Phrase;
import deferent.motion.tell.Advice;
import deferent.motion.tell.CordReading;
import deferent.motion.tell.Detail;
import deferent.motion.tell.Readings;
import deferent.motion.tell.Worked;
import deferent.record.PatternDocument;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The page of text, where readings could not be worked out. */
class LameReadTextTest {
    @Test
    void everyLineIsThereAndSaysWhatIsNotWorkedOut() {
        Readings lame = lame("CAP riding pendulum");
        List<String> lines =
                new ReadText(
                                lame,
                                PatternDocument.of("lame", lame.pairing(), Performer.USUAL),
                                true)
                        .lines();
        assertThat(lines)
                .anyMatch(line -> line.matches("  figure +not worked out +not worked out"))
                .anyMatch(line -> line.matches("  farthest out +not worked out +not worked out"))
                .anyMatch(line -> line.matches("  kind +not worked out +not worked out"))
                .anyMatch(line -> line.matches("  shape gap +not worked out +not worked out"))
                .anyMatch(line -> line.contains("rides, not worked out"))
                .anyMatch(line -> line.matches("  tether +60 cm +60 cm"));
        assertThat(String.join(" ", lines).replaceAll("\\s+", " "))
                .contains("could not be worked out: its sums run in a ring.")
                .contains("why: Inside: a test.")
                .contains("Keep people, animals and lamps well outside the figures");
    }

    /** Readings of which nothing could be worked out. */
    private static Readings lame(String phrase) {
        Readings whole =
                Readings.of(Phrase.parse(phrase).pairing(), Performer.USUAL, Detail.SETTLED);
        return new Readings(
                whole.trace(),
                whole.performer(),
                whole.detail(),
                whole.phrase(),
                new Readings.Hand(whole.left().motion(), not()),
                new Readings.Hand(whole.right().motion(), not()),
                not(),
                not(),
                not(),
                not(),
                new CordReading(Side.LEFT, not(), not(), not(), not(), not(), not()),
                new CordReading(Side.RIGHT, not(), not(), not(), not(), not(), not()),
                Optional.of(new Advice(Side.LEFT, not(), not(), not(), not(), not())));
    }

    private static <T> Worked<T> not() {
        return new Worked.Not<>("a reading", "its sums run in a ring", "Inside: a test.");
    }
}
