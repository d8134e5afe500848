package deferent.motion.crossing;

import deferent.motion.pairing.Refusal;
import java.util.Arrays;

/**
 * Many {@link Way ways} in primitive arrays under the stable key (from, to), from below to: what a
 * slice of a {@link ShelfTable} returns, on this machine or another.
 */
public final class Ways {
    private static final int NUMBERS = 5;

    private int[] keys = new int[0];
    private double[] numbers = new double[0];
    private int count;

    public int count() {
        return count;
    }

    void add(Way way) {
        room(count + 1);
        keys[2 * count] = way.from();
        keys[2 * count + 1] = way.to();
        int at = NUMBERS * count;
        numbers[at] = way.fromTime();
        numbers[at + 1] = way.toTime();
        numbers[at + 2] = way.placeGap();
        numbers[at + 3] = way.speedGap();
        numbers[at + 4] = way.roughness();
        count++;
    }

    private void room(int wanted) {
        if (2 * wanted > keys.length) {
            int size = Math.max(16, wanted + wanted / 2);
            keys = Arrays.copyOf(keys, 2 * size);
            numbers = Arrays.copyOf(numbers, NUMBERS * size);
        }
    }

    /** Takes another slice's ways behind its own. */
    public void addAll(Ways other) {
        room(count + other.count);
        System.arraycopy(other.keys, 0, keys, 2 * count, 2 * other.count);
        System.arraycopy(other.numbers, 0, numbers, NUMBERS * count, NUMBERS * other.count);
        count += other.count;
    }

    public Way get(int i) {
        if (i < 0 || i >= count) {
            throw new Refusal("is " + i, "a crossing's place", "give 0 to below " + count);
        }
        int at = NUMBERS * i;
        return new Way(
                keys[2 * i],
                keys[2 * i + 1],
                numbers[at],
                numbers[at + 1],
                numbers[at + 2],
                numbers[at + 3],
                numbers[at + 4]);
    }

    /** From and to of each way in turn. */
    public int[] keys() {
        return Arrays.copyOf(keys, 2 * count);
    }

    /** Both times, both gaps and the roughness of each way in turn. */
    public double[] numbers() {
        return Arrays.copyOf(numbers, NUMBERS * count);
    }

    /** The ways that {@link #keys} and {@link #numbers} were taken from. */
    public static Ways of(int[] keys, double[] numbers) {
        if (keys.length % 2 != 0 || numbers.length != keys.length / 2 * NUMBERS) {
            throw new Refusal(
                    "are of lengths " + keys.length + " and " + numbers.length,
                    "ways",
                    "give two keys and " + NUMBERS + " numbers a crossing");
        }
        Ways ways = new Ways();
        ways.keys = keys.clone();
        ways.numbers = numbers.clone();
        ways.count = keys.length / 2;
        return ways;
    }
}
