package deferent.search.whole;

import deferent.motion.pairing.Pairing;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.closest.Closely;
import deferent.reading.tether.Kit;
import deferent.reading.worked.Detail;
import java.util.function.Supplier;

/** What was advised last. */
final class LatestAdvice {
    private static final Latest<Question, Advice> LATEST = new Latest<>(64);

    /** All that advice follows from; what hands can do is the performer's. */
    private record Question(Pairing pairing, Performer performer, Kit kit, Detail detail) {}

    private LatestAdvice() {}

    /**
     * The advice on a pairing's ideal, worked out where it is not known.
     *
     * @param closely how the cords that it hears of were read: from what was found before they come
     *     out a little otherwise
     */
    static Advice of(
            Trace ideal,
            Performer performer,
            Kit kit,
            Detail detail,
            Closely closely,
            Supplier<Advice> work) {
        return closely.near().isPresent()
                ? work.get()
                : LATEST.of(new Question(ideal.pairing(), performer, kit, detail), work);
    }
}
