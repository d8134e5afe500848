package deferent.search.set;

import deferent.motion.pairing.Facing;
import deferent.motion.pairing.Jet;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.SmoothStep;

/**
 * A body turn as a set is played.
 *
 * <p>A quarter takes {@value #COUNTS} counts, or as many as give it {@value #LEAST} s (our choice):
 * a plane that turns at ω asks a force of up to 2mωv across the cord of a poi that runs at v, which
 * no cord gives. On one count a quarter that is more than the cord pulls, on two about half of it.
 * It takes less only where its pattern is not kept so long, and is done before its pattern is left.
 *
 * @param quarters quarter turns to the left; below 0 to the right
 * @param starts seconds from the set's start
 * @param seconds how long it takes
 * @param count on which count of its pattern it begins, sooner than asked where it would not be
 *     done else
 * @param counts how many counts it takes
 */
public record TurnMade(int quarters, double starts, double seconds, double count, double counts) {
    /** Seconds a quarter takes at least. */
    public static final double LEAST = 0.5;

    /** Counts a quarter takes at least. */
    public static final int COUNTS = 2;

    public TurnMade {
        Refusal.positive(seconds, 1e6, "how long a body turn takes", "s");
        Refusal.numbers("a body turn", starts, count, counts);
    }

    static TurnMade of(BodyTurn turn, Stay stay) {
        double count = stay.wanted().count();
        int quarters = Math.abs(turn.quarters());
        double counts = Math.max(COUNTS * quarters, Math.ceil(LEAST * quarters / count - 1e-9));
        double takes = Math.min(counts * count, stay.seconds());
        double after = Math.min((turn.count() - 1) * count, stay.seconds() - takes);
        return new TurnMade(
                turn.quarters(), stay.starts() + after, takes, 1 + after / count, takes / count);
    }

    /** When it is done, seconds from the set's start. */
    public double ends() {
        return starts + seconds;
    }

    /** How fast the body turns in the middle, radians a second. */
    public double fastest() {
        return Math.abs(angle()) * SmoothStep.slope(0.5) / seconds;
    }

    /** How far, radians, to the left above 0. */
    public double angle() {
        return Facing.QUARTER * quarters;
    }

    /** How much of it is done, radians with derivatives by seconds. */
    Jet at(double time) {
        return SmoothStep.share(Jet.line((time - starts) / seconds, 1 / seconds)).times(angle());
    }
}
