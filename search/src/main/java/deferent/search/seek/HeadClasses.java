package deferent.search.seek;

import java.util.Arrays;
import java.util.Comparator;
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

    /**
     * @param keys in any order; rising, where {@link #of(long)} is to be asked
     * @param signatures one a key
     */
    static HeadClasses of(Look look, long[] keys, long[] signatures) {
        int count = keys.length;
        // as many of a signature's bits as an index leaves; what they leave open is told apart
        // within a run
        long index = Math.max(1, Integer.highestOneBit(count)) * 2L - 1;
        long[] packed = new long[count];
        for (int i = 0; i < count; i++) {
            packed[i] = signatures[i] & ~index | i;
        }
        Arrays.parallelSort(packed);
        int[] runs = new int[count + 1];
        int runCount = 0;
        for (int i = 0; i < count; i++) {
            if (i == 0 || (packed[i] & ~index) != (packed[i - 1] & ~index)) {
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
                                int run = runs[r];
                                int[] members = new int[runs[r + 1] - run];
                                for (int i = 0; i < members.length; i++) {
                                    members[i] = (int) (packed[run + i] & index);
                                }
                                part(look, keys, signatures, members, run, order, opens);
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
            Look look,
            long[] keys,
            long[] signatures,
            int[] run,
            int from,
            int[] order,
            boolean[] opens) {
        int[] left = run.length == 1 ? run : byKey(run, keys);
        int at = from;
        int count = left.length;
        while (count > 0) {
            int first = left[0];
            opens[at] = true;
            order[at++] = first;
            int kept = 0;
            if (count > 1) {
                SeriesCurve curve = look.head(keys[first]);
                for (int i = 1; i < count; i++) {
                    int other = left[i];
                    if (signatures[other] == signatures[first]
                            && Alignment.same(curve, look.head(keys[other]), SAME)) {
                        order[at++] = other;
                    } else {
                        left[kept++] = other;
                    }
                }
            }
            count = kept;
        }
    }

    private static int[] byKey(int[] run, long[] keys) {
        for (int i = 1; i < run.length; i++) {
            if (keys[run[i]] < keys[run[i - 1]]) {
                return Arrays.stream(run)
                        .boxed()
                        .sorted(Comparator.comparingLong(at -> keys[at]))
                        .mapToInt(Integer::intValue)
                        .toArray();
            }
        }
        return run;
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
