package deferent.motion.trade;

import static deferent.motion.trade.Word.*;

import deferent.motion.pairing.Form;
import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.Measure;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.pairing.Stretches;
import deferent.motion.pairing.Stretches.Ease;
import deferent.motion.pairing.Stretches.Stretch;
import deferent.motion.pairing.Swing;
import deferent.motion.pairing.Turns;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The sizes said of a hand or of the pairing, or what they are when unsaid, and what motions are
 * made of: hand paths and spin laws of those sizes.
 *
 * <p>With n poi turns to a hand turn a flower has |n − 1| petals, so p petals are n = 1 + p in-spin
 * and n = 1 − p antispin.
 *
 * @param said what stands with each word that was said
 * @param tether metres
 */
public record Sizes(Map<Word, Amount> said, double tether) {
    static final int USUAL_PETALS = 4;
    static final double QUARTER_TURN = Math.PI / 2;

    public boolean has(Word word) {
        return said.containsKey(word);
    }

    private <A extends Amount> Optional<A> amount(Word word, Class<A> kind) {
        return Optional.ofNullable(said.get(word)).filter(kind::isInstance).map(kind::cast);
    }

    /** Metres; shares of a tether taken of the hand's own. */
    public double length(Word word, double unsaid) {
        return amount(word, Amount.Length.class).map(l -> l.metres(tether)).orElse(unsaid);
    }

    /** Radians. */
    public double angle(Word word, double unsaid) {
        return amount(word, Amount.Angle.class).map(Amount.Angle::radians).orElse(unsaid);
    }

    /** A bare number. */
    public OptionalDouble number(Word word) {
        return amount(word, Amount.Count.class)
                .map(count -> OptionalDouble.of(count.value()))
                .orElse(OptionalDouble.empty());
    }

    /** A whole number; refuses any other. */
    public int whole(Word word, int unsaid) {
        double value = number(word).orElse(unsaid);
        if (value != Math.rint(value) || Math.abs(value) > 1000) {
            throw new Refusal(
                    "is " + Amounts.number(value),
                    word == TURNS ? "poi turns" : word.said(),
                    "give a whole number");
        }
        return (int) value;
    }

    /** How far a centre is moved, or where it is put. */
    public Optional<Amount.Shift> shift() {
        return amount(CENTRE, Amount.Shift.class);
    }

    /** The hand radius, in metres; {@code tethers} where it is unsaid. */
    public double radius(double tethers) {
        double radius = length(HAND_RADIUS, tethers * tether);
        return has(HAND_RADIUS) ? Refusal.positive(radius, 10, "hand radius", "m") : radius;
    }

    Series circle() {
        return Series.circle(radius(1));
    }

    Series ellipse() {
        Optional<Amount.Pair> axes = amount(AXES, Amount.Pair.class);
        double along = axes.map(a -> a.along().metres(tether)).orElse(tether);
        double across = axes.map(a -> a.across().metres(tether)).orElse(tether / 2);
        if (axes.isPresent()) {
            Refusal.within(along, -10, 10, "half axis", "m");
            Refusal.within(across, -10, 10, "half axis", "m");
        }
        return Series.ellipse(along, across, 0);
    }

    Series loops() {
        return amount(LOOPS, Amount.Sum.class).map(s -> new Series(s.terms())).orElse(Series.STILL);
    }

    /** The hand path of that form, {@code unsaid} in the place of its own usual sizes. */
    HandPath path(Form form, Map<String, Double> unsaid) {
        return form.made()
                .apply(
                        form.sizes().stream()
                                .map(
                                        size ->
                                                size(
                                                        size,
                                                        unsaid.getOrDefault(
                                                                size.word(), size.unsaid())))
                                .toList());
    }

    private double size(Measure size, double unsaid) {
        Word word = Word.of(size);
        return switch (size.unit()) {
            case LENGTH -> word == HAND_RADIUS ? radius(unsaid) : length(word, unsaid * tether);
            case ANGLE -> angle(word, unsaid);
            case WHOLE -> whole(word, (int) unsaid);
            case SHARE -> number(word).orElse(unsaid);
        };
    }

    /** Poi turns said apart for the way out and the way back. */
    Optional<Amount.OutAndBack> outAndBack() {
        return amount(TURNS, Amount.OutAndBack.class);
    }

    /** Poi turns of a flower: by its petals, or as said. */
    int flowerTurns(int unsaid) {
        if (has(TURNS)) {
            return outAndBack().isEmpty() ? ofItsSense(whole(TURNS, unsaid)) : unsaid;
        }
        return !saysFlower() ? unsaid : has(IN_SPIN) ? 1 + petals() : 1 - petals();
    }

    private boolean saysFlower() {
        return has(PETALS) || has(IN_SPIN) || has(ANTISPIN);
    }

    int petals() {
        int petals = whole(PETALS, USUAL_PETALS);
        if (petals < 1 || petals > 25) {
            throw new Refusal("are " + petals, "petals", "give 1 to 25");
        }
        return petals;
    }

    private int ofItsSense(int turns) {
        if ((turns > 0 && has(ANTISPIN)) || (turns < 0 && has(IN_SPIN))) {
            throw new Refusal(
                    "are " + turns,
                    "poi turns",
                    "give them above 0 for in-spin and below 0 for antispin");
        }
        return turns;
    }

    /** Half a petal's turn of a figure is π of the poi's start, whatever the count. */
    double box() {
        return has(BOX) ? Math.PI : 0;
    }

    /** How the poi turns, with so many turns from that start where it is not said otherwise. */
    SpinLaw spin(int turns, double start) {
        double from = angle(START, start);
        boolean stretched = has(STRETCHES) || has(STALLING) || outAndBack().isPresent();
        if (has(EASE) && !stretched) {
            throw oneRate();
        }
        if (has(SWINGING) || has(AMPLITUDE) || has(REST)) {
            return swing();
        }
        Optional<List<Stretch>> stretches =
                amount(STRETCHES, Amount.InStretches.class)
                        .map(Amount.InStretches::stretches)
                        .or(() -> outAndBack().map(w -> halves(w.out(), w.back())));
        if (stretches.isPresent()) {
            return rested(new Stretches(from, stretches.get(), ease()));
        }
        int n = saysFlower() ? turns : whole(TURNS, turns);
        return has(STALLING)
                ? new Stretches(from, List.of(new Stretch(1, n, Ease.RESTING)), ease())
                : new Turns(n, from);
    }

    /** Share of the cycle over which one rate of turning becomes the next. */
    double ease() {
        return number(EASE).orElse(Stretches.USUAL_EASE);
    }

    /** What is said of an ease where there is nothing to ease. */
    static Refusal oneRate() {
        return new Refusal(
                "goes with a poi that changes its rate, and this one keeps to its own",
                "ease",
                "leave it out, or say \"stalling\" or how the poi turns in stretches");
    }

    static List<Stretch> halves(double out, double back) {
        return List.of(new Stretch(0.5, out, Ease.EVEN), new Stretch(0.5, back, Ease.EVEN));
    }

    SpinLaw rested(Stretches law) {
        return has(STALLING) ? law.resting() : law;
    }

    Swing swing() {
        return new Swing(angle(AMPLITUDE, QUARTER_TURN), angle(REST, Swing.DOWN));
    }
}
