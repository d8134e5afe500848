package deferent.tell;

import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Side;
import deferent.motion.trace.Count;
import deferent.motion.trace.Counts;
import deferent.motion.trace.Trace;
import deferent.search.transition.Bridge;
import deferent.search.transition.Grade;
import deferent.search.transition.Hindrance;
import deferent.search.transition.Transition;
import deferent.search.transition.TransitionKind;
import deferent.search.transition.Transitions;
import deferent.tell.Told.Tone;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** Says transitions: what each hand does, on which count, from where, and how hard it is. */
public final class TellTransition {
    // Of a count.
    private static final int QUARTERS = 4;

    private TellTransition() {}

    /** How many there are, then each, best first; where there is none, why. */
    public static List<Told> of(Transitions found) {
        List<Told> all = new ArrayList<>();
        String searched =
                "Every moment of one pattern was tried against every moment of the other on a grid,"
                        + " over half to two and a half poi beats, and the best were made smoother, over a"
                        + " quarter to four.";
        if (found.list().isEmpty()) {
            all.add(
                    new Told(
                            "transitions",
                            Tone.NOTE,
                            "Nothing leads from the first into the second: "
                                    + because(found.why())
                                    + ".",
                            searched));
            return List.copyOf(all);
        }
        int count = found.list().size();
        all.add(
                new Told(
                        "transitions",
                        Tone.GOOD,
                        count == 1
                                ? "One way leads from the first into the second."
                                : "Here are " + count + " ways from the first into the second.",
                        searched));
        found.list().forEach(t -> all.add(of(t)));
        return List.copyOf(all);
    }

    /** One transition, as a teacher would call it. */
    public static Told of(Transition t) {
        return new Told(
                "transition",
                t.grade() == Grade.HARD ? Tone.NOTE : Tone.GOOD,
                hands(t) + ", in " + Say.seconds(t.seconds()) + ": " + grade(t.grade()) + ".",
                "A hand strays by up to "
                        + Say.length(t.stray())
                        + " from where the two patterns' own hands would blend, and the pull goes from "
                        + Say.trimmed(t.leastPull(), 1)
                        + " to "
                        + Say.trimmed(t.greatestPull(), 1)
                        + " head weights.");
    }

    /** That one pattern does not lead to another, and why. */
    public static Told none(Hindrance why) {
        return new Told(
                "transition",
                Tone.NOTE,
                "Nothing leads over: " + because(why) + ".",
                "What a practised hand can do counts as possible.");
    }

    /** That nothing leads from a pattern to any it was compared with, or back. */
    public static Told noNeighbour() {
        return new Told(
                "transition",
                Tone.NOTE,
                "None of the patterns it was compared with, even with practice.",
                "What a practised hand can do counts as possible.");
    }

    private static String hands(Transition t) {
        Side first =
                t.left().keeps() || !t.right().keeps() && t.right().leaves() < t.left().leaves()
                        ? Side.RIGHT
                        : Side.LEFT;
        Side second = first.other();
        Bridge one = t.bridge(first);
        Bridge other = t.bridge(second);
        String on = Say.capital(count(t.from(), one.leaves()));
        double period = t.from().period();
        boolean later = Math.floor(other.leaves() / period) > Math.floor(one.leaves() / period);
        String apart = count(t.from(), other.leaves()) + (later ? ", next time round," : "");
        if (one.kind() == other.kind() && on.equals(Say.capital(apart))) {
            return on + " both hands " + does(one.kind(), false);
        }
        String leads = on + " " + first.hand() + where(t.from(), one) + does(one.kind(), true);
        if (other.keeps()) {
            return leads + " while " + second.hand() + " goes on";
        }
        return leads
                + ", "
                + (on.equals(Say.capital(apart)) ? "and" : "and " + apart)
                + " "
                + second.hand()
                + where(t.from(), other)
                + does(other.kind(), true);
    }

    /** ", its poi at the top, ". */
    private static String where(Pairing from, Bridge bridge) {
        Trace trace = Trace.of(from);
        Vector3D head = trace.head(bridge.side()).position(bridge.leaves());
        Vector3D off = head.subtract(from.part(bridge.side()).place().centre());
        double across = off.getX();
        double up = off.getY();
        if (Math.hypot(across, up) < 0.05) {
            return " ";
        }
        double side = Math.abs(across);
        double high = Math.abs(up);
        String vertical = up > 0 ? "top" : "bottom";
        String level = across > 0 ? "left" : "right";
        String place =
                high > 2 * side
                        ? "at the " + vertical
                        : side > 2 * high
                                ? "out to your " + level
                                : "at the " + vertical + " " + level;
        return ", its poi " + place + ", ";
    }

    /** "on 3", "just after 3", "between 3 and 4", "just before 4", to the nearest of them. */
    public static String count(Pairing pairing, double time) {
        List<Count> counts = Counts.of(Trace.of(pairing));
        double within = time - pairing.period() * Math.floor(time / pairing.period());
        int last = counts.size() - 1;
        while (last > 0 && counts.get(last).time() > within) {
            last--;
        }
        double begins = counts.get(last).time();
        boolean ends = last + 1 == counts.size();
        double lasts = (ends ? pairing.period() : counts.get(last + 1).time()) - begins;
        String before = counts.get(last).said();
        String after = counts.get(ends ? 0 : last + 1).said();
        return switch ((int) Math.rint(QUARTERS * (within - begins) / lasts)) {
            case 0 -> "on " + before;
            case 1 -> "just after " + before;
            case 2 -> between(before, after);
            case 3 -> "just before " + after;
            default -> "on " + after;
        };
    }

    /** The count a time is nearest to: "2". */
    static String nearest(Pairing pairing, double time) {
        double cycle = pairing.period();
        return Counts.of(Trace.of(pairing)).stream()
                .min(
                        Comparator.comparingDouble(
                                count -> Math.abs(Math.IEEEremainder(count.time() - time, cycle))))
                .orElseThrow()
                .said();
    }

    private static String between(String before, String after) {
        return before.equals(after)
                ? "halfway to the next " + after
                : "between " + before + " and " + after;
    }

    private static String does(TransitionKind kind, boolean one) {
        String s = one ? "s" : "";
        return switch (kind) {
            case KEEPS -> one ? "goes on" : "go on";
            case STRAIGHT_OVER -> (one ? "goes" : "go") + " straight over";
            case SLIDE -> "slide" + s + " over";
            case HINGE -> "hold" + s + " still while the poi goes round";
            case TURN_ROUND -> "turn" + s + " round";
            case STALL -> "stall" + s + " and leave" + s + " another way";
            case PLANE_BEND -> "bend" + s + (one ? " its plane" : " their planes");
        };
    }

    /** How hard it is, in a word or two. */
    public static String grade(Grade grade) {
        return switch (grade) {
            case EASY -> "easy";
            case PRACTISED -> "with practice";
            case HARD -> "hard";
        };
    }

    /** Why there is none; empty where there is one. */
    public static String because(Hindrance why) {
        return switch (why) {
            case NONE -> "";
            case TETHERS -> "the tethers differ";
            case TURNING_PLANE -> "the plane of one of them moves as it goes";
            case NOT_DRAWN -> "no practised hand draws one of them on a cord at its tempo";
            case REACH -> "the arms do not reach one of them";
            case TOO_HARD -> "what there is would be too hard";
            case IN_THE_WAY -> "cords, heads or body would come too near";
            case OWN_TIME -> "the first keeps its own time, not the song's";
        };
    }
}
