package deferent.tell;

import deferent.motion.shared.Side;
import deferent.reading.danger.Bound;
import deferent.reading.danger.Danger;
import deferent.reading.danger.DangerEnd;
import deferent.reading.danger.Dangers;
import deferent.reading.danger.Hazard;
import deferent.reading.danger.Level;
import deferent.reading.tether.Kit;
import deferent.search.whole.Readings;
import deferent.tell.Told.Tone;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Says what can hurt, a sentence for what ends in the same way: too fast, too near, in each other's
 * way. Of both sides it tells the worse; what is a danger on one is not told again as care of the
 * other.
 */
final class TellDanger {
    /** Both sides are told as one where the lesser is no more than that share below. */
    private static final double ALIKE = 0.01;

    private static final double GRAVITY = 9.8;

    // Metres too few to say.
    private static final double TOUCHES = 0.0005;

    /** What is told in one sentence. */
    private enum Group {
        BODY("body", "through the body", "a poi can hit your body", Hazard.BODY),
        TENDER(
                "near",
                "too near the body",
                "a poi comes near your body",
                Hazard.FACE,
                Hazard.THROAT,
                Hazard.GROIN),
        HEADS(
                "heads",
                "heads in each other's way",
                "the poi can hit each other",
                Hazard.HEADS_MEET),
        HAND("hand", "a head in a hand's way", "a poi can hit a hand", Hazard.HAND_STRUCK),
        CORDS("cords", "cords through one another", "the cords can catch", Hazard.CORDS),
        AUDIENCE("audience", "too far out", "a poi goes far out in front", Hazard.AUDIENCE),
        FAST(
                "tempo",
                "too much force or speed",
                "the poi pull hard",
                Hazard.PULL,
                Hazard.GRIP,
                Hazard.SHOULDER,
                Hazard.HEAD_SPEED,
                Hazard.HEAD_ENERGY,
                Hazard.POI_TURNS);

        private final String key;
        private final String inShort;
        private final String plain;
        private final List<Hazard> hazards;

        Group(String key, String inShort, String plain, Hazard... hazards) {
            this.key = key;
            this.inShort = inShort;
            this.plain = plain;
            this.hazards = List.of(hazards);
        }
    }

    private final Readings readings;
    private final List<Danger> all;
    private final Kit.Heads heads;

    TellDanger(Readings readings) {
        this.readings = readings;
        this.heads = readings.dangers().reading().map(Dangers::heads).orElse(Kit.Heads.SOFT);
        this.all = readings.dangers().reading().map(Dangers::all).orElse(List.of());
    }

    /** "the poi pull hard", of the first of some dangers; empty where there is none. */
    static Optional<String> plainly(List<Told> dangers) {
        return dangers.stream()
                .findFirst()
                .flatMap(
                        told ->
                                Stream.of(Group.values())
                                        .filter(g -> told.key().equals("danger." + g.key))
                                        .findFirst())
                .map(group -> group.plain);
    }

    /** "too much force or speed", of the dangers the one that is told first. */
    Optional<String> inShort() {
        return Stream.of(Group.values())
                .filter(group -> !worst(group, Level.DANGER).isEmpty())
                .map(group -> group.inShort)
                .findFirst();
    }

    List<Told> dangers() {
        return told(Level.DANGER);
    }

    private List<Told> told(Level level) {
        List<Told> told = new ArrayList<>();
        for (Group group : Group.values()) {
            List<Danger> worst = worst(group, level);
            if (!worst.isEmpty()) {
                told.add(told(group, level, worst));
            }
        }
        return told;
    }

    /** What asks for care, then what could not be looked at. */
    List<Told> cares() {
        List<Told> told = told(Level.CARE);
        told.addAll(TellNot.of("care.unknown", readings.dangers()));
        List<String> unknown = readings.dangers().reading().map(Dangers::unknown).orElse(List.of());
        if (!unknown.isEmpty()) {
            told.add(
                    new Told(
                            "care.unknown",
                            Tone.WARN,
                            "Not everything was looked at for dangers.",
                            "Not worked out: " + Say.listed(unknown, "and") + "."));
        }
        return told;
    }

    /** One a hazard, where that level is its gravest. */
    private List<Danger> worst(Group group, Level level) {
        List<Danger> worst = new ArrayList<>();
        for (Hazard hazard : group.hazards) {
            all.stream()
                    .filter(d -> d.hazard() == hazard)
                    .max(
                            Comparator.comparing(Danger::level)
                                    .thenComparingDouble(
                                            d -> hazard.keptAway() ? -d.value() : d.value()))
                    .filter(d -> d.level() == level)
                    .ifPresent(worst::add);
        }
        return worst;
    }

    private Told told(Group group, Level level, List<Danger> worst) {
        List<String> clauses = new ArrayList<>();
        for (int i = 0; i < worst.size(); i++) {
            boolean strikes =
                    i > 0
                            && worst.get(i).hazard() == Hazard.HEAD_ENERGY
                            && worst.get(i - 1).hazard() == Hazard.HEAD_SPEED
                            && worst.get(i).side().equals(worst.get(i - 1).side());
            if (strikes) {
                int last = clauses.size() - 1;
                clauses.set(last, clauses.get(last) + " with " + joules(worst.get(i)));
            } else {
                clauses.add(clause(worst.get(i), i == 0));
            }
        }
        String what = Say.listed(clauses, "and");
        boolean danger = level == Level.DANGER;
        return new Told(
                (danger ? "danger." : "care.") + group.key,
                danger ? Tone.DANGER : Tone.WARN,
                (danger ? "Danger: " + what : Say.capital(what)) + "." + ending(worst, level),
                why(worst));
    }

    private String clause(Danger danger, boolean first) {
        double value = danger.value();
        String poi = "the " + (alike(danger) ? "two" : word(danger)) + " ";
        String s = alike(danger) ? "s" : "";
        String does = alike(danger) ? "" : "s";
        String goes = alike(danger) ? "go" : "goes";
        return switch (danger.hazard()) {
            case BODY ->
                    value < TOUCHES
                            ? "the " + word(danger) + " head, cord or hand goes through the body"
                            : "the "
                                    + word(danger)
                                    + " head, cord or hand comes within "
                                    + Say.length(value)
                                    + " of the body";
            case FACE, THROAT, GROIN -> near(danger, first);
            case HEADS_MEET -> "the heads hit each other at " + speed(value);
            case HAND_STRUCK ->
                    "the "
                            + word(danger)
                            + " head hits the "
                            + danger.side().orElseThrow().other().word()
                            + " hand at "
                            + speed(value);
            case CORDS ->
                    danger.level() == Level.DANGER
                            ? "the cords go through one another"
                            : "the cords come within " + Say.length(value) + " of one another";
            case AUDIENCE ->
                    "the " + word(danger) + " head reaches " + Say.length(value) + " from you";
            case PULL ->
                    poi
                            + "hand"
                            + s
                            + " hold"
                            + does
                            + " "
                            + whole(value)
                            + " N, the weight of "
                            + Say.trimmed(value / GRAVITY, value < 100 ? 1 : 0)
                            + " kg";
            case GRIP -> poi + "grip" + s + " hold" + does + " " + whole(value) + " N on average";
            case SHOULDER ->
                    poi
                            + "shoulder"
                            + s
                            + " take"
                            + does
                            + " up to "
                            + whole(value)
                            + " N with the arm's own swing";
            case HEAD_SPEED -> poi + "head" + s + " " + goes + " at " + speed(value);
            case HEAD_ENERGY -> poi + "head" + s + " would strike with " + joules(danger);
            case POI_TURNS ->
                    poi + "poi " + goes + " round " + Say.trimmed(value, 1) + " times a second";
        };
    }

    private String near(Danger danger, boolean first) {
        String where =
                switch (danger.hazard()) {
                    case THROAT -> "the throat";
                    case GROIN -> "the groin";
                    default -> behind(danger) ? "the back of the skull" : "the face";
                };
        String within =
                danger.value() < TOUCHES
                        ? "onto " + where
                        : "within " + Say.length(danger.value()) + " of " + where;
        return first ? "the " + word(danger) + " head, cord or hand comes " + within : within;
    }

    /** Whether hand and head are then both behind the middle of the skull. */
    private boolean behind(Danger danger) {
        Side side = danger.side().orElseThrow();
        Vector3D hand = readings.trace().hand(side).position(danger.time());
        Vector3D head = readings.trace().head(side).position(danger.time());
        double middle = readings.performer().shoulder(side).getZ();
        return Math.max(hand.getZ(), head.getZ()) < middle;
    }

    /** Whether the other side has as much of it, and as grave. */
    private boolean alike(Danger danger) {
        return all.stream()
                .anyMatch(
                        other ->
                                other.hazard() == danger.hazard()
                                        && other.level() == danger.level()
                                        && !other.side().equals(danger.side())
                                        && other.value() >= danger.value() * (1 - ALIKE));
    }

    private static String word(Danger danger) {
        return danger.side().map(Side::word).orElse("");
    }

    private static String joules(Danger danger) {
        return Say.trimmed(danger.value(), 0) + " J";
    }

    private static String speed(double value) {
        return Say.trimmed(value, 1) + " m/s";
    }

    private static String whole(double value) {
        return Say.trimmed(value, 0);
    }

    /** Where all that is told of it, on both sides, is gone. */
    private String ending(List<Danger> worst, Level level) {
        List<DangerEnd> ends =
                all.stream()
                        .filter(d -> d.level() == level)
                        .filter(d -> worst.stream().anyMatch(w -> w.hazard() == d.hazard()))
                        .flatMap(d -> d.end().stream())
                        .toList();
        if (ends.isEmpty()) {
            return "";
        }
        if (ends.stream().anyMatch(end -> end.kind() == DangerEnd.Kind.NONE)) {
            return worst.get(0).hazard().ends() == Hazard.Ends.TEMPO
                    ? " No tempo ends it."
                    : " No tempo ends it, nor does a small move.";
        }
        if (ends.stream().anyMatch(end -> end.kind() == DangerEnd.Kind.BEYOND_REACH)) {
            return " No tempo ends it, and your arms cannot hold it far enough forward.";
        }
        String calm = level == Level.DANGER ? " The danger ends" : " It is calm";
        return switch (ends.get(0).kind()) {
            case TEMPO -> calm + " at " + Say.tempo(least(ends, 10)) + " or slower.";
            case SIZE ->
                    calm
                            + " with tethers and hand paths at "
                            + Say.trimmed(100 * least(ends, 100), 0)
                            + "% of their size.";
            case FORWARD ->
                    " No tempo ends it; moving everything "
                            + Say.size(most(ends))
                            + " forward does.";
            case APART ->
                    " No tempo ends it; planes " + Say.size(most(ends)) + " further apart do.";
            case BEYOND_REACH, NONE -> throw new IllegalStateException("told above");
        };
    }

    /** Rounded so that what is told still ends it. */
    private static double least(List<DangerEnd> ends, double steps) {
        double least = ends.stream().mapToDouble(DangerEnd::value).min().orElseThrow();
        return Math.floor(least * steps) / steps;
    }

    private static double most(List<DangerEnd> ends) {
        double most = ends.stream().mapToDouble(DangerEnd::value).max().orElseThrow();
        return Math.ceil(most * 1000) / 1000;
    }

    private String why(List<Danger> worst) {
        List<String> bounds = new ArrayList<>();
        for (Danger danger : worst) {
            Bound bound = Bound.of(danger.hazard(), heads);
            bounds.add(
                    danger.hazard().words()
                            + ", care from "
                            + amount(danger.hazard(), bound.care())
                            + " on, danger "
                            + (bound.danger() == 0
                                    ? "where it goes through"
                                    : "from " + amount(danger.hazard(), bound.danger()) + " on")
                            + " ("
                            + bound.source()
                            + ")");
        }
        return (heads == Kit.Heads.FIRE
                        ? "With fire: "
                        : "With " + heads.name().toLowerCase(Locale.ROOT) + " heads: ")
                + String.join("; ", bounds)
                + ". To keep below it is no permission.";
    }

    private static String amount(Hazard hazard, double value) {
        return hazard.unit().equals("m")
                ? Say.length(value)
                : Say.trimmed(value, 1) + " " + hazard.unit();
    }
}
