package deferent.search.crossing;

import deferent.motion.pairing.Pairing;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * All crossings from one pairing to another.
 *
 * @param from the pairing that is left
 * @param to the pairing that is entered, as it was given
 * @param request what was asked
 * @param list in order of time in {@code from}'s cycle
 */
public record Crossings(Pairing from, Pairing to, CrossingRequest request, List<Crossing> list) {

    public Crossings {
        list = List.copyOf(list);
    }

    /** With the usual tolerances, the second as it stands. */
    public static Crossings between(Pairing from, Pairing to) {
        return between(from, to, CrossingRequest.USUAL);
    }

    /** Every moment of the one that can become a moment of the other. */
    public static Crossings between(Pairing from, Pairing to, CrossingRequest request) {
        List<Crossing> all = new ArrayList<>();
        States left = States.of(from);
        add(left, States.of(to), request, false, all);
        if (request.freedom().mirror()) {
            add(left, States.of(Adjustment.mirror(to)), request, true, all);
        }
        all.sort(
                Comparator.comparingDouble(Crossing::fromTime)
                        .thenComparing(c -> c.adjustment().mirrored())
                        .thenComparingDouble(Crossing::toTime));
        return new Crossings(from, to, request, all);
    }

    private static void add(
            States from, States to, CrossingRequest request, boolean mirrored, List<Crossing> all) {
        for (Meeting meeting : CrossingSearch.of(from, to, request)) {
            all.add(Crossing.of(from, to, meeting, request, mirrored));
        }
        if (request.freedom().timing()) {
            for (Meeting meeting : TimingSearch.of(from, to, request)) {
                all.add(Crossing.of(from, to, meeting, request, mirrored));
            }
        }
    }

    /** Smoothest first. */
    public List<Crossing> smoothestFirst() {
        return list.stream()
                .sorted(Comparator.comparingDouble(c -> c.roughness().weights()))
                .toList();
    }

    public Optional<Crossing> smoothest() {
        return list.stream().min(Comparator.comparingDouble(c -> c.roughness().weights()));
    }

    /**
     * The moment at which two pairings come nearest to a crossing, in tolerances, whether or not
     * that is within them: what they miss by. A change of timing is not tried.
     */
    public static Crossing nearest(Pairing from, Pairing to, CrossingRequest request) {
        Freedom freedom = request.freedom();
        CrossingRequest asked = request.with(freedom.withTiming(false));
        States one = States.of(from);
        States other = States.of(to);
        Meeting straight = CrossingSearch.nearest(one, other, asked);
        if (freedom.mirror()) {
            States mirrored = States.of(Adjustment.mirror(to));
            Meeting turned = CrossingSearch.nearest(one, mirrored, asked);
            if (turned.worst() < straight.worst()) {
                return Crossing.of(one, mirrored, turned, asked, true);
            }
        }
        return Crossing.of(one, other, straight, asked, false);
    }
}
