package deferent.record;

import deferent.motion.pairing.Pairing;
import deferent.motion.trace.Counts;
import deferent.search.route.Route;
import deferent.search.route.RouteFound;
import deferent.search.set.Joint;
import deferent.search.set.PairBook;
import deferent.search.set.Wanted;
import deferent.search.transition.Grade;
import deferent.search.transition.Transition;
import deferent.tell.TellRoute;
import deferent.tell.Told;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/**
 * A route over a shelf, and how it is played: as a set that keeps each pattern for a cycle or two.
 *
 * @param from what it starts with
 * @param to where it is to lead
 * @param shelf the patterns that it may go through, with its start and its goal
 * @param found what the search found
 * @param set the route as a set; empty where no route was found
 */
public record RouteReading(
        SetPlaces.Place from,
        SetPlaces.Place to,
        List<SetPlaces.Place> shelf,
        RouteFound found,
        Optional<SetReading> set) {
    // A transition can leave at one moment of a cycle: asked for so many, each is kept for one to
    // two.
    private static final double CYCLES = 1.5;

    public RouteReading {
        shelf = List.copyOf(shelf);
    }

    /**
     * Works out how a route is played.
     *
     * @param from where it starts, by its place on the shelf
     * @param to where it is to lead, likewise
     * @param book who spins it with what, as it was searched with
     * @param stop asked between what takes long; stopped, the route is told without a set
     */
    public static RouteReading of(
            List<SetPlaces.Place> shelf,
            int from,
            int to,
            RouteFound found,
            PairBook book,
            BooleanSupplier stop) {
        return new RouteReading(
                shelf.get(from),
                shelf.get(to),
                shelf,
                found,
                found.route()
                        .flatMap(
                                route ->
                                        SetReading.of(
                                                shelf.get(from).name()
                                                        + " to "
                                                        + shelf.get(to).name(),
                                                places(shelf, route),
                                                book,
                                                false,
                                                at -> {},
                                                stop)));
    }

    private static List<SetPlaces.Place> places(List<SetPlaces.Place> shelf, Route route) {
        return route.patterns().stream()
                .map(shelf::get)
                .map(place -> place.kept(counts(place.pattern().orElseThrow().pairing())))
                .toList();
    }

    /** Counts that a pattern of a route is asked for. */
    static int counts(Pairing pairing) {
        return (int) Math.min(Wanted.MOST_COUNTS, Math.ceil(CYCLES * Counts.aCycle(pairing)));
    }

    /** The route in a sentence, or that there is none, and whether the search ran to its end. */
    public List<Told> told() {
        List<Grade> grades =
                set.stream()
                        .flatMap(reading -> reading.plan().joints().stream())
                        .map(Joint::transition)
                        .flatMap(Optional::stream)
                        .map(Transition::grade)
                        .toList();
        return TellRoute.of(found, from.name(), to.name(), i -> shelf.get(i).name(), grades);
    }
}
