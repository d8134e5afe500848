package deferent.reading.link;

import deferent.motion.trace.Lowest;
import deferent.motion.trace.Trace;

/**
 * How far two paths are apart as shapes with timing: the root mean square distance after the best
 * rigid motion (turn, shift, mirror) and the best time shift.
 *
 * <p>Over all lags the least-squares motion has a closed form, so the distance is a function of the
 * lag alone: the energies of both paths less twice the nuclear norm of their cross covariance. It
 * is worked out on a grid of lags and then between them by interpolation. Where several lags are
 * equally good (two circles: any lag can be turned away) the one that needs the least turning wins,
 * which is the one whose distance after a shift alone is least, and then the smallest lag.
 *
 * @param gap metres
 * @param lag share of the common cycle in [−0.5, 0.5), positive when the hand trails the head
 * @param unturnedLag the lag whose distance after a shift alone is least
 */
record ClockGap(double gap, double lag, double unturnedLag) {
    // Of how much less weight the unturned distance is. Small enough to leave the gap alone: a
    // tenth of a millimetre squared for two paths a decimetre apart.
    private static final double TURNING = 1e-6;
    private static final double NOISE = 1e-9;
    // Every third or eighth sample of so many and fewer makes the grid, else more are left out:
    // the work grows with the square of the grid.
    private static final int USUAL = 8 * Trace.USUAL_SAMPLES;

    /**
     * @param head positions at even times over the common cycle, x, y, z, x, …
     * @param hand the same of the hand
     * @param periodic without it, no lag is sought
     * @param settled whether all samples have their say; else the lag is only sought on a grid
     */
    static ClockGap of(double[] head, double[] hand, boolean periodic, boolean settled) {
        if (!periodic) {
            return new ClockGap(new Pair(head, hand).at(0)[0], 0, 0).rooted();
        }
        int stride = (settled ? 3 : 8) * Math.max(1, head.length / 3 / USUAL);
        Pair pair = new Pair(every(stride, head), every(stride, hand));
        double[] found = pair.lags();
        double best = pair.between((int) found[0], 1, TURNING);
        double own = pair.between((int) found[1], 1, 1);
        if (settled) {
            Pair all = new Pair(head, hand);
            best = all.between((int) Math.rint(best * stride), stride / 2 + 1, TURNING);
            own = all.between((int) Math.rint(own * stride), stride / 2 + 1, 1);
            pair = all;
        }
        return new ClockGap(pair.at(best)[0], wrapped(best / pair.count), wrapped(own / pair.count))
                .rooted();
    }

    private ClockGap rooted() {
        return new ClockGap(Math.sqrt(gap), lag, unturnedLag);
    }

    private static double[] every(int stride, double[] points) {
        double[] out = new double[points.length / stride];
        for (int i = 0; i < out.length; i += 3) {
            System.arraycopy(points, i * stride, out, i, 3);
        }
        return out;
    }

    private static double wrapped(double lag) {
        double in = lag - Math.floor(lag + 0.5);
        return in >= 0.5 - 1e-9 ? -0.5 : in + 0.0;
    }

    /** Two paths about their means, in the frame and along their own axes. */
    private static final class Pair {
        final double[] head;
        final double[] hand;
        final double[] ownHead;
        final double[] ownHand;
        final boolean flat;
        final int count;
        final double energy;

        Pair(double[] head, double[] hand) {
            this.head = centred(head);
            this.hand = centred(hand);
            OwnAxes a = OwnAxes.of(head);
            OwnAxes b = OwnAxes.of(hand);
            ownHead = a.xyz();
            ownHand = b.xyz();
            flat = a.dimension() < 3 && b.dimension() < 3;
            count = head.length / 3;
            energy = (square(this.head) + square(this.hand)) / count;
        }

        private static double[] centred(double[] points) {
            double[] mean = new double[3];
            for (int i = 0; i < points.length; i++) {
                mean[i % 3] += 3 * points[i] / points.length;
            }
            double[] out = new double[points.length];
            for (int i = 0; i < points.length; i++) {
                out[i] = points[i] - mean[i % 3];
            }
            return out;
        }

        private static double square(double[] a) {
            double sum = 0;
            for (double x : a) {
                sum += x * x;
            }
            return sum;
        }

        /**
         * The best lags on the grid of samples: after any rigid motion, and after a shift alone.
         */
        double[] lags() {
            double margin = NOISE * (energy + 1e-12);
            double least = Double.MAX_VALUE;
            double leastUnturned = Double.MAX_VALUE;
            int best = 0;
            int unturned = 0;
            for (int k = 0; 2 * k <= count; k++) {
                for (int lag : k == 0 || 2 * k == count ? new int[] {-k} : new int[] {k, -k}) {
                    double[] at = at(lag);
                    double cost = at[0] + TURNING * at[1];
                    if (cost < least - TURNING * margin) {
                        least = cost;
                        best = lag;
                    }
                    if (at[1] < leastUnturned - margin) {
                        leastUnturned = at[1];
                        unturned = lag;
                    }
                }
            }
            return new double[] {best, unturned};
        }

        /**
         * Mean squared distance after the best rigid motion, and after a shift alone, with the hand
         * trailing by {@code lag} samples.
         */
        double[] at(int lag) {
            double[] c = new double[10];
            sums(lag, c);
            return distances(c);
        }

        private double[] distances(double[] c) {
            return new double[] {
                Math.max(energy - 2 * nuclear(c), 0), Math.max(energy - 2 * c[9], 0)
            };
        }

        // Mean products of head at t − lag with hand at t: nine along the own axes, then the inner
        // product in the frame.
        private void sums(int lag, double[] c) {
            int shift = Math.floorMod(-lag, count);
            for (int t = 0; t < count; t++) {
                int s = t + shift >= count ? t + shift - count : t + shift;
                int i = 3 * s;
                int j = 3 * t;
                double px = ownHead[i];
                double py = ownHead[i + 1];
                double hx = ownHand[j];
                double hy = ownHand[j + 1];
                c[0] += px * hx;
                c[1] += px * hy;
                c[3] += py * hx;
                c[4] += py * hy;
                c[9] += head[i] * hand[j] + head[i + 1] * hand[j + 1] + head[i + 2] * hand[j + 2];
                if (!flat) {
                    double pz = ownHead[i + 2];
                    double hz = ownHand[j + 2];
                    c[2] += px * hz;
                    c[5] += py * hz;
                    c[6] += pz * hx;
                    c[7] += pz * hy;
                    c[8] += pz * hz;
                }
            }
            for (int k = 0; k < 10; k++) {
                c[k] /= count;
            }
        }

        private double nuclear(double[] c) {
            return flat
                    ? Math.max(
                            Math.hypot(c[0] + c[4], c[3] - c[1]),
                            Math.hypot(c[0] - c[4], c[3] + c[1]))
                    : Nuclear.norm(c);
        }

        private static final int REACH = 3;

        /** At a lag between samples, by sixth-order interpolation of the sums. */
        double[] at(double lag) {
            int low = (int) Math.floor(lag);
            if (lag == low) {
                return at(low);
            }
            return interpolated(table(low), lag - low);
        }

        private double[][] table(int low) {
            double[][] table = new double[2 * REACH][10];
            for (int k = 0; k < 2 * REACH; k++) {
                sums(low + k - REACH + 1, table[k]);
            }
            return table;
        }

        private double[] interpolated(double[][] table, double share) {
            double[] c = new double[10];
            for (int k = 0; k < 2 * REACH; k++) {
                double weight = 1;
                for (int o = 0; o < 2 * REACH; o++) {
                    if (o != k) {
                        weight *= (share + REACH - 1 - o) / (k - o);
                    }
                }
                for (int e = 0; e < 10; e++) {
                    c[e] += weight * table[k][e];
                }
            }
            return distances(c);
        }

        /** The best lag, in samples, within {@code about} of a first guess, between samples too. */
        double between(int guess, int about, double unturnedWeight) {
            double rigidWeight = unturnedWeight == 1 ? 0 : 1;
            double[] costs = new double[2 * about + 1];
            int best = 0;
            for (int k = -about; k <= about; k++) {
                costs[k + about] = cost(at(guess + k), rigidWeight, unturnedWeight);
            }
            double margin = NOISE * unturnedWeight * energy;
            for (int k = 1; k <= about; k++) {
                for (int side : new int[] {k, -k}) {
                    if (costs[side + about] < costs[best + about] - margin) {
                        best = side;
                    }
                }
            }
            int middle = guess + best;
            double least = costs[best + about];
            double found = middle;
            for (int low = middle - 1; low <= middle; low++) {
                double[][] table = table(low);
                Lowest lowest =
                        Lowest.within(
                                x -> cost(interpolated(table, x), rigidWeight, unturnedWeight),
                                0,
                                1,
                                24);
                if (lowest.value() < least - margin) {
                    least = lowest.value();
                    found = low + lowest.at();
                }
            }
            return found;
        }

        private static double cost(double[] at, double rigid, double unturned) {
            return rigid * at[0] + unturned * at[1];
        }
    }
}
