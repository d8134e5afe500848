package deferent.film.cycle;

import deferent.film.light.LitSpot;
import deferent.film.light.RollingShutter;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Where one head was seen: middles of its spots.
 *
 * @param times seconds, going up
 * @param x pixels or metres, of the middle of its light
 * @param y likewise
 */
public record Sights(double[] times, double[] x, double[] y) {
    /** Of the frames in which it was seen, by a camera that reads all rows at once. */
    public static Sights of(List<@Nullable LitSpot> spots) {
        return of(spots, RollingShutter.GLOBAL);
    }

    /** Of the frames in which it was seen. */
    public static Sights of(List<@Nullable LitSpot> spots, RollingShutter shutter) {
        List<LitSpot> seen =
                spots.stream().filter(Objects::nonNull).map(Objects::requireNonNull).toList();
        return new Sights(
                seen.stream().mapToDouble(shutter::time).toArray(),
                seen.stream().mapToDouble(LitSpot::x).toArray(),
                seen.stream().mapToDouble(LitSpot::y).toArray());
    }

    /** How many. */
    public int count() {
        return times.length;
    }

    /** Each so many-th of them. */
    Sights every(int step) {
        int n = (count() + step - 1) / step;
        double[][] kept = new double[3][n];
        for (int i = 0; i < n; i++) {
            kept[0][i] = times[i * step];
            kept[1][i] = x[i * step];
            kept[2][i] = y[i * step];
        }
        return new Sights(kept[0], kept[1], kept[2]);
    }

    /** Those from one time to before another. */
    public Sights between(double from, double to) {
        int a = 0;
        while (a < times.length && times[a] < from) {
            a++;
        }
        int b = a;
        while (b < times.length && times[b] < to) {
            b++;
        }
        return new Sights(
                Arrays.copyOfRange(times, a, b),
                Arrays.copyOfRange(x, a, b),
                Arrays.copyOfRange(y, a, b));
    }
}
