package deferent.record.log;

import deferent.record.LogEntry;
import deferent.search.path.Went;
import deferent.tell.LoggedPattern;
import deferent.tell.LoggedPattern.Reached;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;

/** What a log holds of each pattern. */
public final class LogPatterns {
    private LogPatterns() {}

    /**
     * The one that was practised last comes first.
     *
     * @param entries by day
     * @param same says of a pattern how it is called here, so that two ways of saying one are one
     */
    public static List<LoggedPattern> of(List<LogEntry> entries, UnaryOperator<String> same) {
        Map<String, String> called = new LinkedHashMap<>();
        Map<String, List<LogEntry>> byPattern = new LinkedHashMap<>();
        for (LogEntry entry : entries) {
            String pattern = called.computeIfAbsent(entry.pattern(), same);
            byPattern.computeIfAbsent(pattern, p -> new ArrayList<>()).add(entry);
        }
        return byPattern.entrySet().stream()
                .map(e -> of(e.getKey(), e.getValue()))
                .sorted(
                        Comparator.comparing(LoggedPattern::last)
                                .reversed()
                                .thenComparing(LoggedPattern::pattern))
                .toList();
    }

    private static LoggedPattern of(String pattern, List<LogEntry> entries) {
        Map<String, Double> parts = new TreeMap<>();
        double minutes = 0;
        for (LogEntry entry : entries) {
            minutes += entry.minutes();
            entry.part().ifPresent(part -> parts.merge(part, entry.minutes(), Double::sum));
        }
        LogEntry last = entries.get(entries.size() - 1);
        return new LoggedPattern(
                pattern,
                entries.size(),
                minutes,
                parts,
                reached(entries.stream().filter(e -> e.part().isEmpty()).toList())
                        .or(() -> reached(entries)),
                last.date().toString(),
                last.went().map(Went::words));
    }

    private static Optional<Reached> reached(List<LogEntry> entries) {
        return entries.stream()
                .filter(e -> e.tempo().isPresent())
                .filter(e -> !e.went().equals(Optional.of(Went.BADLY)))
                .map(e -> new Reached(e.tempo().getAsDouble(), e.part()))
                .max(Comparator.comparingDouble(Reached::tempo));
    }
}
