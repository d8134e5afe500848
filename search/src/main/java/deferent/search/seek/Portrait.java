package deferent.search.seek;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A pairing as four descriptors in metres: each hand's path and each head's. Two portraits are as
 * far apart as their descriptors, carrier with carrier or carrier with rider, whichever is nearer;
 * so it does not matter how a pairing is placed, timed, mirrored or which hand does what.
 */
record Portrait(
        double[] carrierHand, double[] carrierHead, double[] riderHand, double[] riderHead) {
    private static final int SAMPLES = 720;

    static Portrait of(Pairing pairing) {
        Trace trace = Trace.of(pairing);
        return new Portrait(
                Descriptor.of(hand(trace, Side.LEFT)),
                Descriptor.of(head(trace, Side.LEFT)),
                Descriptor.of(hand(trace, Side.RIGHT)),
                Descriptor.of(head(trace, Side.RIGHT)));
    }

    static Portrait of(Staging staging, long carrier, long rider) {
        Space space = staging.space();
        double ratio =
                staging.tethers() == Tethers.FREE
                        ? space.head(carrier).size() / space.hand(space.path(rider)).size()
                        : 1;
        double other = staging.tether() * ratio;
        return new Portrait(
                Descriptor.of(space.hand(space.path(carrier)).scaled(staging.tether())),
                Descriptor.of(space.head(carrier).scaled(staging.tether())),
                Descriptor.of(space.hand(space.path(rider)).scaled(other)),
                Descriptor.of(space.head(rider).scaled(other)));
    }

    /** The path of a hand in its own plane, metres. */
    static SeriesCurve hand(Trace trace, Side side) {
        return sampled(trace, side, trace.samples(SAMPLES).hand(side));
    }

    /** The path of a head in its own plane, metres. */
    static SeriesCurve head(Trace trace, Side side) {
        return sampled(trace, side, trace.samples(SAMPLES).head(side));
    }

    private static SeriesCurve sampled(Trace trace, Side side, double[] xyz) {
        Part part = trace.pairing().part(side);
        Vector3D u = part.place().plane().u();
        Vector3D v = part.place().plane().v();
        double[] along = new double[SAMPLES];
        double[] up = new double[SAMPLES];
        for (int i = 0; i < SAMPLES; i++) {
            Vector3D p = new Vector3D(xyz[3 * i], xyz[3 * i + 1], xyz[3 * i + 2]);
            along[i] = p.dotProduct(u);
            up[i] = p.dotProduct(v);
        }
        return SeriesCurve.ofSamples(along, up);
    }

    double distance(Portrait other) {
        return Math.min(apart(other), apart(other.swapped()));
    }

    /** The same with the hands' parts taken the other way round. */
    Portrait swapped() {
        return new Portrait(riderHand, riderHead, carrierHand, carrierHead);
    }

    double carrierApart(Portrait o) {
        return Math.hypot(
                Descriptor.distance(carrierHand, o.carrierHand),
                Descriptor.distance(carrierHead, o.carrierHead));
    }

    double riderApart(Portrait o) {
        return Math.hypot(
                Descriptor.distance(riderHand, o.riderHand),
                Descriptor.distance(riderHead, o.riderHead));
    }

    private double apart(Portrait o) {
        return Math.hypot(carrierApart(o), riderApart(o)) / 2;
    }
}
