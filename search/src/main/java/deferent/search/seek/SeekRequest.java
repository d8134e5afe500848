package deferent.search.seek;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Tether;
import deferent.reading.body.Performer;
import java.util.List;

/**
 * What to seek.
 *
 * @param space among which motions
 * @param tether of both hands, or of the carrier where tethers are free
 * @param tethers one length, or as the link asks
 * @param tolerance greatest clock gap of a link, metres; exact links are found at any tolerance
 * @param filter which answers to keep
 * @param order which to tell first
 * @param performer who must reach them
 * @param shelf pairings that are known already
 * @param limit how many answers to tell
 * @param perFamily how many of them may differ in sizes alone
 */
public record SeekRequest(
        Space space,
        Tether tether,
        Tethers tethers,
        double tolerance,
        Filter filter,
        Order order,
        Performer performer,
        List<Pairing> shelf,
        int limit,
        int perFamily) {
    /** A centimetre, an eighth of a hand's breadth. */
    public static final double USUAL_TOLERANCE = 0.01;

    public SeekRequest {
        Refusal.within(tolerance, 0, 1, "tolerance of a link", "m");
        Refusal.within(limit, 1, 100_000, "answers", "answers");
        Refusal.within(perFamily, 1, 100_000, "answers a family", "answers");
        shelf = List.copyOf(shelf);
    }

    /**
     * All links among a space's motions, equal tethers of the usual length, simplest and closest
     * first.
     */
    public static SeekRequest of(Space space) {
        return new SeekRequest(
                space,
                Tether.USUAL,
                Tethers.EQUAL,
                USUAL_TOLERANCE,
                Filter.NONE,
                Order.CLOSEST,
                Performer.USUAL,
                List.of(),
                200,
                2);
    }

    /** Tolerance in the unit in which curves are compared: tethers, or shares of a path's size. */
    double nearness() {
        return Math.max(tolerance / tether.length(), HeadClasses.SAME);
    }

    public SeekRequest with(Tether other) {
        return new SeekRequest(
                space, other, tethers, tolerance, filter, order, performer, shelf, limit,
                perFamily);
    }

    public SeekRequest with(Tethers other) {
        return new SeekRequest(
                space, tether, other, tolerance, filter, order, performer, shelf, limit, perFamily);
    }

    public SeekRequest withTolerance(double metres) {
        return new SeekRequest(
                space, tether, tethers, metres, filter, order, performer, shelf, limit, perFamily);
    }

    public SeekRequest with(Filter other) {
        return new SeekRequest(
                space, tether, tethers, tolerance, other, order, performer, shelf, limit,
                perFamily);
    }

    public SeekRequest with(Order other) {
        return new SeekRequest(
                space, tether, tethers, tolerance, filter, other, performer, shelf, limit,
                perFamily);
    }

    public SeekRequest with(Performer other) {
        return new SeekRequest(
                space, tether, tethers, tolerance, filter, order, other, shelf, limit, perFamily);
    }

    public SeekRequest withShelf(List<Pairing> other) {
        return new SeekRequest(
                space, tether, tethers, tolerance, filter, order, performer, other, limit,
                perFamily);
    }

    public SeekRequest withLimit(int answers, int aFamily) {
        return new SeekRequest(
                space, tether, tethers, tolerance, filter, order, performer, shelf, answers,
                aFamily);
    }
}
