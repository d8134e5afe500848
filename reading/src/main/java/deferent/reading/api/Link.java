package deferent.reading.api;

import deferent.motion.api.TwoPoi;
import deferent.motion.api.opened.Opened;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.link.LinkReading;
import deferent.reading.shared.LinkKind;
import deferent.reading.worked.Worked;

/**
 * Whether one poi's head traces the path of the other hand.
 *
 * @param carrier whose head leads; it is the other hand that rides
 * @param kind what holds head and hand together, within a hand's breadth (8 cm)
 * @param apart how far they are apart as placed, at most over the cycle, seen in the carrier's
 *     plane, metres
 * @param across the same across that plane, metres; hands work in planes side by side
 * @param atBest how far the two paths are apart if turned, shifted and mirrored best, metres
 * @param atBestError how far {@code atBest} may be wrong, metres
 * @param lag by how much of the cycle the hand trails the head where they are nearest, from −0.5 to
 *     below 0.5
 */
public record Link(
        Side carrier,
        LinkKind kind,
        double apart,
        double across,
        double atBest,
        double atBestError,
        double lag) {
    /**
     * Reads a link.
     *
     * @param pairing what is spun
     * @param carrier whose head leads
     * @return the link of that head with the other hand
     * @throws deferent.motion.shared.Refused where its numbers come to no end
     */
    public static Link of(TwoPoi pairing, Side carrier) {
        LinkReading read =
                Worked.orRefusal(
                        "the numbers of the link",
                        () -> LinkReading.of(Trace.of(Opened.pairing(pairing)), carrier));
        return new Link(
                carrier,
                read.kind(),
                read.inPlaneGap(),
                read.depthGap(),
                read.shapeGap(),
                read.shapeGapError(),
                read.lag());
    }

    /**
     * Whether they link.
     *
     * @return false for {@link LinkKind#NONE} alone
     */
    public boolean links() {
        return kind != LinkKind.NONE;
    }
}
