package deferent.film;

import deferent.motion.pairing.Side;
import deferent.motion.trace.Trace;
import deferent.reel.Shot;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A film of a trace as a phone would have made it in the dark, with what was true kept beside it:
 * lit heads drawn out while the shutter is open, noise, lamps that stand still, heads hidden for a
 * while, frames that are missing.
 */
final class RenderedFilm {
    final int width;
    final int height;
    final double metres;
    final double rate;
    final double shutter;
    final Trace trace;
    private final Random random;
    private final float[] light;
    private final List<double[]> lamps = new ArrayList<>();
    double noise = 3;
    double hiddenFrom = -1;
    double hiddenFor;
    double dropped;
    boolean coloured = true;
    // Of the picture, where the trace's (0, centre) lies.
    double originX;
    double originY;

    RenderedFilm(
            Trace trace,
            int width,
            int height,
            double metres,
            double rate,
            double shutter,
            long seed) {
        this.trace = trace;
        this.width = width;
        this.height = height;
        this.metres = metres;
        this.rate = rate;
        this.shutter = shutter;
        this.random = new Random(seed);
        this.light = new float[width * height];
        double[] box = box(trace);
        originX = width / 2.0 - (box[0] + box[1]) / 2 / metres;
        originY = height / 2.0 + (box[2] + box[3]) / 2 / metres;
    }

    private static double[] box(Trace trace) {
        double[] box = {1e9, -1e9, 1e9, -1e9};
        for (Side side : Side.values()) {
            for (int i = 0; i < 240; i++) {
                Vector3D p =
                        trace.head(side)
                                .position(trace.interval().start() + i * trace.period() / 240);
                box[0] = Math.min(box[0], p.getX());
                box[1] = Math.max(box[1], p.getX());
                box[2] = Math.min(box[2], p.getY());
                box[3] = Math.max(box[3], p.getY());
            }
        }
        return box;
    }

    void lamp(double x, double y) {
        lamps.add(new double[] {x, y});
    }

    /** Metres in the trace's frame to pixels. */
    double[] seen(Vector3D p) {
        return new double[] {originX + p.getX() / metres, originY - p.getY() / metres};
    }

    Vector3D head(Side side, double time) {
        return trace.head(side).position(time % trace.period());
    }

    Vector3D hand(Side side, double time) {
        return trace.hand(side).position(time % trace.period());
    }

    List<Shot> shots(double seconds) {
        List<Shot> shots = new ArrayList<>();
        int count = (int) (seconds * rate);
        for (int i = 0; i < count; i++) {
            if (random.nextDouble() >= dropped || i == 0) {
                shots.add(shot(i / rate));
            }
        }
        return shots;
    }

    Shot shot(double time) {
        Arrays.fill(light, 18f);
        byte[] blue = new byte[(width + 1) / 2 * ((height + 1) / 2)];
        byte[] red = new byte[blue.length];
        Arrays.fill(blue, (byte) 128);
        Arrays.fill(red, (byte) 128);
        for (double[] lamp : lamps) {
            splat(lamp[0], lamp[1], 4, 700);
        }
        for (Side side : Side.values()) {
            boolean hidden =
                    side == Side.LEFT
                            && hiddenFrom >= 0
                            && Math.floorMod(
                                            (long) ((time - hiddenFrom) / trace.period() * 1e6),
                                            1_000_000L)
                                    < hiddenFor * 1e6;
            if (hidden) {
                continue;
            }
            int steps = 24;
            for (int k = 0; k < steps; k++) {
                double t = time + shutter * ((k + 0.5) / steps - 0.5);
                double[] p = seen(head(side, Math.max(0, t)));
                splat(p[0], p[1], 3.2, 2600.0 / steps);
            }
        }
        byte[] luma = new byte[width * height];
        for (int i = 0; i < luma.length; i++) {
            luma[i] =
                    (byte)
                            Math.max(
                                    0,
                                    Math.min(
                                            255,
                                            Math.round(light[i] + noise * random.nextGaussian())));
        }
        return new Shot(time, width, height, luma, blue, red);
    }

    private void splat(double cx, double cy, double sigma, double strength) {
        int reach = (int) (4 * sigma) + 1;
        for (int y = Math.max(0, (int) cy - reach); y < Math.min(height, (int) cy + reach); y++) {
            for (int x = Math.max(0, (int) cx - reach);
                    x < Math.min(width, (int) cx + reach);
                    x++) {
                double d = (x - cx) * (x - cx) + (y - cy) * (y - cy);
                light[y * width + x] += (float) (strength * Math.exp(-d / (2 * sigma * sigma)) / 4);
            }
        }
    }
}
