package deferent.reading.tether;

import deferent.motion.trace.Course;
import deferent.motion.trace.Interval;
import deferent.motion.trace.State;
import java.util.Arrays;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A head on a taut cord behind a hand, from the integrator's steps. Between steps the cord's
 * direction is the quintic that matches it and its first two derivatives at either end; velocity,
 * acceleration and jerk then come from the equations of motion, not from the quintic's.
 */
final class Following implements Course {
    private final Course hand;
    private final Cord cord;
    private final Interval over;
    private final boolean periodic;
    private final double[] times;
    private final double[] ends;

    /** Per step e, e′, e″ at its start and at its end. */
    static final int WIDTH = 18;

    private Following(
            Course hand,
            Cord cord,
            Interval over,
            boolean periodic,
            double[] times,
            double[] ends) {
        this.hand = hand;
        this.cord = cord;
        this.over = over;
        this.periodic = periodic;
        this.times = times;
        this.ends = ends;
    }

    /** One cycle of a table from the state {@code start} (e and q), which it must come back to. */
    static Following cycle(HandTable table, Cord cord, double[] start) {
        Marching marching = new Marching(cord, 0);
        Swinging swinging = new Swinging(cord);
        double[] y = start.clone();
        int steps = table.steps();
        double[] times = new double[steps + 1];
        double[] ends = new double[steps * WIDTH];
        for (int i = 0; i < steps; i++) {
            times[i] = table.time(i);
            swinging.note(table.ends(), 12 * i, y, ends, i * WIDTH);
            marching.step(table, i, y);
            swinging.note(table.ends(), 12 * i + 6, y, ends, i * WIDTH + 9);
        }
        times[steps] = table.time(steps);
        return new Following(table.hand(), cord, table.over(), true, times, ends);
    }

    /** A stretch of a longer simulation from the notes taken at its steps' ends. */
    static Following stretch(Course hand, Cord cord, double[] times, double[] ends) {
        return new Following(
                hand, cord, new Interval(times[0], times[times.length - 1]), false, times, ends);
    }

    /** e′ of the state {@code y}. */
    static Vector3D rate(Vector3D handVelocity, Cord cord, double[] y) {
        Vector3D e = new Vector3D(y[0], y[1], y[2]);
        Vector3D q = new Vector3D(y[3], y[4], y[5]);
        return q.subtract(handVelocity)
                .add(e.scalarMultiply(e.dotProduct(handVelocity)))
                .scalarMultiply(1 / cord.swingLength());
    }

    /** The state e, q of a cord of direction e that turns at e′ = w. */
    static double[] state(Vector3D handVelocity, Cord cord, Vector3D e, Vector3D w) {
        Vector3D q =
                handVelocity
                        .subtract(e.scalarMultiply(e.dotProduct(handVelocity)))
                        .add(w.scalarMultiply(cord.swingLength()));
        double[] y = {e.getX(), e.getY(), e.getZ(), q.getX(), q.getY(), q.getZ()};
        Swinging.tidy(y);
        return y;
    }

    // e″ = (f − h″)⊥/ℓ − |e′|²e
    private static Vector3D bend(State hand, Cord cord, Vector3D e, Vector3D w) {
        Vector3D push = push(hand, cord, w).subtract(hand.acceleration());
        return push.subtract(e.scalarMultiply(e.dotProduct(push)))
                .scalarMultiply(1 / cord.swingLength())
                .subtract(e.scalarMultiply(w.getNormSq()));
    }

    // f = g + D/m
    private static Vector3D push(State hand, Cord cord, Vector3D w) {
        if (!cord.kit().air()) {
            return cord.fall();
        }
        Vector3D v = hand.velocity().add(w.scalarMultiply(cord.length()));
        return cord.fall()
                .subtract(v.scalarMultiply(cord.dragOverSpeed(v.getNorm()) / cord.swingMass()));
    }

    @Override
    public State at(double time) {
        return state(time, false);
    }

    @Override
    public State before(double time) {
        return state(time, true);
    }

    private State state(double time, boolean before) {
        double t =
                periodic
                        ? KeepTheFigure.wrapped(time, over, before)
                        : Math.max(over.start(), Math.min(over.end(), time));
        int step = Arrays.binarySearch(times, t);
        step = step >= 0 ? (before ? step - 1 : step) : -step - 2;
        step = Math.max(0, Math.min(step, times.length - 2));
        double h = times[step + 1] - times[step];
        double x = (t - times[step]) / h;
        double[] e = new double[3];
        double[] w = new double[3];
        quintic(step * WIDTH, h, x, e, w);
        return full(before ? hand.before(t) : hand.at(t), cord, e, w);
    }

    private void quintic(int at, double h, double x, double[] e, double[] w) {
        double x2 = x * x;
        double x3 = x2 * x;
        double x4 = x3 * x;
        double x5 = x4 * x;
        double h5 = 10 * x3 - 15 * x4 + 6 * x5;
        double h1 = h * (x - 6 * x3 + 8 * x4 - 3 * x5);
        double h4 = h * (-4 * x3 + 7 * x4 - 3 * x5);
        double h2 = h * h * (0.5 * x2 - 1.5 * x3 + 1.5 * x4 - 0.5 * x5);
        double h3 = h * h * (0.5 * x3 - x4 + 0.5 * x5);
        double d5 = (30 * x2 - 60 * x3 + 30 * x4) / h;
        double d1 = 1 - 18 * x2 + 32 * x3 - 15 * x4;
        double d4 = -12 * x2 + 28 * x3 - 15 * x4;
        double d2 = h * (x - 4.5 * x2 + 6 * x3 - 2.5 * x4);
        double d3 = h * (1.5 * x2 - 4 * x3 + 2.5 * x4);
        for (int i = 0; i < 3; i++) {
            double p0 = ends[at + i];
            double v0 = ends[at + 3 + i];
            double a0 = ends[at + 6 + i];
            double p1 = ends[at + 9 + i];
            double v1 = ends[at + 12 + i];
            double a1 = ends[at + 15 + i];
            e[i] = p0 + (p1 - p0) * h5 + v0 * h1 + v1 * h4 + a0 * h2 + a1 * h3;
            w[i] = (p1 - p0) * d5 + v0 * d1 + v1 * d4 + a0 * d2 + a1 * d3;
        }
    }

    /** Everything about the head that follows from direction and rate. */
    private static State full(State hand, Cord cord, double[] direction, double[] rate) {
        Vector3D e = new Vector3D(direction).normalize();
        Vector3D w = new Vector3D(rate);
        w = w.subtract(e.scalarMultiply(e.dotProduct(w)));
        double length = cord.length();
        Vector3D z = bend(hand, cord, e, w);
        Vector3D velocity = hand.velocity().add(w.scalarMultiply(length));
        Vector3D acceleration = hand.acceleration().add(z.scalarMultiply(length));
        Vector3D push = push(hand, cord, w).subtract(hand.acceleration());
        Vector3D pushRate = dragRate(cord, velocity, acceleration).subtract(hand.jerk());
        Vector3D third =
                pushRate.subtract(e.scalarMultiply(e.dotProduct(pushRate)))
                        .subtract(w.scalarMultiply(e.dotProduct(push)))
                        .subtract(e.scalarMultiply(w.dotProduct(push)))
                        .scalarMultiply(1 / cord.swingLength())
                        .subtract(e.scalarMultiply(2 * w.dotProduct(z)))
                        .subtract(w.scalarMultiply(w.getNormSq()));
        return new State(
                hand.position().add(e.scalarMultiply(length)),
                velocity,
                acceleration,
                hand.jerk().add(third.scalarMultiply(length)));
    }

    private static Vector3D dragRate(Cord cord, Vector3D velocity, Vector3D acceleration) {
        if (!cord.kit().air()) {
            return Vector3D.ZERO;
        }
        double speed = velocity.getNorm();
        double k = cord.dragOverSpeed(speed) / cord.swingMass();
        double slope = cord.dragOverSpeedSlope(speed) / cord.swingMass();
        double quickening = speed > 0 ? velocity.dotProduct(acceleration) / speed : 0;
        return acceleration
                .scalarMultiply(-k)
                .subtract(velocity.scalarMultiply(slope * quickening));
    }
}
