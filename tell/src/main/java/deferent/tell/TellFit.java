package deferent.tell;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Size;
import deferent.motion.phrase.MotionWords;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import deferent.reading.link.PathKind;
import deferent.search.fit.CordedFit;
import deferent.search.fit.Cost;
import deferent.search.fit.FitReading;
import deferent.search.fit.Goal;
import deferent.search.fit.Neighbour;
import deferent.search.fit.Remedy;
import deferent.search.fit.SizeChange;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Says what a fit found, what a size that is out costs, and what a motion turns into. */
public final class TellFit {
    /** Costs below this are not worth a word, metres: no hand is that exact. */
    private static final double WORTH_SAYING = 0.005;

    /** A size this near to another is the same, metres or radians. */
    private static final double SAME = 0.0005;

    /** How many ways one sentence names. */
    private static final int REMEDIES = 3;

    private static final String READ_AFTERWARDS =
            "Each answer has been read afterwards; how far apart it leaves them is what that reading"
                    + " says.";

    private TellFit() {}

    /** The verdict, then each answer, least change first. */
    public static List<Told> of(FitReading fit, Pairing pairing) {
        List<Told> all = new ArrayList<>();
        all.add(verdict(fit, pairing));
        for (int i = 0; i < fit.answers().size(); i++) {
            Remedy answer = fit.answers().get(i);
            if (!answer.changes().isEmpty()) {
                all.add(
                        new Told(
                                "fit." + (i + 1),
                                Told.Tone.NOTE,
                                Say.capital(changes(answer, pairing)) + ".",
                                why(answer)));
            }
        }
        return List.copyOf(all);
    }

    private static Told verdict(FitReading fit, Pairing pairing) {
        String reason = obstacle(fit, pairing);
        String because = reason.isEmpty() ? "." : ", because " + reason + ".";
        String riding =
                fit.riding()
                        .map(ridden -> Say.capital(ride(ridden, pairing)) + ". As it is said it ")
                        .orElse("");
        if (!fit.closes()) {
            boolean within = fit.goal() == Goal.PLACED && fit.leastGap() <= Place.HAND_BREADTH;
            return new Told(
                    "fit",
                    Told.Tone.WARN,
                    (riding.isEmpty() ? "It cannot" : riding + "cannot")
                            + " close"
                            + (within ? " all the way" : "")
                            + ": with the best sizes tried "
                            + ends(fit)
                            + " are still "
                            + Say.length(fit.leastGap())
                            + " apart"
                            + (within ? ", less than a hand's breadth" : "")
                            + because,
                    "Least of all that was tried with the sizes that are free, read afterwards as any"
                            + " pairing is.");
        }
        boolean placed = fit.goal() == Goal.PLACED;
        if (fit.answers().get(0).changes().isEmpty()) {
            return new Told(
                    "fit",
                    Told.Tone.GOOD,
                    "It closes as it stands"
                            + (placed ? "" : " in shape")
                            + ": "
                            + ends(fit)
                            + " need no change.",
                    READ_AFTERWARDS);
        }
        return new Told(
                "fit",
                Told.Tone.GOOD,
                (riding.isEmpty() ? "It" : riding.strip())
                        + " can close "
                        + (placed ? "in " : "in shape in ")
                        + ways(fit.answers().size())
                        + (reason.isEmpty() ? "." : "; not " + unless(fit) + because.substring(1)),
                READ_AFTERWARDS);
    }

    private static String ends(FitReading fit) {
        return fit.carrier().head() + " and " + fit.carrier().other().hand();
    }

    /** How it does not close that closes. */
    private static String unless(FitReading fit) {
        return fit.goal() == Goal.PLACED
                ? "by the " + fit.carrier().word() + " hand radius alone,"
                : "at every instant,";
    }

    /** "let the right hand ride and it closes: \"pendulum vs triquetra riding\"". */
    public static String ride(Remedy ridden, Pairing pairing) {
        Side rider = ridden.pairing().rider().orElseThrow();
        boolean retimed = !ridden.pairing().timing().equals(pairing.timing());
        Optional<String> phrase = Phrase.write(ridden.pairing());
        String asked = MotionWords.of(pairing, rider);
        String becomes = MotionWords.of(ridden.pairing(), rider).replace(", riding", "");
        boolean kept =
                becomes.contains(asked)
                        || phrase.filter(p -> p.contains(asked + " riding")).isPresent();
        return "let "
                + rider.hand()
                + " ride"
                + (retimed ? ", together," : "")
                + " and it closes"
                + (kept ? "" : ", as " + Say.a(becomes))
                + phrase.map(p -> ": \"" + p + "\"").orElse("");
    }

    /**
     * The fit in one sentence, beside the link it closes; none where nothing needs to change.
     *
     * @param within of its answers those that the arms reach as well as what stands
     */
    static Optional<Told> remedy(FitReading fit, List<Remedy> within, Pairing pairing) {
        Told verdict = verdict(fit, pairing);
        String key = "fit." + fit.carrier().word();
        if (!fit.closes()) {
            return Optional.of(new Told(key, Told.Tone.NOTE, verdict.text(), verdict.why()));
        }
        if (fit.answers().get(0).changes().isEmpty()) {
            return Optional.empty();
        }
        if (within.isEmpty()) {
            return Optional.of(
                    new Told(
                            key,
                            Told.Tone.NOTE,
                            rides(fit, pairing)
                                    + "What would close it takes a hand beyond the arms' reach:"
                                    + " make it smaller first, or fit it to the arms.",
                            verdict.text()));
        }
        List<Remedy> kept = within.stream().filter(a -> becomes(a, pairing).isEmpty()).toList();
        String ways =
                (kept.isEmpty() ? within : kept)
                        .stream()
                                .limit(REMEDIES)
                                .map(answer -> changes(answer, pairing))
                                .collect(Collectors.joining("; or "));
        String close =
                fit.goal() == Goal.PLACED
                        ? "To close it, "
                        : rides(fit, pairing)
                                + "To close it in shape, though not at every instant, ";
        return Optional.of(new Told(key, Told.Tone.NOTE, close + ways + ".", verdict.text()));
    }

    private static String rides(FitReading fit, Pairing pairing) {
        return fit.riding().map(ridden -> Say.capital(ride(ridden, pairing)) + ". ").orElse("");
    }

    private static String ways(int answers) {
        return answers == 1 ? "one way" : answers + " ways, least change first";
    }

    private static String why(Remedy answer) {
        return (answer.exact() ? "Worked out exactly" : "Found by search")
                + (answer.gapLeft() < SAME
                        ? "; it closes wholly"
                        : "; it leaves " + Say.length(answer.gapLeft()))
                + ". Nothing moves further than "
                + Say.length(answer.moved())
                + " from where it was.";
    }

    /**
     * "make the right hand radius 60 cm (now 45 cm)", and what that makes of a motion that would
     * then be called something else.
     */
    public static String changes(Remedy answer, Pairing pairing) {
        if (answer.changes().isEmpty()) {
            return "no change";
        }
        String renamed = becomes(answer, pairing);
        return made(answer.changes(), pairing)
                + (renamed.isEmpty() ? "" : ", which makes " + renamed);
    }

    /** What it makes of motions that would be called something else; empty where of none. */
    private static String becomes(Remedy answer, Pairing pairing) {
        return Stream.of(Side.values())
                .filter(
                        side ->
                                !MotionWords.of(answer.pairing(), side)
                                        .equals(MotionWords.of(pairing, side)))
                .map(
                        side ->
                                "the "
                                        + side.word()
                                        + " motion "
                                        + Say.a(MotionWords.of(answer.pairing(), side)))
                .collect(Collectors.joining(", and "));
    }

    private static String made(List<SizeChange> changes, Pairing pairing) {
        List<String> said = new ArrayList<>();
        for (boolean centre : new boolean[] {false, true}) {
            List<String> some =
                    changes.stream()
                            .filter(change -> change.size().kind().centre() == centre)
                            .map(change -> change(change, pairing))
                            .toList();
            if (!some.isEmpty()) {
                said.add((centre ? "put " : "make ") + Say.listed(some, "and"));
            }
        }
        return String.join(", and ", said);
    }

    /** The fit with the cord taken into account, in one sentence. */
    public static Told corded(CordedFit fit, Pairing pairing) {
        String how =
                fit.changes().isEmpty() ? "nothing needs to change" : made(fit.changes(), pairing);
        String text;
        if (fit.closes()) {
            text =
                    "On real cords the link closes to within "
                            + Say.length(fit.gapAfter())
                            + " (now "
                            + Say.length(fit.gapBefore())
                            + "): "
                            + how
                            + ".";
        } else if (fit.possible()) {
            text =
                    "On real cords the link does not close: with the best sizes tried it is still "
                            + Say.length(fit.gapAfter())
                            + " apart (now "
                            + Say.length(fit.gapBefore())
                            + "). Nearest: "
                            + how
                            + ".";
        } else {
            text = "On real cords no hand can keep the rider's figure, at any size that was tried.";
        }
        return new Told(
                "fit.cord",
                fit.closes() ? Told.Tone.GOOD : Told.Tone.WARN,
                text,
                "Greatest distance over the cycle of the rider's hand that keeps its figure from the"
                        + " carrier's head; "
                        + Say.length(fit.meanAfter())
                        + " root mean square, within "
                        + Say.length(fit.tolerance())
                        + " counts as closed. Least squares from a few starts, "
                        + fit.evaluations()
                        + " pairings tried; a change of size has its price, so this is no proof that"
                        + " nothing else closes it.");
    }

    private static String change(SizeChange change, Pairing pairing) {
        Size size = change.size();
        int finer = finer(size, change.from(), change.to());
        return name(size, pairing)
                + " "
                + place(size, change.to(), finer)
                + " (now "
                + place(size, change.from(), finer)
                + ")";
    }

    /** How many decimals more than usual it takes that two values do not read the same. */
    private static int finer(Size size, double from, double to) {
        int finer = 0;
        while (finer < 6 && place(size, from, finer).equals(place(size, to, finer))) {
            finer++;
        }
        return finer;
    }

    /** "the right hand radius", "the left tether". */
    public static String name(Size size, Pairing pairing) {
        String whose = "the " + size.side().word() + " ";
        return switch (size.kind()) {
            case HAND_RADIUS -> whose + "hand radius";
            case TETHER -> whose + "tether";
            case CENTRE_X, CENTRE_Y, CENTRE_Z -> whose + "centre";
            case START -> whose + "poi's start";
            case TILT -> whose + "figure's tilt";
            case AMPLITUDE -> whose + "swing to each side";
            case TIMING -> "the timing";
            case TEMPO -> "the tempo";
        };
    }

    /** Where a size is put: "22 cm to the left" of a centre, of others the value. */
    static String place(Size size, double value) {
        return place(size, value, 0);
    }

    private static String place(Size size, double value, int finer) {
        if (!size.kind().centre()) {
            return value(size, value, finer);
        }
        String away = Say.size(Math.abs(value), finer);
        boolean none = Math.abs(value) < SAME;
        return switch (size.kind()) {
            case CENTRE_X ->
                    none ? "in the middle" : away + (value > 0 ? " to the left" : " to the right");
            case CENTRE_Y ->
                    none
                            ? "level with the breastbone"
                            : away + (value > 0 ? " above" : " below") + " the breastbone";
            default ->
                    none
                            ? "at the breastbone"
                            : away + (value > 0 ? " in front of" : " behind") + " the breastbone";
        };
    }

    /** A size's value as it is said: "60 cm", "30 degrees", "a quarter of a cycle". */
    public static String value(Size size, double value) {
        return value(size, value, 0);
    }

    private static String value(Size size, double value, int finer) {
        if (size.kind().length()) {
            return Say.size(value, finer);
        }
        if (size.kind().angle()) {
            return Say.degrees(value, finer);
        }
        return size.kind() == Size.Kind.TEMPO ? Say.tempo(value, finer) : timing(value, finer);
    }

    private static String timing(double ahead, int finer) {
        double share = ahead - Math.floor(ahead + 1e-6);
        if (share < 1e-6) {
            return "together";
        }
        if (Math.abs(share - 0.5) < 1e-6) {
            return "split";
        }
        if (Math.abs(share - 0.25) < 1e-6) {
            return "quarter";
        }
        // What is none of these does not read as one.
        int decimals = 3 + finer;
        String said = Say.trimmed(share, decimals);
        while (List.of("0", "0.25", "0.5", "1").contains(said)) {
            decimals++;
            said = Say.trimmed(share, decimals);
        }
        return said + " of a cycle ahead";
    }

    private static String obstacle(FitReading fit, Pairing pairing) {
        String have = Say.length(fit.have());
        String need = Say.length(fit.need());
        return switch (fit.obstacle()) {
            case NONE -> "";
            case HEAD_CIRCLE_NEVER_SMALLER_THAN_TETHER ->
                    "an extension's head circle is always larger than its tether ("
                            + have
                            + ") and the hand circle is "
                            + need;
            case ARC_IS_NO_CIRCLE -> "an arc is no circle";
            case OTHER_KIND -> {
                PathKind head = PathKind.of(samples(pairing).head(fit.carrier()));
                PathKind hand = PathKind.of(samples(pairing).hand(fit.carrier().other()));
                boolean figure = hand.sort() == PathKind.Sort.FIGURE;
                yield Say.a((figure ? hand : head).noun())
                        + " is no "
                        + (figure ? head : hand).noun();
            }
            case OTHER_FIGURE ->
                    "none of the sizes that are free makes the two "
                            + PathKind.of(samples(pairing).head(fit.carrier())).noun()
                            + "s one";
            case HAND_STANDS_STILL ->
                    "the hand stands still while the head goes up to "
                            + have
                            + " from the middle of its path";
            case HEAD_STANDS_STILL -> "the head stands still while the hand goes its way";
            case NOT_IN_TIME ->
                    "head and hand go along the same path at different paces, "
                            + have
                            + " apart on average";
            case OPPOSITE_WAYS -> "head and hand go round the same path opposite ways";
            case PLANES_DIFFER -> "their planes stand at an angle of " + Say.degrees(fit.have());
            case NOTHING_FREE -> "none of the sizes that are free bears on it";
            case BEYOND_A_LIMIT -> "it would take " + need + ", beyond the limit of " + have;
        };
    }

    private static Samples samples(Pairing pairing) {
        return Trace.of(pairing).samples();
    }

    /**
     * What to practise: how much further apart head and hand are where a size is a little out,
     * dearest first, sizes of one cost in one sentence.
     */
    public static List<Told> costs(List<Cost> costs, Pairing pairing) {
        Map<String, List<Cost>> alike = new LinkedHashMap<>();
        costs.stream()
                .filter(cost -> cost.gapCost() >= WORTH_SAYING)
                .sorted(Comparator.comparingDouble(Cost::gapCost).reversed())
                .forEach(
                        cost ->
                                alike.computeIfAbsent(
                                                " is "
                                                        + step(cost)
                                                        + " out, head and hand are "
                                                        + Say.length(cost.gapCost())
                                                        + " further apart.",
                                                c -> new ArrayList<>())
                                        .add(cost));
        List<Told> all = new ArrayList<>();
        alike.forEach(
                (sentence, missed) -> {
                    List<Size> sizes = missed.stream().map(Cost::size).toList();
                    all.add(
                            new Told(
                                    "cost." + sizes.get(0).key(),
                                    Told.Tone.NOTE,
                                    "If " + Say.listed(names(sizes, pairing), "or") + sentence,
                                    "The greater of what it costs in shape and as placed, in the"
                                            + " worse of the two directions."));
                });
        return List.copyOf(all);
    }

    /** "the left tether", "either hand radius", "either centre (sideways or in height)". */
    private static List<String> names(List<Size> sizes, Pairing pairing) {
        Map<String, List<String>> ways = new LinkedHashMap<>();
        for (Size size : sizes) {
            String name = name(size, pairing);
            boolean both =
                    !size.kind().shared()
                            && sizes.contains(Size.of(size.side().other(), size.kind()));
            List<String> way =
                    ways.computeIfAbsent(
                            both ? name.replaceFirst("the (left|right)", "either") : name,
                            n -> new ArrayList<>());
            if (size.kind().centre() && !way.contains(way(size))) {
                way.add(way(size));
            }
        }
        return ways.entrySet().stream()
                .map(
                        one ->
                                one.getValue().isEmpty()
                                        ? one.getKey()
                                        : one.getKey()
                                                + " ("
                                                + Say.listed(one.getValue(), "or")
                                                + ")")
                .toList();
    }

    private static String way(Size size) {
        return switch (size.kind()) {
            case CENTRE_X -> "sideways";
            case CENTRE_Y -> "in height";
            default -> "in depth";
        };
    }

    private static String step(Cost cost) {
        return cost.size().kind() == Size.Kind.TIMING
                ? Say.degrees(cost.step() * 2 * Math.PI) + " of a turn"
                : value(cost.size(), cost.step());
    }

    /**
     * What a side's motion turns into when one of its sizes goes astray; nothing of what it is
     * already.
     */
    public static List<Told> neighbours(List<Neighbour> neighbours, Side side, Pairing pairing) {
        List<Told> all = new ArrayList<>();
        for (Neighbour n : neighbours) {
            if (Math.abs(n.away()) < SAME) {
                continue;
            }
            String name = name(n.size(), pairing);
            int finer = finer(n.size(), n.now(), n.at());
            all.add(
                    new Told(
                            "neighbour." + side.word(),
                            n.already() ? Told.Tone.WARN : Told.Tone.NOTE,
                            n.already()
                                    ? "The "
                                            + side.word()
                                            + " motion already looks like "
                                            + into(n)
                                            + ": make "
                                            + name
                                            + " "
                                            + value(n.size(), n.at(), finer)
                                            + " (now "
                                            + value(n.size(), n.now(), finer)
                                            + ") and it is that."
                                    : "As "
                                            + name
                                            + goes(n)
                                            + value(n.size(), n.now(), finer)
                                            + " to "
                                            + (n.size().kind().length() && n.at() < SAME
                                                    ? "nothing"
                                                    : value(n.size(), n.at(), finer))
                                            + ", the "
                                            + side.word()
                                            + " motion turns into "
                                            + into(n)
                                            + ".",
                            "Hand or head is now up to "
                                    + Say.length(n.strays())
                                    + " from where it would be there; an onlooker sees no difference"
                                    + " within a hand's breadth."));
        }
        return List.copyOf(all);
    }

    private static String goes(Neighbour n) {
        return !n.size().kind().length()
                ? " goes from "
                : n.away() > 0 ? " grows from " : " shrinks from ";
    }

    private static String into(Neighbour neighbour) {
        return switch (neighbour.into()) {
            case LINEAR_EXTENSION -> "a linear extension";
            case STILL_HEAD -> "a point isolation";
            case STATIC_SPIN -> "a static spin";
            case POINTED_PETALS -> "a flower of pointed petals";
        };
    }
}
