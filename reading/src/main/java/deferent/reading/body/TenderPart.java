package deferent.reading.body;

/** Parts of the body that a blow harms most. */
public enum TenderPart {
    /** The face, and the skull behind it. */
    FACE,
    THROAT,
    GROIN
}
