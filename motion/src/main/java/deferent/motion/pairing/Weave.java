package deferent.motion.pairing;

import deferent.motion.shared.Side;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * How a motion passes from one side of the body to the other and back, once a cycle, whatever hand
 * and poi do in its plane meanwhile: the plane with all in it is carried along one of the frame's
 * axes, about the motion's centre.
 *
 * <p>A cycle has {@code own + across} beats. It begins in the middle of the passage to the hand's
 * own side; {@code own} beats later stands the middle of the passage across. A passage takes one
 * beat, in which the plane goes as the polynomial of ninth degree that is flat to the fourth
 * derivative at both ends, 126x⁵ − 420x⁶ + 540x⁷ − 315x⁸ + 70x⁹: nine tenths of the way in the
 * middle half of that beat. So a place, and what hangs on its first four derivatives, is smooth.
 *
 * @param between which two sides
 * @param own whole beats of a cycle spent on the hand's own side, 1 to {@value #MOST_BEATS}
 * @param across whole beats on the other side, as many
 * @param out metres from the motion's centre to the plane on either side, 0 to 1
 */
public record Weave(Between between, int own, int across, double out) {
    /** The most beats on either side. */
    public static final int MOST_BEATS = 12;

    /** Two sides of the body, and the way from the one to the other. */
    public enum Between {
        /** Beside it: a hand's own side is the one that its arm is on. */
        LEFT_AND_RIGHT(Vector3D.PLUS_I, Plane.Kind.WHEEL),
        /** Before and behind it: a hand's own side is before. */
        BEFORE_AND_BEHIND(Vector3D.PLUS_K, Plane.Kind.WALL),
        /** Over and under: a hand's own side is above. */
        ABOVE_AND_BELOW(Vector3D.PLUS_J, Plane.Kind.FLOOR);

        private final Vector3D axis;
        private final Plane.Kind plane;

        Between(Vector3D axis, Plane.Kind plane) {
            this.axis = axis;
            this.plane = plane;
        }

        /** The plane that it is done in where none is said. */
        public Plane.Kind plane() {
            return plane;
        }

        /** Unit vector from the middle to a hand's own side, in the frame. */
        public Vector3D own(Side side) {
            return this == LEFT_AND_RIGHT && side == Side.RIGHT ? axis.negate() : axis;
        }
    }

    public Weave {
        Refusal.within(own, 1, MOST_BEATS, "beats on a weave's own side", "beats");
        Refusal.within(across, 1, MOST_BEATS, "beats on a weave's other side", "beats");
        Refusal.within(out, 0, 1, "way out to a weave's sides", "m");
    }

    /** Beats of a cycle. */
    public int beats() {
        return own + across;
    }

    /**
     * How far the plane is from the middle toward the hand's own side, metres, with its derivatives
     * in phase.
     *
     * @param phase of the motion, cycles
     */
    public Jet toOwn(double phase) {
        double beats = beats();
        double beat = beats * (phase - Math.floor(phase));
        double home = beat > beats - 0.5 ? beat - beats : beat;
        if (home < 0.5) {
            return step(home + 0.5, -out);
        }
        double away = beat - own;
        return away <= -0.5
                ? Jet.constant(out)
                : away >= 0.5 ? Jet.constant(-out) : step(away + 0.5, out);
    }

    // From there to as far on the other side.
    private Jet step(double x, double from) {
        return SmoothStep.share(Jet.line(x, beats())).times(-2 * from).plus(from);
    }

    /** The same, that far out, metres. */
    public Weave withOut(double other) {
        return new Weave(between, own, across, other);
    }

    /**
     * Whether a mirrored motion is turned over in its plane, so that up is down, and not round, so
     * that forward is back: a plane that is carried past the body from side to side keeps what it
     * does before the body before it.
     */
    public boolean mirrorsUp() {
        return between == Between.LEFT_AND_RIGHT;
    }
}
