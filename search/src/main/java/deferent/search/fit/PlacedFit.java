package deferent.search.fit;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Size;
import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import deferent.reading.link.LinkReading;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Brings head and hand together at every instant in the carrier's plane, once the shapes agree:
 * first the timing by the lag, then the turn by the angle between the two paths, then the centre by
 * the mean offset, each left out where it is not free or not needed. Angle and offset are closed
 * forms, those of the least squares, which are exact where the gap closes; a lag that is no plain
 * fraction of the cycle comes from a search.
 */
final class PlacedFit {
    private final FitLink link;
    private final Limits limits;
    private final Set<Size> free;

    PlacedFit(FitLink link, Limits limits, Collection<Size> free) {
        this.link = link;
        this.limits = limits;
        this.free = Set.copyOf(free);
    }

    /** All that is worth trying from a trial whose shape gap is closed, itself first. */
    List<Trial> from(Trial shaped) {
        List<Trial> found = new ArrayList<>();
        for (Trial timed : timed(shaped)) {
            for (Trial turned : turned(timed)) {
                found.addAll(centred(turned));
            }
        }
        return found;
    }

    private List<Trial> timed(Trial trial) {
        List<Trial> found = new ArrayList<>(List.of(trial));
        Size timing = Size.of(Side.LEFT, Size.Kind.TIMING);
        if (free.contains(timing)) {
            LinkReading reading = link.certified(trial.pairing());
            Pairing pairing = trial.pairing();
            // The timing counts the right hand's own cycles, the lag the common ones.
            int way = link.carrier() == Side.LEFT ? 1 : -1;
            int cycles = pairing.right().cycles();
            for (double lag : new double[] {reading.unturnedLag(), reading.lag()}) {
                double ahead = pairing.timing().ahead() + way * lag * cycles;
                double turn = ahead - Math.floor(ahead);
                double value = snapped(turn);
                trial.with(timing, value, limits, plain(turn))
                        .filter(t -> t.changes().size() > trial.changes().size())
                        .filter(t -> !found.contains(t))
                        .ifPresent(found::add);
            }
        }
        return found;
    }

    // Lags are searched for; a plain fraction of a cycle that was meant comes out exact.
    private static double snapped(double cycles) {
        double whole = Math.rint(cycles * 720);
        double value = plain(cycles) ? whole / 720 : cycles;
        return value >= 1 ? 0 : value;
    }

    private static boolean plain(double cycles) {
        return Math.abs(cycles * 720 - Math.rint(cycles * 720)) < 1e-3;
    }

    private List<Trial> turned(Trial trial) {
        List<Trial> found = new ArrayList<>(List.of(trial));
        double angle = turn(trial.pairing());
        if (Math.abs(angle) < 1e-9) {
            return found;
        }
        for (Size size :
                List.of(
                        Size.of(link.carrier().other(), Size.Kind.TILT),
                        Size.of(link.carrier(), Size.Kind.TILT),
                        Size.of(link.carrier(), Size.Kind.START))) {
            if (free.contains(size) && size.read(trial.pairing()).isPresent()) {
                double now = size.read(trial.pairing()).getAsDouble();
                for (double by : new double[] {angle, -angle}) {
                    double value = Math.IEEEremainder(now + by, 2 * Math.PI);
                    trial.with(size, value, limits, true).ifPresent(found::add);
                }
            }
        }
        return found;
    }

    // By how much the hand's path must be turned in the carrier's plane to lie best on the head's,
    // each
    // about its mean.
    private double turn(Pairing pairing) {
        Samples samples = Trace.of(pairing).samples(120);
        double[] head = samples.head(link.carrier());
        double[] hand = samples.hand(link.carrier().other());
        Vector3D u = pairing.part(link.carrier()).place().plane().u();
        Vector3D v = pairing.part(link.carrier()).place().plane().v();
        Vector3D meanHead = mean(head);
        Vector3D meanHand = mean(hand);
        double cos = 0;
        double sin = 0;
        for (int i = 0; i < samples.count(); i++) {
            Vector3D p = Samples.point(head, i).subtract(meanHead);
            Vector3D h = Samples.point(hand, i).subtract(meanHand);
            cos += p.dotProduct(u) * h.dotProduct(u) + p.dotProduct(v) * h.dotProduct(v);
            sin += p.dotProduct(v) * h.dotProduct(u) - p.dotProduct(u) * h.dotProduct(v);
        }
        return Math.atan2(sin, cos);
    }

    private static Vector3D mean(double[] xyz) {
        Vector3D sum = Vector3D.ZERO;
        for (int i = 0; i < xyz.length / 3; i++) {
            sum = sum.add(Samples.point(xyz, i));
        }
        return sum.scalarMultiply(3.0 / xyz.length);
    }

    private List<Trial> centred(Trial trial) {
        List<Trial> found = new ArrayList<>(List.of(trial));
        Samples samples = Trace.of(trial.pairing()).samples(120);
        Vector3D offset =
                mean(samples.hand(link.carrier().other()))
                        .subtract(mean(samples.head(link.carrier())));
        Vector3D across = trial.pairing().part(link.carrier()).place().plane().normal();
        Vector3D inPlane = offset.subtract(offset.dotProduct(across), across);
        if (inPlane.getNorm() > 1e-9) {
            shifted(trial, link.carrier().other(), inPlane.negate()).ifPresent(found::add);
            shifted(trial, link.carrier(), inPlane).ifPresent(found::add);
        }
        return found;
    }

    private Optional<Trial> shifted(Trial trial, Side side, Vector3D by) {
        Vector3D centre = trial.pairing().part(side).place().centre();
        Optional<Trial> now = Optional.of(trial);
        Size.Kind[] kinds = {Size.Kind.CENTRE_X, Size.Kind.CENTRE_Y, Size.Kind.CENTRE_Z};
        double[] to = centre.add(by).toArray();
        for (int axis = 0; axis < 3; axis++) {
            if (Math.abs(by.toArray()[axis]) > 1e-9) {
                Size size = Size.of(side, kinds[axis]);
                double value = Math.rint(to[axis] * 1e12) / 1e12 + 0.0;
                now =
                        free.contains(size)
                                ? now.flatMap(t -> t.with(size, value, limits, true))
                                : Optional.empty();
            }
        }
        return now;
    }
}
