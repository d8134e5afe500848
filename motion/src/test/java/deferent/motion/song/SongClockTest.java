package deferent.motion.song;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

final class SongClockTest {
    private static Beats of(int count, DoubleUnaryOperator time) {
        return new Beats(
                IntStream.range(0, count).mapToObj(i -> time.applyAsDouble(i)).toList(), 4, 0);
    }

    /** From 120 to 132 beats a minute, bending in and out over {@code over} beats from the 40th. */
    private static double drifting(double beat, double over) {
        double x = Math.max(0, Math.min(1, (beat - 40) / over));
        double quicker = over * (x * x * x - x * x * x * x / 2) + Math.max(0, beat - 40 - over);
        return 0.5 * beat - (0.5 - 60.0 / 132) * quicker;
    }

    private static double worst(
            SongClock clock, DoubleUnaryOperator meant, double from, double to) {
        double worst = 0;
        for (double beat = from; beat <= to; beat += 0.25) {
            double off = clock.time(clock.onBeat(beat)) - meant.applyAsDouble(beat);
            worst = Math.max(worst, Math.abs(off));
        }
        return worst;
    }

    @Test
    void anEvenSongIsItsPlanShiftedAndStretched() {
        SongClock clock = SongClock.of(Beats.even(0.3, 120, 200, 4), 8, 100);
        assertThat(clock.time(0)).isCloseTo(0.3 + 4, within(1e-9));
        assertThat(clock.time(60)).isCloseTo(0.3 + 4 + 50, within(1e-9));
        assertThat(clock.rate(17)).isCloseTo(1.2, within(1e-9));
        assertThat(clock.farthest(0, 60)).isLessThan(1e-9);
        assertThat(clock.beat(clock.onBeat(11.25))).isCloseTo(11.25, within(1e-12));
    }

    @Test
    void aDriftOfATenthIsFollowedWithinAFewMilliseconds() {
        for (double over : new double[] {60, 120, 240}) {
            SongClock clock = SongClock.of(of(400, b -> drifting(b, over)), 0, 120);
            assertThat(worst(clock, b -> drifting(b, over), 0, 399)).isLessThan(0.003);
            assertThat(clock.rate(clock.onBeat(10))).isCloseTo(1, within(1e-3));
            assertThat(clock.rate(clock.onBeat(390))).isCloseTo(1.1, within(1e-3));
        }
        // A tenth quicker within eight seconds.
        SongClock hurried = SongClock.of(of(400, b -> drifting(b, 16)), 0, 120);
        assertThat(worst(hurried, b -> drifting(b, 16), 0, 399)).isLessThan(0.008);
    }

    @Test
    void oneBeatThatFallsLateIsNotFollowed() {
        double[] breath = new Random(3).doubles(100, -0.003, 0.003).toArray();
        for (int late : new int[] {0, 1, 5, 50, 98, 99}) {
            DoubleUnaryOperator played = b -> 0.5 * b + breath[(int) b];
            SongClock with =
                    SongClock.of(
                            of(100, b -> played.applyAsDouble(b) + (b == late ? 0.025 : 0)),
                            0,
                            120);
            SongClock without = SongClock.of(of(100, played), 0, 120);
            double moved = worst(with, b -> without.time(without.onBeat(b)), 0, 99);
            assertThat(moved).as("beat %s", late).isLessThan(0.002);
            assertThat(with.farthest(0, 60)).isGreaterThan(0.020);
        }
        // Where all others are as even as a machine's, none counts as an exception.
        for (int late : new int[] {0, 1, 5, 50, 98, 99}) {
            SongClock even = SongClock.of(of(100, b -> 0.5 * b + (b == late ? 0.025 : 0)), 0, 120);
            assertThat(worst(even, b -> 0.5 * b, 0, 99)).as("beat %s", late).isLessThan(0.011);
        }
    }

    @Test
    void beatsThatAllWaverAreSmoothed() {
        Random random = new Random(5);
        double[] off = random.doubles(400, -0.025, 0.025).toArray();
        SongClock clock = SongClock.of(of(400, b -> 0.5 * b + off[(int) b]), 0, 120);
        assertThat(worst(clock, b -> 0.5 * b, 10, 390)).isLessThan(0.018);
        SongClock.Tempi tempi = clock.tempi(clock.onBeat(10), clock.onBeat(390));
        // From one kept beat to the next it would be up to 133 beats a minute.
        assertThat(tempi.slowest()).isGreaterThan(114);
        assertThat(tempi.fastest()).isLessThan(126);
    }

    @Test
    void itRisesAndBendsWithoutABreak() {
        Random random = new Random(17);
        for (int song = 0; song < 60; song++) {
            List<Double> times = new ArrayList<>(List.of(0.0));
            int count = 2 + random.nextInt(60);
            for (int i = 1; i < count; i++) {
                // Now and then it stops for long, or a beat was tapped twice.
                double apart = random.nextInt(12) == 0 ? random.nextBoolean() ? 7 : 0.01 : 0.5;
                times.add(times.get(i - 1) + apart * (0.8 + 0.4 * random.nextDouble()));
            }
            SongClock clock = SongClock.of(new Beats(times, 4, 0), -3, 120);
            double before = clock.time(-5);
            for (double plan = -4.99; plan < count * 0.5 + 5; plan += 0.01) {
                double now = clock.time(plan);
                assertThat(now).isGreaterThan(before);
                assertThat(clock.plan(now)).isCloseTo(plan, within(1e-6));
                before = now;
            }
            for (int beat = -1; beat <= count; beat++) {
                double at = clock.onBeat(beat);
                assertThat(bend(clock, at + 1e-4)).isCloseTo(bend(clock, at - 1e-4), within(0.05));
            }
        }
    }

    /** How quickly the rate's inverse changes, by differences of the clock's own rate. */
    private static double bend(SongClock clock, double plan) {
        double by = 1e-5;
        return (1 / clock.rate(plan + by) - 1 / clock.rate(plan - by)) / (2 * by);
    }

    @Test
    void theRateIsTheSlopeAndTheTempiAreItsEnds() {
        SongClock clock = SongClock.of(of(300, b -> 0.5 * b + 0.4 * Math.sin(b / 9)), 4, 110);
        double slowest = 1e9;
        double fastest = 0;
        for (double plan = 3; plan <= 140; plan += 0.001) {
            double slope = (clock.time(plan + 1e-5) - clock.time(plan - 1e-5)) / 2e-5;
            assertThat(1 / clock.rate(plan)).isCloseTo(slope, within(1e-6));
            slowest = Math.min(slowest, clock.tempo(plan));
            fastest = Math.max(fastest, clock.tempo(plan));
        }
        assertThat(clock.tempi(3, 140).slowest()).isCloseTo(slowest, within(1e-4));
        assertThat(clock.tempi(3, 140).fastest()).isCloseTo(fastest, within(1e-4));
        assertThat(fastest).isGreaterThan(slowest + 5);
        assertThat(clock.tempi(20, 20).fastest()).isEqualTo(clock.tempo(20));
    }

    @Test
    void aPlanWithoutATempoIsRefused() {
        Beats beats = Beats.even(0, 120, 8, 4);
        assertThatThrownBy(() -> SongClock.of(beats, 0, 0))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("tempo of a plan");
        assertThatThrownBy(() -> SongClock.of(beats, Double.NaN, 120))
                .hasMessageContaining("beat on which a plan begins");
    }
}
