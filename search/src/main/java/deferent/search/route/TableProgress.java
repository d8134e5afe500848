package deferent.search.route;

/**
 * How far a table has come.
 *
 * @param done pairs of patterns compared, of {@code all}; there and back are two
 * @param all pairs of patterns
 * @param leading how many of those compared have a transition
 */
public record TableProgress(int done, int all, int leading) {}
