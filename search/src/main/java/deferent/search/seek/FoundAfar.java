package deferent.search.seek;

import java.util.List;
import java.util.Optional;

/**
 * The best link of a family that was found elsewhere, under keys that mean the same motions in
 * every space of the same grid.
 *
 * @param carrier key of the simplest motion to lead it
 * @param rider key of the simplest to follow
 * @param gap in tethers, or shares of the size where tethers are free
 * @param carriers how many motions may lead
 * @param riders how many may follow
 * @param family what stays when sizes change, by {@link #family(Space, long, long)}
 * @param sizes how many links are of this family
 * @param pairs of carrier and rider in all of them
 */
public record FoundAfar(
        long carrier,
        long rider,
        double gap,
        int carriers,
        int riders,
        String family,
        int sizes,
        long pairs) {

    /** The answer that it is to a request; empty where it passes no filter or no arms reach it. */
    public Optional<Answer> answer(SeekRequest request) {
        BothFigures seen = BothFigures.of(request.space(), carrier, rider);
        Filter filter = request.filter();
        if (filter.exactOnly() && gap > Answers.EXACT
                || seen.contrast() < filter.leastContrast()
                || seen.symmetry() < filter.leastSymmetry()) {
            return Optional.empty();
        }
        Linked link =
                new Linked(
                        0,
                        0,
                        carriers,
                        riders,
                        gap,
                        carrier,
                        rider,
                        seen,
                        new Family(family, sizes, pairs, List.of()));
        return new Judge(request).answer(link, filter.reachable());
    }

    /** The family of a pair. */
    public static String family(Space space, long carrier, long rider) {
        return Sight.family(space, carrier, rider);
    }

    /** The lower, the simpler to say. */
    public static int simplicity(Space space, long carrier, long rider) {
        return Sight.simplicity(space, carrier) + Sight.simplicity(space, rider);
    }

    /** The simplest motion whose hand goes that path, of equals the least key. */
    public static long simplest(Space space, int path) {
        return Sight.simplest(space, space.riders(path));
    }
}
