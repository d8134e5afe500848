package deferent.search.crossing;

import java.util.ArrayList;
import java.util.List;

/**
 * Finds where two pairings meet when the second's hands may keep another timing: where at one
 * instant of the first its left hand meets the second's left hand at one time and its right hand
 * the second's right hand at another. Each hand is searched alone for its low points at every
 * sample of the first; all combinations lower than those of the samples beside are gone down in all
 * three times at once.
 *
 * <p>The freedoms of place and tempo are used in that descent, not in the search of each hand
 * alone, which takes the hands as they stand unless shift or turn is allowed.
 */
final class TimingSearch {
    private static final double SAME_TIMING = 0.01;

    private TimingSearch() {}

    static List<Meeting> of(States from, States to, CrossingRequest request) {
        double[][] left = CrossingSearch.lows(from, to, request.alone(Who.LEFT));
        double[][] right = CrossingSearch.lows(from, to, request.alone(Who.RIGHT));
        Gauge gauge = new Gauge(request, to);
        Landscape land = new Landscape(from, to, gauge, true);
        int rows = from.count();
        List<List<double[]>> combined = new ArrayList<>();
        for (int i = 0; i < rows; i++) {
            List<double[]> here = new ArrayList<>();
            for (double l : left[i]) {
                for (double r : right[i]) {
                    double[] x = {(double) i / rows, l / to.count(), r / to.count(), 0};
                    x[3] = land.at(x);
                    here.add(x);
                }
            }
            combined.add(here);
        }
        double near = 3.0 / to.count();
        List<double[]> found = new ArrayList<>();
        for (int i = 0; i < rows; i++) {
            for (double[] x : combined.get(i)) {
                if (lowest(x, combined.get((i + 1) % rows), near, false)
                        && lowest(x, combined.get((i + rows - 1) % rows), near, true)) {
                    double[] at = land.descend(new double[] {x[0], x[1], x[2]});
                    land.at(at);
                    double late = at[2] - at[1];
                    if (gauge.worst() <= 1 && Math.abs(late - Math.rint(late)) > SAME_TIMING) {
                        found.add(at);
                    }
                }
            }
        }
        return CrossingSearch.told(land, found);
    }

    private static boolean lowest(
            double[] x, List<double[]> beside, double near, boolean strictly) {
        for (double[] y : beside) {
            if (close(x[1], y[1], near)
                    && close(x[2], y[2], near)
                    && (strictly ? y[3] <= x[3] : y[3] < x[3])) {
                return false;
            }
        }
        return true;
    }

    private static boolean close(double a, double b, double near) {
        double by = a - b;
        return Math.abs(by - Math.rint(by)) < near;
    }
}
