package deferent.reading.body;

import deferent.motion.pairing.HandLimits;
import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.BodyAxis;
import deferent.motion.trace.Trace;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The body that spins: a stature, and an arm and a shoulder width where they were measured. Lengths
 * left unsaid are shares of stature after Drillis and Contini (1966), in Winter, Biomechanics and
 * Motor Control of Human Movement: upper arm 0.186, forearm 0.146, hand 0.108, half shoulder width
 * 0.129.
 *
 * <p>From memory, after the same drawing: shoulders at 0.818 of stature, chest at 0.720. The
 * frame's origin, the breastbone, is taken halfway between them, at 0.769, on the front of the
 * chest; the shoulder joints lie {@value #DEPTH} of stature behind it, about half a chest's depth.
 *
 * @param statureSaid metres, 1.0 to 2.5; empty for {@value #USUAL_STATURE}, assumed
 * @param armSaid shoulder joint to the middle of the closed fist, metres, 0.3 to 1.2
 * @param shoulderWidthSaid from joint to joint, metres, 0.2 to 0.8
 * @param hands what either hand can do turn after turn
 */
public record Performer(
        OptionalDouble statureSaid,
        OptionalDouble armSaid,
        OptionalDouble shoulderWidthSaid,
        HandLimits hands) {
    /** Metres; assumed where no stature is said. */
    public static final double USUAL_STATURE = 1.70;

    /** Of usual stature, nothing measured. */
    public static final Performer USUAL =
            new Performer(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());

    private static final double UPPER_ARM = 0.186;
    private static final double FOREARM = 0.146;
    private static final double HAND = 0.108;
    private static final double HALF_SHOULDERS = 0.129;
    private static final double SHOULDER_HEIGHT = 0.818;
    private static final double ORIGIN_HEIGHT = 0.769;
    static final double DEPTH = 0.06;

    // The fist closes round the handle about half a hand beyond the wrist (from memory).
    private static final double GRIP = HAND / 2;
    // An elbow bends 143 degrees from straight, a wrist 76 toward the palm, 75 back, 22 to the
    // thumb's
    // side and 36 to the other: means of 109 men, Boone and Azen (1979), in Norkin and White,
    // Measurement of Joint Motion, appendix, table A.1 (150, 80, 70, 20 and 30 after the American
    // Academy of Orthopaedic Surgeons). Toward the palm is what brings a fist to its own shoulder.
    private static final double ELBOW = Math.PI - Math.toRadians(143);
    private static final double WRIST = Math.toRadians(76);

    public Performer {
        statureSaid.ifPresent(s -> Refusal.within(s, 1.0, 2.5, "stature", "m"));
        armSaid.ifPresent(a -> Refusal.within(a, 0.3, 1.2, "arm", "m"));
        shoulderWidthSaid.ifPresent(w -> Refusal.within(w, 0.2, 0.8, "shoulder width", "m"));
    }

    /** With the usual hands. */
    public Performer(
            OptionalDouble statureSaid, OptionalDouble armSaid, OptionalDouble shoulderWidthSaid) {
        this(statureSaid, armSaid, shoulderWidthSaid, HandLimits.USUAL);
    }

    /** Of that stature, metres, nothing else measured. */
    public static Performer of(double stature) {
        return new Performer(
                OptionalDouble.of(stature), OptionalDouble.empty(), OptionalDouble.empty());
    }

    /** The same body with its arm measured: shoulder joint to the middle of the fist, metres. */
    public Performer withArm(double metres) {
        return new Performer(statureSaid, OptionalDouble.of(metres), shoulderWidthSaid, hands);
    }

    /** The same body with its shoulders measured, joint to joint, metres. */
    public Performer withShoulderWidth(double metres) {
        return new Performer(statureSaid, armSaid, OptionalDouble.of(metres), hands);
    }

    /** The same body with hands that can do so much. */
    public Performer withHands(HandLimits limits) {
        return new Performer(statureSaid, armSaid, shoulderWidthSaid, limits);
    }

    /** Metres. */
    public double stature() {
        return statureSaid.orElse(USUAL_STATURE);
    }

    /** Whether the stature is assumed rather than said. */
    public boolean assumed() {
        return statureSaid.isEmpty();
    }

    /** Shoulder to elbow, metres. */
    public double upperArm() {
        return arm() * UPPER_ARM / (UPPER_ARM + FOREARM + GRIP);
    }

    /** Elbow to grip, metres: the forearm and half the hand. */
    public double elbowToGrip() {
        return arm() - upperArm();
    }

    /** Elbow to wrist, metres. */
    public double forearm() {
        return arm() * FOREARM / (UPPER_ARM + FOREARM + GRIP);
    }

    /** The straight arm from shoulder joint to grip, metres: the farthest the hand can be. */
    public double arm() {
        return armSaid.orElse((UPPER_ARM + FOREARM + GRIP) * stature());
    }

    /**
     * From shoulder joint to grip with the elbow bent all the way and the wrist as far as it goes,
     * metres: the nearest.
     */
    public double bentArm() {
        double w = wristOff();
        double h = elbowToGrip() - forearm();
        return Math.sqrt(w * w + h * h - 2 * w * h * Math.cos(Math.max(0, toShoulder() - WRIST)));
    }

    /** With the elbow bent all the way and the wrist straight, metres. */
    private double bentElbow() {
        return third(upperArm(), elbowToGrip(), ELBOW);
    }

    /** From shoulder joint to wrist with the elbow bent all the way, metres. */
    private double wristOff() {
        return third(upperArm(), forearm(), ELBOW);
    }

    /** By what angle a straight wrist then points past the shoulder joint, radians. */
    private double toShoulder() {
        double a = upperArm();
        double f = forearm();
        double w = wristOff();
        return Math.PI - Math.acos((f * f + w * w - a * a) / (2 * f * w));
    }

    private static double third(double a, double b, double angle) {
        return Math.sqrt(a * a + b * b - 2 * a * b * Math.cos(angle));
    }

    /**
     * An arm folded so that its grip is at a distance from its shoulder joint, or as near to that
     * as it gets: along the line to the grip and across it, toward the elbow's side, metres.
     */
    record Fold(double elbow, double elbowOut, double wrist, double wristOut, double grip) {}

    /** The elbow bends first, and the wrist only where that is not enough. */
    Fold fold(double distance) {
        double a = upperArm();
        double b = elbowToGrip();
        double f = forearm();
        if (distance >= bentElbow()) {
            double d = Math.min(distance, a + b);
            double along = Math.min(a, (a * a - b * b + d * d) / (2 * d));
            double out = Math.sqrt(Math.max(0, a * a - along * along));
            double rest = 1 - f / b;
            return new Fold(along, out, d - rest * (d - along), rest * out, d);
        }
        double d = Math.max(distance, bentArm());
        double w = wristOff();
        double h = b - f;
        // In the arm's plane seen from the shoulder joint: elbow, then wrist, then grip, by angles.
        double atShoulder = Math.acos((a * a + w * w - f * f) / (2 * a * w));
        double past = Math.acos(Math.max(-1, Math.min(1, (d * d + w * w - h * h) / (2 * d * w))));
        double elbow = atShoulder + past;
        return new Fold(
                a * Math.cos(elbow),
                a * Math.sin(elbow),
                w * Math.cos(past),
                w * Math.sin(past),
                d);
    }

    /** What the body turns about: upright, midway between the shoulder joints. */
    public BodyAxis axis() {
        return new BodyAxis(DEPTH * stature());
    }

    /** A trace as this body has it, which may turn under it; itself where it does not turn. */
    public Trace around(Trace trace) {
        return trace.aroundBody(axis());
    }

    /** From shoulder joint to shoulder joint, metres. */
    public double shoulderWidth() {
        return shoulderWidthSaid.orElse(2 * HALF_SHOULDERS * stature());
    }

    /** A shoulder joint in the frame, metres. */
    public Vector3D shoulder(Side side) {
        double out = shoulderWidth() / 2;
        return new Vector3D(
                side == Side.LEFT ? out : -out, height(SHOULDER_HEIGHT), -DEPTH * stature());
    }

    /** Height over the breastbone of what stands at {@code share} of stature, metres. */
    double height(double share) {
        return (share - ORIGIN_HEIGHT) * stature();
    }

    /** The ground's y in the frame, metres: breastbone to the soles. */
    public double ground() {
        return height(0);
    }
}
