package deferent.film.cycle;

import deferent.film.light.LitSpot;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Spots of two heads that go as told, one picture after another, each a pixel's part off. */
public final class TwoHeads {
    /** Where a head is. */
    @FunctionalInterface
    public interface Path {
        /** Pixels, across and down. */
        double[] at(double time);
    }

    private TwoHeads() {}

    public static List<List<LitSpot>> frames(
            Path one, Path other, double seconds, double rate, double noise) {
        Random random = new Random(4);
        List<List<LitSpot>> frames = new ArrayList<>();
        for (int i = 0; i < seconds * rate; i++) {
            double time = i / rate;
            List<LitSpot> spots = new ArrayList<>();
            for (Path path : List.of(one, other)) {
                double[] p = path.at(time);
                if (p.length == 2) {
                    spots.add(
                            spot(
                                    time,
                                    p[0] + noise * random.nextGaussian(),
                                    p[1] + noise * random.nextGaussian()));
                }
            }
            frames.add(spots);
        }
        return frames;
    }

    public static LitSpot spot(double time, double x, double y) {
        return new LitSpot(time, x, y, x, y, x, y, 3, 5000, 0, 0);
    }

    /** Round a circle, turns a second, beginning at a part of a turn. */
    public static Path circle(double x, double y, double radius, double turns, double from) {
        return t ->
                new double[] {
                    x + radius * Math.cos(2 * Math.PI * (turns * t + from)),
                    y + radius * Math.sin(2 * Math.PI * (turns * t + from))
                };
    }

    /** A flower: a circle that goes round a circle. */
    public static Path flower(double x, double y, double hand, double cord, int n, double turns) {
        return t -> {
            double a = 2 * Math.PI * turns * t;
            return new double[] {
                x + hand * Math.cos(a) + cord * Math.cos(n * a),
                y + hand * Math.sin(a) + cord * Math.sin(n * a)
            };
        };
    }
}
