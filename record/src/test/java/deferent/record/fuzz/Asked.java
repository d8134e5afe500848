package deferent.record.fuzz;

import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;

/**
 * What one reading is asked of. It can be made again from its seed and number alone.
 *
 * @param seed of the whole run
 * @param number of this one in the run
 */
record Asked(long seed, int number, String phrase, Kit kit, Performer performer) {
    @Override
    public String toString() {
        return "seed "
                + seed
                + " number "
                + number
                + ": \""
                + phrase
                + "\", "
                + kit
                + ", "
                + performer;
    }
}
