package deferent.record.log;

import deferent.motion.shared.Side;
import deferent.record.LogEntry;
import deferent.search.path.Path;
import deferent.search.path.Practised;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** What a log has, as an order to learn in takes it. */
public final class LogOfPath {
    private LogOfPath() {}

    /**
     * Every entry; those of other patterns are passed over there.
     *
     * @param name of the pattern that is learnt, by which the log may call it
     */
    public static List<Practised> of(List<LogEntry> entries, String name, Path path) {
        return entries.stream()
                .map(
                        entry ->
                                new Practised(
                                        entry.date().toEpochDay(),
                                        entry.pattern().equals(name)
                                                ? path.whole().phrase().orElse(entry.pattern())
                                                : entry.pattern(),
                                        entry.part().flatMap(LogOfPath::hand),
                                        entry.minutes(),
                                        entry.tempo(),
                                        entry.went()))
                .toList();
    }

    private static Optional<Side> hand(String part) {
        return Stream.of(Side.values())
                .filter(side -> part.toLowerCase(Locale.ROOT).startsWith(side.word() + " hand"))
                .findFirst();
    }
}
