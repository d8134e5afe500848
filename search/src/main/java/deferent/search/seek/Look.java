package deferent.search.seek;

/**
 * How the curves of a space are looked at: in tethers as they are, or, where tethers are free, each
 * brought to size one, so that only shape and timing count.
 */
record Look(Space space, Tethers tethers) {
    /** A path smaller than this, in tethers, counts as a point: it leads nobody. */
    static final double POINT = 1e-6;

    SeriesCurve head(long key) {
        return shown(space.head(key));
    }

    SeriesCurve hand(int path) {
        return shown(space.hand(path));
    }

    private SeriesCurve shown(SeriesCurve curve) {
        return tethers == Tethers.EQUAL || curve.size() < POINT
                ? curve
                : curve.scaled(1 / curve.size());
    }
}
