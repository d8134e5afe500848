package deferent.search.whole;

import deferent.motion.pairing.HandLimits;
import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.closest.Arm;
import deferent.reading.closest.Closely;
import deferent.reading.tether.Kit;
import deferent.reading.worked.CordReading;
import deferent.reading.worked.Detail;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Map.Entry;
import java.util.Optional;

/**
 * The cords that were read last, so that who goes back to a pairing, loads the page anew or takes
 * away what is on the stage has its readings at once: they take seconds. A reading is a value and
 * the same question has the same answer, so whoever asks cannot tell but by the time. One takes
 * some 150 kB.
 */
final class LatestCords {
    private static final int MOST = 64;

    private static final Map<Question, CordReading> LATEST =
            new LinkedHashMap<>(2 * MOST, 0.75f, true) {
                @Override
                protected boolean removeEldestEntry(Entry<Question, CordReading> eldest) {
                    return size() > MOST;
                }
            };

    /** All that a reading follows from. */
    private record Question(
            Pairing pairing,
            Side side,
            Kit kit,
            Detail detail,
            HandLimits limits,
            Optional<Arm> arm) {}

    private LatestCords() {}

    /**
     * The reading of one cord of a pairing's ideal, worked out where it is not known. One that is
     * called off has no answer, and what is asked for while something is dragged is asked once.
     */
    static CordReading of(Trace ideal, Side side, Kit kit, Detail detail, Closely closely) {
        if (detail == Detail.LIVE || closely.near().isPresent()) {
            return CordReading.of(ideal, side, kit, detail, closely);
        }
        Question question =
                new Question(ideal.pairing(), side, kit, detail, closely.limits(), closely.arm());
        synchronized (LATEST) {
            CordReading known = LATEST.get(question);
            if (known != null) {
                return known;
            }
        }
        CordReading read = CordReading.of(ideal, side, kit, detail, closely);
        synchronized (LATEST) {
            LATEST.put(question, read);
        }
        return read;
    }
}
