package deferent.search.fit;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Size;
import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import deferent.reading.link.LinkReading;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** The link whose gaps a fit measures, and the pairings it tries. One for one thread. */
final class FitLink {
    /** Below this a gap counts as closed, metres. */
    static final double CLOSED = 1e-3;

    private final Side carrier;

    /** What takes long and is asked for again of the same pairing. */
    private final Map<Pairing, LinkReading> certified = new HashMap<>();

    FitLink(Side carrier) {
        this.carrier = carrier;
    }

    /**
     * @param now the certified reading of a pairing's link
     */
    FitLink(Pairing pairing, LinkReading now) {
        this(now.carrier());
        certified.put(pairing, now);
    }

    Side carrier() {
        return carrier;
    }

    double estimate(Pairing pairing) {
        return LinkReading.quickShapeGap(Trace.of(pairing), carrier);
    }

    double refined(Pairing pairing) {
        return LinkReading.refinedShapeGap(Trace.of(pairing), carrier);
    }

    LinkReading certified(Pairing pairing) {
        return certified.computeIfAbsent(pairing, p -> LinkReading.of(Trace.of(p), carrier));
    }

    LinkReading quick(Pairing pairing) {
        return LinkReading.quick(Trace.of(pairing), carrier);
    }

    /** Greatest distance at one instant in the carrier's plane, metres, as a link is read. */
    double inPlane(Pairing pairing) {
        return inPlane(pairing, Trace.of(pairing).samples());
    }

    /** The same over {@code count} even times. */
    double inPlane(Pairing pairing, int count) {
        return inPlane(pairing, Trace.of(pairing).samples(count));
    }

    private double inPlane(Pairing pairing, Samples samples) {
        double[] head = samples.head(carrier);
        double[] hand = samples.hand(carrier.other());
        Vector3D across = pairing.part(carrier).place().plane().normal();
        double most = 0;
        for (int i = 0; i < samples.count(); i++) {
            Vector3D apart = Samples.point(hand, i).subtract(Samples.point(head, i));
            double deep = apart.dotProduct(across);
            // Squares of the whole and the depth would leave a root of their rounding.
            most = Math.max(most, apart.subtract(deep, across).getNorm());
        }
        return most;
    }

    /**
     * The pairing with a size set, its tempo left unsaid where a pendulum that nobody drives then
     * sets another; empty where it cannot be.
     */
    static Optional<Pairing> set(Pairing pairing, Size size, double value) {
        Pairing open = pairing.setsOwnTempo() ? pairing.withTempo(OptionalDouble.empty()) : pairing;
        try {
            return size.read(open).isPresent() && Double.isFinite(value)
                    ? Optional.of(size.set(open, value))
                    : Optional.empty();
        } catch (Refusal impossible) {
            return Optional.empty();
        }
    }

    /** How far the hand or head that moves most is from where it was in the same timing, metres. */
    static double moved(Pairing from, Pairing to) {
        Samples a = Trace.of(from).samples(90);
        Samples b = Trace.of(to.with(from.timing())).samples(90);
        double most = 0;
        for (Side side : Side.values()) {
            for (int i = 0; i < 90; i++) {
                most =
                        Math.max(
                                most,
                                Math.max(
                                        Samples.point(a.hand(side), i)
                                                .distance(Samples.point(b.hand(side), i)),
                                        Samples.point(a.head(side), i)
                                                .distance(Samples.point(b.head(side), i))));
            }
        }
        return most;
    }
}
