package deferent.sound;

import deferent.motion.song.Beats;
import java.util.List;

/**
 * Which beats begin a bar: those on which, every third or every fourth time, more happens than on
 * the others. What counts is how strongly something begins, among the lowest sounds once more, how
 * far the sound differs from the beat before, since harmony changes with the bar (Goto, An
 * Audio-based Real-time Beat Tracking System, 2001, for these), and how loud it is until the next;
 * the weights are our choice. Bars of two are told as bars of four.
 *
 * @param beatsABar three or four
 * @param firstBar the number of the first beat that begins one
 * @param clear how much the first beats stand out, in deviations of the mean; below {@value
 *     #ENOUGH} it is a guess
 */
record Bars(int beatsABar, int firstBar, double clear) {
    static final double ENOUGH = 2;

    private static final int NEIGHBOURS = 8;

    private static final int[] USUAL = {4, 3};

    /** Of beats, seconds. */
    static Bars of(List<Double> times, Onsets onsets, float[] strength, float[] low) {
        double[] count = count(times, onsets, strength, low);
        Bars best = new Bars(USUAL[0], 0, 0);
        Bars other = best;
        for (int aBar : USUAL) {
            Bars of = of(count, aBar);
            if (of.clear > best.clear) {
                other = best;
                best = of;
            } else {
                other = of;
            }
        }
        return new Bars(best.beatsABar, best.firstBar, best.clear - other.clear);
    }

    /** The best place to begin bars of a length that is known. */
    static Bars of(
            List<Double> times, Onsets onsets, float[] strength, float[] low, int beatsABar) {
        return of(count(times, onsets, strength, low), beatsABar);
    }

    Beats of(List<Double> times) {
        return new Beats(times, beatsABar, firstBar);
    }

    private static Bars of(double[] count, int aBar) {
        Bars best = new Bars(aBar, 0, Double.NEGATIVE_INFINITY);
        for (int first = 0; first < aBar; first++) {
            double on = 0;
            int many = 0;
            for (int i = first; i < count.length; i += aBar) {
                on += count[i];
                many++;
            }
            // Of numbers with mean 0 and deviation 1, the mean of many over its own deviation.
            double clear = many == 0 ? 0 : on / Math.sqrt(many * (1 - 1.0 / aBar));
            if (clear > best.clear) {
                best = new Bars(aBar, first, clear);
            }
        }
        return best;
    }

    private static double[] count(
            List<Double> times, Onsets onsets, float[] strength, float[] low) {
        int many = times.size();
        double[] all = new double[many];
        double[] deep = new double[many];
        double[] other = new double[many];
        double[] loud = new double[many];
        for (int i = 0; i < many; i++) {
            int at = (int) Math.round(times.get(i) * Onsets.RATE);
            int next =
                    i + 1 < many
                            ? (int) Math.round(times.get(i + 1) * Onsets.RATE)
                            : 2 * at - (int) Math.round(times.get(i - 1) * Onsets.RATE);
            int last = 2 * at - next;
            all[i] = most(strength, at);
            deep[i] = most(low, at);
            for (int k = Math.max(0, at); k < Math.min(next, onsets.count()); k++) {
                loud[i] += onsets.loud(k) / (next - at);
            }
            other[i] = 1 - onsets.alike(at + (next - at) / 2, last + (at - last) / 2);
        }
        standard(all);
        standard(deep);
        standard(other);
        standard(nearby(loud));
        double[] count = new double[many];
        for (int i = 0; i < many; i++) {
            count[i] = 0.5 * all[i] + 0.5 * deep[i] + other[i] + loud[i];
        }
        standard(count);
        return count;
    }

    private static double most(float[] of, int about) {
        double most = 0;
        for (int i = Math.max(0, about - 4); i <= Math.min(of.length - 1, about + 4); i++) {
            most = Math.max(most, of[i]);
        }
        return most;
    }

    /** Each over the mean of its neighbours, since a song has quiet parts. */
    private static double[] nearby(double[] of) {
        double[] sum = new double[of.length + 1];
        for (int i = 0; i < of.length; i++) {
            sum[i + 1] = sum[i] + of[i];
        }
        for (int i = 0; i < of.length; i++) {
            int from = Math.max(0, i - NEIGHBOURS);
            int to = Math.min(of.length, i + NEIGHBOURS + 1);
            of[i] /= Math.max(1e-9, (sum[to] - sum[from]) / (to - from));
        }
        return of;
    }

    /** To mean 0 and deviation 1. */
    private static void standard(double[] of) {
        double mean = 0;
        for (double one : of) {
            mean += one / of.length;
        }
        double squares = 1e-12;
        for (double one : of) {
            squares += (one - mean) * (one - mean) / of.length;
        }
        for (int i = 0; i < of.length; i++) {
            of[i] = (of[i] - mean) / Math.sqrt(squares);
        }
    }
}
