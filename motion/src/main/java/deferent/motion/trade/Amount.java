package deferent.motion.trade;

import deferent.motion.pairing.Series;
import deferent.motion.pairing.Stretches;
import java.util.List;

/** What stands with a word: a number, a size, or nothing. */
public sealed interface Amount {
    /** Nothing: the word says all. */
    record Plain() implements Amount {}

    /** A bare number. */
    record Count(double value) implements Amount {}

    /** A length: metres, or a share of the hand's own tether. */
    record Length(double value, boolean ofTether) implements Amount {
        public double metres(double tether) {
            return ofTether ? value * tether : value;
        }
    }

    /** An angle in radians. */
    record Angle(double radians) implements Amount {}

    /** Poi turns on the way out and on the way back. */
    record OutAndBack(double out, double back) implements Amount {}

    /** Stretches with their own turns. */
    record InStretches(List<Stretches.Stretch> stretches) implements Amount {}

    /** Circles that add up to a hand path. */
    record Sum(List<Series.Term> terms) implements Amount {}

    /** Three lengths: left, up, forward; from the usual centre, or from the breastbone. */
    record Shift(Length left, Length up, Length forward, boolean fromUsual) implements Amount {}

    /** Two lengths: along and across. */
    record Pair(Length along, Length across) implements Amount {}
}
