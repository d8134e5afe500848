package deferent.search.set;

import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.tether.Pull;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a body turn of a set asks of the cords. Patterns and passages are worked out as the body has
 * them; while it turns, the heads are also carried round it, which is read on the turned trace in
 * the room ({@link Pull}) and held against the same without the turn, at the same instants.
 *
 * @param step which pattern, by its place in the set
 * @param turning when and how fast
 * @param left of the left cord
 * @param right of the right
 */
public record TurnLoad(int step, TurnMade turning, Cord left, Cord right) {
    /** From so much of a head's weight on it is told (our choice). */
    public static final double FELT = 0.1;

    /** From so far behind on no cord is said to carry the poi along, radians (our choice). */
    public static final double FAR = Math.toRadians(45);

    private static final int COUNT = 128;

    /**
     * Of one cord, in weights of its head.
     *
     * @param pull by how much its pull differs at most from that without the turn
     * @param across what it would have to give across itself at most, beyond that without the turn,
     *     and cannot
     * @param lag the angle between the cord as it is drawn and the force that the head needs, at
     *     the most, radians: by about so much the poi stays behind its plane
     * @param least its least pull meanwhile; below 0 it goes slack
     * @param slackBefore whether it would go slack without the turn too
     */
    public record Cord(double pull, double across, double lag, double least, boolean slackBefore) {
        /** Whether the turn is to be felt in it. */
        public boolean felt() {
            return Math.max(pull, across) > FELT;
        }

        /** Whether the poi stays so far behind that it is another pattern. */
        public boolean behind() {
            return lag > FAR;
        }

        /** Whether it goes slack by the turn. */
        public boolean slack() {
            return least < 0 && !slackBefore;
        }
    }

    /** The greater of the two cords' differences, in weights of a head. */
    public double most() {
        return Math.max(
                Math.max(left.pull(), left.across()), Math.max(right.pull(), right.across()));
    }

    public Cord cord(Side side) {
        return side == Side.LEFT ? left : right;
    }

    /** All turns of a set. */
    public static List<TurnLoad> of(SetPlan plan, PairBook book) {
        List<TurnLoad> all = new ArrayList<>();
        for (int step = 0; step < plan.stays().size(); step++) {
            Optional<TurnMade> turning = plan.stays().get(step).flatMap(Stay::turning);
            if (turning.isPresent()) {
                all.add(of(plan, book, step, turning.get()));
            }
        }
        return List.copyOf(all);
    }

    private static TurnLoad of(SetPlan plan, PairBook book, int step, TurnMade turning) {
        double to = Math.min(turning.ends(), plan.seconds());
        Trace turned = SetTrace.of(plan, book, turning.starts(), to);
        Trace still = SetTrace.unturned(plan, book, turning.starts(), to);
        return new TurnLoad(
                step,
                turning,
                cord(turned, still, book, Side.LEFT),
                cord(turned, still, book, Side.RIGHT));
    }

    private static Cord cord(Trace turned, Trace still, PairBook book, Side side) {
        Pull then = pull(turned, side, book);
        Pull before = pull(still, side, book);
        double pull = 0;
        double across = 0;
        double lag = 0;
        for (int i = 0; i < Math.min(then.newtons().length, before.newtons().length); i++) {
            pull = Math.max(pull, Math.abs(then.newtons()[i] - before.newtons()[i]));
            double beside = then.sidewaysNewtons()[i] - before.sidewaysNewtons()[i];
            across = Math.max(across, beside);
            lag = Math.max(lag, Math.atan2(beside, then.newtons()[i]));
        }
        double weight = then.headWeight();
        return new Cord(
                pull / weight, across / weight, lag, then.least() / weight, before.least() < 0);
    }

    private static Pull pull(Trace trace, Side side, PairBook book) {
        return Pull.of(
                trace, side, deferent.reading.tether.Cord.of(trace, side, book.kit()), COUNT);
    }
}
