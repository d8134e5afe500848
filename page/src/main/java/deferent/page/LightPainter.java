package deferent.page;

import deferent.motion.shared.Side;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Trace;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What a camera's open shutter gathers of two glowing heads in the dark. A stretch of path gathers
 * light for as long as the head is on it, so its brightness is the time spent a length: inverse to
 * the speed. The light of passages adds up; film and eye then bend it, so that what is brightest
 * burns out toward white. The aperture is set so that one head at both heads' mean speed, over the
 * whole shutter time, is well exposed; so a longer shutter shows more laps, not a whiter picture.
 *
 * <p>On pixels light is added as light. In strokes, brighter stretches are more opaque.
 */
final class LightPainter {
    /** How broad the light is, thousandths of the edge: standard deviation of a soft spot. */
    private static final double SPOT = 1.7;

    /** The halo about it: so many times as broad, with so much of its light. */
    private static final double HALO = 5;

    private static final double HALO_LIGHT = 0.4;

    /** Bends light to brightness: 1 is well exposed, at 80 of 100. */
    private static final double BEND = 1.6;

    private static final int LEVELS = 24;
    private static final double APART = 0.35;
    private static final int FEWEST = 720;

    private final Trace trace;
    private final Still still;
    private final Framing framing;
    private final double spot;
    private final boolean blinking;
    private final Map<Side, Lit> lit = new EnumMap<>(Side.class);
    private double aperture;

    /**
     * A head's way cut in short stretches.
     *
     * @param lane the way
     * @param x of the stretches' middles, pixels
     * @param y the same
     * @param time that each is lit, seconds
     * @param speed of the head there, pixels a second
     */
    private record Lit(PaperRun lane, double[] x, double[] y, double[] time, double[] speed) {}

    LightPainter(Scene scene, Still still, Layout layout, StillForm.Exposure exposure) {
        this.trace = scene.trace();
        this.still = still;
        framing = Framing.of(scene, still.view(), layout.room());
        blinking = exposure.blink().isPresent();
        spot = Math.max(0.55, SPOT * layout.edge() / 1000);
        double shutter = exposure.shutter().orElse(trace.period());
        double way = 0;
        for (Item item : scene.items()) {
            if (item.role() == Role.HEAD_TRAIL && item.form() instanceof Item.Shape.Run run) {
                PaperRun lane = PaperRun.of(scene, framing, run);
                int stretches = (int) Math.max(FEWEST, lane.length() / (APART * spot));
                double[] time = time(exposure, shutter, stretches);
                lit.put(run.track().side(), lit(lane, time));
                way += lane.length();
            }
        }
        double mean = Math.max(way / 2 / trace.period(), spot / trace.period());
        aperture = mean / Math.max(1, shutter / trace.period());
    }

    private Lit lit(PaperRun lane, double[] time) {
        int stretches = time.length;
        double[] x = new double[stretches];
        double[] y = new double[stretches];
        double[] speed = new double[stretches];
        double each = trace.period() / stretches;
        for (int i = 0; i < stretches; i++) {
            Point2D.Double a = lane.pointAt((double) i / stretches);
            Point2D.Double b = lane.pointAt((i + 1.0) / stretches);
            x[i] = (a.x + b.x) / 2;
            y[i] = (a.y + b.y) / 2;
            speed[i] = a.distance(b) / each;
        }
        return new Lit(lane, x, y, time, speed);
    }

    /** How long each stretch of the period is lit while the shutter is open. */
    private double[] time(StillForm.Exposure exposure, double shutter, int stretches) {
        double[] time = new double[stretches];
        double open = still.time();
        double shut = open + shutter;
        if (!trace.periodic()) {
            Interval all = trace.interval();
            open = Math.max(open, all.start());
            shut = Math.min(shut, all.end());
        }
        if (exposure.blink().isEmpty()) {
            add(time, open, shut);
            return time;
        }
        StillForm.Blink blink = exposure.blink().get();
        double start = trace.interval().start();
        long first = (long) Math.floor((open - start) * blink.rate());
        long last = (long) Math.ceil((shut - start) * blink.rate());
        for (long flash = first; flash <= last; flash++) {
            double on = start + flash / blink.rate();
            double off = on + blink.duty() / blink.rate();
            add(time, Math.max(open, on), Math.min(shut, off));
        }
        return time;
    }

    private void add(double[] time, double from, double to) {
        if (!(to > from)) {
            return;
        }
        double each = trace.period() / time.length;
        double start = trace.interval().start();
        long laps = (long) Math.floor((to - from) / trace.period());
        if (laps > 0) {
            for (int i = 0; i < time.length; i++) {
                time[i] += laps * each;
            }
        }
        double a = (from + laps * trace.period() - start) / each;
        double b = (to - start) / each;
        for (long i = (long) Math.floor(a); i < b; i++) {
            double share = Math.min(b, i + 1.0) - Math.max(a, (double) i);
            time[Math.floorMod(i, time.length)] += Math.max(0, share) * each;
        }
    }

    double paint(Paper paper) {
        if (paper.pixels().isPresent()) {
            expose(paper.pixels().get());
        } else {
            for (Map.Entry<Side, Lit> one : lit.entrySet()) {
                Side side = one.getKey();
                paper.light(
                        side.word() + "-light",
                        side.word() + " head's light",
                        g -> strokes(Brush.smooth(g), side, one.getValue()));
            }
        }
        return framing.scale();
    }

    private static Color ink(Side side) {
        return (side == Side.LEFT ? Palette.Ink.LEFT : Palette.Ink.RIGHT).on(Palette.Theme.DARK);
    }

    // ---- On pixels. ----

    private void expose(Pixels pixels) {
        float[][] light = new float[3][pixels.argb().length];
        for (Map.Entry<Side, Lit> one : lit.entrySet()) {
            float[] gathered = new float[pixels.argb().length];
            double whole = aperture * spot * Math.sqrt(2 * Math.PI);
            gather(one.getValue(), pixels, gathered, spot, whole);
            double broad = HALO * spot;
            gather(one.getValue(), pixels, gathered, broad, whole * HALO_LIGHT);
            double[] colour = linear(ink(one.getKey()));
            for (int c = 0; c < 3; c++) {
                for (int i = 0; i < gathered.length; i++) {
                    light[c][i] += (float) (gathered[i] * colour[c]);
                }
            }
        }
        int[] argb = pixels.argb();
        int[] curve = curve();
        for (int i = 0; i < argb.length; i++) {
            float r = light[0][i];
            float g = light[1][i];
            float b = light[2][i];
            if (r + g + b > 0) {
                argb[i] = add(argb[i], bent(curve, r), bent(curve, g), bent(curve, b));
            }
        }
    }

    /** What a spot's stretches leave on each pixel: the shares of a soft round spot. */
    private static void gather(
            Lit lit, Pixels pixels, float[] gathered, double sigma, double light) {
        int reach = (int) Math.ceil(3.6 * sigma);
        double[] across = new double[2 * reach + 1];
        double scale = light / (2 * Math.PI * sigma * sigma);
        // A broad spot may take broader steps: as many stretches at once as it does not show.
        int step = sigma > 4 * APART ? (int) Math.max(1, Math.min(4, sigma / 4)) : 1;
        for (int i = 0; i < lit.x().length; i += step) {
            double weight = 0;
            double x = 0;
            double y = 0;
            for (int j = i; j < Math.min(i + step, lit.x().length); j++) {
                weight += lit.time()[j];
                x += lit.time()[j] * lit.x()[j];
                y += lit.time()[j] * lit.y()[j];
            }
            if (weight == 0) {
                continue;
            }
            x /= weight;
            y /= weight;
            int px = (int) Math.floor(x);
            int py = (int) Math.floor(y);
            if (py + reach < pixels.top() || py - reach >= pixels.top() + pixels.rows()) {
                continue;
            }
            for (int k = -reach; k <= reach; k++) {
                double d = (px + k + 0.5 - x) / sigma;
                across[k + reach] = Math.exp(-d * d / 2);
            }
            int top = Math.max(pixels.top(), py - reach);
            int bottom = Math.min(pixels.top() + pixels.rows() - 1, py + reach);
            int left = Math.max(0, px - reach);
            int right = Math.min(pixels.width() - 1, px + reach);
            for (int row = top; row <= bottom; row++) {
                double d = (row + 0.5 - y) / sigma;
                double up = scale * weight * Math.exp(-d * d / 2);
                int at = (row - pixels.top()) * pixels.width();
                for (int column = left; column <= right; column++) {
                    gathered[at + column] += (float) (up * across[column - px + reach]);
                }
            }
        }
    }

    private static final double MOST_LIGHT = 8;
    private static final int CURVE = 4096;

    /** Brightness by light, 0 to 255. */
    private static int[] curve() {
        int[] curve = new int[CURVE + 1];
        for (int i = 0; i <= CURVE; i++) {
            // Finer where it is dark.
            double light = MOST_LIGHT * Math.pow((double) i / CURVE, 2);
            curve[i] = (int) Math.rint(255 * shown(light));
        }
        return curve;
    }

    /** Light bent as film does, then as screens expect it, 0 to 1. */
    private static double shown(double light) {
        return Math.pow(1 - Math.exp(-BEND * light), 1 / 2.2);
    }

    private static int bent(int[] curve, float light) {
        return curve[(int) (CURVE * Math.sqrt(Math.min(1, light / MOST_LIGHT)))];
    }

    /** Light over what is there: the ground is seen as far as the light lets it. */
    private static int add(int below, int r, int g, int b) {
        int alpha = Math.max(r, Math.max(g, b));
        int rest = 255 - alpha;
        int a = alpha + ((below >>> 24) * rest + 127) / 255;
        int red = r + ((below >> 16 & 255) * rest + 127) / 255;
        int green = g + ((below >> 8 & 255) * rest + 127) / 255;
        int blue = b + ((below & 255) * rest + 127) / 255;
        return a << 24 | Math.min(a, red) << 16 | Math.min(a, green) << 8 | Math.min(a, blue);
    }

    /** A colour as light; never quite without a channel, so that the brightest burns to white. */
    private static double[] linear(Color colour) {
        double[] light = new double[3];
        float[] parts = colour.getRGBColorComponents(null);
        for (int c = 0; c < 3; c++) {
            light[c] = Math.max(0.02, Math.pow(parts[c], 2.2));
        }
        return light;
    }

    // ---- In strokes. ----

    private void strokes(Graphics2D g, Side side, Lit lit) {
        List<Path2D.Double> runs = new ArrayList<>();
        List<Integer> levels = new ArrayList<>();
        runs(lit, runs, levels);
        Color ink = ink(side);
        double[] width = {15 * spot, 8.5 * spot, 4.8 * spot, 2.2 * spot};
        double[] strength = {0.09, 0.16, 0.3, 1};
        for (int coat = 0; coat < width.length; coat++) {
            for (int i = 0; i < runs.size(); i++) {
                double share = (double) levels.get(i) / LEVELS;
                boolean core = coat == width.length - 1;
                g.setColor(core ? hot(ink, share) : ink);
                Brush.strength(g, strength[coat] * share);
                g.setStroke(
                        new BasicStroke(
                                (float) width[coat],
                                blinking ? BasicStroke.CAP_ROUND : BasicStroke.CAP_BUTT,
                                BasicStroke.JOIN_ROUND));
                g.draw(runs.get(i));
            }
        }
        Brush.strength(g, 1);
    }

    private static Color hot(Color ink, double share) {
        double light = -Math.log(1 - Math.pow(Math.min(0.999, share), 2.2)) / BEND;
        double white = Math.max(0, Math.min(0.75, (light - 1) / 5));
        return new Color(
                (int) Math.rint(ink.getRed() + (255 - ink.getRed()) * white),
                (int) Math.rint(ink.getGreen() + (255 - ink.getGreen()) * white),
                (int) Math.rint(ink.getBlue() + (255 - ink.getBlue()) * white));
    }

    /** Neighbouring stretches of one brightness, as lines; of a blinking light, each flash one. */
    private void runs(Lit lit, List<Path2D.Double> runs, List<Integer> levels) {
        int count = lit.x().length;
        double each = trace.period() / count;
        int begun = 0;
        int level = 0;
        int most = 0;
        for (int i = 0; i <= count; i++) {
            int here = i == count ? 0 : level(lit, i, each);
            boolean on = blinking && here > 0 && level > 0;
            if (here != level && !on) {
                if (level > 0) {
                    runs.add(lit.lane().between((double) begun / count, (double) i / count));
                    levels.add(most);
                }
                begun = i;
                most = 0;
            }
            level = here;
            most = Math.max(most, here);
        }
    }

    private int level(Lit lit, int i, double each) {
        if (lit.time()[i] < 0.02 * each) {
            return 0;
        }
        double speed = Math.max(lit.speed()[i], 1e-6);
        double light = lit.time()[i] / each * aperture / speed;
        return (int) Math.max(1, Math.rint(LEVELS * shown(light)));
    }
}
