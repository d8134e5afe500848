package deferent.tell;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Motion;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Interval;
import deferent.motion.trade.Seen;
import deferent.motion.trade.Trade;
import deferent.reading.body.HandPace;
import deferent.reading.closest.ClosestFigure;
import deferent.reading.tether.Away;
import deferent.reading.tether.Correction;
import deferent.reading.tether.KeepTheFigure;
import deferent.reading.tether.KeepTheHandPath;
import deferent.reading.tether.Lead;
import deferent.reading.tether.LinkedTruth;
import deferent.reading.tether.Pull;
import deferent.reading.tether.SlowestTempo;
import deferent.reading.tether.Steadiness;
import deferent.reading.worked.CordReading;
import deferent.search.whole.Readings;
import deferent.tell.Told.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** Says what a cord makes of one hand's motion. */
final class TellCord {
    // Growth a cycle below which there is time to answer, whatever the reaction time.
    private static final double SLOWLY = 1.5;

    // Instants of a cycle over which the middle of a hand's path is taken.
    private static final int MOMENTS = 48;

    // Metres too few to say.
    private static final double NOTHING = 0.0005;

    // Metres.
    private static final double MUCH = 0.02;

    // Farther off than that a head draws no figure that anybody would know again, metres: half the
    // usual tether (our choice).
    private static final double FAR = 0.30;

    private static final String PUNCH =
            " A hard punch of a trained boxer goes at 9 m/s (Piorkowski, Lees and Barton 2011).";

    // So near to half a turn ahead, and by so much the same throughout, a motion has that name.
    private static final double OPPOSITE = Math.toRadians(160);
    private static final double STEADY = 0.8;

    private final Readings readings;
    private final CordReading cord;
    private final Side side;

    TellCord(Readings readings, Side side) {
        this.readings = readings;
        this.cord = readings.cord(side);
        this.side = side;
    }

    List<Told> told() {
        List<Told> all = new ArrayList<>();
        cord.pull().reading().ifPresent(pull -> all.add(pull(pull)));
        // A pendulum that nobody drives does by itself what a cord does: nothing to keep.
        boolean driven = !readings.pairing().part(side).motion().undriven();
        if (driven) {
            figures(all);
            cord.handPathKept().reading().ifPresent(kept -> all.add(handPathKept(kept)));
            cord.slowest().reading().ifPresent(slowest -> all.add(slowest(slowest)));
        }
        steadiness(all);
        TellNot not = new TellNot("cord." + side.word());
        not.add("pull", cord.pull());
        not.add("figure_kept", cord.figureKept());
        not.add("closest_figure", cord.closestFigure());
        not.add("hand_path_kept", cord.handPathKept());
        not.add("slowest", cord.slowest());
        not.add("steadiness", cord.handPathSteadiness());
        not.add("steadiness.figure_kept", cord.figureSteadiness());
        not.add("correction", cord.correction());
        all.addAll(not.told());
        return all;
    }

    /** Whether a link of the ideal survives real cords. */
    static Told truth(LinkedTruth truth) {
        String head = truth.carrier().head();
        String hand = truth.carrier().other().hand();
        String apart = Say.length(truth.figureKept().greatest());
        String text =
                switch (truth.verdict()) {
                    case SURVIVES ->
                            "On real cords the link survives: "
                                    + hand
                                    + " can keep its own figure and stay within "
                                    + apart
                                    + " of "
                                    + head
                                    + ".";
                    case SURVIVES_AS_SHAPE ->
                            "On real cords the link survives as a path, not in time: "
                                    + hand
                                    + " stays within "
                                    + Say.length(truth.figureKept().paths())
                                    + " of the path of "
                                    + head
                                    + ", but is up to "
                                    + apart
                                    + " from the head itself.";
                    case RIDER_GIVES ->
                            "On real cords the link survives only if one figure gives: keep "
                                    + hand
                                    + " on "
                                    + head
                                    + " and "
                                    + truth.carrier().other().head()
                                    + " draws another figure.";
                    case COMES_APART, NOT_LINKED ->
                            "On real cords the link comes apart"
                                    + (truth.possible() ? " by up to " + apart : "")
                                    + " at this tempo.";
                };
        boolean good = truth.verdict() == LinkedTruth.Verdict.SURVIVES;
        return new Told(
                "truth." + truth.carrier().word(),
                good ? Tone.GOOD : Tone.NOTE,
                text,
                "To keep its own figure on a cord, "
                        + hand
                        + " goes up to "
                        + apart
                        + " from "
                        + head
                        + ", "
                        + Say.length(truth.figureKept().mean())
                        + " on average, and up to "
                        + Say.length(truth.figureKept().fromPath())
                        + " from that head's path."
                        + truth.riding()
                                .map(
                                        r ->
                                                " With the hand kept on that head, its own poi's head strays up"
                                                        + " to "
                                                        + Say.length(r.away().fromPath())
                                                        + " from its ideal figure.")
                                .orElse(
                                        " With the hand kept on that head, its own cord goes slack in every"
                                                + " motion that was found."));
    }

    private Told pull(Pull pull) {
        double weight = pull.headWeight();
        boolean slack = !pull.slack().isEmpty();
        double share =
                pull.slack().stream().mapToDouble(Interval::length).sum()
                        / readings.trace().period();
        return new Told(
                "pull." + side.word(),
                slack ? Tone.WARN : Tone.NOTE,
                slack
                        ? "Spun exactly as drawn, the "
                                + side.word()
                                + " cord goes slack for "
                                + Say.lasting(share)
                                + "; elsewhere it pulls with up to "
                                + headWeights(pull.greatest() / weight)
                                + "."
                        : "The "
                                + side.word()
                                + " cord pulls with "
                                + pulls(pull.least() / weight, pull.greatest() / weight)
                                + ".",
                "At most "
                        + Say.trimmed(pull.handForce(), 1)
                        + " N on the hand, "
                        + into(pull.handForceTime())
                        + "."
                        + (pull.sideways() / weight < 0.05
                                ? ""
                                : " Across the cord the figure asks for up to "
                                        + weights(pull.sideways() / weight)
                                        + ", which a cord cannot give: the hand must leave its path or"
                                        + " the head its figure.")
                        + (pull.headSpeed() < 0.05
                                ? " The head does not move."
                                : " Gravity gives "
                                        + Say.trimmed(pull.gravityWork(), 2)
                                        + " J on the ways down and takes it back on the ways up; the head"
                                        + " is fastest at "
                                        + Say.trimmed(pull.headSpeed(), 1)
                                        + " m/s, "
                                        + Say.trimmed(pull.energy(), 1)
                                        + " J."));
    }

    /** The figure kept; where no practised hand keeps it, how near one comes. */
    private void figures(List<Told> all) {
        Optional<KeepTheFigure> kept = cord.figureKept().reading();
        Optional<ClosestFigure> closest =
                cord.closestFigure()
                        .reading()
                        .filter(
                                c ->
                                        !c.met()
                                                || c.figure().greatest() >= NOTHING
                                                || cord.correction().reading().isPresent());
        kept.filter(
                        k ->
                                closest.filter(c -> c.figure().greatest() >= NOTHING).isEmpty()
                                        || !k.possible()
                                        || !k.getsRound())
                .ifPresent(k -> all.add(figureKept(k)));
        closest.ifPresent(c -> all.add(closest(c, kept)));
    }

    private Told closest(ClosestFigure closest, Optional<KeepTheFigure> kept) {
        boolean far = closest.figure().greatest() > FAR;
        String off = Say.length(closest.figure().greatest());
        String path =
                closest.path().fromPath() < NOTHING
                        ? ", keeping its path"
                        : ", leaving its path by up to " + Say.length(closest.path().fromPath());
        boolean exact = closest.figure().greatest() < NOTHING;
        boolean lost =
                cord.correction()
                        .reading()
                        .filter(c -> c.verdict() == Correction.Verdict.LOST)
                        .isPresent();
        String figure = "the " + side.word() + " figure";
        return new Told(
                "closest_figure." + side.word(),
                far || lost || !closest.met() ? Tone.WARN : Tone.NOTE,
                !closest.met()
                        ? "No motion was found in which a practised hand draws "
                                + figure
                                + " at this tempo: one that comes within "
                                + off
                                + " asks more of it than it can do."
                        : far
                                ? "A practised hand draws nothing near "
                                        + figure
                                        + " at this tempo: the nearest is up to "
                                        + off
                                        + " off."
                                : "A practised hand draws "
                                        + figure
                                        + (exact ? " as meant at " : " within " + off + " at ")
                                        + Say.tempo(readings.pairing().tempo())
                                        + (exact ? "" : path)
                                        + corrected()
                                        + ".",
                "Of all motions of a taut cord whose hand goes no faster than "
                        + Say.trimmed(closest.limits().speed(), 1)
                        + " m/s and quickens by no more than "
                        + Say.trimmed(closest.limits().acceleration(), 0)
                        + " m/s² (our choice), the one with the least departure at its greatest"
                        + " that a search found; "
                        + (exact ? "" : Say.length(closest.figure().mean()) + " on average, ")
                        + "the hand up to "
                        + Say.trimmed(closest.handSpeed(), 1)
                        + " m/s and "
                        + Say.trimmed(closest.handAcceleration(), 0)
                        + " m/s²."
                        + kept.filter(k -> !exact && k.possible() && k.getsRound())
                                .map(this::exactly)
                                .orElse("")
                        + cord.correction().reading().map(this::comesBack).orElse(""));
    }

    /** Whether a hand that answers a slip from its closest figure late holds it. */
    private String corrected() {
        return cord.correction()
                .reading()
                .map(
                        c ->
                                c.verdict() == Correction.Verdict.LOST
                                        ? ", but a slip of it is lost before it can be corrected"
                                        : "; it needs a correction within "
                                                + Say.seconds(c.longest())
                                                + c.once()
                                                        .filter(Correction.Once::holds)
                                                        .map(once -> ", once a turn " + where(once))
                                                        .orElse(""))
                .orElse("");
    }

    private String comesBack(Correction correction) {
        return " A hand that knows the motion, sees it "
                + Math.round(correction.reaction() * 1000)
                + " ms late (Woods and others, 2015) and holds the figure but not its timing"
                + (correction.recovers() == 0
                        ? " brings back not even a slip of 2 mm"
                        : " brings back a slip of up to "
                                + Say.length(correction.recovers())
                                + " from anywhere in the cycle")
                + ", its senses off by up to a tenth by chance (our choice). Off by a tenth all the"
                + " time, it would leave "
                + leaves(correction.left())
                + "."
                + (correction.verdict() == Correction.Verdict.HOLDS
                        ? " Going against what it saw is enough."
                        : "");
    }

    private String exactly(KeepTheFigure kept) {
        HandPace pace = HandPace.of(kept.hand(), kept.cuts());
        return " Keeping the figure exactly would ask the hand for "
                + Say.trimmed(pace.speed(), 0)
                + " m/s and "
                + Say.trimmed(pace.acceleration(), 0)
                + " m/s²."
                + (pace.beyond() ? PUNCH : "");
    }

    private Told figureKept(KeepTheFigure kept) {
        String key = "figure_kept." + side.word();
        if (!kept.freeFalls().isEmpty()) {
            KeepTheFigure.FreeFall first = kept.freeFalls().get(0);
            return new Told(
                    key,
                    Tone.WARN,
                    "No hand can keep the "
                            + side.word()
                            + " figure on a cord: "
                            + into(first.time())
                            + " the head would have to fall freely, and no cord leads it there.",
                    "The cord points against the head's acceleration less gravity, which vanishes at that"
                            + " instant. Change the tempo or the sizes.");
        }
        if (!kept.jumps().isEmpty()) {
            return new Told(
                    key,
                    Tone.WARN,
                    "To keep the "
                            + side.word()
                            + " figure, the hand would have to jump, "
                            + into(kept.jumps().get(0))
                            + ".",
                    "The head's acceleration jumps there. Round the joins of the motion.");
        }
        boolean round = kept.turns() == kept.idealTurns();
        HandPace pace = HandPace.of(kept.hand(), kept.cuts());
        return new Told(
                key,
                round ? Tone.NOTE : Tone.WARN,
                round
                        ? "To keep the "
                                + side.word()
                                + " figure, the hand "
                                + (kept.away().fromPath() < NOTHING
                                        ? "stays on its path."
                                        : "leaves its path by up to "
                                                + Say.length(kept.away().fromPath())
                                                + ", "
                                                + Say.length(kept.away().fromPathMean())
                                                + " on average.")
                                + beyondArms(pace, kept)
                        : "At this tempo no hand keeps the "
                                + side.word()
                                + " figure: the poi would not turn as it should.",
                (round
                                ? ""
                                : "The cord's turns a cycle would be "
                                        + kept.turns()
                                        + " instead of "
                                        + kept.idealTurns()
                                        + ". ")
                        + (kept.away().greatest() < NOTHING
                                ? "The hand is where the ideal hand is. Hand"
                                : "At the same instant the hand is up to "
                                        + Say.length(kept.away().greatest())
                                        + " from the ideal hand, "
                                        + Say.length(kept.away().mean())
                                        + " on average. Hand")
                        + " = head + tether along (head acceleration − gravity):"
                        + " Sreenath, Lee and Kumar (2013). Least pull "
                        + weights(kept.leastPull() / kept.cord().headWeight())
                        + (kept.handSpeed() < 0.05
                                ? ", the hand at rest."
                                : ", hand speed up to "
                                        + Say.trimmed(kept.handSpeed(), 1)
                                        + " m/s, acceleration up to "
                                        + Say.trimmed(pace.acceleration(), 0)
                                        + " m/s². A hard punch of a trained boxer goes at 9 m/s"
                                        + " (Piorkowski, Lees and Barton 2011)."));
    }

    private String beyondArms(HandPace pace, KeepTheFigure kept) {
        List<String> asked = new ArrayList<>();
        if (pace.tooFast()) {
            asked.add(Say.trimmed(pace.speed(), 0) + " m/s");
        }
        if (pace.tooQuick()) {
            asked.add(
                    "an acceleration "
                            + Say.trimmed(pace.acceleration() / Gravity.STANDARD, 0)
                            + " times that of a fall");
        }
        if (asked.isEmpty()) {
            return "";
        }
        HandPace own = HandPace.of(readings.trace().hand(side), kept.cuts());
        return " Keeping it exactly would ask the hand for "
                + String.join(" and ", asked)
                + "; no arm does that turn after turn, "
                + (own.beyond()
                        ? "nor what its own path asks at this tempo."
                        : "and none has to: spinners let the figure give a little.");
    }

    private Told handPathKept(KeepTheHandPath kept) {
        String key = "hand_path_kept." + side.word();
        String tried =
                "Of "
                        + kept.tried().starts()
                        + " starts, "
                        + (kept.tried().settled() == 0
                                ? "none settled."
                                : kept.tried().settled()
                                        + " settled, "
                                        + (kept.tried().otherTurns() == 0
                                                ? "none"
                                                : kept.tried().otherTurns())
                                        + " on another number of turns.");
        if (kept.solutions().isEmpty()) {
            return new Told(
                    key,
                    Tone.WARN,
                    "If the "
                            + side.word()
                            + " hand keeps its path, no steady motion of the poi with "
                            + turns(kept.turns())
                            + " was found at this tempo"
                            + (kept.hangs() ? ": left to itself it hangs." : "."),
                    tried);
        }
        KeepTheHandPath.Solution first =
                kept.best()
                        .or(() -> kept.solutions().stream().filter(s -> s.pulls()).findFirst())
                        .orElse(kept.solutions().get(0));
        return new Told(
                key,
                first.pulls() && first.asMeant() ? Tone.NOTE : Tone.WARN,
                first.pulls() && !first.asMeant()
                        ? "If the "
                                + side.word()
                                + " hand keeps its path, the poi does another motion at this tempo: "
                                + another(first)
                                + "."
                        : first.pulls()
                                ? "If the "
                                        + side.word()
                                        + " hand keeps its path, the head "
                                        + (first.away().fromPath() < NOTHING
                                                ? "stays on its figure."
                                                : "strays up to "
                                                        + Say.length(first.away().fromPath())
                                                        + " from its figure"
                                                        + missed(first.away())
                                                        + ".")
                                : "If the "
                                        + side.word()
                                        + " hand keeps its path, the cord goes slack at this tempo"
                                        + (kept.hangs() ? ": left to itself the poi hangs." : "."),
                (first.pulls()
                                ? "The least pull is " + weights(first.leastPullWeights()) + "; "
                                : first.leastPullWeights() > -0.005
                                        ? "The pull just falls to nothing; "
                                        : "To stay straight it would have to push with "
                                                + weights(-first.leastPullWeights())
                                                + "; ")
                        + grows(first.growth())
                        + ". "
                        + (kept.solutions().size() == 1
                                ? "There is one such motion. "
                                : "There are " + kept.solutions().size() + " such motions. ")
                        + tried);
    }

    /** What it leaves out of its figure, where that is more than what it adds. */
    private static String missed(Away away) {
        return away.missed() > away.fromPath() + MUCH
                ? " and misses parts of it by " + Say.length(away.missed())
                : "";
    }

    /** What a poi does that is not as meant, as far as there is a name or a plain word for it. */
    private String another(KeepTheHandPath.Solution done) {
        Lead lead = done.lead();
        if (lead.still()) {
            return "it only hangs";
        }
        if (!lead.says()) {
            return "its cord keeps no place beside the one meant";
        }
        if (lead.meant()) {
            return "one that no faster tempo comes down to";
        }
        Seen seen = Seen.of(readings.pairing(), side);
        Motion meant = seen.motion();
        boolean opposite = Math.abs(lead.angle()) > OPPOSITE && lead.length() > STEADY;
        if (opposite && meant.spin().even().isPresent() && meant.path().circle().isPresent()) {
            String name =
                    Trade.called(seen.with(meant.withSpin(meant.spin().turned(Math.PI)))).name();
            if (!name.equals(Trade.called(seen).name())) {
                return "it becomes " + Say.a(name);
            }
        }
        return "its cord is more than a third of a turn from where it is meant";
    }

    private Told slowest(SlowestTempo slowest) {
        SlowestTempo.Limit figure = slowest.figureKept();
        SlowestTempo.Limit path = slowest.handPathKept();
        double tempo = readings.pairing().tempo();
        boolean met = figure.met(tempo) || path.met(tempo);
        String text;
        if (figure.reason() == SlowestTempo.Reason.OWN_TEMPO) {
            text =
                    "A pendulum sets the tempo here, and the "
                            + side.word()
                            + " cord stays taut at it.";
        } else if (figure.reason() == SlowestTempo.Reason.NEVER
                && path.reason() == SlowestTempo.Reason.NEVER) {
            // Behind a pendulum no other tempo was asked.
            text =
                    readings.pairing().setsOwnTempo()
                            ? "At the tempo that the pendulum sets, the "
                                    + side.word()
                                    + " cord does not stay taut."
                            : "No tempo keeps the " + side.word() + " cord taut in this motion.";
        } else if (figure.always() && path.always()) {
            text = "The " + side.word() + " cord stays taut however slow you go.";
        } else {
            text =
                    "Slowest tempo for the "
                            + side.word()
                            + " cord: "
                            + said(figure)
                            + " with the figure kept, "
                            + said(path)
                            + " with the hand path kept.";
        }
        return new Told(
                "slowest." + side.word(),
                met ? Tone.NOTE : Tone.WARN,
                text,
                "Ideal figure: "
                        + said(slowest.ideal())
                        + ". What gives way below, figure kept: "
                        + reason(figure)
                        + "; hand path kept: "
                        + reason(path)
                        + ".");
    }

    private static String said(SlowestTempo.Limit limit) {
        String fastest =
                limit.fastest().isPresent()
                        ? " up to " + Say.tempo(limit.fastest().getAsDouble())
                        : "";
        return switch (limit.reason()) {
            case NEVER -> "no tempo";
            case OWN_TEMPO -> "its own tempo";
            default ->
                    (limit.tempo().isPresent()
                                    ? Say.tempo(limit.tempo().getAsDouble())
                                    : "any tempo")
                            + fastest;
        };
    }

    private static String reason(SlowestTempo.Limit limit) {
        return switch (limit.reason()) {
            case SLACK -> "the cord goes slack";
            case FREE_FALL -> "the figure asks for free fall and the cord no longer gets round";
            case VANISHES -> "no steady motion with these turns is found";
            case NONE -> "nothing gives way";
            case NEVER -> "it does not work at any tempo";
            case OWN_TEMPO -> "a pendulum keeps its own tempo";
        };
    }

    // What the hand does by itself comes first: that is how most patterns are spun.
    private void steadiness(List<Told> all) {
        boolean undriven = readings.pairing().part(side).motion().undriven();
        Optional<Steadiness> kept = cord.handPathSteadiness().reading();
        kept.ifPresent(
                steadiness ->
                        all.add(
                                steadiness(
                                        "steadiness." + side.word(),
                                        undriven ? "" : " hand keeps its path",
                                        steadiness)));
        // Where slips of what a hand really draws are told of, this would say it twice.
        if (!undriven && cord.correction().reading().isEmpty()) {
            cord.figureSteadiness()
                    .reading()
                    .ifPresent(
                            steadiness ->
                                    all.add(
                                            steadiness(
                                                    "steadiness." + side.word() + ".figure_kept",
                                                    " hand keeps the figure",
                                                    steadiness)));
        }
    }

    private Told steadiness(String key, String hand, Steadiness steadiness) {
        String first = hand.isEmpty() ? "" : "If the " + side.word() + hand + ", ";
        String poi = hand.isEmpty() ? "the " + side.word() + " poi" : "its poi";
        boolean runs = steadiness.verdict() == Steadiness.Verdict.RUNS_AWAY;
        String text =
                switch (steadiness.verdict()) {
                    case STEADIES -> poi + " steadies itself: a slip dies away.";
                    case NEUTRAL -> "a slip of " + poi + " neither grows nor dies away.";
                    case RUNS_AWAY ->
                            (hand.isEmpty() ? poi : "and nobody minds it, " + poi)
                                    + runsAway(steadiness)
                                    + ".";
                };
        return new Told(
                key,
                runs && steadiness.growth() >= SLOWLY && cord.correction().reading().isEmpty()
                        ? Tone.WARN
                        : Tone.NOTE,
                Say.capital(
                        (runs && !hand.isEmpty() ? "If the " + side.word() + hand + " " : first)
                                + text),
                "Left alone, "
                        + grows(steadiness.growth())
                        + ". Put aside at the worst moment and in the worst direction, its speed"
                        + " as it should be, the head is "
                        + aside(steadiness.growthInReaction())
                        + " after a reaction time of "
                        + Math.round(steadiness.reaction() * 1000)
                        + " ms (Woods and others, 2015). A correction helps most "
                        + into(steadiness.leverageTime())
                        + ".");
    }

    private String runsAway(Steadiness steadiness) {
        return steadiness.growth() < SLOWLY
                ? " runs away slowly: " + grows(steadiness.growth())
                : " runs away: " + beforeYouReact(steadiness);
    }

    private static String leaves(double left) {
        String times = Say.trimmed(left, 1);
        return left < 1
                ? Say.percent(left) + " of a small slip after a cycle"
                : times.equals("1")
                        ? "a small slip as large as it was"
                        : "a small slip " + times + " times as large after a cycle";
    }

    /** Where a stroke is made: where the hand is then, or when where it goes nowhere. */
    private String where(Correction.Once once) {
        Course hand = readings.trace().hand(side);
        Interval over = readings.trace().interval();
        Vector3D middle = Vector3D.ZERO;
        for (int i = 0; i < MOMENTS; i++) {
            double time = over.start() + over.length() * i / MOMENTS;
            middle = middle.add(hand.position(time).scalarMultiply(1.0 / MOMENTS));
        }
        Vector3D off = hand.position(once.time()).subtract(middle);
        if (off.getNorm() < MUCH) {
            return into(once.time());
        }
        return Math.abs(off.getY()) < Math.hypot(off.getX(), off.getZ())
                ? "at the side"
                : off.getY() > 0 ? "at the top" : "at the bottom";
    }

    private static String aside(double times) {
        String said = Say.trimmed(times, 1);
        return said.equals("1") || times < 1
                ? "no further aside"
                : "up to " + said + " times as far aside";
    }

    private String beforeYouReact(Steadiness steadiness) {
        double slipped = steadiness.slipped(0.01);
        return slipped < 0.0105
                ? "a slip grows from cycle to cycle, but not before you can react"
                : slipped(slipped, readings.pairing().part(side).tether().length());
    }

    /**
     * What a slip of a centimetre has become before one can react. Past half a tether a small
     * slip's equations say nothing more of how far the head is.
     */
    static String slipped(double metres, double tether) {
        return metres > tether / 2
                ? "a 1 cm slip is lost before you can react"
                : "a 1 cm slip grows to " + Say.length(metres) + " before you can react";
    }

    /** "a slip grows by 0.5% a cycle", "a slip is 19 times as large a cycle later". */
    private static String grows(double growth) {
        double more = 100 * (growth - 1);
        if (Math.abs(more) < 0.05) {
            return "a slip neither grows nor dies away";
        }
        if (growth < SLOWLY) {
            return "a slip "
                    + (more > 0 ? "grows by " : "shrinks by ")
                    + Say.trimmed(Math.abs(more), 1)
                    + "% a cycle";
        }
        return "a slip is "
                + (growth < 1000
                        ? Say.trimmed(growth, growth < 10 ? 1 : 0) + " times"
                        : "more than a thousand times")
                + " as large a cycle later";
    }

    private static String pulls(double least, double most) {
        String from = Say.trimmed(Math.max(0, least), 1);
        String to = Say.trimmed(most, 1);
        return from.equals(to)
                ? headWeights(most)
                : from + " to " + to + " times the head's weight";
    }

    private static String headWeights(double weights) {
        String count = Say.trimmed(weights, Math.abs(weights) < 0.95 ? 2 : 1);
        return (count.equals("1") ? "" : count + " times ") + "the head's weight";
    }

    private static String turns(int turns) {
        int count = Math.abs(turns);
        return count == 1 ? "one turn" : count + " turns";
    }

    private static String weights(double weights) {
        String count = Say.trimmed(weights, Math.abs(weights) < 0.95 ? 2 : 1);
        return count + (count.equals("1") ? " head weight" : " head weights");
    }

    private String into(double time) {
        return Say.into(time / readings.trace().period());
    }
}
