package deferent.reading.danger;

import deferent.reading.body.Performer;

/**
 * The force on a shoulder, newtons, at most: as if the cord and the arm's own mass drew the same
 * way at once.
 *
 * @param armMoved the mass that goes with the hand, kilograms
 */
public record ShoulderForce(double armMoved) {
    /**
     * The mass that goes with the hand when an arm swings about its shoulder: a whole arm's over
     * the body's, times its centre's distance from the shoulder over the arm's length, 0.050 and
     * 0.530 (Winter, Biomechanics and Motor Control of Human Movement, total arm; from memory). The
     * body's is 22 kg over each square metre of its stature, the middle of what is called normal
     * weight (from memory).
     */
    public static ShoulderForce of(Performer performer) {
        return new ShoulderForce(0.050 * 0.530 * 22 * performer.stature() * performer.stature());
    }

    /** The force for what the cord does to the hand, newtons, and how the hand quickens, m/s². */
    public double at(double handForce, double handAcceleration) {
        return handForce + armMoved * handAcceleration;
    }
}
