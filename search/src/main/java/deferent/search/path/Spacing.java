package deferent.search.path;

import deferent.motion.pairing.Refusal;

/**
 * When something that is known is repeated: SM-2, the method of P. A. Wozniak, Optimization of
 * Learning, Master's thesis, University of Technology in Poznan, 1990, section 3.2: I(1) = 1 day,
 * I(2) = 6 days, then I(n) = I(n − 1)·EF, rounded up; after an answer of quality q from 0 to 5 the
 * easiness becomes EF + (0.1 − (5 − q)(0.08 + (5 − q)·0.02)), never below 1.3, and begins at 2.5; a
 * quality below 3 begins the repetitions anew and leaves the easiness as it is.
 *
 * <p>It was published for what one has to remember; that we space drills of the body by it is our
 * choice. The thesis also has what was answered below 4 asked again the same day, which is left to
 * whoever spins. Our own because it is three lines: the one kept Java library ({@code fsrs}) has
 * weights that were fitted to cards with words, and keeps instants of a clock, which these rooms
 * have not.
 *
 * @param repetitions how often it was repeated well since it was begun, 0 or more
 * @param interval days until it comes back; 0 where it has not been done yet
 * @param easiness EF, 1.3 or more
 */
public record Spacing(int repetitions, int interval, double easiness) {
    /** What has not been done yet. */
    public static final Spacing NEW = new Spacing(0, 0, 2.5);

    private static final double LEAST = 1.3;

    /** Rounding leaves less than this of a whole day. */
    private static final double ROUNDING = 1e-9;

    public Spacing {
        Refusal.within(repetitions, 0, 10_000, "repetitions", "times");
        Refusal.within(interval, 0, Integer.MAX_VALUE, "the interval", "days");
        if (!(easiness >= LEAST)) {
            throw new Refusal(
                    "is " + easiness, "the easiness of what is repeated", "give 1.3 or more");
        }
    }

    /**
     * After one more time.
     *
     * @param quality 0 for nothing of it to 5 for without a fault; below 3 it begins anew
     */
    public Spacing after(int quality) {
        Refusal.within(quality, 0, 5, "how well it went", "points");
        if (quality < 3) {
            return new Spacing(0, 1, easiness);
        }
        int lacking = 5 - quality;
        double next = Math.max(LEAST, easiness + 0.1 - lacking * (0.08 + lacking * 0.02));
        int days =
                switch (repetitions) {
                    case 0 -> 1;
                    case 1 -> 6;
                    default -> (int) Math.min(36_500, Math.ceil(interval * next - ROUNDING));
                };
        return new Spacing(repetitions + 1, days, next);
    }
}
