package deferent.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.film.follow.HeadAt;
import deferent.film.light.LitSpot;
import deferent.film.measured.Measured.HowSided;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Trace;
import deferent.motion.trial.TwelveClassics;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Heads that somebody points at in one frame, where other lights move as they do. */
class PointedHeadsTest {
    private static final Pairing SPUN = TwelveClassics.turning("static spin vs triquetra", 70);
    private static final double AT = 3;

    private static Trace trace() {
        return Classics.corded(SPUN, true).orElseThrow();
    }

    // Somebody else spins beside them, brighter than both.
    private static List<List<LitSpot>> withAnother(List<List<LitSpot>> frames) {
        List<List<LitSpot>> crowded = new ArrayList<>();
        for (List<LitSpot> spots : frames) {
            List<LitSpot> all = new ArrayList<>(spots);
            double t = spots.get(0).time();
            for (int i = 0; i < 2; i++) {
                double x = 1500 + 150 * Math.cos(7 * t + i * 3);
                double y = 500 + 150 * Math.sin(7 * t + i * 3);
                all.add(0, new LitSpot(t, x, y, x - 9, y, x + 9, y, 3, 4000, 0, 0));
            }
            crowded.add(all);
        }
        return crowded;
    }

    private static FilmReading read(List<List<LitSpot>> frames, FilmAsk ask) {
        return FilmReading.of(frames, ask.scaled(Classics.PIXEL).tethered(0.6), 1080, "film");
    }

    private static HeadAt at(List<List<LitSpot>> frames, Side side) {
        int frame = (int) (AT * 30);
        double[] p = Classics.pixels(trace(), side, AT, 5);
        LitSpot near = frames.get(frame).get(0);
        for (LitSpot spot : frames.get(frame)) {
            near =
                    Math.hypot(spot.x() - p[0], spot.y() - p[1])
                                    < Math.hypot(near.x() - p[0], near.y() - p[1])
                            ? spot
                            : near;
        }
        // Nobody points at a head's very middle.
        return new HeadAt(AT, near.x() + 7, near.y() - 6);
    }

    @Test
    void twoHeadsPointedAtAreFollowedThroughWhatElseMoves() {
        List<List<LitSpot>> alone = Classics.spots(trace(), 8, 30, 5);
        List<List<LitSpot>> frames = withAnother(alone);
        FilmReading film =
                read(
                        frames,
                        FilmAsk.NOTHING
                                .pointing(at(alone, Side.RIGHT), at(alone, Side.LEFT))
                                .first(Side.RIGHT));
        assertThat(film.measured().period()).isCloseTo(SPUN.period(), within(0.002));
        assertThat(film.measured().sides()).isEqualTo(HowSided.SAID);
        assertThat(film.nearest().orElseThrow().phrase().orElseThrow())
                .startsWith("static spin vs triquetra");
    }

    @Test
    void nothingIsFollowedWhereNothingMoves() {
        List<List<LitSpot>> frames = Classics.spots(trace(), 8, 30, 5);
        HeadAt nowhere = new HeadAt(AT, 30, 30);
        assertThatThrownBy(
                        () ->
                                read(
                                        frames,
                                        FilmAsk.NOTHING.pointing(nowhere, at(frames, Side.LEFT))))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("shows nothing that moves");
    }

    @Test
    void oneLightIsNotBothHeads() {
        List<List<LitSpot>> frames = Classics.spots(trace(), 8, 30, 5);
        HeadAt left = at(frames, Side.LEFT);
        assertThatThrownBy(() -> read(frames, FilmAsk.NOTHING.pointing(left, left)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("are one light");
    }

    @Test
    void aPassageIsReadAlone() {
        // Another motion comes before it.
        Trace other =
                Classics.corded(
                                TwelveClassics.turning("isolation vs isolation, split time", 90),
                                true)
                        .orElseThrow();
        List<List<LitSpot>> frames = new ArrayList<>(Classics.spots(other, 6, 30, 5));
        for (List<LitSpot> spots : Classics.spots(trace(), 8, 30, 5)) {
            frames.add(spots.stream().map(s -> s.at(s.time() + 6)).toList());
        }
        FilmReading film = read(frames, FilmAsk.NOTHING.within(new Interval(6, 14)));
        assertThat(film.measured().period()).isCloseTo(SPUN.period(), within(0.002));
        assertThat(film.measured().seconds()).isCloseTo(8, within(0.1));
        assertThat(film.nearest().orElseThrow().phrase().orElseThrow())
                .startsWith("static spin vs triquetra");
    }
}
