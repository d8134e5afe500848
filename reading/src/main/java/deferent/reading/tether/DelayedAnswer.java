package deferent.reading.tether;

import java.util.Arrays;
import org.hipparchus.complex.Complex;

/**
 * What a cycle leaves of a slip when the hand answers it steadily a delay τ late: u(t) = −(P·x(t−τ)
 * + D·x′(t−τ)), the answer to place and speed that balancing is told by (Stépán, Phil. Trans. R.
 * Soc. A 367 (2009); Insperger and Milton, Biol. Cybern. 108 (2014)).
 *
 * <p>With this {@link SlipLaw} is a delay differential equation of retarded type with periodic
 * coefficients. Its state is what happened over the last τ; here the (x, x′) at the table's times
 * of that stretch, between which x is the cubic that fits both (Hermite). A cycle takes such a
 * state to the next by the method of steps; that is a linear map with finitely many multipliers, of
 * which the greatest is wanted: a semi-discretization (Insperger and Stépán, Int. J. Numer. Meth.
 * Engng 55 (2002); Semi-Discretization for Time-Delay Systems, 2011) with Runge-Kutta steps. {@link
 * Multipliers} finds it.
 */
final class DelayedAnswer implements Leaving {
    private final SlipLaw law;
    private final int axes;
    private final int width;
    private final int kept;
    private final int[] from;
    private final double[] toPlace;
    private final double[] toSpeed;

    /**
     * @param delay seconds, no shorter than the law's longest step
     */
    DelayedAnswer(SlipLaw law, double delay) {
        if (delay < law.longestStep() * (1 - 1e-9)) {
            throw new IllegalArgumentException("a delay shorter than a step");
        }
        this.law = law;
        this.axes = law.axes();
        this.width = 2 * axes;
        int halves = 2 * law.steps() + 1;
        // Nodes before the cycle's start, as many as the delay reaches back.
        int back = 1;
        while (law.at(-back) > law.at(0) - delay) {
            back++;
        }
        this.kept = back + 1;
        this.from = new int[halves];
        this.toPlace = new double[halves * axes * 2 * width];
        this.toSpeed = new double[halves * axes * 2 * width];
        int node = -back;
        double[] hermite = new double[8];
        for (int i = 0; i < halves; i++) {
            double seen = law.half(i) - delay;
            while (node + 1 < done(i) && law.at(node + 1) <= seen) {
                node++;
            }
            from[i] = node;
            hermite(law.at(node), law.at(node + 1), seen, hermite);
            weigh(i, hermite);
        }
    }

    /** The last node that is known when the hand's shift at a half step is asked for. */
    private static int done(int half) {
        return half == 0 ? 0 : (half - 1) / 2;
    }

    private void weigh(int half, double[] hermite) {
        for (int a = 0; a < axes; a++) {
            for (int p = 0; p < 4; p++) {
                int to = (half * axes + a) * 2 * width + (p / 2) * width + (p % 2) * axes + a;
                toPlace[to] = hermite[p];
                toSpeed[to] = hermite[4 + p];
            }
        }
    }

    /** Weights of x, x′ at both ends for x and then for x′ at a time between. */
    static void hermite(double from, double to, double time, double[] out) {
        double h = to - from;
        double s = (time - from) / h;
        out[0] = (1 + 2 * s) * (1 - s) * (1 - s);
        out[1] = h * s * (1 - s) * (1 - s);
        out[2] = s * s * (3 - 2 * s);
        out[3] = h * s * s * (s - 1);
        out[4] = 6 * s * (s - 1) / h;
        out[5] = (1 - s) * (1 - 3 * s);
        out[6] = -out[4];
        out[7] = s * (3 * s - 2);
    }

    /** The greatest multiplier's modulus. */
    @Override
    public double left(Gains gains) {
        return multipliers(gains, Multipliers.FEW)[0].norm();
    }

    private double[] weights(Gains gains) {
        double[] weights = new double[toPlace.length];
        for (int i = 0; i < weights.length; i++) {
            weights[i] = -(gains.place() * toPlace[i] + gains.speed() * toSpeed[i]);
        }
        return weights;
    }

    /** The greatest multipliers, greatest first. */
    Complex[] multipliers(Gains gains) {
        return multipliers(gains, Multipliers.ALL);
    }

    private Complex[] multipliers(Gains gains, int vectors) {
        double[] weights = weights(gains);
        double[] buffer = new double[(kept + law.steps()) * width];
        return Multipliers.of(start -> cycle(start, weights, buffer), kept * width, vectors);
    }

    private double[] cycle(double[] start, double[] weights, double[] buffer) {
        System.arraycopy(start, 0, buffer, 0, start.length);
        if (axes == 1) {
            single(weights, buffer);
        } else {
            several(weights, buffer);
        }
        int at = law.steps() * width;
        double[] end = Arrays.copyOfRange(buffer, at, at + start.length);
        for (int i = 0; i < kept; i++) {
            law.begunAnew(end, i * width);
        }
        return end;
    }

    /** The same as {@link #several} for one axis, in a quarter of the time. */
    private void single(double[] w, double[] buffer) {
        int last = kept - 1;
        double before = single(0, w, buffer);
        for (int step = 0; step < law.steps(); step++) {
            double middle = single(2 * step + 1, w, buffer);
            double after = single(2 * step + 2, w, buffer);
            law.step(step, buffer, 2 * (last + step), before, middle, after);
            before = after;
        }
    }

    private double single(int half, double[] w, double[] buffer) {
        int at = 2 * (kept - 1 + from[half]);
        int k = 4 * half;
        return w[k] * buffer[at]
                + w[k + 1] * buffer[at + 1]
                + w[k + 2] * buffer[at + 2]
                + w[k + 3] * buffer[at + 3];
    }

    private void several(double[] weights, double[] buffer) {
        int last = kept - 1;
        double[] u = new double[3 * axes];
        shift(0, buffer, weights, u, 0);
        for (int step = 0; step < law.steps(); step++) {
            shift(2 * step + 1, buffer, weights, u, axes);
            shift(2 * step + 2, buffer, weights, u, 2 * axes);
            law.step(step, buffer, (last + step) * width, u, buffer, (last + step + 1) * width);
            System.arraycopy(u, 2 * axes, u, 0, axes);
        }
    }

    private void shift(int half, double[] buffer, double[] weights, double[] u, int to) {
        int node = (kept - 1 + from[half]) * width;
        int count = 2 * width;
        for (int a = 0; a < axes; a++) {
            double sum = 0;
            int at = (half * axes + a) * count;
            for (int k = 0; k < count; k++) {
                sum += weights[at + k] * buffer[node + k];
            }
            u[to + a] = sum;
        }
    }
}
