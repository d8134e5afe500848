package deferent.app;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Phrase;
import deferent.motion.phrase.PhraseError;
import deferent.record.Log;
import deferent.record.LogEntry;
import deferent.record.LogJson;
import deferent.record.NotListed;
import deferent.record.PatternDocument;
import deferent.record.log.LogLine;
import deferent.search.path.Went;
import java.io.PrintWriter;
import java.security.SecureRandom;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

@Command(
        name = "log",
        mixinStandardHelpOptions = true,
        description = {
            "Writes down what you practised, or lists what is written.",
            "  deferent practice log isolation vs triquetra --minutes 12 --tempo 60 --went well",
            "  deferent practice log"
        })
final class LogCommand implements Runnable {
    @Spec private CommandSpec spec;

    @Parameters(
            arity = "0..*",
            paramLabel = "PHRASE|NAME",
            description = "What was practised; unsaid, all that is written is listed.")
    private List<String> words = List.of();

    @Option(names = "--minutes", paramLabel = "N", description = "For how long.")
    private @Nullable Double minutes;

    @Option(
            names = "--tempo",
            paramLabel = "N",
            converter = Quantity.Tempo.class,
            description = "How quick it got: hand cycles a minute.")
    private @Nullable Double tempo;

    @Option(
            names = "--went",
            paramLabel = "HOW",
            converter = How.class,
            description = "How it went: well, so-so or badly.")
    private @Nullable Went went;

    @Option(
            names = "--part",
            paramLabel = "PART",
            description = "What of it alone, such as \"left hand\".")
    private @Nullable String part;

    @Option(names = "--note", paramLabel = "TEXT", description = "A note to keep with it.")
    private String note = "";

    @Option(
            names = "--date",
            paramLabel = "DAY",
            converter = TodayOption.Day.class,
            description = "The day, such as 2026-11-28; unsaid, today.")
    private @Nullable LocalDate date;

    @Mixin private ShelfOption shelf;

    @Override
    public void run() {
        Log log = Log.of(shelf.shelf());
        log.sweep().ifPresent(shelf::tell);
        if (!words.isEmpty()) {
            LogEntry entry = entry(String.join(" ", words));
            log.add(List.of(entry));
            if (Manners.of(spec).json()) {
                out().print(LogJson.write(List.of(entry)));
            } else {
                out().println("In the log: " + line(entry));
            }
            return;
        }
        if (minutes != null) {
            throw new Refusal("is not said", "what was practised", "say its phrase or its name");
        }
        list(log);
    }

    private PrintWriter out() {
        return spec.commandLine().getOut();
    }

    private LogEntry entry(String text) {
        if (minutes == null) {
            throw new Refusal("is not said", "--minutes", "say for how long, as in --minutes 12");
        }
        Practised practised = practised(text);
        return LogEntry.drawn(
                new SecureRandom(),
                date == null ? LocalDate.now(ZoneId.systemDefault()) : date,
                practised.pattern(),
                Optional.ofNullable(part),
                minutes,
                tempo == null ? practised.tempo() : OptionalDouble.of(tempo),
                Optional.ofNullable(went),
                note);
    }

    /** A pattern as the log calls it, and the tempo that was said with it. */
    private record Practised(String pattern, OptionalDouble tempo) {}

    private Practised practised(String text) {
        try {
            Pairing pairing = Phrase.parse(text, shelf.words()).pairing();
            String pattern =
                    Phrase.write(pairing.withTempo(OptionalDouble.empty()), shelf.words())
                            .orElse(text);
            return new Practised(pattern, pairing.tempoSaid());
        } catch (PhraseError noPhrase) {
            PatternDocument pattern = new Named(text, shelf, Optional.empty()).pattern();
            return new Practised(pattern.name(), OptionalDouble.empty());
        }
    }

    private static String line(LogEntry entry) {
        return entry.date() + "  " + LogLine.of(entry);
    }

    private void list(Log log) {
        Log.Listing listing = log.look();
        if (Manners.of(spec).json()) {
            out().print(LogJson.write(listing.entries()));
            return;
        }
        if (listing.entries().isEmpty() && listing.others().isEmpty()) {
            out().println("Nothing is in the log " + log.path() + ".");
        }
        for (LogEntry entry : listing.entries()) {
            String line = line(entry);
            int day = 12;
            Paragraphs.wrapped(line.substring(0, day), line.substring(day), Paragraphs.width())
                    .forEach(out()::println);
        }
        others(listing.others(), out());
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

    /** How it went, as it is said. */
    static final class How implements ITypeConverter<Went> {
        @Override
        public Went convert(String text) {
            String said = text.strip().toLowerCase(Locale.ROOT).replace(' ', '-');
            for (Went one : Went.values()) {
                if (one.words().equals(said)) {
                    return one;
                }
            }
            throw new TypeConversionException(
                    "\"" + text + "\" is not how it went; give well, so-so or badly");
        }
    }
}
