package deferent.search.path;

import deferent.motion.pairing.Arc;
import deferent.motion.pairing.Facing;
import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Size;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import deferent.search.path.LeftOut.Why;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.function.IntConsumer;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Takes a pattern apart into drills and puts them in order.
 *
 * <p>Each hand alone comes first, the easier hand before the other; a rider's hand alone goes by
 * itself along the arc or circle that the other head would draw. Then come both hands: apart, on a
 * smaller swing, slower (or, where that is no easier, larger) and one neighbour from which least
 * changes. Of these only what is easier than the pattern itself by {@link Hardness} is kept, and
 * they stand from easy to hard; so nothing stands before an easier version of itself. A drill that
 * words cannot say is left out, since nobody could look it up or play it. What is left out says why
 * ({@link LeftOut}).
 */
public final class PathSearch {
    /** A search takes so many steps. */
    public static final int STEPS = 6;

    /** How much slower a slower version is, and how much larger a larger one (our choice). */
    private static final double SLOWER = 0.8;

    private static final double LARGER = 1.2;

    // How far to their own sides hands are taken apart, metres (our choice).
    private static final List<Double> ASIDE = List.of(0.15, 0.22, 0.30, 0.40);

    private static final double EASIER = 1e-6;

    private final Pairing whole;
    private final Performer performer;
    private final Kit kit;
    private final Lexicon lexicon;
    private final Hardness hardness;
    private final List<LeftOut> leftOut = new ArrayList<>();

    private PathSearch(Pairing whole, Performer performer, Kit kit, Lexicon lexicon) {
        this.whole = whole;
        this.performer = performer;
        this.kit = kit;
        this.lexicon = lexicon;
        this.hardness = Hardness.of(whole, performer, kit);
    }

    /** A drill, or why it is none. */
    private record Tried(Optional<Drill> drill, Why why) {
        static Tried of(Drill drill) {
            return new Tried(Optional.of(drill), Why.NO_EASIER);
        }

        static Tried not(Why why) {
            return new Tried(Optional.empty(), why);
        }

        Tried only(Predicate<Drill> holds, Why otherwise) {
            return drill.isEmpty() || drill.filter(holds).isPresent() ? this : not(otherwise);
        }
    }

    /** A neighbour, with how far its hand strays from the pattern's own, metres. */
    private record Near(Drill drill, double strays) {}

    /**
     * The path to a pattern.
     *
     * @param lexicon the user's own names for motions
     */
    public static Path of(Pairing pairing, Performer performer, Kit kit, Lexicon lexicon) {
        return of(pairing, performer, kit, lexicon, step -> {}, () -> false).orElseThrow();
    }

    /**
     * The path to a pattern, unless stopped.
     *
     * @param listener told how many of {@link #STEPS} are done, on the calling thread
     * @param stop asked between them
     */
    public static Optional<Path> of(
            Pairing pairing,
            Performer performer,
            Kit kit,
            Lexicon lexicon,
            IntConsumer listener,
            BooleanSupplier stop) {
        PathSearch search = new PathSearch(pairing, performer, kit, lexicon);
        List<Drill> hands = new ArrayList<>();
        List<Drill> both = new ArrayList<>();
        List<Runnable> steps =
                List.of(
                        () -> search.alone(Side.LEFT).ifPresent(hands::add),
                        () -> search.alone(Side.RIGHT).ifPresent(hands::add),
                        () -> search.apart().ifPresent(both::add),
                        () -> search.smallerSwing().ifPresent(both::add),
                        () -> search.slowerOrLarger().ifPresent(both::add),
                        () -> search.near().ifPresent(both::add));
        for (int i = 0; i < steps.size(); i++) {
            listener.accept(i);
            if (stop.getAsBoolean()) {
                return Optional.empty();
            }
            steps.get(i).run();
        }
        listener.accept(STEPS);
        return Optional.of(search.path(hands, both));
    }

    /**
     * One hand of a pairing, the other still with its poi hanging; empty where it cannot go alone,
     * as a hand cannot that goes where the other head does.
     */
    public static Optional<Pairing> alone(Pairing whole, Side side, Performer performer) {
        return Resting.alone(whole, side, performer);
    }

    private Path path(List<Drill> hands, List<Drill> both) {
        hands.sort(byHardness());
        both.sort(byHardness());
        List<Drill> drills = new ArrayList<>(hands);
        List<Integer> before = IntStream.range(0, hands.size()).boxed().toList();
        both.forEach(drill -> drills.add(needing(drill, before)));
        drills.add(
                new Drill(
                        DrillKind.WHOLE,
                        Optional.empty(),
                        whole,
                        Phrase.write(whole, lexicon),
                        hardness,
                        IntStream.range(0, drills.size()).boxed().toList()));
        return new Path(drills, leftOut);
    }

    private static Comparator<Drill> byHardness() {
        return Comparator.comparingDouble(drill -> drill.hardness().total());
    }

    private static Drill needing(Drill drill, List<Integer> needs) {
        return new Drill(
                drill.kind(),
                drill.hand(),
                drill.pairing(),
                drill.phrase(),
                drill.hardness(),
                needs);
    }

    /** Its drill; or notes why it has none. */
    private Optional<Drill> kept(DrillKind kind, Optional<Side> hand, Tried tried) {
        if (tried.drill().isEmpty()) {
            leftOut.add(new LeftOut(kind, hand, tried.why()));
        }
        return tried.drill();
    }

    private Optional<Drill> alone(Side side) {
        Optional<Side> hand = Optional.of(side);
        return kept(DrillKind.ALONE, hand, aloneTried(side, hand));
    }

    private Tried aloneTried(Side side, Optional<Side> hand) {
        if (!whole.facing().turning() && whole.facing().from() != 0) {
            return Tried.not(Why.TURNED);
        }
        Optional<Pairing> free = byItself(side);
        if (free.isEmpty()) {
            return Tried.not(Why.RIDES);
        }
        return Resting.alone(free.get(), side, performer)
                .map(pairing -> whole.part(side).motion().riding() ? evenly(pairing) : pairing)
                .map(
                        pairing ->
                                drill(
                                        DrillKind.ALONE,
                                        hand,
                                        pairing,
                                        Hardness.alone(pairing, side, performer, kit)))
                .orElseGet(() -> Tried.not(Why.NO_PLACE_TO_REST));
    }

    /** At a tempo in whole numbers, where no pendulum sets it any more. */
    private static Pairing evenly(Pairing pairing) {
        return pairing.withTempo(OptionalDouble.of(tempo(pairing.tempo())));
    }

    /**
     * The pattern with that hand going its own way: a rider's along the arc or circle of the other
     * head, where that is one.
     */
    private Optional<Pairing> byItself(Side side) {
        Part part = whole.part(side);
        if (!part.motion().riding()) {
            return Optional.of(whole);
        }
        Part carrier = whole.part(side.other());
        double tether = carrier.tether().length();
        if (!carrier.motion().still()) {
            return Optional.empty();
        }
        SpinLaw spin = carrier.motion().spin();
        Optional<HandPath> path =
                spin.swing()
                        .<HandPath>map(swing -> new Arc(tether, swing.rest(), swing.amplitude()))
                        .or(
                                () ->
                                        spin.even()
                                                .filter(even -> even.turns() != 0)
                                                .map(
                                                        even ->
                                                                Series.circle(tether)
                                                                        .turned(even.start())));
        return path.flatMap(
                way -> made(() -> whole.with(side, part.with(part.motion().withPath(way)))));
    }

    /** The nearest place that is easier; none where nothing meets that could be parted. */
    private Optional<Drill> apart() {
        return kept(DrillKind.APART, Optional.empty(), apartTried());
    }

    private Tried apartTried() {
        Trace trace = Trace.of(whole);
        if (Stream.of(Side.values()).noneMatch(side -> Hardness.touching(trace, side))) {
            return Tried.not(Why.NOTHING_MEETS);
        }
        if (whole.weaves()
                || whole.rider().isPresent()
                || !whole.facing().equals(Facing.AUDIENCE)) {
            return Tried.not(Why.BOUND);
        }
        return ASIDE.stream()
                .flatMap(by -> made(() -> parted(by)).stream())
                .filter(
                        pairing ->
                                Stream.of(Side.values())
                                        .noneMatch(
                                                side -> Hardness.touching(Trace.of(pairing), side)))
                .map(pairing -> easier(DrillKind.APART, Optional.empty(), pairing))
                .filter(tried -> tried.drill().isPresent())
                .findFirst()
                .orElse(Tried.not(Why.NO_EASIER));
    }

    private Pairing parted(double by) {
        Pairing pairing = whole;
        for (Side side : Side.values()) {
            Size across = Size.of(side, Size.Kind.CENTRE_X);
            double now = across.read(pairing).orElse(0);
            pairing = across.set(pairing, millimetres(now + (side == Side.LEFT ? by : -by)));
        }
        return pairing;
    }

    /** The whole pattern with every pendulum swinging half as far; a rider goes along with it. */
    private Optional<Drill> smallerSwing() {
        if (Stream.of(Side.values()).noneMatch(side -> amplitude(side).isPresent())) {
            return Optional.empty(); // nothing that anybody would look for
        }
        Tried tried =
                made(this::swungLess)
                        .map(pairing -> easier(DrillKind.SMALLER_SWING, Optional.empty(), pairing))
                        .orElse(Tried.not(Why.NOT_THERE));
        return kept(DrillKind.SMALLER_SWING, Optional.empty(), tried);
    }

    private Pairing swungLess() {
        Pairing pairing = whole;
        for (Side side : Side.values()) {
            OptionalDouble now = amplitude(side);
            if (now.isPresent()) {
                pairing =
                        Size.of(side, Size.Kind.AMPLITUDE)
                                .set(pairing, Math.toRadians(halved(now.getAsDouble())));
            }
        }
        return pairing;
    }

    private OptionalDouble amplitude(Side side) {
        return Size.of(side, Size.Kind.AMPLITUDE).read(whole);
    }

    /** Half of it in whole degrees. */
    private static double halved(double radians) {
        return Math.max(1, Math.rint(Math.toDegrees(radians) / 2));
    }

    private Optional<Drill> slowerOrLarger() {
        Optional<Drill> slower = kept(DrillKind.SLOWER, Optional.empty(), slower());
        if (slower.isPresent()) {
            leftOut.add(new LeftOut(DrillKind.LARGER, Optional.empty(), Why.SLOWER_DOES));
            return slower;
        }
        return kept(DrillKind.LARGER, Optional.empty(), larger());
    }

    private Tried slower() {
        if (whole.setsOwnTempo()) {
            return Tried.not(Why.OWN_TEMPO);
        }
        return made(() -> whole.withTempo(OptionalDouble.of(tempo(whole.tempo() * SLOWER))))
                .map(pairing -> easier(DrillKind.SLOWER, Optional.empty(), pairing))
                .orElse(Tried.not(Why.NOT_THERE))
                .only(drill -> drill.hardness().cords() <= hardness.cords() + EASIER, Why.SLACK);
    }

    /**
     * As much larger all over, so that times are as the square root of lengths and every cord pulls
     * as it does in the pattern (Froude's law of likeness, from memory); within reach only.
     */
    private Tried larger() {
        if (whole.weaves()) {
            return Tried.not(Why.BOUND);
        }
        if (whole.setsOwnTempo()) {
            return Tried.not(Why.OWN_TEMPO);
        }
        return made(this::scaled)
                .map(pairing -> easier(DrillKind.LARGER, Optional.empty(), pairing))
                .orElse(Tried.not(Why.NOT_THERE))
                .only(
                        drill -> drill.hardness().reach() <= hardness.reach() + EASIER,
                        Why.OUT_OF_REACH);
    }

    private Pairing scaled() {
        Pairing pairing =
                whole.withTempo(OptionalDouble.of(tempo(whole.tempo() / Math.sqrt(LARGER))));
        for (Side side : Side.values()) {
            for (Size.Kind kind : List.of(Size.Kind.TETHER, Size.Kind.HAND_RADIUS)) {
                Size size = Size.of(side, kind);
                OptionalDouble now = size.read(whole);
                if (now.isPresent()) {
                    pairing = size.set(pairing, millimetres(now.getAsDouble() * LARGER));
                }
            }
        }
        return pairing;
    }

    /** The neighbour from which least changes. */
    private Optional<Drill> near() {
        List<Near> found = new ArrayList<>();
        for (Side side : Side.values()) {
            halfCircle(side).ifPresent(found::add);
            stillHand(side).ifPresent(found::add);
        }
        Optional<Near> nearest = found.stream().min(Comparator.comparingDouble(Near::strays));
        found.stream()
                .filter(near -> !Optional.of(near).equals(nearest))
                .map(Near::drill)
                .forEach(
                        drill ->
                                leftOut.add(
                                        new LeftOut(
                                                drill.kind(),
                                                drill.hand(),
                                                Why.ANOTHER_IS_NEARER)));
        return nearest.map(Near::drill);
    }

    private Optional<Near> halfCircle(Side side) {
        Motion motion = whole.part(side).motion();
        double radius = motion.path().radius();
        if (motion.riding() || motion.path().circle().isEmpty() || motion.weave().isPresent()) {
            return Optional.empty(); // no circle that anybody would look for
        }
        return near(
                DrillKind.HALF_CIRCLE,
                side,
                radius / 2,
                () -> Size.of(side, Size.Kind.HAND_RADIUS).set(whole, millimetres(radius / 2)));
    }

    private Optional<Near> stillHand(Side side) {
        Part part = whole.part(side);
        Motion motion = part.motion();
        if (part.still() || motion.weave().isPresent()) {
            return Optional.empty(); // it is still already, or goes from side to side
        }
        double strays =
                motion.riding()
                        ? whole.part(side.other()).tether().length()
                        : motion.path().radius();
        return near(
                DrillKind.STILL_HAND,
                side,
                strays,
                () -> whole.with(side, part.with(still(motion.spin()))));
    }

    private Optional<Near> near(
            DrillKind kind, Side side, double strays, Supplier<Pairing> making) {
        Optional<Side> hand = Optional.of(side);
        Tried tried =
                made(making)
                        .map(pairing -> easier(kind, hand, pairing))
                        .orElse(Tried.not(Why.NOT_THERE));
        return kept(kind, hand, tried).map(drill -> new Near(drill, strays));
    }

    /** The poi turning as it does, about a hand that keeps still. */
    private static Motion still(SpinLaw spin) {
        return Motion.staticSpin(1, 0).withSpin(spin);
    }

    /** With numbers that a spinner can set: whole, or to a tenth where they are small. */
    private static double tempo(double a) {
        return a >= 10 ? Math.rint(a) : Math.rint(a * 10) / 10;
    }

    private static double millimetres(double metres) {
        return Math.rint(metres * 1000) / 1000;
    }

    private static Optional<Pairing> made(Supplier<Pairing> making) {
        try {
            return Optional.of(making.get());
        } catch (Refusal impossible) {
            return Optional.empty();
        }
    }

    private Tried easier(DrillKind kind, Optional<Side> hand, Pairing pairing) {
        return drill(kind, hand, pairing, Hardness.of(pairing, performer, kit))
                .only(drill -> drill.hardness().total() < hardness.total() - EASIER, Why.NO_EASIER);
    }

    private Tried drill(DrillKind kind, Optional<Side> hand, Pairing pairing, Hardness hard) {
        return Phrase.write(pairing, lexicon)
                .map(
                        phrase ->
                                Tried.of(
                                        new Drill(
                                                kind,
                                                hand,
                                                pairing,
                                                Optional.of(phrase),
                                                hard,
                                                List.of())))
                .orElseGet(() -> Tried.not(Why.NO_WORDS));
    }
}
