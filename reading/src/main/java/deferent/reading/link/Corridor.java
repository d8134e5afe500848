package deferent.reading.link;

import java.util.Arrays;

/**
 * Which steps of a second walker may go with each step of a first: {@code low[i]} to {@code
 * high[i]}, both never falling, the first holding 0 and the last the other's last step. Keeping to
 * a corridor saves most of the work and can only lengthen the lead.
 */
record Corridor(int[] low, int[] high) {
    /** Any with any, of {@code n} and {@code m} points. */
    static Corridor whole(int n, int m) {
        int[] high = new int[n];
        Arrays.fill(high, m - 1);
        return new Corridor(new int[n], high);
    }

    /**
     * About a walk of two paths in {@code n} steps each, taken again in {@code factor} times as
     * many: {@code margin} of the finer steps to either side.
     *
     * @param pairs i, j, i, j, … from the end to the start
     */
    static Corridor about(int[] pairs, int count, int n, int factor, int margin) {
        int last = n * factor;
        int[] low = new int[last + 1];
        int[] high = new int[last + 1];
        Arrays.fill(low, last);
        for (int k = 0; k < count; k++) {
            int i = pairs[2 * k] * factor;
            int j = pairs[2 * k + 1] * factor;
            for (int row = Math.max(0, i - factor); row <= Math.min(last, i + factor); row++) {
                low[row] = Math.min(low[row], Math.max(0, j - factor - margin));
                high[row] = Math.max(high[row], Math.min(last, j + factor + margin));
            }
        }
        return new Corridor(low, high);
    }
}
