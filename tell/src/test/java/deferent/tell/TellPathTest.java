package deferent.tell;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import deferent.search.path.Path;
import deferent.search.path.PathSearch;
import deferent.search.path.Plan;
import java.util.List;
import org.junit.jupiter.api.Test;

class TellPathTest {
    private static final Path PATH =
            PathSearch.of(
                    Phrase.parse("static spin vs triquetra, tether 40 cm").pairing(),
                    Performer.USUAL,
                    Kit.USUAL,
                    Lexicon.EMPTY);
    private static final TellPath WORDS =
            new TellPath(PATH, Performer.USUAL, Kit.USUAL, Lexicon.EMPTY);

    private static String plan(long by, boolean wanted) {
        Plan plan = Plan.of(PATH, List.of(), Lexicon.EMPTY, 0, by, 20);
        return TellPath.plan(plan, wanted, day -> "day " + day).text();
    }

    @Test
    void everyDrillSaysWhatToDoWhetherItLinksAndWhatGoesWrong() {
        for (int n = 0; n < PATH.drills().size(); n++) {
            Told told = WORDS.drill(n);
            assertThat(told.text())
                    .containsPattern("[Ss]pin ")
                    .containsPattern("[Ll]ink")
                    .contains(" Often: ");
            assertThat(told.why()).contains("by our model").contains("Weights are our choice.");
        }
        assertThat(WORDS.drill(0).text()).contains("One hand alone has nothing to link with.");
        assertThat(WORDS.drill(PATH.drills().size() - 1).text())
                .contains("Linked, touching: the left head stays on the right hand");
    }

    @Test
    void aDateThatCannotBeKeptIsAnsweredInOneSentenceWithOneThatCan() {
        String told = plan(2, true);
        assertThat(told)
                .matches(
                        "At 20 minutes a day it cannot be ready by day 2; you could have it on day \\d+\\.");
        long ready = Long.parseLong(told.replaceAll(".*day (\\d+)\\.$", "$1"));
        assertThat(plan(ready, true))
                .isEqualTo(
                        "At 20 minutes a day you could have it on day "
                                + ready
                                + ", in time for day "
                                + ready
                                + ".");
        assertThat(plan(0, false))
                .isEqualTo("At 20 minutes a day you could have it on day " + ready + ".");
    }
}
