package deferent.motion.trade;

import static deferent.motion.trade.Word.*;

import deferent.motion.pairing.Arc;
import deferent.motion.pairing.Form;
import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.Measure;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Polygon;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.pairing.Stretches;
import deferent.motion.pairing.Swing;
import deferent.motion.pairing.Turns;
import deferent.motion.pairing.Weave;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * The table of the trade's motions, one row each. Where two rows recognise a motion, the upper one
 * names it; so a flower with a name of its own stands above flowers of any count.
 */
public final class Trade {
    private static final List<TradeMotion> ROWS = new ArrayList<>();
    private static final Map<String, TradeMotion> BY_KEY = new HashMap<>();

    // A straight-sided star's sides pass cos 72° of its points' distance from the centre; the
    // head's
    // least distance is the tether less the hand radius, its greatest their sum.
    private static final double STAR_RADIUS =
            (1 - Math.cos(Math.toRadians(72))) / (1 + Math.cos(Math.toRadians(72)));

    static {
        row(
                "static spin",
                "the hand is still and the poi goes round it",
                "one turn a cycle, starting straight to the performer's left",
                Word.and(TURNS, START, STRETCHES, STALLING, EASE),
                sizes -> new Motion(Series.STILL, sizes.spin(1, 0)),
                Trade::staticSpin,
                "static");
        row(
                "extension",
                "hand and head go round together with the tether pointing outward",
                "hand radius one tether",
                Word.and(HAND_RADIUS, HAND_START),
                sizes -> Motion.flower(sizes.radius(1), 1, 0),
                seen -> seen.circling(1, c -> when(c.starts(0), () -> Call.of("extension"))),
                "long-arm");
        row(
                "isolation",
                "hand and head go round together on opposite sides of a centre that lies on the"
                        + " tether",
                "hand radius half a tether, so that hand and head share one circle; any other below"
                        + " the tether puts the centre elsewhere on the tether",
                Word.and(HAND_RADIUS, HAND_START),
                Trade::isolation,
                seen ->
                        seen.circling(
                                1,
                                c ->
                                        when(
                                                c.starts(Math.PI)
                                                        && c.radius() < seen.tether() - Seen.NEAR,
                                                () -> Call.of("isolation"))),
                "unit circle");
        row(
                "point isolation",
                "the hand goes round its poi's head, which stays on one point",
                "hand radius one tether always",
                Word.and(HAND_START),
                sizes -> Motion.flower(sizes.tether(), 1, Math.PI),
                seen ->
                        seen.circling(
                                1,
                                c ->
                                        when(
                                                c.starts(Math.PI)
                                                        && Math.abs(c.radius() - seen.tether())
                                                                < Seen.NEAR,
                                                () -> Call.of("point isolation"))));
        row(
                "linear extension",
                "the cat-eye whose ellipse has collapsed to a line",
                "horizontal; its hand radius is always its tether",
                lying(TILT, START, HAND_START),
                sizes -> Motion.flower(sizes.tether(), -1, sizes.angle(START, 0)),
                seen ->
                        seen.circling(
                                -1,
                                c ->
                                        Math.abs(c.radius() - seen.tether()) < Seen.NEAR
                                                ? seen.standing("", "linear extension", c.tilt())
                                                : Optional.empty()));
        row(
                "cat-eye",
                "one antispin turn to each turn of the hand: the head draws an ellipse",
                "hand radius half a tether, horizontal",
                lying(HAND_RADIUS, TILT, START, ANTISPIN, HAND_START),
                sizes -> Motion.flower(sizes.radius(0.5), -1, sizes.angle(START, 0)),
                seen -> seen.circling(-1, c -> seen.standing("horizontal ", "cat-eye", c.tilt())),
                "cateye",
                "cat eye",
                "cat's eye");
        row(
                "linear isolation",
                "the hand goes to and fro on a line and the poi turns once, so that the head runs"
                        + " on the line across",
                "hand line horizontal; it reaches one tether to either side always",
                lying(TILT),
                sizes -> new Motion(Series.line(sizes.tether(), 0), new Turns(1, Math.PI)),
                Trade::linearIsolation);
        row(
                "figure eight",
                "a linear extension opened into an eight: the hand rises and falls twice a cycle"
                        + " while it goes round, so the head draws an eight of two even halves",
                "lying, which is also called infinity; hand radius one tether, rising and falling"
                        + " half a tether, always",
                lying(TILT),
                sizes -> new Motion(eight(sizes.tether(), 0), new Turns(-1, 0)),
                Trade::figureEight,
                "figure 8",
                "figure of eight",
                "figure of 8",
                "infinity",
                "infinity sign",
                "lemniscate");
        row(
                "pentagram",
                "a star of five points drawn without lifting: the hand goes round three times a"
                        + " cycle and the poi turns twice against it, so that each point is two"
                        + " fifths of a turn from the one before",
                "hand radius 0.53 tethers, at which the star's sides are as near the centre as"
                        + " straight lines would be; a point straight to the performer's left",
                Word.and(HAND_RADIUS, TILT, START),
                sizes ->
                        new Motion(
                                new Series(
                                        List.of(new Series.Term(3, sizes.radius(STAR_RADIUS), 0))),
                                new Turns(-2, sizes.angle(START, 0))),
                Trade::pentagram,
                "five-pointed star",
                "star");
        row(
                "cardioid",
                "a one-petal in-spin about so wide a circle that its petal shrinks to a point: the"
                        + " head draws a heart",
                "hand radius two tethers always",
                Word.and(TILT, START, HAND_START),
                sizes -> Motion.flower(2 * sizes.tether(), 2, sizes.angle(START, 0)),
                seen ->
                        seen.circling(
                                2,
                                c ->
                                        when(
                                                Math.abs(c.radius() - 2 * seen.tether())
                                                        < Seen.NEAR,
                                                () -> Call.of("cardioid"))));
        flower(-2, "triquetra", "the three-petal antispin flower", "three-petal antispin");
        row(
                "flower",
                "the hand goes round a circle while the poi turns a whole number of times; each"
                        + " loop is a petal",
                "four petals, antispin, diamond, hand radius one tether",
                flowers(PETALS, TURNS, IN_SPIN),
                sizes ->
                        new Motion(
                                sizes.circle(),
                                sizes.spin(sizes.flowerTurns(1 - Sizes.USUAL_PETALS), sizes.box())),
                seen ->
                        Math.abs(seen.spin().turns()) <= 1
                                ? Optional.empty()
                                : seen.flower(Names.flower(seen.spin().turns())));
        row(
                "half-and-half flower",
                "a flower that is in-spin for half the cycle and antispin for the other half",
                "four petals, hand radius one tether",
                Word.and(HAND_RADIUS, PETALS, TILT, START, STALLING, EASE, HAND_START),
                sizes -> new Motion(sizes.circle(), halfAndHalf(sizes)),
                Trade::halfAndHalf,
                "half-and-half",
                "half and half",
                "half-half flower",
                "in-spin antispin flower");
        row(
                "pendulum",
                "the hand is still; the head swings under gravity and comes back the same way",
                "amplitude a quarter turn to each side, about straight down",
                Word.and(AMPLITUDE, REST, TILT),
                sizes -> new Motion(Series.STILL, sizes.swing()),
                seen -> when(seen.still() && seen.spin().swings(), () -> Call.of("pendulum")));
        row(
                "cat-eye CAP",
                "the CAP with half a turn out and half a turn back, which points inward in the"
                        + " middle of the way back",
                "the lower half of a circle, hand radius one tether",
                Word.and(HAND_RADIUS, START, TILT),
                Cap::catEye,
                Cap::catEyeCalled);
        row(
                "triquetra CAP",
                "the CAP with three petals, which sweeps two thirds of a circle",
                "hand radius one tether",
                Word.and(HAND_RADIUS, START, TILT),
                sizes -> Cap.of(sizes, 3),
                Cap::triquetraCalled,
                "triquetra C-CAP",
                "CAP triquetra");
        row(
                "CAP",
                "continuous assembly pattern: the hand comes and goes along an arc while the poi"
                        + " keeps turning one way, in extension on the way out and antispin on the"
                        + " way back; the same in a mirror on the line through the arc's middle",
                "the lower half of a circle, hand radius one tether, the poi turning evenly: half a"
                        + " turn on the way out, a quarter of the cycle, and one and a half on the way"
                        + " back; with N petals the arc is 720°/N and the way out 1/N of the cycle;"
                        + " riding, one turn each way, the tether straight down in mid-swing",
                formed(Arc.FORM, PETALS, TURNS, START, STRETCHES, STALLING, EASE, TILT),
                sizes -> Cap.of(sizes, Sizes.USUAL_PETALS),
                Cap::called,
                "C-CAP",
                "continuous assembly pattern");
        row(
                "stall",
                "the head stops for an instant at the end of a swing; here the hand is still and"
                        + " the poi swings from stall to stall at the tempo of the phrase",
                "amplitude a quarter turn to each side, about straight down",
                Word.and(AMPLITUDE, START, EASE, TILT),
                sizes -> new Motion(Series.STILL, stall(sizes)),
                Trade::stall);

        // Beside and around the body.
        weave(
                "two-beat weave",
                1,
                1,
                0.28,
                0.09,
                Both.of(QUARTER),
                "each poi makes one turn on its own side of the body and one across, half a turn"
                        + " after the other");
        weave(
                "three-beat weave",
                1,
                2,
                0.28,
                0.09,
                Both.of(SPLIT),
                "each poi makes one turn on its own side of the body and two across, first over the"
                        + " other arm, then under it; the hands go half a cycle apart",
                "weave",
                "beat weave");
        weave(
                "five-beat weave",
                2,
                3,
                0.23,
                0.13,
                Both.of(SPLIT),
                "each poi makes two turns on its own side of the body and three across, the arms"
                        + " winding about each other; the hands go half a cycle apart");
        passing(
                "crosser",
                Weave.Between.LEFT_AND_RIGHT,
                "both arms cross before the body and open again: each poi makes one turn on its own"
                        + " side and one across, both at once",
                "planes 32 cm to either side of the middle, the left hand higher than the right by 17 cm",
                Word.and(),
                Both.of(TOGETHER),
                sizes -> mill(Weave.Between.LEFT_AND_RIGHT, 0.32, new Turns(-2, 0)));
        passing(
                "windmill",
                Weave.Between.BEFORE_AND_BEHIND,
                "in the wall plane, each poi makes one turn before the body and one behind it, the"
                        + " hands passing over the head, half a turn after one another",
                "32 cm before and behind the middle of the body, hands 14 cm over the"
                        + " crown, each 16 cm to its own side",
                Word.and(),
                Both.at(TIMING, 0.75),
                sizes -> mill(Weave.Between.BEFORE_AND_BEHIND, 0.32, new Turns(2, Math.PI / 2)));
        passing(
                "corkscrew",
                Weave.Between.ABOVE_AND_BELOW,
                "in the floor plane, each poi makes one level turn over the head and one low before"
                        + " the body, the hands rising and sinking past each other",
                "36 cm over and under the chin, 50 cm before the breastbone, each hand 16 cm to its"
                        + " own side",
                Word.and(),
                Both.at(TIMING, 0.75),
                sizes -> mill(Weave.Between.ABOVE_AND_BELOW, 0.36, new Turns(2, Math.PI / 2)));
        row(
                "fountain",
                "two wheels go on beside the body while the performer turns half round toward them"
                        + " and back, so that what went forward over the top goes in reverse",
                "in the wheel plane 34 cm to the left, level with the breastbone and 10 cm behind it,"
                        + " forward, in split time; eight turns, the body turning through"
                        + " the third and fourth and back through the last two; the hands go round"
                        + " each other at 6 cm",
                Word.and(HAND_RADIUS),
                sizes -> Motion.flower(sizes.length(HAND_RADIUS, 0.06), 1, 0),
                seen -> Optional.empty(),
                Optional.of(Both.fountain()));
        only(
                "butterfly",
                "two wheels against each other before the body, hands together: the heads meet at"
                        + " the top and at the bottom",
                Both.only(OPPOSITE));
        only(
                "buzzsaw",
                "two wheels side by side between the arms, straight ahead, turning the same way in"
                        + " split time",
                Both.only(BETWEEN_ARMS, SPLIT));

        // Hand paths with the poi turning as said.
        path(
                "point",
                "a still hand",
                "the poi turns once a cycle",
                Word.and(),
                sizes -> Series.STILL,
                seen -> when(seen.still(), () -> seen.described("still hand", "point")),
                "still hand");
        row(
                "circle",
                "the hand goes round a circle, the poi turns as said",
                "hand radius one tether, the poi turns once",
                turning(Word.and(HAND_RADIUS, HAND_START, PETALS, IN_SPIN, ANTISPIN)),
                sizes -> new Motion(sizes.circle(), sizes.spin(sizes.flowerTurns(1), 0)),
                Trade::circle);
        path(
                "line",
                "the hand goes to and fro on a line, the poi turns as said",
                "one tether to either side, horizontal, the poi turns once",
                lying(HAND_RADIUS, TILT),
                sizes -> Series.line(sizes.radius(1), 0),
                seen ->
                        when(
                                seen.motion().path().noun().equals("line"),
                                () -> seen.described("line", "line")));
        path(
                "ellipse",
                "the hand goes round an ellipse, the poi turns as said",
                "axes of one tether and half a tether from the centre, the poi turns once",
                lying(AXES, TILT),
                Sizes::ellipse,
                seen -> series(seen).filter(Series::elliptic).map(s -> ellipse(seen, s)));
        for (int corners : new int[] {3, 4, 5, 6, 8}) {
            String name = new Polygon(corners, 1, 0).noun();
            String many = Names.count(corners);
            Map<String, Double> unsaid = Map.of("corners", (double) corners);
            path(
                    name,
                    "a polygon of " + many + " corners",
                    "as a polygon",
                    formed(Polygon.FORM, TILT),
                    sizes -> sizes.path(Polygon.FORM, unsaid),
                    seen ->
                            when(
                                    seen.motion().path().noun().equals(name),
                                    () -> seen.described(name, name)));
        }
        for (Form form : HandPath.forms()) {
            if (!form.means().isEmpty()) {
                path(
                        form.key(),
                        form.means() + ", the poi turns as said",
                        form.unsaid() + ", the poi turns once",
                        formed(form, TILT),
                        sizes -> sizes.path(form, Map.of()),
                        seen -> formed(seen, form));
            }
        }
        path(
                "loops",
                "a hand path given as circles added up: \"loops 1 of 30 cm plus -2 of 10 cm 45°\""
                        + " goes round 30 cm once while it goes round 10 cm twice the other way,"
                        + " begun at 45°",
                "angles 0; the poi turns once",
                Word.and(LOOPS),
                Sizes::loops,
                seen -> series(seen).filter(s -> !s.still()).map(s -> loops(seen, s)));
    }

    /** What is meant by a weave of beats that are not said. */
    public static final TradeMotion WEAVE = spelt("weave").orElseThrow();

    /** What is meant by words that say a flower but name none. */
    public static final TradeMotion FLOWER = spelt("flower").orElseThrow();

    private Trade() {}

    /** A flower as it is said: "four-petal antispin" of −3 turns; turns are not 1. */
    public static String flower(int turns) {
        return Names.flower(turns);
    }

    private static void row(
            String said,
            String means,
            String sizesUnsaid,
            SortedSet<Word> takes,
            Function<Sizes, Motion> made,
            Function<Seen, Optional<Call>> recognised,
            String... also) {
        row(said, means, sizesUnsaid, takes, made, recognised, Optional.empty(), also);
    }

    private static void row(
            String said,
            String means,
            String sizesUnsaid,
            SortedSet<Word> takes,
            Function<Sizes, Motion> made,
            Function<Seen, Optional<Call>> recognised,
            Optional<Both> both,
            String... also) {
        List<String> spellings = new ArrayList<>(List.of(said));
        spellings.addAll(Arrays.asList(also));
        TradeMotion row =
                new TradeMotion(spellings, means, sizesUnsaid, takes, made, recognised, both);
        ROWS.add(row);
        spellings.forEach(s -> BY_KEY.putIfAbsent(Spelling.key(s), row));
    }

    /**
     * A weave beside the body, the hands going round each other as their poi turn. Sizes are such
     * that a usual body's arms get past both cords and each other, forward and in reverse.
     */
    private static void weave(
            String said,
            int own,
            int across,
            double beside,
            double radius,
            Both both,
            String means,
            String... also) {
        passing(
                said,
                Weave.Between.LEFT_AND_RIGHT,
                means,
                "in the wheel plane, forward over the top; planes "
                        + Amounts.length(beside)
                        + " to either side of the middle; the hands go round each other at "
                        + Amounts.length(radius),
                Word.and(HAND_RADIUS, BESIDE),
                both,
                sizes -> beside(sizes, own, across, beside, radius),
                also);
    }

    /** A motion that passes between two sides of the body, whatever else of it is said. */
    private static void passing(
            String said,
            Weave.Between between,
            String means,
            String sizesUnsaid,
            SortedSet<Word> takes,
            Both both,
            Function<Sizes, Motion> made,
            String... also) {
        Motion usual = made.apply(new Sizes(Map.of(), 1));
        Weave weave = usual.weave().orElseThrow();
        row(
                said,
                means,
                sizesUnsaid,
                takes,
                made,
                seen ->
                        seen.motion()
                                .weave()
                                .filter(
                                        other ->
                                                other.between() == between
                                                        && other.own() == weave.own()
                                                        && other.across() == weave.across()
                                                        && seen.motion().path().still()
                                                                == usual.path().still()
                                                        && seen.spin().equals(usual.spin()))
                                .map(other -> new Call(said, said + beside(other, weave))),
                Optional.of(both),
                also);
    }

    private static String beside(Weave weave, Weave usual) {
        return weave.out() == usual.out() ? "" : " beside " + Amounts.length(weave.out());
    }

    // With its hand on a small circle in extension: two that are half a turn apart then keep on
    // opposite sides of each other, and each arm passes the other cord's free side.
    private static Motion beside(Sizes sizes, int own, int across, double beside, double radius) {
        int turns = -own - across;
        double out = sizes.length(BESIDE, beside);
        Series circle =
                new Series(List.of(new Series.Term(turns, sizes.length(HAND_RADIUS, radius), 0)));
        return new Motion(
                circle,
                new Turns(turns, 0),
                Optional.of(new Weave(Weave.Between.LEFT_AND_RIGHT, own, across, out)));
    }

    // With a hand that only passes, one turn of its poi on either side.
    private static Motion mill(Weave.Between between, double out, Turns turns) {
        return new Motion(Series.STILL, turns, Optional.of(new Weave(between, 1, 1, out)));
    }

    /** The weave of so many beats, if the trade has a word for it. */
    public static Optional<TradeMotion> weave(double beats) {
        return beats == Math.rint(beats) && beats >= 2 && beats <= 5
                ? spelt(Spelling.key(Names.count((int) beats) + "-beat weave"))
                : Optional.empty();
    }

    /** What the trade says only of both hands, each of which does a static spin. */
    private static void only(String said, String means, Both both, String... also) {
        row(
                said,
                means,
                "one turn a cycle",
                Word.and(),
                sizes -> new Motion(Series.STILL, new Turns(1, 0)),
                seen -> Optional.empty(),
                Optional.of(both),
                also);
    }

    /** A flower of a name of its own, of n poi turns to each turn of the hand. */
    private static void flower(int n, String said, String means, String... also) {
        row(
                said,
                means,
                "hand radius one tether, a petal straight to the performer's left",
                flowers(),
                sizes -> new Motion(sizes.circle(), sizes.spin(n, sizes.box())),
                seen -> seen.spin().turns() == n ? seen.flower(said) : Optional.empty(),
                also);
    }

    /** A hand path with the poi turning as said, once where it is not. */
    private static void path(
            String said,
            String means,
            String sizesUnsaid,
            SortedSet<Word> takes,
            Function<Sizes, HandPath> made,
            Function<Seen, Optional<Call>> recognised,
            String... also) {
        row(
                said,
                means,
                sizesUnsaid,
                turning(takes),
                sizes -> new Motion(made.apply(sizes), sizes.spin(1, 0)),
                recognised,
                also);
    }

    private static SortedSet<Word> turning(SortedSet<Word> takes) {
        takes.addAll(List.of(TURNS, START, STRETCHES, STALLING, EASE, SWINGING, AMPLITUDE, REST));
        return takes;
    }

    private static SortedSet<Word> flowers(Word... more) {
        SortedSet<Word> takes = Word.and(more);
        takes.addAll(
                List.of(
                        HAND_RADIUS,
                        ANTISPIN,
                        BOX,
                        DIAMOND,
                        TILT,
                        START,
                        STALLING,
                        EASE,
                        HAND_START));
        return takes;
    }

    /** What has two axes lies or stands. */
    private static SortedSet<Word> lying(Word... more) {
        SortedSet<Word> takes = Word.and(more);
        takes.addAll(List.of(HORIZONTAL, VERTICAL, DIAGONAL));
        return takes;
    }

    private static SortedSet<Word> formed(Form form, Word... more) {
        SortedSet<Word> takes = Word.and(more);
        form.sizes().forEach(size -> takes.add(Word.of(size)));
        return takes;
    }

    /** All motions, in the order of the table. */
    public static List<TradeMotion> motions() {
        return List.copyOf(ROWS);
    }

    /** The motion of that {@link Spelling#key}, a plural ending forgiven. */
    public static Optional<TradeMotion> spelt(String key) {
        return Spelling.find(BY_KEY, key);
    }

    /** What the trade calls it, or else a description. */
    public static Call called(Seen seen) {
        return ROWS.stream()
                .flatMap(row -> row.recognised().apply(seen).stream())
                .findFirst()
                .orElseGet(() -> seen.described(seen.motion().path().noun(), ""));
    }

    /**
     * The same motion with its hand where the other poi's head goes; empty where it is called after
     * the path that its hand would lose.
     */
    public static Optional<Motion> riding(Seen seen) {
        return seen.motion().weave().isPresent()
                        || called(seen).name().startsWith(seen.motion().path().noun())
                ? Optional.empty()
                : Optional.of(Cap.riding(seen));
    }

    /** The first size, in words, that a hand path of this row has otherwise than {@code made}. */
    public static Optional<String> pathSize(TradeMotion row, HandPath path, HandPath made) {
        Optional<Form.Sized> own = sized(path);
        Optional<Form.Sized> other = sized(made);
        if (own.isPresent() && other.map(Form.Sized::form).equals(own.map(Form.Sized::form))) {
            List<Measure> sizes = own.get().form().sizes();
            List<Double> has = own.get().sizes();
            return IntStream.range(0, sizes.size())
                    .filter(i -> row.takes().contains(Word.of(sizes.get(i))))
                    .filter(i -> !other.get().sizes().get(i).equals(has.get(i)))
                    .mapToObj(i -> " " + said(sizes.get(i), has.get(i)))
                    .findFirst();
        }
        boolean radius = row.takes().contains(HAND_RADIUS) && path.radius() != made.radius();
        return when(radius, () -> " hand radius " + Amounts.length(path.radius()));
    }

    private static Optional<Form.Sized> sized(HandPath path) {
        return path.match(Optional::of, summed -> Optional.empty(), drawn -> Optional.empty());
    }

    private static String said(Measure measure, double size) {
        return measure.word()
                + " "
                + switch (measure.unit()) {
                    case LENGTH -> Amounts.length(size);
                    case ANGLE -> Amounts.angle(size);
                    case WHOLE -> Amounts.number(size);
                    case SHARE -> Amounts.share(size);
                };
    }

    private static <T> Optional<T> when(boolean holds, Supplier<T> made) {
        return holds ? Optional.of(made.get()) : Optional.empty();
    }

    private static Optional<Call> staticSpin(Seen seen) {
        String name = "static spin";
        if (!seen.still() || seen.spin().swings() || stall(seen).isPresent()) {
            return Optional.empty();
        }
        if (seen.spin().even().isEmpty()) {
            return Optional.of(seen.described("still hand", name));
        }
        return Optional.of(
                switch (seen.spin().turns()) {
                    case 0 -> new Call("still hand and poi", name);
                    case 1 -> Call.of(name);
                    default -> seen.described(name, name);
                });
    }

    private static Motion isolation(Sizes sizes) {
        double radius = sizes.radius(0.5);
        if (!(radius < sizes.tether())) {
            throw new Refusal(
                    "of an isolation is " + Amounts.length(radius),
                    "hand radius",
                    "give less than its tether of " + Amounts.length(sizes.tether()));
        }
        return Motion.flower(radius, 1, Math.PI);
    }

    private static Optional<Call> linearIsolation(Seen seen) {
        double half = seen.tether() / 2;
        return series(seen)
                .filter(Series::elliptic)
                .map(Series::terms)
                .filter(terms -> Math.abs(terms.get(0).radius() - half) < Seen.NEAR)
                .filter(terms -> Math.abs(terms.get(1).radius() - half) < Seen.NEAR)
                .filter(
                        terms ->
                                seen.spin()
                                        .even()
                                        .filter(even -> even.turns() == 1)
                                        .filter(
                                                even ->
                                                        Seen.sameTurn(
                                                                even.start(),
                                                                terms.get(1).angle() + Math.PI))
                                        .isPresent())
                .map(terms -> Call.of("linear isolation"));
    }

    /**
     * With a poi turning as e^{−it}, this path L·e^{it} − i·(L/2)·sin 2t leaves the head on 2L·cos
     * t along the tilt and −(L/2)·sin 2t across it: Gerono's eight.
     */
    private static Series eight(double tether, double tilt) {
        return new Series(
                List.of(
                        new Series.Term(-2, tether / 4, tilt),
                        new Series.Term(1, tether, tilt),
                        new Series.Term(2, tether / 4, tilt + Math.PI)));
    }

    private static Optional<Call> figureEight(Seen seen) {
        return series(seen)
                .filter(path -> path.terms().size() == 3)
                .filter(path -> near(path, eight(seen.tether(), path.terms().get(0).angle())))
                .filter(
                        path ->
                                seen.spin()
                                        .even()
                                        .filter(even -> even.turns() == -1)
                                        .filter(
                                                even ->
                                                        Seen.sameTurn(
                                                                even.start(),
                                                                path.terms().get(0).angle()))
                                        .isPresent())
                .map(path -> Call.of("figure eight"));
    }

    private static boolean near(Series a, Series b) {
        for (int i = 0; i < a.terms().size(); i++) {
            Series.Term one = a.terms().get(i);
            Series.Term other = b.terms().get(i);
            if (one.k() != other.k()
                    || Math.abs(one.radius() - other.radius()) > Seen.NEAR
                    || !Seen.sameTurn(one.angle(), other.angle())) {
                return false;
            }
        }
        return true;
    }

    private static Optional<Call> pentagram(Seen seen) {
        boolean twice = seen.spin().even().isPresent() && seen.spin().turns() == -2;
        return seen.motion()
                .path()
                .circle()
                .filter(circle -> twice && circle.k() == 3)
                .map(circle -> Call.of("pentagram"));
    }

    private static SpinLaw halfAndHalf(Sizes sizes) {
        int p = sizes.petals();
        return sizes.rested(
                new Stretches(
                        sizes.angle(START, 0),
                        Sizes.halves((1 + p) / 2.0, (1 - p) / 2.0),
                        sizes.ease()));
    }

    private static Optional<Call> halfAndHalf(Seen seen) {
        String name = "half-and-half flower";
        return seen.circling()
                .flatMap(c -> seen.spin().inStretches())
                .map(Stretches::stretches)
                .filter(s -> s.size() == 2 && s.get(0).share() == 0.5 && seen.spin().turns() == 1)
                .filter(s -> s.get(0).turns() > 0.5 && s.get(1).turns() <= 0)
                .map(
                        s -> {
                            long petals = Math.round(2 * s.get(0).turns() - 1);
                            boolean usual = petals == Sizes.USUAL_PETALS;
                            return new Call(name, usual ? name : petals + "-petal " + name);
                        });
    }

    private static Stretches stall(Sizes sizes) {
        double amplitude = sizes.angle(AMPLITUDE, Sizes.QUARTER_TURN);
        Refusal.positive(amplitude, 2 * Math.PI, "amplitude of a stall", "rad");
        double turns = amplitude / Math.PI;
        return new Stretches(
                        sizes.angle(START, Swing.DOWN - amplitude),
                        Sizes.halves(turns, -turns),
                        sizes.ease())
                .resting();
    }

    private static Optional<Call> stall(Seen seen) {
        return seen.spin()
                .inStretches()
                .filter(s -> seen.still() && s.turns() == 0 && s.equals(s.resting()))
                .map(
                        s -> {
                            double amplitude = s.stretches().get(0).turns() * Math.PI;
                            return new Call(
                                    "stall",
                                    amplitude == Sizes.QUARTER_TURN
                                            ? "stall"
                                            : "stall amplitude " + Amounts.angle(amplitude));
                        });
    }

    private static Optional<Call> circle(Seen seen) {
        return seen.circling()
                .map(
                        c ->
                                c.spin().even().filter(even -> even.turns() == 1).isEmpty()
                                        ? seen.described("circle", "circle")
                                        : new Call(
                                                "circle, the poi turning once with the hand, "
                                                        + Seen.degrees(
                                                                Math.IEEEremainder(
                                                                        c.spin().starts().orElse(0),
                                                                        2 * Math.PI))
                                                        + " from outward",
                                                "circle"));
    }

    private static Optional<Series> series(Seen seen) {
        return seen.motion()
                .path()
                .match(sized -> Optional.empty(), Optional::of, drawn -> Optional.empty());
    }

    private static Call ellipse(Seen seen, Series path) {
        return seen.described(
                path.noun(), "ellipse axes " + axis(path.along()) + " by " + axis(path.across()));
    }

    // Sums and differences of radii carry what binary fractions leave behind.
    private static String axis(double metres) {
        return Amounts.length(Math.rint(metres * 1e12) / 1e12);
    }

    private static Optional<Call> formed(Seen seen, Form form) {
        HandPath path = seen.motion().path();
        boolean same = sized(path).filter(of -> of.form().equals(form)).isPresent();
        return when(same, () -> seen.described(path.noun(), path.noun()));
    }

    private static Call loops(Seen seen, Series path) {
        String noun =
                path.circle()
                        .map(
                                only ->
                                        "circle gone round "
                                                + Names.times(Math.abs(only.k()))
                                                + (only.k() < 0 ? " the other way" : ""))
                        .orElse(path.noun());
        String words =
                path.terms().stream()
                        .map(
                                term ->
                                        term.k()
                                                + " of "
                                                + Amounts.length(term.radius())
                                                + (Double.compare(term.angle(), 0) == 0
                                                        ? ""
                                                        : " " + Amounts.angle(term.angle())))
                        .collect(Collectors.joining(" plus ", "loops ", ""));
        return seen.described(noun, words);
    }
}
