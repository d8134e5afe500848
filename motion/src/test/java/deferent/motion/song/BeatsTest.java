package deferent.motion.song;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Refusal;
import java.util.List;
import org.junit.jupiter.api.Test;

final class BeatsTest {
    private static final Beats SLOWING = new Beats(List.of(1.0, 1.5, 2.0, 2.6, 3.3), 3, 1);

    @Test
    void everyTimeHasItsBeatAndEveryBeatItsTime() {
        for (double beat = -3; beat < 9; beat += 0.37) {
            assertThat(SLOWING.beat(SLOWING.time(beat))).isCloseTo(beat, within(1e-12));
        }
        assertThat(SLOWING.time(2.5)).isCloseTo(2.3, within(1e-12));
        assertThat(SLOWING.beat(3.3)).isEqualTo(4);
    }

    @Test
    void beforeTheFirstAndAfterTheLastBeatsGoOnAtTheUsualDistance() {
        assertThat(SLOWING.time(-1)).isCloseTo(1 - 0.55, within(1e-12));
        assertThat(SLOWING.time(6)).isCloseTo(3.3 + 2 * 0.55, within(1e-12));
    }

    @Test
    void aTempoIsOfTheUsualBeatOrTheMeanOfAPart() {
        assertThat(SLOWING.tempo()).isCloseTo(60 / 0.55, within(1e-9));
        assertThat(SLOWING.tempo(2, 4)).isCloseTo(60 * 2 / 1.3, within(1e-9));
        assertThat(Beats.even(0.2, 128, 40, 4).tempo()).isCloseTo(128, within(1e-9));
    }

    @Test
    void aBarIsCountedFromItsFirstBeat() {
        assertThat(List.of(0, 1, 2, 3, 4).stream().map(SLOWING::inBar))
                .containsExactly(3, 1, 2, 3, 1);
        assertThat(List.of(0, 1, 2, 3, 4).stream().map(SLOWING::bar))
                .containsExactly(0, 1, 1, 1, 2);
        assertThat(SLOWING.beginsBar(4)).isTrue();
        assertThat(SLOWING.beginsBar(0)).isFalse();
    }

    @Test
    void doubleTimeHalvedIsTheSongAgain() {
        Beats waltz = Beats.even(0.4, 90, 30, 3);
        assertThat(waltz.doubled().tempo()).isCloseTo(180, within(1e-9));
        assertThat(waltz.doubled().halved()).isEqualTo(waltz);
        assertThat(SLOWING.halved().times()).containsExactly(1.5, 2.6);
        assertThat(SLOWING.halved().beginsBar(0)).isTrue();
    }

    @Test
    void beatsThatDoNotFollowEachOtherAreRefused() {
        assertThatThrownBy(() -> new Beats(List.of(1.0, 1.0), 4, 0))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("beat 1 of a song");
        assertThatThrownBy(() -> new Beats(List.of(1.0), 4, 0)).hasMessageContaining("one alone");
        assertThatThrownBy(() -> new Beats(List.of(1.0, 2.0), 3, 3))
                .hasMessageContaining("first bar");
    }
}
