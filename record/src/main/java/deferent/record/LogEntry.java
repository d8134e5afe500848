package deferent.record;

import deferent.motion.pairing.Refusal;
import deferent.search.path.Went;
import java.time.LocalDate;
import java.util.Collections;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.random.RandomGenerator;
import java.util.regex.Pattern;

/**
 * One time that something was practised, as whoever spun says it themselves: on which day, what,
 * for how long, how quick it got and how it went. An entry is never changed by the tool; two
 * devices never write the same, so that the logs of both are one log: their union.
 *
 * @param id 8 to 32 letters and digits that the device drew at random
 * @param date the day, as the place had it
 * @param pattern in trade words without a tempo, or the name of a pattern on the shelf
 * @param part what of it, such as "left hand"; empty for all of it
 * @param minutes above 0, at most {@value #MOST_MINUTES}
 * @param tempo hand cycles a minute, or poi beats of a weave or where both hands are still, 1 to
 *     600
 * @param went how it went
 * @param note free text, may be empty
 * @param others keys that are not known here, each with its JSON text: kept as they came
 */
public record LogEntry(
        String id,
        LocalDate date,
        String pattern,
        Optional<String> part,
        double minutes,
        OptionalDouble tempo,
        Optional<Went> went,
        String note,
        Map<String, String> others) {
    public static final int MOST_MINUTES = 600;

    static final double SLOWEST = 1;
    static final double FASTEST = 600;

    /** Together no longer than this, characters. */
    static final int MOST_OTHERS = 4000;

    static final Comparator<LogEntry> BY_DAY =
            Comparator.comparing(LogEntry::date).thenComparing(LogEntry::id);

    private static final Pattern ID = Pattern.compile("[A-Za-z0-9]{8,32}");
    private static final String DRAWN = "0123456789abcdefghijklmnopqrstuvwxyz";
    private static final int DRAWN_LENGTH = 12; // 36^12: 62 bits

    public LogEntry {
        if (!ID.matcher(id).matches()) {
            throw new Refusal("is \"" + id + "\"", "id", "give 8 to 32 letters and digits");
        }
        if (date.getYear() < 1 || date.getYear() > 9999) {
            throw new Refusal("is " + date, "date", "give a day such as 2026-11-28");
        }
        Wording.line(pattern, Wording.PHRASE, "pattern");
        part.ifPresent(p -> Wording.line(p, Wording.NAME, "part"));
        Refusal.positive(minutes, MOST_MINUTES, "minutes", "min");
        tempo.ifPresent(t -> Refusal.within(t, SLOWEST, FASTEST, "tempo", "a minute"));
        Wording.note(note);
        others = Collections.unmodifiableMap(new TreeMap<>(others));
        int all = 0;
        for (Map.Entry<String, String> other : others.entrySet()) {
            all += other.getKey().length() + other.getValue().length();
        }
        if (all > MOST_OTHERS) {
            throw new Refusal(
                    "have " + all + " characters",
                    "keys that are not known here",
                    "give at most " + MOST_OTHERS + " together");
        }
    }

    /** One that is written here and now: its id is drawn. */
    public static LogEntry drawn(
            RandomGenerator chance,
            LocalDate date,
            String pattern,
            Optional<String> part,
            double minutes,
            OptionalDouble tempo,
            Optional<Went> went,
            String note) {
        StringBuilder id = new StringBuilder();
        for (int i = 0; i < DRAWN_LENGTH; i++) {
            id.append(DRAWN.charAt(chance.nextInt(DRAWN.length())));
        }
        return new LogEntry(
                id.toString(), date, pattern, part, minutes, tempo, went, note, Map.of());
    }
}
