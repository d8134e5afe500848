package deferent.motion.pairing;

import deferent.motion.shared.Side;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Where a motion is put: its plane, how that turns, and its centre in the frame, metres.
 *
 * <p>By default both hands share one centre at breastbone height, {@link #IN_FRONT} before the
 * body, in planes a hand's breadth apart, the left hand's nearer the audience (wall), further left
 * (wheel) or higher (floor).
 */
public record Place(Plane plane, PlaneTurn turn, Vector3D centre) {
    /**
     * A hand's breadth, metres: 0.08, about the breadth of an adult hand at the knuckles (from
     * memory).
     */
    public static final double HAND_BREADTH = 0.08;

    /**
     * How far before the breastbone the common centre lies, metres: a bent arm's reach (common
     * practice, no source).
     */
    public static final double IN_FRONT = 0.30;

    // Where weaves have their middle, metres above the breastbone and before it. All are our
    // choice,
    // tried out until a body of 1.70 m gets past cords and arms: 14 cm over the crown in the plane
    // of
    // the body, level with the chin at arm's length, and low before the breastbone.
    private static final double OVER_HEAD = 0.62;
    private static final double IN_THE_BODY = -0.10;
    private static final double AT_CHIN = 0.22;
    private static final double AT_ARMS_LENGTH = 0.50;
    private static final double WOVEN_AT = -0.06;
    private static final double WOVEN_BEFORE = 0.14;

    /** How far either hand keeps to its own side where both pass over the head or before it. */
    private static final double ASIDE = 0.16;

    /** Between the fists of arms that cross. */
    private static final double CROSSED = 0.17;

    public Place {
        Refusal.within(centre.getX(), -10, 10, "centre x", "m");
        Refusal.within(centre.getY(), -10, 10, "centre y", "m");
        Refusal.within(centre.getZ(), -10, 10, "centre z", "m");
    }

    /** The default place of a hand whose motion lies in {@code plane}. */
    public static Place usual(Side side, Plane plane) {
        double half = side == Side.LEFT ? HAND_BREADTH / 2 : -HAND_BREADTH / 2;
        Vector3D centre =
                switch (plane.kind()) {
                    case WALL -> new Vector3D(0, 0, IN_FRONT + half);
                    case WHEEL -> new Vector3D(half, 0, IN_FRONT);
                    case FLOOR -> new Vector3D(0, half, IN_FRONT);
                };
        return new Place(plane, PlaneTurn.NONE, centre).settled();
    }

    /**
     * The default place of that motion: of one that passes from side to side in the middle between
     * them, before the body, at its own height through the head, or before it; of others as above.
     * Where hands cross and neither goes round the other, the left one is the higher.
     */
    public static Place usual(Side side, Plane plane, Motion motion) {
        if (motion.weave().isEmpty()) {
            return usual(side, plane);
        }
        double left = side == Side.LEFT ? 1 : -1;
        Vector3D centre =
                switch (motion.weave().get().between()) {
                    case LEFT_AND_RIGHT ->
                            new Vector3D(
                                    0,
                                    WOVEN_AT + (motion.path().still() ? left * CROSSED / 2 : 0),
                                    WOVEN_BEFORE);
                    case BEFORE_AND_BEHIND -> new Vector3D(left * ASIDE, OVER_HEAD, IN_THE_BODY);
                    case ABOVE_AND_BELOW -> new Vector3D(left * ASIDE, AT_CHIN, AT_ARMS_LENGTH);
                };
        return new Place(plane, PlaneTurn.NONE, centre).settled();
    }

    /** With its centre to the micrometre, so that 0.34 is the number nearest 0.34. */
    public Place settled() {
        return withCentre(
                new Vector3D(
                        Math.rint(centre.getX() * 1e6) / 1e6,
                        Math.rint(centre.getY() * 1e6) / 1e6,
                        Math.rint(centre.getZ() * 1e6) / 1e6));
    }

    public Place withCentre(Vector3D other) {
        return new Place(plane, turn, other);
    }

    public Place withTurn(PlaneTurn other) {
        return new Place(plane, other, centre);
    }
}
