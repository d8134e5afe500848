package deferent.film.held;

import deferent.film.hand.HandSight;
import deferent.film.measured.Measured;
import deferent.film.measured.MeasuredSide;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import deferent.reading.link.LinkReading;
import deferent.reading.shared.LinkKind;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * How far a link of the meant pairing stands open in the film, read on the measured trace by the
 * same reading as an ideal's. Only where the rider's cord pulls enough for its hand to be told is
 * anything said. A link whose hand follows late is read with that lag, and one that is carried with
 * its usual distance between.
 *
 * @param carrier whose head leads
 * @param lag by what share of the cycle the hand is meant to trail the head, as the link's reading
 * @param apart where it is widest: how far hand and head are apart, metres
 * @param error its standard deviation, metres
 * @param on the count there
 * @param moment seconds into the film
 * @param closest how far where it is least, metres
 * @param closestOn the count there
 * @param meant how far they are apart at the widest place where the meant pairing is spun as cords
 *     let it be, metres
 * @param known share of the cycle in which the hand is told
 */
public record OpenLink(
        Side carrier,
        double lag,
        double apart,
        double error,
        String on,
        double moment,
        double closest,
        String closestOn,
        double meant,
        double known) {
    private static final double MUST_KNOW = 0.3; // of the cycle, for a link to be read at all

    /** Those links of the meant pairing of which something can be told, the left head's first. */
    static List<OpenLink> of(Held held) {
        Trace ideal = Trace.of(held.meant());
        List<OpenLink> all = new ArrayList<>();
        for (Side carrier : Side.values()) {
            LinkReading link = LinkReading.quick(ideal, carrier);
            boolean told =
                    switch (link.kind()) {
                        case TOUCHING, CARRIED -> true;
                        case FOLLOWED ->
                                link.followed().filter(LinkReading.Following::touching).isPresent();
                        case ROD, NONE -> false;
                    };
            MeasuredSide rider = held.measured().side(carrier.other());
            if (told && rider.handKnown() >= MUST_KNOW) {
                all.add(read(held, ideal, link));
            }
        }
        return List.copyOf(all);
    }

    private static OpenLink read(Held held, Trace ideal, LinkReading link) {
        Side carrier = link.carrier();
        Measured measured = held.measured();
        double lag = link.followed().map(LinkReading.Following::lag).orElse(0.0);
        Vector3D offset =
                link.kind() == LinkKind.CARRIED
                        ? new Vector3D(link.offset().getX(), link.offset().getY(), 0)
                        : Vector3D.ZERO;
        double[] seen = apart(measured.trace(held.meant()), carrier, lag, offset);
        double[] meant = apart(held.asCordsLet(), carrier, lag, offset);
        CountWords words = CountWords.of(ideal);
        MeasuredSide lead = measured.side(carrier);
        MeasuredSide rider = measured.side(carrier.other());
        double cycle = measured.period();
        HandSight widest = rider.hands().get(0);
        HandSight least = widest;
        for (HandSight sight : rider.hands()) {
            if (value(seen, sight.time() / cycle) > value(seen, widest.time() / cycle)) {
                widest = sight;
            }
            if (value(seen, sight.time() / cycle) < value(seen, least.time() / cycle)) {
                least = sight;
            }
        }
        double share = widest.time() / cycle;
        double apart = value(seen, share);
        double error =
                Math.hypot(
                        Math.hypot(widest.error(), lead.head().error(widest.time(), 0)),
                        measured.how().error() * apart);
        return new OpenLink(
                carrier,
                lag,
                apart,
                error,
                words.at((share + held.ahead()) * ideal.period()),
                widest.time(),
                value(seen, least.time() / cycle),
                words.at((least.time() / cycle + held.ahead()) * ideal.period()),
                value(meant, share + held.ahead()),
                rider.handKnown());
    }

    private static double value(double[] over, double share) {
        return over[Math.floorMod(Math.round(share * over.length), over.length)];
    }

    private static double[] apart(Trace trace, Side carrier, double lag, Vector3D offset) {
        Map<Side, Course> heads = new EnumMap<>(Side.class);
        Map<Side, Course> hands = new EnumMap<>(Side.class);
        for (Side side : Side.values()) {
            heads.put(side, trace.head(side));
            hands.put(side, trace.hand(side));
        }
        double start = trace.interval().start();
        double cycle = trace.period();
        Course led = trace.head(carrier);
        heads.put(
                carrier,
                time -> {
                    double ago = time - start - lag * cycle;
                    State at = led.at(start + ago - cycle * Math.floor(ago / cycle));
                    return new State(
                            at.position().add(offset), at.velocity(), at.acceleration(), at.jerk());
                });
        Trace aimed =
                new Trace(
                        trace.pairing(),
                        trace.origin(),
                        trace.interval(),
                        trace.periodic(),
                        hands,
                        heads,
                        List.of(),
                        Map.of(),
                        List.of(),
                        trace.uncertainty());
        return LinkReading.quick(aimed, carrier).gapOverCycle();
    }

    /** By how much it is further open than cords alone would make it, metres; may be below 0. */
    public double open() {
        return apart - meant;
    }

    /** "the left head", or where it was or will be by the lag. */
    public String head() {
        String head = "the " + carrier.word() + " head";
        return lag == 0 ? head : lag > 0 ? "where " + head + " was" : "where " + head + " will be";
    }
}
