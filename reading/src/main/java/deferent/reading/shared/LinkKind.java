package deferent.reading.shared;

/** What holds the carrier's head and the rider's hand together, judged as placed. */
public enum LinkKind {
    /** The hand stays within tolerance of the head, seen in the carrier's plane. */
    TOUCHING,
    /** The vector from head to hand stays the same. */
    CARRIED,
    /** Touching or carried once the hand's lag is taken out. */
    FOLLOWED,
    /** Head and hand go along the same figure at a constant distance, as if a rod joined them. */
    ROD,
    /** None of these. */
    NONE;

    /**
     * Lower case, as documents and readings spell it.
     *
     * @return such as "touching"
     */
    public String word() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }
}
