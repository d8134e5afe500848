package deferent.search.clear;

import deferent.search.clear.Clearing.Cleared;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import org.hipparchus.random.RandomGenerator;
import org.hipparchus.random.Well19937c;

/**
 * Makes a change of planes smaller on the reading that confirms it, which the quick one that found
 * it only resembles: a compass search (Kolda, Lewis and Torczon 2003) whose moves change one
 * freedom, or less of one for more of another, in steps that halve down to the millimetre; between
 * two of them other directions are tried, each at less than what there is: the plain ones, some of
 * few freedoms, some about that of the best.
 */
final class Polish {
    private static final int ASKED = 700;
    private static final int COMPASS = 70;
    private static final int AIMED = 650;
    private static final double WIDE = 0.6;
    private static final int MOVES = 24;
    private static final double SHARE = 0.97;
    private static final double FINEST = 0.006;
    private static final double GAIN = 0.002;

    private final Function<double[], Optional<Cleared>> place;
    private final Predicate<Cleared> surely;
    private final RandomGenerator random;
    private final Set<List<PlaneChange>> tried = new HashSet<>();
    private double[] best;
    private Cleared found;
    private int left = ASKED;
    private int aims;

    /**
     * @param from where the search stands, in hands' breadths a freedom
     * @param found what is confirmed there
     * @param place what a change comes to, as it can be said
     * @param surely whether it is clear at full sampling
     */
    Polish(
            double[] from,
            Cleared found,
            Function<double[], Optional<Cleared>> place,
            Predicate<Cleared> surely,
            long seed) {
        this.best = from.clone();
        this.found = found;
        this.place = place;
        this.surely = surely;
        this.random = new Well19937c(seed);
    }

    /** The least that was found, never more than what there was. */
    Cleared least(List<double[]> directions) {
        compass(ASKED - COMPASS);
        directions.forEach(this::along);
        while (left > ASKED - AIMED && aims++ < ASKED) {
            along(aims % 2 == 0 ? few() : about());
        }
        compass(0);
        return found;
    }

    /** Some direction of two or three freedoms. */
    private double[] few() {
        double[] direction = new double[best.length];
        int freedoms = 2 + random.nextInt(2);
        for (int i = 0; i < freedoms; i++) {
            direction[random.nextInt(direction.length)] = random.nextGaussian();
        }
        return times(direction, 1 / norm(direction));
    }

    /** Some direction about that of the best. */
    private double[] about() {
        double[] direction = times(best, 1 / norm(best));
        double wide = WIDE * random.nextDouble();
        for (int i = 0; i < direction.length; i++) {
            direction[i] += wide * random.nextGaussian();
        }
        return times(direction, 1 / norm(direction));
    }

    private static double norm(double[] x) {
        return Arrays.stream(x).reduce(0, Math::hypot);
    }

    private void along(double[] direction) {
        if (less(times(direction, SHARE * found.cost()))) {
            nearer(direction);
        }
    }

    private void nearer(double[] direction) {
        double low = 0;
        double high = found.cost();
        while (high - low > FINEST) {
            double half = (low + high) / 2;
            if (less(times(direction, half))) {
                high = half;
            } else {
                low = half;
            }
        }
    }

    private void compass(int keep) {
        double step = Math.max(FINEST, 0.25 * found.cost());
        while (step >= FINEST && left > keep) {
            if (!moved(step)) {
                step /= 2;
            }
        }
    }

    /** The first of the cheaper moves that is clear, some at random of those that are many. */
    private boolean moved(double step) {
        List<Cheaper> moves = new ArrayList<>();
        cheaper(times(best, Math.max(0, 1 - step / found.cost())), moves);
        for (int i = 0; i < best.length; i++) {
            double[] one = best.clone();
            one[i] = toward(best[i], step);
            cheaper(one, moves);
            for (int j = 0; j < best.length; j++) {
                for (int sign = -1; sign <= 1 && j != i; sign += 2) {
                    double[] two = one.clone();
                    two[j] += sign * step;
                    cheaper(two, moves);
                }
            }
        }
        while (moves.size() > MOVES) {
            moves.remove(1 + random.nextInt(moves.size() - 1));
        }
        moves.sort(Comparator.comparingDouble(Cheaper::cost));
        return moves.stream().anyMatch(move -> less(move.x()));
    }

    private static double toward(double x, double step) {
        return x - Math.copySign(Math.min(step, Math.abs(x)), x);
    }

    private record Cheaper(double[] x, double cost) {}

    private void cheaper(double[] x, List<Cheaper> moves) {
        place.apply(x)
                .filter(this::isCheaper)
                .filter(there -> !tried.contains(changes(there)))
                .ifPresent(there -> moves.add(new Cheaper(x, there.cost())));
    }

    private boolean isCheaper(Cleared there) {
        return there.cost() < found.cost() * (1 - GAIN);
    }

    private static List<PlaneChange> changes(Cleared there) {
        return List.of(there.left(), there.right());
    }

    private boolean less(double[] x) {
        Optional<Cleared> there = place.apply(x).filter(this::isCheaper);
        if (left == 0 || there.isEmpty() || !tried.add(changes(there.get()))) {
            return false;
        }
        left--;
        if (!surely.test(there.get())) {
            return false;
        }
        best = x.clone();
        found = there.get();
        return true;
    }

    private static double[] times(double[] x, double by) {
        double[] all = x.clone();
        for (int i = 0; i < all.length; i++) {
            all[i] *= by;
        }
        return all;
    }
}
