package deferent.search.set;

import deferent.motion.pairing.Refusal;

/**
 * How long a pattern is to be kept.
 *
 * @param cycle seconds of its common cycle
 * @param asked seconds it is wanted
 * @param count seconds of one count
 */
record Run(double cycle, double asked, double count) {
    Run {
        Refusal.positive(cycle, 1e6, "a common cycle", "s");
        Refusal.positive(asked, 1e6, "how long a pattern is wanted", "s");
        Refusal.positive(count, 1e6, "a count", "s");
    }

    /**
     * The stay nearest to what is asked, never less than a count, after which the pattern's clock
     * stands where it is left.
     *
     * @param entered when it is entered, seconds on its own clock
     * @param leaves when it can be left, seconds on its own clock, and every cycle again
     */
    double stay(double entered, double leaves) {
        double once = leaves - entered;
        double stay = once + cycle * Math.rint((asked - once) / cycle);
        double tooShort = count - stay;
        return tooShort > 1e-9 ? stay + cycle * Math.ceil(tooShort / cycle - 1e-9) : stay;
    }

    /** By how many counts a stay is off. */
    double off(double stay) {
        return Math.abs(stay - asked) / count;
    }
}
