package deferent.search.set;

import deferent.search.whole.Readings;

/**
 * One pattern of a set as it is spun.
 *
 * @param wanted the pattern and for how long it was wanted
 * @param readings what it asks of whoever spins it
 * @param entered when it is entered, seconds on its own clock
 * @param starts when that is, seconds from the set's start
 * @param seconds how long it is kept
 */
public record Stay(
        Wanted wanted, Readings readings, double entered, double starts, double seconds) {
    /** For how many of its counts it is kept. */
    public double counts() {
        return seconds / wanted.count();
    }

    /** When it is left, seconds from the set's start. */
    public double ends() {
        return starts + seconds;
    }
}
