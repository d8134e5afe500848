package deferent.studio;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Size;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.pairing.Swing;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Tilt;
import deferent.motion.pairing.Turns;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A drag on the stage: which size of the pairing must change so that what was grabbed follows the
 * pointer. The pointer's place is dropped onto the motion's plane; lengths come out in whole
 * millimetres and angles in half degrees, so that a dragged pairing can still be said.
 *
 * @param side whose thing is grabbed; LEFT for both
 * @param part what of it
 * @param to where the pointer is, metres, in the frame
 * @param from where it took hold, if told
 * @param time the moment shown while dragging, seconds of the pairing as it is
 */
record Grab(Side side, Hold part, Vector3D to, Optional<Vector3D> from, double time) {
    /** What can be taken hold of. */
    enum Hold {
        CIRCLE,
        CENTRE,
        BOTH_CENTRES,
        POI,
        TETHER,
        TILT
    }

    /** Half a degree. */
    private static final double ANGLE = Math.toRadians(0.5);

    /** A flower's tilt moves its poi by several times its own angle, so it goes in finer steps. */
    private static final double FLOWER_TILT = Math.toRadians(0.1);

    /** A one-turn poi clings to the quarters of its turn within this, as hands do. */
    private static final double CLINGS = Math.toRadians(2.5);

    private static final double MILLIMETRE = 0.001;

    static Grab of(String key, Vector3D to, Optional<Vector3D> from, double time) {
        return switch (key) {
            case "left.circle" -> new Grab(Side.LEFT, Hold.CIRCLE, to, from, time);
            case "right.circle" -> new Grab(Side.RIGHT, Hold.CIRCLE, to, from, time);
            case "left.centre" -> new Grab(Side.LEFT, Hold.CENTRE, to, from, time);
            case "right.centre" -> new Grab(Side.RIGHT, Hold.CENTRE, to, from, time);
            case "both.centre" -> new Grab(Side.LEFT, Hold.BOTH_CENTRES, to, from, time);
            case "left.poi" -> new Grab(Side.LEFT, Hold.POI, to, from, time);
            case "right.poi" -> new Grab(Side.RIGHT, Hold.POI, to, from, time);
            case "left.tether" -> new Grab(Side.LEFT, Hold.TETHER, to, from, time);
            case "right.tether" -> new Grab(Side.RIGHT, Hold.TETHER, to, from, time);
            case "left.tilt" -> new Grab(Side.LEFT, Hold.TILT, to, from, time);
            case "right.tilt" -> new Grab(Side.RIGHT, Hold.TILT, to, from, time);
            default ->
                    throw new Refusal(
                            "is nothing to hold",
                            "\"" + key + "\"",
                            "grab one of left.circle, left.centre, both.centre, left.poi,"
                                    + " left.tether, left.tilt, or the right's");
        };
    }

    Pairing applied(Pairing pairing) {
        return switch (part) {
            case CIRCLE -> circle(pairing);
            case CENTRE -> moved(pairing, side, shift(pairing));
            case BOTH_CENTRES ->
                    moved(moved(pairing, Side.LEFT, shift(pairing)), Side.RIGHT, shift(pairing));
            case POI -> poi(pairing, false);
            case TETHER -> poi(pairing, true);
            case TILT -> tilt(pairing);
        };
    }

    private Pairing circle(Pairing pairing) {
        Size size = Size.of(side, Size.Kind.HAND_RADIUS);
        OptionalDouble now = size.read(pairing);
        if (now.isEmpty()) {
            throw new Refusal(
                    pairing.part(side).motion().riding()
                            ? "goes where the other head goes"
                            : "stays where it is",
                    side.word() + " hand",
                    "change the motion first; there is no hand circle to drag");
        }
        InPlane plane = InPlane.placed(pairing, side);
        Vector3D centre = pairing.part(side).place().centre();
        double reached = plane.length(to.subtract(centre));
        if (!round(pairing.part(side).motion())) {
            Vector3D held = from.orElseGet(() -> Trace.of(pairing).hand(side).at(time).position());
            double was = plane.length(held.subtract(centre));
            reached = was < MILLIMETRE ? now.getAsDouble() : now.getAsDouble() * reached / was;
        }
        return size.set(pairing, within(step(reached, MILLIMETRE), MILLIMETRE, 5));
    }

    private static boolean round(Motion motion) {
        return motion.path().arc().isPresent() || motion.path().circle().isPresent();
    }

    private Vector3D shift(Pairing pairing) {
        InPlane plane = InPlane.placed(pairing, side);
        Vector3D by = to.subtract(from.orElse(pairing.part(side).place().centre()));
        return new Vector3D(plane.along(by), plane.u(), plane.up(by), plane.v());
    }

    private static Pairing moved(Pairing pairing, Side side, Vector3D by) {
        Part part = pairing.part(side);
        Vector3D to = part.place().centre().add(by);
        Vector3D whole =
                new Vector3D(
                        within(step(to.getX(), MILLIMETRE), -10, 10),
                        within(step(to.getY(), MILLIMETRE), -10, 10),
                        within(step(to.getZ(), MILLIMETRE), -10, 10));
        return pairing.with(side, part.with(part.place().withCentre(whole)));
    }

    private Pairing poi(Pairing pairing, boolean tetherToo) {
        Part now = pairing.part(side);
        double phase = pairing.startPhase(side) + time / pairing.period() * now.cycles();
        InPlane plane = InPlane.ofPoi(pairing, side, phase);
        Vector3D hand = Trace.of(pairing).hand(side).at(time).position();
        Vector3D tether = to.subtract(hand);
        double length = plane.length(tether);
        if (length < MILLIMETRE) {
            return pairing;
        }
        Part changed =
                tetherToo ? now.with(Tether.of(within(step(length, MILLIMETRE), 0.01, 5))) : now;
        Motion motion = now.motion();
        return replaced(
                pairing, changed.with(motion.withSpin(spun(motion, phase, plane.angle(tether)))));
    }

    /** The spin law with its angle at {@code phase} brought to {@code wanted}. */
    private static SpinLaw spun(Motion motion, double phase, double wanted) {
        double by = wrapped(wanted - motion.spin().course().at(phase).value());
        return motion.spin()
                .match(
                        even -> new Turns(even.turns(), said(motion, even, even.start() + by)),
                        s -> s.from(step(wrapped(s.start() + by), ANGLE)),
                        swing ->
                                new Swing(
                                        amplitude(swing, phase, wrapped(wanted - swing.rest())),
                                        swing.rest()));
    }

    /** A start angle in steps that a phrase can carry: as a tilt where the figure has one. */
    private static double said(Motion motion, Turns even, double start) {
        double near = wrapped(start);
        if (even.turns() != 1 && Tilt.circlesFromZero(motion)) {
            double tilt = near / (1 - even.turns());
            return (1 - even.turns()) * step(tilt, FLOWER_TILT);
        }
        double quarter = step(near, Math.PI / 2);
        if (even.turns() == 1 && Math.abs(near - quarter) < CLINGS) {
            return wrapped(quarter);
        }
        return wrapped(step(near, ANGLE));
    }

    /**
     * The amplitude at which the pendulum stands {@code aside} from its rest at this phase of its
     * swing, by halving: at one phase the angle grows with the amplitude. Near the bottom, where it
     * tells nothing, the pointer's own angle is taken as the end of the swing.
     */
    private static double amplitude(Swing swing, double phase, double aside) {
        double most = Math.toRadians(179.5);
        double now = swing.course().at(phase).value() - swing.rest();
        double wanted = Math.abs(aside);
        if (Math.abs(now) > 0.3 * swing.amplitude() && now * aside > 0) {
            double low = ANGLE;
            double high = most;
            for (int i = 0; i < 40; i++) {
                double middle = (low + high) / 2;
                double angle = new Swing(middle, 0).course().at(phase).value();
                if (Math.abs(angle) < wanted) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            wanted = low;
        }
        return within(step(wanted, ANGLE), ANGLE, most);
    }

    /**
     * The pairing with this part. Two pendulums that nobody drives keep one time, so the other
     * follows in what sets it; and a tempo that was said only repeated theirs.
     */
    private Pairing replaced(Pairing pairing, Part changed) {
        if (!changed.motion().undriven()) {
            return pairing.with(side, changed);
        }
        Pairing free = pairing.withTempo(OptionalDouble.empty());
        Part other = free.part(side.other());
        if (other.motion().undriven()) {
            Swing swing = changed.motion().spin().swing().orElseThrow();
            double rest = other.motion().spin().swing().orElseThrow().rest();
            other =
                    other.with(changed.tether())
                            .with(other.motion().withSpin(new Swing(swing.amplitude(), rest)));
        }
        return new Pairing(
                side == Side.LEFT ? changed : other,
                side == Side.LEFT ? other : changed,
                free.timing(),
                free.direction(),
                free.sense(),
                free.tempoSaid(),
                free.facing());
    }

    private Pairing tilt(Pairing pairing) {
        Size size = Size.of(side, Size.Kind.TILT);
        if (size.read(pairing).isEmpty()) {
            throw new Refusal(
                    "has no tilt",
                    side.word() + " figure",
                    pairing.part(side).motion().undriven()
                            ? "turn another one; gravity says how a pendulum hangs"
                            : "turn another one; this figure looks the same however it is turned");
        }
        Place place = pairing.part(side).place();
        InPlane plane = InPlane.placed(pairing, side);
        double wanted = plane.angle(to.subtract(place.centre())) - Math.PI / 2;
        double same = sameAgain(pairing.part(side).motion());
        double near = wanted - same * Math.rint(wanted / same);
        return size.set(pairing, step(near, ANGLE));
    }

    /** The least turn after which a motion is itself again, timing included. */
    static double sameAgain(Motion motion) {
        return Tilt.circlesFromZero(motion) && motion.spin().turns() != 1
                ? 2 * Math.PI / Math.abs(1 - motion.spin().turns())
                : 2 * Math.PI;
    }

    /** The nearest whole multiple, without what binary fractions leave behind. */
    static double step(double value, double step) {
        double count = Math.rint(value / step);
        return step == MILLIMETRE ? count / 1000 : count * step + 0.0;
    }

    /** In (−π, π]. */
    static double wrapped(double angle) {
        double turns = Math.ceil(angle / (2 * Math.PI) - 0.5);
        return angle - 2 * Math.PI * turns;
    }

    private static double within(double value, double least, double most) {
        return Math.min(Math.max(value, least), most);
    }
}
