package deferent.search.seek;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Motions gathered by head path: all carriers that draw one figure in one timing are a class.
 * Signatures come slice by slice; sorting them brings equal ones together in n log n, and within a
 * run of equal signatures each motion is compared with the run's first ones before it joins their
 * class.
 */
final class HeadClasses {
    /** Two head paths nearer than this, in tethers, are one. */
    static final double SAME = 1e-6;

    private static final int INDEX_BITS = 24;
    private static final long INDEX = (1L << INDEX_BITS) - 1;

    private final long[] keys;
    private final int[] from;
    private final int[] classOf;
    private final long[] sortedKeys;

    private HeadClasses(long[] keys, int[] from, long[] sortedKeys, int[] classOf) {
        this.keys = keys;
        this.from = from;
        this.sortedKeys = sortedKeys;
        this.classOf = classOf;
    }

    /** The key slice: signatures of the motions {@code keys[from]} to below {@code keys[to]}. */
    static long[] signatures(Look look, long[] keys, int from, int to) {
        long[] out = new long[to - from];
        for (int i = from; i < to; i++) {
            out[i - from] = Signature.of(look.head(keys[i]));
        }
        return out;
    }

    /**
     * @param keys rising
     * @param signatures one a key
     */
    static HeadClasses of(Look look, long[] keys, long[] signatures) {
        int count = keys.length;
        if (count > INDEX) {
            throw new IllegalArgumentException("more than " + INDEX + " motions in one piece");
        }
        long[] packed = new long[count];
        for (int i = 0; i < count; i++) {
            packed[i] = signatures[i] & ~INDEX | i;
        }
        Arrays.parallelSort(packed);
        int[] runs = new int[count + 1];
        int runCount = 0;
        for (int i = 0; i < count; i++) {
            if (i == 0 || (packed[i] & ~INDEX) != (packed[i - 1] & ~INDEX)) {
                runs[runCount++] = i;
            }
        }
        runs[runCount] = count;
        int[] order = new int[count];
        boolean[] opens = new boolean[count];
        int blocks = 64;
        int all = runCount;
        IntStream.range(0, blocks)
                .parallel()
                .forEach(
                        b -> {
                            for (int r = (int) ((long) all * b / blocks);
                                    r < (long) all * (b + 1) / blocks;
                                    r++) {
                                part(look, keys, packed, runs[r], runs[r + 1], order, opens);
                            }
                        });
        int[] from = new int[count + 1];
        int[] classOf = new int[count];
        long[] byClass = new long[count];
        int classes = 0;
        for (int i = 0; i < count; i++) {
            if (opens[i]) {
                from[classes++] = i;
            }
            byClass[i] = keys[order[i]];
            classOf[order[i]] = classes - 1;
        }
        from[classes] = count;
        return new HeadClasses(byClass, Arrays.copyOf(from, classes + 1), keys, classOf);
    }

    // Parts a run into classes, each in one piece, firsts first.
    private static void part(
            Look look, long[] keys, long[] packed, int from, int to, int[] order, boolean[] opens) {
        if (to - from == 1) {
            order[from] = (int) (packed[from] & INDEX);
            opens[from] = true;
            return;
        }
        int[] left = new int[to - from];
        for (int i = from; i < to; i++) {
            left[i - from] = (int) (packed[i] & INDEX);
        }
        int at = from;
        int count = left.length;
        while (count > 0) {
            SeriesCurve first = look.head(keys[left[0]]);
            opens[at] = true;
            order[at++] = left[0];
            int kept = 0;
            for (int i = 1; i < count; i++) {
                SeriesCurve other = look.head(keys[left[i]]);
                if (Alignment.same(first, other, SAME)) {
                    order[at++] = left[i];
                } else {
                    left[kept++] = left[i];
                }
            }
            count = kept;
        }
    }

    int count() {
        return from.length - 1;
    }

    /** Motions in a class. */
    int size(int c) {
        return from[c + 1] - from[c];
    }

    /** The class's motion number {@code i}, by rising key. */
    long key(int c, int i) {
        return keys[from[c] + i];
    }

    long[] members(int c) {
        return Arrays.copyOfRange(keys, from[c], from[c + 1]);
    }

    /** The class of a motion, or below 0 where the key is none. */
    int of(long key) {
        int at = Arrays.binarySearch(sortedKeys, key);
        return at < 0 ? -1 : classOf[at];
    }
}
