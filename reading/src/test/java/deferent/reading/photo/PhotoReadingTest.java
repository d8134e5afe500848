package deferent.reading.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Tether;
import deferent.motion.shared.Side;
import deferent.motion.trace.Figure;
import deferent.motion.trace.Trace;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PhotoReadingTest {
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

    private static HeadLight left(PhotoReading photo) {
        return photo.left().orElseThrow();
    }

    private static PhotoReading blinking(Trace trace, double hertz, double duty) {
        return PhotoReading.of(
                trace, HEAD, Optional.of(new Led(hertz, duty)), OptionalDouble.empty());
    }

    @Test
    void oneFigureTakesOneTurnOfThePoi() {
        PhotoReading photo = PhotoReading.of(circles(60), HEAD);
        assertThat(photo.common().time()).isCloseTo(1, within(1e-12));
        assertThat(left(photo).figure().time()).isCloseTo(1, within(1e-12));
        assertThat(left(photo).figure().third().mark()).isEqualTo("1 s");
        assertThat(left(photo).figure().closes().orElseThrow().mark()).isEqualTo("1 s");
        assertThat(left(photo).length()).isCloseTo(2 * Math.PI * 0.6, within(1e-9));
    }

    @Test
    void threeTurnsInACycleDrawTheSameCircleThreeTimes() {
        Trace trace = trace(Motion.staticSpin(3, 0), Motion.flower(0.6, -2, 0), 0.6, 60);
        PhotoReading photo = PhotoReading.of(trace, HEAD);
        assertThat(photo.common().time()).isCloseTo(1, within(1e-12));
        assertThat(left(photo).figure().time()).isCloseTo(1 / 3.0, within(1e-12));
        assertThat(photo.right().orElseThrow().figure().time()).isCloseTo(1, within(1e-12));
        assertThat(photo.right().orElseThrow().length())
                .isCloseTo(Figure.of(trace, Side.RIGHT).length(), within(1e-6));
    }

    @Test
    void bothFiguresAreClosedWhenBothLightsAreBackOnTheirWays() {
        // Four rounds and six rounds in a second: two of one and three of the other in half of it.
        Trace trace = trace(Motion.staticSpin(4, 0), Motion.staticSpin(-6, 0), 0.6, 240);
        assertThat(trace.period()).isCloseTo(1, within(1e-12));
        PhotoReading photo = PhotoReading.of(trace, HEAD);
        assertThat(photo.common().time()).isCloseTo(0.5, within(1e-12));
        assertThat(left(photo).figure().time()).isCloseTo(0.25, within(1e-12));
        Trace alone = trace(Motion.staticSpin(4, 0), Motion.staticSpin(0, 0), 0.6, 240);
        assertThat(PhotoReading.of(alone, HEAD).common().time()).isCloseTo(0.25, within(1e-12));
    }

    /**
     * Marks are rounded names for powers of two: 1/60 is 1/64 s, 1/125 is 1/128 s, 30 s is 32 s
     * (common practice, no source; the full stops themselves: ISO 516, from memory).
     */
    @ParameterizedTest
    @CsvSource({
        "1/60, 64",
        "1/125, 128",
        "1/15, 16",
        "1/30, 32",
        "1/8000, 8192",
        "30 s, 0.03125",
        "1/2, 2",
        "1 s, 1",
        "8 s, 0.125"
    })
    void aFullStopIsAPowerOfTwo(String mark, double under) {
        Shutter shutter =
                Shutter.MARKED.stream()
                        .filter(s -> s.mark().equals(mark))
                        .findFirst()
                        .orElseThrow();
        assertThat(shutter.full()).isTrue();
        assertThat(shutter.seconds()).isCloseTo(1 / under, within(1e-12));
    }

    @Test
    void marksKeepWithinAFourteenthOfTheirPowersAndRiseByThirds() {
        assertThat(Shutter.MARKED).hasSize(55);
        for (int i = 0; i < Shutter.MARKED.size(); i++) {
            Shutter shutter = Shutter.MARKED.get(i);
            assertThat(shutter.marked() / shutter.seconds()).isBetween(1 - 0.07, 1 + 0.07);
            if (i > 0) {
                Shutter before = Shutter.MARKED.get(i - 1);
                assertThat(shutter.marked()).isGreaterThan(before.marked());
                assertThat(shutter.stopsOver(before.seconds())).isCloseTo(1 / 3.0, within(1e-12));
            }
        }
    }

    @Test
    void ninetyAMinuteIsNearestToTwoThirdsOfASecondAndClosedByTheNextThird() {
        FigureTime figure = PhotoReading.of(circles(90), HEAD).common();
        assertThat(figure.time()).isCloseTo(2 / 3.0, within(1e-12));
        assertThat(figure.full().mark()).isEqualTo("1/2");
        assertThat(figure.third().mark()).isEqualTo("0.6 s");
        assertThat(figure.closes().orElseThrow().mark()).isEqualTo("0.8 s");
        assertThat(figure.figures(figure.third().seconds())).isCloseTo(0.945, within(0.001));
    }

    @Test
    void aFigureLongerThanAnyMarkedSpeedIsHeldOpenByHand() {
        FigureTime figure = PhotoReading.of(circles(1), HEAD).common();
        assertThat(figure.closes()).isEmpty();
    }

    /**
     * Exposure for repeating flash = flashes / frequency: 10 at 5 Hz take 2 s, 4 at 20 Hz a fifth,
     * 5 at 5 Hz a second. Source: the worked examples in handbooks of repeating flash units, common
     * practice. Read backwards: so many images of a light that goes round once in that time.
     */
    @ParameterizedTest
    @CsvSource({"10, 5, 2", "4, 20, 0.2", "5, 5, 1", "10, 100, 0.1"})
    void aBlinkingLightLeavesExposureTimesRateImages(int images, double hertz, double exposure) {
        Blinks blinks = left(blinking(circles(60 / exposure), hertz, 0.01)).blinks().orElseThrow();
        assertThat(blinks.figure()).isCloseTo(images, within(1e-9));
        assertThat(blinks.stands()).isTrue();
        assertThat(blinks.pitch().mean()).isCloseTo(2 * Math.PI * 0.6 / images, within(1e-9));
    }

    /**
     * A streak is as long as the subject's speed times the time it is lit: any handbook of
     * photography (Ray, Applied Photographic Optics, from memory). A circle of 60 cm once a second
     * goes at 3.770 m/s: a 400 Hz light lit for half of each blink moves 4.71 mm while lit.
     */
    @Test
    void aStreakIsSpeedTimesTheTimeItIsLit() {
        Blinks blinks = left(blinking(circles(60), 400, 0.5)).blinks().orElseThrow();
        assertThat(blinks.figure()).isCloseTo(400, within(1e-9));
        assertThat(blinks.dash().mean()).isCloseTo(0.004712, within(1e-6));
        assertThat(blinks.dash().least()).isCloseTo(blinks.dash().greatest(), within(1e-9));
        assertThat(blinks.dark().mean()).isCloseTo(0.004712, within(1e-6));
        // Seven centimetres of light over half a centimetre of dark: no gap is left.
        assertThat(blinks.unbroken()).isEqualTo(1);
        Blinks sparse = left(blinking(circles(60), 20, 0.1)).blinks().orElseThrow();
        assertThat(sparse.unbroken()).isZero();
        assertThat(sparse.dark().mean()).isCloseTo(0.9 * 2 * Math.PI * 0.6 / 20, within(1e-9));
    }

    /**
     * A seconds pendulum, 0.994 m, swings to and fro in 2 s; flashed ten times a second it leaves
     * twenty images, crowded at the ends of the swing and widest apart in the middle, where it goes
     * at amplitude × 2π/2 s. Source: small swings of a pendulum, any mechanics textbook.
     */
    @Test
    void aSecondsPendulumFlashedTenTimesASecondLeavesTwentyImages() {
        double length = Gravity.STANDARD / (Math.PI * Math.PI);
        assertThat(length).isCloseTo(0.994, within(0.0005));
        double swing = Math.toRadians(4);
        Trace trace =
                Trace.of(
                        Pairing.of(
                                part(Side.LEFT, Motion.pendulum(swing), length),
                                part(Side.RIGHT, Motion.pendulum(swing), length)));
        PhotoReading photo = blinking(trace, 10, 0.001);
        assertThat(left(photo).figure().time()).isCloseTo(2, within(0.002));
        assertThat(left(photo).speed()).isCloseTo(Math.PI * swing * length, within(2e-4));
        Blinks blinks = left(photo).blinks().orElseThrow();
        assertThat(blinks.figure()).isCloseTo(20, within(0.02));
        // x = A·cos(πt): a tenth of a second about the middle is 2A·sin(π/20).
        double amplitude = swing * length;
        assertThat(blinks.pitch().greatest())
                .isCloseTo(2 * amplitude * Math.sin(Math.PI / 20), within(1e-4));
        // About the end it goes and comes back, each a twentieth of a second.
        assertThat(blinks.pitch().least())
                .isCloseTo(2 * amplitude * (1 - Math.cos(Math.PI / 20)), within(1e-4));
    }

    @Test
    void aFilmLeavesNoGapsWhereTheLightMovesLessThanItsOwnWidth() {
        PhotoReading photo = PhotoReading.of(circles(60), HEAD);
        assertThat(photo.frames()).isCloseTo(2 * Math.PI * 0.6 / HEAD, within(1e-6));
        Trace flower = trace(Motion.flower(0.6, -2, 0), Motion.flower(0.3, 1, Math.PI), 0.6, 60);
        PhotoReading drawn = PhotoReading.of(flower, HEAD);
        double rate = drawn.frames() * 1.0001;
        for (Side side : Side.values()) {
            double most = 0;
            for (int i = 0; i < 5000; i++) {
                double time = i / 5000.0;
                most =
                        Math.max(
                                most,
                                flower.head(side)
                                        .position(time)
                                        .distance(flower.head(side).position(time + 1 / rate)));
            }
            assertThat(most).isLessThan(HEAD);
        }
        // Hand and poi against each other: fastest where both speeds add, ω(R + 2L).
        assertThat(left(drawn).speed()).isCloseTo(2 * Math.PI * 1.8, within(1e-6));
    }

    /**
     * Visible persistence: about 100 ms, 60 to 200 ms. Sources: Coltheart, Perception &amp;
     * Psychophysics 27 (1980), from memory; Farrell (1984), from memory; Gauch and Kerzel, Vision
     * Research 49 (2009): at least 60 to 80 ms.
     */
    @Test
    void atAnEasyTempoNoEyeSeesTheWholeFigureAtOnce() {
        Persistence slow = left(PhotoReading.of(circles(60), HEAD)).seen();
        assertThat(slow.whole()).isEqualTo(Persistence.Whole.NEVER);
        assertThat(slow.least()).isCloseTo(0.06, within(1e-9));
        assertThat(slow.usual()).isCloseTo(0.1, within(1e-9));
        assertThat(slow.most()).isCloseTo(0.2, within(1e-9));
        Persistence fast = left(PhotoReading.of(circles(360), HEAD)).seen();
        assertThat(fast.whole()).isEqualTo(Persistence.Whole.PERHAPS);
        assertThat(fast.least()).isLessThan(1);
        Trace whirled = trace(Motion.staticSpin(20, 0), Motion.flower(0.6, -2, 0), 0.6, 60);
        assertThat(left(PhotoReading.of(whirled, HEAD)).seen().whole())
                .isEqualTo(Persistence.Whole.ALWAYS);
    }

    @Test
    void aHeadThatStaysInPlaceIsNoFigure() {
        Trace still = trace(Motion.staticSpin(0, 0), Motion.staticSpin(0, 1), 0.6, 60);
        PhotoReading photo = PhotoReading.of(still, HEAD);
        assertThat(photo.lights()).isEmpty();
    }

    @Test
    void aLightThatCannotBeIsRefused() {
        Trace trace = circles(60);
        assertThatThrownBy(() -> new Led(0, 0.5)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> new Led(400, 0)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> new Led(400, 1.5)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> PhotoReading.of(trace, 0)).isInstanceOf(Refusal.class);
        assertThatThrownBy(
                        () -> PhotoReading.of(trace, HEAD, Optional.empty(), OptionalDouble.of(-1)))
                .isInstanceOf(Refusal.class);
    }
}
