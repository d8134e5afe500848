package deferent.search.transition;

import deferent.motion.trace.Course;
import deferent.motion.trace.State;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A course over a cycle, or over a passage, at even knots, and between two of them by the
 * polynomial of degree seven that has place, velocity, acceleration and jerk of both (Hermite's).
 * Of a course that is smooth and slow to work out it is all but the same, some fifty times as
 * quick.
 */
final class TabledCourse implements Course {
    private static final int DEGREE = 7;

    private final double start;
    private final double period;
    private final int cells;
    private final boolean periodic;
    private final double[] terms;

    private TabledCourse(double start, double period, int cells, boolean periodic, double[] terms) {
        this.periodic = periodic;
        this.start = start;
        this.period = period;
        this.cells = cells;
        this.terms = terms;
    }

    /**
     * @param start of a cycle, seconds
     * @param period seconds
     * @param cells how many knots a cycle
     */
    static TabledCourse of(Course course, double start, double period, int cells) {
        return of(course, start, period, cells, true);
    }

    /**
     * As {@link #of}, of a course that does not come round; beyond its ends it goes on as there.
     */
    static TabledCourse stretch(Course course, double length, int cells) {
        return of(course, 0, length, cells, false);
    }

    private static TabledCourse of(
            Course course, double start, double period, int cells, boolean periodic) {
        double h = period / cells;
        double[] terms = new double[cells * 3 * (DEGREE + 1)];
        double[][] first = scaled(course.at(start), h);
        double[][] here = first;
        for (int i = 0; i < cells; i++) {
            double[][] next =
                    periodic && i + 1 == cells ? first : scaled(course.at(start + (i + 1) * h), h);
            for (int k = 0; k < 3; k++) {
                put(here[k], next[k], terms, (3 * i + k) * (DEGREE + 1));
            }
            here = next;
        }
        return new TabledCourse(start, period, cells, periodic, terms);
    }

    /** By coordinate, the value and derivatives in shares of a cell. */
    private static double[][] scaled(State s, double h) {
        double[] p = s.position().toArray();
        double[] v = s.velocity().toArray();
        double[] a = s.acceleration().toArray();
        double[] j = s.jerk().toArray();
        double[][] all = new double[3][];
        for (int k = 0; k < 3; k++) {
            all[k] = new double[] {p[k], h * v[k], h * h * a[k], h * h * h * j[k]};
        }
        return all;
    }

    private static void put(double[] a, double[] b, double[] out, int at) {
        double c2 = a[2] / 2;
        double c3 = a[3] / 6;
        double r0 = b[0] - a[0] - a[1] - c2 - c3;
        double r1 = b[1] - a[1] - a[2] - 3 * c3;
        double r2 = b[2] - a[2] - a[3];
        double r3 = b[3] - a[3];
        out[at] = a[0];
        out[at + 1] = a[1];
        out[at + 2] = c2;
        out[at + 3] = c3;
        out[at + 4] = 35 * r0 - 15 * r1 + 2.5 * r2 - r3 / 6;
        out[at + 5] = -84 * r0 + 39 * r1 - 7 * r2 + r3 / 2;
        out[at + 6] = 70 * r0 - 34 * r1 + 6.5 * r2 - r3 / 2;
        out[at + 7] = -20 * r0 + 10 * r1 - 2 * r2 + r3 / 6;
    }

    @Override
    public State at(double time) {
        double where = where(time);
        int i = Math.max(0, Math.min((int) where, cells - 1));
        double x = where - i;
        double rate = cells / period;
        double[] out = new double[12];
        for (int k = 0; k < 3; k++) {
            int at = (3 * i + k) * (DEGREE + 1);
            double p = 0;
            double v = 0;
            double a = 0;
            double j = 0;
            for (int m = DEGREE; m >= 0; m--) {
                j = j * x + 3 * a;
                a = a * x + 2 * v;
                v = v * x + p;
                p = p * x + terms[at + m];
            }
            out[k] = p;
            out[k + 3] = v * rate;
            out[k + 6] = a * rate * rate;
            out[k + 9] = j * rate * rate * rate;
        }
        return new State(
                new Vector3D(out[0], out[1], out[2]),
                new Vector3D(out[3], out[4], out[5]),
                new Vector3D(out[6], out[7], out[8]),
                new Vector3D(out[9], out[10], out[11]));
    }

    @Override
    public Vector3D position(double time) {
        double where = where(time);
        int i = Math.max(0, Math.min((int) where, cells - 1));
        double x = where - i;
        double[] out = new double[3];
        for (int k = 0; k < 3; k++) {
            int at = (3 * i + k) * (DEGREE + 1);
            for (int m = DEGREE; m >= 0; m--) {
                out[k] = out[k] * x + terms[at + m];
            }
        }
        return new Vector3D(out);
    }

    private double where(double time) {
        double cycles = (time - start) / period;
        return (periodic ? cycles - Math.floor(cycles) : cycles) * cells;
    }
}
