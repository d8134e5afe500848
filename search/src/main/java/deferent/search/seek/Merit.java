package deferent.search.seek;

import java.util.OptionalDouble;

/**
 * What an answer's representative is ranked and filtered by.
 *
 * @param contrast the larger figure's outer radius over the smaller's, 1 or more
 * @param symmetry greatest order of turning symmetry that both figures share, 0 where both are
 *     circles
 * @param missing length by which the hands fail to reach with the trunk turned at best, metres, 0
 *     where they get everywhere
 * @param slowest the slowest tempo, hand cycles a minute; empty where it was not asked or there is
 *     none
 * @param growth how many times as far aside a slip has put the head after a reaction time, at the
 *     worst; empty likewise
 * @param toShelf distance to the nearest pattern of the shelf, metres; empty without a shelf
 */
public record Merit(
        double contrast,
        int symmetry,
        double missing,
        OptionalDouble slowest,
        OptionalDouble growth,
        OptionalDouble toShelf) {}
