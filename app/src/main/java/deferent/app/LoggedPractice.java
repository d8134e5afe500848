package deferent.app;

import deferent.film.practice.PractisedFilm;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refused;
import deferent.motion.phrase.Phrase;
import deferent.record.Kept;
import deferent.record.Log;
import deferent.record.LogEntry;
import deferent.record.NotListed;
import deferent.record.PatternDocument;
import deferent.record.log.ArmForces;
import deferent.record.log.LogPatterns;
import deferent.record.log.LogTree;
import deferent.record.log.LogWeeks;
import deferent.record.log.RecentWork;
import deferent.tell.LoggedPattern;
import deferent.tell.TellLog;
import deferent.tell.Told;
import java.io.PrintWriter;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tools.jackson.databind.node.ObjectNode;

/** The log of practice as the command line shows it: a calendar, each pattern, and rest. */
final class LoggedPractice {
    private static final int DAY = 6; // columns
    private static final int LATEST = 8; // weeks

    private final ShelfOption shelf;
    private final Log.Listing listing;
    private final LogWeeks weeks;
    private final List<LoggedPattern> patterns;

    LoggedPractice(ShelfOption shelf, LocalDate today) {
        this.shelf = shelf;
        Log log = Log.of(shelf.shelf());
        log.sweep().ifPresent(shelf::tell);
        this.listing = log.look();
        this.weeks = LogWeeks.of(listing.entries(), today, LATEST);
        this.patterns = LogPatterns.of(listing.entries(), this::called);
    }

    List<LogEntry> entries() {
        return listing.entries();
    }

    List<NotListed> others() {
        return listing.others();
    }

    List<LoggedPattern> patterns() {
        return patterns;
    }

    Optional<LoggedPattern> of(String pattern) {
        return patterns.stream().filter(p -> p.pattern().equals(pattern)).findFirst();
    }

    /** As what is kept of films calls it, so that two ways of saying a pattern are one. */
    private String called(String pattern) {
        return pairing(pattern)
                .map(pairing -> PractisedFilm.pattern(pairing, Optional.of(pattern)))
                .orElse(pattern);
    }

    private Optional<Pairing> pairing(String pattern) {
        try {
            return Optional.of(Phrase.parse(pattern, shelf.words()).pairing());
        } catch (Refused noPhrase) {
            return shelf.shelf()
                    .find(pattern)
                    .map(Kept::document)
                    .filter(PatternDocument.class::isInstance)
                    .map(document -> ((PatternDocument) document).pairing());
        }
    }

    Optional<RecentWork> work() {
        return RecentWork.of(entries(), weeks.today(), new ArmForces(this::pairing));
    }

    ObjectNode tree() {
        return LogTree.of(weeks, patterns, work(), others());
    }

    /** The calendar: a line a week, minutes a day. */
    List<String> calendar() {
        List<String> lines = new ArrayList<>();
        StringBuilder head = new StringBuilder(" ".repeat(10));
        for (DayOfWeek day : DayOfWeek.values()) {
            head.append(right(day.getDisplayName(TextStyle.SHORT, Locale.ENGLISH), DAY));
        }
        lines.add(head.toString());
        for (LogWeeks.Week week : weeks.weeks()) {
            StringBuilder line = new StringBuilder(week.monday().toString());
            for (int i = 0; i < LogWeeks.DAYS; i++) {
                boolean yet = week.monday().plusDays(i).isAfter(weeks.today());
                double minutes = week.minutes().get(i);
                line.append(right(yet ? "" : TellLog.cell(minutes), DAY));
            }
            lines.add(line + "   " + TellLog.minutes(week.total()));
        }
        return lines;
    }

    private static String right(String text, int columns) {
        return " ".repeat(Math.max(1, columns - text.length())) + text;
    }

    /** What is to be said beside the calendar. */
    List<Told> rest() {
        return work().flatMap(RecentWork::told).stream().toList();
    }

    Optional<String> ahead() {
        return TellLog.ahead(weeks.ahead());
    }

    /** Tells what of a log cannot be read. */
    static void others(List<NotListed> others, PrintWriter out) {
        if (!others.isEmpty()) {
            out.println("Cannot be read in the log, and left as it is:");
        }
        for (NotListed other : others) {
            Paragraphs.wrapped("  " + other.file() + ": ", other.why(), Paragraphs.width())
                    .forEach(out::println);
        }
    }
}
