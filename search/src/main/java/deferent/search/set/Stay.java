package deferent.search.set;

import deferent.search.whole.Readings;
import java.util.Optional;

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

    /**
     * When it is counted from 1 for the first time, seconds from the set's start: as it is entered,
     * or after that.
     */
    public double one() {
        double cycle = wanted.pairing().period();
        return starts + Math.max(0, Math.ceil(entered / cycle - 1e-9) * cycle - entered);
    }

    /** The turn of the body in it, where one is wanted. */
    public Optional<TurnMade> turning() {
        return wanted.turn().map(turn -> TurnMade.of(turn, this));
    }

    /** When it is left, seconds from the set's start. */
    public double ends() {
        return starts + seconds;
    }
}
