package deferent.record.cue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Cues as a table for spreadsheets, with commas between (RFC 4180). */
public final class CueTable {
    private static final List<String> HEAD =
            List.of(
                    "time", "time_s", "bar", "beat", "kind", "cue", "pattern", "counts", "more",
                    "caution");

    private CueTable() {}

    /** A row each under one head; lines end as that memo has it. */
    public static String csv(SetCues cues) {
        List<List<String>> rows = new ArrayList<>(List.of(HEAD));
        cues.cues().forEach(cue -> rows.add(row(cue)));
        return rows.stream()
                .map(row -> row.stream().map(CueTable::cell).collect(Collectors.joining(",")))
                .collect(Collectors.joining("\r\n", "", "\r\n"));
    }

    private static List<String> row(SetCue cue) {
        return List.of(
                SetCues.clock(cue.time()),
                String.format(Locale.ROOT, "%.3f", cue.time()),
                cue.place().map(place -> Integer.toString(place.bar())).orElse(""),
                cue.place().map(place -> trimmed(place.beat())).orElse(""),
                cue.kind().words(),
                cue.call(),
                cue.pattern(),
                cue.counts() > 0 ? trimmed(cue.counts()) : "",
                String.join(" ", cue.more()),
                String.join(" ", cue.cautions()));
    }

    /** At most two places. */
    static String trimmed(double number) {
        return String.format(Locale.ROOT, "%.2f", number).replaceFirst("\\.?0+$", "");
    }

    private static String cell(String text) {
        return text.matches("(?s).*[\",\r\n].*") ? '"' + text.replace("\"", "\"\"") + '"' : text;
    }
}
