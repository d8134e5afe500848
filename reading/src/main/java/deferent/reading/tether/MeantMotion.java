package deferent.reading.tether;

import deferent.motion.trace.Course;
import deferent.motion.trace.State;
import java.util.Arrays;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The motion as meant at every time of a table, and in the middle between two: what slips are
 * measured from, with axes across the cord that turn the shortest way with it.
 */
final class MeantMotion {
    private final Cord cord;
    private final boolean planar;
    private final double[] times;
    private final Instant[] starts;
    private final Instant[] middles;
    private final Instant[] ends;
    private final double turnedCos;
    private final double turnedSin;

    /**
     * One instant.
     *
     * @param bend e″
     * @param axes two, across the cord
     */
    record Instant(
            Cord cord,
            State hand,
            State head,
            Vector3D direction,
            Vector3D rate,
            Vector3D bend,
            Vector3D[] axes) {
        /** The slips' equation. */
        SlipLaw.Rates rates() {
            double swing = cord.swingLength();
            Vector3D v = head.velocity();
            double speed = v.getNorm();
            double k = cord.dragOverSpeed(speed) / cord.swingMass();
            double slope =
                    cord.kit().air() && speed > 0
                            ? cord.dragOverSpeedSlope(speed) / cord.swingMass() / speed
                            : 0;
            Vector3D swung =
                    hand.acceleration().add(bend.scalarMultiply(swing)); // of the swing's point
            double pull =
                    cord.fall().subtract(v.scalarMultiply(k)).subtract(swung).dotProduct(direction)
                            / swing;
            double[] place = new double[4];
            double[] pace = new double[4];
            double along = v.dotProduct(direction);
            for (int a = 0; a < 2; a++) {
                double wa = rate.dotProduct(axes[a]);
                double va = slope * v.dotProduct(axes[a]);
                for (int b = 0; b < 2; b++) {
                    double wb = rate.dotProduct(axes[b]);
                    double vb = v.dotProduct(axes[b]);
                    place[2 * a + b] = wa * wb + va * along * wb - (a == b ? pull : 0);
                    pace[2 * a + b] = -va * vb - (a == b ? k : 0);
                }
            }
            return new SlipLaw.Rates(place, pace, pull);
        }
    }

    private MeantMotion(
            Cord cord, boolean planar, double[] times, Instant[][] all, double cos, double sin) {
        this.cord = cord;
        this.planar = planar;
        this.times = times;
        this.starts = all[0];
        this.middles = all[1];
        this.ends = all[2];
        this.turnedCos = cos;
        this.turnedSin = sin;
    }

    /** At the times of the orbit's own table. */
    static MeantMotion of(Orbit orbit) {
        return of(orbit, 1);
    }

    /**
     * @param parts into which each step of the orbit's own table is cut
     */
    static MeantMotion of(Orbit orbit, int parts) {
        HandTable table = orbit.table();
        int steps = table.steps() * parts;
        double[] times = new double[steps + 1];
        for (int i = 0; i < steps; i++) {
            times[i] = table.time(i / parts) + table.length(i / parts) * (i % parts) / parts;
        }
        times[steps] = table.over().end();
        Course head = orbit.course();
        Instant[][] all = new Instant[3][steps];
        Vector3D e = along(orbit.hand().at(times[0]), head.at(times[0]));
        Vector3D[] first = orbit.planar() ? Slips.axes(e, orbit.normal()) : Slips.axes(e);
        Vector3D[] axes = first;
        for (int i = 0; i < steps; i++) {
            double[] when = {times[i], (times[i] + times[i + 1]) / 2, times[i + 1]};
            for (int part = 0; part < 3; part++) {
                boolean before = part == 2;
                State hand = before ? orbit.hand().before(when[part]) : orbit.hand().at(when[part]);
                State at = before ? head.before(when[part]) : head.at(when[part]);
                Vector3D to = along(hand, at);
                axes = orbit.planar() ? Slips.axes(to, orbit.normal()) : Slips.carried(axes, e, to);
                e = to;
                double by = 1 / orbit.cord().length();
                all[part][i] =
                        new Instant(
                                orbit.cord(),
                                hand,
                                at,
                                to,
                                at.velocity().subtract(hand.velocity()).scalarMultiply(by),
                                at.acceleration().subtract(hand.acceleration()).scalarMultiply(by),
                                axes);
            }
        }
        // x on the axes carried round is this turned on those of the start.
        return new MeantMotion(
                orbit.cord(),
                orbit.planar(),
                times,
                all,
                axes[0].dotProduct(first[0]),
                axes[0].dotProduct(first[1]));
    }

    private static Vector3D along(State hand, State head) {
        return head.position().subtract(hand.position()).normalize();
    }

    /** The instant at a start, middle or end of a step. */
    Instant at(double time, boolean before) {
        int step = Arrays.binarySearch(times, time);
        if (step >= 0) {
            return before ? ends[step - 1] : starts[step];
        }
        return middles[-step - 2];
    }

    Instant start(int step) {
        return starts[step];
    }

    Instant middle(int step) {
        return middles[step];
    }

    Instant end(int step) {
        return ends[step];
    }

    Cord cord() {
        return cord;
    }

    boolean planar() {
        return planar;
    }

    int steps() {
        return times.length - 1;
    }

    double[] times() {
        return times;
    }

    double period() {
        return times[times.length - 1] - times[0];
    }

    double turnedCos() {
        return turnedCos;
    }

    double turnedSin() {
        return turnedSin;
    }
}
