package deferent.motion.trade;

import deferent.motion.pairing.Series;
import deferent.motion.pairing.Stretches;
import java.util.List;
import java.util.Optional;

/** What stands with a word: a number, a size, or nothing. */
public sealed interface Amount {
    /** The unit it was said in; empty where it is no size, or of several units. */
    default Optional<Unit> unit() {
        return Optional.empty();
    }

    /** Nothing: the word says all. */
    record Plain() implements Amount {}

    /** A bare number. */
    record Count(double value) implements Amount {}

    /** A length: metres, or a share of the hand's own tether; and the unit it was said in. */
    record Length(double value, boolean ofTether, Unit said) implements Amount {
        @Override
        public Optional<Unit> unit() {
            return Optional.of(said);
        }

        public double metres(double tether) {
            return ofTether ? value * tether : value;
        }
    }

    /** An angle in radians, and the unit it was said in. */
    record Angle(double radians, Unit said) implements Amount {
        @Override
        public Optional<Unit> unit() {
            return Optional.of(said);
        }
    }

    /** Poi turns on the way out and on the way back. */
    record OutAndBack(double out, double back) implements Amount {}

    /** Stretches with their own turns. */
    record InStretches(List<Stretches.Stretch> stretches) implements Amount {}

    /** Circles that add up to a hand path. */
    record Sum(List<Series.Term> terms) implements Amount {}

    /** Three lengths: left, up, forward; from the usual centre, or from the breastbone. */
    record Shift(Length left, Length up, Length forward, boolean fromUsual) implements Amount {
        @Override
        public Optional<Unit> unit() {
            return left.unit();
        }
    }

    /** Two lengths: along and across. */
    record Pair(Length along, Length across) implements Amount {
        @Override
        public Optional<Unit> unit() {
            return along.unit();
        }
    }
}
