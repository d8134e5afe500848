package deferent.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.film.held.KeptAs;
import deferent.film.held.NearestPairing;
import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Side;
import deferent.motion.trade.Seen;
import deferent.motion.trade.Trade;
import deferent.motion.trial.TwelveClassics;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Which hand is which cannot be told from lights about one centre: names count either way. */
class FilmNamesTest {
    private static final double SECONDS = 7;

    static Stream<String> classics() {
        return TwelveClassics.ALL.stream();
    }

    private static List<String> names(Pairing pairing) {
        return Stream.of(Side.values())
                .map(side -> Trade.called(Seen.of(pairing, side)).name())
                .sorted()
                .toList();
    }

    private static NearestPairing named(
            Pairing pairing, boolean figure, double seconds, double rate) {
        return FilmReading.of(
                        Classics.spots(
                                Classics.corded(pairing, figure).orElseThrow(), seconds, rate, 5),
                        FilmAsk.NOTHING.scaled(Classics.PIXEL).tethered(0.6),
                        1080,
                        "film")
                .nearest()
                .orElseThrow();
    }

    @ParameterizedTest
    @MethodSource("classics")
    void aClassicIsCalledByItsName(String phrase) {
        Pairing spun = TwelveClassics.turning(phrase, 70);
        NearestPairing nearest = named(spun, true, SECONDS, 30);
        assertThat(names(nearest.pairing())).isEqualTo(names(spun));
        assertThat(nearest.pairing().direction()).isEqualTo(spun.direction());
        assertThat(nearest.pairing().timing().ahead()).isEqualTo(spun.timing().ahead());
        assertThat(nearest.pairing().period()).isCloseTo(spun.period(), within(0.01));
        assertThat(nearest.off()).isLessThan(0.02);
        assertThat(nearest.kept().values()).containsOnly(KeptAs.FIGURE);
    }

    @Test
    void aHandThatKeepsItsCircleIsSeenToThoughItsPoiDoesNot() {
        Pairing spun = TwelveClassics.turning("isolation vs isolation, split time", 100);
        NearestPairing nearest = named(spun, false, 12, 60);
        assertThat(names(nearest.pairing())).isEqualTo(names(spun));
        assertThat(nearest.pairing().timing().ahead()).isEqualTo(0.5);
        assertThat(nearest.kept().values()).containsOnly(KeptAs.HAND_PATH);
    }

    @Test
    void aSmallIsolationIsNamedWithItsSize() {
        Pairing spun = TwelveClassics.turning("isolation hand radius 20 cm vs static spin", 70);
        assertThat(named(spun, true, SECONDS, 30).phrase().orElseThrow())
                .contains("hand radius 20 cm");
    }
}
