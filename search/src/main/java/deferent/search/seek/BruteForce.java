package deferent.search.seek;

/**
 * The baseline: every head path against every hand path of every motion, each compared in full, no
 * class, no index, no bound. What the index finds must be exactly this, and how long this takes is
 * what the index is measured by.
 *
 * @param motions how many were compared with as many
 * @param links pairs of carrier and rider within the tolerance
 * @param comparisons of two curves
 */
public record BruteForce(int motions, long links, long comparisons) {
    /** Compares all motions of the request's space with all. */
    public static BruteForce of(SeekRequest request) {
        Look look = new Look(request.space(), request.tethers());
        long[] keys = request.space().build(0, request.space().keys());
        SeriesCurve[] heads = new SeriesCurve[keys.length];
        SeriesCurve[] hands = new SeriesCurve[keys.length];
        for (int i = 0; i < keys.length; i++) {
            heads[i] = look.head(keys[i]);
            hands[i] = look.hand(request.space().path(keys[i]));
        }
        long links = 0;
        long comparisons = 0;
        for (SeriesCurve head : heads) {
            if (head.size() < Look.POINT) {
                continue;
            }
            for (SeriesCurve hand : hands) {
                if (hand.size() >= Look.POINT) {
                    comparisons++;
                    links += Alignment.gap(head, hand) <= request.nearness() ? 1 : 0;
                }
            }
        }
        return new BruteForce(keys.length, links, comparisons);
    }
}
