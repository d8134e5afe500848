package deferent.film.practice;

import deferent.record.Practice;
import deferent.record.PracticeLog;
import deferent.tell.Told;
import deferent.tell.Told.Tone;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A pattern's practice over the weeks: the first time against the last. A change that is smaller
 * than what both films leave open is none that can be told.
 *
 * @param pattern in trade words
 * @param entries the eldest first, at least one
 * @param kinds of what may be off, those that were ever worth saying first
 */
public record OverWeeks(String pattern, List<PracticeLog.Entry> entries, List<OffKind> kinds) {
    private static final int MOST = 3; // changes that are said
    private static final int DAYS = 14; // from which on weeks are said

    public OverWeeks {
        entries = List.copyOf(entries);
        kinds = List.copyOf(kinds);
    }

    /** Of one pattern's records, the eldest first; empty where there are none. */
    public static Optional<OverWeeks> of(String pattern, PracticeLog.Listing listing) {
        List<PracticeLog.Entry> entries = listing.of(pattern);
        if (entries.isEmpty()) {
            return Optional.empty();
        }
        List<OffKind> kinds =
                OffKind.of(entries.stream().map(PracticeLog.Entry::practice).toList());
        return Optional.of(
                new OverWeeks(
                        pattern,
                        entries,
                        kinds.stream()
                                .sorted(Comparator.comparing((OffKind kind) -> !kind.worthSaying()))
                                .toList()));
    }

    public Practice first() {
        return entries.get(0).practice();
    }

    public Practice last() {
        return entries.get(entries.size() - 1).practice();
    }

    /** In sentences: what came closest first, then what went further off. */
    public List<Told> told() {
        if (entries.size() == 1) {
            return List.of(
                    new Told(
                            "practice.once",
                            Tone.NOTE,
                            "Kept once, on "
                                    + said(first())
                                    + ": the next time is held against it.",
                            first().clip().name()));
        }
        List<Told> all = new ArrayList<>();
        String over = over();
        for (OffKind kind : changes()) {
            boolean closer = kind.closer() > 0;
            all.add(
                    new Told(
                            "practice." + kind.key(),
                            closer ? Tone.GOOD : Tone.WARN,
                            (all.isEmpty() ? over + " the " : "The ")
                                    + kind.noun()
                                    + (closer ? " came from " : " went from ")
                                    + kind.said(kind.first().value())
                                    + " to "
                                    + kind.saidAfter(kind.first().value(), kind.last().value())
                                    + ".",
                            kind.table(kind.first()) + ", then " + kind.table(kind.last())));
        }
        List<String> same =
                kinds.stream()
                        .filter(k -> k.worthSaying() && k.values().size() > 1 && !k.told())
                        .map(OffKind::noun)
                        .distinct()
                        .toList();
        if (all.isEmpty()) {
            all.add(
                    new Told(
                            "practice.same",
                            Tone.NOTE,
                            over + " there is no change that can be told.",
                            "every difference is smaller than what both films leave open"));
        } else if (!same.isEmpty()) {
            all.add(
                    new Told(
                            "practice.same",
                            Tone.NOTE,
                            "No change that can be told: " + String.join(", ", same) + ".",
                            "the difference is smaller than what both films leave open"));
        }
        return List.copyOf(all);
    }

    private List<OffKind> changes() {
        return kinds.stream()
                .filter(k -> k.worthSaying() && k.values().size() > 1 && k.told())
                .sorted(Comparator.comparingDouble(OverWeeks::weight).reversed())
                .limit(MOST)
                .toList();
    }

    // A link that closes follows from what else came closer.
    private static double weight(OffKind kind) {
        return kind.key().equals("link") ? kind.closer() / 2 : kind.closer();
    }

    private String over() {
        long days = Duration.between(first().date(), last().date()).toDays();
        return days < 1
                ? "Within a day"
                : days == 1
                        ? "From one day to the next"
                        : days < DAYS
                                ? "Over " + days + " days"
                                : "Over " + Math.round(days / 7.0) + " weeks";
    }

    /** The day, as the place is at which it is read. */
    public static String day(Practice practice) {
        return day(practice, ZoneId.systemDefault());
    }

    static String day(Practice practice, ZoneId zone) {
        return LocalDate.ofInstant(practice.date(), zone).toString();
    }

    private static String said(Practice practice) {
        return LocalDate.ofInstant(practice.date(), ZoneId.systemDefault())
                .format(DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH));
    }

    /** A table as CSV: a row a time and kind, in SI. */
    public String csv() {
        StringBuilder out = new StringBuilder("date,name,kind,hand,value,error,unit\n");
        for (PracticeLog.Entry entry : entries) {
            Practice practice = entry.practice();
            for (Practice.Size size : practice.sizes()) {
                out.append(practice.date().atOffset(ZoneOffset.UTC).toInstant())
                        .append(',')
                        .append(quoted(practice.name()))
                        .append(',')
                        .append(size.key())
                        .append(',')
                        .append(size.side().map(s -> s.word()).orElse(""))
                        .append(',')
                        .append(size.value())
                        .append(',')
                        .append(size.error())
                        .append(',')
                        .append(size.unit())
                        .append('\n');
            }
        }
        return out.toString();
    }

    private static String quoted(String text) {
        return '"' + text.replace("\"", "\"\"") + '"';
    }
}
