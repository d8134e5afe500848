package deferent.app;

import deferent.record.log.LogWeeks;
import deferent.tell.TellLog;
import java.time.DayOfWeek;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The calendar of a log in lines of letters: one a week, minutes a day. */
final class CalendarText {
    private static final int DAY = 6; // columns

    private CalendarText() {}

    static List<String> lines(LogWeeks weeks) {
        List<String> lines = new ArrayList<>();
        StringBuilder head = new StringBuilder(" ".repeat(10));
        for (DayOfWeek day : DayOfWeek.values()) {
            head.append(right(day.getDisplayName(TextStyle.SHORT, Locale.ENGLISH)));
        }
        lines.add(head.toString());
        for (LogWeeks.Week week : weeks.weeks()) {
            StringBuilder line = new StringBuilder(week.monday().toString());
            for (int i = 0; i < LogWeeks.DAYS; i++) {
                boolean yet = week.monday().plusDays(i).isAfter(weeks.today());
                line.append(right(yet ? "" : TellLog.cell(week.minutes().get(i))));
            }
            lines.add(line + "   " + TellLog.minutes(week.total()));
        }
        return lines;
    }

    private static String right(String text) {
        return " ".repeat(Math.max(1, DAY - text.length())) + text;
    }
}
