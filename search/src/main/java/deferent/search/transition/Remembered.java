package deferent.search.transition;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;

/**
 * What was worked out last, each for its key, up to so many. Safe to share between threads.
 *
 * @param <K> what it is asked by
 * @param <V> what it answers
 */
public final class Remembered<K, V> {
    private final Map<K, V> known;

    /**
     * @param most answers kept; that which was asked for longest ago goes first
     */
    public Remembered(int most) {
        this.known =
                new LinkedHashMap<>(64, 0.75f, true) {
                    private static final long serialVersionUID = 1L;

                    @Override
                    protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
                        return size() > most;
                    }
                };
    }

    /** Outside the lock it is worked out: two that ask for the same at once may both do so. */
    public V get(K key, Supplier<V> work) {
        synchronized (known) {
            V there = known.get(key);
            if (there != null) {
                return there;
            }
        }
        V made = work.get();
        synchronized (known) {
            known.put(key, made);
        }
        return made;
    }
}
