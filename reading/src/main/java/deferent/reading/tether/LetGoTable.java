package deferent.reading.tether;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Tether;
import deferent.motion.shared.Side;
import deferent.motion.trace.Interval;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import java.util.List;
import java.util.stream.LongStream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A poi let go at a still hand, in an upright plane, as a table over time: to be held against a
 * swing that was measured.
 *
 * @param run what was worked out, from time 0
 * @param step seconds from row to row
 */
public record LetGoTable(LetGo run, double step) {
    private static final Side SIDE = Side.LEFT;
    private static final int MOST_ROWS = 100_000;
    private static final int MOST_STEPS = 500_000;

    /**
     * One moment.
     *
     * @param time seconds since it was let go
     * @param angle from straight down to where the head is, seen from the hand, radians in (−π, π]
     * @param speed of the head, m/s, never negative
     * @param pull of the cord on the head, newtons; 0 while it is slack
     * @param slack whether the head flies
     */
    public record Row(double time, double angle, double speed, double pull, boolean slack) {}

    public LetGoTable {
        double most = run.trace().period();
        Refusal.positive(step, most, "step of the table", "s");
        if (most / step > MOST_ROWS) {
            throw new Refusal(
                    "makes more than " + MOST_ROWS + " rows",
                    "step of the table",
                    "give a longer step or a shorter time");
        }
    }

    /**
     * Lets go.
     *
     * @param cord the poi
     * @param angle of the cord from straight down, radians, −π to π
     * @param speed of the head across the cord, m/s, positive toward greater angles
     * @param seconds how long it is followed
     */
    public static LetGoTable of(
            Cord cord, double angle, double speed, double seconds, double step) {
        Refusal.within(angle, -Math.PI, Math.PI, "start angle", "rad");
        Refusal.within(speed, -100, 100, "start speed", "m/s");
        Trace still = still(cord.length());
        Vector3D hand = still.hand(SIDE).at(0).position();
        Vector3D along = new Vector3D(Math.sin(angle), -Math.cos(angle), 0);
        Vector3D across = new Vector3D(Math.cos(angle), Math.sin(angle), 0);
        LetGo.Start start =
                new LetGo.Start(
                        0,
                        hand.add(along.scalarMultiply(cord.length())),
                        across.scalarMultiply(speed));
        // No swing turns faster than the whole fall from straight up makes it.
        double fastest = Math.sqrt(speed * speed + 4 * cord.gravity() * cord.length());
        double turns = fastest / (2 * Math.PI * cord.length()) * still.period();
        double steps = Math.max(1, turns) * LetGo.USUAL_STEPS;
        if (steps * seconds / still.period() > MOST_STEPS) {
            throw new Refusal(
                    "turns too often to be followed so long",
                    "poi",
                    "give a shorter time, a longer tether or less speed");
        }
        return new LetGoTable(
                LetGo.of(still, SIDE, cord, start, seconds, (int) Math.ceil(steps)), step);
    }

    private static Trace still(double tether) {
        Part part =
                new Part(
                        Motion.staticSpin(1, 0),
                        Tether.of(tether),
                        Place.usual(SIDE, Plane.WALL),
                        1);
        return Trace.of(Pairing.of(part, part));
    }

    /** The moments from 0 to the end, a step apart. */
    public List<Row> rows() {
        long last = (long) Math.floor(run.trace().period() / step * (1 + 1e-12));
        return LongStream.rangeClosed(0, last).mapToObj(i -> row(i * step)).toList();
    }

    private Row row(double time) {
        State head = run.trace().head(SIDE).at(time);
        Vector3D tether = head.position().subtract(run.trace().hand(SIDE).at(time).position());
        boolean slack = run.trace().slack(SIDE).stream().anyMatch(s -> holds(s, time));
        return new Row(
                time,
                Math.atan2(tether.getX(), -tether.getY()),
                head.velocity().getNorm(),
                slack ? 0 : pull(head, tether.normalize()),
                slack);
    }

    // The moment of slackening is found to rounding; a slack stretch at the end lasts to it.
    private boolean holds(Interval slack, double time) {
        return slack.start() - 1e-9 <= time
                && (time < slack.end() || slack.end() >= run.trace().interval().end());
    }

    // m·p″ = m·g + drag − pull·e, along the cord; without the cord's own mass.
    private double pull(State head, Vector3D e) {
        Cord cord = run.cord();
        return cord.fall()
                .subtract(head.acceleration())
                .scalarMultiply(cord.kit().headMass())
                .add(cord.drag(head.velocity()))
                .dotProduct(e);
    }
}
