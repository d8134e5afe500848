package deferent.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A cord as seen at a moment, in pieces: none where the body hides it, none where the other cord
 * passes before it, and with a gap of the ground's colour beside it where it passes before the body
 * or before the other's hand or head. The stage does the same in {@code strand.js}.
 *
 * @param from share of the cord from hand to head at which the piece begins
 * @param to and ends
 * @param cased whether it passes before something
 * @param above whether that is a mark, so that it is painted after the marks
 */
record Strand(double from, double to, boolean cased, boolean above) {
    private static final double STEP = 1.5;
    private static final int MOST = 600;

    private static final int HIDDEN = 0;
    private static final int PLAIN = 1;
    private static final int CASED = 2;
    private static final int ABOVE = 3;

    /**
     * A hand's or head's mark.
     *
     * @param at where
     * @param reach pixels
     */
    record Mark(Framing.Spot at, double reach) {}

    /**
     * The pieces of a cord.
     *
     * @param hand where it begins
     * @param head where it ends
     * @param body who might hide it
     * @param marks the other side's, and nobody's of its own: they lie at its ends
     * @param other the other cord, from hand to head; none for no other
     * @param own how far its own hand's and head's marks reach, which stay over it, pixels
     * @param gap how far what is nearer keeps what is farther off, pixels
     */
    static List<Strand> of(
            Framing.Spot hand,
            Framing.Spot head,
            Optional<Silhouette> body,
            List<Mark> marks,
            List<Framing.Spot> other,
            double own,
            double gap) {
        double length = Math.hypot(head.x() - hand.x(), head.y() - hand.y());
        int count = (int) Math.max(2, Math.min(MOST, Math.ceil(length / STEP)));
        int[] state = new int[count];
        double[] hole = hole(hand, head, other, gap);
        for (int i = 0; i < count; i++) {
            double share = (i + 0.5) / count;
            double x = hand.x() + share * (head.x() - hand.x());
            double y = hand.y() + share * (head.y() - hand.y());
            double near = hand.near() + share * (head.near() - hand.near());
            int side = body.map(one -> one.side(x, y, near)).orElse(0);
            boolean free = share * length > own && (1 - share) * length > own;
            boolean above = false;
            for (Mark mark : marks) {
                above |=
                        free
                                && near > mark.at().near() + Crossings.LEVEL
                                && Math.hypot(x - mark.at().x(), y - mark.at().y())
                                        < mark.reach() + gap;
            }
            state[i] =
                    side < 0 || share > hole[0] && share < hole[1]
                            ? HIDDEN
                            : above ? ABOVE : side > 0 ? CASED : PLAIN;
        }
        int reach = (int) Math.round(gap * count / Math.max(length, 1e-9));
        return runs(widened(widened(state, CASED, reach), HIDDEN, reach), count);
    }

    // Where two cords cross, the farther has a hole.
    private static double[] hole(
            Framing.Spot hand, Framing.Spot head, List<Framing.Spot> other, double gap) {
        if (!other.isEmpty()) {
            Crossings.Lane one = lane(List.of(hand, head));
            for (Crossings.Cut cut : Crossings.of(List.of(one, lane(other)))) {
                if (cut.lane() == 0) {
                    double length = Math.hypot(head.x() - hand.x(), head.y() - hand.y());
                    // What is hidden keeps a gap off on either side anyway.
                    double half = Math.max(STEP / 2, gap / cut.sine() - gap) / length;
                    return new double[] {cut.at() - half, cut.at() + half};
                }
            }
        }
        return new double[] {2, 2};
    }

    private static Crossings.Lane lane(List<Framing.Spot> spots) {
        return new Crossings.Lane(
                spots.stream().mapToDouble(Framing.Spot::x).toArray(),
                spots.stream().mapToDouble(Framing.Spot::y).toArray(),
                spots.stream().mapToDouble(Framing.Spot::near).toArray());
    }

    private static int[] widened(int[] state, int which, int reach) {
        int[] wide = state.clone();
        for (int i = 0; i < state.length; i++) {
            for (int k = Math.max(0, i - reach); k <= Math.min(state.length - 1, i + reach); k++) {
                boolean weaker = which == HIDDEN ? state[i] != HIDDEN : state[i] == PLAIN;
                if (state[k] == which && weaker) {
                    wide[i] = which;
                }
            }
        }
        return wide;
    }

    private static List<Strand> runs(int[] state, int count) {
        List<Strand> runs = new ArrayList<>();
        int begun = 0;
        for (int i = 1; i <= count; i++) {
            if (i == count || state[i] != state[begun]) {
                if (state[begun] != HIDDEN) {
                    runs.add(
                            new Strand(
                                    (double) begun / count,
                                    (double) i / count,
                                    state[begun] >= CASED,
                                    state[begun] == ABOVE));
                }
                begun = i;
            }
        }
        return runs;
    }
}
