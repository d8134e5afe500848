package deferent.search.crossing;

import deferent.motion.pairing.Refusal;
import java.util.Arrays;

/**
 * Many {@link ShelfCrossing crossings} in primitive arrays under the stable key (from, to), from
 * below to: what a slice of a {@link ShelfTable} returns, on this machine or another.
 */
public final class ShelfCrossings {
    private static final int NUMBERS = 5;

    private int[] keys = new int[0];
    private double[] numbers = new double[0];
    private int count;

    public int count() {
        return count;
    }

    void add(ShelfCrossing crossing) {
        room(count + 1);
        keys[2 * count] = crossing.from();
        keys[2 * count + 1] = crossing.to();
        int at = NUMBERS * count;
        numbers[at] = crossing.fromTime();
        numbers[at + 1] = crossing.toTime();
        numbers[at + 2] = crossing.placeGap();
        numbers[at + 3] = crossing.speedGap();
        numbers[at + 4] = crossing.roughness();
        count++;
    }

    private void room(int wanted) {
        if (2 * wanted > keys.length) {
            int size = Math.max(16, wanted + wanted / 2);
            keys = Arrays.copyOf(keys, 2 * size);
            numbers = Arrays.copyOf(numbers, NUMBERS * size);
        }
    }

    /** Takes another slice's crossings behind its own. */
    public void addAll(ShelfCrossings other) {
        room(count + other.count);
        System.arraycopy(other.keys, 0, keys, 2 * count, 2 * other.count);
        System.arraycopy(other.numbers, 0, numbers, NUMBERS * count, NUMBERS * other.count);
        count += other.count;
    }

    public ShelfCrossing get(int i) {
        if (i < 0 || i >= count) {
            throw new Refusal("is " + i, "a crossing's place", "give 0 to below " + count);
        }
        int at = NUMBERS * i;
        return new ShelfCrossing(
                keys[2 * i],
                keys[2 * i + 1],
                numbers[at],
                numbers[at + 1],
                numbers[at + 2],
                numbers[at + 3],
                numbers[at + 4]);
    }

    /** From and to of each crossing in turn. */
    public int[] keys() {
        return Arrays.copyOf(keys, 2 * count);
    }

    /** Both times, both gaps and the roughness of each crossing in turn. */
    public double[] numbers() {
        return Arrays.copyOf(numbers, NUMBERS * count);
    }

    /** The crossings that {@link #keys} and {@link #numbers} were taken from. */
    public static ShelfCrossings of(int[] keys, double[] numbers) {
        if (keys.length % 2 != 0 || numbers.length != keys.length / 2 * NUMBERS) {
            throw new Refusal(
                    "are of lengths " + keys.length + " and " + numbers.length,
                    "crossings",
                    "give two keys and " + NUMBERS + " numbers a crossing");
        }
        ShelfCrossings crossings = new ShelfCrossings();
        crossings.keys = keys.clone();
        crossings.numbers = numbers.clone();
        crossings.count = keys.length / 2;
        return crossings;
    }
}
