package deferent.search.transition;

import deferent.motion.pairing.Jet;

/**
 * When in a passage the hand goes over and when the plane bends, as shares of it. Where a pattern
 * beside the body and one before it lie in planes well apart, the poi is bent before the body and
 * not through it: first the hand comes forward, then the plane bends; back again it is the other
 * way round. Else both go over all the time.
 *
 * @param hand when the hand goes over
 * @param bend when the plane does
 */
record Stagger(Span hand, Span bend) {
    /** From one share of a passage to another. */
    record Span(double from, double to) {
        double share(double x) {
            return Math.max(0, Math.min(1, (x - from) / (to - from)));
        }

        Jet share(Jet x) {
            return x.plus(-from).times(1 / (to - from));
        }

        /** How much faster than the passage it goes. */
        double rate() {
            return 1 / (to - from);
        }
    }

    static final Span ALL = new Span(0, 1);
    private static final Span FIRST = new Span(0, 0.8);
    private static final Span LAST = new Span(0.2, 1);

    // No nearer to the audience than that is as far forward, metres (our choice).
    private static final double FORWARD = 0.10;

    static Stagger of(SpunSide from, SpunSide to) {
        double forward = to.middle().getZ() - from.middle().getZ();
        if (!to.wellApart(from) || Math.abs(forward) < FORWARD) {
            return new Stagger(ALL, ALL);
        }
        return forward > 0 ? new Stagger(FIRST, LAST) : new Stagger(LAST, FIRST);
    }
}
