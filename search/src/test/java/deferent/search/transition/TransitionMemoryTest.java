package deferent.search.transition;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import org.junit.jupiter.api.Test;

class TransitionMemoryTest {
    private static final Pairing ARMS = phrase("extension vs extension, tether 40 cm, tempo 60");
    private static final Pairing SPIN = phrase("extension vs static spin, tether 40 cm, tempo 60");

    private static Pairing phrase(String said) {
        return Phrase.parse(said).pairing();
    }

    private static TransitionFinder finder(TransitionRequest request, TransitionMemory memory) {
        return new TransitionFinder(request, memory);
    }

    @Test
    void whoAsksTheSameAgainHasTheSameAnswerWhoeverAskedBefore() {
        TransitionMemory memory = new TransitionMemory();
        Transitions first = finder(TransitionRequest.USUAL, memory).between(ARMS, SPIN);
        TransitionFinder second = finder(TransitionRequest.USUAL, memory);
        assertThat(second.between(ARMS, SPIN)).isSameAs(first);
        assertThat(second.between(SPIN, ARMS)).isNotEqualTo(first);
        Transitions anew =
                finder(TransitionRequest.USUAL, new TransitionMemory()).between(ARMS, SPIN);
        assertThat(anew).isNotSameAs(first);
        assertThat(anew.list()).hasSameSizeAs(first.list());
        assertThat(anew.best().orElseThrow().jerk()).isEqualTo(first.best().orElseThrow().jerk());
    }

    @Test
    void anotherWishOrAnotherPerformerIsAnotherQuestion() {
        TransitionMemory memory = new TransitionMemory();
        TransitionFinder usual = finder(TransitionRequest.USUAL, memory);
        Transitions first = usual.between(ARMS, SPIN);
        TransitionRequest few = TransitionRequest.USUAL.withMost(1);
        assertThat(finder(few, memory).between(ARMS, SPIN).list()).hasSize(1);
        assertThat(first.list()).hasSizeGreaterThan(1);
        TransitionRequest small = TransitionRequest.USUAL.with(Performer.of(1.4));
        assertThat(finder(small, memory).pattern(ARMS)).isNotSameAs(usual.pattern(ARMS));
        assertThat(finder(few, memory).pattern(ARMS)).isSameAs(usual.pattern(ARMS));
    }
}
