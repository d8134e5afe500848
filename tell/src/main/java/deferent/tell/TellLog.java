package deferent.tell;

import deferent.tell.LoggedPattern.Reached;
import deferent.tell.Told.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Says what a log of practice holds: how much, how quick, how it went, and when to rest. */
public final class TellLog {
    private static final int NAMED = 3; // ids that are said

    private static final List<String> MONTHS =
            List.of(
                    "January",
                    "February",
                    "March",
                    "April",
                    "May",
                    "June",
                    "July",
                    "August",
                    "September",
                    "October",
                    "November",
                    "December");

    private TellLog() {}

    /** "45 min", "2 h 5 min". */
    public static String minutes(double minutes) {
        if (minutes < 119.95) {
            return Say.trimmed(minutes, 1) + " min";
        }
        long whole = Math.round(minutes);
        return whole / 60 + " h" + (whole % 60 == 0 ? "" : " " + whole % 60 + " min");
    }

    /** Minutes of a day in a calendar: "12.5", or a dot where there are none. */
    public static String cell(double minutes) {
        return minutes == 0 ? "." : Say.trimmed(minutes, 1);
    }

    /** "22 November 2026", of "2026-11-22". */
    public static String day(String iso) {
        String[] parts = iso.split("-", -1);
        return Integer.parseInt(parts[2])
                + " "
                + MONTHS.get(Integer.parseInt(parts[1]) - 1)
                + " "
                + parts[0];
    }

    /** "60 a minute". */
    public static String tempo(double perMinute) {
        return Say.tempo(perMinute);
    }

    /** One pattern in one sentence. */
    public static Told pattern(LoggedPattern logged) {
        boolean once = logged.times() == 1;
        List<String> parts =
                logged.parts().entrySet().stream()
                        .map(
                                part ->
                                        part.getValue() > logged.minutes() - 0.05
                                                ? part.getKey() + " alone"
                                                : minutes(part.getValue())
                                                        + " of it "
                                                        + part.getKey()
                                                        + " alone")
                        .toList();
        return new Told(
                "log.pattern",
                Tone.NOTE,
                (once ? "Once, " : logged.times() + " times, ")
                        + minutes(logged.minutes())
                        + (once ? "" : " in all")
                        + (parts.isEmpty() ? "" : " (" + Say.listed(parts, "and") + ")")
                        + logged.reached().map(r -> ", " + reached(r, once)).orElse("")
                        + (once ? ", on " : "; last on ")
                        + day(logged.last())
                        + logged.went().map(w -> ", and it went " + w).orElse("")
                        + ".",
                "As the log has it. The tempo is the quickest that did not go badly"
                        + (logged.reached().flatMap(Reached::part).isPresent()
                                ? "; of the whole pattern none is logged."
                                : "."));
    }

    private static String reached(Reached reached, boolean once) {
        return (once ? "at " : "up to ")
                + Say.tempo(reached.tempo())
                + reached.part().filter(part -> !once).map(part -> " (" + part + ")").orElse("");
    }

    /** What films say of a pattern, beside what the log says. */
    public static Told onFilm(Told told) {
        return new Told(told.key(), Tone.NOTE, "On film, " + Say.small(told.text()), told.why());
    }

    /** What taking in a file of entries did. */
    public static String taken(int fresh, int known, List<String> different) {
        String all = known == 1 ? "it was" : "all " + known + " were";
        String plain =
                fresh > 0
                        ? fresh
                                + (fresh == 1 ? " new entry" : " new entries")
                                + " in the log"
                                + (known > 0
                                        ? ", "
                                                + known
                                                + (known == 1 ? " was" : " were")
                                                + " there already"
                                        : "")
                        : different.isEmpty()
                                ? known > 0
                                        ? "nothing new, " + all + " there already"
                                        : "no entries in it"
                                : "nothing new";
        return plain
                + "."
                + (different.isEmpty()
                        ? ""
                        : " The log says something else under "
                                + Say.listed(named(different), "and")
                                + ": of the two, the entry that says more stays.");
    }

    private static List<String> named(List<String> ids) {
        List<String> named = new ArrayList<>(ids.subList(0, Math.min(NAMED, ids.size())));
        if (ids.size() > NAMED) {
            named.add((ids.size() - NAMED) + " more");
        }
        return named;
    }

    /**
     * What worked much more in the last seven days than in a usual week of the four before.
     *
     * @param what such as "your right grip"
     * @param times how many times as much
     * @param minutes of the last seven days
     * @param usual minutes of a usual week
     * @param weighed how the minutes were weighed, for who asks why
     */
    public static Told rise(
            String what, double times, double minutes, double usual, String weighed) {
        return new Told(
                "log.rest",
                Tone.WARN,
                "In the last seven days "
                        + what
                        + " worked "
                        + Say.trimmed(times, 1)
                        + " times as much as in a usual week of the four before: take a day or two"
                        + " off, or practise what pulls less. With pain that lasts, see a doctor or"
                        + " a physiotherapist.",
                minutes(minutes)
                        + " against "
                        + minutes(usual)
                        + " in a usual week, "
                        + weighed
                        + " "
                        + SOURCES);
    }

    private static final String SOURCES =
            "It is said from one and a half times on, in a week of an hour or more (our choice). For"
                    + " team players that is called a danger (Gabbett, British Journal of Sports"
                    + " Medicine 50, 2016), though such a ratio has been shown to foretell hardly"
                    + " anything (Impellizzeri and others, Sports Medicine, 2020), and a rise of a"
                    + " tenth a week spared novice runners no injury (Buist and others, American"
                    + " Journal of Sports Medicine 36, 2008). No study of poi is known to us. It is a"
                    + " reason to go easy; that nothing is said is no permission.";

    /** That the log has nothing in the four weeks before the last seven days. */
    public static Told afterAPause() {
        return new Told(
                "log.pause",
                Tone.NOTE,
                "After four weeks without practice in the log, begin with less than you left off with.",
                "Common practice, no source.");
    }

    /** How many entries are of days that are not yet. */
    public static Optional<String> ahead(int count) {
        return count == 0
                ? Optional.empty()
                : Optional.of(
                        count == 1
                                ? "One entry is dated after today, and not in the calendar."
                                : count
                                        + " entries are dated after today, and not in the"
                                        + " calendar.");
    }
}
