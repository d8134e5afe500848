package deferent.search.fit;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Riding;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.Timing;
import java.util.List;
import java.util.Optional;

/**
 * The same two motions with the rider's hand put on the carrier's head: what closes a link where no
 * size makes a circle of an arc.
 */
final class Ridden {
    private Ridden() {}

    /**
     * The pairing so changed, together where its own timing leaves a gap; empty if that does too.
     */
    static Optional<Remedy> of(Pairing pairing, FitLink link) {
        Side rider = link.carrier().other();
        Part part = pairing.part(rider);
        if (pairing.rider().isPresent()) {
            return Optional.empty();
        }
        Pairing riding;
        try {
            riding = pairing.with(rider, part.with(part.motion().withPath(new Riding())));
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
