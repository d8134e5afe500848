package deferent.search.fit;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Timing;
import deferent.motion.shared.Side;
import deferent.motion.trade.Seen;
import deferent.motion.trade.Trade;
import java.util.List;
import java.util.Optional;

/**
 * The same two motions with the rider's hand put on the carrier's head: what closes a link where no
 * size makes one path of the two. A motion that is called after its hand's path does not ride, nor
 * does a still hand: that path would be gone.
 */
final class Ridden {
    private Ridden() {}

    /**
     * The pairing so changed, together where its own timing leaves a gap; empty if that does too.
     */
    static Optional<Remedy> of(Pairing pairing, FitLink link) {
        Side rider = link.carrier().other();
        Part part = pairing.part(rider);
        if (pairing.rider().isPresent() || part.still()) {
            return Optional.empty();
        }
        Optional<Motion> rides = Trade.riding(Seen.of(pairing, rider));
        if (rides.isEmpty()) {
            return Optional.empty();
        }
        Pairing riding;
        try {
            riding = pairing.with(rider, part.with(rides.get()));
        } catch (Refusal impossible) {
            return Optional.empty();
        }
        for (Pairing timed : List.of(riding, riding.with(Timing.TOGETHER))) {
            double gap = link.inPlane(timed);
            if (gap < FitLink.CLOSED) {
                return Optional.of(
                        new Remedy(timed, List.of(), gap, true, FitLink.moved(pairing, timed)));
            }
        }
        return Optional.empty();
    }
}
