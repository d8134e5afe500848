package deferent.sound.tune;

import java.util.SplittableRandom;

/**
 * Chance from a seed, the same on every machine and with every JDK: all is worked out from the
 * generator's bits here, since what the library makes of them may change.
 */
final class Dice {
    private final SplittableRandom bits;

    Dice(long seed) {
        bits = new SplittableRandom(seed);
    }

    /** From 0 up to but not 1. */
    double share() {
        return (bits.nextLong() >>> 11) * 0x1p-53;
    }

    double between(double least, double most) {
        return least + (most - least) * share();
    }

    /** From 0 to {@code below - 1}. */
    int whole(int below) {
        return (int) (share() * below);
    }

    boolean happens(double probability) {
        return share() < probability;
    }

    /** Of mean 0 and deviation 1, never beyond 6: twelve even numbers added up. */
    double around() {
        double sum = -6;
        for (int i = 0; i < 12; i++) {
            sum += share();
        }
        return sum;
    }

    Dice another() {
        return new Dice(bits.nextLong());
    }
}
