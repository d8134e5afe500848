package deferent.tell;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Swing;
import deferent.motion.shared.Side;
import deferent.motion.trace.Figure;
import deferent.reading.shared.LinkKind;
import deferent.search.fit.Neighbour;
import deferent.search.whole.Advice;
import deferent.search.whole.Readings;
import deferent.tell.Told.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Says all the readings of a pairing: first whether it links and can be spun, then what can hurt,
 * then each.
 */
public final class Telling {
    /** A motion within this of another is told so, metres. */
    private static final double NEAR = 0.25;

    // Nobody sees a head that is less than this off its figure, metres.
    private static final double SEEN = 0.01;

    /** Metres too few to say. */
    private static final double NOTHING = 1e-3;

    private Telling() {}

    public static List<Told> of(Readings readings) {
        List<Told> all = new ArrayList<>();
        all.add(new TellFirst(readings).told());
        all.addAll(new TellDanger(readings).dangers());
        links(readings, all);
        readings.advice().ifPresent(advice -> advice(readings.pairing(), advice, all));
        all.add(figure(readings, Side.LEFT));
        all.add(figure(readings, Side.RIGHT));
        tempo(readings.pairing(), all);
        all.addAll(new TellDanger(readings).cares());
        cords(readings, all);
        all.addAll(new TellBody(readings).told());
        readings.advice().flatMap(advice -> advice.passes().reading()).stream()
                .flatMap(passes -> TellPasses.of(readings.pairing(), passes).stream())
                .forEach(all::add);
        return List.copyOf(all);
    }

    /** The dangers, for whoever tells them apart. */
    public static List<Told> dangers(Readings readings) {
        return new TellDanger(readings).dangers();
    }

    /** The first of some dangers in words for whoever is new to it; empty where there is none. */
    public static Optional<String> plainly(List<Told> dangers) {
        return TellDanger.plainly(dangers);
    }

    /** What to mind whatever is spun; once a session and once a document. */
    public static List<String> cautions() {
        return Cautions.ALL;
    }

    /** The usual cautions in one line, where there is room for no more. */
    public static String care() {
        return Cautions.SHORT;
    }

    /** What is the same of both hands' closest figures is said once. */
    private static void cords(Readings readings, List<Told> all) {
        List<Told> left = new TellCord(readings, Side.LEFT).told();
        List<Told> right = new TellCord(readings, Side.RIGHT).told();
        List<String> twice =
                Stream.concat(left.stream(), right.stream())
                        .filter(told -> told.key().startsWith("closest_figure."))
                        .map(Telling::either)
                        .toList();
        boolean once = twice.size() == 2 && twice.get(0).equals(twice.get(1));
        for (Told told : left) {
            all.add(
                    once && told.key().startsWith("closest_figure.")
                            ? new Told(told.key(), told.tone(), either(told), told.why())
                            : told);
        }
        right.stream()
                .filter(told -> !(once && told.key().startsWith("closest_figure.")))
                .forEach(all::add);
    }

    private static String either(Told told) {
        return told.text().replaceFirst("the (left|right) figure", "either figure");
    }

    private static void links(Readings readings, List<Told> all) {
        Side first = readings.carrier();
        Side second = first.other();
        boolean aside =
                Readings.links(readings.link(first)) && !Readings.links(readings.link(second));
        Optional<Told> hands = TellHands.of(readings);
        hands.ifPresent(all::add);
        readings.link(first)
                .reading()
                .filter(link -> hands.isEmpty() || link.kind() != LinkKind.NONE)
                .ifPresent(link -> all.add(new TellLink(readings, link).told()));
        readings.link(second)
                .reading()
                .filter(link -> hands.isEmpty() || link.kind() != LinkKind.NONE)
                .map(link -> new TellLink(readings, link))
                .ifPresent(tell -> all.add(aside ? tell.toldAside() : tell.told()));
        for (Side carrier : List.of(first, second)) {
            all.addAll(TellNot.of("link." + carrier.word(), readings.link(carrier)));
        }
    }

    private static void advice(Pairing pairing, Advice advice, List<Told> all) {
        advice.fit()
                .reading()
                .flatMap(fit -> TellFit.remedy(fit, advice.within(), pairing))
                .ifPresent(all::add);
        advice.truth().reading().ifPresent(truth -> all.add(TellCord.truth(truth)));
        advice.costs().reading().stream()
                .flatMap(costs -> TellFit.costs(costs, pairing).stream().limit(1))
                .forEach(all::add);
        TellNot not = new TellNot("advice");
        not.add("fit", advice.fit());
        not.add("truth", advice.truth());
        not.add("costs", advice.costs());
        not.add("reach", advice.helps());
        not.add("arms", advice.arms());
        not.add("passes", advice.passes());
        for (Side side : Side.values()) {
            List<Neighbour> near =
                    advice.neighbours(side).reading().stream()
                            .flatMap(List::stream)
                            .filter(n -> n.strays() < NEAR)
                            .toList();
            TellFit.neighbours(near, side, pairing).stream().limit(1).forEach(all::add);
            not.add("neighbours." + side.word(), advice.neighbours(side));
        }
        all.addAll(not.told());
    }

    private static Told figure(Readings readings, Side side) {
        Readings.Hand hand = readings.hand(side);
        String opening = Say.capital(side.word()) + " hand: " + hand.motion() + "; ";
        return hand.figure()
                .reading()
                .map(figure -> figure(readings.pairing().part(side), side, opening, figure))
                .orElseGet(
                        () -> {
                            Told not = TellNot.of("figure." + side.word(), hand.figure()).get(0);
                            return new Told(
                                    not.key(),
                                    not.tone(),
                                    opening + Say.small(not.text()),
                                    not.why());
                        });
    }

    private static String eased(Part part) {
        double off = part.eased().orElse(0);
        return off < SEEN
                ? ""
                : " Its poi eases from one rate into the next, which takes the head up to "
                        + Say.length(off)
                        + " off the drawn ideal.";
    }

    private static Told figure(Part part, Side side, String opening, Figure figure) {
        return new Told(
                "figure." + side.word(),
                Tone.NOTE,
                opening + "its head " + drawn(figure) + "." + eased(part),
                figure.length() < NOTHING
                        ? "The head does not move."
                        : "In one of its own cycles the head travels "
                                + Say.length(figure.length())
                                + " and reaches "
                                + Say.length(figure.outerRadius())
                                + " from the centre. "
                                + (figure.cusps() > 0
                                        ? "It stops at " + points(figure.cusps()) + ". "
                                        : "")
                                + (figure.selfCrossings() == 0
                                        ? "It never crosses its own path."
                                        : "It crosses its own path at "
                                                + points(figure.selfCrossings())
                                                + "."));
    }

    private static String drawn(Figure figure) {
        if (Math.max(figure.width(), figure.height()) < NOTHING) {
            return "stays in place";
        }
        if (Math.min(figure.width(), figure.height()) < NOTHING) {
            return figure.height() < NOTHING
                    ? "draws a line " + Say.length(figure.width()) + " wide"
                    : "draws a line " + Say.length(figure.height()) + " high";
        }
        return "draws a figure "
                + Say.length(figure.width())
                + " wide and "
                + Say.length(figure.height())
                + " high"
                + (figure.petals() > 0
                        ? ", with "
                                + (figure.petals() == 1 ? "one petal" : figure.petals() + " petals")
                        : "");
    }

    private static String points(int count) {
        return count == 1 ? "one point" : count + " points";
    }

    private static void tempo(Pairing pairing, List<Told> all) {
        if (pairing.setsOwnTempo()) {
            all.add(
                    new Told(
                            "tempo",
                            Tone.NOTE,
                            "The pendulum sets the tempo: "
                                    + Say.tempo(pairing.tempo())
                                    + ". One cycle takes "
                                    + Say.seconds(pairing.period())
                                    + ".",
                            "A pendulum that nobody drives swings in its own time: 4K(k)·√(L/g) for its"
                                    + " amplitude (DLMF 22.19(i))."));
        }
        for (Side side : Side.values()) {
            Optional<Swing> rod =
                    pairing.part(side).motion().spin().swing().filter(Swing::needsRod);
            if (rod.isPresent()) {
                double amplitude = rod.get().amplitude();
                all.add(
                        new Told(
                                "rod." + side.word(),
                                Tone.WARN,
                                "The "
                                        + side.word()
                                        + " pendulum swings past a quarter turn: a cord goes slack before its"
                                        + " end, so this needs a rod.",
                                "At the end of a swing of "
                                        + Say.degrees(amplitude)
                                        + " the pull would be "
                                        + Say.trimmed(Math.cos(amplitude), 2)
                                        + " head weights, and a cord cannot push."));
            }
        }
    }
}
