package deferent.sound;

import java.util.Arrays;
import org.hipparchus.transform.DftNormalization;
import org.hipparchus.transform.FastFourierTransformer;
import org.hipparchus.transform.TransformType;

/**
 * How strongly something new begins at each moment of a sound, {@value #RATE} moments a second.
 *
 * <p>Spectral flux: of short spectra, in bands that are narrow low down and wide high up as hearing
 * has them (mel: O'Shaughnessy 1987), the logarithm of the strength, and how much it has grown
 * since shortly before, summed over the bands (Ellis, Beat Tracking by Dynamic Programming, 2007,
 * section 3.1; Böck and Widmer 2013 for the rise over more than one frame). Then what is usual
 * nearby is taken off and divided out, so that a quiet start counts as much as what follows; that
 * is our own.
 *
 * <p>Sound is taken in as it comes; what is held of it is a few numbers a moment.
 */
public final class Onsets {
    /** Samples a second that are taken in: enough for beats, which Ellis found in 8000. */
    public static final int SAMPLES = 12_000;

    /** Moments a second. */
    public static final int RATE = 100;

    /** Bins of tone kept for each moment of {@link #tone}. */
    static final int TONES = 48;

    /** Every so many moments tone is kept. */
    static final int TONE_EVERY = 5;

    private static final int HOP = SAMPLES / RATE;
    private static final int WINDOW = 512;
    private static final int BANDS = 32;
    private static final int LOW_BANDS = 3;

    /** A rise is over so many moments. */
    private static final int RISE = 2;

    /** Below this strength, of full scale, a band counts as still. */
    private static final double STILL = 1e-4;

    /** A rise of a fifteenth in every band is an event. */
    private static final double EVENT = 2;

    private static final double[] HANN = new double[WINDOW];
    private static final int[] EDGES = new int[BANDS + 2];

    static {
        for (int i = 0; i < WINDOW; i++) {
            HANN[i] = (1 - Math.cos(2 * Math.PI * (i + 0.5) / WINDOW)) / WINDOW;
        }
        double most = mel(SAMPLES / 2.0);
        double least = mel(30);
        for (int b = 0; b < EDGES.length; b++) {
            double hertz = hertz(least + (most - least) * b / (BANDS + 1));
            int edge = (int) Math.round(hertz * WINDOW / SAMPLES);
            EDGES[b] = b == 0 ? Math.max(1, edge) : Math.max(EDGES[b - 1] + 1, edge);
        }
    }

    private static double mel(double hertz) {
        return 1127 * Math.log1p(hertz / 700);
    }

    private static double hertz(double mel) {
        return 700 * Math.expm1(mel / 1127);
    }

    private final float[] waiting = new float[WINDOW];
    private final double[][] spectrum = new double[2][WINDOW];
    private final double[][] before = new double[RISE][BANDS];
    private int filled = WINDOW / 2;
    private int moments;
    private long taken;
    private float[] flux = new float[1 << 12];
    private float[] low = new float[1 << 12];
    private float[] loud = new float[1 << 12];
    private byte[] tone = new byte[1 << 14];

    /**
     * Takes in the next samples, {@value #SAMPLES} a second, of one channel within 1 either way.
     */
    public void take(float[] samples, int count) {
        taken += count;
        for (int i = 0; i < count; ) {
            int some = Math.min(WINDOW - filled, count - i);
            System.arraycopy(samples, i, waiting, filled, some);
            filled += some;
            i += some;
            if (filled == WINDOW) {
                moment();
                System.arraycopy(waiting, HOP, waiting, 0, WINDOW - HOP);
                filled = WINDOW - HOP;
            }
        }
    }

    private void moment() {
        double power = 0;
        for (int i = 0; i < WINDOW; i++) {
            spectrum[0][i] = waiting[i] * HANN[i];
            power += waiting[i] * (double) waiting[i];
        }
        Arrays.fill(spectrum[1], 0);
        FastFourierTransformer.transformInPlace(
                spectrum, DftNormalization.STANDARD, TransformType.FORWARD);
        room();
        loud[moments] = (float) Math.sqrt(power / WINDOW);
        double[] old = before[moments % RISE];
        double all = 0;
        double deep = 0;
        for (int b = 0; b < BANDS; b++) {
            double strength = 0;
            for (int k = EDGES[b]; k < EDGES[b + 2] && k <= WINDOW / 2; k++) {
                strength += Math.hypot(spectrum[0][k], spectrum[1][k]);
            }
            double now = Math.log(STILL + strength);
            double rise = moments < RISE ? 0 : Math.max(0, now - old[b]);
            all += rise;
            deep += b < LOW_BANDS ? rise : 0;
            old[b] = now;
        }
        flux[moments] = (float) all;
        low[moments] = (float) deep;
        if (moments % TONE_EVERY == 0) {
            tones(moments / TONE_EVERY);
        }
        moments++;
    }

    /** The lowest bins, as the root of their strength over that of the strongest. */
    private void tones(int at) {
        double most = STILL;
        for (int k = 0; k < TONES; k++) {
            most = Math.max(most, Math.hypot(spectrum[0][k + 4], spectrum[1][k + 4]));
        }
        for (int k = 0; k < TONES; k++) {
            double share = Math.hypot(spectrum[0][k + 4], spectrum[1][k + 4]) / most;
            tone[at * TONES + k] = (byte) Math.round(127 * Math.sqrt(share));
        }
    }

    private void room() {
        if (moments == flux.length) {
            flux = Arrays.copyOf(flux, 2 * moments);
            low = Arrays.copyOf(low, 2 * moments);
            loud = Arrays.copyOf(loud, 2 * moments);
        }
        int tones = (moments / TONE_EVERY + 1) * TONES;
        if (tones > tone.length) {
            tone = Arrays.copyOf(tone, 2 * tones);
        }
    }

    /** How many moments there are. */
    public int count() {
        return moments;
    }

    /** How long the sound is, seconds. */
    public double seconds() {
        return taken / (double) SAMPLES;
    }

    /** How loud it is at a moment, root mean square of full scale. */
    public double loud(int moment) {
        return loud[moment];
    }

    /** Something new at each moment: usually about 1 at one that counts, never below 0. */
    float[] strength() {
        return levelled(flux);
    }

    /** The same of the lowest sounds alone, drums and basses. */
    float[] low() {
        return levelled(low);
    }

    /** How alike two moments sound, 0 to 1: the cosine of their tones. */
    double alike(int moment, int other) {
        int last = Math.max(0, (moments - 1) / TONE_EVERY);
        int a = Math.max(0, Math.min(last, moment / TONE_EVERY)) * TONES;
        int b = Math.max(0, Math.min(last, other / TONE_EVERY)) * TONES;
        double both = 0;
        double one = 1e-9;
        double two = 1e-9;
        for (int k = 0; k < TONES; k++) {
            both += tone[a + k] * tone[b + k];
            one += tone[a + k] * tone[a + k];
            two += tone[b + k] * tone[b + k];
        }
        return both / Math.sqrt(one * two);
    }

    /** How often a second something begins, be it ever so weak; hardly ever in a steady tone. */
    double eventful() {
        int events = 0;
        float[] above = above(flux);
        for (int i = 1; i < moments; i++) {
            events += above[i - 1] < EVENT && above[i] >= EVENT ? 1 : 0;
        }
        return events / seconds();
    }

    /** Less what is usual within a quarter of a second either way; never below 0. */
    private float[] above(float[] of) {
        double[] sum = new double[moments + 1];
        for (int i = 0; i < moments; i++) {
            sum[i + 1] = sum[i] + of[i];
        }
        float[] above = new float[moments];
        for (int i = 0; i < moments; i++) {
            above[i] = (float) Math.max(0, of[i] - mean(sum, i, RATE / 4));
        }
        return above;
    }

    /** The same over what is usual within three seconds either way. */
    private float[] levelled(float[] of) {
        float[] above = above(of);
        double[] squares = new double[moments + 1];
        for (int i = 0; i < moments; i++) {
            squares[i + 1] = squares[i] + above[i] * (double) above[i];
        }
        double usual = Math.sqrt(squares[moments] / Math.max(1, moments));
        for (int i = 0; i < moments; i++) {
            double near = Math.sqrt(mean(squares, i, 3 * RATE));
            above[i] /= (float) Math.max(1e-6, Math.max(near, usual / 4));
        }
        return above;
    }

    /** Of a running sum, the mean within so many moments of one. */
    private static double mean(double[] sum, int at, int within) {
        int from = Math.max(0, at - within);
        int to = Math.min(sum.length - 1, at + within + 1);
        return (sum[to] - sum[from]) / (to - from);
    }
}
