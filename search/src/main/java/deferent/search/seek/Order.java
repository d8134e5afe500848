package deferent.search.seek;

/**
 * Which answers are told first; equals by gap, then the simpler motions first.
 *
 * <p>Orders that need a trace are worked out for the closest and simplest answers alone, as many as
 * are asked for times 5 (reach, new) or times 2 (slowest, steadiness).
 */
public enum Order {
    /**
     * What a person would try: what links exactly, folded into ideas, each in sizes that can be
     * learnt.
     */
    TRY,
    /** Exactly linked first, then by clock gap. */
    CLOSEST,
    /**
     * What the performer reaches best: by the length that is missing, then by the longest tethers.
     */
    REACH,
    /** Slowest tempo at which both cords stay taut with the figure kept, lowest first. */
    SLOWEST,
    /** How little a small slip grows in a reaction time, least first. */
    STEADINESS,
    /** Most symmetrical figures first. */
    SYMMETRY,
    /** A large and a small figure use more of the stage: greatest ratio of outer radii first. */
    CONTRAST,
    /** Nearest to a pattern of the shelf first. */
    NEAR_SHELF,
    /** Furthest from everything on the shelf first. */
    NEW
}
