package deferent.search.fit;

import deferent.motion.pairing.Arc;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Size;
import deferent.motion.pairing.Swing;
import deferent.motion.pairing.Turns;
import deferent.motion.shared.Side;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.hipparchus.complex.Complex;

/**
 * Head and hand paths as Fourier terms, and the sizes at which their radii agree.
 *
 * <p>As figures two series are the same when, each index divided by the common divisor of its side
 * (a path gone round several times is the same path), the radii agree term by term, index by index
 * or index by minus index (gone round the other way). With one or two terms that is enough, since a
 * turn and another start bring any phases together; with more the phases count too, and the reading
 * decides. Each agreement, and each cancelling of a term that the other side lacks (B = 0), is one
 * equation for a size: |p + L·e^{iφ}| = B for the tether, where p is the hand path's own term that
 * turns with the poi; xρ = B or |xρ·e^{iθ} + L·e^{iφ}| = B for the hand radius. A pendulum about a
 * still hand and a hand swept along an arc agree when both radius and sweep do.
 */
final class Terms {
    private static final double SAME = 1e-9;

    private final Pairing pairing;
    private final Side carrier;
    private final Part lead;
    private final Part follow;

    private Terms(Pairing pairing, Side carrier) {
        this.pairing = pairing;
        this.carrier = carrier;
        this.lead = pairing.part(carrier);
        this.follow = pairing.part(carrier.other());
    }

    static Terms of(Pairing pairing, Side carrier) {
        return new Terms(pairing, carrier);
    }

    /** Whether head and hand have a closed form that can be compared. */
    boolean known() {
        return arcs()
                || (series(lead) && lead.motion().spin().even().isPresent() && series(follow));
    }

    private static boolean series(Part part) {
        return part.motion().path().asTerms().isPresent() && inOnePlane(part);
    }

    private boolean arcs() {
        return lead.motion().undriven()
                && follow.motion().path().arc().isPresent()
                && inOnePlane(lead)
                && inOnePlane(follow);
    }

    /** Whether the plane of a hand's motion keeps where it is. */
    static boolean inOnePlane(Part part) {
        return part.place().turn().turns() == 0 && part.motion().weave().isEmpty();
    }

    /** The head's terms by index, in the carrier's own phase; those that cancel are left out. */
    Map<Integer, Complex> head() {
        Map<Integer, Complex> terms = hand(lead);
        Optional<Turns> even = lead.motion().spin().even().filter(e -> e.turns() != 0);
        if (even.isPresent()) {
            Complex poi = polar(lead.tether().length(), even.get().start());
            Complex sum = terms.getOrDefault(even.get().turns(), Complex.ZERO).add(poi);
            terms.put(even.get().turns(), sum);
            if (sum.norm() < SAME) {
                terms.remove(even.get().turns());
            }
        }
        return terms;
    }

    /** A hand path's terms by index. */
    static Map<Integer, Complex> hand(Part part) {
        Map<Integer, Complex> terms = new TreeMap<>();
        for (Series.Term term : part.motion().path().asTerms().orElse(List.of())) {
            terms.put(term.k(), polar(term.radius(), term.angle()));
        }
        return terms;
    }

    private static Complex polar(double radius, double angle) {
        return new Complex(radius * Math.cos(angle), radius * Math.sin(angle));
    }

    /** Whether the radii agree one way round or the other. */
    boolean agree() {
        if (arcs()) {
            Arc arc = follow.motion().path().arc().orElseThrow();
            Swing swing = lead.motion().spin().swing().orElseThrow();
            return Math.abs(arc.radius() - lead.tether().length()) < SAME
                    && Math.abs(arc.halfSweep() - swing.amplitude()) < SAME;
        }
        Map<Integer, Complex> head = reduced(head());
        Map<Integer, Complex> hand = reduced(hand(follow));
        for (int way : new int[] {1, -1}) {
            double apart = Math.abs(head.size() - hand.size());
            for (Map.Entry<Integer, Complex> term : head.entrySet()) {
                Complex other = hand.getOrDefault(way * term.getKey(), Complex.ZERO);
                apart = Math.max(apart, Math.abs(term.getValue().norm() - other.norm()));
            }
            if (apart < SAME) {
                return true;
            }
        }
        return false;
    }

    private static Map<Integer, Complex> reduced(Map<Integer, Complex> terms) {
        int divisor = divisor(terms);
        Map<Integer, Complex> out = new TreeMap<>();
        terms.forEach((k, a) -> out.put(k / divisor, a));
        return out;
    }

    private static int divisor(Map<Integer, Complex> terms) {
        int divisor = 0;
        for (int k : terms.keySet()) {
            int a = Math.abs(k);
            while (a != 0) {
                int rest = divisor % a;
                divisor = a;
                a = rest;
            }
        }
        return Math.max(divisor, 1);
    }

    /** Values of a size at which at least one term agrees with its counterpart. */
    List<Double> candidates(Size size) {
        List<Double> found = new ArrayList<>();
        if (arcs()) {
            Arc arc = follow.motion().path().arc().orElseThrow();
            if (size.equals(Size.of(carrier, Size.Kind.TETHER))) {
                found.add(arc.radius());
            } else if (size.equals(Size.of(carrier, Size.Kind.AMPLITUDE))) {
                found.add(arc.halfSweep());
            } else if (size.equals(Size.of(carrier.other(), Size.Kind.HAND_RADIUS))) {
                found.add(lead.tether().length());
            }
            return found;
        }
        if (!known() || size.read(pairing).isEmpty()) {
            return found;
        }
        Map<Integer, Complex> head = head();
        Map<Integer, Complex> hand = hand(follow);
        Set<Integer> turning = new TreeSet<>(hand(lead).keySet());
        turning.add(lead.motion().spin().turns());
        turning.remove(0);
        int headOnce = head.isEmpty() ? 1 : divisor(head);
        int handOnce = divisor(hand);
        for (int way : new int[] {1, -1}) {
            if (size.kind() == Size.Kind.HAND_RADIUS && size.side() != carrier) {
                double radius = follow.motion().path().radius();
                hand.forEach(
                        (k, own) -> {
                            Complex other = head.get(way * k / handOnce * headOnce);
                            if (other != null) {
                                found.add(radius * other.norm() / own.norm());
                            }
                        });
            } else if (size.side() == carrier) {
                for (int k : turning) {
                    Complex other = hand.get(way * k / headOnce * handOnce);
                    if (k % headOnce == 0 && other != null) {
                        ofCarrier(size.kind(), k, other.norm(), found);
                    }
                }
                if (head.size() > hand.size()) {
                    ofCarrier(size.kind(), lead.motion().spin().turns(), 0, found);
                }
            }
        }
        return found.stream().distinct().toList();
    }

    private void ofCarrier(Size.Kind kind, int k, double wanted, List<Double> found) {
        Turns even = lead.motion().spin().even().orElseThrow();
        double tether = lead.tether().length();
        Complex own = hand(lead).getOrDefault(k, Complex.ZERO);
        boolean withPoi = k == even.turns();
        double between = own.getArgument() - even.start();
        switch (kind) {
            case TETHER -> {
                if (withPoi) {
                    reach(
                            own.norm() * Math.cos(between),
                            own.norm() * Math.sin(between),
                            wanted,
                            found);
                }
            }
            case HAND_RADIUS -> {
                double radius = lead.motion().path().radius();
                if (own.norm() > 0 && !withPoi) {
                    found.add(radius * wanted / own.norm());
                } else if (own.norm() > 0) {
                    List<Double> term = new ArrayList<>();
                    reach(tether * Math.cos(between), tether * Math.sin(between), wanted, term);
                    term.forEach(x -> found.add(radius * x / own.norm()));
                }
            }
            case START -> {
                if (withPoi && own.norm() > 0) {
                    double cos =
                            (wanted * wanted - own.norm() * own.norm() - tether * tether)
                                    / (2 * own.norm() * tether);
                    if (Math.abs(cos) <= 1 + SAME) {
                        double turned = Math.acos(Math.max(-1, Math.min(1, cos)));
                        found.add(own.getArgument() + turned);
                        found.add(own.getArgument() - turned);
                    }
                }
            }
            default -> {
                // Places, tilts and times change no radius.
            }
        }
    }

    // Lengths x > 0 with |(along + x) + i·across| = wanted.
    private static void reach(double along, double across, double wanted, List<Double> found) {
        double rest = wanted * wanted - across * across;
        if (rest < -SAME * SAME) {
            return;
        }
        for (double sign : new double[] {1, -1}) {
            double x = sign * Math.sqrt(Math.max(rest, 0)) - along;
            if (x > SAME) {
                found.add(x);
            }
        }
    }
}
