package deferent.search.path;

/**
 * One drill on one day.
 *
 * @param number place of the drill in the path, from 0
 * @param minutes how long
 * @param review whether it was known before and is kept so; else it is being learnt
 */
public record Sitting(int number, int minutes, boolean review) {}
