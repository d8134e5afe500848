package deferent.tell;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.Size;
import deferent.motion.phrase.Phrase;
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

/** Says what a fit found, what a size that is out costs, and what a motion turns into. */
public final class TellFit {
    /** Costs below this are not worth a word, metres: no hand is that exact. */
    private static final double WORTH_SAYING = 0.005;

    /** A size this near to another is the same, metres or radians. */
    private static final double SAME = 0.0005;

    /** How many ways one sentence names. */
    private static final int REMEDIES = 3;

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
        String ends = fit.carrier().head() + " and " + fit.carrier().other().hand();
        if (!fit.closes()) {
            String reason = obstacle(fit);
            String riding =
                    fit.riding()
                            .map(
                                    ridden ->
                                            Say.capital(ride(ridden, pairing))
                                                    + ". As it is said it ")
                            .orElse("");
            return new Told(
                    "fit",
                    Told.Tone.WARN,
                    (riding.isEmpty() ? "Cannot" : riding + "cannot")
                            + " close: with the best sizes tried "
                            + ends
                            + " are still "
                            + Say.length(fit.leastGap())
                            + " apart"
                            + (reason.isEmpty() ? "." : ", because " + reason + "."),
                    "Least of all that was tried with the sizes that are free, read afterwards as any"
                            + " pairing is.");
        }
        boolean placed = fit.goal() == Goal.PLACED;
        boolean already = fit.answers().get(0).changes().isEmpty();
        String how = placed ? "touching" : "in shape";
        String reason = obstacle(fit);
        String but =
                reason.isEmpty()
                        ? "."
                        : (placed
                                        ? "; not by "
                                                + fit.carrier().head()
                                                + "'s own sizes, because "
                                        : "; not at every instant, because ")
                                + reason
                                + ".";
        return new Told(
                "fit",
                Told.Tone.GOOD,
                already
                        ? "Closed as it stands, " + how + ": " + ends + " need no change."
                        : "Closes, " + how + ", in " + ways(fit.answers().size()) + but,
                "Each answer has been read afterwards; how far apart it leaves them is what that reading says.");
    }

    /** "let the right hand ride and it closes: \"pendulum vs triquetra riding\"". */
    public static String ride(Remedy ridden, Pairing pairing) {
        Side rider = ridden.pairing().rider().orElseThrow();
        boolean retimed = !ridden.pairing().timing().equals(pairing.timing());
        return "let "
                + rider.hand()
                + " ride"
                + (retimed ? ", together," : "")
                + " and it closes"
                + Phrase.write(ridden.pairing()).map(p -> ": \"" + p + "\"").orElse("");
    }

    /** The fit in one sentence, beside the link it closes; none where nothing needs to change. */
    static Optional<Told> remedy(FitReading fit, Pairing pairing) {
        Told verdict = verdict(fit, pairing);
        String key = "fit." + fit.carrier().word();
        if (!fit.closes()) {
            return Optional.of(new Told(key, Told.Tone.NOTE, verdict.text(), verdict.why()));
        }
        if (fit.answers().get(0).changes().isEmpty()) {
            return Optional.empty();
        }
        String ways =
                fit.answers().stream()
                        .limit(REMEDIES)
                        .map(answer -> changes(answer, pairing))
                        .collect(Collectors.joining("; or "));
        return Optional.of(
                new Told(key, Told.Tone.NOTE, "To close it, " + ways + ".", verdict.text()));
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

    /** "make the right hand radius 60 cm (now 45 cm)". */
    public static String changes(Remedy answer, Pairing pairing) {
        return answer.changes().isEmpty() ? "no change" : changes(answer.changes(), pairing);
    }

    private static String changes(List<SizeChange> changes, Pairing pairing) {
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
                fit.changes().isEmpty()
                        ? "nothing needs to change"
                        : changes(fit.changes(), pairing);
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
        return name(change.size(), pairing)
                + " "
                + place(change.size(), change.to())
                + " (now "
                + place(change.size(), change.from())
                + ")";
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
        if (!size.kind().centre()) {
            return value(size, value);
        }
        String away = Say.size(Math.abs(value));
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
        if (size.kind().length()) {
            return Say.size(value);
        }
        if (size.kind().angle()) {
            return Say.degrees(value);
        }
        return size.kind() == Size.Kind.TEMPO ? Say.tempo(value) : timing(value);
    }

    private static String timing(double ahead) {
        double share = ahead - Math.floor(ahead + 1e-6);
        if (share < 1e-6) {
            return "together";
        }
        if (Math.abs(share - 0.5) < 1e-6) {
            return "split";
        }
        return Math.abs(share - 0.25) < 1e-6
                ? "quarter"
                : Say.trimmed(share, 3) + " of a cycle ahead";
    }

    private static String obstacle(FitReading fit) {
        String have = Say.length(fit.have());
        String need = Say.length(fit.need());
        return switch (fit.obstacle()) {
            case NONE -> "";
            case HEAD_CIRCLE_NEVER_SMALLER_THAN_TETHER ->
                    "an extension's head circle is never smaller than its tether ("
                            + have
                            + ") and the hand circle is "
                            + need;
            case ARC_IS_NO_CIRCLE -> "an arc is no circle";
            case TWO_CIRCLES_ARE_NO_ONE -> "a figure drawn by two circles is no one circle";
            case HAND_STANDS_STILL ->
                    "the hand stands still while the head goes up to "
                            + have
                            + " from the middle of its path";
            case HEAD_STANDS_STILL -> "the head stands still while the hand goes its way";
            case NOT_IN_TIME ->
                    "head and hand go along it at different paces, " + have + " apart on average";
            case OPPOSITE_WAYS -> "head and hand go round it opposite ways";
            case PLANES_DIFFER -> "their planes stand at an angle of " + Say.degrees(fit.have());
            case NOTHING_FREE -> "none of the sizes that are free bears on it";
            case BEYOND_A_LIMIT -> "it would take " + need + ", beyond the limit of " + have;
            case OTHER_FIGURE -> "the two figures are of different kinds";
        };
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
                                            + value(n.size(), n.at())
                                            + " (now "
                                            + value(n.size(), n.now())
                                            + ") and it is that."
                                    : "As "
                                            + name
                                            + goes(n)
                                            + value(n.size(), n.now())
                                            + " to "
                                            + (n.size().kind().length() && n.at() < SAME
                                                    ? "nothing"
                                                    : value(n.size(), n.at()))
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
