package deferent.search.crossing;

/** What has to change at a crossing, least first. */
public enum Need {
    /** The old motion and the new go on alike over the time of the passage. */
    NOTHING,
    /** The hand takes another path; the poi goes on turning as it did. */
    HAND_PATH,
    /** The hand goes on as it did; the poi turns faster, slower or otherwise. */
    SPIN,
    /** The poi stands for an instant and then turns the other way. */
    SPIN_REVERSAL,
    /** Hand and poi both go on otherwise. */
    HAND_AND_SPIN,
    /** The whole goes on faster or slower. */
    TEMPO,
    /** The timing between the hands becomes another. */
    TIMING
}
