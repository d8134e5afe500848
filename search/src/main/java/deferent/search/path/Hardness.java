package deferent.search.path;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.body.Reach;
import deferent.reading.link.LinkReading;
import deferent.reading.shared.LinkKind;
import deferent.reading.tether.KeepTheFigure;
import deferent.reading.tether.Kit;
import deferent.reading.tether.Pull;
import deferent.reading.tether.Steadiness;
import deferent.reading.worked.Worked;
import deferent.search.fit.Sensitivity;
import deferent.search.set.Difficulty;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * How hard a pairing is to learn: a model, no measurement, good for an order from easy to hard.
 * What goes into it comes from the readings; the weights, which make points of it, are our choice.
 *
 * @param hands a point for each weight of the quicker hand's acceleration, and halves for what the
 *     two hands do unlike each other ({@link Difficulty})
 * @param slips a point each time a slip doubles before it can be answered, of the poi whose slips
 *     grow faster ({@link Steadiness}); {@link #LOST} where no hand keeps the figure
 * @param cords a point for each weight by which a cord would have to push
 * @param meeting a point for every four centimetres by which a missed centimetre, five degrees or a
 *     seventy-second of a cycle opens a link that touches ({@link Sensitivity})
 * @param reach a point for every ten centimetres that a hand does not get to ({@link Reach})
 * @param planes half a point for planes that lie otherwise from hand to hand, and for each that
 *     turns; a point for each that passes the body
 */
public record Hardness(
        double hands, double slips, double cords, double meeting, double reach, double planes) {
    /** What stands for slips where no hand can keep the figure: they grow eightfold. */
    public static final double LOST = 3;

    private static final double OPENS = 0.04;
    private static final double SHORT = 0.10;
    private static final double HALF = 0.5;

    public Hardness {
        Refusal.numbers("how hard it is", hands, slips, cords, meeting, reach, planes);
    }

    /** All of it, points. */
    public double total() {
        return hands + slips + cords + meeting + reach + planes;
    }

    /** Of both hands. */
    public static Hardness of(Pairing pairing, Performer performer, Kit kit) {
        Trace trace = Trace.of(pairing);
        Map<Side, Optional<Pull>> pulls = new EnumMap<>(Side.class);
        for (Side side : Side.values()) {
            pulls.put(side, pull(trace, side, kit));
        }
        return of(
                trace,
                performer,
                kit,
                List.of(Side.values()),
                Difficulty.of(pairing, side -> pulls.getOrDefault(side, Optional.empty())),
                pulls);
    }

    /** Of one hand, the other being at rest. */
    public static Hardness alone(Pairing pairing, Side side, Performer performer, Kit kit) {
        Trace trace = Trace.of(pairing);
        Optional<Pull> pull = pull(trace, side, kit);
        return of(
                trace,
                performer,
                kit,
                List.of(side),
                Difficulty.of(pairing, side, pull),
                Map.of(side, pull));
    }

    private static Hardness of(
            Trace trace,
            Performer performer,
            Kit kit,
            List<Side> sides,
            double hands,
            Map<Side, Optional<Pull>> pulls) {
        Pairing pairing = trace.pairing();
        boolean both = sides.size() > 1;
        return new Hardness(
                hands,
                sides.stream().mapToDouble(side -> slips(trace, side, kit)).max().orElse(0),
                pulls.values().stream()
                        .flatMap(Optional::stream)
                        .mapToDouble(pull -> Math.max(0, -pull.leastWeights()))
                        .max()
                        .orElse(0),
                both ? meeting(trace) : 0,
                Worked.of("whether the hands get there", () -> Reach.of(trace, performer).worst())
                                .reading()
                                .orElse(SHORT)
                        / SHORT,
                planes(pairing, sides));
    }

    private static Optional<Pull> pull(Trace trace, Side side, Kit kit) {
        return Worked.of("the pull", () -> Pull.of(trace, side, kit)).reading();
    }

    private static double slips(Trace trace, Side side, Kit kit) {
        // What swings by itself about a still hand comes back by itself.
        if (trace.pairing().part(side).motion().undriven()) {
            return 0;
        }
        return Worked.of("the figure kept", () -> KeepTheFigure.of(trace, side, kit))
                .then("its slips", kept -> Worked.of("its slips", () -> Steadiness.of(kept)))
                .reading()
                .map(steady -> Math.log(Math.max(1, steady.growthInReaction())) / Math.log(2))
                .orElse(LOST);
    }

    /** What a missed size costs where a head has to stay with a hand; the worse link of the two. */
    private static double meeting(Trace trace) {
        return Stream.of(Side.values())
                .filter(carrier -> touching(trace, carrier))
                .flatMap(
                        carrier ->
                                Worked.of(
                                        "what a missed size costs",
                                        () -> Sensitivity.of(trace.pairing(), carrier))
                                        .reading()
                                        .stream())
                .flatMap(List::stream)
                .mapToDouble(cost -> cost.gapCost() / OPENS)
                .max()
                .orElse(0);
    }

    /** Whether that head stays with the other hand. */
    static boolean touching(Trace trace, Side carrier) {
        return links(trace, carrier).filter(kind -> kind == LinkKind.TOUCHING).isPresent();
    }

    /** How that head and the other hand go together, if that can be worked out. */
    static Optional<LinkKind> links(Trace trace, Side carrier) {
        return Worked.of("the link", () -> LinkReading.quick(trace, carrier).kind()).reading();
    }

    private static double planes(Pairing pairing, List<Side> sides) {
        double points = 0;
        for (Side side : sides) {
            points += pairing.part(side).motion().weave().isPresent() ? 1 : 0;
            points += pairing.part(side).place().turn().turns() != 0 ? HALF : 0;
        }
        boolean unlike =
                sides.size() > 1
                        && !pairing.left().place().plane().equals(pairing.right().place().plane());
        return points + (unlike ? HALF : 0);
    }
}
