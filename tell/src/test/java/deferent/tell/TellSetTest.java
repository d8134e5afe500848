package deferent.tell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import deferent.search.set.PairBook;
import deferent.search.set.SetPlan;
import deferent.search.set.SetWork;
import deferent.search.set.Wanted;
import deferent.search.transition.Grade;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class TellSetTest {
    private static final Pattern HOLDS =
            Pattern.compile("holds ([0-9.]+) N on average, the weight of ([0-9.]+) (k?g)\\.");

    private static Matcher held(String phrase) {
        PairBook book = new PairBook(Grade.USUAL, Performer.USUAL, Kit.USUAL);
        SetPlan plan = SetPlan.of(List.of(new Wanted(Phrase.parse(phrase).pairing(), 8)), book);
        List<Told> told = TellSet.work(SetWork.of(plan, book), List.of("Alone"), plan.seconds());
        Matcher holds = HOLDS.matcher(told.get(0).text());
        assertThat(holds.find()).as(told.get(0).text()).isTrue();
        return holds;
    }

    /** A weight on the Earth: 9.80665 N a kilogram. */
    @Test
    void aSmallPullIsSaidAsTheWeightOfGramsAndALargeOneOfKilograms() {
        Matcher small = held("static spin vs static spin, tether 30 cm, tempo 60");
        assertThat(small.group(3)).isEqualTo("g");
        assertThat(Double.parseDouble(small.group(2)))
                .isPositive()
                .isCloseTo(Double.parseDouble(small.group(1)) / 9.80665 * 1000, within(10.5));
        Matcher large = held("triquetra vs triquetra, tempo 100");
        assertThat(large.group(3)).isEqualTo("kg");
        assertThat(Double.parseDouble(large.group(2)))
                .isCloseTo(Double.parseDouble(large.group(1)) / 9.80665, within(0.11));
    }
}
