package deferent.reading.link;

/**
 * How far two paths are apart as shapes: the Fréchet distance after the best rigid motion.
 *
 * @param gap of points on the curves, or where the curves themselves come nearer than that by more
 *     than a few millimetres, of the polygons through them; metres
 * @param error how far the curves' own Fréchet distance, for the motion found, may be from it; NaN
 *     for an estimate
 * @param atLeast no motion at all brings it below this, metres
 * @param headRadius radius of the least ball round the first path, metres
 * @param handRadius round the second
 */
record ShapeGap(double gap, double error, double atLeast, double headRadius, double handRadius) {
    static ShapeGap quick(WalkedCurve head, WalkedCurve hand) {
        return ShapeSearch.of(head, hand).quick();
    }

    /** The quick gap alone, metres. */
    static double estimated(WalkedCurve head, WalkedCurve hand) {
        return ShapeSearch.of(head, hand).estimated();
    }

    static double refined(WalkedCurve head, WalkedCurve hand) {
        return ShapeSearch.of(head, hand).refined();
    }

    static ShapeGap certified(WalkedCurve head, WalkedCurve hand) {
        return ShapeSearch.of(head, hand).certified();
    }
}
