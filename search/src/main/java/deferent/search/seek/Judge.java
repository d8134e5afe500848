package deferent.search.seek;

import deferent.motion.pairing.Pairing;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.body.Reach;
import deferent.search.fit.ArmsFit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Places a link, makes it as small as arms reach where that is asked, and says what it is worth.
 */
final class Judge {
    /** Hands that fall short by less do get there, metres. */
    private static final double NOTHING = 1e-4;

    private final SeekRequest request;
    private final Staging staging;
    private final List<Portrait> shelf;

    Judge(SeekRequest request) {
        this.request = request;
        this.staging = new Staging(request.space(), request.tethers(), request.tether().length());
        this.shelf = request.shelf().stream().map(Portrait::of).toList();
    }

    /** A pairing as it is told, its size over that in which it was found, and its arms. */
    private record Sized(Pairing pairing, double scale, Reach reach) {}

    /** Empty where it is left out by the filter, or too large for the arms. */
    Optional<Answer> answer(Linked link, boolean reachable) {
        Pairing pairing = staging.pairing(link.carrier(), link.rider());
        Reach reach = reach(pairing, request.performer());
        // Tethers too short to spin are no answer; a few instants rule most of those out.
        Optional<Sized> sized =
                reachable && !reached(reach)
                        ? ArmsFit.within(pairing, request.performer(), ArmsFit.USUAL_SHORTEST)
                                .map(fit -> new Sized(fit.pairing(), fit.scale(), fit.reach()))
                        : Optional.of(new Sized(pairing, 1, reach));
        return sized.flatMap(s -> judged(link, s));
    }

    /** The same of a pairing that has its sizes already. */
    Optional<Answer> asSized(Linked link, Pairing pairing) {
        return judged(link, new Sized(pairing, 1, reach(pairing, request.performer())));
    }

    static Reach reach(Pairing pairing, Performer performer) {
        return Reach.of(Trace.of(pairing), performer);
    }

    static boolean reached(Reach reach) {
        return reach.worst() <= NOTHING;
    }

    private Optional<Answer> judged(Linked link, Sized sized) {
        Filter filter = request.filter();
        OptionalDouble toShelf = toShelf(Portrait.of(staging, link.carrier(), link.rider()));
        if (toShelf.orElse(Double.MAX_VALUE) > filter.nearShelf()
                || filter.newToShelf() && toShelf.orElse(1) < 1e-6) {
            return Optional.empty();
        }
        CordMerit corded =
                CordMerit.of(
                        Trace.of(sized.pairing),
                        request.order() == Order.SLOWEST || Double.isFinite(filter.slowest()),
                        request.order() == Order.STEADINESS
                                || Double.isFinite(filter.greatestGrowth()));
        if (corded.slowest().orElse(Double.MAX_VALUE) > filter.slowest()
                || corded.growth().orElse(Double.MAX_VALUE) > filter.greatestGrowth()) {
            return Optional.empty();
        }
        double unit =
                request.tethers() == Tethers.FREE
                        ? request.space().head(link.carrier()).size() * request.tether().length()
                        : request.tether().length();
        Saying said = Saying.of(sized.pairing);
        return Optional.of(
                new Answer(
                        link.headClass(),
                        link.handClass(),
                        link.carriers(),
                        link.riders(),
                        link.exact() ? 0 : link.gap() * unit * sized.scale,
                        link.exact(),
                        link.carrier(),
                        link.rider(),
                        sized.pairing,
                        said.text(),
                        said.phrase(),
                        Idea.of(sized.pairing),
                        link.family(),
                        Optional.empty(),
                        link.exact() || request.tethers() == Tethers.FREE
                                ? List.of()
                                : Closing.of(sized(sized.scale), link.carrier(), link.rider()),
                        new Merit(
                                link.seen().contrast(),
                                link.seen().symmetry(),
                                sized.reach.worst(),
                                corded.slowest(),
                                corded.growth(),
                                toShelf)));
    }

    private Staging sized(double scale) {
        return scale == 1
                ? staging
                : new Staging(request.space(), request.tethers(), staging.tether() * scale);
    }

    private OptionalDouble toShelf(Portrait portrait) {
        return shelf.stream().mapToDouble(portrait::distance).min();
    }
}
