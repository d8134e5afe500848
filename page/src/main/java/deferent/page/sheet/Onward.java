package deferent.page.sheet;

import deferent.search.crossing.Crossing;

/**
 * A crossing with another pattern, to be told on a sheet.
 *
 * @param from the name of the pattern that is left
 * @param to the name of the one that is entered
 * @param crossing the moment
 */
public record Onward(String from, String to, Crossing crossing) {}
