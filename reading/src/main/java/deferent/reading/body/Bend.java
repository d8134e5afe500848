package deferent.reading.body;

import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * What a body does beside turning its trunk where that alone falls short: it brings both shoulders
 * forward, and where that falls short too, it leans toward the audience. Of either the least that
 * does is taken, in whole centimetres and degrees, and held over the whole cycle: nobody bobs once
 * a turn, and so no rate is asked of it. The trunk turns as {@link TrunkTurn} has it, about its own
 * leaning axis.
 *
 * <p>A lean is about the level axis through the hips, 0.530 of stature up. Seen from the leaning
 * trunk it is the hands that are turned the other way, and so one search for turns serves both.
 * Likewise a shoulder joint that is forward by f at half a width w is one that is √(w² + f²) out
 * and turned by atan(f/w).
 *
 * <p>Ranges: a shoulder girdle comes forward by 15 to 30° about the breastbone's end of a
 * collarbone of some 15 cm, Neumann, Kinesiology of the Musculoskeletal System (from memory), which
 * is 4 to 7 cm; {@value #FORWARD} of stature, 4 cm at 1.70 m, is our choice. A trunk bends forward
 * by 80°, American Academy of Orthopaedic Surgeons (1965), in Norkin and White, Measurement of
 * Joint Motion (from memory); {@value #LEAN_DEG}° as what is held for long is our choice.
 *
 * <p>Leans to a side or back, shoulders that rise, elbows and wrists beyond the arm's two segments
 * are left out, and the body in the hands' way is read upright.
 *
 * @param forward how far both shoulder joints are brought forward, metres
 * @param lean how far the trunk leans toward the audience, radians
 * @param trunk the turn that it takes with these
 */
public record Bend(double forward, double lean, TrunkTurn trunk) {
    private static final double FORWARD = 0.024;
    private static final double LEAN_DEG = 15;
    private static final double HIPS = 0.530;

    public Bend {
        Refusal.numbers("the body's bend", forward, lean);
    }

    /** The least bend for a trace that turning alone does not reach, or the most there is. */
    static Bend of(Trace trace, Samples samples, Performer performer) {
        Trial trial = new Trial(trace, samples, performer);
        int most = (int) Math.rint(FORWARD * performer.stature() * 100);
        int steepest = (int) LEAN_DEG;
        if (!trial.reaches(most, steepest)) {
            return trial.bend(most, steepest);
        }
        if (trial.reaches(most, 0)) {
            int least = 1;
            while (least < most && !trial.reaches(least, 0)) {
                least++;
            }
            return trial.bend(least, 0);
        }
        int no = 0;
        int yes = steepest;
        while (yes - no > 1) {
            int half = (no + yes) / 2;
            if (trial.reaches(most, half)) {
                yes = half;
            } else {
                no = half;
            }
        }
        return trial.bend(most, yes);
    }

    /** Whether both hands get everywhere so. */
    public boolean reached() {
        return trunk.reached();
    }

    /** Bends of so many centimetres and degrees. */
    private record Trial(Trace trace, Samples samples, Performer performer) {
        boolean reaches(int centimetres, int degrees) {
            double forward = centimetres / 100.0;
            return TrunkTurn.reaches(
                    trace,
                    samples,
                    hands(forward, Math.toRadians(degrees)),
                    broader(forward),
                    TrunkTurn.MOST);
        }

        Bend bend(int centimetres, int degrees) {
            double forward = centimetres / 100.0;
            double lean = Math.toRadians(degrees);
            return new Bend(
                    forward,
                    lean,
                    TrunkTurn.of(
                            trace,
                            samples,
                            hands(forward, lean),
                            broader(forward),
                            TrunkTurn.MOST));
        }

        private Performer broader(double forward) {
            return new Performer(
                    performer.statureSaid(),
                    performer.armSaid(),
                    OptionalDouble.of(2 * Math.hypot(performer.shoulderWidth() / 2, forward)),
                    performer.hands());
        }

        private double[][] hands(double forward, double lean) {
            double[][] seen = new double[2][];
            for (Side side : Side.values()) {
                Vector3D joint = performer.shoulder(side);
                double hips = performer.height(HIPS);
                double back = joint.getZ();
                double out = Math.hypot(joint.getX(), forward);
                // The turn that brings a joint this far forward to straight out to its side.
                double c = Math.abs(joint.getX()) / out;
                double s = Math.copySign(forward / out, joint.getX());
                double cl = Math.cos(lean);
                double sl = Math.sin(lean);
                double[] hand = samples.hand(side);
                double[] from = new double[hand.length];
                // Those between are not asked for.
                for (int i = 0; i < hand.length; i += 3 * TrunkTurn.STRIDE) {
                    double up = hand[i + 1] - hips;
                    double ahead = hand[i + 2] - back;
                    double z = ahead * cl - up * sl;
                    from[i] = hand[i] * c + z * s;
                    from[i + 1] = hips + up * cl + ahead * sl;
                    from[i + 2] = back + z * c - hand[i] * s;
                }
                seen[side.ordinal()] = from;
            }
            return seen;
        }
    }

    /** Where a shoulder joint is with the body bent and turned so, metres. */
    Vector3D shoulder(Performer performer, Side side, double turn) {
        Vector3D rest = performer.shoulder(side);
        double x = rest.getX() * Math.cos(turn) + forward * Math.sin(turn);
        double z = forward * Math.cos(turn) - rest.getX() * Math.sin(turn);
        double up = rest.getY() - performer.height(HIPS);
        return new Vector3D(
                x,
                performer.height(HIPS) + up * Math.cos(lean) - z * Math.sin(lean),
                rest.getZ() + up * Math.sin(lean) + z * Math.cos(lean));
    }

    /**
     * The least bend; none where turning alone is enough, or where no bend brings a hand nearer.
     */
    static Optional<Bend> where(TrunkTurn turn, Trace trace, Samples samples, Performer performer) {
        return turn.reached()
                ? Optional.empty()
                : Optional.of(of(trace, samples, performer))
                        .filter(bend -> bend.trunk.tooFar() < turn.tooFar());
    }
}
