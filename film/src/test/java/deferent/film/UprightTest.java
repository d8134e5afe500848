package deferent.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.film.hand.Upright;
import deferent.film.light.LitSpot;
import deferent.film.measured.HowScaled;
import deferent.film.measured.Measured;
import deferent.film.words.TellFilm;
import deferent.motion.trace.Trace;
import deferent.motion.trial.TwelveClassics;
import deferent.tell.Told;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A camera that leans: gravity shows it where a hand keeps still, and nothing does elsewhere. */
class UprightTest {
    private static final double TETHER = 0.6;

    private static List<List<LitSpot>> leaning(String phrase, boolean figure, double degrees) {
        Trace trace = Classics.corded(TwelveClassics.turning(phrase, 70), figure).orElseThrow();
        double c = Math.cos(Math.toRadians(degrees));
        double s = Math.sin(Math.toRadians(degrees));
        return Classics.spots(trace, 9, 60, 4).stream()
                .map(spots -> spots.stream().map(spot -> turned(spot, c, s)).toList())
                .toList();
    }

    // Counter-clockwise about the picture's middle, its y going downward.
    private static LitSpot turned(LitSpot spot, double c, double s) {
        double[] m = turned(spot.x(), spot.y(), c, s);
        double[] a = turned(spot.ax(), spot.ay(), c, s);
        double[] b = turned(spot.bx(), spot.by(), c, s);
        return new LitSpot(spot.time(), m[0], m[1], a[0], a[1], b[0], b[1], 3, spot.glow(), 0, 0);
    }

    private static double[] turned(double x, double y, double c, double s) {
        double u = x - 960;
        double w = y - 540;
        return new double[] {960 + c * u + s * w, 540 - s * u + c * w};
    }

    private static FilmReading read(List<List<LitSpot>> frames, FilmAsk ask) {
        return FilmReading.of(frames, ask.tethered(TETHER), 1080, "film");
    }

    @ParameterizedTest
    @CsvSource({
        "pendulum amplitude 60° vs static spin, true, 3",
        "CAP riding pendulum, true, -2.6",
        "'static spin vs static spin, split time', false, 1.5"
    })
    void aStillHandsCordShowsHowTheCameraLeans(String phrase, boolean figure, double degrees) {
        FilmReading film =
                read(leaning(phrase, figure, degrees), FilmAsk.NOTHING.scaled(Classics.PIXEL));
        Upright upright = film.measured().upright();
        assertThat(upright.how()).isEqualTo(Upright.How.STILL_HAND);
        assertThat(Math.toDegrees(upright.roll())).isCloseTo(degrees, within(0.4));
        assertThat(Math.abs(upright.roll() - Math.toRadians(degrees)))
                .isLessThan(3 * upright.error());
        assertThat(TellFilm.of(film)).extracting(Told::key).contains("film.upright");
    }

    @Test
    void aStillHandShowsSizeAndLeanTogether() {
        Measured measured =
                read(leaning("pendulum amplitude 60° vs static spin", true, 3), FilmAsk.NOTHING)
                        .measured();
        assertThat(measured.how()).isEqualTo(HowScaled.STILL_HAND);
        assertThat(measured.scale().metres())
                .isCloseTo(Classics.PIXEL, within(0.02 * Classics.PIXEL));
        assertThat(Math.toDegrees(measured.upright().roll())).isCloseTo(3, within(0.5));
    }

    @Test
    void handsThatMoveShowNothingOfTheCamera() {
        FilmReading film =
                read(
                        leaning("extension vs triquetra", true, 2),
                        FilmAsk.NOTHING.scaled(Classics.PIXEL));
        assertThat(film.measured().upright()).isEqualTo(Upright.ASSUMED);
        assertThat(TellFilm.of(film)).extracting(Told::key).contains("film.camera");
    }

    @Test
    void whatIsSaidToBeUprightIsSetRight() {
        FilmAsk ask = FilmAsk.NOTHING.scaled(Classics.PIXEL).rolled(Math.toRadians(4));
        Measured turned = read(leaning("extension vs triquetra", true, 4), ask).measured();
        Measured level =
                read(
                                leaning("extension vs triquetra", true, 0),
                                FilmAsk.NOTHING.scaled(Classics.PIXEL))
                        .measured();
        for (double t = 0; t < 1; t += 0.1) {
            double[] a = turned.left().head().at(t)[0];
            double[] b = level.left().head().at(t)[0];
            assertThat(Math.hypot(a[0] - b[0], a[1] - b[1])).isLessThan(0.006);
        }
        // Back into the picture it lies where its light was seen.
        double[] at = turned.left().head().at(0.3)[0];
        double[] pixel = turned.scale().picture(at[0], at[1]);
        double[] flat = level.left().head().at(0.3)[0];
        double[] plain = level.scale().picture(flat[0], flat[1]);
        double c = Math.cos(Math.toRadians(4));
        double s = Math.sin(Math.toRadians(4));
        double[] expected = turned(plain[0], plain[1], c, s);
        assertThat(Math.hypot(pixel[0] - expected[0], pixel[1] - expected[1])).isLessThan(3);
    }
}
