package deferent.page;

import deferent.motion.shared.Side;
import deferent.motion.trace.Origin;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import deferent.reading.body.Person;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * What is seen of a trace, with depth, made once and drawn by every face: the four moving points at
 * evenly spaced times, and the things drawn through them, from the back to the front. Points are
 * the trace's own, in its frame, metres; turning them toward a viewer is the {@link View}'s part.
 */
public final class Scene {
    /** Enough samples that a head at full stretch is never more than about a degree on. */
    public static final int USUAL_COUNT = 720;

    private final Trace trace;
    private final Samples samples;
    private final List<Item> items;

    private Scene(Trace trace, Samples samples, List<Item> items) {
        this.trace = trace;
        this.samples = samples;
        this.items = items;
    }

    /** With the link drawn that comes nearer to closing. */
    public static Scene of(Trace trace) {
        return of(trace, USUAL_COUNT, nearer(trace), Optional.empty());
    }

    /**
     * What is seen of a trace.
     *
     * @param trace what is seen
     * @param count samples over the trace's interval
     * @param carrier the side from whose head the link is drawn, to the other's hand
     * @param body the performer, where one is to be seen
     */
    public static Scene of(Trace trace, int count, Side carrier, Optional<Person> body) {
        List<Item> items = new ArrayList<>();
        body.map(Item.Shape.Body::new)
                .ifPresent(form -> items.add(new Item(Role.BODY, Optional.empty(), form)));
        for (Side side : Side.values()) {
            Track hand = Track.hand(side);
            Track head = Track.head(side);
            Vector3D centre = trace.pairing().part(side).place().centre();
            items.add(Item.of(Role.CENTRE, side, new Item.Shape.Fixed(List.of(centre), false)));
            // A hand said to be still may move all the same when it has to keep a figure on a cord.
            if (!trace.pairing().part(side).still() || trace.origin() == Origin.CORDED) {
                items.add(
                        Item.of(Role.HAND_PATH, side, new Item.Shape.Run(hand, trace.periodic())));
            }
            items.add(Item.of(Role.HEAD_TRAIL, side, new Item.Shape.Run(head, trace.periodic())));
            items.add(Item.of(Role.TETHER, side, new Item.Shape.Span(hand, head)));
            items.add(Item.of(Role.HAND, side, new Item.Shape.Spot(hand)));
            items.add(Item.of(Role.HEAD, side, new Item.Shape.Spot(head)));
        }
        items.add(
                Item.of(
                        Role.LINK,
                        carrier,
                        new Item.Shape.Span(Track.head(carrier), Track.hand(carrier.other()))));
        items.sort(Comparator.comparing(Item::role));
        return new Scene(trace, trace.samples(count), List.copyOf(items));
    }

    /**
     * The carrier that leads: a rider's carrier, else the one whose head keeps nearer to the
     * other's hand at the same instant; the left of equals.
     */
    public static Side nearer(Trace trace) {
        Optional<Side> rider = trace.pairing().rider();
        if (rider.isPresent()) {
            return rider.get().other();
        }
        return worst(trace, Side.RIGHT) < worst(trace, Side.LEFT) - 1e-9 ? Side.RIGHT : Side.LEFT;
    }

    private static double worst(Trace trace, Side carrier) {
        Samples all = trace.samples(USUAL_COUNT);
        double[] head = all.head(carrier);
        double[] hand = all.hand(carrier.other());
        double most = 0;
        for (int i = 0; i < head.length; i += 3) {
            double dx = head[i] - hand[i];
            double dy = head[i + 1] - hand[i + 1];
            double dz = head[i + 2] - hand[i + 2];
            most = Math.max(most, dx * dx + dy * dy + dz * dz);
        }
        return Math.sqrt(most);
    }

    /**
     * The same with a performer whose arms are not drawn, where they could not follow the hands.
     */
    Scene withoutArms() {
        List<Item> without =
                items.stream()
                        .map(
                                item ->
                                        item.form() instanceof Item.Shape.Body body
                                                ? new Item(
                                                        item.role(),
                                                        item.side(),
                                                        new Item.Shape.Body(
                                                                body.person().withoutArms()))
                                                : item)
                        .toList();
        return new Scene(trace, samples, without);
    }

    public Trace trace() {
        return trace;
    }

    /** Seconds the samples span; of a periodic scene, until the first comes again. */
    public double period() {
        return trace.period();
    }

    public int count() {
        return samples.count();
    }

    /** From the back to the front. */
    public List<Item> items() {
        return items;
    }

    /**
     * x, y, z, x, y, z, … of a moving point at the scene's times, metres; the scene's own, not to
     * be written.
     */
    public double[] points(Track track) {
        return track.end() == Track.End.HAND
                ? samples.hand(track.side())
                : samples.head(track.side());
    }

    /** A moving point at any time of the interval, seconds; worked out, not interpolated. */
    public Vector3D at(Track track, double time) {
        return (track.end() == Track.End.HAND ? trace.hand(track.side()) : trace.head(track.side()))
                .position(time);
    }
}
