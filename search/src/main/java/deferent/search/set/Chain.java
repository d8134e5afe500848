package deferent.search.set;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Which transition leads from each pattern to the next: the choice with the least sum of the
 * transitions' weights and of the counts by which the stays are off. How long a pattern is kept
 * depends on the transition into it and the one out of it alone, so the best choice is found by
 * dynamic programming over the patterns in order (Bellman, 1957): the best way up to each of a
 * pattern's transitions is all that has to be kept. In a round the last leads into the first; there
 * each of its last transitions is tried.
 *
 * @param doors which transition follows each pattern, by its place in the list it was given in
 * @param stays seconds each pattern is kept
 * @param cost the least sum
 */
record Chain(List<Integer> doors, List<Double> stays, double cost) {
    Chain {
        doors = List.copyOf(doors);
        stays = List.copyOf(stays);
    }

    int door(int after) {
        return doors.get(after);
    }

    double stay(int pattern) {
        return stays.get(pattern);
    }

    /**
     * Patterns one after another; the first begins with its cycle, and the last ends when it is
     * asked to.
     *
     * @param doors after each pattern but the last, at least one
     */
    static Chain open(List<Run> runs, List<List<Door>> doors, SongBars bars) {
        return new Search(runs, doors, bars).from(0, -1);
    }

    /**
     * Patterns that come round again, to no song.
     *
     * @param doors after each pattern, those of the last leading into the first
     */
    static Chain round(List<Run> runs, List<List<Door>> doors) {
        Chain best = new Chain(List.of(), List.of(), Double.POSITIVE_INFINITY);
        List<Door> last = doors.get(doors.size() - 1);
        for (int i = 0; i < last.size(); i++) {
            Chain one = new Search(runs, doors, SongBars.NONE).from(last.get(i).joins(), i);
            if (one.cost < best.cost) {
                best = one;
            }
        }
        return best;
    }

    /**
     * @param bars the first pattern begins on beat 0 of their first; where a pattern is counted
     *     from 1 in its bar is kept beside each transition, as "transition times beats a bar plus
     *     beat"
     */
    private record Search(List<Run> runs, List<List<Door>> doors, SongBars bars) {
        /**
         * @param entered when the first pattern is entered, seconds on its clock
         * @param closing which of the last pattern's transitions has to follow it; below 0 where
         *     none does
         */
        Chain from(double entered, int closing) {
            int steps = runs.size();
            int bar = bars.beats();
            double[] costs = new double[bar];
            Arrays.fill(costs, Double.POSITIVE_INFINITY);
            costs[0] = 0;
            int[][] before = new int[steps][];
            double[] joins = {entered};
            for (int k = 0; k < steps - 1; k++) {
                List<Door> out = doors.get(k);
                double[] next = new double[out.size() * bar];
                before[k] = new int[next.length];
                Arrays.fill(next, Double.POSITIVE_INFINITY);
                for (int j = 0; j < out.size(); j++) {
                    for (int i = 0; i < joins.length; i++) {
                        double here = weighed(k, joins[i], out.get(j));
                        int on = bars.on(section(k, joins[i], out.get(j)));
                        for (int at = 0; at < bar; at++) {
                            int then = (at + on) % bar;
                            double sum = costs[i * bar + at] + here + bars.weight(then);
                            if (sum < next[j * bar + then]) {
                                next[j * bar + then] = sum;
                                before[k][j * bar + then] = i * bar + at;
                            }
                        }
                    }
                }
                costs = next;
                joins = out.stream().mapToDouble(Door::joins).toArray();
            }
            int end = 0;
            double least = Double.POSITIVE_INFINITY;
            for (int i = 0; i < costs.length; i++) {
                double sum =
                        closing < 0
                                ? costs[i]
                                : costs[i]
                                        + weighed(
                                                steps - 1,
                                                joins[i / bar],
                                                doors.get(steps - 1).get(closing));
                if (sum < least) {
                    least = sum;
                    end = i;
                }
            }
            return walked(before, end, closing, entered, least);
        }

        private Run next(int k) {
            return runs.get((k + 1) % runs.size());
        }

        private double stay(int k, double entered, Door out) {
            return runs.get(k).stay(entered, out, next(k));
        }

        private double weighed(int k, double entered, Door out) {
            double stay = stay(k, entered, out);
            return out.weight() + runs.get(k).off(stay, entered, out, next(k));
        }

        /** From where a pattern is counted from 1 to where the next one is, seconds. */
        private double section(int k, double entered, Door out) {
            return stay(k, entered, out)
                    - runs.get(k).untilOne(entered)
                    + out.seconds()
                    + next(k).untilOne(out.joins());
        }

        private Chain walked(int[][] before, int end, int closing, double entered, double cost) {
            int steps = runs.size();
            Integer[] chosen = new Integer[closing < 0 ? steps - 1 : steps];
            if (closing >= 0) {
                chosen[steps - 1] = closing;
            }
            int at = end;
            for (int k = steps - 2; k >= 0; k--) {
                chosen[k] = at / bars.beats();
                at = before[k][at];
            }
            List<Double> stays = new ArrayList<>();
            double clock = entered;
            for (int k = 0; k < steps; k++) {
                if (k < chosen.length) {
                    Door out = doors.get(k).get(chosen[k]);
                    stays.add(stay(k, clock, out));
                    clock = out.joins();
                } else {
                    stays.add(runs.get(k).last(clock));
                }
            }
            return new Chain(Arrays.asList(chosen), stays, cost);
        }
    }
}
