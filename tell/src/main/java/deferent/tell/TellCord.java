package deferent.tell;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Side;
import deferent.motion.trace.Interval;
import deferent.motion.trade.Seen;
import deferent.motion.trade.Trade;
import deferent.reading.tether.Away;
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

/** Says what a cord makes of one hand's motion. */
final class TellCord {
    // Growth a cycle below which there is time to answer, whatever the reaction time.
    private static final double SLOWLY = 1.5;

    // Metres.
    private static final double MUCH = 0.02;

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
            cord.figureKept().reading().ifPresent(kept -> all.add(figureKept(kept)));
            cord.handPathKept().reading().ifPresent(kept -> all.add(handPathKept(kept)));
            cord.slowest().reading().ifPresent(slowest -> all.add(slowest(slowest)));
        }
        steadiness(all);
        TellNot not = new TellNot("cord." + side.word());
        not.add("pull", cord.pull());
        not.add("figure_kept", cord.figureKept());
        not.add("hand_path_kept", cord.handPathKept());
        not.add("slowest", cord.slowest());
        not.add("steadiness", cord.handPathSteadiness());
        not.add("steadiness.figure_kept", cord.figureSteadiness());
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
                            "On real cords the link survives: keeping the rider's figure, "
                                    + hand
                                    + " stays within "
                                    + apart
                                    + " of "
                                    + head
                                    + ".";
                    case SURVIVES_AS_SHAPE ->
                            "On real cords the link survives as a path, not in time: "
                                    + hand
                                    + " keeps to the carrier's figure within "
                                    + Say.length(truth.figureKept().paths())
                                    + ", but is up to "
                                    + apart
                                    + " from its head.";
                    case RIDER_GIVES ->
                            "On real cords the link lasts only if the rider's figure gives: with "
                                    + hand
                                    + " on "
                                    + head
                                    + ", the rider's head draws another figure.";
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
                "The rider's hand that keeps its own figure on a cord is up to "
                        + apart
                        + ", on average "
                        + Say.length(truth.figureKept().mean())
                        + " from the carrier's head, and "
                        + Say.length(truth.figureKept().fromPath())
                        + " from its path."
                        + truth.riding()
                                .map(
                                        r ->
                                                " With the hand kept on the carrier's head, the rider's head"
                                                        + " goes up to "
                                                        + Say.length(r.away().fromPath())
                                                        + " off its ideal figure.")
                                .orElse(
                                        " With the hand kept on the carrier's head no motion of the rider"
                                                + " pulls throughout."));
    }

    private Told pull(Pull pull) {
        double weight = pull.headWeight();
        String most = weights(pull.greatest() / weight);
        boolean slack = !pull.slack().isEmpty();
        double share =
                pull.slack().stream().mapToDouble(Interval::length).sum()
                        / readings.trace().period();
        return new Told(
                "pull." + side.word(),
                slack ? Tone.WARN : Tone.NOTE,
                slack
                        ? "Turned evenly like this, the "
                                + side.word()
                                + " cord would have to push for "
                                + Say.percent(share)
                                + " of the cycle; a cord goes slack there. It pulls up to "
                                + most
                                + "."
                        : "The "
                                + side.word()
                                + " cord pulls between "
                                + Say.trimmed(Math.max(0, pull.least() / weight), 1)
                                + " and "
                                + most
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
                        + " Gravity gives "
                        + Say.trimmed(pull.gravityWork(), 2)
                        + " J on the ways down and takes it back on the ways up; the head is fastest at "
                        + Say.trimmed(pull.headSpeed(), 1)
                        + " m/s, "
                        + Say.trimmed(pull.energy(), 1)
                        + " J.");
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
                            + " it asks the head to fall freely, and the cord has no direction there.",
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
                    "The head's acceleration jumps there. Round the motion's joins.");
        }
        boolean round = kept.turns() == kept.idealTurns();
        return new Told(
                key,
                round ? Tone.NOTE : Tone.WARN,
                round
                        ? "To keep the "
                                + side.word()
                                + " figure, the hand leaves its path by up to "
                                + Say.length(kept.away().fromPath())
                                + ", "
                                + Say.length(kept.away().fromPathMean())
                                + " on average."
                        : "The "
                                + side.word()
                                + " figure could be kept only by a cord that turns "
                                + kept.turns()
                                + " times instead of "
                                + kept.idealTurns()
                                + ": the tempo is too slow for it.",
                "At the same instant it is up to "
                        + Say.length(kept.away().greatest())
                        + ", on average "
                        + Say.length(kept.away().mean())
                        + " from the ideal hand. Hand = head + tether along (head acceleration − gravity):"
                        + " Sreenath, Lee and Kumar (2013). Least pull "
                        + weights(kept.leastPull() / kept.cord().headWeight())
                        + ", hand speed up to "
                        + Say.trimmed(kept.handSpeed(), 1)
                        + " m/s.");
    }

    private Told handPathKept(KeepTheHandPath kept) {
        String key = "hand_path_kept." + side.word();
        String tried =
                "Looked for from "
                        + kept.tried().starts()
                        + " starts, "
                        + kept.tried().settled()
                        + " settled, "
                        + kept.tried().otherTurns()
                        + " of them on another number of turns.";
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
                                        + " hand keeps its path, the head really goes up to "
                                        + Say.length(first.away().fromPath())
                                        + " off its ideal figure"
                                        + missed(first.away())
                                        + "."
                                : "If the "
                                        + side.word()
                                        + " hand keeps its path, the cord would have to push at this tempo"
                                        + (kept.hangs() ? ": left to itself the poi hangs." : "."),
                "Least pull "
                        + weights(first.leastPullWeights())
                        + "; a slip grows by "
                        + Say.trimmed(first.growth(), 3)
                        + " a cycle; "
                        + (kept.solutions().size() == 1
                                ? "one such motion. "
                                : kept.solutions().size() + " such motions. ")
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
                                        undriven ? "" : "With the hand path kept, the",
                                        steadiness)));
        if (!undriven) {
            cord.figureSteadiness()
                    .reading()
                    .ifPresent(
                            steadiness ->
                                    all.add(
                                            steadiness(
                                                    "steadiness." + side.word() + ".figure_kept",
                                                    "With the figure kept, the",
                                                    steadiness)));
        }
    }

    private Told steadiness(String key, String opening, Steadiness steadiness) {
        String poi = (opening.isEmpty() ? "The" : opening) + " " + side.word() + " poi ";
        String text =
                poi
                        + switch (steadiness.verdict()) {
                            case STEADIES -> "steadies itself: a slip dies away.";
                            case NEUTRAL -> "is neutral: a slip neither grows nor dies.";
                            case RUNS_AWAY ->
                                    steadiness.growth() < SLOWLY
                                            ? "runs away slowly: a slip grows by "
                                                    + Say.trimmed(
                                                            (steadiness.growth() - 1) * 100, 1)
                                                    + "% a cycle."
                                            : "runs away: " + beforeAnAnswer(steadiness);
                        };
        return new Told(
                key,
                steadiness.verdict() == Steadiness.Verdict.RUNS_AWAY
                                && steadiness.growth() >= SLOWLY
                        ? Tone.WARN
                        : Tone.NOTE,
                text,
                "If the hand does not correct it, a slip grows by "
                        + Say.trimmed(steadiness.growth(), steadiness.growth() < 10 ? 3 : 1)
                        + " a cycle. Put aside at the worst moment and in the worst direction, its speed"
                        + " as it should be, the head is up to "
                        + Say.trimmed(steadiness.growthInReaction(), 1)
                        + " times as far aside after a reaction time of "
                        + Math.round(steadiness.reaction() * 1000)
                        + " ms (Woods and others, 2015). A correction does most "
                        + into(steadiness.leverageTime())
                        + ".");
    }

    private String beforeAnAnswer(Steadiness steadiness) {
        double slipped = steadiness.slipped(0.01);
        return slipped < 0.0105
                ? "a slip grows from cycle to cycle, but not before you can answer it."
                : slipped(slipped, readings.pairing().part(side).tether().length()) + ".";
    }

    /**
     * What a slip of a centimetre has become before it can be answered. Past half a tether a small
     * slip's equations say nothing more of how far the head is.
     */
    static String slipped(double metres, double tether) {
        return metres > tether / 2
                ? "a 1 cm slip is lost before you can react"
                : "a 1 cm slip is " + Say.length(metres) + " before you can answer it";
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
        return Say.percent(time / readings.trace().period()) + " into the cycle";
    }
}
