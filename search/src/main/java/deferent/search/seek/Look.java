package deferent.search.seek;

/**
 * How the curves of a space are looked at: in tethers as they are, or, where tethers are free, each
 * brought to size one, so that only shape and timing count.
 */
record Look(Space space, Tethers tethers) {
    // moduli are rounded as the signature rounds them, and summed as whole numbers
    private static final double STEP = Signature.STEP;

    /** A path smaller than this, in tethers, counts as a point: it leads nobody. */
    static final double POINT = 1e-6;

    SeriesCurve head(long key) {
        return shown(space.head(key));
    }

    SeriesCurve hand(int path) {
        return shown(space.hand(path));
    }

    SeriesCurve shown(SeriesCurve curve) {
        return tethers == Tethers.EQUAL || curve.size() < POINT
                ? curve
                : curve.scaled(1 / curve.size());
    }

    /**
     * The number by which {@link Bands} part curves: the norm of all terms as they are, or, of
     * curves that all have size one, of those that go round once. Curves of one signature have one
     * number, to the last bit.
     */
    double number(SeriesCurve shown) {
        long sum = 0;
        for (int i = 0; i < shown.terms(); i++) {
            if (tethers == Tethers.EQUAL || Math.abs(shown.k(i)) == 1) {
                long size = Math.round(shown.modulus(i) / STEP);
                sum += size * size;
            }
        }
        return Math.sqrt((double) sum) * STEP;
    }

    /** About {@link #number} of a hand path, where it can be told without the path's curve. */
    boolean mayBeWithin(int path, double least, double most) {
        double size = tethers == Tethers.EQUAL ? space.handSize(path) : least;
        return size >= least - 1e-6 && size <= most + 1e-6;
    }
}
