package deferent.film.practice;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Refused;
import deferent.record.Kept;
import deferent.record.Log;
import deferent.record.LogEntry;
import deferent.record.NotListed;
import deferent.record.PatternDocument;
import deferent.record.PracticeLog;
import deferent.record.Shelf;
import deferent.record.log.ArmForces;
import deferent.record.log.LogPatterns;
import deferent.record.log.LogTree;
import deferent.record.log.LogWeeks;
import deferent.record.log.RecentWork;
import deferent.tell.LoggedPattern;
import deferent.tell.TellLog;
import deferent.tell.Told;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import tools.jackson.databind.node.ObjectNode;

/**
 * A shelf's log of practice, added up: the weeks, each pattern, and whether to rest. A pattern is
 * called there as what is kept of films calls it, so that both are told beside each other.
 */
public final class LoggedPractice {
    private final Shelf shelf;
    private final Lexicon lexicon;
    private final Log.Listing listing;
    private final LogWeeks weeks;
    private final List<LoggedPattern> patterns;

    private LoggedPractice(Shelf shelf, Lexicon lexicon, LocalDate today, int most) {
        this.shelf = shelf;
        this.lexicon = lexicon;
        this.listing = Log.of(shelf).look();
        this.weeks = LogWeeks.of(listing.entries(), today, most);
        this.patterns = LogPatterns.of(listing.entries(), this::called);
    }

    /**
     * As it stands on disk now.
     *
     * @param lexicon the user's own names for motions
     * @param most the calendar has no more weeks than this, the latest
     */
    public static LoggedPractice of(Shelf shelf, Lexicon lexicon, LocalDate today, int most) {
        return new LoggedPractice(shelf, lexicon, today, most);
    }

    public List<LogEntry> entries() {
        return listing.entries();
    }

    /** What of the log cannot be read. */
    public List<NotListed> others() {
        return listing.others();
    }

    public LogWeeks weeks() {
        return weeks;
    }

    /** The one that was practised last comes first. */
    public List<LoggedPattern> patterns() {
        return patterns;
    }

    /** What the log holds of one, as {@link #patterns} calls it. */
    public Optional<LoggedPattern> of(String pattern) {
        return patterns.stream().filter(p -> p.pattern().equals(pattern)).findFirst();
    }

    private String called(String pattern) {
        return pairing(pattern)
                .map(pairing -> PractisedFilm.pattern(pairing, Optional.of(pattern)))
                .orElse(pattern);
    }

    private Optional<Pairing> pairing(String pattern) {
        try {
            return Optional.of(Phrase.parse(pattern, lexicon).pairing());
        } catch (Refused noPhrase) {
            return shelf.find(pattern)
                    .map(Kept::document)
                    .filter(PatternDocument.class::isInstance)
                    .map(document -> ((PatternDocument) document).pairing());
        }
    }

    private Optional<RecentWork> work() {
        return RecentWork.of(entries(), weeks.today(), new ArmForces(this::pairing));
    }

    /** What is to be said beside the calendar: at most that it is time to rest. */
    public Optional<Told> rest() {
        return work().flatMap(RecentWork::told);
    }

    /** How many entries are of days to come. */
    public Optional<String> ahead() {
        return TellLog.ahead(weeks.ahead());
    }

    /** How much closer a pattern came on film, where films of it are kept. */
    public static Optional<Told> onFilm(LoggedPattern pattern, PracticeLog.Listing films) {
        return OverWeeks.of(pattern.pattern(), films)
                .map(progress -> TellLog.onFilm(progress.told().get(0)));
    }

    /** All of it as JSON. */
    public ObjectNode tree() {
        return LogTree.of(weeks, patterns, work(), others());
    }
}
