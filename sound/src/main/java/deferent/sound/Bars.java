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
 * @param clear how much more the first beats stand out than those of the next best bars, in
 *     deviations of the mean; below {@value #ENOUGH} it is a guess
 */
record Bars(int beatsABar, int firstBar, double clear) {
    static final double ENOUGH = 2;

    private static final int NEIGHBOURS = 8;

    private static final List<Integer> USUAL = List.of(4, 3);

    /** Of beats, seconds. */
    static Bars of(List<Double> times, Onsets onsets, float[] strength, float[] low) {
        return best(count(times, onsets, strength, low), USUAL);
    }

    /** The best place to begin bars of a length that is known. */
    static Bars of(
            List<Double> times, Onsets onsets, float[] strength, float[] low, int beatsABar) {
        return best(count(times, onsets, strength, low), List.of(beatsABar));
    }

    Beats of(List<Double> times) {
        return new Beats(times, beatsABar, firstBar);
    }

    /** That which stands out most, by so much more than the next. */
    private static Bars best(double[] count, List<Integer> lengths) {
        Bars best = new Bars(lengths.get(0), 0, Double.NEGATIVE_INFINITY);
        double next = Double.NEGATIVE_INFINITY;
        for (int aBar : lengths) {
            for (int first = 0; first < aBar; first++) {
                double clear = standsOut(count, aBar, first);
                if (clear > best.clear) {
                    next = best.clear;
                    best = new Bars(aBar, first, clear);
                } else {
                    next = Math.max(next, clear);
                }
            }
        }
        // A bar of one beat has no other place to begin.
        double apart = next == Double.NEGATIVE_INFINITY ? ENOUGH : best.clear - next;
        return new Bars(best.beatsABar, best.firstBar, apart);
    }

    /** Of numbers with mean 0 and deviation 1, the mean of some over its own deviation. */
    private static double standsOut(double[] count, int aBar, int first) {
        double on = 0;
        int many = 0;
        for (int i = first; i < count.length; i += aBar) {
            on += count[i];
            many++;
        }
        return many == 0 || aBar == 1 ? 0 : on / Math.sqrt(many * (1 - 1.0 / aBar));
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
            count[i] = 0.25 * all[i] + 0.25 * deep[i] + 0.5 * other[i] + loud[i];
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
