package deferent.motion.pairing;

import java.util.OptionalDouble;

/**
 * What a hand can do turn after turn, and what it may: the same for the figure it draws closest and
 * for the slips it corrects.
 *
 * <p>The usual ones are our choice: 5 m/s is about half of a trained boxer's single hardest punch
 * (Piorkowski, Lees and Barton 2011), 60 m/s² six times the quickening of a fall. Cyclic movements
 * of an elbow at full effort are all but harmonic, the slower the wider (Zawadzki and Siemieński,
 * Acta of Bioengineering and Biomechanics 12(2), 2010, abstract); a harmonic swing of 0.42 m each
 * way has both of these at once, twice a second.
 *
 * @param speed most, m/s
 * @param acceleration most, m/s²
 * @param jerk most, m/s³; empty for no limit
 * @param leastPull least pull on the cord, in head weights: below it a cord counts as slack
 * @param leave how far the hand may be from where its ideal is at the same instant, metres; empty
 *     for no limit
 */
public record HandLimits(
        double speed,
        double acceleration,
        OptionalDouble jerk,
        double leastPull,
        OptionalDouble leave) {
    /** No more is taken for a hand's speed, m/s. */
    public static final double FASTEST = 1000;

    /** No more is taken for its acceleration, m/s². */
    public static final double QUICKEST = 100_000;

    /** No more is taken for how far it may leave its path, metres. */
    public static final double FARTHEST = 10;

    /** Five metres a second and sixty a second squared, no less than a twentieth of the weight. */
    public static final HandLimits USUAL =
            new HandLimits(5, 60, OptionalDouble.empty(), 0.1, OptionalDouble.empty());

    public HandLimits {
        Refusal.positive(speed, FASTEST, "a hand's most speed", "m/s");
        Refusal.positive(acceleration, QUICKEST, "a hand's most acceleration", "m/s²");
        jerk.ifPresent(j -> Refusal.positive(j, 1e8, "a hand's most jerk", "m/s³"));
        Refusal.within(leastPull, 0, 1, "least pull", "head weights");
        leave.ifPresent(
                l -> Refusal.positive(l, FARTHEST, "how far a hand may leave its path", "m"));
    }

    /** Those with other bounds of speed, m/s, and acceleration, m/s². */
    public HandLimits withPace(double metresASecond, double metresASecondSquared) {
        return new HandLimits(metresASecond, metresASecondSquared, jerk, leastPull, leave);
    }

    /** Those with a bound of jerk, m/s³. */
    public HandLimits withJerk(double metresASecondCubed) {
        return new HandLimits(
                speed, acceleration, OptionalDouble.of(metresASecondCubed), leastPull, leave);
    }

    /** Those with a hand that stays so near its ideal, metres. */
    public HandLimits withLeave(double metres) {
        return new HandLimits(speed, acceleration, jerk, leastPull, OptionalDouble.of(metres));
    }
}
