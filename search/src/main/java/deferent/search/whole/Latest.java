package deferent.search.whole;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Map.Entry;
import java.util.function.Supplier;

/**
 * What was worked out last, so that who goes back to a pairing, loads the page anew or takes away
 * what is on the stage has its readings at once: they take seconds. A reading is a value and the
 * same question has the same answer, so whoever asks cannot tell but by the time.
 *
 * @param <Q> all that an answer follows from
 * @param <A> an answer
 */
final class Latest<Q, A> {
    private final Map<Q, A> known;

    /**
     * @param most how many are kept
     */
    Latest(int most) {
        this.known =
                new LinkedHashMap<>(2 * most, 0.75f, true) {
                    @Override
                    protected boolean removeEldestEntry(Entry<Q, A> eldest) {
                        return size() > most;
                    }
                };
    }

    /** The answer, worked out where it is not known. A question that is called off has none. */
    A of(Q question, Supplier<A> work) {
        synchronized (known) {
            A answer = known.get(question);
            if (answer != null) {
                return answer;
            }
        }
        A answer = work.get();
        synchronized (known) {
            known.put(question, answer);
        }
        return answer;
    }
}
