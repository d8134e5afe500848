package deferent.film;

import deferent.film.light.LitSpot;
import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Refused;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.tether.KeepTheFigure;
import deferent.reading.tether.KeepTheHandPath;
import deferent.reading.tether.Kit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The twelve classics on real cords, and what a camera's finder would report of them: a spot a head
 * a frame, some pixels off, without the pictures, which have tests of their own.
 */
final class Classics {
    static final double PIXEL = 0.0027;

    private Classics() {}

    /**
     * What a cord makes of it where the figure is kept, or the hand path; empty where it cannot.
     */
    static Optional<Trace> corded(Pairing pairing, boolean figure) {
        Trace ideal = Trace.of(pairing);
        Trace trace = ideal;
        try {
            for (Side side : Side.values()) {
                if (pairing.part(side).motion().undriven()) {
                    continue;
                }
                if (figure) {
                    KeepTheFigure kept = KeepTheFigure.of(ideal, side, Kit.USUAL);
                    if (!kept.possible()) {
                        return Optional.empty();
                    }
                    trace = kept.in(trace);
                } else {
                    KeepTheHandPath kept = KeepTheHandPath.of(ideal, side, Kit.USUAL);
                    if (kept.best().isEmpty()) {
                        return Optional.empty();
                    }
                    trace = kept.in(trace, kept.best().get());
                }
            }
        } catch (Refused impossible) {
            return Optional.empty();
        }
        return Optional.of(trace);
    }

    /** Spots of a film of it. */
    static List<List<LitSpot>> spots(Trace trace, double seconds, double rate, long seed) {
        Random random = new Random(seed);
        double shutter = 1.0 / 120;
        double start = random.nextDouble() * trace.period();
        List<List<LitSpot>> frames = new ArrayList<>();
        for (int i = 0; i < seconds * rate; i++) {
            double t = i / rate;
            List<LitSpot> spots = new ArrayList<>();
            for (Side side : Side.values()) {
                double[] a = seen(trace, side, start + t - shutter / 2, random);
                double[] m = seen(trace, side, start + t, random);
                double[] b = seen(trace, side, start + t + shutter / 2, random);
                spots.add(new LitSpot(t, m[0], m[1], a[0], a[1], b[0], b[1], 3, 2000, 0, 0));
            }
            if (random.nextBoolean()) {
                spots.add(spots.remove(0));
            }
            frames.add(spots);
        }
        return frames;
    }

    /** Whose head stands further to the picture's left, the performer's right, at first. */
    static Side further(Trace trace, long seed) {
        double start = new Random(seed).nextDouble() * trace.period();
        double left = trace.head(Side.LEFT).position(start).getX();
        return left < trace.head(Side.RIGHT).position(start).getX() ? Side.LEFT : Side.RIGHT;
    }

    /** Where a head truly is in the picture, pixels, in a film of that seed. */
    static double[] pixels(Trace trace, Side side, double time, long seed) {
        double t = new Random(seed).nextDouble() * trace.period() + time;
        Vector3D p =
                trace.head(side)
                        .position(
                                trace.interval().start()
                                        + t
                                        - trace.period() * Math.floor(t / trace.period()));
        return new double[] {960 + p.getX() / PIXEL, 540 - p.getY() / PIXEL};
    }

    private static double[] seen(Trace trace, Side side, double time, Random random) {
        double wrapped = time - trace.period() * Math.floor(time / trace.period());
        Vector3D p = trace.head(side).position(trace.interval().start() + wrapped);
        double noise = 0.8;
        return new double[] {
            960 + p.getX() / PIXEL + noise * random.nextGaussian(),
            540 - p.getY() / PIXEL + noise * random.nextGaussian()
        };
    }
}
