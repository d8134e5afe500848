package deferent.record.fuzz;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Lexicon;
import deferent.motion.shared.Side;
import deferent.reading.worked.Detail;
import deferent.reading.worked.Worked;
import deferent.record.ReadingsJson;
import deferent.search.whole.Readings;
import deferent.tell.Telling;
import deferent.tell.Told;
import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.function.Consumer;
import tools.jackson.databind.node.ObjectNode;

/**
 * All that is answered to one asking: the settled readings, their sentences and their JSON, and
 * what is read of the same pairing while it is dragged.
 *
 * @param cpuSeconds the processor time that this thread took for the settled ones; readings start
 *     no other thread
 */
record Whole(
        Asked asked,
        Pairing pairing,
        Readings readings,
        Readings live,
        List<Told> told,
        ObjectNode json,
        double cpuSeconds) {

    static Whole of(Asked asked, Pairing pairing) {
        long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        Readings readings = read(asked, pairing, Detail.SETTLED);
        List<Told> told = Telling.of(readings);
        ObjectNode json = ReadingsJson.tree(readings);
        long after = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        Readings live = read(asked, pairing, Detail.LIVE);
        return new Whole(asked, pairing, readings, live, told, json, (after - before) / 1e9);
    }

    /** The same asker's readings of another pairing. */
    static Readings read(Asked asked, Pairing pairing, Detail detail) {
        return Readings.of(pairing, asked.performer(), asked.kit(), detail, Lexicon.EMPTY);
    }

    /** The sentences of that key. */
    List<Told> said(String key) {
        return told.stream().filter(t -> t.key().equals(key)).toList();
    }

    /** A reading that was worked out; what is asked of one that was not is not asked. */
    static <T> T out(Worked<T> worked) {
        return worked.reading().orElseThrow(NotWorkedOut::new);
    }

    /** What is asked of a reading cannot be asked, since that reading was not worked out. */
    static final class NotWorkedOut extends RuntimeException {
        private static final long serialVersionUID = 1L;
    }

    /** Asks of each side apart, so that what is missing on one is no excuse for the other. */
    static void ofEach(Consumer<Side> question) {
        for (Side side : sides()) {
            try {
                question.accept(side);
            } catch (NotWorkedOut missing) {
                // It says so itself; the fuzz counts it.
            }
        }
    }

    static List<Side> sides() {
        return List.of(Side.LEFT, Side.RIGHT);
    }
}
