package deferent.tell;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Tether;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.photo.Led;
import deferent.reading.photo.PhotoReading;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class TellPhotoTest {
    private static final double HEAD = 0.07;

    private static Trace trace(Motion left, Motion right, double length, double tempo) {
        Pairing pairing =
                Pairing.of(part(Side.LEFT, left, length), part(Side.RIGHT, right, length));
        return Trace.of(pairing.withTempo(OptionalDouble.of(tempo)));
    }

    private static Part part(Side side, Motion motion, double length) {
        return new Part(motion, Tether.of(length), Place.usual(side, Plane.WALL), 1);
    }

    /** One turn a beat about a still hand: a circle in 60 / tempo seconds. */
    private static Trace circles(double tempo) {
        return trace(Motion.staticSpin(1, 0), Motion.staticSpin(1, Math.PI), 0.6, tempo);
    }

    private static PhotoReading blinking(Trace trace, double hertz, double duty) {
        return PhotoReading.of(
                trace, HEAD, Optional.of(new Led(hertz, duty)), OptionalDouble.empty());
    }

    @Test
    void aFigureLongerThanAnyMarkedSpeedIsHeldOpenByHand() {
        assertThat(told(PhotoReading.of(circles(1), HEAD), "photo.shutter"))
                .contains("hold the shutter open");
    }

    @Test
    void anExposureIsToldAgainstEachFigure() {
        Trace trace = trace(Motion.staticSpin(2, 0), Motion.flower(0.6, -2, 0), 0.6, 60);
        PhotoReading photo = PhotoReading.of(trace, HEAD, Optional.empty(), OptionalDouble.of(0.5));
        assertThat(told(photo, "photo.asked.left")).contains("its figure exactly once");
        assertThat(told(photo, "photo.asked.right")).contains("only 50% of its figure");
    }

    @Test
    void unaskedALightGoesOverItsFigureAsOftenAsTheAdvisedShutterLetsIt() {
        Trace trace = trace(Motion.staticSpin(2, 0), Motion.flower(0.6, -2, 0), 0.6, 60);
        PhotoReading photo = PhotoReading.of(trace, HEAD);
        assertThat(photo.open()).isEqualTo(photo.common().time());
        assertThat(told(photo, "photo.shutter.left"))
                .isEqualTo("In 1 s the left light draws its figure twice.");
        assertThat(told(photo, "photo.shutter"))
                .isEqualTo("Open the shutter for 1 s for exactly one whole figure of both lights.");
    }

    /** 20 blinks in half a second of which each round of half a second falls in the same places. */
    @Test
    void dotsAreCountedInTheShuttersTime() {
        Trace trace = trace(Motion.staticSpin(2, 0), Motion.flower(0.6, -2, 0), 0.6, 60);
        assertThat(told(blinking(trace, 40, 0.01), "photo.led.left")).contains("20 dots in 1 s");
        assertThat(told(blinking(trace, 40, 0.01), "photo.led.right")).contains("40 dots in 1 s");
        PhotoReading quarter =
                PhotoReading.of(
                        trace, HEAD, Optional.of(new Led(40, 0.01)), OptionalDouble.of(0.25));
        assertThat(told(quarter, "photo.led.left")).contains("10 dots in 0.25 s");
        assertThat(told(quarter, "photo.led.right")).contains("10 dots in 0.25 s");
        // 41 a second: the second round falls between the first one's.
        assertThat(told(blinking(trace, 41, 0.01), "photo.led.left")).contains("41 dots in 1 s");
    }

    @Test
    void whatIsAlikeOfBothLightsIsToldOnce() {
        PhotoReading photo = blinking(circles(60), 20, 0.5);
        assertThat(told(photo, "photo.seen")).contains("of either figure at once");
        assertThat(told(photo, "photo.led")).contains("either light leaves 20 ");
        assertThat(TellPhoto.of(photo)).extracting(Told::text).doesNotHaveDuplicates();
    }

    @Test
    void aHeadThatStaysInPlaceIsNoFigure() {
        Trace still = trace(Motion.staticSpin(0, 0), Motion.staticSpin(0, 1), 0.6, 60);
        assertThat(TellPhoto.of(PhotoReading.of(still, HEAD)))
                .extracting(Told::key)
                .containsExactly("photo.still");
    }

    /** Source: WCAG 2.2, success criterion 2.3.1: more than three flashes in a second. */
    @Test
    void moreThanThreeTurnsOrFlashesASecondAskForCare() {
        assertThat(TellPhoto.cautions(PhotoReading.of(circles(170), HEAD))).isEmpty();
        assertThat(TellPhoto.cautions(PhotoReading.of(circles(190), HEAD)))
                .singleElement()
                .asString()
                .contains("epilepsy");
        assertThat(TellPhoto.cautions(blinking(circles(60), 20, 0.5))).hasSize(1);
        assertThat(TellPhoto.cautions(blinking(circles(60), 400, 0.5))).isEmpty();
        assertThat(TellPhoto.cautions(blinking(circles(60), 20, 1))).isEmpty();
    }

    private static String told(PhotoReading photo, String key) {
        List<Told> all = TellPhoto.of(photo);
        return all.stream().filter(t -> t.key().equals(key)).findFirst().orElseThrow().text();
    }
}
