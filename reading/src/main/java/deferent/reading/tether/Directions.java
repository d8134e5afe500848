package deferent.reading.tether;

import java.util.Optional;

/**
 * Starts of a cord behind a hand by the direction of its shadow: for each there is one that closes
 * after the wanted turns but for the speed along the shadow's circle, and motions are periodic
 * where what that lacks passes zero.
 */
interface Directions {
    /** Radians, of the secant method over directions: the first, the longest, and all in all. */
    double FIRST = 0.01;

    double STRIDE = 0.2;
    double BESIDE = 0.4;

    /** Newton's method from a start; empty where it does not settle. */
    Optional<PlaneShooting.Found> from(double[] start, double tolerance, int most);

    /** From so near that every step must halve what is missing; empty as soon as one does not. */
    Optional<PlaneShooting.Found> near(double[] start, double tolerance, int most);

    /** The start that closes, from one whose direction is kept. */
    Optional<PlaneShooting.Closed> closed(double[] start, double tolerance, int most);

    /** A state's direction turned by an angle, at the same rate of turning. */
    double[] turned(double[] start, double by);

    /** From one shadow's direction to another's, radians in (−π, π]. */
    double angle(PlaneShooting.Closed from, PlaneShooting.Closed to);

    /**
     * Between two closed neighbours of opposite lack, the direction at which nothing is lacking, by
     * false position (the Illinois variant).
     */
    default Optional<PlaneShooting.Closed> between(
            PlaneShooting.Closed one, PlaneShooting.Closed other, double tolerance) {
        PlaneShooting.Closed left = one;
        PlaneShooting.Closed right = other;
        double fLeft = one.missing();
        double fRight = other.missing();
        Optional<PlaneShooting.Closed> best = Optional.empty();
        for (int i = 0; i < 12; i++) {
            double share = fLeft / (fLeft - fRight);
            double on = angle(left, right);
            double[] guess =
                    share < 0.5
                            ? turned(left.state(), share * on)
                            : turned(right.state(), (share - 1) * on);
            Optional<PlaneShooting.Closed> here = closed(guess, 1e-9, 10);
            if (here.isEmpty()) {
                return best;
            }
            best = here;
            double f = here.get().missing();
            if (Math.abs(f) < tolerance) {
                return best;
            }
            if (f < 0 == fRight < 0) {
                right = here.get();
                fRight = f;
                fLeft /= 2;
            } else {
                left = here.get();
                fLeft = f;
                fRight /= 2;
            }
        }
        return best;
    }

    /**
     * The motion next to a start, by the secant method over directions: for one that is so nearly
     * neutral that Newton's method strays. Empty where none lies within {@link #BESIDE}.
     */
    default Optional<double[]> beside(double[] start, double tolerance) {
        Optional<PlaneShooting.Closed> one = closed(start, tolerance, Shadow.CLOSING);
        double from = 0;
        double to = FIRST;
        for (int i = 0; i < 12 && one.isPresent(); i++) {
            if (Math.abs(one.get().missing()) < PlaneShooting.ROUNDING) {
                return one.map(PlaneShooting.Closed::state);
            }
            Optional<PlaneShooting.Closed> two =
                    closed(turned(one.get().state(), to - from), tolerance, Shadow.CLOSING);
            double last = one.get().missing();
            double missing = two.map(PlaneShooting.Closed::missing).orElse(Double.NaN);
            double on = -missing * (to - from) / (missing - last);
            on = Math.max(-STRIDE, Math.min(on, STRIDE));
            if (!(Math.abs(to + on) < BESIDE)) {
                return Optional.empty();
            }
            one = two;
            from = to;
            to += on;
        }
        return Optional.empty();
    }
}
