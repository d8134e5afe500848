package deferent.film.cycle;

import java.util.Arrays;

/**
 * How far ahead of an even clock a spinner is, over the film: seconds at knots, straight between
 * them.
 *
 * @param knots seconds, going up; empty where the clock is even
 * @param ahead seconds by which the motion is ahead at each
 */
public record Drift(double[] knots, double[] ahead) {
    static final Drift NONE = new Drift(new double[0], new double[0]);

    /** Seconds ahead at a time. */
    public double at(double time) {
        int n = knots.length;
        if (n == 0) {
            return 0;
        }
        int i = Arrays.binarySearch(knots, time);
        if (i >= 0) {
            return ahead[i];
        }
        int next = -i - 1;
        if (next == 0) {
            return ahead[0];
        }
        if (next == n) {
            return ahead[n - 1];
        }
        double share = (time - knots[next - 1]) / (knots[next] - knots[next - 1]);
        return ahead[next - 1] + share * (ahead[next] - ahead[next - 1]);
    }

    double[] at(double[] times) {
        return Arrays.stream(times).map(this::at).toArray();
    }

    Drift plus(Drift other) {
        double[] sum = new double[other.knots.length];
        for (int i = 0; i < sum.length; i++) {
            sum[i] = at(other.knots[i]) + other.ahead[i];
        }
        return new Drift(other.knots, sum);
    }

    /** Greatest distance from one end of the drift to the other, seconds. */
    public double range() {
        return knots.length == 0
                ? 0
                : Arrays.stream(ahead).max().orElse(0) - Arrays.stream(ahead).min().orElse(0);
    }
}
