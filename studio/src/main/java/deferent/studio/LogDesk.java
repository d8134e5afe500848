package deferent.studio;

import static deferent.studio.AskKey.keys;

import deferent.film.practice.LoggedPractice;
import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Phrase;
import deferent.record.DocumentError;
import deferent.record.Log;
import deferent.record.LogEntry;
import deferent.record.LogJson;
import deferent.record.PatternDocument;
import deferent.record.PracticeLog;
import deferent.record.Shelf;
import deferent.record.log.LogLine;
import deferent.search.path.Went;
import deferent.tell.LoggedPattern;
import deferent.tell.TellLog;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.security.SecureRandom;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** The log of practice: shown day by day, written in, and taken in from files of other devices. */
final class LogDesk {
    /** Files of logs come here, which may be larger than other bodies. */
    static final String FILE = "/api/log/file";

    private static final int WEEKS = 12; // weeks that are shown, the latest

    private static final AskKey<String> PART =
            AskKey.text("part", "what of it alone, such as \"left hand\"; unsaid, all of it");
    private static final AskKey<Double> MINUTES =
            AskKey.number("minutes", "for how long", 0, LogEntry.MOST_MINUTES, "min");
    private static final AskKey<Double> TEMPO =
            AskKey.number("tempo_cycles_per_min", "how quick it got", 0, 600, "a minute");
    private static final AskKey<Went> WENT = AskKey.one("went", "how it went", Went.class);
    private static final AskKey<String> NOTE = AskKey.text("note", "a note to keep with it");
    private static final AskKey<String> DATE = AskKey.text("date", "the day; unsaid, today");
    private static final List<AskKey<?>> KEYS =
            keys(Matter.KEYS, keys(PART, MINUTES.must(), TEMPO, WENT, NOTE, DATE));

    private final Shelf shelf;
    private final Wordbook words;

    LogDesk(Shelf shelf, Wordbook words) {
        this.shelf = shelf;
        this.words = words;
    }

    void configure(RoutesConfig routes) {
        routes.get("/api/log", this::show);
        routes.post("/api/log", this::write);
        routes.get(FILE, LogDesk::mayCome);
        routes.post(FILE, this::takeIn);
    }

    private void show(Context context) {
        LocalDate today =
                Optional.ofNullable(context.queryParam("today"))
                        .map(LogJson::day)
                        .orElseGet(LogDesk::today);
        LoggedPractice logged = LoggedPractice.of(shelf, words.lexicon(), today, WEEKS);
        PracticeLog.Listing films = PracticeLog.of(shelf).look();
        ObjectNode answer = logged.tree();
        for (int i = 0; i < logged.patterns().size(); i++) {
            LoggedPattern pattern = logged.patterns().get(i);
            ObjectNode node = (ObjectNode) answer.get("patterns").get(i);
            LoggedPractice.onFilm(pattern, films)
                    .ifPresent(told -> node.put("on_film", told.text()));
        }
        logged.ahead().ifPresent(said -> answer.put("ahead_told", said));
        LocalDate first = logged.weeks().weeks().get(0).monday();
        ArrayNode entries = answer.putArray("entries");
        logged.entries().stream()
                .filter(entry -> !entry.date().isBefore(first) && !entry.date().isAfter(today))
                .forEach(
                        entry ->
                                entries.addObject()
                                        .put("date", entry.date().toString())
                                        .put("said", LogLine.of(entry)));
        ShelfDesk.json(context, answer);
    }

    private static LocalDate today() {
        return LocalDate.now(ZoneId.systemDefault());
    }

    private void write(Context context) {
        Question asked = Question.of(Desk.tree(Bodies.text(context)), KEYS);
        PatternDocument pattern = Matter.of(asked, words.lexicon()).document();
        Pairing untimed = pattern.pairing().withTempo(OptionalDouble.empty());
        LogEntry entry =
                LogEntry.drawn(
                        new SecureRandom(),
                        asked.maybe(DATE).map(LogJson::day).orElseGet(LogDesk::today),
                        Phrase.write(untimed, words.lexicon()).orElse(pattern.name()),
                        asked.maybe(PART),
                        asked.get(MINUTES),
                        asked.maybeNumber(TEMPO),
                        asked.maybe(WENT),
                        asked.or(NOTE, ""));
        Log.of(shelf).add(List.of(entry));
        told(context, "In the log: " + LogLine.of(entry));
    }

    /** Whether a file of so many bytes may come: asked before it is sent. */
    private static void mayCome(Context context) {
        try {
            LogJson.mayBe(Long.parseLong(String.valueOf(context.queryParam("bytes"))));
        } catch (NumberFormatException notSo) {
            throw new BadRequest(400, "is no whole number", "bytes", "give the file's size");
        } catch (DocumentError tooLong) {
            throw placed(413, tooLong, called(context));
        }
        ShelfDesk.json(context, JsonNodeFactory.instance.objectNode());
    }

    private void takeIn(Context context) {
        String called = called(context);
        String text = Bodies.text(context);
        if (!LogJson.isLog(text)) {
            throw new BadRequest(
                    422,
                    "is no log of practice",
                    called,
                    "drop one that a hall file saved, or a film of practice");
        }
        try {
            Log.Added added = Log.of(shelf).add(LogJson.read(text));
            told(
                    context,
                    called
                            + ": "
                            + TellLog.taken(
                                    added.fresh().size(), added.known(), added.different()));
        } catch (DocumentError wrong) {
            throw placed(422, wrong, called);
        }
    }

    /** As the command line says it: with the file's name, the line and the column. */
    private static BadRequest placed(int status, DocumentError wrong, String file) {
        return new BadRequest(status, wrong.what(), wrong.in(file).place(), wrong.right());
    }

    private static String called(Context context) {
        return Optional.ofNullable(context.queryParam("called")).orElse("the file");
    }

    private static void told(Context context, String told) {
        ShelfDesk.json(context, JsonNodeFactory.instance.objectNode().put("told", told));
    }
}
