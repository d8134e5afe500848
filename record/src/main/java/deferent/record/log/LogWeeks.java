package deferent.record.log;

import deferent.motion.pairing.Refusal;
import deferent.record.LogEntry;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.List;

/**
 * A calendar of weeks, each from Monday to Sunday (ISO 8601): how many minutes were practised on
 * each day. It ends with the week of today.
 *
 * @param weeks the eldest first
 * @param ahead how many entries are dated after today, which are left out
 */
public record LogWeeks(LocalDate today, List<Week> weeks, int ahead) {
    public static final int DAYS = 7;

    /** A calendar shows no more weeks than this. */
    public static final int MOST = 520;

    /**
     * A week.
     *
     * @param minutes of each day from Monday on
     */
    public record Week(LocalDate monday, List<Double> minutes) {
        public Week {
            minutes = List.copyOf(minutes);
        }

        /** Minutes of all days. */
        public double total() {
            return minutes.stream().mapToDouble(m -> m).sum();
        }
    }

    public LogWeeks {
        weeks = List.copyOf(weeks);
    }

    /**
     * From the first week with an entry on.
     *
     * @param most no more weeks than this, the latest
     */
    public static LogWeeks of(List<LogEntry> entries, LocalDate today, int most) {
        if (most < 1 || most > MOST) {
            throw new Refusal("are " + most, "weeks", "give 1 to " + MOST);
        }
        List<LogEntry> past = entries.stream().filter(e -> !e.date().isAfter(today)).toList();
        LocalDate monday = monday(today);
        LocalDate first =
                past.stream().map(e -> monday(e.date())).min(LocalDate::compareTo).orElse(monday);
        LocalDate shown = monday.minusWeeks(most - 1L);
        List<Week> weeks = new ArrayList<>();
        for (LocalDate at = first.isBefore(shown) ? shown : first;
                !at.isAfter(monday);
                at = at.plusWeeks(1)) {
            weeks.add(week(past, at));
        }
        return new LogWeeks(today, weeks, entries.size() - past.size());
    }

    private static Week week(List<LogEntry> entries, LocalDate monday) {
        List<Double> minutes = new ArrayList<>();
        for (int i = 0; i < DAYS; i++) {
            LocalDate day = monday.plusDays(i);
            minutes.add(
                    entries.stream()
                            .filter(e -> e.date().equals(day))
                            .mapToDouble(LogEntry::minutes)
                            .sum());
        }
        return new Week(monday, minutes);
    }

    private static LocalDate monday(LocalDate day) {
        return day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    }
}
