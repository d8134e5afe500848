package deferent.film.follow;

import deferent.film.light.LitSpot;
import org.jspecify.annotations.Nullable;

/**
 * Where a head is thought to be: place, velocity and acceleration in pixels and seconds, each axis
 * by itself with one covariance for both, carried on with a jerk that is unknown but for its
 * strength and corrected by what is seen (Kalman, Transactions of the ASME 82 (1960)).
 *
 * @param time seconds
 * @param x place, velocity, acceleration across
 * @param y the same downward
 * @param p covariance: pp, pv, pa, vv, va, aa
 */
record Guess(double time, double[] x, double[] y, double[] p) {
    private static final double UNSEEN_SPEED = 4000; // pixels a second, of a head not yet followed
    private static final double UNSEEN_PULL = 60000; // pixels a second²

    static Guess at(LitSpot spot, double noise) {
        return new Guess(
                spot.time(),
                new double[] {spot.x(), 0, 0},
                new double[] {spot.y(), 0, 0},
                new double[] {
                    noise * noise, 0, 0, UNSEEN_SPEED * UNSEEN_SPEED, 0, UNSEEN_PULL * UNSEEN_PULL
                });
    }

    /**
     * Carried on to a later time.
     *
     * @param strength spectral density of the jerk, pixels² a second⁵
     */
    Guess on(double to, double strength) {
        double t = to - time;
        double h = t * t / 2;
        double q = strength * t;
        double t2 = t * t;
        double[] c = p;
        // F P F' with F of constant acceleration, then the jerk's part.
        double pp =
                c[0] + 2 * t * c[1] + 2 * h * c[2] + t2 * c[3] + 2 * t * h * c[4] + h * h * c[5];
        double pv = c[1] + t * c[2] + t * c[3] + (t2 + h) * c[4] + t * h * c[5];
        double pa = c[2] + t * c[4] + h * c[5];
        double vv = c[3] + 2 * t * c[4] + t2 * c[5];
        double va = c[4] + t * c[5];
        return new Guess(
                to,
                carried(x, t, h),
                carried(y, t, h),
                new double[] {
                    pp + q * t2 * t2 / 20,
                    pv + q * t2 * t / 8,
                    pa + q * t2 / 6,
                    vv + q * t2 / 3,
                    va + q * t / 2,
                    c[5] + q
                });
    }

    private static double[] carried(double[] s, double t, double h) {
        return new double[] {s[0] + t * s[1] + h * s[2], s[1] + t * s[2], s[2]};
    }

    /** Minus twice the logarithm of how likely it is that this head drew that spot. */
    double cost(LitSpot spot, double noise) {
        double s = p[0] + noise * noise;
        double dx = spot.x() - x[0];
        double dy = spot.y() - y[0];
        return (dx * dx + dy * dy) / s + 2 * Math.log(s) + streak(spot);
    }

    // A streak lies along the way a head goes, where that is known.
    private double streak(LitSpot spot) {
        double speed = Math.hypot(x[1], y[1]);
        double spread = Math.sqrt(p[3]);
        double length = spot.length();
        if (speed < 4 * spread || length < 6) {
            return 0;
        }
        double sin =
                ((spot.bx() - spot.ax()) * y[1] - (spot.by() - spot.ay()) * x[1])
                        / (length * speed);
        double width = 0.15 + spread / speed + 3 / length;
        return Math.min(9, sin * sin / (width * width));
    }

    /** What it is after that spot was seen. */
    Guess seen(LitSpot spot, double noise) {
        double s = p[0] + noise * noise;
        double[] k = {p[0] / s, p[1] / s, p[2] / s};
        double dx = spot.x() - x[0];
        double dy = spot.y() - y[0];
        return new Guess(
                time,
                new double[] {x[0] + k[0] * dx, x[1] + k[1] * dx, x[2] + k[2] * dx},
                new double[] {y[0] + k[0] * dy, y[1] + k[1] * dy, y[2] + k[2] * dy},
                new double[] {
                    p[0] - k[0] * p[0],
                    p[1] - k[0] * p[1],
                    p[2] - k[0] * p[2],
                    p[3] - k[1] * p[1],
                    p[4] - k[1] * p[2],
                    p[5] - k[2] * p[2]
                });
    }

    /** How far off the place may be, one standard deviation, pixels. */
    double spread() {
        return Math.sqrt(p[0]);
    }

    static double noise(@Nullable LitSpot spot) {
        return spot == null ? 0 : 1.2 + 0.06 * spot.length();
    }
}
