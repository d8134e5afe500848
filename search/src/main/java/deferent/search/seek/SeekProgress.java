package deferent.search.seek;

/**
 * How far a seek has come.
 *
 * @param stage what is being done
 * @param done of {@code all}, in the stage's own counts
 * @param all motions (build, key) or head classes (join)
 * @param links class matches found so far
 */
public record SeekProgress(Stage stage, long done, long all, int links) {
    /** The slices of the work, in their order. */
    public enum Stage {
        BUILD,
        KEY,
        JOIN,
        DONE
    }
}
