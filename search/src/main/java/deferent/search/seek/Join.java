package deferent.search.seek;

import java.util.Arrays;

/**
 * The join slice: each head class asks the index of hand paths for those within the tolerance in
 * moduli, and the few it names are compared in full.
 */
final class Join {
    private final Look look;
    private final HeadClasses heads;
    private final HandClasses hands;
    private final double tolerance;

    /**
     * @param tolerance in tethers, or as a share of the size where tethers are free
     */
    Join(Look look, HeadClasses heads, HandClasses hands, double tolerance) {
        this.look = look;
        this.heads = heads;
        this.hands = hands;
        this.tolerance = tolerance;
    }

    /** Matches of the head classes from {@code from} to below {@code to}, by rising classes. */
    Matches slice(int from, int to) {
        Matches out = new Matches();
        double[] at = new double[Descriptor.SIZE];
        NearIndex.Found near = new NearIndex.Found();
        for (int c = from; c < to; c++) {
            SeriesCurve head = look.head(heads.key(c, 0));
            if (head.size() < Look.POINT) {
                continue;
            }
            Descriptor.write(head, at, 0);
            near.clear();
            hands.index().within(at, tolerance + 1e-9, near);
            Arrays.sort(near.points, 0, near.count);
            for (int i = 0; i < near.count; i++) {
                SeriesCurve hand = hands.curve(near.points[i]);
                if (Alignment.leastGap(head, hand) > tolerance) {
                    continue;
                }
                out.compared();
                double gap = Alignment.gap(head, hand);
                if (gap <= tolerance) {
                    out.add(c, near.points[i], gap);
                }
            }
        }
        return out;
    }
}
