package deferent.record;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * A day's file of the log: one entry a line. Lines that cannot be read hide none of the others;
 * they are told with their number, and stay in the file.
 *
 * @param entries in the order in which they stand there, doubled ones among them
 * @param strays lines that cannot be read, as they came
 * @param told the same, each with its file, line and why
 */
record LogDay(List<LogEntry> entries, List<String> strays, List<NotListed> told) {
    static final LogDay EMPTY = new LogDay(List.of(), List.of(), List.of());

    LogDay {
        entries = List.copyOf(entries);
        strays = List.copyOf(strays);
        told = List.copyOf(told);
    }

    /**
     * From a file's text.
     *
     * @param file its name, for what is told
     */
    static LogDay read(String file, String text) {
        List<LogEntry> entries = new ArrayList<>();
        Set<String> strays = new LinkedHashSet<>();
        List<NotListed> told = new ArrayList<>();
        int number = 0;
        for (String line : text.lines().toList()) {
            number++;
            String bare = number == 1 && line.startsWith("\uFEFF") ? line.substring(1) : line;
            if (bare.isBlank()) {
                continue;
            }
            try {
                entries.add(LogJson.ofLine(bare));
            } catch (DocumentError broken) {
                strays.add(bare);
                told.add(new NotListed(file + ", line " + number, why(bare, broken)));
            }
        }
        return new LogDay(entries, List.copyOf(strays), told);
    }

    private static String why(String line, DocumentError broken) {
        if (line.matches("(<{7}|={7}|>{7}|\\|{7})( .*)?")) {
            return "is a mark that a merge left; take the line out";
        }
        return (broken.pointer().isEmpty() ? "" : broken.where() + " ")
                + broken.what()
                + "; "
                + broken.right();
    }

    /**
     * The file's text: entries sorted by id, one each, then what could not be read. The same for
     * every order in which they came.
     */
    static String text(List<LogEntry> entries, List<String> strays) {
        StringBuilder text = new StringBuilder();
        entries.stream()
                .sorted(LogEntry.BY_DAY)
                .forEach(entry -> text.append(LogJson.line(entry)).append('\n'));
        new TreeSet<>(strays).forEach(stray -> text.append(stray).append('\n'));
        return text.toString();
    }
}
