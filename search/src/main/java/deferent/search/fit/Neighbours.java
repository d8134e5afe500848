package deferent.search.fit;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Size;
import deferent.motion.pairing.Turns;
import deferent.motion.shared.Side;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Which motions a circling hand with an evenly turning poi falls into as hand circle R or tether L
 * changes, from head(s) = R·e^{2πis} + L·e^{i(2πns+φ)}:
 *
 * <ul>
 *   <li>n = −1: semi-axes R + L and |R − L|, a line at R = L (common practice, no source)
 *   <li>n = 1 with the tether pointing inward: head circle |R − L|, a point at R = L
 *   <li>any n: the hand strays R from a still one's place, so it reads as a static spin as R
 *       shrinks
 *   <li>|n| ≥ 2: the head's velocity is 2πi(R·e^{2πis} + nL·e^{i(2πns+φ)}), which comes to nothing
 *       only at R = |n|L: cusps (Lawrence, A Catalog of Special Plane Curves, 1972: deltoid n = −2,
 *       astroid n = −3, cardioid n = 2, nephroid n = 3)
 * </ul>
 */
public final class Neighbours {
    private static final double INWARD = 1e-6;

    /** So near, a motion is what it would fall into, metres. */
    private static final double IS_ONE = 1e-3;

    private Neighbours() {}

    /** Of one side's motion, nearest first; empty for motions of other kinds. */
    public static List<Neighbour> of(Pairing pairing, Side side) {
        Motion motion = pairing.part(side).motion();
        Optional<Turns> even = motion.spin().even().filter(e -> e.turns() != 0);
        Optional<Series.Term> once = motion.path().circle().filter(c -> Math.abs(c.k()) == 1);
        if (even.isEmpty() || once.isEmpty()) {
            return List.of();
        }
        Series.Term circle = once.get();
        int n = circle.k() * even.get().turns();
        double radius = circle.radius();
        double tether = pairing.part(side).tether().length();
        Size hand = Size.of(side, Size.Kind.HAND_RADIUS);
        Size cord = Size.of(side, Size.Kind.TETHER);
        List<Neighbour> found = new ArrayList<>();
        boolean inward = Math.cos(even.get().start() - circle.angle()) < INWARD - 1;
        if (n == -1 || (n == 1 && inward)) {
            Neighbour.Into into =
                    n == 1 ? Neighbour.Into.STILL_HEAD : Neighbour.Into.LINEAR_EXTENSION;
            found.add(of(into, hand, radius, tether, Math.abs(radius - tether)));
            found.add(of(into, cord, tether, radius, Math.abs(radius - tether)));
        }
        if (Math.abs(n) >= 2) {
            double pointed = Math.abs(n) * tether;
            found.add(
                    of(
                            Neighbour.Into.POINTED_PETALS,
                            hand,
                            radius,
                            pointed,
                            Math.abs(radius - pointed)));
            double shorter = radius / Math.abs(n);
            found.add(
                    of(
                            Neighbour.Into.POINTED_PETALS,
                            cord,
                            tether,
                            shorter,
                            Math.abs(tether - shorter)));
        }
        found.add(of(Neighbour.Into.STATIC_SPIN, hand, radius, 0, radius));
        found.removeIf(near -> near.strays() < IS_ONE);
        found.sort(Comparator.comparingDouble(Neighbour::strays));
        return List.copyOf(found);
    }

    private static Neighbour of(
            Neighbour.Into into, Size size, double now, double at, double strays) {
        return new Neighbour(into, size, now, at, strays, strays <= Place.HAND_BREADTH + 1e-12);
    }
}
