package deferent.sound.tune;

import java.util.List;
import java.util.stream.IntStream;

/**
 * Tunes to hold the finding of beats against. Their makers, seeds and tempi were settled before it
 * was tuned; it was tuned on {@link #forTuning} alone, and {@link #held} were kept away until then.
 */
public final class Pieces {
    private static final int COUNT = 120;
    private static final int TUNING = 40;
    private static final long HELD_SEED = 52_000;
    private static final long TUNING_SEED = 17_000;
    private static final double TAPPED = 0.02;
    private static final double SLOWEST = 60;
    private static final double QUICKEST = 180;

    private Pieces() {}

    /** 120 that were not tuned on, evenly from 60 to 180 beats a minute. */
    public static List<Tune> held(double seconds) {
        return pieces(COUNT, HELD_SEED, seconds);
    }

    /** 40 others of the same kinds. */
    public static List<Tune> forTuning(double seconds) {
        return pieces(TUNING, TUNING_SEED, seconds);
    }

    /**
     * Two taps of somebody who listens: on two beats in a row, a fifth to two fifths of the way
     * through, each off by a deviation of 20 ms.
     */
    public static List<Double> taps(Tune tune) {
        Dice dice = new Dice(tune.seed() + 2);
        List<Double> times = tune.beats().times();
        int beat = times.size() / 5 + dice.whole(Math.max(1, times.size() / 5));
        return List.of(
                times.get(beat) + TAPPED * dice.around(),
                times.get(beat + 1) + TAPPED * dice.around());
    }

    private static List<Tune> pieces(int count, long seed, double seconds) {
        return IntStream.range(0, count)
                .mapToObj(
                        i -> {
                            double tempo = SLOWEST + (QUICKEST - SLOWEST) * i / (count - 1);
                            Manner manner = Manner.drawn(seed + 2L * i, tempo, seconds);
                            return Tune.of(manner, seed + 2L * i + 1);
                        })
                .toList();
    }
}
