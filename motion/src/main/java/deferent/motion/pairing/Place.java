package deferent.motion.pairing;

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

    // Heights above the breastbone and depths before it, metres, of weaves (our choice, for 1.70
    // m):
    // 14 cm over the crown, and level with the chin; either hand a fist and a half to
    // its
    // own side.
    private static final double OVER_HEAD = 0.62;
    private static final double AT_CHIN = 0.22;
    private static final double BODY = -0.10;
    private static final double AT_ARMS_LENGTH = 0.50;
    private static final double WOVEN = 0.34;

    /** Breadths of a hand between the fists of arms that cross. */
    private static final double CROSSED = 1.5;

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
                    // To the micrometre, so that 0.34 is the number nearest 0.34.
                    case WALL -> new Vector3D(0, 0, Math.rint((IN_FRONT + half) * 1e6) / 1e6);
                    case WHEEL -> new Vector3D(half, 0, IN_FRONT);
                    case FLOOR -> new Vector3D(0, half, IN_FRONT);
                };
        return new Place(plane, PlaneTurn.NONE, centre);
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
        double half = side == Side.LEFT ? HAND_BREADTH / 2 : -HAND_BREADTH / 2;
        Vector3D centre =
                switch (motion.weave().get().between()) {
                    case LEFT_AND_RIGHT ->
                            new Vector3D(0, motion.path().still() ? CROSSED * half : 0, WOVEN);
                    case BEFORE_AND_BEHIND -> new Vector3D(4 * half, OVER_HEAD, BODY);
                    case ABOVE_AND_BELOW -> new Vector3D(4 * half, AT_CHIN, AT_ARMS_LENGTH);
                };
        return new Place(plane, PlaneTurn.NONE, settled(centre));
    }

    // To the micrometre, so that 0.34 is the number nearest 0.34.
    private static Vector3D settled(Vector3D p) {
        return new Vector3D(
                Math.rint(p.getX() * 1e6) / 1e6,
                Math.rint(p.getY() * 1e6) / 1e6,
                Math.rint(p.getZ() * 1e6) / 1e6);
    }

    public Place withCentre(Vector3D other) {
        return new Place(plane, turn, other);
    }

    public Place withTurn(PlaneTurn other) {
        return new Place(plane, other, centre);
    }
}
