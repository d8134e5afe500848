package deferent.motion.pairing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * How the performer faces over the common cycle: turns of the body by quarters, each begun at a
 * share of the cycle (body turns at a count: common practice, no source).
 *
 * <p>The heading is the angle from the audience, radians, to the performer's left above 0: counter-
 * clockwise seen from above, a right-handed turn about y. While a turn lasts it goes as {@link
 * SmoothStep} does, so that it is smooth to its fourth derivative throughout. Where the hands'
 * places lie is not changed by it: they are the room's, and the body turns under them. So a poi
 * that goes round forward on one plane goes round in reverse once the body has turned half a turn.
 *
 * @param from quarters to the left at which the first turn begins, and which all of a cycle keeps
 *     that has no turn; 0 to 3
 * @param turns by the share at which they begin, none begun before the last is done; together a
 *     whole number of turns
 */
public record Facing(int from, List<Turn> turns) {
    /** The audience all the time. */
    public static final Facing AUDIENCE = new Facing(0, List.of());

    /** A quarter of a turn, radians. */
    public static final double QUARTER = Math.PI / 2;

    /**
     * A turn of the body.
     *
     * @param begins the share of the common cycle at which it begins, from 0 to below 1
     * @param takes the share that it takes, 0.01 to 1; it may last into the next cycle
     * @param quarters how many quarter turns to the left, 1 to 4; below 0 to the right
     */
    public record Turn(double begins, double takes, int quarters) {
        public Turn {
            Refusal.within(begins, 0, 1, "the start of a body turn", "of the cycle");
            Refusal.within(takes, 0.01, 1, "how long a body turn takes", "of the cycle");
            if (begins >= 1) {
                throw new Refusal(
                        "begins when the cycle is over",
                        "a body turn",
                        "begin it at 0, the same moment");
            }
            if (quarters == 0 || Math.abs(quarters) > 4) {
                throw new Refusal(
                        "is of " + quarters + " quarters",
                        "a body turn",
                        "give 1 to 4 to the left, or -1 to -4 to the right");
            }
        }

        private double ends() {
            return begins + takes;
        }
    }

    public Facing {
        turns = turns.stream().sorted(Comparator.comparingDouble(Turn::begins)).toList();
        if (from < 0 || from > 3) {
            throw new Refusal(
                    "is " + from + " quarters to the left", "the way faced", "give 0 to 3");
        }
        for (int i = 0; i < turns.size(); i++) {
            boolean last = i + 1 == turns.size();
            double next = last ? turns.get(0).begins() + 1 : turns.get(i + 1).begins();
            if (turns.get(i).ends() > next + 1e-9) {
                throw new Refusal(
                        "begins at "
                                + (next - (last ? 1 : 0))
                                + " of the cycle, before the one"
                                + " before it is done at "
                                + turns.get(i).ends(),
                        "a body turn",
                        "begin it later, or make the other one quicker");
            }
        }
        int all = turns.stream().mapToInt(Turn::quarters).sum();
        if (all % 4 != 0) {
            throw new Refusal(
                    "are " + all + " quarters together, so the next cycle would begin turned",
                    "the body turns of a cycle",
                    "turn back, or on round, so that they are 0, 4, -4, ...");
        }
    }

    /** From the audience by some turns. */
    public static Facing of(Turn... turns) {
        return new Facing(0, List.of(turns));
    }

    /** Whether the body turns at all during a cycle. */
    public boolean turning() {
        return !turns.isEmpty();
    }

    /** How far the body has turned after a whole cycle, radians: a whole number of turns. */
    public double aCycle() {
        return QUARTER * turns.stream().mapToInt(Turn::quarters).sum();
    }

    /**
     * The heading, radians, with its derivatives by the share of the cycle.
     *
     * @param share of the common cycle gone by; any number of cycles
     */
    public Jet at(double share) {
        double whole = Math.floor(share);
        Jet heading = Jet.constant(QUARTER * from + whole * aCycle());
        for (Turn turn : turns) {
            double gone = (share - whole - turn.begins()) / turn.takes();
            double late = (share - whole + 1 - turn.begins()) / turn.takes();
            double full = QUARTER * turn.quarters();
            if (gone > 0) {
                heading = heading.plus(step(gone, turn).times(full));
            } else if (late < 1) {
                // It was begun in the cycle before, which counted all of it.
                heading = heading.plus(step(late, turn).plus(-1).times(full));
            }
        }
        return heading;
    }

    private static Jet step(double gone, Turn turn) {
        return SmoothStep.share(Jet.line(gone, 1 / turn.takes()));
    }

    /** As a mirror shows it: left and right changed. */
    public Facing mirrored() {
        return new Facing(
                (4 - from) % 4,
                turns.stream().map(t -> new Turn(t.begins(), t.takes(), -t.quarters())).toList());
    }

    /** The same begun at another moment: what comes at {@code share} here comes at 0 there. */
    public Facing startingAt(double share) {
        if (turns.isEmpty()) {
            return this;
        }
        List<Turn> moved = new ArrayList<>();
        int first = from;
        double least = 1;
        int gone = from;
        for (Turn turn : turns) {
            double begins = turn.begins() - share;
            begins -= Math.floor(begins);
            begins = begins < 1 ? begins : 0;
            moved.add(new Turn(begins, turn.takes(), turn.quarters()));
            if (begins < least) {
                least = begins;
                first = gone;
            }
            gone += turn.quarters();
        }
        return new Facing(Math.floorMod(first, 4), moved);
    }
}
