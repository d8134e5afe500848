package deferent.tell;

import deferent.motion.shared.Side;
import deferent.reading.danger.Dangers;
import deferent.reading.danger.Level;
import deferent.search.set.Joint;
import deferent.search.set.SetPlan;
import deferent.search.set.SetWork;
import deferent.search.set.Stay;
import deferent.search.set.Suggestion;
import deferent.search.set.TurnLoad;
import deferent.search.set.TurnMade;
import deferent.search.transition.Transition;
import deferent.tell.Told.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Says a set: how long it takes, how each pattern is kept, what leads on, and what it asks. */
public final class TellSet {
    private static final double GRAVITY = 9.8;

    // Less than this of a count nobody hears.
    private static final double HEARD = 0.05;

    private TellSet() {}

    /** How long it takes, and whether it hangs together. */
    public static Told whole(SetPlan plan, List<String> names) {
        int there = (int) plan.stays().stream().filter(Optional::isPresent).count();
        List<String> breaks =
                IntStream.range(0, plan.joints().size())
                        .filter(i -> plan.joints().get(i).way() == Joint.Way.NONE)
                        .mapToObj(i -> between(names, i))
                        .distinct()
                        .toList();
        boolean gone = there < plan.stays().size();
        String takes =
                (plan.round() ? "Once round takes " : "It takes ")
                        + duration(plan.seconds())
                        + ": "
                        + (there == 1 ? "one pattern" : there + " patterns");
        String flows =
                !breaks.isEmpty()
                        ? breaks.size() > 2
                                ? ", but at " + breaks.size() + " places nothing leads on."
                                : ", but nothing leads from " + Say.listed(breaks, "or from") + "."
                        : gone
                                ? ", and some are gone."
                                : plan.joints().isEmpty()
                                        ? "."
                                        : plan.round()
                                                ? ", and the last leads back into the first."
                                                : ", each leading into the next.";
        return new Told(
                "set",
                breaks.isEmpty() && !gone ? Tone.GOOD : Tone.NOTE,
                takes + flows,
                "Of all transitions between each two, those are taken with which the whole is gentlest"
                        + " and every pattern is kept for nearly the counts asked. A count is one turn of"
                        + " the poi that turns more often. A grade harder is shunned as much as"
                        + " being four counts off (our choice).");
    }

    private static String between(List<String> names, int after) {
        return quoted(names.get(after)) + " into " + quoted(names.get((after + 1) % names.size()));
    }

    private static String quoted(String name) {
        return "\"" + name + "\"";
    }

    /** "48 s", "1 min 12 s". */
    public static String duration(double seconds) {
        if (seconds < 59.95) {
            return Say.trimmed(seconds, 1) + " s";
        }
        long whole = Math.round(seconds);
        return whole / 60 + " min" + (whole % 60 == 0 ? "" : " " + whole % 60 + " s");
    }

    /** "16 counts", "one count", "15.5 counts". */
    public static String counts(double counts) {
        return Math.abs(counts - 1) < HEARD ? "one count" : Say.trimmed(counts, 1) + " counts";
    }

    /** For how many counts a pattern is kept, and at which tempo. */
    public static Told kept(Stay stay) {
        int asked = stay.wanted().counts();
        double off = stay.counts() - asked;
        return new Told(
                "set.kept",
                Tone.NOTE,
                Say.capital(counts(stay.counts()))
                        + (Math.abs(off) < HEARD ? "" : " instead of " + asked)
                        + " at "
                        + Say.tempo(stay.wanted().pairing().tempo())
                        + ".",
                Math.abs(off) < HEARD
                        ? "A count is one turn of the poi that turns more often."
                        : "It can only be left where a transition leaves it, which is "
                                + counts(Math.abs(off))
                                + (off > 0 ? " later." : " earlier."));
    }

    /** A turn of the body, and what it asks where that is to be felt. */
    public static List<Told> turn(TurnLoad load) {
        TurnMade turning = load.turning();
        List<Told> all = new ArrayList<>();
        all.add(
                new Told(
                        "set.turn",
                        Tone.NOTE,
                        "On "
                                + Say.trimmed(turning.count(), 1)
                                + " make a "
                                + turned(turning.quarters())
                                + ", over "
                                + counts(turning.counts())
                                + ".",
                        "The pattern turns with the body, and so does all that follows. In the"
                                + " middle it turns at "
                                + Math.round(Math.toDegrees(turning.fastest()))
                                + "° a second. A quarter takes two counts, or as many as give it"
                                + " half a second (our choice), and is done before the pattern is"
                                + " left."));
        boolean slack = load.left().slack() || load.right().slack();
        boolean far = load.left().behind() || load.right().behind();
        if (slack || far) {
            all.add(
                    new Told(
                            "set.turn.far",
                            Tone.WARN,
                            "No cord carries the poi round so fast: "
                                    + (slack
                                            ? "one goes slack."
                                            : "they fall " + lag(load) + " behind their plane.")
                                    + " Keep this pattern for more counts, or turn a quarter at a"
                                    + " time.",
                            felt(load)));
        } else if (load.left().felt() || load.right().felt()) {
            all.add(
                    new Told(
                            "set.turn.lag",
                            Tone.NOTE,
                            "While you turn, the poi fall up to "
                                    + lag(load)
                                    + " behind their plane.",
                            felt(load)));
        }
        return List.copyOf(all);
    }

    private static String lag(TurnLoad load) {
        return Math.round(Math.toDegrees(Math.max(load.left().lag(), load.right().lag()))) + "°";
    }

    private static String felt(TurnLoad load) {
        return "The force that the heads need, carried round with the body, is held against the same"
                + " without the turn. "
                + difference("Left", load.left())
                + ". "
                + difference("Right", load.right())
                + ". What goes across a cord it cannot give, so the poi stays behind by about the"
                + " angle between the two. Told from a tenth of a weight on (our choice).";
    }

    private static String difference(String side, TurnLoad.Cord cord) {
        return side
                + ": up to "
                + Say.trimmed(cord.pull(), 2)
                + " poi weights more or less along the cord, "
                + Say.trimmed(cord.across(), 2)
                + " across it";
    }

    /** "quarter turn to the left". */
    public static String turned(int quarters) {
        return (Math.abs(quarters) == 1 ? "quarter" : "half")
                + " turn to the "
                + (quarters > 0 ? "left" : "right");
    }

    /** Which way it ends facing, where that is not the way it began. */
    public static Optional<Told> ending(SetPlan plan) {
        int turned = Math.floorMod(plan.quartersBefore(plan.stays().size()), 4);
        if (turned == 0) {
            return Optional.empty();
        }
        String way = List.of("left", "back", "right").get(turned - 1);
        return Optional.of(
                new Told(
                        "set.ending",
                        Tone.NOTE,
                        turned == 2
                                ? "It ends with your back to where you began."
                                : "It ends facing " + way + " of where you began.",
                        plan.round()
                                ? "The next round begins turned like that."
                                : "The body turns of all patterns together."));
    }

    /** What comes after a pattern. */
    public static Told joint(Joint joint, String from, String to) {
        return switch (joint.way()) {
            case LED -> led(joint.transition().orElseThrow());
            case SAME ->
                    new Told(
                            "set.same",
                            Tone.GOOD,
                            quoted(from) + " goes on.",
                            "The same pattern twice in a row is one stay.");
            case NONE ->
                    new Told(
                            "set.none",
                            Tone.NOTE,
                            "Nothing leads from "
                                    + quoted(from)
                                    + " into "
                                    + quoted(to)
                                    + ": "
                                    + stop(TellTransition.because(joint.why())),
                            "Every way that is listed was tried, up to the grade that was asked.");
            case GONE ->
                    new Told(
                            "set.none",
                            Tone.NOTE,
                            "What leads from "
                                    + quoted(from)
                                    + " into "
                                    + quoted(to)
                                    + " is not known: one of them is gone.",
                            "Only patterns that can be read can be compared.");
        };
    }

    private static String stop(String because) {
        String stop = "stop and begin anew, or put a pattern between them.";
        return because.isEmpty() ? stop : because + ". " + Say.capital(stop);
    }

    private static Told led(Transition transition) {
        Told told = TellTransition.of(transition);
        return new Told("set.led", told.tone(), told.text(), told.why());
    }

    /** Whether the arms get there. */
    public static Told reach(Stay stay) {
        Optional<String> tooFar = stay.readings().reach().reading().flatMap(TellBody::outOfReach);
        boolean known = stay.readings().reach().reading().isPresent();
        return new Told(
                "set.reach",
                tooFar.isPresent() || !known ? Tone.WARN : Tone.GOOD,
                tooFar.map(Say::capital)
                                .orElse(
                                        known
                                                ? "Both hands get there"
                                                : "Whether the hands get there could not be worked"
                                                        + " out")
                        + ".",
                "Joint limits other than elbow's, wrist's, trunk's and shoulder's are left out.");
    }

    /** Whether the hands get everywhere. */
    public static boolean reached(Stay stay) {
        return stay.readings()
                .reach()
                .reading()
                .filter(reach -> TellBody.outOfReach(reach).isEmpty())
                .isPresent();
    }

    /** How grave what can hurt in it is; what could not be worked out asks for care. */
    public static Level level(Stay stay) {
        return stay.readings().dangers().reading().map(Dangers::level).orElse(Level.CARE);
    }

    /** The first of what can hurt in it; empty where it is calm. */
    public static Optional<Told> danger(Stay stay) {
        TellDanger tell = new TellDanger(stay.readings());
        return Stream.concat(tell.dangers().stream(), tell.cares().stream()).findFirst();
    }

    /** That a pattern is not where the set has it. */
    public static Told gone(String name, Optional<String> unread) {
        return new Told(
                "set.gone",
                Tone.WARN,
                unread.map(
                                why ->
                                        quoted(name)
                                                + " cannot be read from the shelf: mend its file, or"
                                                + " take it out of the set.")
                        .orElse(
                                quoted(name)
                                        + " is no longer on the shelf: put it back, or take it out of"
                                        + " the set."),
                unread.map(why -> "Its file " + why + ".")
                        .orElse("Neither its file nor its name is."));
    }

    /** That a pattern has another name now. */
    public static Told renamed(String was, String now) {
        return new Told(
                "set.renamed",
                Tone.NOTE,
                quoted(was) + " is called " + quoted(now) + " now.",
                "The set knows a pattern by its file and by its name.");
    }

    /** "280 g", "1.4 kg". */
    private static String mass(double kilograms) {
        return kilograms < 0.995
                ? 10 * Math.round(100 * kilograms) + " g"
                : Say.trimmed(kilograms, 1) + " kg";
    }

    /** What the whole asks of grips and shoulders; none where no pattern is there. */
    public static List<Told> work(SetWork work, List<String> names, double seconds) {
        if (work.times().size() < 2) {
            return List.of();
        }
        List<Told> all = new ArrayList<>();
        for (Side side : Side.values()) {
            SetWork.Arm arm = work.arm(side);
            double mean = arm.gripped() / seconds;
            all.add(
                    new Told(
                            "set.work." + side.word(),
                            Tone.NOTE,
                            Say.capital(side.hand())
                                    + " holds "
                                    + newtons(mean)
                                    + " on average, the weight of "
                                    + mass(mean / GRAVITY)
                                    + (names.size() > 1 && arm.most() > 1.05 * mean
                                            ? ", most in "
                                                    + quoted(names.get(arm.hardest()))
                                                    + " ("
                                                    + newtons(arm.most())
                                                    + ")"
                                            : "")
                                    + ".",
                            "Pull of the ideal figures over time: "
                                    + Math.round(arm.gripped())
                                    + " N·s by the grip; by the shoulder at most "
                                    + Math.round(arm.borne())
                                    + " N·s, as its dangers are read. Between two patterns the"
                                    + " middle of theirs is taken (our choice)."));
        }
        all.add(
                new Told(
                        "set.work.rest",
                        Tone.NOTE,
                        "The same load over and over without a rest is how overuse begins: rest between"
                                + " runs, and stop where a hand, an elbow or a shoulder aches.",
                        "Common practice, no source. No number here says that more is safe."));
        return List.copyOf(all);
    }

    private static String newtons(double newtons) {
        return Say.trimmed(newtons, newtons < 9.5 ? 1 : 0) + " N";
    }

    /** What of a plan is done, 0 to 1. */
    public static double share(SetPlan.Progress at) {
        return at.all() == 0 ? 1 : (double) at.done() / at.all();
    }

    /** How far a plan has come. */
    public static String progress(SetPlan.Progress at) {
        return at.done() + " of " + at.all() + " transitions";
    }

    /** What a search for an order found. */
    public static Told suggested(Suggestion found, List<String> names, int wanted) {
        List<String> order = found.order().stream().map(i -> quoted(names.get(i))).toList();
        String none =
                "no order of "
                        + wanted
                        + " patterns that lead one into the next, hardest in the middle";
        return new Told(
                "set.suggested",
                order.isEmpty() ? Tone.NOTE : Tone.GOOD,
                switch (found.outcome()) {
                    case BEST, FOUND -> Say.capital(Say.listed(order, "and")) + ".";
                    case NONE -> "There is " + none + ": ask for fewer, or save more patterns.";
                    case UNKNOWN -> "Found " + none + ", but not all were looked at.";
                },
                "Each once, each leading into the next. How hard one is, is a model of ours and no"
                        + " measurement: how hard the quicker hand pulls up, how unlike the two poi turn,"
                        + " which turn against their hand, and whether the hands go against each other. "
                        + Say.capital(
                                switch (found.outcome()) {
                                    case BEST, NONE -> "all orders were weighed.";
                                    case FOUND, UNKNOWN ->
                                            found.looked() + " beginnings were weighed, not all.";
                                }));
    }
}
