package deferent.sound;

import java.util.Arrays;
import org.hipparchus.transform.DftNormalization;
import org.hipparchus.transform.FastFourierTransformer;
import org.hipparchus.transform.TransformType;

/**
 * How far apart the beats of a song are, second by second.
 *
 * <p>Of each {@value #WINDOW} s the onset strength is held against itself later (autocorrelation),
 * summed over one, two, three and four beats; the most likely course through these is the one that
 * repeats best and bends least (Viterbi 1967), under a prior for usual tempi, lognormal about
 * {@value #USUAL} beats a minute, as Ellis (2007, section 3.2) has it, or about the tempo that was
 * said. So a tempo may drift by some hundredths a second, but never leap to its double.
 */
final class TempoCurve {
    /** Seconds that are looked at at once. */
    static final int WINDOW = 10;

    /** Beats a minute. */
    static final double USUAL = 110;

    private static final int AN_OCTAVE = 60;
    private static final int STATES =
            (int) Math.round(AN_OCTAVE * log2(SaidLevel.QUICKEST / SaidLevel.SLOWEST)) + 1;
    private static final int FFT = 2048;
    private static final int MOST_STEP = 3;

    /**
     * Deviation of the prior, octaves; this and the next two were chosen on the tunes for tuning.
     */
    private static final double WIDTH = 0.9;

    /** The same about a tempo that was said or tapped. */
    private static final double SAID_WIDTH = 0.15;

    /** How much the prior counts beside what is heard in one second. */
    private static final double PRIOR = 0.35;

    /** What a step of tempo costs, each a sixtieth of an octave, squared. */
    private static final double BEND = 0.05;

    private final int[] course;
    private final double clarity;
    private final double sureness;

    private TempoCurve(int[] course, double clarity, double sureness) {
        this.course = course;
        this.clarity = clarity;
        this.sureness = sureness;
    }

    static double log2(double of) {
        return Math.log(of) / Math.log(2);
    }

    /** Beats a minute of a state. */
    private static double tempo(double state) {
        return SaidLevel.SLOWEST * Math.pow(2, state / AN_OCTAVE);
    }

    static TempoCurve of(float[] strength, SaidLevel level) {
        int steps = Math.max(1, strength.length / Onsets.RATE);
        double[][] scores = new double[steps][];
        double[] clear = new double[steps];
        for (int s = 0; s < steps; s++) {
            double[] repeats = repeats(strength, s * Onsets.RATE + Onsets.RATE / 2);
            scores[s] = combed(repeats);
        }
        double[] prior = prior(level);
        int[] course = course(scores, prior);
        for (int s = 0; s < steps; s++) {
            clear[s] = scores[s][course[s]];
        }
        double clarity = Arrays.stream(clear).average().orElse(0);
        return new TempoCurve(course, clarity, sureness(scores, prior, course));
    }

    private static double[] prior(SaidLevel level) {
        double about = level.period().isPresent() ? 60 / level.period().getAsDouble() : USUAL;
        double within = level.period().isPresent() ? SAID_WIDTH : WIDTH;
        double[] prior = new double[STATES];
        for (int i = 0; i < STATES; i++) {
            double off = log2(tempo(i) / about) / within;
            prior[i] = -PRIOR * off * off / 2;
        }
        return prior;
    }

    /** How well the strength about a moment repeats after each number of moments; 1 is wholly. */
    private static double[] repeats(float[] strength, int about) {
        double[][] work = new double[2][FFT];
        int half = WINDOW * Onsets.RATE / 2;
        int from = Math.max(0, Math.min(about - half, strength.length - 2 * half));
        int to = Math.min(strength.length, from + 2 * half);
        double mean = 0;
        for (int i = from; i < to; i++) {
            mean += Math.min(4, strength[i]) / (to - from);
        }
        for (int i = from; i < to; i++) {
            work[0][i - from] = Math.min(4, strength[i]) - mean;
        }
        FastFourierTransformer.transformInPlace(
                work, DftNormalization.STANDARD, TransformType.FORWARD);
        for (int k = 0; k < FFT; k++) {
            work[0][k] = work[0][k] * work[0][k] + work[1][k] * work[1][k];
            work[1][k] = 0;
        }
        FastFourierTransformer.transformInPlace(
                work, DftNormalization.STANDARD, TransformType.INVERSE);
        double whole = Math.max(1e-9, work[0][0]);
        double[] repeats = new double[FFT / 2];
        int length = to - from;
        for (int lag = 0; lag < repeats.length && lag < length; lag++) {
            // Fewer moments are left to compare the later it is.
            repeats[lag] = work[0][lag] / whole * length / Math.max(length / 3.0, length - lag);
        }
        return repeats;
    }

    private static double[] combed(double[] repeats) {
        double[] scores = new double[STATES];
        for (int i = 0; i < STATES; i++) {
            double period = 60 * Onsets.RATE / tempo(i);
            double sum = 0;
            double weights = 0;
            for (int k = 1; k <= 4; k++) {
                double weight = 1.0 / k;
                sum += weight * at(repeats, k * period);
                weights += weight;
            }
            scores[i] = sum / weights;
        }
        return scores;
    }

    /** The best within a little of a place, since states stand in steps. */
    private static double at(double[] repeats, double lag) {
        int reach = (int) Math.ceil(0.006 * lag);
        double best = Double.NEGATIVE_INFINITY;
        int about = (int) Math.round(lag);
        for (int i = about - reach; i <= about + reach; i++) {
            if (i > 0 && i < repeats.length) {
                best = Math.max(best, repeats[i]);
            }
        }
        return best == Double.NEGATIVE_INFINITY ? 0 : best;
    }

    private static int[] course(double[][] scores, double[] prior) {
        int steps = scores.length;
        int[][] from = new int[steps][STATES];
        double[] now = new double[STATES];
        for (int s = 0; s < steps; s++) {
            double[] next = new double[STATES];
            for (int i = 0; i < STATES; i++) {
                double best = s == 0 ? 0 : Double.NEGATIVE_INFINITY;
                for (int d = -MOST_STEP; s > 0 && d <= MOST_STEP; d++) {
                    int j = i + d;
                    if (j >= 0 && j < STATES && now[j] - BEND * d * d > best) {
                        best = now[j] - BEND * d * d;
                        from[s][i] = j;
                    }
                }
                next[i] = best + scores[s][i] + prior[i];
            }
            now = next;
        }
        int[] course = new int[steps];
        for (int i = 1; i < STATES; i++) {
            course[steps - 1] = now[i] > now[course[steps - 1]] ? i : course[steps - 1];
        }
        for (int s = steps - 1; s > 0; s--) {
            course[s - 1] = from[s][course[s]];
        }
        return course;
    }

    /**
     * How much better the course is than the best that is nowhere near it, a share of a whole
     * repetition.
     */
    private static double sureness(double[][] scores, double[] prior, int[] course) {
        double[] mean = new double[STATES];
        for (int s = 0; s < scores.length; s++) {
            for (int i = 0; i < STATES; i++) {
                mean[i] += (scores[s][i] + prior[i]) / scores.length;
            }
        }
        int usual = course[course.length / 2];
        double other = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < STATES; i++) {
            if (Math.abs(i - usual) > AN_OCTAVE / 4) {
                other = Math.max(other, mean[i]);
            }
        }
        return mean[usual] - other;
    }

    /** About how far apart beats are at a moment, in moments. */
    double period(int moment) {
        double at = moment / (double) Onsets.RATE - 0.5;
        int last = course.length - 1;
        int i = (int) Math.max(0, Math.min(last, Math.floor(at)));
        int j = Math.min(last, i + 1);
        double share = Math.max(0, Math.min(1, at - i));
        return 60 * Onsets.RATE / tempo(course[i] + share * (course[j] - course[i]));
    }

    /** How well it repeats, on the whole: 1 would be wholly, noise is near 0. */
    double clarity() {
        return clarity;
    }

    double sureness() {
        return sureness;
    }
}
