package deferent.search.whole;

import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.link.LinkReading;

/** The links that were read last, certified. */
final class LatestLinks {
    private static final Latest<Question, LinkReading> LATEST = new Latest<>(64);

    /** All that a link follows from. */
    private record Question(Pairing pairing, Side carrier) {}

    private LatestLinks() {}

    /** The link of a pairing's ideal, worked out where it is not known. */
    static LinkReading of(Trace ideal, Side carrier) {
        return LATEST.of(
                new Question(ideal.pairing(), carrier), () -> LinkReading.of(ideal, carrier));
    }
}
