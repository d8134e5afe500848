package deferent.tell;

import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Side;
import deferent.search.crossing.Adjustment;
import deferent.search.crossing.Crossing;
import deferent.search.crossing.Crossings;
import deferent.search.crossing.FlowingSet;
import deferent.search.crossing.Need;
import deferent.search.crossing.Passage;
import deferent.search.crossing.Props;
import deferent.search.crossing.Route;
import deferent.search.crossing.ShelfCrossing;
import deferent.search.crossing.TableProgress;
import deferent.search.crossing.Who;
import deferent.tell.Told.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** Says crossings, passages, routes and sets. */
public final class TellCrossing {
    // As far from a trade word's timing, in turns, as still counts as that word.
    private static final double NEAR = 0.04;
    private static final double GENTLE = 0.5;
    // Metres by which a hand may leave its path before it has to be told to be able to.
    private static final double NEAR_PATH = 0.25;

    private TellCrossing() {}

    /** How many there are, then each, smoothest first; where there is none, how near they come. */
    public static List<Told> of(Crossings crossings) {
        List<Told> all = new ArrayList<>();
        int count = crossings.list().size();
        String tolerance =
                "Every moment of one cycle was compared with every moment of the other: "
                        + who(crossings.request().who())
                        + ", within "
                        + Say.length(crossings.request().place())
                        + (Double.isFinite(crossings.request().speed())
                                ? " and " + speed(crossings.request().speed())
                                : ", at any speed")
                        + ".";
        if (count == 0) {
            all.add(new Told("crossings", Tone.NOTE, missed(crossings), tolerance));
            return List.copyOf(all);
        }
        all.add(
                new Told(
                        "crossings",
                        Tone.GOOD,
                        "The first can go straight over into the second at "
                                + (count == 1 ? "one moment." : count + " moments."),
                        tolerance));
        crossings.smoothestFirst().forEach(c -> all.add(of(c)));
        return List.copyOf(all);
    }

    private static String missed(Crossings crossings) {
        Crossing c = Crossings.nearest(crossings.from(), crossings.to(), crossings.request());
        return "The first cannot go straight over into the second: where they come nearest, "
                + when(c)
                + (c.adjustment().none() ? "" : ", the second " + adjusted(c.adjustment()))
                + ", they are "
                + Say.length(c.placeGap())
                + " and "
                + speed(c.speedGap())
                + " apart.";
    }

    /** When, what changes, how rough, and how the props stand. */
    public static Told of(Crossing c) {
        StringBuilder text = new StringBuilder(Say.capital(when(c)));
        text.append(": ").append(need(c));
        if (!c.adjustment().none()) {
            text.append(", once the second is ").append(adjusted(c.adjustment()));
        }
        text.append("; ").append(props(c.before()));
        if (!props(c.before()).equals(props(c.after()))) {
            text.append(", then ").append(props(c.after()));
        }
        text.append("; ").append(rough(c.roughness().weights())).append('.');
        if (!c.keepsTethers()) {
            text.append(" The tethers differ by ")
                    .append(Say.length(c.tetherChange()))
                    .append(", so the grip has to slide.");
        }
        return new Told(
                "crossing",
                c.roughness().weights() <= GENTLE && c.keepsTethers() ? Tone.GOOD : Tone.NOTE,
                text.toString(),
                "The states differ by up to "
                        + (c.placeGap() < 0.0005 ? "" : Say.length(c.placeGap()) + " and ")
                        + speed(c.speedGap())
                        + " and stay within tolerance for "
                        + Say.seconds(c.together())
                        + ". To take that up in "
                        + Say.seconds(c.blend())
                        + " no passage needs less extra acceleration than "
                        + weights(c.roughness().heads())
                        + " at a head and "
                        + weights(c.roughness().hands())
                        + " at a hand, root mean square.");
    }

    private static String when(Crossing c) {
        return "at "
                + Say.percent(c.fromShare())
                + " of the first and "
                + Say.percent(c.toShare())
                + " of the second";
    }

    private static String who(Who who) {
        return who == Who.BOTH ? "both hands" : "the " + who.sides().get(0).word() + " hand alone";
    }

    private static String need(Crossing c) {
        if (c.need() == Need.TIMING) {
            return "the timing between the hands changes by " + Say.share(c.adjustment().timing());
        }
        if (c.need() == Need.TEMPO) {
            return "the tempo changes to " + Say.tempo(c.to().tempo());
        }
        if (c.who() != Who.BOTH || c.left() == c.right()) {
            Side side = c.who().sides().get(0);
            String whose = c.who() == Who.BOTH ? "both hands" : side.hand();
            return need(c.need(side), whose, c.who() == Who.BOTH);
        }
        return need(c.left(), Side.LEFT.hand(), false)
                + " and "
                + need(c.right(), Side.RIGHT.hand(), false);
    }

    private static String need(Need need, String whose, boolean many) {
        return switch (need) {
            case NOTHING -> whose + (many ? " go on as they are" : " goes on as it is");
            case HAND_PATH -> whose + (many ? " take other paths" : " takes another path");
            case SPIN ->
                    whose
                            + (many
                                    ? " go on while both poi turn differently"
                                    : " goes on while its poi turns differently");
            case SPIN_REVERSAL ->
                    (many ? "both poi turn" : whose + "'s poi turns")
                            + " the other way from a stall";
            default ->
                    whose
                            + (many
                                    ? " and both poi go on differently"
                                    : " and its poi both go on differently");
        };
    }

    private static String adjusted(Adjustment a) {
        List<String> said = new ArrayList<>();
        if (a.mirrored()) {
            said.add("spun the other way round");
        }
        if (a.turned()) {
            said.add("turned by " + Say.degrees(a.turn()));
        }
        if (a.shifted()) {
            Vector3D by = a.shift();
            said.add("carried " + Say.offset(by.getX(), by.getY(), by.getZ()));
        }
        if (a.faster()) {
            said.add((a.tempo() > 1 ? "sped up" : "slowed down") + " to " + Say.percent(a.tempo()));
        }
        if (a.retimed()) {
            said.add("with another timing between its hands");
        }
        return Say.listed(said, "and");
    }

    /** "split time, same direction". */
    public static String props(Props props) {
        double apart = Math.abs(Math.IEEEremainder(props.ahead(), 1));
        String timing =
                apart < NEAR
                        ? "together"
                        : Math.abs(apart - 0.25) < NEAR
                                ? "quarter time"
                                : apart > 0.5 - NEAR
                                        ? "split time"
                                        : Say.percent(apart) + " of a turn apart";
        return props.direction()
                .map(
                        d ->
                                timing
                                        + (d == Direction.SAME
                                                ? ", same direction"
                                                : ", opposite direction"))
                .orElse(timing + ", with a poi that stands");
    }

    private static String rough(double weights) {
        return weights < 0.005
                ? "it takes no extra pull"
                : "it takes an extra pull of " + timesTheHead(weights);
    }

    private static String timesTheHead(double weights) {
        return Say.trimmed(weights, 2) + " times the head's weight";
    }

    private static String weights(double weights) {
        String said = Say.trimmed(weights, 2);
        return said.equals("0") ? "nothing" : said + (said.equals("1") ? " weight" : " weights");
    }

    private static String speed(double metresASecond) {
        return Say.trimmed(metresASecond, 2) + " m/s";
    }

    /** Whether a cord can do it, and how hard it pulls. */
    public static Told of(Passage passage) {
        double least = Math.min(passage.left().leastWeights(), passage.right().leastWeights());
        double most = Math.max(passage.left().greatestWeights(), passage.right().greatestWeights());
        String pulls =
                "The pull is "
                        + weights(least)
                        + " at least and "
                        + weights(most)
                        + " at most; the heads take up to "
                        + weights(passage.extraHeads())
                        + " beyond what the motions ask for.";
        if (passage.corded() && passage.astray() > NEAR_PATH) {
            return new Told(
                    "passage",
                    Tone.NOTE,
                    "A cord can do it only if you can do this: to keep the figures, the hands leave their"
                            + " paths by up to "
                            + Say.length(passage.astray())
                            + ".",
                    pulls);
        }
        if (passage.corded()) {
            return new Told(
                    "passage",
                    Tone.GOOD,
                    "A cord can do it: both tethers pull all the way"
                            + (passage.astray() < 0.0005
                                    ? "."
                                    : ", and to keep the figures the hands stray up to "
                                            + Say.length(passage.astray())
                                            + " from their paths."),
                    pulls);
        }
        return new Told(
                "passage",
                Tone.WARN,
                "No cord can do it, so it is shown as if on rods: "
                        + switch (passage.why()) {
                            case FREE_FALL -> "a figure asks for free fall";
                            case JUMP -> "a hand would have to jump";
                            case CORNER -> "a head turns a corner";
                            default -> "the tethers are of different lengths";
                        }
                        + (passage.why() == Passage.Hindrance.TETHERS
                                ? ""
                                : " " + Say.seconds(passage.hindered()) + " into it")
                        + ".",
                pulls);
    }

    /**
     * The patterns in their order, with how rough each change is.
     *
     * @param names of the shelf's patterns
     */
    public static Told of(Route route, IntFunction<String> names) {
        StringBuilder text = new StringBuilder(names.apply(route.start()));
        for (ShelfCrossing crossing : route.crossings()) {
            text.append(", then ").append(names.apply(crossing.to()));
        }
        text.append('.');
        List<String> steps = new ArrayList<>();
        for (ShelfCrossing crossing : route.crossings()) {
            steps.add(weights(crossing.roughness()));
        }
        return new Told(
                "route",
                route.roughest() <= GENTLE ? Tone.GOOD : Tone.NOTE,
                text.toString(),
                steps.isEmpty()
                        ? "You are there already."
                        : "Extra acceleration at each crossing, in turn: "
                                + String.join(", ", steps)
                                + "; "
                                + weights(route.roughness())
                                + " in all.");
    }

    /** How far the comparison of a shelf has come. */
    public static String progress(TableProgress progress) {
        return progress.done()
                + " of "
                + progress.all()
                + " pairs of patterns compared, "
                + progress.crossings()
                + (progress.crossings() == 1 ? " crossing" : " crossings")
                + " found";
    }

    /** That the comparison of a shelf was stopped before its end. */
    public static Told stopped() {
        return new Told(
                "stopped",
                Tone.NOTE,
                "Stopped before all patterns were compared, so there may be a gentler route.",
                "Only the crossings found so far were looked at.");
    }

    /** That there is no route. */
    public static Told noRoute(String from, String to) {
        return new Told(
                "route",
                Tone.NOTE,
                "No crossings lead from " + from + " to " + to + " through the patterns you know.",
                "Wider tolerances, one tempo for all, or a pattern between the two would open one.");
    }

    public static Told of(FlowingSet set, int patterns, IntFunction<String> names) {
        String looked =
                " Part routes looked at: "
                        + set.looked()
                        + ". Each pattern comes once, and the last leads back to the first.";
        String how =
                switch (set.outcome()) {
                    case BEST -> "No set of that length from there is gentler.";
                    case FOUND -> "The search stopped before it could prove that none is gentler.";
                    case NONE -> "All that could be one were tried.";
                    case UNKNOWN -> "The search stopped before all were tried: there may be one.";
                };
        return set.route()
                .map(
                        route -> {
                            Told told = of(route, names);
                            return new Told("set", told.tone(), told.text(), how + looked);
                        })
                .orElseGet(
                        () ->
                                new Told(
                                        "set",
                                        Tone.NOTE,
                                        set.outcome() == FlowingSet.Outcome.NONE
                                                ? "There is no set of "
                                                        + patterns
                                                        + " patterns from there and back."
                                                : "No set of " + patterns + " patterns was found.",
                                        how + looked));
    }
}
