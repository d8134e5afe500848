package deferent.motion.trace;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.shared.Side;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * When counts fall. They count beats, whole turns of a poi: of the poi that turns more often in the
 * common cycle, the left of equals, so that no beat goes uncounted. "1" falls where the cycle
 * begins, the next when that poi has turned once round since; a poi that turns unevenly is counted
 * unevenly. A pendulum is counted each way, at both ends of its swing; a poi that keeps pointing
 * one way once a hand cycle. The counts begin anew with every common cycle. Between counts one says
 * "&amp;", or "e", "&amp;", "a", as musicians do. (Common practice, no source.)
 *
 * <p>Stage, strip, sheets, sets, transitions and films all count so. A song has beats of its own,
 * of which these are known only where its tempo is set against the poi's.
 */
public final class Counts {
    private static final int STEPS = 720;
    private static final List<String> QUARTERS = List.of("e", "&", "a");

    private Counts() {}

    /** The counts of one common cycle. */
    public static List<Count> of(Trace trace) {
        return of(trace, 1);
    }

    /**
     * The counts of one common cycle and what is said between them.
     *
     * @param parts how many are said a count: 1, 2 ("1 &amp; 2 &amp;") or 4 ("1 e &amp; a")
     */
    public static List<Count> of(Trace trace, int parts) {
        if (parts != 1 && parts != 2 && parts != 4) {
            throw new Refusal("is parted in " + parts, "count", "part it in 1, 2 or 4");
        }
        List<Double> times = times(trace);
        List<Count> counts = new ArrayList<>();
        for (int i = 0; i < times.size(); i++) {
            double from = times.get(i);
            double to = i + 1 < times.size() ? times.get(i + 1) : times.get(0) + cycle(trace);
            counts.add(new Count(from, Integer.toString(i + 1)));
            for (int part = 1; part < parts; part++) {
                counts.add(
                        new Count(
                                from + (to - from) * part / parts,
                                QUARTERS.get(part * 4 / parts - 1)));
            }
        }
        return counts;
    }

    /**
     * The counts for pictures of single moments: parted as coarsely as gives at least {@code least}
     * of them, or in quarters.
     */
    public static List<Count> moments(Trace trace, int least) {
        int beats = times(trace).size();
        return of(trace, beats >= least ? 1 : 2 * beats >= least ? 2 : 4);
    }

    /** The count that is on at a time: the last to have fallen, in whichever cycle. */
    public static Count at(Trace trace, List<Count> counts, double time) {
        double start = trace.interval().start();
        double cycle = cycle(trace);
        double within = time - cycle * Math.floor((time - start) / cycle + 1e-9);
        Count on = counts.get(counts.size() - 1);
        for (Count count : counts) {
            if (count.time() <= within + 1e-9 * cycle) {
                on = count;
            }
        }
        return on;
    }

    /**
     * The count a time falls on with what stands between: "2", "2&amp;"; empty for no count's time.
     */
    public static Optional<String> name(Trace trace, double time) {
        String whole = "";
        for (Count count : of(trace, 4)) {
            boolean beat = Character.isDigit(count.said().charAt(0));
            whole = beat ? count.said() : whole;
            if (same(trace, count.time(), time)) {
                return Optional.of(beat ? whole : whole + count.said());
            }
        }
        return Optional.empty();
    }

    /** Whether two times are the same moment of the common cycle, to a thousandth of it. */
    public static boolean same(Trace trace, double one, double other) {
        double cycles = (one - other) / cycle(trace);
        return Math.abs(cycles - (trace.periodic() ? Math.rint(cycles) : 0)) < 1e-3;
    }

    private static double cycle(Trace trace) {
        return trace.pairing().period();
    }

    /** How many counts a common cycle has, 1 or more. */
    public static int aCycle(Pairing pairing) {
        return Math.max(beats(pairing.left()), beats(pairing.right()));
    }

    private static List<Double> times(Trace trace) {
        Pairing pairing = trace.pairing();
        Side side = beats(pairing.right()) > beats(pairing.left()) ? Side.RIGHT : Side.LEFT;
        Part part = pairing.part(side);
        int beats = beats(part);
        double start = trace.interval().start();
        double cycle = cycle(trace);
        List<Double> times = new ArrayList<>();
        for (int beat = 0; beat < beats; beat++) {
            double share =
                    part.motion().spin().turns() == 0
                            ? (double) beat / beats
                            : turned(part, pairing.startPhase(side), beat);
            times.add(start + share * cycle);
        }
        return times;
    }

    private static int beats(Part part) {
        SpinLaw spin = part.motion().spin();
        if (spin.turns() != 0) {
            return part.cycles() * Math.abs(spin.turns());
        }
        return spin.swings() ? 2 * part.cycles() : part.still() ? 1 : part.cycles();
    }

    /** The share of the common cycle after which the poi has turned {@code beat} times round. */
    private static double turned(Part part, double from, int beat) {
        SpinLaw.Course course = part.motion().spin().course();
        int turns = part.motion().spin().turns();
        double whole = 2 * Math.PI * beat * Math.signum(turns);
        double began = angle(course, turns, from);
        double low = 0;
        double high = 0;
        while (beat > 0 && high < 1) {
            high += 1.0 / (STEPS * part.cycles());
            double gone = angle(course, turns, from + high * part.cycles()) - began;
            if (Math.abs(gone) >= Math.abs(whole) - 1e-9 && gone * whole > 0) {
                break;
            }
            low = high;
        }
        for (int i = 0; i < 50; i++) {
            double middle = (low + high) / 2;
            double gone = angle(course, turns, from + middle * part.cycles()) - began;
            if (gone * whole > 0 && Math.abs(gone) >= Math.abs(whole) - 1e-12) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return beat == 0 ? 0 : (low + high) / 2;
    }

    /** The tether's angle at any phase, growing from cycle to cycle. */
    private static double angle(SpinLaw.Course course, int turns, double phase) {
        double cycle = Math.floor(phase);
        return course.angle(phase - cycle) + 2 * Math.PI * turns * cycle;
    }
}
