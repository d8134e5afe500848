package deferent.reading.body;

import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * What a body does beside turning its trunk where that alone falls short. In this order, each the
 * least that does, in whole centimetres and degrees: it brings both shoulders forward, raises them,
 * leans toward the audience, leans aside. Where all that one does is not enough it is kept if it
 * brings the hand that is worst off nearer, and the next is added. All is held over the whole
 * cycle: nobody bobs once a turn, and so no rate is asked of it. The trunk turns as {@link
 * TrunkTurn} has it, about its own leaning axis.
 *
 * <p>Seen from the leaning trunk it is the hands that are turned the other way, and so one search
 * for turns serves all. Likewise a shoulder joint that is forward by f at half a width w is one
 * that is √(w² + f²) out and turned by atan(f/w).
 *
 * <p>Ranges: a shoulder girdle comes forward by 15 to 30° and rises by 35 to 45° about the
 * breastbone's end of a collarbone of some 15 cm, Neumann, Kinesiology of the Musculoskeletal
 * System (from memory), which is 4 to 7 and some 10 cm; {@value #SHOULDERS} of stature either way,
 * 4 cm at 1.70 m, is our choice, as what is held. A trunk bends forward by 80° and to a side by
 * 35°, American Academy of Orthopaedic Surgeons (1965), in Norkin and White, Measurement of Joint
 * Motion (from memory); {@value #LEAN_DEG}° and {@value #ASIDE_DEG}° as what is held for long are
 * our choice.
 *
 * <p>Leans back are left out, and the body in the hands' way is read upright.
 *
 * @param posture what is held
 * @param trunk the turn that it takes with it
 */
public record Bend(Posture posture, TrunkTurn trunk) {
    private static final double SHOULDERS = 0.024;
    private static final int LEAN_DEG = 15;
    private static final int ASIDE_DEG = 10;

    // What brings the worst hand nearer by less than this is not done, metres (our choice).
    private static final double WORTH = 0.005;

    /** The least bend for a trace that turning alone does not reach, or the most that helps. */
    static Bend of(Trace trace, Samples samples, Performer performer, TrunkTurn turn) {
        Trial trial = new Trial(trace, samples, performer);
        int most = (int) Math.rint(SHOULDERS * performer.stature() * 100);
        int[] held = new int[Way.values().length];
        double shortBy = turn.tooFar();
        for (Way way : Way.values()) {
            if (way == Way.RIGHT && held[Way.LEFT.ordinal()] != 0) {
                break;
            }
            int[] tried = held.clone();
            tried[way.ordinal()] = way.most(most);
            double left = trial.tooFar(tried);
            if (left < WORTH && trial.reaches(tried)) {
                return trial.bend(least(trial, tried, way));
            }
            if (left < shortBy - WORTH) {
                held = tried;
                shortBy = left;
            }
        }
        return trial.bend(held);
    }

    private static int[] least(Trial trial, int[] most, Way way) {
        int no = 0;
        int yes = most[way.ordinal()];
        while (yes - no > 1) {
            int half = (no + yes) / 2;
            int[] tried = most.clone();
            tried[way.ordinal()] = half;
            if (trial.reaches(tried)) {
                yes = half;
            } else {
                no = half;
            }
        }
        int[] least = most.clone();
        least[way.ordinal()] = yes;
        return least;
    }

    /** What is tried, in this order. */
    private enum Way {
        FORWARD,
        RAISED,
        LEAN,
        LEFT,
        RIGHT;

        /** In centimetres of the shoulders or degrees of the trunk. */
        int most(int shoulders) {
            return switch (this) {
                case FORWARD, RAISED -> shoulders;
                case LEAN -> LEAN_DEG;
                case LEFT, RIGHT -> ASIDE_DEG;
            };
        }
    }

    /** How far both shoulder joints are brought forward, metres. */
    public double forward() {
        return posture.forward();
    }

    /** How far both are raised, metres. */
    public double raised() {
        return posture.raised();
    }

    /** How far the trunk leans toward the audience, radians. */
    public double lean() {
        return posture.lean();
    }

    /** How far it leans to the performer's left, radians; below 0 to the right. */
    public double aside() {
        return posture.aside();
    }

    /** Whether both hands get everywhere so. */
    public boolean reached() {
        return trunk.reached();
    }

    /** Bends of so many centimetres and degrees. */
    private record Trial(Trace trace, Samples samples, Performer performer) {
        static Posture posture(int[] held) {
            return new Posture(
                    held[Way.FORWARD.ordinal()] / 100.0,
                    held[Way.RAISED.ordinal()] / 100.0,
                    Math.toRadians(held[Way.LEAN.ordinal()]),
                    Math.toRadians(held[Way.LEFT.ordinal()] - held[Way.RIGHT.ordinal()]));
        }

        boolean reaches(int[] held) {
            Posture posture = posture(held);
            return TrunkTurn.reaches(
                    trace,
                    samples,
                    hands(samples, performer, posture, TrunkTurn.STRIDE),
                    broader(performer, posture),
                    TrunkTurn.MOST);
        }

        double tooFar(int[] held) {
            Posture posture = posture(held);
            return TrunkTurn.tooFar(
                    trace,
                    samples,
                    hands(samples, performer, posture, TrunkTurn.QUICK),
                    broader(performer, posture),
                    TrunkTurn.MOST);
        }

        Bend bend(int[] held) {
            Posture posture = posture(held);
            return new Bend(
                    posture,
                    TrunkTurn.of(
                            trace,
                            samples,
                            hands(samples, performer, posture, TrunkTurn.STRIDE),
                            broader(performer, posture),
                            TrunkTurn.MOST));
        }
    }

    /** The turn at every so manieth sample of a body that holds itself so, radians. */
    static double[] turns(
            Trace trace, Samples samples, Performer performer, Posture posture, int stride) {
        return TrunkTurn.turns(
                trace,
                samples,
                hands(samples, performer, posture, stride),
                broader(performer, posture),
                stride,
                TrunkTurn.MOST);
    }

    private static Performer broader(Performer performer, Posture posture) {
        return posture.forward() == 0
                ? performer
                : new Performer(
                        performer.statureSaid(),
                        performer.armSaid(),
                        OptionalDouble.of(
                                2 * Math.hypot(performer.shoulderWidth() / 2, posture.forward())),
                        performer.hands());
    }

    private static double[][] hands(
            Samples samples, Performer performer, Posture posture, int stride) {
        double[][] seen = new double[2][];
        for (Side side : Side.values()) {
            Vector3D joint = performer.shoulder(side);
            double back = joint.getZ();
            double ahead = posture.forward();
            double out = Math.sqrt(joint.getX() * joint.getX() + ahead * ahead);
            // The turn that brings a joint this far forward to straight out to its side.
            double c = Math.abs(joint.getX()) / out;
            double s = Math.copySign(posture.forward() / out, joint.getX());
            double[] hand = samples.hand(side);
            double[] from = new double[hand.length];
            Posture.Unleaning unleaning = posture.unleaning(performer);
            // Those between are not asked for.
            for (int i = 0; i < hand.length; i += 3 * stride) {
                unleaning.of(hand[i], hand[i + 1], hand[i + 2], from, i);
                double x = from[i];
                double z = from[i + 2] - back;
                from[i] = x * c + z * s;
                from[i + 1] -= posture.raised();
                from[i + 2] = back + z * c - x * s;
            }
            seen[side.ordinal()] = from;
        }
        return seen;
    }

    /** Where a shoulder joint is with the body bent and turned so, metres. */
    Vector3D shoulder(Performer performer, Side side, double turn) {
        return posture.placed(performer, posture.joint(performer, side), turn);
    }

    /**
     * The least bend; none where turning alone is enough, or where no bend brings a hand nearer.
     */
    static Optional<Bend> where(TrunkTurn turn, Trace trace, Samples samples, Performer performer) {
        return turn.reached()
                ? Optional.empty()
                : Optional.of(of(trace, samples, performer, turn))
                        .filter(bend -> !bend.posture.equals(Posture.UPRIGHT))
                        .filter(bend -> bend.trunk.tooFar() < turn.tooFar());
    }
}
