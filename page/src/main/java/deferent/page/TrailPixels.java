package deferent.page;

import java.util.Arrays;

/**
 * A {@link Trail} on pixels, rasterised once: for every pixel near the lane, each passage of the
 * head by it, with the share of the cycle at which it passes and how far beside. At any moment the
 * pixel's light is then looked up by the age of its youngest passage, so a trail fades smoothly,
 * and a closed one without a seam.
 */
final class TrailPixels {
    /** Ages told apart over the fade. */
    private static final int AGES = 2048;

    /** Distances told apart a pixel. */
    private static final int FINE = 8;

    private static final int STEPS = 64;

    private final boolean closed;
    private final int rgb;
    private final double fade;
    private final int[] through;
    private final int[] pixel;
    private final int[] first;
    private final int[] old;
    private final int[] passed;
    private final int[] beside;
    private final int[] stroke;
    private final int[] faint;

    private TrailPixels(Trail trail, int rgb, Passages passages) {
        closed = trail.lane().closed();
        this.rgb = rgb;
        fade = Trail.FADE;
        through = table(trail, passages.reach);
        int pixels = passages.pixels();
        pixel = new int[pixels];
        first = new int[pixels + 1];
        old = new int[pixels];
        passed = new int[passages.count];
        beside = new int[passages.count];
        stroke = new int[passages.count];
        faint = new int[passages.count];
        int p = 0;
        int n = 0;
        for (int at = 0; at < passages.latest.length; at++) {
            if (passages.latest[at] == 0) {
                continue;
            }
            pixel[p] = at;
            first[p] = n;
            for (int k = passages.latest[at] - 1; k >= 0; k = passages.before[k]) {
                passed[n] = (int) (passages.share[k] * (1 << 16)) & 0xFFFF;
                beside[n] = (int) Math.min(passages.reach * FINE - 1, passages.away[k] * FINE);
                double kept = trail.kept(passages.come[k]);
                stroke[n] = (int) Math.rint(256 * kept * covered(trail.dash(), passages.come[k]));
                double line = kept * strip(passages.away[k], trail.oldWidth());
                faint[n] = (int) Math.rint(256 * Trail.OLD * line);
                old[p] = Math.max(old[p], faint[n]);
                n++;
            }
            p++;
        }
        first[p] = n;
    }

    /**
     * @param rgb the light's colour
     * @param bounds the pixels to prepare for
     */
    static TrailPixels of(Trail trail, int rgb, Pixels bounds) {
        return new TrailPixels(trail, rgb, new Passages(trail, bounds));
    }

    /** How much of a pixel a strip covers whose middle line passes it at a distance. */
    private static double strip(double away, double width) {
        double low = Math.max(away - 0.5, -width / 2);
        double high = Math.min(away + 0.5, width / 2);
        return Math.max(0, high - low);
    }

    /** How much of a dash's stroke, not gap, lies at a place along the lane. */
    private static double covered(double[] dash, double come) {
        if (dash.length == 0) {
            return 1;
        }
        double whole = dash[0] + dash[1];
        double off = Math.abs(come - whole * Math.rint(come / whole));
        return Math.max(0, Math.min(1, dash[0] / 2 - off + 0.5));
    }

    /**
     * What shines through, of 1 &lt;&lt; 16, by distance and age: the coats thinner and thinner,
     * more and more.
     */
    private static int[] table(Trail trail, int reach) {
        int[] table = new int[reach * FINE * (AGES + 1)];
        for (int d = 0; d < reach * FINE; d++) {
            double away = (d + 0.5) / FINE;
            double covered = 0;
            int row = d * (AGES + 1);
            table[row + AGES] = 1 << 16;
            double[] coats = new double[STEPS];
            for (int step = 0; step < STEPS; step++) {
                coats[step] = strip(away, trail.width((step + 0.5) / STEPS));
            }
            for (int age = AGES - 1; age >= 0; age--) {
                covered += coats[age * STEPS / AGES] / AGES;
                table[row + age] = (int) Math.rint(Trail.through(Math.min(1, covered)) * (1 << 16));
            }
        }
        return table;
    }

    /**
     * Lays the trail over the pixels it was prepared for.
     *
     * @param share of the period that has gone by
     * @param argb the pixels
     * @param seen how strongly each point of the lane is seen; none where all are seen in full
     */
    void paint(double share, int[] argb, double[] seen) {
        int now = (int) (share * (1 << 16)) & 0xFFFF;
        // Ages are shares of the period in 16 bits; one multiplication makes table places of them.
        long place = Math.round(AGES / fade * (1 << 16));
        boolean all = true;
        int[] share256 = new int[seen.length];
        for (int i = 0; i < seen.length; i++) {
            share256[i] = (int) Math.rint(256 * seen[i]);
            all &= share256[i] == 256;
        }
        for (int p = 0; p < pixel.length; p++) {
            int least = 1 << 16;
            int figure = all ? old[p] : 0;
            for (int n = first[p]; n < first[p + 1]; n++) {
                int strong = all ? 256 : share256[passed[n] * (share256.length - 1) >> 16];
                if (!all) {
                    figure = Math.max(figure, faint[n] * strong >> 8);
                }
                int age = now - passed[n];
                if (age < 0) {
                    if (!closed) {
                        continue;
                    }
                    age += 1 << 16;
                }
                long at = age * place >> 32;
                if (at < AGES) {
                    int shines = through[beside[n] * (AGES + 1) + (int) at];
                    int light = stroke[n] * strong >> 8;
                    shines = (1 << 16) - ((1 << 16) - shines) / 256 * light;
                    least = Math.min(least, shines);
                }
            }
            long left = (256L - figure) * least;
            int alpha = 256 - (int) ((left + (1 << 15)) >> 16);
            if (alpha > 0) {
                argb[pixel[p]] = Pixels.over(argb[pixel[p]], rgb, alpha);
            }
        }
    }

    /** Who passes by which pixel, found by walking along the lane. */
    private static final class Passages {
        final int reach;
        final int[] latest;
        int[] before = new int[1 << 14];
        float[] share = new float[1 << 14];
        float[] away = new float[1 << 14];
        float[] come = new float[1 << 14];
        private float[] seen = new float[1 << 14];
        int count;

        private final PaperRun lane;
        private final Pixels bounds;
        private final double far;

        Passages(Trail trail, Pixels bounds) {
            this.lane = trail.lane();
            this.bounds = bounds;
            far = Math.max(trail.width(0), trail.oldWidth()) / 2 + 0.5;
            reach = (int) Math.ceil(far) + 1;
            latest = new int[bounds.width() * bounds.rows()];
            for (int i = 0; i + 1 < lane.count(); i++) {
                walk(i);
            }
        }

        private void walk(int i) {
            double x0 = lane.x(i);
            double y0 = lane.y(i);
            double x1 = lane.x(i + 1);
            double y1 = lane.y(i + 1);
            int left = Math.max(0, (int) Math.floor(Math.min(x0, x1) - far));
            int right = Math.min(bounds.width() - 1, (int) Math.ceil(Math.max(x0, x1) + far));
            int top = Math.max(bounds.top(), (int) Math.floor(Math.min(y0, y1) - far));
            int bottom =
                    Math.min(
                            bounds.top() + bounds.rows() - 1,
                            (int) Math.ceil(Math.max(y0, y1) + far));
            double dx = x1 - x0;
            double dy = y1 - y0;
            double square = dx * dx + dy * dy;
            double step = lane.come(i + 1) - lane.come(i);
            for (int py = top; py <= bottom; py++) {
                for (int px = left; px <= right; px++) {
                    double ox = px + 0.5 - x0;
                    double oy = py + 0.5 - y0;
                    double part =
                            square == 0
                                    ? 0
                                    : Math.max(0, Math.min(1, (ox * dx + oy * dy) / square));
                    double off = Math.hypot(ox - part * dx, oy - part * dy);
                    if (off < far) {
                        pass(
                                (py - bounds.top()) * bounds.width() + px,
                                (i + part) / (lane.count() - 1),
                                off,
                                lane.come(i) + part * step);
                    }
                }
            }
        }

        // A passage goes on while the lane has not been away for more than the trail's breadth.
        private void pass(int at, double when, double off, double gone) {
            int k = latest[at] - 1;
            if (k >= 0 && gone - seen[k] <= 2 * far) {
                seen[k] = (float) gone;
                if (off < away[k]) {
                    away[k] = (float) off;
                    share[k] = (float) when;
                    come[k] = (float) gone;
                }
                return;
            }
            if (count == before.length) {
                before = Arrays.copyOf(before, 2 * count);
                share = Arrays.copyOf(share, 2 * count);
                away = Arrays.copyOf(away, 2 * count);
                come = Arrays.copyOf(come, 2 * count);
                seen = Arrays.copyOf(seen, 2 * count);
            }
            before[count] = k;
            share[count] = (float) when;
            away[count] = (float) off;
            come[count] = (float) gone;
            seen[count] = (float) gone;
            latest[at] = ++count;
        }

        int pixels() {
            int pixels = 0;
            for (int one : latest) {
                pixels += one == 0 ? 0 : 1;
            }
            return pixels;
        }
    }
}
