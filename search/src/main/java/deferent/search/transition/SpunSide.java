package deferent.search.transition;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Jet;
import deferent.motion.pairing.Part;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.State;
import deferent.motion.trace.TetherAngle;
import deferent.motion.trace.Trace;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * One side of a pattern over its common cycle, tabled at even times: where its hand is, and which
 * way its tether points, as a practised hand draws it ({@link DrawnSide}). Between two rows all is
 * taken as straight, which for a poi of three turns a cycle is right to 0.2 mm.
 *
 * @param side whose
 * @param length of the tether, metres
 * @param period of the common cycle, seconds
 * @param beat one full turn of the poi on the mean, or one cycle where it turns none, seconds
 * @param u of its plane
 * @param v of its plane
 * @param growth of the tether's angle over the cycle, radians
 * @param rows {@value #COLUMNS} numbers each: hand, its velocity and acceleration, the tether's
 *     angle in its plane and its lean out of it, each with two derivatives; read, do not write
 * @param exactly what the rows were tabled from
 * @param pull greatest pull over the head's mass, m/s²
 * @param quickening greatest rate of that, m/s³
 * @param handQuick greatest acceleration of the hand, m/s²
 * @param handJerk root mean square of the hand's jerk, m/s³
 */
record SpunSide(
        Side side,
        double length,
        double period,
        double beat,
        Vector3D u,
        Vector3D v,
        double growth,
        double[] rows,
        Exactly exactly,
        double pull,
        double quickening,
        double handQuick,
        double handJerk) {
    static final int COUNT = 512;
    static final int COLUMNS = 15;
    static final int HAND = 0;
    static final int ANGLE = 9;

    // Planes less apart are as good as one, radians (our choice).
    private static final double WELL_APART = Math.toRadians(45);

    /** The sine of how far the tether leans out of its plane, toward u × v. */
    static final int LEAN = 12;

    static SpunSide of(Trace trace, Side side) {
        Part part = trace.pairing().part(side);
        Vector3D u = part.place().plane().u();
        Vector3D v = part.place().plane().v();
        double length = part.tether().length();
        double period = trace.period();
        TetherAngle angle = TetherAngle.of(trace, side);
        double[] rows = new double[COLUMNS * (COUNT + 1)];
        double[] pulls = new double[COUNT];
        Exactly exactly = new Exactly(trace, side, angle, 1, 0, u, v);
        double[] row = new double[COLUMNS];
        for (int i = 0; i <= COUNT; i++) {
            double t = trace.interval().start() + period * (i % COUNT) / COUNT;
            exactly.at(t, i / COUNT, row);
            System.arraycopy(row, 0, rows, COLUMNS * i, COLUMNS);
            State head = trace.head(side).at(t);
            Vector3D force = head.acceleration().add(new Vector3D(0, Gravity.STANDARD, 0));
            double size = force.getNorm();
            if (i < COUNT) {
                pulls[i] = size;
            }
        }
        double most = 0;
        double quickest = 0;
        double handQuick = 0;
        double jerks = 0;
        double beat = beat(part, period);
        int strides = (int) Math.rint(Attempt.MEASURED * period / beat);
        double step = period / strides;
        for (int i = 0; i < strides; i++) {
            double t = trace.interval().start() + i * step;
            Vector3D second = second(trace.hand(side), t, step);
            handQuick = Math.max(handQuick, second.getNorm() / (step * step));
            jerks += second(trace.hand(side), t + step, step).subtract(second).getNormSq();
        }
        double handJerk = Math.sqrt(jerks / strides) / (step * step * step);
        for (int i = 0; i < COUNT; i++) {
            most = Math.max(most, pulls[i]);
            double more = pulls[(i + 1) % COUNT] - pulls[i];
            quickest = Math.max(quickest, Math.abs(more) * COUNT / period);
        }
        return new SpunSide(
                side,
                length,
                period,
                beat,
                u,
                v,
                angle.growth(),
                rows,
                exactly,
                most,
                quickest,
                handQuick,
                handJerk);
    }

    /** Second difference of the hand, metres. */
    private static Vector3D second(Course hand, double time, double step) {
        return hand.position(time + step)
                .add(hand.position(time - step))
                .subtract(hand.position(time).scalarMultiply(2));
    }

    /**
     * The same in the plane as another bends into it: least, about the line in which both planes
     * meet. Where the poi turns the other way, and the planes are well apart, it is bent into from
     * behind, so that the poi goes on turning as it did.
     */
    SpunSide toward(SpunSide from) {
        Vector3D before = from.u().crossProduct(from.v());
        Vector3D own = u.crossProduct(v);
        boolean behind = growth * from.growth() < 0 && wellApart(from);
        Rotation bend = new Rotation(before, behind ? own.negate() : own);
        Vector3D newU = bend.applyTo(from.u());
        Vector3D newV = bend.applyTo(from.v());
        int sense = behind ? -1 : 1;
        double start = Math.atan2(u.dotProduct(newV), u.dotProduct(newU));
        double[] seen = rows.clone();
        for (int i = 0; i < seen.length; i += COLUMNS) {
            for (int k = ANGLE; k < COLUMNS; k++) {
                seen[i + k] *= sense;
            }
            seen[i + ANGLE] += start;
        }
        return new SpunSide(
                side,
                length,
                period,
                beat,
                newU,
                newV,
                sense * growth,
                seen,
                new Exactly(exactly.trace, side, exactly.angle, sense, start, newU, newV),
                pull,
                quickening,
                handQuick,
                handJerk);
    }

    private static double beat(Part part, double period) {
        return period / (part.cycles() * Math.max(1, Math.abs(part.motion().spin().turns())));
    }

    /** Whether a poi has to bend its plane from the one into the other. */
    boolean wellApart(SpunSide from) {
        double cosine = u.crossProduct(v).dotProduct(from.u().crossProduct(from.v()));
        return Math.abs(cosine) < Math.cos(WELL_APART);
    }

    /** Where the hand is on the mean, metres. */
    Vector3D middle() {
        double[] sum = new double[3];
        for (int i = 0; i < COUNT; i++) {
            for (int k = 0; k < 3; k++) {
                sum[k] += rows[COLUMNS * i + HAND + k] / COUNT;
            }
        }
        return new Vector3D(sum);
    }

    Course hand() {
        return exactly.trace().hand(side);
    }

    Course head() {
        return exactly.trace().head(side);
    }

    /** The tether's angle at any time, counted on over whole cycles, radians. */
    double angle(double time) {
        double whole = Math.floor(time / period);
        return exactly.angle(time - whole * period, (long) whole);
    }

    /** The same as a row at any time, from the courses themselves. */
    void exact(double time, double[] out) {
        double whole = Math.floor(time / period);
        exactly.at(time - whole * period, (long) whole, out);
    }

    /**
     * What a table is made from.
     *
     * @param angle in the motion's own plane
     * @param sense −1 where that plane is seen from behind
     * @param start what its zero is from u toward v, radians
     */
    record Exactly(
            Trace trace,
            Side side,
            TetherAngle angle,
            int sense,
            double start,
            Vector3D u,
            Vector3D v) {
        double angle(double t, long cycle) {
            return start + sense * angle.at(t, cycle);
        }

        void at(double t, long cycle, double[] out) {
            State hand = trace.hand(side).at(t);
            State head = trace.head(side).at(t);
            put(out, HAND, hand.position());
            put(out, HAND + 3, hand.velocity());
            put(out, HAND + 6, hand.acceleration());
            Vector3D r = head.position().subtract(hand.position());
            Vector3D velocity = head.velocity().subtract(hand.velocity());
            Vector3D quick = head.acceleration().subtract(hand.acceleration());
            write(
                    out,
                    ANGLE,
                    TetherLean.angle(
                            angle(t, cycle),
                            jet(r, velocity, quick, u),
                            jet(r, velocity, quick, v)));
            Vector3D normal = u.crossProduct(v);
            write(out, LEAN, jet(r, velocity, quick, normal).times(1 / r.getNorm()));
        }

        private static Jet jet(Vector3D r, Vector3D velocity, Vector3D quick, Vector3D along) {
            return new Jet(
                    r.dotProduct(along), velocity.dotProduct(along), quick.dotProduct(along), 0);
        }

        private static void write(double[] rows, int at, Jet of) {
            rows[at] = of.value();
            rows[at + 1] = of.d1();
            rows[at + 2] = of.d2();
        }
    }

    private static void put(double[] rows, int at, Vector3D p) {
        rows[at] = p.getX();
        rows[at + 1] = p.getY();
        rows[at + 2] = p.getZ();
    }

    /** Writes the row at any time, the angle counted on over whole cycles. */
    void at(double time, double[] out) {
        double cycles = time / period;
        double whole = Math.floor(cycles);
        double where = (cycles - whole) * COUNT;
        int i = Math.min((int) where, COUNT - 1);
        double x = where - i;
        int p = COLUMNS * i;
        for (int k = 0; k < COLUMNS; k++) {
            double here = rows[p + k];
            out[k] = here + x * (rows[p + COLUMNS + k] - here);
        }
        out[ANGLE] += whole * growth;
    }
}
