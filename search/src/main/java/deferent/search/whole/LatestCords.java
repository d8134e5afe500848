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
import java.util.Optional;

/** The cords that were read last. One takes some 150 kB. */
final class LatestCords {
    private static final Latest<Question, CordReading> LATEST = new Latest<>(64);

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
        return LATEST.of(question, () -> CordReading.of(ideal, side, kit, detail, closely));
    }
}
