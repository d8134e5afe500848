package deferent.reading.tether;

import deferent.motion.pairing.Place;
import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Origin;
import deferent.motion.trace.State;
import deferent.motion.trace.TimedBreak;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Whether a linked pairing's link survives the cord.
 *
 * <p>In the ideal the rider's hand goes where the carrier's head goes. With cords one of two things
 * gives:
 *
 * <ul>
 *   <li>both keep their figures: then the carrier's head is where it was said, but the rider's hand
 *       must leave its path to keep its own figure, and the link comes apart by {@link
 *       #figureKept};
 *   <li>the rider's hand stays on the carrier's real head ({@link #riding}): then the link lasts
 *       and the rider's own figure changes instead.
 * </ul>
 *
 * A carrier that keeps its hand has a head of its own; {@link #carriersHand} is how far the rider's
 * figure-keeping hand is from that one. A true pendulum keeps hand and figure at once, in its own
 * uneven time, and a rider's hand that follows it follows the real arc.
 *
 * <p>Gaps lie in the rider's plane, because real links run in neighbouring planes; offset and lag
 * of the ideal link are taken out first.
 *
 * @param carrier whose head leads
 * @param tolerance metres within which a link lasts
 * @param ideal gap of the ideal link
 * @param figureKept gap between the rider's figure-keeping hand and the carrier's figure
 * @param possible whether a hand can keep the rider's figure at all
 * @param carriersHand gap between the rider's figure-keeping hand and the head of a carrier that
 *     keeps its hand; empty where no such motion is found
 * @param riding what the rider's poi does when its hand stays on the carrier's figure; empty where
 *     no motion with its turns pulls throughout
 * @param verdict in one word
 */
public record LinkedTruth(
        Side carrier,
        double tolerance,
        Away ideal,
        Away figureKept,
        boolean possible,
        Optional<Away> carriersHand,
        Optional<KeepTheHandPath.Solution> riding,
        Verdict verdict) {

    /** What becomes of the link. */
    public enum Verdict {
        /** Within tolerance at every instant, both figures kept. */
        SURVIVES,
        /** The rider's hand keeps to the carrier's figure as a path, but not to its timing. */
        SURVIVES_AS_SHAPE,
        /** The link lasts only if the rider's figure gives. */
        RIDER_GIVES,
        /** It comes apart. */
        COMES_APART,
        /** It was not closed in the ideal either. */
        NOT_LINKED
    }

    /** A link without offset and lag, within a hand's breadth. */
    public static LinkedTruth of(Trace ideal, Side carrier, Kit kit) {
        return of(ideal, carrier, kit, Vector3D.ZERO, 0, Place.HAND_BREADTH);
    }

    /**
     * A link with an offset and a lag of its own.
     *
     * @param offset from the carrier's head to the rider's hand, metres
     * @param lag by which the hand trails the head, in common cycles
     * @param tolerance metres
     */
    public static LinkedTruth of(
            Trace ideal, Side carrier, Kit kit, Vector3D offset, double lag, double tolerance) {
        return of(
                ideal,
                KeepTheHandPath.of(ideal, carrier, kit),
                KeepTheFigure.of(ideal, carrier.other(), kit),
                offset,
                lag,
                tolerance);
    }

    /**
     * The same where both are known already.
     *
     * @param carrierHand the carrier behind a hand that keeps its path
     * @param kept the rider's figure kept
     */
    public static LinkedTruth of(
            Trace ideal,
            KeepTheHandPath carrierHand,
            KeepTheFigure kept,
            Vector3D offset,
            double lag,
            double tolerance) {
        Refusal.positive(tolerance, 10, "tolerance of a link", "m");
        Refusal.finite(lag, "lag of a link");
        Side carrier = carrierHand.side();
        Side rider = carrier.other();
        Geometry geometry = new Geometry(ideal, rider, offset, lag * ideal.period());
        Away idealGap = geometry.gap(ideal.hand(rider), ideal.head(carrier));
        Away figureGap = geometry.gap(kept.hand(), ideal.head(carrier));
        Optional<Away> carriersHand =
                carrierHand.best().map(s -> geometry.gap(kept.hand(), s.head()));
        Optional<KeepTheHandPath.Solution> riding =
                KeepTheHandPath.of(geometry.ridden(ideal, carrier), rider, carrierHand.cord().kit())
                        .best();
        return new LinkedTruth(
                carrier,
                tolerance,
                idealGap,
                figureGap,
                kept.possible(),
                carriersHand,
                riding,
                verdict(idealGap, figureGap, kept, riding, tolerance));
    }

    private static Verdict verdict(
            Away ideal,
            Away figureKept,
            KeepTheFigure keep,
            Optional<KeepTheHandPath.Solution> riding,
            double tolerance) {
        if (ideal.greatest() > tolerance) {
            return Verdict.NOT_LINKED;
        }
        if (keep.possible() && figureKept.greatest() <= tolerance) {
            return Verdict.SURVIVES;
        }
        if (keep.possible() && figureKept.paths() <= tolerance) {
            return Verdict.SURVIVES_AS_SHAPE;
        }
        return riding.isPresent() ? Verdict.RIDER_GIVES : Verdict.COMES_APART;
    }

    /** The link's geometry. */
    private record Geometry(Trace trace, Side rider, Vector3D offset, double late) {
        Away gap(Course hand, Course head) {
            return Away.of(flat(hand), flat(led(head)), trace, rider);
        }

        /** Where the head says the hand should be. */
        Course led(Course head) {
            return new Shifted(head, offset, late);
        }

        private Course flat(Course course) {
            boolean still = trace.pairing().part(rider).place().turn().turns() == 0;
            return still
                    ? new Flat(course, trace.pairing().part(rider).place().plane().normal())
                    : course;
        }

        /** The trace with the rider's hand on the carrier's head, in the rider's own plane. */
        Trace ridden(Trace ideal, Side carrier) {
            Place own = ideal.pairing().part(rider).place();
            Vector3D between =
                    own.centre().subtract(ideal.pairing().part(carrier).place().centre());
            Vector3D across =
                    own.plane().normal().scalarMultiply(between.dotProduct(own.plane().normal()));
            Course hand = new Shifted(ideal.head(carrier), offset.add(across), late);
            Course idealHand = ideal.hand(rider);
            Course idealHead = ideal.head(rider);
            Course head =
                    time -> {
                        State h = hand.at(time);
                        State p = idealHead.at(time);
                        State i = idealHand.at(time);
                        return new State(
                                h.position().add(p.position()).subtract(i.position()),
                                h.velocity().add(p.velocity()).subtract(i.velocity()),
                                h.acceleration().add(p.acceleration()).subtract(i.acceleration()),
                                h.jerk().add(p.jerk()).subtract(i.jerk()));
                    };
            List<TimedBreak> breaks = new ArrayList<>(ideal.breaks());
            for (TimedBreak b : ideal.breaks()) {
                if (b.side() == carrier) {
                    double t = b.time() + late - ideal.interval().start();
                    t -= ideal.period() * Math.floor(t / ideal.period());
                    breaks.add(
                            new TimedBreak(
                                    ideal.interval().start() + t, b.order(), rider, b.why()));
                }
            }
            return Replaced.in(
                    ideal, Origin.CORDED, rider, hand, head, breaks, List.of(), List.of());
        }
    }

    /** A course moved in place and time. */
    private record Shifted(Course of, Vector3D by, double late) implements Course {
        @Override
        public State at(double time) {
            return moved(of.at(time - late));
        }

        @Override
        public State before(double time) {
            return moved(of.before(time - late));
        }

        private State moved(State s) {
            return new State(s.position().add(by), s.velocity(), s.acceleration(), s.jerk());
        }
    }

    /** A course's shadow on a plane through the origin. */
    private record Flat(Course of, Vector3D normal) implements Course {
        @Override
        public State at(double time) {
            return flat(of.at(time));
        }

        @Override
        public State before(double time) {
            return flat(of.before(time));
        }

        private State flat(State s) {
            return new State(
                    flat(s.position()), flat(s.velocity()), flat(s.acceleration()), flat(s.jerk()));
        }

        private Vector3D flat(Vector3D v) {
            return v.subtract(normal.scalarMultiply(v.dotProduct(normal)));
        }
    }
}
