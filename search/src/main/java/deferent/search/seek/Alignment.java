package deferent.search.seek;

import java.util.ArrayList;
import java.util.List;

/**
 * How a hand path is best laid on a head path, both once round in their own time: mirrored or not,
 * turned by {@code turn}, running {@code lag} of a period ahead; and the root mean square distance
 * that stays, the clock gap.
 *
 * <p>With a, b the two curves' coefficients, the gap's square is Σ|a|² + Σ|b|² − 2·|X(lag)|, X(lag)
 * = Σ a·conj(b·e^{2πik·lag}), by Parseval's theorem; the best turn is X's own angle. Up to two
 * shared terms can always be brought in phase, so |X| is the sum of products of moduli; with more,
 * |X| is sampled four times as finely as it can vary and each peak near the best is climbed by
 * Newton steps.
 *
 * @param gap in the curves' unit
 * @param turn radians; the hand path is mirrored (v to −v) first, then turned
 * @param lag in periods, [0, 1): the hand path's phase is the head path's plus this
 * @param mirrored whether the hand path is mirrored
 */
record Alignment(double gap, double turn, double lag, boolean mirrored) {
    private static final double SAME = 1e-9;

    /** The least gap alone. */
    static double gap(SeriesCurve head, SeriesCurve hand) {
        double most = Math.max(most(shared(head, hand, false)), most(shared(head, hand, true)));
        return gap(head, hand, most);
    }

    /** How many times as large the hand path must be to come nearest: X/|b|², 0 or more. */
    static double factor(SeriesCurve head, SeriesCurve hand) {
        double apart = gap(head, hand);
        return Math.max(0, (head.power() + hand.power() - apart * apart) / (2 * hand.power()));
    }

    private static double gap(SeriesCurve head, SeriesCurve hand, double most) {
        // |a|² + |b|² − 2X loses half its digits when a is b, so what is lost there counts as
        // nothing
        double squared = head.power() + hand.power() - 2 * most;
        return squared < 1e-14 * (head.power() + hand.power()) ? 0 : Math.sqrt(squared);
    }

    /**
     * Whether the two are one curve to within {@code nearness}. Cheaper than the gap: if they are,
     * every pair of shared terms is in phase at the right lag, so only the lags that bring two
     * long, neighbouring terms in phase are tried.
     */
    static boolean same(SeriesCurve head, SeriesCurve hand, double nearness) {
        return leastGap(head, hand) <= nearness
                && (same(head, hand, shared(head, hand, false), nearness)
                        || same(head, hand, shared(head, hand, true), nearness));
    }

    private static boolean same(SeriesCurve head, SeriesCurve hand, Shared s, double nearness) {
        if (s.count <= 2) {
            return gap(head, hand, s.bound()) <= nearness;
        }
        if (gap(head, hand, s.bound()) > nearness) {
            return false;
        }
        int[] pair = s.neighbours();
        int between = s.k[pair[1]] - s.k[pair[0]];
        for (int j = 0; j < between; j++) {
            double lag = ((s.angle[pair[1]] - s.angle[pair[0]]) / (2 * Math.PI) + j) / between;
            if (gap(head, hand, s.magnitude(lag)) <= nearness) {
                return true;
            }
        }
        return false;
    }

    /** Least distance of the moduli, mirrored or not: never more than the gap. */
    static double leastGap(SeriesCurve head, SeriesCurve hand) {
        return Math.sqrt(Math.min(moduli(head, hand, 1), moduli(head, hand, -1)));
    }

    private static double moduli(SeriesCurve head, SeriesCurve hand, int way) {
        double sum = 0;
        double left = hand.power() - hand.tail();
        for (int i = 0; i < head.terms(); i++) {
            double a = head.modulus(i);
            int j = hand.find(way * head.k(i));
            double b = j < 0 ? 0 : hand.modulus(j);
            sum += (a - b) * (a - b);
            left -= b * b;
        }
        double tails = Math.sqrt(head.tail()) - Math.sqrt(hand.tail());
        return sum + Math.max(0, left) + tails * tails;
    }

    /** The best, and where several are as good the one that turns least, then lags least. */
    static Alignment best(SeriesCurve head, SeriesCurve hand) {
        Alignment plain = calmest(head, hand, false);
        Alignment mirrored = calmest(head, hand, true);
        return mirrored.gap < plain.gap - SAME ? mirrored : plain;
    }

    static Alignment calmest(SeriesCurve head, SeriesCurve hand, boolean mirrored) {
        Shared s = shared(head, hand, mirrored);
        double most = most(s);
        double gap = gap(head, hand, most);
        if (s.count == 0) {
            return new Alignment(gap, 0, 0, mirrored);
        }
        if (s.count == 1) {
            // any lag does; the one that needs no turn (or, mirrored, a half turn) keeps the motion
            // as it is said
            double turn = mirrored ? Math.PI : 0;
            double lag = (s.angle[0] - turn) / (2 * Math.PI * s.k[0]);
            return new Alignment(gap, turn, share(lag), mirrored);
        }
        Alignment calm = new Alignment(gap, Math.PI, 0.5, mirrored);
        double calmness = Double.MAX_VALUE;
        for (double lag : s.peaks(most)) {
            double turn = s.turn(lag);
            double left = mirrored ? Math.PI - Math.abs(turn) : Math.abs(turn);
            double late = Math.abs(lag - Math.rint(lag));
            double here = left + 1e-3 * late + (turn < -1e-9 ? 1e-6 : 0) + (lag > 0.5 ? 1e-7 : 0);
            if (here < calmness) {
                calmness = here;
                calm = new Alignment(gap, turn, share(lag), mirrored);
            }
        }
        return calm;
    }

    private static double share(double cycles) {
        double share = cycles - Math.floor(cycles);
        return share > 1 - 1e-9 ? 0 : share;
    }

    private static double most(Shared s) {
        return s.count <= 2 ? s.bound() : s.magnitude(s.summit());
    }

    private static Shared shared(SeriesCurve head, SeriesCurve hand, boolean mirrored) {
        Shared s = new Shared(Math.min(head.terms(), hand.terms()));
        for (int i = 0; i < head.terms(); i++) {
            int j = hand.find(mirrored ? -head.k(i) : head.k(i));
            if (j >= 0) {
                double im = mirrored ? -hand.im(j) : hand.im(j);
                s.add(head.k(i), head.re(i), head.im(i), hand.re(j), im);
            }
        }
        return s;
    }

    /** The terms both curves have: X as a short series of its own. */
    private static final class Shared {
        final int[] k;
        final double[] product;
        final double[] angle;
        int count;

        Shared(int most) {
            k = new int[most];
            product = new double[most];
            angle = new double[most];
        }

        void add(int turns, double aRe, double aIm, double bRe, double bIm) {
            double re = aRe * bRe + aIm * bIm;
            double im = aIm * bRe - aRe * bIm;
            double size = Math.sqrt(re * re + im * im);
            if (size > 1e-14) {
                k[count] = turns;
                product[count] = size;
                angle[count++] = Math.atan2(im, re);
            }
        }

        double bound() {
            double sum = 0;
            for (int i = 0; i < count; i++) {
                sum += product[i];
            }
            return sum;
        }

        /** Two terms no less than a tenth of the longest, as near in k as there are. */
        int[] neighbours() {
            double longest = 0;
            for (int i = 0; i < count; i++) {
                longest = Math.max(longest, product[i]);
            }
            int[] pair = {0, count - 1};
            int before = -1;
            int least = Integer.MAX_VALUE;
            for (int i = 0; i < count; i++) {
                if (product[i] >= 0.1 * longest) {
                    if (before >= 0 && k[i] - k[before] < least) {
                        least = k[i] - k[before];
                        pair = new int[] {before, i};
                    }
                    before = i;
                }
            }
            return pair;
        }

        double re(double lag) {
            double sum = 0;
            for (int i = 0; i < count; i++) {
                sum += product[i] * Math.cos(angle[i] - 2 * Math.PI * k[i] * lag);
            }
            return sum;
        }

        double im(double lag) {
            double sum = 0;
            for (int i = 0; i < count; i++) {
                sum += product[i] * Math.sin(angle[i] - 2 * Math.PI * k[i] * lag);
            }
            return sum;
        }

        double magnitude(double lag) {
            return Math.hypot(re(lag), im(lag));
        }

        double turn(double lag) {
            double turn = Math.atan2(im(lag), re(lag));
            return Math.abs(turn + Math.PI) < 1e-9 ? Math.PI : Math.abs(turn) < 1e-12 ? 0 : turn;
        }

        private int spread() {
            return k[count - 1] - k[0];
        }

        double summit() {
            List<Double> peaks = climbed();
            double best = 0;
            double most = -1;
            for (double lag : peaks) {
                double here = magnitude(lag);
                if (here > most) {
                    most = here;
                    best = lag;
                }
            }
            return best;
        }

        /** Lags at which |X| reaches {@code most}. */
        List<Double> peaks(double most) {
            List<Double> found = new ArrayList<>();
            if (count == 2) {
                int between = k[1] - k[0];
                for (int j = 0; j < between; j++) {
                    found.add(share(((angle[1] - angle[0]) / (2 * Math.PI) + j) / between));
                }
                return found;
            }
            for (double lag : climbed()) {
                if (magnitude(lag) >= most - 1e-12 - 1e-10 * most) {
                    found.add(share(lag));
                }
            }
            return found;
        }

        /** Every sampled peak of |X|² that could be the summit, climbed. */
        private List<Double> climbed() {
            int steps = 4 * spread() + 8;
            double[] height = new double[steps];
            double top = 0;
            // each term steps on by a fixed turn, so no sine is asked within the loop
            double[] re = new double[count];
            double[] im = new double[count];
            double[] cos = new double[count];
            double[] sin = new double[count];
            for (int j = 0; j < count; j++) {
                re[j] = product[j] * Math.cos(angle[j]);
                im[j] = product[j] * Math.sin(angle[j]);
                cos[j] = Math.cos(2 * Math.PI * k[j] / steps);
                sin[j] = -Math.sin(2 * Math.PI * k[j] / steps);
            }
            for (int i = 0; i < steps; i++) {
                double r = 0;
                double m = 0;
                for (int j = 0; j < count; j++) {
                    r += re[j];
                    m += im[j];
                    double stepped = re[j] * cos[j] - im[j] * sin[j];
                    im[j] = re[j] * sin[j] + im[j] * cos[j];
                    re[j] = stepped;
                }
                height[i] = r * r + m * m;
                top = Math.max(top, height[i]);
            }
            List<Double> found = new ArrayList<>();
            // |X|² has no frequency above the spread, so half a step from its summit it still has
            // (1 + cos(π/4))/2 = 0.85 of its height (M. Riesz's comparison with a cosine, 1914).
            for (int i = 0; i < steps; i++) {
                double before = height[(i + steps - 1) % steps];
                double after = height[(i + 1) % steps];
                if (height[i] >= 0.8 * top && height[i] >= before && height[i] >= after) {
                    found.add(climb((double) i / steps, 1.0 / steps));
                }
            }
            return found;
        }

        // Newton on the derivative of |X|², kept within a step either side.
        private double climb(double from, double step) {
            double low = from - step;
            double high = from + step;
            double x = from;
            for (int round = 0; round < 60; round++) {
                double r = 0;
                double i = 0;
                double r1 = 0;
                double i1 = 0;
                double r2 = 0;
                double i2 = 0;
                for (int j = 0; j < count; j++) {
                    double w = 2 * Math.PI * k[j];
                    double c = product[j] * Math.cos(angle[j] - w * x);
                    double s = product[j] * Math.sin(angle[j] - w * x);
                    r += c;
                    i += s;
                    r1 += w * s;
                    i1 -= w * c;
                    r2 -= w * w * c;
                    i2 -= w * w * s;
                }
                double d1 = r * r1 + i * i1;
                double d2 = r1 * r1 + i1 * i1 + r * r2 + i * i2;
                if (d1 > 0) {
                    low = x;
                } else {
                    high = x;
                }
                double next = d2 < 0 ? x - d1 / d2 : (low + high) / 2;
                if (!(next > low && next < high)) {
                    next = (low + high) / 2;
                }
                if (Math.abs(next - x) < 1e-15) {
                    return next;
                }
                x = next;
            }
            return x;
        }
    }
}
