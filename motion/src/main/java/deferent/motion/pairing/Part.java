package deferent.motion.pairing;

import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * One hand's share of a pairing. A pendulum that nobody drives is swung by gravity alone: about
 * straight down, in an upright plane that keeps still.
 *
 * @param motion what hand and poi do over a cycle
 * @param tether hand to head
 * @param place plane and centre
 * @param cycles how many cycles of this motion fit in the pairing's common cycle, 1 to 24
 */
public record Part(Motion motion, Tether tether, Place place, int cycles) {
    /** Radians: what rounding leaves of a right angle counts as one. */
    private static final double RIGHT = 1e-6;

    public Part {
        Refusal.within(cycles, 1, 24, "cycles", "cycles");
        if (motion.weave().isPresent() && place.turn().turns() != 0) {
            throw new Refusal(
                    "goes round",
                    "turning plane of a weave",
                    "let it keep still, or keep to one side of the body");
        }
        if (motion.undriven()) {
            motion.spin().swing().ifPresent(swing -> hangs(swing, place));
        }
    }

    private static void hangs(Swing swing, Place place) {
        Plane plane = place.plane();
        double lean = Math.abs(Math.PI / 2 - Vector3D.angle(plane.normal(), Vector3D.PLUS_J));
        if (lean > RIGHT) {
            throw new Refusal(
                    lean > Math.PI / 2 - RIGHT
                            ? "is level"
                            : "leans " + degrees(lean) + " from upright",
                    "plane of a pendulum",
                    "give an upright one, wall or wheel: gravity swings a pendulum in no other");
        }
        if (place.turn().turns() != 0) {
            throw new Refusal(
                    "goes round",
                    "turning plane of a pendulum",
                    "let it keep still: nothing turns the plane of a swing that nobody drives");
        }
        double rest = swing.rest();
        Vector3D hangs = new Vector3D(Math.cos(rest), plane.u(), Math.sin(rest), plane.v());
        double off = Vector3D.angle(hangs, Vector3D.MINUS_J);
        if (off > RIGHT) {
            throw new Refusal(
                    "is " + degrees(off) + " off straight down",
                    "rest of a pendulum",
                    "leave it straight down, where gravity takes it, or let the hand drive the arc:"
                            + " a stall");
        }
    }

    private static String degrees(double radians) {
        return Plain.number(Math.toDegrees(radians), "°");
    }

    public Part with(Motion other) {
        return new Part(other, tether, place, cycles);
    }

    public Part with(Tether other) {
        return new Part(motion, other, place, cycles);
    }

    public Part with(Place other) {
        return new Part(motion, tether, other, cycles);
    }

    /**
     * How far at most easing takes the head from where the drawn ideal has it at the same instant,
     * metres; empty where nothing is eased. What a rider's carrier eases is not in it.
     */
    public OptionalDouble eased() {
        double angle = motion.spin().inStretches().map(Stretches::eased).orElse(0.0);
        return angle < 1e-9
                ? OptionalDouble.empty()
                : OptionalDouble.of(2 * tether.length() * Math.sin(Math.min(angle, Math.PI) / 2));
    }

    /** A still hand about which the poi goes; a rider's hand is not still. */
    public boolean still() {
        return motion.still();
    }
}
