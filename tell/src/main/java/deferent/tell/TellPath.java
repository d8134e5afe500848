package deferent.tell;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Lexicon;
import deferent.motion.shared.Side;
import deferent.reading.body.Performer;
import deferent.reading.shared.LinkKind;
import deferent.reading.tether.Kit;
import deferent.reading.worked.Detail;
import deferent.search.path.Drill;
import deferent.search.path.DrillKind;
import deferent.search.path.Hardness;
import deferent.search.path.LeftOut;
import deferent.search.path.Path;
import deferent.search.path.Plan;
import deferent.search.path.Sitting;
import deferent.search.whole.Readings;
import deferent.tell.Told.Tone;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.LongFunction;

/**
 * Says an order to learn in: each drill with what it is, whether it links, and what most often goes
 * wrong in it, and what a plan comes to. What goes wrong is common practice, no source.
 */
public final class TellPath {
    /** Where all of the numbers of an order come from, for whoever reads one. */
    public static final String MODEL =
            "How hard a drill is, and so the order and the minutes, is worked out by a model of ours from"
                    + " the readings; nobody measured it, and how hard it is to go from one pattern into another"
                    + " is not in it. What you know comes back after 1 day, then 6, then 2.5"
                    + " times as long each time it goes well (Wozniak 1990, SM-2). What often goes wrong is"
                    + " common practice, no source.";

    // Common practice, no source.
    static final String APART = "one hand takes on the other's rhythm; count aloud.";
    static final String WHOLE =
            "it starts together and drifts apart; stop, and start again from the first count.";

    private final Path path;
    private final Performer performer;
    private final Kit kit;
    private final Lexicon lexicon;

    /**
     * @param lexicon the user's own names for motions
     */
    public TellPath(Path path, Performer performer, Kit kit, Lexicon lexicon) {
        this.path = path;
        this.performer = performer;
        this.kit = kit;
        this.lexicon = lexicon;
    }

    /** One drill in a few words: "left hand alone", "both hands apart", "all of it". */
    public static String name(Drill drill) {
        return name(drill.kind(), drill.hand());
    }

    private static String name(DrillKind kind, Optional<Side> side) {
        String hand = side.map(Side::word).orElse("");
        return switch (kind) {
            case ALONE -> hand + " hand alone";
            case APART -> "both hands apart";
            case SLOWER -> "all of it, slower";
            case LARGER -> "all of it, larger";
            case SMALLER_SWING -> "all of it, on a smaller swing";
            case HALF_CIRCLE -> hand + " hand on half its circle";
            case STILL_HAND -> hand + " hand still";
            case WHOLE -> "all of it";
        };
    }

    /**
     * What is to be said of one drill.
     *
     * @param danger what can hurt, in a sentence
     * @param todo what to do, in a sentence, its tempo in it
     * @param meets whether it links, or why not
     * @param often what often goes wrong and what mends it; common practice, no source
     */
    public record Said(Optional<String> danger, String todo, String meets, String often) {}

    /** The drill with that place in the path, from 0. */
    public Said said(int number) {
        Drill drill = path.drills().get(number);
        Readings readings = Readings.of(drill.pairing(), performer, kit, Detail.LIVE, lexicon);
        return new Said(
                new TellDanger(readings).inShort().map(what -> "Danger: " + what + "."),
                todo(drill),
                meeting(drill, readings),
                Say.capital(fault(drill)));
    }

    /** What to do in one drill, whether it links, and what often goes wrong. */
    public Told drill(int number) {
        Said said = said(number);
        return new Told(
                "path.drill." + (number + 1),
                said.danger().isPresent() ? Tone.DANGER : Tone.NOTE,
                said.danger().map(danger -> danger + " ").orElse("")
                        + said.todo()
                        + " "
                        + said.meets()
                        + " Often: "
                        + Say.small(said.often()),
                hard(path.drills().get(number)));
    }

    /** Each drill that was thought of and left out, with why: "Both hands apart: ...". */
    public List<String> leftOut() {
        return path.leftOut().stream()
                .map(left -> Say.capital(name(left.kind(), left.hand())) + ": " + because(left))
                .toList();
    }

    private static String because(LeftOut left) {
        return switch (left.why()) {
            case RIDES -> "that hand goes where the other head goes, and has no way of its own.";
            case TURNED -> "the body stays turned away, and the other poi has nowhere to hang.";
            case NO_PLACE_TO_REST -> "the other poi would hang in its way.";
            case NOTHING_MEETS -> "no head stays with the other hand, so they are apart already.";
            case BOUND -> "they go with the body or with each other.";
            case OWN_TEMPO -> "gravity sets the tempo.";
            case SLACK -> "a cord would go slack.";
            case OUT_OF_REACH -> "the arms do not get there.";
            case NOT_THERE -> "it would be no pattern.";
            case NO_EASIER -> "no easier by the model.";
            case ANOTHER_IS_NEARER -> "another one changes less.";
            case SLOWER_DOES -> "slower is easier already.";
            case NO_WORDS -> "no phrase says it.";
        };
    }

    private String todo(Drill drill) {
        String at = at(drill.pairing());
        String hand = drill.hand().map(Side::word).orElse("");
        String other = drill.hand().map(side -> side.other().word()).orElse("");
        return switch (drill.kind()) {
            case ALONE ->
                    "Hold the "
                            + other
                            + " hand still "
                            + held(drill.pairing(), drill.hand().orElseThrow().other())
                            + ", its poi hanging, and "
                            + (swings(drill) ? "let the " : "spin the ")
                            + hand
                            + (swings(drill) ? " poi swing" : " poi")
                            + " as in the pattern"
                            + at
                            + ".";
            case APART ->
                    "Spin both, each hand further to its own side, where they do not meet"
                            + at
                            + ".";
            case SLOWER ->
                    "Spin all of it slower"
                            + at
                            + " instead of "
                            + Say.trimmed(path.whole().pairing().tempo(), 1)
                            + ".";
            case LARGER ->
                    "Spin all of it larger, with tethers of "
                            + tethers(drill.pairing())
                            + " and hand circles to match"
                            + at
                            + ", if you have them that long.";
            case SMALLER_SWING ->
                    "Spin all of it, but let the swing go only half as far to either side.";
            case HALF_CIRCLE ->
                    "Spin all of it, but take the "
                            + hand
                            + " hand round half its circle"
                            + at
                            + ".";
            case STILL_HAND ->
                    "Spin all of it, but keep the "
                            + hand
                            + " hand still while its poi turns on"
                            + at
                            + ".";
            case WHOLE -> "Spin all of it" + at + ".";
        };
    }

    private static boolean swings(Drill drill) {
        return drill.pairing().part(drill.hand().orElseThrow()).motion().spin().swings();
    }

    private static String at(Pairing pairing) {
        return pairing.setsOwnTempo() ? "" : ", at " + Say.tempo(pairing.tempo());
    }

    private static String held(Pairing pairing, Side side) {
        double aside = Math.abs(pairing.part(side).place().centre().getX());
        return aside > 0.5
                ? "out to the side"
                : aside > 0.25 ? "beside the hip" : "behind the back";
    }

    private static String tethers(Pairing pairing) {
        String left = Say.size(pairing.left().tether().length());
        String right = Say.size(pairing.right().tether().length());
        return left.equals(right) ? left : left + " and " + right;
    }

    private static String meeting(Drill drill, Readings readings) {
        if (drill.kind() == DrillKind.ALONE) {
            return "One hand alone has nothing to link with.";
        }
        Optional<Told> hands = TellHands.of(readings);
        String link =
                readings.link(readings.carrier())
                        .reading()
                        .filter(l -> hands.isEmpty() || l.kind() != LinkKind.NONE)
                        .map(
                                l ->
                                        l.kind() == LinkKind.NONE
                                                ? new TellFirst(readings).apart(l)
                                                : new TellLink(readings, l).told().text())
                        .or(() -> hands.map(Told::text))
                        .orElse("Whether it links could not be worked out.");
        return link
                + readings.reach()
                        .reading()
                        .flatMap(TellBody::outOfReach)
                        .map(what -> " " + Say.capital(what) + ".")
                        .orElse("");
    }

    // Common practice, no source.
    private static String fault(Drill drill) {
        return switch (drill.kind()) {
            case ALONE -> alone(drill.pairing().part(drill.hand().orElseThrow()).motion());
            case APART -> APART;
            case SLOWER -> "the poi drops at the top; let it come round before the hand goes on.";
            case LARGER -> "the hands cut the far side short; go all the way out.";
            case SMALLER_SWING ->
                    "the swing grows by itself; let it die down, and start it again as small.";
            case HALF_CIRCLE -> "the circle grows back by itself; look at that hand.";
            case STILL_HAND ->
                    "the still hand goes along with the other; rest its elbow on your side.";
            case WHOLE -> WHOLE;
        };
    }

    /** What most often goes wrong with one hand alone. */
    static String alone(Motion motion) {
        if (motion.weave().isPresent()) {
            return "the poi hits the arm, because the wrist turns over late.";
        }
        if (motion.spin().swings()) {
            return "the hand pushes the swing; let it hang, and only keep it going.";
        }
        if (motion.still()) {
            return "the hand wanders round after the poi; keep it on one spot.";
        }
        int round = motion.path().circle().map(term -> term.k()).orElse(1);
        return round * motion.spin().turns() < 0
                ? "the hand hurries, and the petals come out unequal; go round evenly."
                : "the poi falls behind the hand; lead it from the wrist.";
    }

    private static String hard(Drill drill) {
        Hardness hard = drill.hardness();
        return String.format(
                Locale.ROOT,
                "Hardness %.1f by our model: hands %.1f, slips %.1f, slack cords %.1f, meeting %.1f, reach %.1f,"
                        + " planes %.1f. Weights are our choice.",
                hard.total(),
                hard.hands(),
                hard.slips(),
                hard.cords(),
                hard.meeting(),
                hard.reach(),
                hard.planes());
    }

    /**
     * What a plan comes to, in one sentence.
     *
     * @param wanted whether a day was said by which it is wanted
     * @param date a day in words, such as "Friday, 18 December 2026"
     */
    public static Told plan(Plan plan, boolean wanted, LongFunction<String> date) {
        String ready = date.apply(plan.ready());
        String minutes = "At " + plan.minutesADay() + " minutes a day ";
        boolean known = plan.ready() < plan.from();
        String text =
                known
                        ? "You have known it since " + ready + "; what is left is to keep it."
                        : !wanted
                                ? minutes + "you could have it on " + ready + "."
                                : plan.kept()
                                        ? minutes
                                                + "you could have it on "
                                                + ready
                                                + ", in time for "
                                                + date.apply(plan.by())
                                                + "."
                                        : minutes
                                                + "it cannot be ready by "
                                                + date.apply(plan.by())
                                                + "; you could have it on "
                                                + ready
                                                + ".";
        return new Told("path.plan", plan.kept() || !wanted ? Tone.GOOD : Tone.WARN, text, MODEL);
    }

    /** One drill on one day: "2 right hand alone, 15 minutes". */
    public String sitting(Sitting sitting) {
        Drill drill = path.drills().get(sitting.number());
        return (sitting.review() ? "again " : "")
                + (sitting.number() + 1)
                + " "
                + name(drill)
                + ", "
                + (sitting.minutes() == 1 ? "1 minute" : sitting.minutes() + " minutes");
    }
}
