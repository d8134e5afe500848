package deferent.film.cycle;

import deferent.film.light.Spot;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What two followed heads do that comes back: one period for both, a mean cycle of each, and how
 * the spinner's time drifts against an even clock.
 *
 * <p>The period is the shortest whose fit of a few turns leaves about as little as the best one
 * (least squares over a grid of frequencies, as Bretthorst 1988 has it for one tone). Then spots
 * are given to the heads once more by the mean cycles, which sees through what was hidden or
 * mistaken as frames went by, and all is fitted anew.
 *
 * @param period seconds
 * @param waves mean cycles of the two heads, in the order they were followed in
 * @param drift ahead of the even clock
 * @param sights frame by frame each head's spot by the last giving, null where it was not seen
 * @param exchanged frames in which the giving changed hands against how they were followed
 */
public record Cycles(
        double period,
        List<Wave> waves,
        Drift drift,
        List<List<@Nullable Spot>> sights,
        int exchanged) {
    private static final double SHORTEST = 0.25;
    private static final double LONGEST = 6;
    private static final int SEARCHED = 5; // turns in the search for the period
    private static final int MOST_ORDER = 10;
    private static final double AS_GOOD = 2.5; // of the best's squares
    private static final int ENOUGH = 300; // sights a head that the search for the period looks at
    private static final double FEW = 1; // pixels that no fit need be better than
    private static final double GATE = 8;

    /**
     * Of two followed heads.
     *
     * @param heads as {@link deferent.film.follow.Follower} gives them
     * @param frames all spots of each frame
     */
    public static Cycles of(List<List<@Nullable Spot>> heads, List<List<Spot>> frames) {
        List<Sights> sights = heads.stream().map(Sights::of).toList();
        double period = period(sights);
        List<Wave> waves = steadiest(sights, period);
        List<List<@Nullable Spot>> given = give(waves, Drift.NONE, frames);
        Drift drift = Drift.NONE;
        for (int round = 0; round < 4; round++) {
            sights = given.stream().map(Sights::of).toList();
            period = settled(sights, drift, period);
            waves = waves(sights, drift, period);
            Drift more = drift(sights, waves, drift, period);
            drift = more;
            waves = waves(sights, drift, period);
            given = give(waves, drift, frames);
        }
        return new Cycles(period, waves, drift, given, exchanged(heads, given));
    }

    private static int exchanged(List<List<@Nullable Spot>> was, List<List<@Nullable Spot>> now) {
        int exchanged = 0;
        for (int i = 0; i < was.get(0).size(); i++) {
            Spot left = now.get(0).get(i);
            if (left != null && left.equals(was.get(1).get(i)) && !left.equals(was.get(0).get(i))) {
                exchanged++;
            }
        }
        return exchanged;
    }

    // The period ---------------------------------------------------------------------------------

    private static double period(List<Sights> sights) {
        List<Sights> few = sights.stream().map(Cycles::few).toList();
        double from = few.stream().mapToDouble(s -> s.times()[0]).min().orElse(0);
        double to = few.stream().mapToDouble(s -> s.times()[s.count() - 1]).max().orElse(0);
        double lasting = to - from;
        double least = 1 / Math.min(LONGEST, lasting / 1.5);
        double step = 0.12 / (lasting * SEARCHED);
        int count = (int) ((1 / SHORTEST - least) / step) + 1;
        double[] left = new double[count];
        for (int i = 0; i < count; i++) {
            left[i] = squares(few, Drift.NONE, 1 / (least + i * step));
        }
        double best = Arrays.stream(left).min().orElse(0);
        int at = count - 1;
        while (left[at] > AS_GOOD * best + FEW) {
            at--;
        }
        // Down into the dip that begins there.
        while (at > 0 && left[at - 1] < left[at]) {
            at--;
        }
        return refined(few, Drift.NONE, 1 / (least + at * step), 1 / step / 2);
    }

    private static Sights few(Sights all) {
        int n = Math.min(all.count(), ENOUGH);
        double[] t = new double[n];
        double[] x = new double[n];
        double[] y = new double[n];
        // Of a long film the beginning is enough to find the period, at no less than all its
        // frames.
        int step = Math.max(1, Math.min(2, all.count() / n));
        for (int i = 0; i < n; i++) {
            t[i] = all.times()[i * step];
            x[i] = all.x()[i * step];
            y[i] = all.y()[i * step];
        }
        return new Sights(t, x, y);
    }

    /** Mean square that a fit of a few turns leaves, pixels². */
    private static double squares(List<Sights> sights, Drift drift, double period) {
        double sum = 0;
        int count = 0;
        for (Sights s : sights) {
            double[] shift = drift.at(s.times());
            Wave wave = WaveFit.plain(s, shift, period, SEARCHED);
            double[] off = WaveFit.off(wave, s, shift);
            // A few wrong lights are not to decide: what is far off counts as so far.
            double[] sorted = off.clone();
            Arrays.sort(sorted);
            double most = 4 * Math.max(0.5, sorted[sorted.length / 2]);
            for (double o : off) {
                double capped = Math.min(o, most);
                sum += capped * capped;
            }
            count += off.length;
        }
        return sum / count;
    }

    private static double settled(List<Sights> sights, Drift drift, double period) {
        double lasting =
                sights.stream()
                        .mapToDouble(s -> s.times()[s.count() - 1] - s.times()[0])
                        .max()
                        .orElse(1);
        return refined(sights, drift, period, lasting * SEARCHED);
    }

    // Golden section between the neighbours of a dip.
    private static double refined(List<Sights> sights, Drift drift, double period, double scale) {
        double half = 0.5 / scale;
        double a = 1 / period - half;
        double b = 1 / period + half;
        double ratio = (Math.sqrt(5) - 1) / 2;
        double c = b - ratio * (b - a);
        double d = a + ratio * (b - a);
        double fc = squares(sights, drift, 1 / c);
        double fd = squares(sights, drift, 1 / d);
        for (int i = 0; i < 30; i++) {
            if (fc < fd) {
                b = d;
                d = c;
                fd = fc;
                c = b - ratio * (b - a);
                fc = squares(sights, drift, 1 / c);
            } else {
                a = c;
                c = d;
                fc = fd;
                d = a + ratio * (b - a);
                fd = squares(sights, drift, 1 / d);
            }
        }
        return 2 / (a + b);
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
            if (cut.stream().anyMatch(s -> s.count() < 4 * SEARCHED + 4)) {
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
        return sights.stream().map(s -> wave(s, drift.at(s.times()), period)).toList();
    }

    // As many turns as pay for themselves (Schwarz, Annals of Statistics 6 (1978)).
    private static Wave wave(Sights sights, double[] shift, double period) {
        double n = sights.count();
        Wave best = WaveFit.of(sights, shift, period, 1);
        double least = Double.POSITIVE_INFINITY;
        for (int order = 1; order <= MOST_ORDER && 4 * order + 2 < n; order++) {
            Wave wave = WaveFit.of(sights, shift, period, order);
            double paid =
                    2 * n * Math.log(wave.scatter() * wave.scatter() + 1e-6)
                            + 2 * (2 * order + 1) * Math.log(n);
            if (paid < least) {
                least = paid;
                best = wave;
            }
        }
        return best;
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

    private static List<List<@Nullable Spot>> give(
            List<Wave> waves, Drift drift, List<List<Spot>> frames) {
        List<@Nullable Spot> one = new ArrayList<>();
        List<@Nullable Spot> other = new ArrayList<>();
        double[] reach = waves.stream().mapToDouble(w -> GATE * w.scatter() + 25).toArray();
        for (List<Spot> spots : frames) {
            if (spots.isEmpty()) {
                one.add(null);
                other.add(null);
                continue;
            }
            double time = spots.get(0).time() + drift.at(spots.get(0).time());
            double[] left = waves.get(0).at(time)[0];
            double[] right = waves.get(1).at(time)[0];
            int[] pick = pick(spots, left, right, reach);
            // Where two heads lie in one spot it is neither's.
            boolean shared = pick[0] >= 0 && pick[0] == pick[1];
            one.add(pick[0] < 0 || shared ? null : spots.get(pick[0]));
            other.add(pick[1] < 0 || shared ? null : spots.get(pick[1]));
        }
        return Stream.of(one, other).toList();
    }

    private static int[] pick(List<Spot> spots, double[] left, double[] right, double[] reach) {
        int[] best = {-1, -1};
        double least = Double.POSITIVE_INFINITY;
        for (int i = -1; i < spots.size(); i++) {
            for (int j = -1; j < spots.size(); j++) {
                double cost = far(spots, i, left, reach[0]) + far(spots, j, right, reach[1]);
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

    private static double far(List<Spot> spots, int i, double[] at, double reach) {
        if (i < 0) {
            return 1;
        }
        double d = Math.hypot(spots.get(i).x() - at[0], spots.get(i).y() - at[1]) / reach;
        return d > 1 ? 10 : d * d;
    }
}
