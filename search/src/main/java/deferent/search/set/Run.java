package deferent.search.set;

import deferent.motion.pairing.Refusal;

/**
 * How long a pattern is to be kept.
 *
 * <p>To a song a pattern's counts go on until the next one's begin, so that phrases of the music
 * stay phrases: from the first time it is counted from 1 to the first time the next one is.
 * Without, they are those for which both hands keep it.
 *
 * @param cycle seconds of its common cycle
 * @param asked seconds it is wanted
 * @param count seconds of one count
 * @param toSong whether it is spun to a song
 */
record Run(double cycle, double asked, double count, boolean toSong) {
    Run {
        Refusal.positive(cycle, 1e6, "a common cycle", "s");
        Refusal.positive(asked, 1e6, "how long a pattern is wanted", "s");
        Refusal.positive(count, 1e6, "a count", "s");
    }

    /** To no song. */
    Run(double cycle, double asked, double count) {
        this(cycle, asked, count, false);
    }

    /** Seconds from a time on its own clock until it is counted from 1 again; none where it is. */
    double untilOne(double clock) {
        return Math.max(0, Math.ceil(clock / cycle - 1e-9) * cycle - clock);
    }

    /**
     * The stay nearest to what is asked, never less than a count, after which the pattern's clock
     * stands where it is left.
     *
     * @param entered when it is entered, seconds on its own clock
     * @param out how it is left
     * @param next the pattern after it
     */
    double stay(double entered, Door out, Run next) {
        double wanted = wanted(entered, out, next);
        double once = out.leaves() - entered;
        double stay = once + cycle * Math.rint((wanted - once) / cycle);
        double tooShort = count - stay;
        return tooShort > 1e-9 ? stay + cycle * Math.ceil(tooShort / cycle - 1e-9) : stay;
    }

    private double wanted(double entered, Door out, Run next) {
        return toSong
                ? asked + untilOne(entered) - out.seconds() - next.untilOne(out.joins())
                : asked;
    }

    /** How long the last of all is kept, after which nothing comes. */
    double last(double entered) {
        return toSong ? asked + untilOne(entered) : asked;
    }

    /** By how many counts a stay is off. */
    double off(double stay, double entered, Door out, Run next) {
        return Math.abs(stay - wanted(entered, out, next)) / count;
    }
}
