package deferent.reading.link;

import deferent.motion.trace.Course;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Lowest;
import java.util.Arrays;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A point's path as a curve: one minimal period of it, seen along its own axes, to be walked by arc
 * length from any start, either way. When it was where is forgotten.
 */
final class WalkedCurve {
    private static final int[] PRIMES = {2, 3, 5, 7, 11, 13, 17, 19, 23};
    private static final int MOST_REPEATS = 600;
    private static final double SAME = 1e-7;

    private final double[] xyz;
    private final double[] along;
    private final boolean closed;
    private final int dimension;

    private WalkedCurve(double[] points, boolean closed) {
        OwnAxes own = OwnAxes.of(points);
        this.xyz = closed ? fromTheSharpestTurn(own.xyz()) : own.xyz();
        this.dimension = own.dimension();
        this.closed = closed;
        int last = xyz.length / 3 - 1;
        along = new double[last + 1];
        for (int i = 1; i <= last; i++) {
            double dx = xyz[3 * i] - xyz[3 * i - 3];
            double dy = xyz[3 * i + 1] - xyz[3 * i - 2];
            double dz = xyz[3 * i + 2] - xyz[3 * i - 1];
            along[i] = along[i - 1] + Math.sqrt(dx * dx + dy * dy + dz * dz);
        }
    }

    // A loop that turns back somewhere starts there, so that steps of a like length do not cut the
    // turn short; a hand on an arc or a line turns back half its length on as well.
    private static double[] fromTheSharpestTurn(double[] loop) {
        int last = loop.length / 3 - 1;
        double[] before = new double[3];
        double sharpest = 0;
        int at = 0;
        // Twice round: the first piece is compared with the last.
        for (int i = 0; i < 2 * last; i++) {
            int from = 3 * (i % last);
            double x = loop[from + 3] - loop[from];
            double y = loop[from + 4] - loop[from + 1];
            double z = loop[from + 5] - loop[from + 2];
            double length = Math.sqrt(x * x + y * y + z * z);
            if (length > 0) {
                double straight = (x * before[0] + y * before[1] + z * before[2]) / length;
                if (straight < sharpest - 1e-9) {
                    sharpest = straight;
                    at = i % last;
                }
                before[0] = x / length;
                before[1] = y / length;
                before[2] = z / length;
            }
        }
        double[] out = new double[loop.length];
        System.arraycopy(loop, 3 * at, out, 0, 3 * (last - at));
        System.arraycopy(loop, 0, out, 3 * (last - at), 3 * at + 3);
        System.arraycopy(out, 0, out, 3 * last, 3);
        return out;
    }

    /**
     * The path of a course, from {@code count} even times of its minimal period and the times of
     * its corners.
     *
     * @param closed whether the interval's end joins its start
     * @param corners times at which the velocity jumps
     */
    static WalkedCurve of(
            Course course, Interval interval, boolean closed, double[] corners, int count) {
        int repeats = closed ? repeats(course, interval) : 1;
        double start = interval.start();
        double length = interval.length() / repeats;
        double[] times = new double[count + 1];
        for (int i = 0; i <= count; i++) {
            times[i] = start + length * i / count;
        }
        double[] inside =
                Arrays.stream(corners).filter(t -> t > start && t < start + length).toArray();
        if (inside.length > 0) {
            times = Arrays.copyOf(times, times.length + inside.length);
            System.arraycopy(inside, 0, times, count + 1, inside.length);
            Arrays.sort(times);
        }
        double[] points = new double[3 * times.length];
        for (int i = 0; i < times.length; i++) {
            boolean end = closed && i == times.length - 1;
            Vector3D p = course.at(end ? start : times[i]).position();
            points[3 * i] = p.getX();
            points[3 * i + 1] = p.getY();
            points[3 * i + 2] = p.getZ();
        }
        return new WalkedCurve(points, closed);
    }

    /**
     * The same from positions sampled at even times over the interval, when they fill its minimal
     * period well enough; worked out afresh where they do not.
     */
    static WalkedCurve of(Course course, Interval interval, boolean closed, double[] samples) {
        int count = samples.length / 3;
        int repeats = closed ? repeats(course, interval) : 1;
        if (!closed) {
            return new WalkedCurve(samples, false);
        }
        if (count % repeats != 0 || count / repeats < 60) {
            return of(course, interval, true, new double[0], 180);
        }
        // Every second of 720 is plenty for an estimate.
        int one = count / repeats;
        int stride = one % 2 == 0 && one >= 720 ? 2 : 1;
        double[] points = new double[3 * (one / stride) + 3];
        for (int i = 0; i < one / stride; i++) {
            System.arraycopy(samples, 3 * stride * i, points, 3 * i, 3);
        }
        System.arraycopy(samples, 0, points, points.length - 3, 3);
        return new WalkedCurve(points, true);
    }

    // The minimal period divides the interval by a whole number; a prime divides that number when
    // the interval over that prime is a period.
    private static int repeats(Course course, Interval interval) {
        int repeats = 1;
        for (int prime : PRIMES) {
            while (repeats * prime <= MOST_REPEATS
                    && comesBack(course, interval, interval.length() / (repeats * prime))) {
                repeats *= prime;
            }
        }
        return repeats;
    }

    private static boolean comesBack(Course course, Interval interval, double after) {
        double share = 0.1;
        for (int i = 0; i < 7; i++) {
            double later = share + after / interval.length();
            Vector3D a = course.at(interval.start() + share * interval.length()).position();
            Vector3D b =
                    course.at(interval.start() + (later - Math.floor(later)) * interval.length())
                            .position();
            if (a.distance(b) > SAME) {
                return false;
            }
            share += 0.6180339887498949;
            share -= Math.floor(share);
        }
        return true;
    }

    double length() {
        return along[along.length - 1];
    }

    boolean closed() {
        return closed;
    }

    /** 0 for a point, 1 a line, 2 flat, 3 leaving every plane. */
    int dimension() {
        return dimension;
    }

    /** The points it is known by. */
    double[] points() {
        return xyz;
    }

    /**
     * {@code n} + 1 points a like length apart, the last of a closed curve being its first again.
     *
     * @param from where to start, as a share of the length; 0 for an open curve
     * @param reversed walk it the other way
     */
    double[] walked(int n, double from, boolean reversed) {
        double[] out = new double[3 * n + 3];
        double whole = length();
        int last = along.length - 1;
        double start = (from - Math.floor(from)) * whole;
        int at = 0;
        for (int i = 0; i <= n; i++) {
            double s = start + whole * i / n;
            if (s > whole) {
                s = i == n && !closed ? whole : s - whole;
            }
            if (s < along[at]) {
                at = 0;
            }
            while (at < last - 1 && along[at + 1] < s) {
                at++;
            }
            double piece = along[at + 1] - along[at];
            double share = piece > 0 ? Math.min((s - along[at]) / piece, 1) : 0;
            int put = 3 * (reversed ? n - i : i);
            for (int a = 0; a < 3; a++) {
                out[put + a] = xyz[3 * at + a] + share * (xyz[3 * at + 3 + a] - xyz[3 * at + a]);
            }
        }
        return out;
    }

    /**
     * How far this closed curve is from one that goes back the way it came, metres: 0 for a
     * pendulum's arc and for a line. Measured at {@code n} points.
     */
    double offReturning(int n) {
        int rough = 64;
        double[] p = walked(rough, 0, false);
        double least = Double.MAX_VALUE;
        int turn = 0;
        for (int s = 0; s < rough; s++) {
            double most = folded(p, s, rough, least);
            if (most < least) {
                least = most;
                turn = s;
            }
        }
        double lowest =
                Lowest.within(
                                x -> folded(walked(rough, x, false), 0, rough, Double.MAX_VALUE),
                                (turn - 1.0) / rough,
                                (turn + 1.0) / rough,
                                40)
                        .at();
        double between = folded(walked(n, lowest, false), 0, n, Double.MAX_VALUE);
        double atPoint = folded(walked(n, (double) turn / rough, false), 0, n, Double.MAX_VALUE);
        return Math.min(between, atPoint) / 2;
    }

    private static double folded(double[] p, int turn, int n, double enough) {
        double most = 0;
        for (int k = 1; 2 * k < n && most < enough * enough; k++) {
            int i = 3 * ((turn + k) % n);
            int j = 3 * ((turn - k + n) % n);
            double dx = p[i] - p[j];
            double dy = p[i + 1] - p[j + 1];
            double dz = p[i + 2] - p[j + 2];
            most = Math.max(most, dx * dx + dy * dy + dz * dz);
        }
        return Math.sqrt(most);
    }

    /**
     * Least distance between points half the length apart along this closed curve, metres; exact
     * for the polygon through {@code 2n} points of it.
     */
    double waist(int n) {
        double[] p = walked(2 * n, 0, false);
        double least = Double.MAX_VALUE;
        for (int i = 0; i < n; i++) {
            double[] across = new double[6];
            for (int c = 0; c < 6; c++) {
                across[c] = p[3 * i + c] - p[3 * (i + n) + c];
            }
            least = Math.min(least, offChord(across, new double[3], 0, 0));
        }
        return least;
    }

    /** How far the curve strays from the chords between {@code n} + 1 walked points, metres. */
    double sag(int n) {
        double[] chord = walked(n, 0, false);
        double step = length() / n;
        double most = 0;
        for (int i = 0; i < along.length && step > 0; i++) {
            int c = Math.min((int) (along[i] / step), n - 1);
            most = Math.max(most, offChord(chord, xyz, 3 * c, 3 * i));
        }
        return most;
    }

    private static double offChord(double[] chord, double[] xyz, int c, int i) {
        double ax = chord[c + 3] - chord[c];
        double ay = chord[c + 4] - chord[c + 1];
        double az = chord[c + 5] - chord[c + 2];
        double bx = xyz[i] - chord[c];
        double by = xyz[i + 1] - chord[c + 1];
        double bz = xyz[i + 2] - chord[c + 2];
        double aa = ax * ax + ay * ay + az * az;
        double t = aa > 0 ? Math.min(Math.max((ax * bx + ay * by + az * bz) / aa, 0), 1) : 0;
        double dx = bx - t * ax;
        double dy = by - t * ay;
        double dz = bz - t * az;
        return Math.sqrt(dx * dx + dy * dy + dz * dz);
    }
}
