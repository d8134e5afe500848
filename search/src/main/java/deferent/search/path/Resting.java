package deferent.search.path;

import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Facing;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Sense;
import deferent.motion.pairing.Swing;
import deferent.motion.pairing.Timing;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.body.Reach;
import deferent.reading.body.Room;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * One hand of a pairing alone, as a pairing: the other hand is still and its poi hangs straight
 * down, which a cord does by itself. Where the still hand is held is our choice, out of the other
 * poi's way: beside the hip, else out to the side, else behind the back. A body that turns keeps to
 * the audience, since the still hand would be left behind in the room.
 */
final class Resting {
    /** So far from the other poi the hanging one is out of its way, metres (our choice). */
    private static final double CLEAR = 0.15;

    /** The hanging head keeps so far off the ground, metres. */
    private static final double OFF_GROUND = 0.10;

    // Of the left hand, metres in the frame, for a stature of 1.70 m.
    private static final List<Vector3D> HELD =
            List.of(
                    new Vector3D(0.35, -0.40, 0),
                    new Vector3D(0.65, -0.20, 0),
                    new Vector3D(0.15, -0.25, -0.30));

    private Resting() {}

    /**
     * Empty where that hand goes where the other head does, and so cannot go alone; where the body
     * keeps turned away; and where the hanging poi would be in the way wherever it is held.
     */
    static Optional<Pairing> alone(Pairing whole, Side side, Performer performer) {
        Part part = whole.part(side);
        boolean turned = !whole.facing().turning() && whole.facing().from() != 0;
        if (part.motion().riding() || turned) {
            return Optional.empty();
        }
        Optional<Pairing> found = Optional.empty();
        double most = Place.HAND_BREADTH;
        for (Vector3D held : HELD) {
            Optional<Pairing> made = alone(whole, side, at(held, whole, side.other(), performer));
            double room = made.map(pairing -> room(pairing, side, performer)).orElse(0.0);
            if (room >= CLEAR) {
                return made;
            }
            if (room > most) {
                found = made;
                most = room;
            }
        }
        return found;
    }

    /** How near the hanging poi is to the other one, metres; 0 where a hand does not get there. */
    private static double room(Pairing pairing, Side moving, Performer performer) {
        Trace trace = Trace.of(pairing);
        return Reach.of(trace, performer).hand(moving.other()).everywhere()
                ? Room.of(trace, performer).tetherToTether().distance()
                : 0;
    }

    /** Whether a hand is still and its poi hangs straight down. */
    static boolean rests(Part part) {
        return part.motion().equals(Motion.staticSpin(0, Swing.DOWN));
    }

    private static Part at(Vector3D held, Pairing whole, Side side, Performer performer) {
        double tether = whole.part(side).tether().length();
        double height = Math.max(held.getY(), performer.ground() + tether + OFF_GROUND);
        Vector3D centre =
                new Vector3D(
                        side == Side.LEFT ? held.getX() : -held.getX(),
                        Math.ceil(height * 100 - 1e-9) / 100,
                        held.getZ());
        return new Part(
                Motion.staticSpin(0, Swing.DOWN),
                whole.part(side).tether(),
                new Place(Plane.WALL, PlaneTurn.NONE, centre),
                1);
    }

    private static Optional<Pairing> alone(Pairing whole, Side side, Part rest) {
        Part part = whole.part(side);
        Part once = new Part(part.motion(), part.tether(), part.place(), 1);
        Sense sense = whole.mirrored(side) ? Sense.COUNTER_CLOCKWISE : Sense.CLOCKWISE;
        try {
            Pairing untimed =
                    new Pairing(
                            side == Side.LEFT ? once : rest,
                            side == Side.RIGHT ? once : rest,
                            Timing.TOGETHER,
                            Direction.SAME,
                            sense,
                            OptionalDouble.empty(),
                            Facing.AUDIENCE);
            return Optional.of(timed(untimed, whole.period() / part.cycles()));
        } catch (Refusal impossible) {
            return Optional.empty();
        }
    }

    /** The same taking so many seconds, left unsaid where it takes them anyway. */
    private static Pairing timed(Pairing untimed, double period) {
        double tempo = untimed.tempo() * untimed.period() / period;
        return untimed.setsOwnTempo() || Math.abs(tempo - untimed.tempo()) < 1e-6
                ? untimed
                : untimed.withTempo(OptionalDouble.of(Math.rint(tempo * 1e6) / 1e6));
    }
}
