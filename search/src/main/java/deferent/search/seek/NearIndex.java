package deferent.search.seek;

import java.util.Arrays;

/**
 * Points in a space of {@link Descriptor#SIZE} dimensions, asked for all within a radius: a
 * balanced k-d tree (Bentley, 1975) kept in two flat arrays, each part split at its median along
 * the dimension in which it is widest. Built in n log n; a question costs log n and its answers
 * where the radius is small beside the points' spread.
 */
final class NearIndex {
    private static final int LEAF = 8;
    private static final int SIZE = Descriptor.SIZE;

    private final double[] points;
    private final int[] order;
    private final byte[] along;

    /**
     * @param points {@link Descriptor#SIZE} numbers a point
     */
    NearIndex(double[] points) {
        this.points = points;
        int count = points.length / SIZE;
        order = new int[count];
        along = new byte[count];
        for (int i = 0; i < count; i++) {
            order[i] = i;
        }
        split(0, count);
    }

    private void split(int from, int to) {
        while (to - from > LEAF) {
            int widest = widest(from, to);
            int middle = (from + to) >>> 1;
            select(from, to - 1, middle, widest);
            along[middle] = (byte) widest;
            split(from, middle);
            from = middle + 1;
        }
    }

    private int widest(int from, int to) {
        int widest = 0;
        double most = -1;
        for (int d = 0; d < SIZE; d++) {
            double low = Double.MAX_VALUE;
            double high = -Double.MAX_VALUE;
            for (int i = from; i < to; i++) {
                double x = points[order[i] * SIZE + d];
                low = Math.min(low, x);
                high = Math.max(high, x);
            }
            if (high - low > most) {
                most = high - low;
                widest = d;
            }
        }
        return widest;
    }

    // Hoare's selection, pivot from the middle; equal values spread over both sides.
    private void select(int low, int high, int wanted, int d) {
        while (low < high) {
            double pivot = points[order[(low + high) >>> 1] * SIZE + d];
            int i = low;
            int j = high;
            while (i <= j) {
                while (points[order[i] * SIZE + d] < pivot) {
                    i++;
                }
                while (points[order[j] * SIZE + d] > pivot) {
                    j--;
                }
                if (i <= j) {
                    int held = order[i];
                    order[i++] = order[j];
                    order[j--] = held;
                }
            }
            if (wanted <= j) {
                high = j;
            } else if (wanted >= i) {
                low = i;
            } else {
                return;
            }
        }
    }

    int count() {
        return order.length;
    }

    /** All points within {@code radius} of {@code at}, in no order. */
    void within(double[] at, double radius, Found found) {
        ask(0, order.length, at, radius, found);
    }

    private void ask(int from, int to, double[] at, double radius, Found found) {
        while (to - from > LEAF) {
            int middle = (from + to) >>> 1;
            int d = along[middle];
            double off = at[d] - points[order[middle] * SIZE + d];
            if (Math.abs(off) <= radius) {
                test(order[middle], at, radius, found);
                ask(from, middle, at, radius, found);
                from = middle + 1;
            } else if (off < 0) {
                to = middle;
            } else {
                from = middle + 1;
            }
        }
        for (int i = from; i < to; i++) {
            test(order[i], at, radius, found);
        }
    }

    private void test(int point, double[] at, double radius, Found found) {
        double left = radius * radius;
        for (int d = 0; d < SIZE; d++) {
            double off = points[point * SIZE + d] - at[d];
            left -= off * off;
            if (left < 0) {
                return;
            }
        }
        found.add(point);
    }

    /** A growing list of point numbers. */
    static final class Found {
        int[] points = new int[64];
        int count;

        void clear() {
            count = 0;
        }

        void add(int point) {
            if (count == points.length) {
                points = Arrays.copyOf(points, 2 * count);
            }
            points[count++] = point;
        }
    }
}
