package deferent.record.log;

import deferent.record.LogEntry;
import deferent.tell.TellLog;
import java.util.ArrayList;
import java.util.List;

/** An entry of the log in one line. */
public final class LogLine {
    private LogLine() {}

    /** "weave (left hand), 12 min, at 60 a minute, it went well. Wet grass"; without its day. */
    public static String of(LogEntry entry) {
        List<String> said = new ArrayList<>();
        said.add(
                entry.pattern()
                        + entry.part().map(p -> " (" + p + ")").orElse("")
                        + ", "
                        + TellLog.minutes(entry.minutes()));
        entry.tempo().ifPresent(t -> said.add("at " + TellLog.tempo(t)));
        entry.went().ifPresent(w -> said.add("it went " + w.words()));
        return String.join(", ", said) + "." + (entry.note().isEmpty() ? "" : " " + entry.note());
    }
}
