package deferent.record;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Entries of many files and devices as one: each id once. Of two that say different things under
 * one id, which no device writes by itself, the one that says more stays, else the later in the
 * order of letters (our choice): so the union is the same in whichever order its parts came.
 */
final class LogUnion {
    private static final Comparator<LogEntry> SAYS_MORE =
            Comparator.comparing((LogEntry entry) -> LogJson.line(entry).length())
                    .thenComparing(LogJson::line);

    private final Map<String, LogEntry> byId = new TreeMap<>();

    /** What becomes of an entry that is added. */
    enum Met {
        /** Its id was not there. */
        NEW,
        /** It was there. */
        KNOWN,
        /** Its id was there and said something else. */
        DIFFERENT
    }

    Met add(LogEntry entry) {
        LogEntry there = byId.putIfAbsent(entry.id(), entry);
        if (there == null) {
            return Met.NEW;
        }
        if (there.equals(entry)) {
            return Met.KNOWN;
        }
        if (SAYS_MORE.compare(entry, there) > 0) {
            byId.put(entry.id(), entry);
        }
        return Met.DIFFERENT;
    }

    /** By day, and on a day by id. */
    List<LogEntry> entries() {
        List<LogEntry> all = new ArrayList<>(byId.values());
        all.sort(LogEntry.BY_DAY);
        return List.copyOf(all);
    }
}
