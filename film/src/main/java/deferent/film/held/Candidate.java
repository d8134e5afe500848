package deferent.film.held;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Series;
import deferent.motion.shared.Refused;
import deferent.motion.trade.Sizes;
import deferent.motion.trade.Trade;
import deferent.motion.trade.TradeMotion;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A motion that a film may show: the table of trade motions at their own sizes, flowers of other
 * counts, and pendulums of other amplitudes.
 *
 * @param motion at the trade's own size
 * @param rare metres that it counts as further off than the most usual one, our choice
 */
record Candidate(Motion motion, double rare) {
    private static final double LATER_ROW = 0.0003;
    private static final double MORE_TURNS = 0.002;
    private static final int MOST_TURNS = 6;
    private static final int AMPLITUDE_STEP = 5; // degrees
    private static final int LEAST_AMPLITUDE = 20;
    private static final int MOST_AMPLITUDE = 160;

    static List<Candidate> all(double tether) {
        List<Candidate> all = new ArrayList<>();
        Set<Motion> known = new HashSet<>();
        List<TradeMotion> rows = Trade.motions();
        for (int i = 0; i < rows.size(); i++) {
            double rare = LATER_ROW * i;
            of(rows.get(i), tether).ifPresent(motion -> add(all, known, motion, rare));
        }
        for (int n = -MOST_TURNS; n <= MOST_TURNS; n++) {
            if (n != 0 && n != 1) {
                double rare = MORE_TURNS * Math.abs(n);
                add(all, known, Motion.flower(tether, n, 0), rare);
            }
        }
        for (int a = LEAST_AMPLITUDE; a <= MOST_AMPLITUDE; a += AMPLITUDE_STEP) {
            add(all, known, Motion.pendulum(Math.toRadians(a)), MORE_TURNS);
        }
        return List.copyOf(all);
    }

    /** A row's motion at its own size; empty for one that has none unless it is said. */
    private static Optional<Motion> of(TradeMotion row, double tether) {
        try {
            return Optional.of(row.motion(new Sizes(Map.of(), tether), false));
        } catch (Refused sizeless) {
            return Optional.empty();
        }
    }

    private static void add(List<Candidate> all, Set<Motion> known, Motion motion, double rare) {
        boolean nothing = motion.path().equals(Series.STILL) && motion.spin().liveliest() == 0;
        if (!motion.riding() && !nothing && known.add(motion)) {
            all.add(new Candidate(motion, rare));
        }
    }
}
