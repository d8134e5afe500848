package deferent.motion.pairing;

/**
 * A plane that turns as the cycle goes on (toroids): {@code turns} whole turns a cycle about an
 * axis of the plane through the centre. Positive turns are right-handed about v (upright) or u
 * (level): the wall plane's u goes from the performer's left away from the audience, its v from up
 * toward the audience.
 *
 * @param turns whole turns a cycle, −12 to 12; 0 for a plane that keeps still
 * @param axis which of the plane's own axes it turns about
 * @param carries the whole figure, or the poi alone while the hand keeps to its plane
 */
public record PlaneTurn(int turns, Axis axis, Carries carries) {
    public static final PlaneTurn NONE = new PlaneTurn(0, Axis.UPRIGHT, Carries.FIGURE);

    /** The plane's v or its u. */
    public enum Axis {
        UPRIGHT,
        LEVEL
    }

    /** What turns with the plane. */
    public enum Carries {
        FIGURE,
        POI
    }

    public PlaneTurn {
        Refusal.within(turns, -12, 12, "plane turns a cycle", "turns");
    }
}
