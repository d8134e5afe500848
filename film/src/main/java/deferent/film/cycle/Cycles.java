package deferent.film.cycle;

import deferent.film.follow.Tint;
import deferent.film.light.LitSpot;
import deferent.film.light.RollingShutter;
import deferent.motion.pairing.Refusal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What two followed heads do that comes back: one period for both, a mean cycle of each, and how
 * the spinner's time drifts against an even clock.
 *
 * <p>A period is found, then spots are given to the heads once more by the mean cycles, which sees
 * through what was hidden or mistaken as frames went by, and all is fitted anew.
 *
 * @param period seconds
 * @param waves mean cycles of the two heads, in the order they were followed in
 * @param drift ahead of the even clock
 * @param sights frame by frame each head's spot by the last giving, null where it was not seen
 * @param exchanged frames in which the giving changed hands against how they were followed
 * @param unsure stretches in which it is not sure which light is which head's, by time
 */
public record Cycles(
        double period,
        List<Wave> waves,
        Drift drift,
        List<List<@Nullable LitSpot>> sights,
        int exchanged,
        List<Unsure> unsure) {
    static final int LEAST = 24; // sights a head of a passage that may stand for all
    private static final double GATE = 8;
    private static final double LONGEST_OPEN = 1 / 20.0; // seconds

    /**
     * Of two followed heads.
     *
     * @param heads as {@link deferent.film.follow.Follower} gives them
     * @param frames all spots of each frame
     */
    public static Cycles of(List<List<@Nullable LitSpot>> heads, List<List<LitSpot>> frames) {
        return of(heads, frames, RollingShutter.GLOBAL);
    }

    /**
     * Of two followed heads.
     *
     * @param heads as {@link deferent.film.follow.Follower} gives them
     * @param frames all spots of each frame
     * @param shutter how the camera reads its rows
     */
    public static Cycles of(
            List<List<@Nullable LitSpot>> heads,
            List<List<LitSpot>> frames,
            RollingShutter shutter) {
        List<Sights> sights = heads.stream().map(s -> Sights.of(s, shutter)).toList();
        if (sights.size() < 2 || sights.stream().anyMatch(s -> s.count() < LEAST)) {
            throw new Refusal(
                    "are not seen together for long enough",
                    "two heads",
                    "film both lit poi, whole, for six turns or more");
        }
        double period = Period.of(sights);
        List<Wave> waves = steadiest(sights, period);
        List<List<@Nullable LitSpot>> given = give(waves, Drift.NONE, frames, shutter);
        Drift drift = Drift.NONE;
        List<Double> meetings = List.of();
        for (int round = 0; round < 4; round++) {
            if (round == 1 && !Tint.of(frames).tells()) {
                CrossedLights.Told told = CrossedLights.of(given, waves, drift, period, shutter);
                given = told.given();
                meetings = told.unsure();
            }
            sights = given.stream().map(s -> Sights.of(s, shutter)).toList();
            if (sights.stream().anyMatch(s -> s.count() < LEAST)) {
                throw new Refusal(
                        "do not come back to what they did before",
                        "two heads",
                        "film one pattern, six turns or more of it");
            }
            period = Period.settled(sights, drift, period);
            waves = waves(sights, drift, period);
            Drift more = drift(sights, waves, drift, period);
            drift = more;
            waves = waves(sights, drift, period);
            given = give(waves, drift, frames, shutter);
        }
        double exposure = exposure(given, waves, drift, shutter);
        List<Wave> sharp = waves.stream().map(w -> w.sharpened(exposure)).toList();
        return new Cycles(
                period,
                sharp,
                drift,
                given,
                exchanged(heads, given),
                Unsure.of(given, frames, meetings, drift, period));
    }

    private static int exchanged(
            List<List<@Nullable LitSpot>> was, List<List<@Nullable LitSpot>> now) {
        int exchanged = 0;
        for (int i = 0; i < was.get(0).size(); i++) {
            LitSpot left = now.get(0).get(i);
            if (left != null && left.equals(was.get(1).get(i)) && !left.equals(was.get(0).get(i))) {
                exchanged++;
            }
        }
        return exchanged;
    }

    // The mean cycles ----------------------------------------------------------------------------

    private static List<Wave> steadiest(List<Sights> sights, double period) {
        double from = sights.stream().mapToDouble(s -> s.times()[0]).min().orElse(0);
        double to = sights.stream().mapToDouble(s -> s.times()[s.count() - 1]).max().orElse(0);
        int parts = (int) Math.max(1, Math.min(6, (to - from) / (2.5 * period)));
        List<Wave> best = List.of();
        double least = Double.POSITIVE_INFINITY;
        for (int part = 0; part < parts; part++) {
            double a = from + part * (to - from) / parts;
            double b = from + (part + 1) * (to - from) / parts;
            List<Sights> cut = sights.stream().map(s -> s.between(a, b)).toList();
            if (cut.stream().anyMatch(s -> s.count() < LEAST)) {
                continue;
            }
            List<Wave> waves = waves(cut, Drift.NONE, period);
            double scatter = waves.stream().mapToDouble(Wave::scatter).sum();
            if (scatter < least) {
                least = scatter;
                best = waves;
            }
        }
        return best.isEmpty() ? waves(sights, Drift.NONE, period) : best;
    }

    private static List<Wave> waves(List<Sights> sights, Drift drift, double period) {
        return sights.stream().map(s -> WaveFit.of(s, drift.at(s.times()), period)).toList();
    }

    // How far ahead the motion is, cycle by cycle, where that is more than chance.
    private static Drift drift(List<Sights> sights, List<Wave> waves, Drift was, double period) {
        double from = sights.stream().mapToDouble(s -> s.times()[0]).min().orElse(0);
        double to = sights.stream().mapToDouble(s -> s.times()[s.count() - 1]).max().orElse(0);
        int count = (int) Math.round((to - from) / period);
        if (count < 3) {
            return was;
        }
        double[] knots = new double[count];
        double[] ahead = new double[count];
        double chance = 0;
        double square = 0;
        for (int k = 0; k < count; k++) {
            knots[k] = from + (k + 0.5) * (to - from) / count;
            double top = 0;
            double bottom = 0;
            double scatter = 0;
            for (int h = 0; h < 2; h++) {
                Sights near = sights.get(h).between(knots[k] - period / 2, knots[k] + period / 2);
                Wave wave = waves.get(h);
                scatter = Math.max(scatter, wave.scatter());
                for (int i = 0; i < near.count(); i++) {
                    double[][] at = wave.at(near.times()[i] + was.at(near.times()[i]));
                    double dx = near.x()[i] - at[0][0];
                    double dy = near.y()[i] - at[0][1];
                    if (Math.hypot(dx, dy) > GATE * wave.scatter() + 40) {
                        continue;
                    }
                    top += dx * at[1][0] + dy * at[1][1];
                    bottom += at[1][0] * at[1][0] + at[1][1] * at[1][1];
                }
            }
            ahead[k] = bottom > 0 ? top / bottom : 0;
            square += ahead[k] * ahead[k];
            chance += bottom > 0 ? scatter * scatter / bottom : 0;
        }
        return square > 9 * chance ? was.plus(new Drift(knots, ahead)) : was;
    }

    // Spots given by the mean cycles
    // ---------------------------------------------------------------

    private static List<List<@Nullable LitSpot>> give(
            List<Wave> waves, Drift drift, List<List<LitSpot>> frames, RollingShutter shutter) {
        List<@Nullable LitSpot> one = new ArrayList<>();
        List<@Nullable LitSpot> other = new ArrayList<>();
        double[] reach = waves.stream().mapToDouble(w -> GATE * w.scatter() + 25).toArray();
        for (List<LitSpot> spots : frames) {
            if (spots.isEmpty()) {
                one.add(null);
                other.add(null);
                continue;
            }
            double[][] far = new double[2][spots.size()];
            for (int i = 0; i < spots.size(); i++) {
                double time = shutter.time(spots.get(i));
                time += drift.at(time);
                for (int h = 0; h < 2; h++) {
                    far[h][i] = far(spots.get(i), waves.get(h).at(time)[0], reach[h]);
                }
            }
            int[] pick = pick(far[0], far[1]);
            // Where two heads lie in one spot it is neither's.
            boolean shared = pick[0] >= 0 && pick[0] == pick[1];
            one.add(pick[0] < 0 || shared ? null : spots.get(pick[0]));
            other.add(pick[1] < 0 || shared ? null : spots.get(pick[1]));
        }
        return Stream.of(one, other).toList();
    }

    private static int[] pick(double[] left, double[] right) {
        int[] best = {-1, -1};
        double least = Double.POSITIVE_INFINITY;
        for (int i = -1; i < left.length; i++) {
            for (int j = -1; j < right.length; j++) {
                double cost = (i < 0 ? 1 : left[i]) + (j < 0 ? 1 : right[j]);
                if (i == j && i >= 0) {
                    cost += 0.2;
                }
                if (cost < least) {
                    least = cost;
                    best = new int[] {i, j};
                }
            }
        }
        return best;
    }

    private static double far(LitSpot spot, double[] at, double reach) {
        double d = Math.hypot(spot.x() - at[0], spot.y() - at[1]) / reach;
        return d > 1 ? 10 : d * d;
    }

    // How long the shutter was open: streaks' lengths over speeds, of the quicker half.
    private static double exposure(
            List<List<@Nullable LitSpot>> given,
            List<Wave> waves,
            Drift drift,
            RollingShutter shutter) {
        List<double[]> all = new ArrayList<>();
        for (int h = 0; h < 2; h++) {
            for (LitSpot spot : given.get(h)) {
                if (spot != null) {
                    double time = shutter.time(spot);
                    double[] pace = waves.get(h).at(time + drift.at(time))[1];
                    all.add(new double[] {Math.hypot(pace[0], pace[1]), spot.length()});
                }
            }
        }
        all.sort(Comparator.comparingDouble(a -> a[0]));
        double[] open =
                all.subList(all.size() / 2, all.size()).stream()
                        .mapToDouble(a -> a[1] / Math.max(1, a[0]))
                        .sorted()
                        .toArray();
        return open.length == 0 ? 0 : Math.min(open[open.length / 2], LONGEST_OPEN);
    }
}
