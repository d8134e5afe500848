package deferent.tell;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Phrase;
import deferent.search.transition.Hindrance;
import deferent.search.transition.TransitionRequest;
import deferent.search.transition.Transitions;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class TellTransitionTest {
    private static Pairing at(String phrase, double tether) {
        return Phrase.parse(phrase).with(Tether.of(tether)).withTempo(OptionalDouble.of(50));
    }

    @Test
    void aMomentIsSaidByTheCountsThatTheStageCounts() {
        Pairing pairing = at("extension vs three-petal in-spin", 0.4);
        double cycle = pairing.period();
        assertThat(TellTransition.count(pairing, 0)).isEqualTo("on 1");
        assertThat(TellTransition.count(pairing, cycle / 2)).isEqualTo("on 3");
        assertThat(TellTransition.count(pairing, cycle * 0.99)).isEqualTo("on 1");
        assertThat(TellTransition.count(pairing, cycle * 1.375)).isEqualTo("between 2 and 3");
        assertThat(TellTransition.count(pairing, cycle * 0.875)).isEqualTo("between 4 and 1");
        assertThat(TellTransition.count(pairing, cycle * 0.3125)).isEqualTo("just after 2");
        assertThat(TellTransition.count(pairing, cycle * 0.4375)).isEqualTo("just before 3");
        Pairing once = at("extension vs extension", 0.4);
        assertThat(TellTransition.count(once, cycle / 2)).isEqualTo("halfway to the next 1");
    }

    @Test
    void whatLeadsOnSaysWhichHandDoesWhatAndHowHardItIs() {
        Transitions found =
                Transitions.between(
                        at("extension vs triquetra", 0.4), at("extension vs extension", 0.4));
        List<Told> told = TellTransition.of(found);
        assertThat(told).hasSize(found.list().size() + 1);
        assertThat(told.get(1).text())
                .containsPattern("[Oo]n [12]|[Bb]etween [12] and [12]|[Jj]ust (after|before) [12]")
                .containsPattern("\\bhands?\\b")
                .containsPattern(": (easy|with practice|hard)\\.$");
    }

    @Test
    void everyReasonThatNothingLeadsOnIsSaid() {
        for (Hindrance why : Hindrance.values()) {
            assertThat(TellTransition.because(why).isEmpty()).isEqualTo(why == Hindrance.NONE);
        }
        Transitions none =
                Transitions.between(
                        at("extension vs extension", 0.4),
                        at("extension vs extension", 0.35),
                        TransitionRequest.USUAL);
        assertThat(TellTransition.of(none).get(0).text())
                .isEqualTo("Nothing leads from the first into the second: the tethers differ.");
    }
}
