package deferent.search.seek;

import java.util.Arrays;

/**
 * Class matches as flat arrays: head class, hand class, gap (in tethers, or shares of the size
 * where tethers are free), and how many pairs of curves were compared to find them.
 */
final class Matches {
    private int[] heads = new int[16];
    private int[] hands = new int[16];
    private double[] gaps = new double[16];
    private int count;
    private long compared;

    void add(int head, int hand, double gap) {
        if (count == heads.length) {
            heads = Arrays.copyOf(heads, 2 * count);
            hands = Arrays.copyOf(hands, 2 * count);
            gaps = Arrays.copyOf(gaps, 2 * count);
        }
        heads[count] = head;
        hands[count] = hand;
        gaps[count++] = gap;
    }

    void addAll(Matches other) {
        for (int i = 0; i < other.count; i++) {
            add(other.heads[i], other.hands[i], other.gaps[i]);
        }
        compared += other.compared;
    }

    void compared() {
        compared++;
    }

    void compared(long more) {
        compared += more;
    }

    int count() {
        return count;
    }

    int head(int i) {
        return heads[i];
    }

    int hand(int i) {
        return hands[i];
    }

    double gap(int i) {
        return gaps[i];
    }

    /** Full comparisons of two curves made so far. */
    long comparisons() {
        return compared;
    }

    /** Where the matches of a head class begin, or would. */
    int first(int head) {
        int low = 0;
        int high = count;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (heads[middle] < head) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** The match of these two classes, or below 0; matches stand by rising head class. */
    int find(int head, int hand) {
        for (int at = first(head); at < count && heads[at] == head; at++) {
            if (hands[at] == hand) {
                return at;
            }
        }
        return -1;
    }

    int[] headArray() {
        return Arrays.copyOf(heads, count);
    }

    int[] handArray() {
        return Arrays.copyOf(hands, count);
    }

    double[] gapArray() {
        return Arrays.copyOf(gaps, count);
    }
}
