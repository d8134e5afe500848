package deferent.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.film.light.LitSpot;
import deferent.film.measured.HowScaled;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.trial.TwelveClassics;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class MetresTest {
    private static List<List<LitSpot>> film(String phrase) {
        Pairing spun = TwelveClassics.turning(phrase, 60);
        return Classics.spots(Classics.corded(spun, true).orElseThrow(), 10, 30, 2);
    }

    @Test
    void aPendulumsStillHandTellsHowLargeThePictureIs() {
        FilmReading film =
                FilmReading.of(
                        film("pendulum amplitude 60° vs static spin"),
                        FilmAsk.NOTHING.tethered(0.6),
                        1080,
                        "film");
        assertThat(film.measured().how()).isEqualTo(HowScaled.STILL_HAND);
        assertThat(film.measured().scale().metres())
                .isCloseTo(Classics.PIXEL, within(0.03 * Classics.PIXEL));
    }

    @Test
    void lightsAloneDoNotTellHowLargeThePictureIs() {
        assertThatThrownBy(
                        () ->
                                FilmReading.of(
                                        film("extension vs triquetra"),
                                        FilmAsk.NOTHING.tethered(0.6),
                                        1080,
                                        "film"))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("cannot be known from the lights alone");
    }

    @Test
    void oneLightIsNotEnough() {
        List<List<LitSpot>> one = new ArrayList<>();
        for (List<LitSpot> spots : film("static spin vs triquetra")) {
            one.add(spots.subList(0, 1));
        }
        assertThatThrownBy(() -> FilmReading.of(one, FilmAsk.NOTHING, 1080, "practice.mp4"))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("practice.mp4: shows one moving light alone");
    }

    @Test
    void aDarkFilmShowsNoLight() {
        List<List<LitSpot>> dark = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            dark.add(List.of());
        }
        assertThatThrownBy(() -> FilmReading.of(dark, FilmAsk.NOTHING, 1080, "practice.mp4"))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("shows no light that moves");
    }
}
