package deferent.motion.trace;

import deferent.motion.pairing.Part;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.shared.Side;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * One head's closed path over one of its own cycles, seen from its part's centre along the axes of
 * its motion's plane: sampled, with the exact course behind it.
 */
final class HeadPath {
    // A head slower than this share of its greatest speed stands.
    private static final double STANDS = 1e-6;
    private static final double STILL = 1e-9;

    private final Course course;
    private final Part part;
    private final double start;
    private final double period;
    private final Vector3D centre;
    private final Vector3D[] axes;
    private final double[] breaks;
    private final double[][] at;
    private final double[] slow;

    private HeadPath(
            Course course, Part part, double start, double period, double[] breaks, double[][] at) {
        this.course = course;
        this.part = part;
        this.start = start;
        this.period = period;
        this.centre = part.place().centre();
        this.axes = axes(part);
        this.breaks = breaks;
        this.at = at;
        this.slow = slowest();
    }

    static HeadPath of(Trace trace, Side side, int count) {
        Part part = trace.pairing().part(side);
        int cycles = part.cycles();
        if (part.motion().riding()) {
            cycles = gcd(cycles, trace.pairing().part(side.other()).cycles());
        }
        double period = trace.period() / cycles;
        double start = trace.interval().start();
        double[] breaks =
                trace.breaks().stream()
                        .filter(b -> b.side() == side && b.time() - start < period)
                        .mapToDouble(TimedBreak::time)
                        .distinct()
                        .toArray();
        Course head = trace.head(side);
        double[] xyz =
                cycles == 1 ? trace.samples(count).head(side) : sampled(head, start, period, count);
        return new HeadPath(head, part, start, period, breaks, local(part, xyz));
    }

    private static int gcd(int a, int b) {
        return b == 0 ? a : gcd(b, a % b);
    }

    private static Vector3D[] axes(Part part) {
        return new Vector3D[] {
            part.place().plane().u(), part.place().plane().v(), part.place().plane().normal()
        };
    }

    private static double[] sampled(Course head, double start, double period, int count) {
        double[] xyz = new double[3 * count];
        for (int i = 0; i < count; i++) {
            Vector3D p = head.position(start + i * period / count);
            xyz[3 * i] = p.getX();
            xyz[3 * i + 1] = p.getY();
            xyz[3 * i + 2] = p.getZ();
        }
        return xyz;
    }

    private static double[][] local(Part part, double[] xyz) {
        Vector3D c = part.place().centre();
        Vector3D[] axes = axes(part);
        double[][] at = new double[3][xyz.length / 3];
        for (int axis = 0; axis < 3; axis++) {
            double ax = axes[axis].getX();
            double ay = axes[axis].getY();
            double az = axes[axis].getZ();
            for (int i = 0; i < at[axis].length; i++) {
                at[axis][i] =
                        ax * (xyz[3 * i] - c.getX())
                                + ay * (xyz[3 * i + 1] - c.getY())
                                + az * (xyz[3 * i + 2] - c.getZ());
            }
        }
        return at;
    }

    /** The path's points in its plane at {@code count} even times, u then v. */
    double[][] plane(int count) {
        return count == count() ? at : local(part, sampled(course, start, period, count));
    }

    int count() {
        return at[0].length;
    }

    double start() {
        return start;
    }

    double period() {
        return period;
    }

    double step() {
        return period / count();
    }

    double[] u() {
        return at[0];
    }

    double[] v() {
        return at[1];
    }

    State state(double time) {
        return course.at(time);
    }

    /** The area the line from centre to head sweeps a second, in the plane. */
    double swept(State s) {
        Vector3D p = s.position().subtract(centre);
        return (p.dotProduct(axes[0]) * s.velocity().dotProduct(axes[1])
                        - p.dotProduct(axes[1]) * s.velocity().dotProduct(axes[0]))
                / 2;
    }

    /** u, v and their rates at a time. */
    double[] moving(double time) {
        State s = course.at(time);
        Vector3D p = s.position().subtract(centre);
        return new double[] {
            p.dotProduct(axes[0]),
            p.dotProduct(axes[1]),
            s.velocity().dotProduct(axes[0]),
            s.velocity().dotProduct(axes[1])
        };
    }

    /** Where the path is not smooth, and where the head is slowest: times within the cycle. */
    List<Double> joints() {
        List<Double> times = new ArrayList<>();
        for (double t : breaks) {
            times.add(t);
        }
        for (double t : slow) {
            times.add(within(t));
        }
        times.sort(Double::compare);
        return times;
    }

    double within(double time) {
        double since = time - start;
        return start + since - period * Math.floor(since / period);
    }

    boolean still() {
        return extent(0) < STILL && extent(1) < STILL && extent(2) < STILL;
    }

    double width() {
        return turning(PlaneTurn.Axis.UPRIGHT) ? Math.max(extent(0), extent(2)) : extent(0);
    }

    double height() {
        return turning(PlaneTurn.Axis.LEVEL) ? Math.max(extent(1), extent(2)) : extent(1);
    }

    private boolean turning(PlaneTurn.Axis axis) {
        PlaneTurn turn = part.place().turn();
        return turn.turns() != 0 && turn.axis() == axis;
    }

    private double extent(int axis) {
        Vector3D along = axes[axis];
        double[] high = at[axis];
        double[] low = new double[high.length];
        for (int i = 0; i < low.length; i++) {
            low[i] = -high[i];
        }
        double most = greatest(high, s -> level(s, along));
        double least = greatest(low, s -> level(s, along.negate()));
        return most + least;
    }

    // A height, its rate and the rate of that.
    private double[] level(State s, Vector3D along) {
        return new double[] {
            s.position().subtract(centre).dotProduct(along),
            s.velocity().dotProduct(along),
            s.acceleration().dotProduct(along)
        };
    }

    /** The head's greatest distance from the centre. */
    double outerRadius() {
        double[] square = new double[count()];
        for (int i = 0; i < square.length; i++) {
            square[i] = at[0][i] * at[0][i] + at[1][i] * at[1][i] + at[2][i] * at[2][i];
        }
        return Math.sqrt(
                greatest(
                        square,
                        s -> {
                            Vector3D r = s.position().subtract(centre);
                            return new double[] {
                                r.getNormSq(),
                                2 * r.dotProduct(s.velocity()),
                                2 * (s.velocity().getNormSq() + r.dotProduct(s.acceleration()))
                            };
                        }));
    }

    private interface Height {
        double[] of(State s);
    }

    // Every high point of the samples that might be the highest is climbed by Newton steps on the
    // exact rate; corners are looked at as well.
    private double greatest(double[] sampled, Height exact) {
        int count = sampled.length;
        double best = Double.NEGATIVE_INFINITY;
        double stride = 0;
        for (int i = 0; i < count; i++) {
            best = Math.max(best, sampled[i]);
            stride = Math.max(stride, Math.abs(sampled[i] - sampled[(i + 1) % count]));
        }
        double floor = best - stride;
        double found = best;
        for (int i = 0; i < count; i++) {
            double here = sampled[i];
            if (here >= floor
                    && here > sampled[(i + count - 1) % count]
                    && here >= sampled[(i + 1) % count]
                    && here > found - stride) {
                found = Math.max(found, climbed(start + i * step(), exact));
            }
        }
        for (double t : breaks) {
            found = Math.max(found, exact.of(course.at(t))[0]);
        }
        return found;
    }

    private double climbed(double from, Height exact) {
        double t = from;
        double[] h = exact.of(course.at(t));
        double most = h[0];
        for (int i = 0; i < 6 && h[2] < 0; i++) {
            double by = -h[1] / h[2];
            if (Math.abs(t + by - from) > step()) {
                break;
            }
            t += by;
            h = exact.of(course.at(t));
            most = Math.max(most, h[0]);
            if (Math.abs(by) < 1e-9 * step()) {
                break;
            }
        }
        return most;
    }

    // Times of least speed that are slow beside the mean, by Newton steps on velocity·acceleration.
    private double[] slowest() {
        int count = count();
        double[] chord = new double[count];
        double sum = 0;
        for (int i = 0; i < count; i++) {
            int j = (i + 1) % count;
            double du = at[0][j] - at[0][i];
            double dv = at[1][j] - at[1][i];
            double dw = at[2][j] - at[2][i];
            chord[i] = Math.sqrt(du * du + dv * dv + dw * dw);
            sum += chord[i];
        }
        List<Double> found = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            if (chord[i] < sum / count / 2
                    && chord[i] <= chord[(i + count - 1) % count]
                    && chord[i] < chord[(i + 1) % count]) {
                double from = start + (i + 0.5) * step();
                double t = from;
                for (int n = 0; n < 12; n++) {
                    State s = course.at(t);
                    double slope = s.velocity().dotProduct(s.acceleration());
                    double bend = s.acceleration().getNormSq() + s.velocity().dotProduct(s.jerk());
                    if (!(bend > 0) || Math.abs(t - slope / bend - from) > 2 * step()) {
                        break;
                    }
                    t -= slope / bend;
                    if (Math.abs(slope / bend) < 1e-12 * period) {
                        break;
                    }
                }
                found.add(t);
            }
        }
        return found.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** Places where the head stops and leaves the way it came. */
    int cusps() {
        double fastest = 0;
        for (int i = 0; i < count(); i += 8) {
            fastest = Math.max(fastest, course.at(start + i * step()).velocity().getNorm());
        }
        double near = 1e-6 * (width() + height());
        List<Vector3D> seen = new ArrayList<>();
        for (double t : joints()) {
            Vector3D place = course.position(t);
            if (seen.stream().noneMatch(o -> o.distance(place) < near) && turnsBack(t, fastest)) {
                seen.add(place);
            }
        }
        return seen.size();
    }

    private boolean turnsBack(double time, double fastest) {
        Vector3D in = course.before(time).velocity();
        Vector3D out = course.at(time).velocity();
        boolean standsBefore = in.getNorm() < STANDS * fastest;
        boolean standsAfter = out.getNorm() < STANDS * fastest;
        double little = 1e-4 * period;
        if (standsBefore) {
            in = course.at(time - little).velocity();
        }
        if (in.getNorm() < 1e-12 * fastest) {
            return false;
        }
        // A head that stays where it is for a while leaves when the samples say so.
        double later = time;
        for (int i = 0; standsAfter && i <= count(); i++) {
            later = time + little + i * step();
            out = course.at(later).velocity();
            standsAfter = out.getNorm() < 1e-12 * fastest;
        }
        return in.dotProduct(out) < -0.99 * in.getNorm() * out.getNorm();
    }
}
