package deferent.film.measured;

import deferent.film.cycle.Wave;
import deferent.film.hand.Doubt;
import deferent.film.hand.HandFinder;
import deferent.film.hand.HandSight;
import deferent.motion.pairing.Refusal;
import deferent.reading.tether.Kit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.QRDecomposition;

/**
 * What was measured of one hand and its poi over the mean cycle.
 *
 * @param head mean cycle of the head, metres in the wall plane: x to the performer's left, y up
 * @param tether hand to head, metres
 * @param hands where the hand must have been, wherever the cord pulled
 */
public record MeasuredSide(Wave head, double tether, List<HandSight> hands) {
    /** Even moments of a cycle at which the hand is looked for. */
    public static final int MOMENTS = 120;

    private static final int HAND_ORDER = 6; // turns a cycle that a hand's path is smoothed to

    public MeasuredSide {
        Refusal.positive(tether, 5, "a film's tether", "m");
        hands = List.copyOf(hands);
    }

    /** The hand worked out from the head and its cord, as sure as metres and upright are. */
    public static MeasuredSide of(Wave head, double tether, Kit kit, Doubt doubt) {
        return new MeasuredSide(head, tether, HandFinder.of(head, tether, kit, MOMENTS, doubt));
    }

    /** Share of the cycle in which the cord pulls enough for the hand to be told. */
    public double handKnown() {
        return (double) hands.size() / MOMENTS;
    }

    /**
     * The hand at a moment; empty where the cord does not pull enough for it to be told.
     *
     * @param time seconds of its cycle
     */
    public Optional<HandSight> handAt(double time) {
        double step = head.period() / MOMENTS;
        return hands.stream()
                .filter(
                        sight ->
                                Math.abs(Math.IEEEremainder(sight.time() - time, head.period()))
                                        <= step)
                .min(
                        Comparator.comparingDouble(
                                sight ->
                                        Math.abs(
                                                Math.IEEEremainder(
                                                        sight.time() - time, head.period()))));
    }

    /** Mean error of the hand where it is told, metres on either axis; 0 where it never is. */
    public double handError() {
        return hands.stream().mapToDouble(HandSight::error).average().orElse(0);
    }

    /** Where the hand is on the whole, metres to the performer's left. */
    public double handX() {
        return hands.stream().mapToDouble(HandSight::x).average().orElse(head.x()[0]);
    }

    /** What the head drew: x and y at {@link #MOMENTS} even moments of its cycle, metres. */
    public double[][] light() {
        double[][] at = new double[2][MOMENTS];
        for (int i = 0; i < MOMENTS; i++) {
            double[] place = head.at(head.period() * i / MOMENTS)[0];
            at[0][i] = place[0];
            at[1][i] = place[1];
        }
        return at;
    }

    /**
     * The hand's mean cycle: a few turns laid through where it is told, each by how sure it is, so
     * that it goes on through what is not. Where next to nothing is told, the tether's length above
     * the head's middle.
     */
    Wave hand() {
        int order = Math.min(HAND_ORDER, (hands.size() - 1) / 6);
        int m = 2 * Math.max(0, order) + 1;
        if (hands.size() < 12) {
            return new Wave(
                    head.period(),
                    new double[] {head.x()[0]},
                    new double[] {head.y()[0]},
                    new Array2DRowRealMatrix(1, 1),
                    tether);
        }
        // A touch of stiffness keeps high turns small in gaps.
        int rows = hands.size() + m;
        double[][] a = new double[rows][m];
        double[] bx = new double[rows];
        double[] by = new double[rows];
        double rate = 2 * Math.PI / head.period();
        double sum = 0;
        for (int i = 0; i < hands.size(); i++) {
            HandSight sight = hands.get(i);
            double w = 1 / Math.hypot(sight.error(), 0.01);
            a[i][0] = w;
            for (int k = 1; 2 * k < m; k++) {
                a[i][2 * k - 1] = w * Math.cos(k * rate * sight.time());
                a[i][2 * k] = w * Math.sin(k * rate * sight.time());
            }
            bx[i] = w * sight.x();
            by[i] = w * sight.y();
            sum += sight.error() * sight.error();
        }
        for (int k = 1; k < m; k++) {
            int turn = (k + 1) / 2;
            a[hands.size() + k][k] = turn * turn * Math.sqrt(hands.size()) / 2;
        }
        DecompositionSolver solver =
                new QRDecomposition(new Array2DRowRealMatrix(a, false)).getSolver();
        return new Wave(
                head.period(),
                solver.solve(new ArrayRealVector(bx, false)).toArray(),
                solver.solve(new ArrayRealVector(by, false)).toArray(),
                new Array2DRowRealMatrix(m, m),
                Math.sqrt(sum / hands.size()));
    }
}
