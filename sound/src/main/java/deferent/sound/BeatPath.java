package deferent.sound;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/**
 * Beats that fall where something begins and keep about the distance that the tempo asks, found all
 * at once by dynamic programming: Ellis, Beat Tracking by Dynamic Programming (2007), section 2.
 *
 * <p>The score of beats is the strength at each, less {@value #TIGHT} times the squared logarithm
 * of each distance over what it should be. Unlike there the wanted distance moves with the tempo,
 * and where somebody tapped, beats are drawn to the taps.
 */
final class BeatPath {
    /** How much an uneven distance costs; chosen on the tunes for tuning. */
    private static final double TIGHT = 100;

    /** How much the lowest sounds count beside all of them; chosen likewise. */
    private static final double LOW = 0.2;

    /** A spectrum sees a beginning so much before it is in its middle, seconds. */
    private static final double EARLY = 0.003;

    private static final double TAP_STRENGTH = 6;
    private static final double TAP_WIDTH = 0.03;

    private BeatPath() {}

    /** When beats fall, seconds. */
    static List<Double> of(float[] strength, float[] low, TempoCurve tempo, SaidLevel level) {
        int count = strength.length;
        double[] score = new double[count];
        int[] before = new int[count];
        double[] found = found(strength, low, level);
        for (int t = 0; t < count; t++) {
            double period = tempo.period(t);
            double best = 0;
            before[t] = -1;
            int least = (int) Math.max(1, Math.round(period / 2));
            int most = (int) Math.round(period * 2);
            for (int apart = least; apart <= most && apart <= t; apart++) {
                double off = Math.log(apart / period);
                double then = score[t - apart] - TIGHT * off * off;
                if (then > best) {
                    best = then;
                    before[t] = t - apart;
                }
            }
            score[t] = found[t] + best;
        }
        int last = Math.max(0, count - 1);
        int from = (int) Math.max(0, count - 1 - 1.2 * tempo.period(last));
        for (int t = from; t < count; t++) {
            last = score[t] >= score[last] ? t : last;
        }
        List<Double> beats = new ArrayList<>();
        for (int t = last; t >= 0; t = before[t]) {
            beats.add(refined(found, t));
        }
        Collections.reverse(beats);
        return trimmed(beats, found);
    }

    private static double[] found(float[] strength, float[] low, SaidLevel level) {
        double[] found = new double[strength.length];
        for (int i = 0; i < found.length; i++) {
            found[i] = strength[i] + LOW * low[i];
        }
        // A beginning lasts some moments: what is beside it counts too.
        double[] smooth = new double[found.length];
        for (int i = 0; i < found.length; i++) {
            for (int d = -3; d <= 3; d++) {
                if (i + d >= 0 && i + d < found.length) {
                    smooth[i] += Math.exp(-d * d / 4.0) * found[i + d] / 3.4;
                }
            }
        }
        for (double tap : level.taps()) {
            for (int i = 0; i < smooth.length; i++) {
                double off = (i / (double) Onsets.RATE - tap) / TAP_WIDTH;
                smooth[i] += Math.abs(off) < 4 ? TAP_STRENGTH * Math.exp(-off * off / 2) : 0;
            }
        }
        return smooth;
    }

    /** Between moments: the top of the parabola through three, where there is one. */
    private static double refined(double[] found, int t) {
        double shift = 0;
        if (t > 0 && t < found.length - 1) {
            double bent = found[t - 1] - 2 * found[t] + found[t + 1];
            if (bent < 0) {
                shift = (found[t - 1] - found[t + 1]) / (2 * bent);
                shift = Math.max(-0.5, Math.min(0.5, shift));
            }
        }
        // To a tenth of a millisecond: what is finer says nothing, and fills files.
        return Math.max(0, Math.round((t + shift) * 1e4 / Onsets.RATE + EARLY * 1e4) / 1e4);
    }

    /** Without those at both ends where nothing is heard yet, or any more. */
    private static List<Double> trimmed(List<Double> beats, double[] found) {
        double[] at = beats.stream().mapToDouble(b -> strongest(found, b)).toArray();
        double usual = Math.sqrt(Arrays.stream(at).map(x -> x * x).average().orElse(0));
        int from = 0;
        int to = at.length;
        while (from < to - 2 && at[from] < usual / 4) {
            from++;
        }
        while (to > from + 2 && at[to - 1] < usual / 4) {
            to--;
        }
        return List.copyOf(beats.subList(from, to));
    }

    private static double strongest(double[] found, double time) {
        int about = (int) Math.round((time - EARLY) * Onsets.RATE);
        double most = 0;
        for (int i = Math.max(0, about - 3); i <= Math.min(found.length - 1, about + 3); i++) {
            most = Math.max(most, found[i]);
        }
        return most;
    }
}
