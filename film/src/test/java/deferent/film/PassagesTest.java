package deferent.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.film.Passages.Passage;
import deferent.film.light.LitSpot;
import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Trace;
import deferent.motion.trial.TwelveClassics;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Films of several patterns, with cuts and pauses, and a long one, with {@code
 * -Ddeferent.deep=true} of an hour: as frames of spots.
 */
class PassagesTest {
    private static final String ONE = "static spin vs triquetra";
    private static final String OTHER = "isolation vs isolation, split time";
    private static final double RATE = 30;
    private static final boolean DEEP = Boolean.getBoolean("deferent.deep");

    private double now;

    private static Passages none() {
        return new Passages(
                FilmAsk.NOTHING.scaled(Classics.PIXEL).tethered(0.6), 1080, "practice.mp4");
    }

    private void spin(Passages into, String phrase, double seconds) {
        Trace trace = Classics.corded(TwelveClassics.turning(phrase, 90), true).orElseThrow();
        double from = now;
        // It goes on where it was, whenever it is asked for.
        double whole = trace.period() * Math.rint(seconds / trace.period());
        for (List<LitSpot> spots : Classics.spots(trace, whole, RATE, 8)) {
            into.add(spots.stream().map(s -> s.at(s.time() + from)).toList());
        }
        now += whole;
    }

    private static String name(Passage passage) {
        return passage.reading().nearest().orElseThrow().phrase().orElse("");
    }

    @Test
    void aCutInTheMiddleMakesTwoPassages() {
        Passages film = none();
        spin(film, ONE, 11);
        spin(film, OTHER, 9);
        List<Passage> passages = film.end();
        assertThat(passages).hasSize(2);
        assertThat(name(passages.get(0))).contains("triquetra");
        assertThat(name(passages.get(1))).contains("isolation");
        assertThat(passages.get(0).within().end()).isCloseTo(11, within(0.7));
        assertThat(passages.get(1).within().start()).isCloseTo(11, within(0.7));
        assertThat(passages.get(1).within().end()).isCloseTo(20, within(0.7));
    }

    @Test
    void aPauseParts() {
        Passages film = none();
        spin(film, ONE, 9);
        // Both heads hang.
        for (int i = 0; i < 4 * RATE; i++) {
            double t = now + i / RATE;
            film.add(
                    List.of(
                            new LitSpot(t, 900, 700, 899, 700, 901, 700, 3, 2000, 0, 0),
                            new LitSpot(t, 1000, 700, 999, 700, 1001, 700, 3, 2000, 0, 0)));
        }
        now += 4;
        spin(film, ONE, 9);
        List<Passage> passages = film.end();
        assertThat(passages).hasSize(2);
        assertThat(passages.get(0).within().end()).isCloseTo(9, within(0.8));
        assertThat(passages.get(1).within().start()).isCloseTo(13, within(0.8));
    }

    @Test
    void aLongFilmHoldsNoMoreFramesThanHalfAMinute() {
        Passages film = none();
        int most = 0;
        double part = DEEP ? 1200 : 40;
        for (String phrase : List.of(ONE, OTHER, ONE)) {
            double until = now + part;
            while (now < until) {
                spin(film, phrase, 20);
                most = Math.max(most, film.frames());
            }
        }
        List<Passage> passages = film.end();
        assertThat(most).isLessThanOrEqualTo((int) (Passages.HELD * RATE) + 1);
        assertThat(passages).extracting(PassagesTest::name).hasSize(3);
        assertThat(passages.get(2).within().end()).isCloseTo(now, within(1.0));
        assertThat(name(passages.get(1))).contains("isolation");
        assertThat(name(passages.get(2))).contains("triquetra");
    }

    @Test
    void nothingThatMovesIsNoPassage() {
        assertThatThrownBy(() -> none().end())
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("practice.mp4: shows no light that moves");
    }
}
