package deferent.search.fit;

import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Turns;
import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import deferent.reading.link.LinkReading;
import deferent.reading.link.PathKind;
import java.util.Map;
import java.util.Optional;
import org.hipparchus.complex.Complex;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** An obstacle with its two numbers. */
record Why(Obstacle obstacle, double have, double need) {
    static final Why NOT = new Why(Obstacle.NONE, 0, 0);
    private static final double SAME = 1e-9;

    /**
     * What in the two figures' very kinds keeps any size from closing the shape gap, or an
     * extension's hand radius.
     */
    static Why ofFigures(Pairing pairing, Side carrier, LinkReading link) {
        Part lead = pairing.part(carrier);
        Part follow = pairing.part(carrier.other());
        if (follow.still() && link.headRadius() > FitLink.CLOSED) {
            return new Why(Obstacle.HAND_STANDS_STILL, link.headRadius(), 0);
        }
        if (link.headRadius() < SAME && link.handRadius() > FitLink.CLOSED) {
            return new Why(Obstacle.HEAD_STANDS_STILL, 0, link.handRadius());
        }
        Map<Integer, Complex> hand = Terms.hand(follow);
        if (lead.motion().undriven() && hand.size() == 1) {
            return ofKinds(pairing, carrier);
        }
        Optional<Turns> even = lead.motion().spin().even();
        if (even.isEmpty()
                || lead.motion().path().asTerms().isEmpty()
                || !Terms.inOnePlane(lead)
                || !Terms.inOnePlane(follow)) {
            return NOT;
        }
        Map<Integer, Complex> head = Terms.of(pairing, carrier).head();
        HandPath path = follow.motion().path();
        if (head.size() == 1 && path.arc().isPresent()) {
            return ofKinds(pairing, carrier);
        }
        if (path.asTerms().isEmpty()) {
            return NOT;
        }
        Map<Integer, Complex> own = Terms.hand(lead);
        // A poi as long as one of its hand's circles and opposite to it cancels that circle.
        boolean cancels = own.size() == 2 && own.containsKey(even.get().turns());
        if ((head.size() == 2 && hand.size() == 1 && !cancels)
                || (head.size() == 1 && hand.size() == 2)) {
            return ofKinds(pairing, carrier);
        }
        if (hand.size() == 1 && own.size() == 1 && own.containsKey(even.get().turns())) {
            double outward =
                    Math.cos(own.get(even.get().turns()).getArgument() - even.get().start());
            double circle = hand.values().iterator().next().norm();
            if (outward > 1 - SAME && circle <= lead.tether().length() + SAME) {
                return new Why(
                        Obstacle.HEAD_CIRCLE_NEVER_SMALLER_THAN_TETHER,
                        lead.tether().length(),
                        circle);
            }
        }
        return NOT;
    }

    /** Whether a search may still close the gap: the others are no question of size. */
    boolean hopeful() {
        return obstacle == Obstacle.NONE
                || obstacle == Obstacle.HEAD_CIRCLE_NEVER_SMALLER_THAN_TETHER;
    }

    /** How the two paths differ, as they stand. */
    static Why ofKinds(Pairing pairing, Side carrier) {
        Samples samples = Trace.of(pairing).samples();
        PathKind head = PathKind.of(samples.head(carrier));
        PathKind hand = PathKind.of(samples.hand(carrier.other()));
        if (head.sort() == hand.sort()) {
            return new Why(Obstacle.OTHER_FIGURE, 0, 0);
        }
        PathKind arc = head.sort() == PathKind.Sort.ARC ? head : hand;
        PathKind other = arc.equals(head) ? hand : head;
        return arc.sort() == PathKind.Sort.ARC && other.sort() == PathKind.Sort.CIRCLE
                ? new Why(Obstacle.ARC_IS_NO_CIRCLE, arc.size(), other.size())
                : new Why(Obstacle.OTHER_KIND, 0, 0);
    }

    /** What keeps two paths of one shape from being together at every instant. */
    static Why ofPlacing(Pairing pairing, Side carrier, LinkReading link, double inPlane) {
        Vector3D a = pairing.part(carrier).place().plane().normal();
        Vector3D b = pairing.part(carrier.other()).place().plane().normal();
        double angle = Math.min(Vector3D.angle(a, b), Math.PI - Vector3D.angle(a, b));
        if (angle > 1e-6) {
            return new Why(Obstacle.PLANES_DIFFER, angle, 0);
        }
        if (link.clockGap() > FitLink.CLOSED) {
            return new Why(Obstacle.NOT_IN_TIME, link.clockGap(), 0);
        }
        return new Why(Obstacle.OPPOSITE_WAYS, inPlane, 0);
    }
}
