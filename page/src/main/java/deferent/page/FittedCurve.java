package deferent.page;

import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;

/**
 * A smooth line through many points, as few cubic Bézier curves: what a designer would draw, and
 * what stays round at any magnification. Each piece is fitted by least squares with the line's own
 * directions at its ends, its parameters improved by Newton's method, and halved where it is
 * further than a twentieth of a pixel off. Corners stay corners. Source: P. J. Schneider, An
 * algorithm for automatically fitting digitized curves, Graphics Gems (1990).
 */
final class FittedCurve {
    private static final double OFF = 0.05;
    private static final double IMPROVABLE = 16;
    private static final int ROUNDS = 3;

    /** Where neighbouring chords turn by more than this there is a corner: cosine of 35 degrees. */
    private static final double CORNER = 0.82;

    /**
     * A cubic.
     *
     * @param xy of its four points
     * @param first which of the line's points it starts at
     * @param at parameters of the line's points it goes by, from 0 to 1
     */
    private record Piece(double[] xy, int first, double[] at) {
        int last() {
            return first + at.length - 1;
        }

        /** The parameter of a place between the line's points. */
        double parameter(double place) {
            double off = Math.max(0, Math.min(at.length - 1.0, place - first));
            int i = Math.min((int) off, at.length - 2);
            return at[i] + (off - i) * (at[i + 1] - at[i]);
        }
    }

    private final double[] x;
    private final double[] y;
    private final boolean closed;
    private final List<Piece> pieces = new ArrayList<>();

    private FittedCurve(double[] x, double[] y, boolean closed) {
        this.x = x;
        this.y = y;
        this.closed = closed;
    }

    /**
     * @param x of the points, pixels; of a closed line the last is the first again
     */
    static FittedCurve through(double[] x, double[] y, boolean closed) {
        FittedCurve curve = new FittedCurve(x, y, closed);
        int from = 0;
        for (int i = 1; i < x.length; i++) {
            if (i == x.length - 1 || curve.corner(i)) {
                curve.fit(from, i);
                from = i;
            }
        }
        return curve;
    }

    private boolean corner(int i) {
        double ax = x[i] - x[i - 1];
        double ay = y[i] - y[i - 1];
        double bx = x[i + 1] - x[i];
        double by = y[i + 1] - y[i];
        double lengths = Math.hypot(ax, ay) * Math.hypot(bx, by);
        return lengths > 1e-12 && ax * bx + ay * by < CORNER * lengths;
    }

    /** The line's direction at a point, on the side of a piece that starts or ends there. */
    private double[] direction(int i, int first, int last, boolean start) {
        int before = i - 1;
        int after = i + 1;
        boolean seam = closed && (i == 0 || i == x.length - 1) && smoothSeam();
        if (seam) {
            before = x.length - 2;
            after = 1;
        } else if (before < 0 || start && i == first && cut(i)) {
            before = i;
        } else if (after >= x.length || !start && i == last && cut(i)) {
            after = i;
        }
        double dx = x[after] - x[before];
        double dy = y[after] - y[before];
        double length = Math.hypot(dx, dy);
        double sign = start ? 1 : -1;
        return length < 1e-12
                ? new double[] {0, 0}
                : new double[] {sign * dx / length, sign * dy / length};
    }

    private boolean cut(int i) {
        return i > 0 && i < x.length - 1 && corner(i);
    }

    private boolean smoothSeam() {
        int n = x.length;
        double ax = x[n - 1] - x[n - 2];
        double ay = y[n - 1] - y[n - 2];
        double bx = x[1] - x[0];
        double by = y[1] - y[0];
        double lengths = Math.hypot(ax, ay) * Math.hypot(bx, by);
        return lengths > 1e-12 && ax * bx + ay * by >= CORNER * lengths;
    }

    private void fit(int first, int last) {
        double[] start = direction(first, first, last, true);
        double[] end = direction(last, first, last, false);
        double[] at = chords(first, last);
        double[] xy = cubic(first, at, start, end);
        int worst = worst(xy, first, at);
        double off = off(xy, first, at, worst);
        for (int round = 0; round < ROUNDS && off > OFF && off < IMPROVABLE * OFF; round++) {
            improve(xy, first, at);
            xy = cubic(first, at, start, end);
            worst = worst(xy, first, at);
            off = off(xy, first, at, worst);
        }
        if (off <= OFF || last - first < 2) {
            pieces.add(new Piece(xy, first, at));
            return;
        }
        int middle = Math.max(first + 1, Math.min(last - 1, (first + last) / 2));
        fit(first, middle);
        fit(middle, last);
    }

    private double[] chords(int first, int last) {
        double[] at = new double[last - first + 1];
        for (int i = 1; i < at.length; i++) {
            int j = first + i;
            at[i] = at[i - 1] + Math.hypot(x[j] - x[j - 1], y[j] - y[j - 1]);
        }
        double all = at[at.length - 1];
        for (int i = 0; i < at.length; i++) {
            at[i] = all > 0 ? at[i] / all : (double) i / (at.length - 1);
        }
        return at;
    }

    /** The least squares' cubic between two points with the directions at its ends. */
    private double[] cubic(int first, double[] at, double[] start, double[] end) {
        int last = first + at.length - 1;
        double c00 = 0;
        double c01 = 0;
        double c11 = 0;
        double r0 = 0;
        double r1 = 0;
        for (int i = 0; i < at.length; i++) {
            double t = at[i];
            double s = 1 - t;
            double near = s * s * (1 + 2 * t);
            double b1 = 3 * t * s * s;
            double b2 = 3 * t * t * s;
            double far = t * t * (3 - 2 * t);
            double dx = x[first + i] - near * x[first] - far * x[last];
            double dy = y[first + i] - near * y[first] - far * y[last];
            c00 += b1 * b1;
            c01 += b1 * b2 * (start[0] * end[0] + start[1] * end[1]);
            c11 += b2 * b2;
            r0 += b1 * (start[0] * dx + start[1] * dy);
            r1 += b2 * (end[0] * dx + end[1] * dy);
        }
        double chord = Math.hypot(x[last] - x[first], y[last] - y[first]);
        double det = c00 * c11 - c01 * c01;
        double a = chord / 3;
        double b = chord / 3;
        if (Math.abs(det) > 1e-12) {
            double one = (r0 * c11 - r1 * c01) / det;
            double two = (c00 * r1 - c01 * r0) / det;
            if (one > 1e-3 * chord && two > 1e-3 * chord) {
                a = one;
                b = two;
            }
        }
        return new double[] {
            x[first],
            y[first],
            x[first] + a * start[0],
            y[first] + a * start[1],
            x[last] + b * end[0],
            y[last] + b * end[1],
            x[last],
            y[last]
        };
    }

    private int worst(double[] xy, int first, double[] at) {
        int worst = 0;
        double most = -1;
        for (int i = 1; i < at.length - 1; i++) {
            double off = off(xy, first, at, i);
            if (off > most) {
                most = off;
                worst = i;
            }
        }
        return worst;
    }

    private double off(double[] xy, int first, double[] at, int i) {
        double t = at[i];
        return Math.hypot(value(xy, 0, t) - x[first + i], value(xy, 1, t) - y[first + i]);
    }

    private static double value(double[] xy, int axis, double t) {
        double s = 1 - t;
        return s * s * s * xy[axis]
                + 3 * s * s * t * xy[2 + axis]
                + 3 * s * t * t * xy[4 + axis]
                + t * t * t * xy[6 + axis];
    }

    /** A step of Newton's toward the parameters at which the cubic is nearest to the points. */
    private void improve(double[] xy, int first, double[] at) {
        for (int i = 1; i < at.length - 1; i++) {
            double t = at[i];
            double s = 1 - t;
            double up = 0;
            double down = 0;
            for (int axis = 0; axis < 2; axis++) {
                double a = xy[axis];
                double b = xy[2 + axis];
                double c = xy[4 + axis];
                double d = xy[6 + axis];
                double off = value(xy, axis, t) - (axis == 0 ? x : y)[first + i];
                double speed = 3 * (s * s * (b - a) + 2 * s * t * (c - b) + t * t * (d - c));
                double bend = 6 * (s * (c - 2 * b + a) + t * (d - 2 * c + b));
                up += off * speed;
                down += speed * speed + off * bend;
            }
            if (down > 1e-12) {
                double next = t - up / down;
                at[i] = Math.max(at[i - 1], Math.min(1, next));
            }
        }
    }

    /**
     * The line between two places, each a number of points from the start.
     *
     * @return cubics, eight numbers each
     */
    List<double[]> between(double from, double to) {
        List<double[]> cubics = new ArrayList<>();
        for (Piece piece : pieces) {
            double low = Math.max(from, piece.first());
            double high = Math.min(to, piece.last());
            if (high > low) {
                cubics.add(cut(piece.xy(), piece.parameter(low), piece.parameter(high)));
            }
        }
        return cubics;
    }

    /** A cubic from one parameter to another, by de Casteljau's halving. */
    private static double[] cut(double[] xy, double from, double to) {
        if (from <= 0 && to >= 1) {
            return xy;
        }
        double[] head = before(xy, to);
        return from <= 0 ? head : reversed(before(reversed(head), 1 - from / to));
    }

    private static double[] before(double[] xy, double t) {
        double[] out = new double[8];
        for (int axis = 0; axis < 2; axis++) {
            double a = xy[axis];
            double ab = a + t * (xy[2 + axis] - a);
            double bc = xy[2 + axis] + t * (xy[4 + axis] - xy[2 + axis]);
            double cd = xy[4 + axis] + t * (xy[6 + axis] - xy[4 + axis]);
            double abc = ab + t * (bc - ab);
            double bcd = bc + t * (cd - bc);
            out[axis] = a;
            out[2 + axis] = ab;
            out[4 + axis] = abc;
            out[6 + axis] = abc + t * (bcd - abc);
        }
        return out;
    }

    static double[] reversed(double[] xy) {
        return new double[] {xy[6], xy[7], xy[4], xy[5], xy[2], xy[3], xy[0], xy[1]};
    }

    /** Cubics that follow on each other, as a path. */
    static Path2D.Double path(List<double[]> cubics, boolean closed) {
        Path2D.Double path = new Path2D.Double();
        boolean begun = false;
        for (double[] c : cubics) {
            if (!begun) {
                path.moveTo(c[0], c[1]);
                begun = true;
            }
            path.curveTo(c[2], c[3], c[4], c[5], c[6], c[7]);
        }
        if (closed && begun) {
            path.closePath();
        }
        return path;
    }
}
