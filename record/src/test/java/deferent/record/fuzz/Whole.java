package deferent.record.fuzz;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Side;
import deferent.motion.phrase.Lexicon;
import deferent.motion.tell.Detail;
import deferent.motion.tell.Readings;
import deferent.motion.tell.Telling;
import deferent.motion.tell.Told;
import deferent.record.ReadingsJson;
import java.lang.management.ManagementFactory;
import java.util.List;
import tools.jackson.databind.node.ObjectNode;

/**
 * All that is answered to one asking: the settled readings, their sentences and their JSON.
 *
 * @param cpuSeconds the processor time that this thread took for it; readings start no other thread
 */
record Whole(
        Asked asked,
        Pairing pairing,
        Readings readings,
        List<Told> told,
        ObjectNode json,
        double cpuSeconds) {

    static Whole of(Asked asked, Pairing pairing) {
        long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        Readings readings = read(asked, pairing, Detail.SETTLED);
        List<Told> told = Telling.of(readings);
        ObjectNode json = ReadingsJson.tree(readings);
        long after = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        return new Whole(asked, pairing, readings, told, json, (after - before) / 1e9);
    }

    /** The same asker's readings of another pairing. */
    static Readings read(Asked asked, Pairing pairing, Detail detail) {
        return Readings.of(pairing, asked.performer(), asked.kit(), detail, Lexicon.EMPTY);
    }

    /** The sentences of that key. */
    List<Told> said(String key) {
        return told.stream().filter(t -> t.key().equals(key)).toList();
    }

    static List<Side> sides() {
        return List.of(Side.LEFT, Side.RIGHT);
    }
}
