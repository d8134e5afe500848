package deferent.tell;

import deferent.motion.pairing.Pairing;
import deferent.search.seek.Against;
import deferent.search.seek.Answer;
import deferent.search.seek.Answers;
import deferent.search.seek.Closing;
import deferent.search.seek.Drawer;
import deferent.search.seek.Family;
import deferent.search.seek.Like;
import deferent.search.seek.Merit;
import deferent.search.seek.Order;
import deferent.search.seek.SeekProgress;
import deferent.search.seek.SeekRequest;
import deferent.search.seek.Tethers;
import deferent.tell.Told.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/** Says what a seek found. */
public final class TellSeek {
    /** How many closing sizes one sentence names. */
    private static final int CLOSINGS = 2;

    /** The share of a seek's time that drawing the motions takes; the rest is looking for links. */
    private static final double DRAWING = 0.1;

    /** Metres too few to say. */
    private static final double UNSAID = 0.0005;

    private static final double SAME = 1e-6;
    private static final double ALIKE = 1.05;

    /** A figure so many times as small as the other is none. */
    private static final double POINT = 1e6;

    private TellSeek() {}

    /**
     * How many links there are, all told.
     *
     * @param done whether the seek came to its end
     */
    public static Told of(SeekRequest request, Answers answers, boolean done) {
        int exact = answers.exactCount();
        int near = answers.count() - exact;
        String found =
                exact == 0 && near == 0
                        ? "nothing links"
                        : (exact == 0 ? "no" : number(exact))
                                + (exact == 1 ? " link closes" : " links close")
                                + " exactly and "
                                + (near == 0 ? "none" : number(near))
                                + " within "
                                + Say.length(request.tolerance());
        return new Told(
                "seek",
                exact + near > 0 ? Tone.GOOD : Tone.NOTE,
                "Among "
                        + number(request.space().count())
                        + " motions, "
                        + found
                        + (exact + near > 0 ? "; they stand for " + pairs(answers.pairs()) : "")
                        + (done ? "." : "; the seek was stopped, so there may be more."),
                "Every one of "
                        + number(answers.headPaths())
                        + " head paths asked an index of "
                        + number(answers.handPaths())
                        + " hand paths; "
                        + number(answers.comparisons())
                        + " of them were compared in full, up to a turn, a shift, a mirror and a"
                        + " lag"
                        + (request.tethers() == Tethers.FREE
                                ? ", whatever their sizes."
                                : ", both poi on a tether of "
                                        + Say.size(request.tether().length())
                                        + "."));
    }

    /** How many links a seek found that ran elsewhere. */
    public static Told afar(SeekRequest request, long links, long exact) {
        return new Told(
                "seek",
                links > 0 ? Tone.GOOD : Tone.NOTE,
                "Among "
                        + number(request.space().count())
                        + " motions, "
                        + number(exact)
                        + (exact == 1 ? " link closes" : " links close")
                        + " exactly and "
                        + number(links - exact)
                        + " within "
                        + Say.length(request.tolerance())
                        + "; sought elsewhere.",
                "Every head path asked the hand paths of its own size; what that named was compared"
                        + " in full. A family is told once, by its simplest link.");
    }

    /** Which page it is. */
    public static String page(int page, int pages, int families) {
        return "Page "
                + number(page)
                + " of "
                + number(pages)
                + ", "
                + (families == 1 ? "one family" : number(families) + " families")
                + ", simplest first";
    }

    /** That a page has nothing of what was asked for. */
    public static Told noneOnPage() {
        return new Told(
                "seek.none",
                Tone.NOTE,
                "None on this page passes what was asked for.",
                "Each family was judged by the pairing that stands for it.");
    }

    /** That it was stopped before it could find anything. */
    public static Told stopped() {
        return new Told(
                "seek",
                Tone.NOTE,
                "Stopped before any two motions were compared.",
                "All motions are drawn and gathered first, by what their heads draw.");
    }

    /** That none is left to tell. */
    public static Told none(Answers answers) {
        return new Told(
                "seek.none",
                Tone.NOTE,
                answers.count() == 0
                        ? "A wider tolerance, more motions or free tethers would find some."
                        : "None of them passes what was asked for.",
                "Each link was judged by the pairing that stands for it.");
    }

    /** That none of a space's pairings has a carrier that draws a wanted figure. */
    public static Told noLink() {
        return new Told(
                "seek.none",
                Tone.NOTE,
                "No pairing among these motions has it as a carrier's figure.",
                "Those that draw it lead no rider's hand within the tolerance, or none that passes"
                        + " what was asked for; more motions or a wider tolerance may find some.");
    }

    /** In which order the answers are told. */
    public static String order(Order order) {
        return switch (order) {
            case TRY -> "you may not have tried";
            case CLOSEST -> "closest first, then simplest";
            case REACH -> "what the performer reaches best first";
            case SLOWEST -> "slowest tempo first";
            case STEADINESS -> "steadiest first";
            case SYMMETRY -> "most symmetrical first";
            case CONTRAST -> "greatest contrast of sizes first";
            case NEAR_SHELF -> "nearest to the shelf first";
            case NEW -> "furthest from the shelf first";
        };
    }

    // Something to try: how fast it must go, what speaks against it, what it stands for.
    private static Told toTry(Answer answer, Set<Against> against) {
        List<String> text = new ArrayList<>(merit(answer));
        if (!against.isEmpty()) {
            text.add(
                    "Not for a first try: "
                            + against.stream()
                                    .map(TellSeek::against)
                                    .collect(Collectors.joining(", and "))
                            + ".");
        }
        text.add(family(answer));
        return new Told(
                "seek.answer",
                against.isEmpty() ? Tone.GOOD : Tone.NOTE,
                String.join(" ", text),
                "It links exactly, in whole centimetres, steps of five degrees and eighths of a"
                        + " cycle, as large as the arms reach. Pairs that differ in sizes, starts"
                        + " or the count of petals alone are told as one. Whether anybody has spun"
                        + " it, a search cannot know.");
    }

    private static String against(Against what) {
        return switch (what) {
            case SLACK -> "with the hands on their paths a cord goes slack";
            case JUMP -> "a poi would have to change its pace in an instant";
            case DANGER -> "it is a danger as it stands";
            case WORDS -> "it takes many words to say";
            case KNOWN -> "one of its kind is on the shelf";
        };
    }

    private static String family(Answer answer) {
        Family family = answer.family();
        String sizes =
                "It links in "
                        + (family.sizes() == 1 ? "one size" : number(family.sizes()) + " sizes")
                        + " of those sought";
        String others =
                family.members().stream()
                        .map(member -> answer.idea().unlike(member.idea()))
                        .collect(Collectors.joining("; "));
        return others.isEmpty() ? sizes + "." : sizes + ". Its family: " + others + ".";
    }

    /** How well a link closes, what closes it, whom it stands for, and what it is ranked by. */
    public static Told of(Answer answer) {
        return answer.against()
                .map(against -> toTry(answer, against))
                .orElseGet(() -> ofLink(answer));
    }

    private static Told ofLink(Answer answer) {
        List<String> text = new ArrayList<>();
        text.add(
                answer.exact()
                        ? "Linked exactly."
                        : "At best " + miss(answer.gap()) + " apart" + closing(answer) + ".");
        text.add(stands(answer));
        text.addAll(merit(answer));
        return new Told(
                "seek.answer",
                answer.exact() ? Tone.GOOD : Tone.NOTE,
                String.join(" ", text),
                "Any carrier with this head path leads any rider with this hand path; "
                        + (answer.exact()
                                ? "the two paths are one, in shape and in time."
                                : "the two paths are "
                                        + Say.length(answer.gap())
                                        + " apart, root mean square, at the best placing and"
                                        + " lag."));
    }

    private static String stands(Answer answer) {
        return answer.pairs() == 1
                ? "One carrier leads, one rider follows."
                : "It stands for "
                        + pairs(answer.pairs())
                        + ": "
                        + number(answer.carriers())
                        + (answer.carriers() == 1 ? " carrier leads, " : " carriers lead, ")
                        + number(answer.riders())
                        + (answer.riders() == 1 ? " rider follows." : " riders follow.");
    }

    private static String pairs(long count) {
        return number(count) + (count == 1 ? " pair" : " pairs");
    }

    private static String miss(double gap) {
        return gap < UNSAID ? "less than a millimetre" : Say.length(gap);
    }

    private static String closing(Answer answer) {
        Pairing pairing = answer.pairing();
        String ways =
                answer.closings().stream()
                        .filter(closing -> Math.abs(closing.to() - closing.from()) >= UNSAID)
                        .limit(CLOSINGS)
                        .map(closing -> closing(closing, pairing))
                        .collect(Collectors.joining(", or "));
        return ways.isEmpty() ? "" : "; it closes with " + ways;
    }

    private static String closing(Closing closing, Pairing pairing) {
        return TellFit.name(closing.size(), pairing)
                + (closing.size().kind().centre() ? " " : " at ")
                + TellFit.place(closing.size(), closing.to())
                + " (now "
                + TellFit.place(closing.size(), closing.from())
                + ")";
    }

    private static List<String> merit(Answer answer) {
        Merit merit = answer.merit();
        double tether =
                Math.min(
                        answer.pairing().left().tether().length(),
                        answer.pairing().right().tether().length());
        List<String> said = new ArrayList<>();
        String contrast = Say.trimmed(merit.contrast(), 1);
        if (merit.contrast() >= POINT) {
            said.add("One head stays on a point.");
        } else if (merit.contrast() >= ALIKE) {
            said.add(
                    "One figure is "
                            + (contrast.equals("2") ? "twice" : contrast + " times")
                            + " as large as the other.");
        }
        if (merit.symmetry() >= 2) {
            said.add(
                    "Both figures look the same "
                            + Say.times(merit.symmetry())
                            + " in a full turn.");
        }
        if (merit.missing() >= 0.005) {
            said.add("A hand falls short by " + Say.length(merit.missing()) + ".");
        }
        // with a cord slack on the hands' own paths, where it is taut otherwise says nothing
        boolean slack = answer.against().stream().anyMatch(a -> a.contains(Against.SLACK));
        merit.slowest().stream()
                .filter(slowest -> !slack)
                .forEach(slowest -> said.add(taut(slowest, answer.pairing())));
        merit.growth()
                .ifPresent(
                        growth ->
                                said.add(
                                        growth < 1.05
                                                ? "A slip does not grow before you can react."
                                                : Say.capital(
                                                                TellCord.slipped(
                                                                        0.01 * growth, tether))
                                                        + "."));
        merit.toShelf().stream()
                .filter(far -> answer.against().isEmpty() || far < SAME)
                .forEach(
                        far ->
                                said.add(
                                        far < SAME
                                                ? "It is on the shelf."
                                                : "The nearest on the shelf is "
                                                        + Say.length(far)
                                                        + " away."));
        return said;
    }

    private static String taut(double slowest, Pairing pairing) {
        if (Double.isInfinite(slowest)) {
            return "No tempo keeps both cords taut.";
        }
        return "Both cords stay taut "
                + (pairing.setsOwnTempo()
                        ? "at its own tempo"
                        : slowest > 0 ? "from " + Say.tempo(slowest) : "at any tempo")
                + ".";
    }

    /** The same of a pairing like a given one, with how far from it it is. */
    public static Told of(Like like) {
        Told told = of(like.answer());
        return new Told(
                "seek.like",
                told.tone(),
                (like.distance() < UNSAID
                                ? "The very same. "
                                : "It is " + Say.length(like.distance()) + " away. ")
                        + told.text(),
                "Hands and heads are that far from the given ones', root mean square, however both"
                        + " are placed. "
                        + told.why());
    }

    /** How well a motion draws a wanted figure. */
    public static Told of(Drawer drawer) {
        return new Told(
                "seek.drawer",
                drawer.gap() < 0.005 ? Tone.GOOD : Tone.NOTE,
                (drawer.gap() < UNSAID
                                ? "Draws it"
                                : "Comes within " + Say.length(drawer.gap()) + " of it")
                        + ", as large as given on a tether of "
                        + Say.size(drawer.tether().length())
                        + ".",
                "Root mean square distance of the two outlines, timing forgotten.");
    }

    /**
     * What of it is done, 0 to 1: drawing the motions counts as a tenth of it, which is a guess;
     * how long the looking takes depends on how many link.
     */
    public static double share(SeekProgress progress) {
        double stage = progress.all() == 0 ? 0 : (double) progress.done() / progress.all();
        return switch (progress.stage()) {
            case BUILD -> 0;
            case KEY -> DRAWING * stage;
            case JOIN -> DRAWING + (1 - DRAWING) * stage;
            case DONE -> 1;
        };
    }

    /** How far it has come. */
    public static String progress(SeekProgress progress) {
        return switch (progress.stage()) {
            case BUILD -> number(progress.all()) + " motions built";
            case KEY -> "drawing the motions";
            case JOIN -> "looking for links, " + number(progress.links()) + " so far";
            case DONE -> number(progress.links()) + " links found";
        };
    }

    private static String number(long count) {
        return String.format(Locale.ROOT, "%,d", count);
    }
}
