package deferent.search.seek;

/**
 * Two figures beside each other.
 *
 * @param contrast the larger's outer radius over the smaller's, 1 or more
 * @param symmetry greatest order of turning symmetry that both share, 0 where both are circles
 */
record BothFigures(double contrast, int symmetry) {
    static BothFigures of(Space space, long carrier, long rider) {
        SeriesCurve lead = space.head(carrier);
        SeriesCurve follow = space.head(rider);
        double a = Math.max(Sight.outerRadius(lead), 1e-9);
        double b = Math.max(Sight.outerRadius(follow), 1e-9);
        return new BothFigures(
                Math.max(a / b, b / a), SeriesCurve.gcd(lead.symmetry(), follow.symmetry()));
    }
}
