package deferent.search.path;

import deferent.motion.pairing.Facing;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.Size;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Takes a pattern apart into drills and puts them in order.
 *
 * <p>Each hand alone comes first, the easier hand before the other. Then come both hands: apart,
 * slower (or, where that is no easier, larger) and one neighbour from which least changes. Of these
 * only what is easier than the pattern itself by {@link Hardness} is kept, and they stand from easy
 * to hard; so nothing stands before an easier version of itself. A drill that words cannot say is
 * left out, since nobody could look it up or play it.
 */
public final class PathSearch {
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

    private PathSearch(Pairing whole, Performer performer, Kit kit, Lexicon lexicon) {
        this.whole = whole;
        this.performer = performer;
        this.kit = kit;
        this.lexicon = lexicon;
        this.hardness = Hardness.of(whole, performer, kit);
    }

    /** A neighbour, with how far its hand strays from the pattern's own, metres. */
    private record Near(Drill drill, double strays) {}

    /**
     * The path to a pattern.
     *
     * @param lexicon the user's own names for motions
     */
    public static Path of(Pairing pairing, Performer performer, Kit kit, Lexicon lexicon) {
        return new PathSearch(pairing, performer, kit, lexicon).path();
    }

    /**
     * One hand of a pairing, the other still with its poi hanging; empty where it cannot go alone,
     * as a hand cannot that goes where the other head does.
     */
    public static Optional<Pairing> alone(Pairing whole, Side side, Performer performer) {
        return Resting.alone(whole, side, performer);
    }

    private Path path() {
        List<Drill> drills = new ArrayList<>();
        Stream.of(Side.values())
                .flatMap(side -> alone(side).stream())
                .sorted(byHardness())
                .forEach(drills::add);
        List<Integer> hands = IntStream.range(0, drills.size()).boxed().toList();
        Stream.of(apart(), slower().or(this::larger), near())
                .flatMap(Optional::stream)
                .sorted(byHardness())
                .map(drill -> needing(drill, hands))
                .forEach(drills::add);
        drills.add(
                new Drill(
                        DrillKind.WHOLE,
                        Optional.empty(),
                        whole,
                        Phrase.write(whole, lexicon),
                        hardness,
                        IntStream.range(0, drills.size()).boxed().toList()));
        return new Path(drills);
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

    private Optional<Drill> alone(Side side) {
        return Resting.alone(whole, side, performer)
                .flatMap(
                        pairing ->
                                drill(
                                        DrillKind.ALONE,
                                        Optional.of(side),
                                        pairing,
                                        Hardness.alone(pairing, side, performer, kit)));
    }

    /** The nearest place that is easier; none where nothing meets that could be parted. */
    private Optional<Drill> apart() {
        Trace trace = Trace.of(whole);
        boolean meets = Stream.of(Side.values()).anyMatch(side -> Hardness.touching(trace, side));
        boolean bound =
                whole.weaves()
                        || whole.rider().isPresent()
                        || !whole.facing().equals(Facing.AUDIENCE);
        if (!meets || bound) {
            return Optional.empty();
        }
        return ASIDE.stream()
                .flatMap(by -> made(() -> parted(by)).stream())
                .filter(
                        pairing ->
                                Stream.of(Side.values())
                                        .noneMatch(
                                                side -> Hardness.touching(Trace.of(pairing), side)))
                .flatMap(pairing -> easier(DrillKind.APART, Optional.empty(), pairing).stream())
                .findFirst();
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

    private Optional<Drill> slower() {
        if (whole.setsOwnTempo()) {
            return Optional.empty();
        }
        return made(() -> whole.withTempo(OptionalDouble.of(tempo(whole.tempo() * SLOWER))))
                .flatMap(pairing -> easier(DrillKind.SLOWER, Optional.empty(), pairing))
                .filter(drill -> drill.hardness().cords() <= hardness.cords() + EASIER);
    }

    /**
     * As much larger all over, so that times are as the square root of lengths and every cord pulls
     * as it does in the pattern (Froude's law of likeness, from memory); within reach only.
     */
    private Optional<Drill> larger() {
        if (whole.weaves() || whole.setsOwnTempo()) {
            return Optional.empty();
        }
        return made(this::scaled)
                .flatMap(pairing -> easier(DrillKind.LARGER, Optional.empty(), pairing))
                .filter(drill -> drill.hardness().reach() <= hardness.reach() + EASIER);
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
            Part part = whole.part(side);
            Motion motion = part.motion();
            if (part.still() || motion.riding() || motion.weave().isPresent()) {
                continue;
            }
            double radius = motion.path().radius();
            if (motion.path().circle().isPresent()) {
                near(
                        DrillKind.HALF_CIRCLE,
                        side,
                        radius / 2,
                        () ->
                                Size.of(side, Size.Kind.HAND_RADIUS)
                                        .set(whole, millimetres(radius / 2)),
                        found);
            }
            near(
                    DrillKind.STILL_HAND,
                    side,
                    radius,
                    () -> whole.with(side, part.with(still(motion.spin()))),
                    found);
        }
        return found.stream().min(Comparator.comparingDouble(Near::strays)).map(Near::drill);
    }

    private void near(
            DrillKind kind, Side side, double strays, Supplier<Pairing> made, List<Near> found) {
        made(made)
                .flatMap(pairing -> easier(kind, Optional.of(side), pairing))
                .ifPresent(drill -> found.add(new Near(drill, strays)));
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

    private Optional<Drill> easier(DrillKind kind, Optional<Side> hand, Pairing pairing) {
        return drill(kind, hand, pairing, Hardness.of(pairing, performer, kit))
                .filter(drill -> drill.hardness().total() < hardness.total() - EASIER);
    }

    private Optional<Drill> drill(
            DrillKind kind, Optional<Side> hand, Pairing pairing, Hardness hard) {
        return Phrase.write(pairing, lexicon)
                .map(
                        phrase ->
                                new Drill(
                                        kind, hand, pairing, Optional.of(phrase), hard, List.of()));
    }
}
