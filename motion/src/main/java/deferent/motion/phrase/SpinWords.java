package deferent.motion.phrase;

import deferent.motion.pairing.SpinLaw;
import deferent.motion.pairing.Stretches;
import deferent.motion.pairing.Stretches.Ease;
import deferent.motion.pairing.Swing;
import deferent.motion.pairing.Turns;
import java.util.List;
import java.util.stream.Collectors;

/** Says how a poi turns, to be put after the word of its hand's path. */
final class SpinWords {
    private SpinWords() {}

    /**
     * With a space before it, or nothing.
     *
     * @param unsaid the poi turns a cycle that need no saying
     */
    static String of(SpinLaw spin, int unsaid) {
        if (spin instanceof Turns even) {
            return (even.turns() == unsaid ? "" : " turns " + even.turns()) + start(even.start());
        }
        if (spin instanceof Stretches stretches) {
            return inStretches(stretches, unsaid) + start(stretches.start());
        }
        Swing swing = (Swing) spin;
        return " swinging"
                + (swing.amplitude() == Math.PI / 2
                        ? ""
                        : " amplitude " + Amounts.angle(swing.amplitude()))
                + (swing.rest() == Swing.DOWN ? "" : " rest " + Amounts.angle(swing.rest()));
    }

    private static String start(double start) {
        return Double.compare(start, 0) == 0 ? "" : " start " + Amounts.angle(start);
    }

    private static String inStretches(Stretches spin, int unsaid) {
        List<Stretches.Stretch> all = spin.stretches();
        boolean alike = all.stream().map(Stretches.Stretch::ease).distinct().count() == 1;
        boolean halves = all.size() == 2 && all.stream().allMatch(s -> s.share() == 0.5);
        if (halves && alike) {
            return " turns "
                    + Amounts.number(all.get(0).turns())
                    + " out "
                    + Amounts.number(all.get(1).turns())
                    + " back"
                    + (all.get(0).ease() == Ease.RESTING ? " stalling" : "");
        }
        if (all.size() == 1 && all.get(0).share() == 1 && all.get(0).ease() == Ease.RESTING) {
            double turns = all.get(0).turns();
            return (turns == unsaid ? "" : " turns " + Amounts.number(turns)) + " stalling";
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
}
