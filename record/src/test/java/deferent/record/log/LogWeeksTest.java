package deferent.record.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.motion.pairing.Refusal;
import deferent.record.LogEntry;
import deferent.search.path.Went;
import deferent.tell.LoggedPattern;
import deferent.tell.LoggedPattern.Reached;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** A log added up: by weeks and by patterns. */
class LogWeeksTest {
    private static final LocalDate SATURDAY = LocalDate.of(2026, 11, 28);

    private final List<LogEntry> entries = new ArrayList<>();

    private void practised(
            String day, String pattern, String part, double minutes, double tempo, Went went) {
        entries.add(
                new LogEntry(
                        "entry%05d".formatted(entries.size()),
                        LocalDate.parse(day),
                        pattern,
                        part.isEmpty() ? Optional.empty() : Optional.of(part),
                        minutes,
                        tempo == 0 ? OptionalDouble.empty() : OptionalDouble.of(tempo),
                        Optional.of(went),
                        "",
                        Map.of()));
    }

    @Test
    void aWeekGoesFromMondayToSundayAndADayAddsUp() {
        practised("2026-11-16", "weave", "", 5, 0, Went.WELL);
        practised("2026-11-22", "weave", "", 7, 0, Went.WELL);
        practised("2026-11-22", "fountain", "", 0.5, 0, Went.WELL);
        practised("2026-11-28", "weave", "", 10, 0, Went.WELL);
        practised("2026-11-29", "weave", "", 10, 0, Went.WELL);
        LogWeeks weeks = LogWeeks.of(entries, SATURDAY, 8);
        assertThat(weeks.weeks())
                .containsExactly(
                        new LogWeeks.Week(
                                LocalDate.of(2026, 11, 16),
                                List.of(5.0, 0.0, 0.0, 0.0, 0.0, 0.0, 7.5)),
                        new LogWeeks.Week(
                                LocalDate.of(2026, 11, 23),
                                List.of(0.0, 0.0, 0.0, 0.0, 0.0, 10.0, 0.0)));
        assertThat(weeks.weeks().get(0).total()).isEqualTo(12.5);
        assertThat(weeks.ahead()).isEqualTo(1);
    }

    @Test
    void weeksWithoutPracticeAreThereAndOnlyTheLatestAreShown() {
        practised("2026-09-01", "weave", "", 5, 0, Went.WELL);
        assertThat(LogWeeks.of(entries, SATURDAY, 100).weeks()).hasSize(13);
        assertThat(LogWeeks.of(entries, SATURDAY, 3).weeks())
                .extracting(LogWeeks.Week::monday)
                .containsExactly(
                        LocalDate.of(2026, 11, 9),
                        LocalDate.of(2026, 11, 16),
                        LocalDate.of(2026, 11, 23));
        assertThatThrownBy(() -> LogWeeks.of(entries, SATURDAY, 0)).isInstanceOf(Refusal.class);
    }

    @Test
    void theTempoReachedIsTheQuickestThatDidNotGoBadly() {
        practised("2026-11-16", "weave", "left hand", 5, 90, Went.WELL);
        practised("2026-11-17", "weave", "", 10, 60, Went.SO_SO);
        practised("2026-11-18", "weave", "", 10, 80, Went.BADLY);
        practised("2026-11-19", "Fountain", "left hand", 3, 70, Went.WELL);
        practised("2026-11-20", "fountain", "left hand", 4, 75, Went.BADLY);
        List<LoggedPattern> patterns = LogPatterns.of(entries, String::toLowerCase);
        assertThat(patterns)
                .containsExactly(
                        new LoggedPattern(
                                "fountain",
                                2,
                                7,
                                Map.of("left hand", 7.0),
                                Optional.of(new Reached(70, Optional.of("left hand"))),
                                "2026-11-20",
                                Optional.of("badly")),
                        new LoggedPattern(
                                "weave",
                                3,
                                25,
                                Map.of("left hand", 5.0),
                                Optional.of(new Reached(60, Optional.empty())),
                                "2026-11-18",
                                Optional.of("badly")));
    }

    @Test
    void theDemoIsInventedAndSaysSo() {
        assertThat(DemoLog.entries())
                .hasSize(19)
                .allMatch(e -> e.others().get("author").equals("\"invented demo data\""))
                .isSortedAccordingTo(java.util.Comparator.comparing(LogEntry::date));
    }
}
