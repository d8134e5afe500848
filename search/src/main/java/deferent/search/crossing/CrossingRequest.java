package deferent.search.crossing;

import deferent.motion.pairing.Place;
import deferent.motion.pairing.Refusal;

/**
 * What counts as a crossing. A state is within tolerance when each compared point, hand or head, is
 * within {@code place} of its counterpart and its velocity within {@code speed} of its
 * counterpart's.
 *
 * @param place metres, above 0
 * @param speed metres a second, above 0; infinite to compare places alone
 * @param who which hands
 * @param compared which points of them
 * @param freedom what may be done to the second pairing
 * @param blend over which time a passage takes up what differs, seconds
 */
public record CrossingRequest(
        double place, double speed, Who who, Compared compared, Freedom freedom, double blend) {
    /**
     * A hand's breadth; a metre a second, about a quarter of a static spin's head speed at a beat a
     * second; and a quarter of a second (our own choices).
     */
    public static final CrossingRequest USUAL =
            new CrossingRequest(
                    Place.HAND_BREADTH,
                    1.0,
                    Who.BOTH,
                    Compared.HANDS_AND_HEADS,
                    Freedom.NONE,
                    0.25);

    public CrossingRequest {
        Refusal.positive(place, 10, "tolerance of place", "m");
        if (!(speed > 0)) {
            throw new Refusal("is " + speed + " m/s", "tolerance of speed", "give more than 0 m/s");
        }
        Refusal.within(blend, 0.01, 10, "time of a passage", "s");
        if (who != Who.BOTH && freedom.timing()) {
            throw new Refusal(
                    "is asked for one hand",
                    "change of timing",
                    "compare both hands, or leave their timing alone");
        }
    }

    public CrossingRequest withTolerance(double metres, double metresASecond) {
        return new CrossingRequest(metres, metresASecond, who, compared, freedom, blend);
    }

    public CrossingRequest with(Who other) {
        return new CrossingRequest(place, speed, other, compared, freedom, blend);
    }

    public CrossingRequest with(Compared other) {
        return new CrossingRequest(place, speed, who, other, freedom, blend);
    }

    public CrossingRequest with(Freedom other) {
        return new CrossingRequest(place, speed, who, compared, other, blend);
    }

    public CrossingRequest withBlend(double seconds) {
        return new CrossingRequest(place, speed, who, compared, freedom, seconds);
    }

    boolean compares(int point) {
        boolean head = point >= 2;
        boolean right = point % 2 == 1;
        return (head || compared == Compared.HANDS_AND_HEADS)
                && (right ? who != Who.LEFT : who != Who.RIGHT);
    }

    /** The same, comparing one hand that may cross over at a time of its own. */
    CrossingRequest alone(Who one) {
        return new CrossingRequest(place, speed, one, compared, freedom.withTiming(false), blend);
    }
}
