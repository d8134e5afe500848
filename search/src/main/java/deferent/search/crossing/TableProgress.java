package deferent.search.crossing;

/**
 * How far a table has come.
 *
 * @param done pairs of patterns compared, of {@code all}
 * @param all pairs of patterns
 * @param crossings crossings found so far
 */
public record TableProgress(long done, long all, int crossings) {}
