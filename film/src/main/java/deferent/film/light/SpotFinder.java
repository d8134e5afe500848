package deferent.film.light;

import deferent.reel.Shot;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Finds lit heads in a dark frame. What is brighter than a level above the frame's middle
 * brightness and its noise is joined into pieces, row by row (runs of pixels that touch, joined as
 * sets: Rosenfeld and Pfaltz 1966), and each piece's moments say which arc a round light would have
 * had to run to draw it.
 *
 * <p>A light of standard deviation s that runs evenly along a straight of length l has variances
 * l²/12 + s² along and s² across it, so l² = 12·(difference). A curved run is told from the third
 * moments: across = a + b·along² by least squares, of which a is the arc's middle.
 *
 * <p>Our own, since a piece's arc is what is wanted, which no library gives, and joining runs is
 * thirty lines; a library of vision would bring sixty files for them.
 *
 * <p>Not safe to share between threads; a frame of two million pixels takes some two milliseconds.
 */
public final class SpotFinder {
    /**
     * What counts as a spot.
     *
     * @param level share of the way from the middle brightness to the brightest at which a light
     *     begins
     * @param contrast but not within so much of the middle
     * @param grain nor within so many standard deviations of the dark's noise
     * @param lit where nothing stands out by so much, nothing is lit
     * @param least fewer pixels are a fleck
     * @param most more of a frame than this share are a lit wall
     */
    private record Counts(
            double level, int contrast, double grain, int lit, int least, double most) {}

    private static final Counts LIGHTS = new Counts(0.12, 20, 4, 40, 4, 0.02);
    // Of changes half the noise's standard deviation shows as grain.
    private static final Counts CHANGES = new Counts(0.3, 12, 9, 20, 9, 0.2);
    private static final int MOST_SPOTS = 12;

    private final Counts counted;

    private int[] from = new int[1024];
    private int[] to = new int[1024];
    private int[] rows = new int[1024];
    private int[] roots = new int[1024];
    private int runs;

    /** Of lights in the dark. */
    public SpotFinder() {
        this(LIGHTS);
    }

    private SpotFinder(Counts counted) {
        this.counted = counted;
    }

    /** Of frames in which what has changed is lit, as much as it has. */
    static SpotFinder ofChanges() {
        return new SpotFinder(CHANGES);
    }

    /** The spots of a frame, the brightest first, at most twelve. */
    public List<LitSpot> find(Shot shot) {
        int[] counts = new int[256];
        byte[] luma = shot.luma();
        for (int i = 0; i < luma.length; i += 7) {
            counts[luma[i] & 255]++;
        }
        int middle = below(counts, 0.5);
        int level = level(luma, middle, middle - below(counts, 0.16));
        if (level > 255) {
            return List.of();
        }
        join(shot, level);
        return spots(shot, middle);
    }

    private static int below(int[] counts, double share) {
        int all = Arrays.stream(counts).sum();
        int below = 0;
        for (int v = 0; v < 256; v++) {
            below += counts[v];
            if (below >= share * all) {
                return v;
            }
        }
        return 255;
    }

    private int level(byte[] luma, int middle, int grain) {
        int brightest = 0;
        for (byte b : luma) {
            brightest = Math.max(brightest, b & 255);
        }
        if (brightest - middle < counted.lit()) {
            return 256;
        }
        double above = Math.max(counted.contrast(), counted.level() * (brightest - middle));
        return middle + (int) Math.max(above, counted.grain() * Math.max(1, grain));
    }

    private void join(Shot shot, int level) {
        runs = 0;
        byte[] luma = shot.luma();
        int width = shot.width();
        int above = 0;
        int aboveEnd = 0;
        for (int row = 0; row < shot.height(); row++) {
            int begin = runs;
            int base = row * width;
            for (int x = 0; x < width; x++) {
                if ((luma[base + x] & 255) < level) {
                    continue;
                }
                int start = x;
                while (x < width && (luma[base + x] & 255) >= level) {
                    x++;
                }
                add(row, start, x);
            }
            int other = above;
            for (int run = begin; run < runs; run++) {
                while (other < aboveEnd && to[other] < from[run]) {
                    other++;
                }
                for (int o = other; o < aboveEnd && from[o] <= to[run]; o++) {
                    unite(run, o);
                }
            }
            above = begin;
            aboveEnd = runs;
        }
    }

    private void add(int row, int start, int end) {
        if (runs == from.length) {
            from = Arrays.copyOf(from, 2 * runs);
            to = Arrays.copyOf(to, 2 * runs);
            rows = Arrays.copyOf(rows, 2 * runs);
            roots = Arrays.copyOf(roots, 2 * runs);
        }
        from[runs] = start;
        to[runs] = end;
        rows[runs] = row;
        roots[runs] = runs;
        runs++;
    }

    private int root(int run) {
        int r = run;
        while (roots[r] != r) {
            roots[r] = roots[roots[r]];
            r = roots[r];
        }
        return r;
    }

    private void unite(int one, int other) {
        int a = root(one);
        int b = root(other);
        roots[Math.max(a, b)] = Math.min(a, b);
    }

    private List<LitSpot> spots(Shot shot, int middle) {
        Integer[] order = new Integer[runs];
        for (int i = 0; i < runs; i++) {
            order[i] = i;
            roots[i] = root(i);
        }
        Arrays.sort(order, Comparator.comparingInt(i -> roots[i]));
        List<LitSpot> found = new ArrayList<>();
        int most = (int) (counted.most() * shot.luma().length);
        for (int at = 0; at < runs; ) {
            int end = at;
            int pixels = 0;
            while (end < runs && roots[order[end]] == roots[order[at]]) {
                pixels += to[order[end]] - from[order[end]];
                end++;
            }
            if (pixels >= counted.least() && pixels <= most) {
                found.add(spot(shot, middle, Arrays.asList(order).subList(at, end)));
            }
            at = end;
        }
        found.sort(Comparator.comparingDouble(LitSpot::glow).reversed());
        return List.copyOf(found.subList(0, Math.min(MOST_SPOTS, found.size())));
    }

    private LitSpot spot(Shot shot, int middle, List<Integer> piece) {
        int width = shot.width();
        int half = (width + 1) / 2;
        double sum = 0;
        double sx = 0;
        double sy = 0;
        double sxx = 0;
        double sxy = 0;
        double syy = 0;
        double blue = 0;
        double red = 0;
        for (int run : piece) {
            int row = rows[run];
            for (int x = from[run]; x < to[run]; x++) {
                double w = (shot.luma()[row * width + x] & 255) - middle;
                int c = row / 2 * half + x / 2;
                sum += w;
                sx += w * x;
                sy += w * row;
                sxx += w * x * x;
                sxy += w * x * row;
                syy += w * row * row;
                blue += w * ((shot.blue()[c] & 255) - 128);
                red += w * ((shot.red()[c] & 255) - 128);
            }
        }
        double mx = sx / sum;
        double my = sy / sum;
        double vxx = Math.max(0, sxx / sum - mx * mx);
        double vyy = Math.max(0, syy / sum - my * my);
        double vxy = sxy / sum - mx * my;
        double turn = 0.5 * Math.atan2(2 * vxy, vxx - vyy);
        double spread = Math.hypot(0.5 * (vxx - vyy), vxy);
        double across = Math.max(0, 0.5 * (vxx + vyy) - spread);
        double length = Math.sqrt(24 * spread);
        double ux = Math.cos(turn);
        double uy = Math.sin(turn);
        double[] arc = arc(shot, middle, piece, mx, my, ux, uy);
        double end = arc[0] + arc[1] * length * length / 4;
        double l = length / 2;
        return new LitSpot(
                shot.time(),
                mx,
                my,
                mx + ux * l - uy * end,
                my + uy * l + ux * end,
                mx - ux * l - uy * end,
                my - uy * l + ux * end,
                Math.sqrt(across),
                sum,
                blue / sum,
                red / sum);
    }

    /** Of across = a + b·along² by least squares over a piece: a and b. */
    private double[] arc(
            Shot shot,
            int middle,
            List<Integer> piece,
            double mx,
            double my,
            double ux,
            double uy) {
        double sum = 0;
        double s2 = 0;
        double s4 = 0;
        double sv = 0;
        double s2v = 0;
        for (int run : piece) {
            int row = rows[run];
            for (int x = from[run]; x < to[run]; x++) {
                double w = (shot.luma()[row * shot.width() + x] & 255) - middle;
                double dx = x - mx;
                double dy = row - my;
                double u = dx * ux + dy * uy;
                double v = -dx * uy + dy * ux;
                sum += w;
                s2 += w * u * u;
                s4 += w * u * u * u * u;
                sv += w * v;
                s2v += w * u * u * v;
            }
        }
        double m2 = s2 / sum;
        double variance = s4 / sum - m2 * m2;
        double b = variance > 1e-9 ? (s2v / sum - m2 * sv / sum) / variance : 0;
        return new double[] {sv / sum - b * m2, b};
    }
}
