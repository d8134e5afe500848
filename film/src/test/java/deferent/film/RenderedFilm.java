package deferent.film;

import deferent.film.cycle.Cycles;
import deferent.film.hand.PixelScale;
import deferent.film.light.LitSpot;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reel.Shot;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A film of a trace as a phone would have made it in the dark, with what was true kept beside it:
 * lit heads drawn out while the shutter is open, row after row where the shutter rolls, seen from a
 * camera that leans and shakes, and all that {@link Spoilt} asks for.
 */
final class RenderedFilm {
    private static final float DARK = 18;
    private static final double DISTANCE = 4; // metres from the camera to the wall plane
    private static final double HEAD = 3.5; // a head's radius over the pixel of 2.7 mm, a third off
    private static final int STEPS = 20; // an exposure is drawn in so many lights

    final int width;
    final int height;
    final double metres;
    final Trace trace;
    final Spoilt spoilt;
    private final Vector3D centre;
    private final Random random;
    private final byte[] grain = new byte[1 << 20];
    private final float[] base;
    private final float[] light;
    private final float[][] tint;
    private final double[] shakes = new double[12];

    RenderedFilm(Trace trace, Spoilt spoilt, double metres, long seed) {
        this.trace = trace;
        this.metres = metres;
        this.spoilt = spoilt;
        random = new Random(seed);
        double[] box = box(trace);
        centre = new Vector3D((box[0] + box[1]) / 2, (box[2] + box[3]) / 2, box[4]);
        width = even((box[1] - box[0] + 0.5) / metres);
        height = even((box[3] - box[2] + 0.5) / metres);
        base = new float[width * height];
        light = new float[width * height];
        tint = new float[2][(width / 2) * (height / 2)];
        for (int i = 0; i < grain.length; i++) {
            grain[i] = (byte) Math.round(spoilt.noise() * random.nextGaussian());
        }
        for (int i = 0; i < shakes.length; i++) {
            shakes[i] = random.nextDouble();
        }
        Arrays.fill(base, DARK);
    }

    private static int even(double pixels) {
        return (int) Math.ceil(Math.max(pixels, 96) / 16) * 16;
    }

    private static double[] box(Trace trace) {
        double[] box = {1e9, -1e9, 1e9, -1e9, 0};
        for (Side side : Side.values()) {
            for (int i = 0; i < 240; i++) {
                Vector3D p =
                        trace.head(side)
                                .position(trace.interval().start() + i * trace.period() / 240);
                box[0] = Math.min(box[0], p.getX());
                box[1] = Math.max(box[1], p.getX());
                box[2] = Math.min(box[2], p.getY());
                box[3] = Math.max(box[3], p.getY());
                box[4] += p.getZ() / 480;
            }
        }
        return box;
    }

    /** What somebody who knows the scale would say of it, the picture turned so. */
    PixelScale scale(double roll) {
        PixelScale middle = new PixelScale(metres, width / 2.0, height / 2.0, false, roll);
        double[] origin = middle.picture(-centre.getX(), -centre.getY());
        return new PixelScale(metres, origin[0], origin[1], false, roll);
    }

    /** Metres in the trace's frame to pixels of a camera that leans but does not shake. */
    double[] seen(Vector3D p) {
        Vector3D v = p.subtract(centre);
        double cos = Math.cos(spoilt.pitch());
        double sin = Math.sin(spoilt.pitch());
        double up = v.getY() * cos - v.getZ() * sin;
        double toward = v.getY() * sin + v.getZ() * cos;
        double size = DISTANCE / (DISTANCE - toward) / metres;
        double x = v.getX() * size;
        double y = up * size;
        double c = Math.cos(spoilt.roll());
        double s = Math.sin(spoilt.roll());
        return new double[] {width / 2.0 + c * x - s * y, height / 2.0 - s * x - c * y};
    }

    /** Whose head stands further to the picture's left where both are first seen. */
    Side further(Cycles cycles) {
        for (int i = 0; i < cycles.sights().get(0).size(); i++) {
            LitSpot one = cycles.sights().get(0).get(i);
            LitSpot other = cycles.sights().get(1).get(i);
            if (one != null && other != null) {
                double time = one.time();
                double left = seen(head(Side.LEFT, time))[0];
                return left < seen(head(Side.RIGHT, time))[0] ? Side.LEFT : Side.RIGHT;
            }
        }
        return Side.LEFT;
    }

    double[] shake(double time) {
        double[] by = new double[2];
        for (int i = 0; i < shakes.length; i++) {
            double rate = 2 * Math.PI * (0.4 + 0.7 * i);
            by[i % 2] +=
                    spoilt.shake()
                            / (1 + i / 2.0)
                            * Math.sin(rate * time + 2 * Math.PI * shakes[i]);
        }
        return by;
    }

    Vector3D head(Side side, double time) {
        return trace.head(side).position(round(time));
    }

    Vector3D hand(Side side, double time) {
        return trace.hand(side).position(round(time));
    }

    private double round(double time) {
        double t = time % trace.period();
        return trace.interval().start() + (t < 0 ? t + trace.period() : t);
    }

    /** The frames' times: some are missing. */
    List<Double> times(double seconds) {
        List<Double> times = new ArrayList<>();
        int count = (int) (seconds * spoilt.rate());
        for (int i = 0; i < count; i++) {
            if (random.nextDouble() >= spoilt.dropped() || i == 0) {
                times.add(i / spoilt.rate());
            }
        }
        return times;
    }

    /** One frame; a doubled one shows the picture of the one before under a time of its own. */
    Shot shot(double time) {
        boolean doubled = time > 0.1 && random.nextDouble() < spoilt.doubled();
        return drawn(doubled ? time - 1 / spoilt.rate() : time, time);
    }

    private Shot drawn(double time, double stamp) {
        System.arraycopy(base, 0, light, 0, light.length);
        Arrays.fill(tint[0], 0);
        Arrays.fill(tint[1], 0);
        double[] shaken = shake(time);
        for (double[] lamp : spoilt.lamps()) {
            splat(lamp[0] * width + shaken[0], lamp[1] * height + shaken[1], 4, 180, 0, 0, height);
        }
        for (Side side : Side.values()) {
            if (hidden(side, time) || random.nextDouble() < spoilt.blinks()) {
                continue;
            }
            head(side, time);
            draw(side, time);
        }
        byte[] luma = new byte[width * height];
        int at = random.nextInt(grain.length);
        for (int i = 0; i < luma.length; i++) {
            int v = (int) light[i] + grain[at + i & grain.length - 1];
            luma[i] = (byte) (v < 0 ? 0 : Math.min(v, 255));
        }
        return new Shot(stamp, width, height, luma, colour(tint[0]), colour(tint[1]));
    }

    private boolean hidden(Side side, double time) {
        double part = time / trace.period() + (side == Side.LEFT ? 0.37 : 0.81);
        return part - Math.floor(part) < spoilt.hidden();
    }

    private void draw(Side side, double time) {
        double shutter = spoilt.shutter();
        double roll = spoilt.readout();
        double step = shutter / STEPS;
        int reach = (int) Math.ceil((roll + shutter) / 2 / step);
        for (int k = -reach; k <= reach; k++) {
            double t = time + (k + 0.5) * step;
            double[] p = seen(head(side, t));
            double[] shaken = shake(t);
            // Those rows whose shutter is open now.
            int from = 0;
            int to = height;
            if (roll > 0) {
                from = row((t - time - shutter / 2) / roll);
                to = row((t - time + shutter / 2) / roll);
            } else if (Math.abs(t - time) > shutter / 2) {
                continue;
            }
            int tinted = spoilt.coloured() ? (side == Side.LEFT ? 1 : -1) : 0;
            splat(
                    p[0] + shaken[0],
                    p[1] + shaken[1],
                    HEAD * 0.0027 / metres,
                    700.0 / STEPS,
                    tinted,
                    from,
                    to);
        }
    }

    private int row(double share) {
        return (int) Math.round(Math.max(0, Math.min(1, share + 0.5)) * height);
    }

    private void splat(
            double cx, double cy, double sigma, double strength, int tinted, int from, int to) {
        int reach = (int) (4 * sigma) + 1;
        int x0 = Math.max(0, (int) cx - reach);
        int x1 = Math.min(width, (int) cx + reach + 1);
        for (int y = Math.max(from, (int) cy - reach);
                y < Math.min(to, (int) cy + reach + 1);
                y++) {
            double down = Math.exp(-(y - cy) * (y - cy) / (2 * sigma * sigma)) * strength;
            for (int x = x0; x < x1; x++) {
                double more = down * Math.exp(-(x - cx) * (x - cx) / (2 * sigma * sigma));
                light[y * width + x] += (float) more;
                if (tinted != 0) {
                    int c = y / 2 * (width / 2) + x / 2;
                    tint[0][c] += (float) (-0.05 * tinted * more);
                    tint[1][c] += (float) (0.08 * tinted * more);
                }
            }
        }
    }

    private static byte[] colour(float[] tint) {
        byte[] plane = new byte[tint.length];
        for (int i = 0; i < plane.length; i++) {
            plane[i] = (byte) Math.round(128 + Math.max(-90, Math.min(90, tint[i])));
        }
        return plane;
    }
}
