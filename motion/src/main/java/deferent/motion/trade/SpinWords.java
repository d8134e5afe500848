package deferent.motion.trade;

import deferent.motion.pairing.SpinLaw;
import deferent.motion.pairing.Stretches;
import deferent.motion.pairing.Stretches.Ease;
import deferent.motion.pairing.Swing;
import java.util.List;
import java.util.stream.Collectors;

/** Says how a poi turns, to be put after the words of a motion that make it turn otherwise. */
public final class SpinWords {
    private SpinWords() {}

    /**
     * With a space before it, or nothing.
     *
     * @param unsaid the law that is made where nothing is said of it
     */
    public static String of(SpinLaw spin, SpinLaw unsaid) {
        return spin.match(
                even -> turns(even.turns(), unsaid) + start(even, unsaid),
                stretches ->
                        inStretches(stretches, unsaid)
                                + ease(stretches, unsaid)
                                + start(stretches, unsaid),
                swing ->
                        (unsaid.swings() ? "" : " swinging")
                                + (swing.amplitude() == Sizes.QUARTER_TURN
                                        ? ""
                                        : " amplitude " + Amounts.angle(swing.amplitude()))
                                + (swing.rest() == Swing.DOWN
                                        ? ""
                                        : " rest " + Amounts.angle(swing.rest())));
    }

    /** As {@link #of}, but for where it starts or hangs, which a tilt says. */
    public static String standing(SpinLaw spin, SpinLaw unsaid) {
        SpinLaw begun = spin.from(unsaid.starts().orElse(0));
        return of(
                begun.swing()
                        .<SpinLaw>map(swing -> new Swing(swing.amplitude(), Swing.DOWN))
                        .orElse(begun),
                unsaid);
    }

    private static String turns(double turns, SpinLaw unsaid) {
        return turns == unsaid.turns() ? "" : " turns " + Amounts.number(turns);
    }

    private static String start(SpinLaw spin, SpinLaw unsaid) {
        double start = spin.starts().orElseThrow();
        return Double.compare(start, unsaid.starts().orElse(0)) == 0
                ? ""
                : " start " + Amounts.angle(start);
    }

    private static String inStretches(Stretches spin, SpinLaw unsaid) {
        List<Stretches.Stretch> all = spin.stretches();
        boolean alike = all.stream().map(Stretches.Stretch::ease).distinct().count() == 1;
        String stalling = all.get(0).ease() == Ease.RESTING ? " stalling" : "";
        if (unsaid.inStretches().filter(u -> sameTurns(u, spin)).isPresent()) {
            return unsaid.inStretches().filter(u -> u.stretches().equals(all)).isPresent()
                    ? ""
                    : stalling;
        }
        if (all.size() == 2 && all.stream().allMatch(s -> s.share() == 0.5) && alike) {
            return " turns "
                    + Amounts.number(all.get(0).turns())
                    + " out "
                    + Amounts.number(all.get(1).turns())
                    + " back"
                    + stalling;
        }
        if (all.size() == 1 && all.get(0).share() == 1 && !stalling.isEmpty()) {
            return turns(all.get(0).turns(), unsaid) + stalling;
        }
        return " stretches "
                + all.stream()
                        .map(
                                s ->
                                        Amounts.share(s.share())
                                                + " of "
                                                + Amounts.share(s.turns())
                                                + " turns"
                                                + (s.ease() == Ease.RESTING ? " resting" : ""))
                        .collect(Collectors.joining(" then "));
    }

    private static String ease(Stretches spin, SpinLaw unsaid) {
        double usual = unsaid.inStretches().map(Stretches::ease).orElse(Stretches.USUAL_EASE);
        return spin.ease() == usual ? "" : " ease " + Amounts.share(spin.ease());
    }

    private static boolean sameTurns(Stretches a, Stretches b) {
        return a.resting().stretches().equals(b.resting().stretches());
    }

    /** "the poi turning twice", "the tether pointing one way". */
    public static String turning(SpinLaw spin) {
        return spin.match(
                even ->
                        even.turns() == 0
                                ? "the tether pointing one way"
                                : "the poi turning "
                                        + Names.times(Math.abs(even.turns()))
                                        + (even.turns() < 0 ? " against it" : ""),
                stretches -> "the poi turning in stretches",
                swing -> "the poi swinging");
    }
}
