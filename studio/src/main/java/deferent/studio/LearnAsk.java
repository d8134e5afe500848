package deferent.studio;

import static deferent.studio.AskKey.keys;

import deferent.motion.phrase.Lexicon;
import deferent.reading.worked.Worked;
import deferent.record.DrillDocuments;
import deferent.record.LearnJson;
import deferent.record.Log;
import deferent.record.LogJson;
import deferent.record.PatternDocument;
import deferent.record.PatternJson;
import deferent.record.Shelf;
import deferent.record.log.LogOfPath;
import deferent.search.path.Path;
import deferent.search.path.PathSearch;
import deferent.search.path.Plan;
import deferent.tell.TellPath;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * An order to learn a pattern in, and its days from what the log has by now.
 *
 * @param by the day on which it is wanted, where one was said
 */
record LearnAsk(
        PatternDocument pattern,
        Lexicon lexicon,
        Shelf shelf,
        LocalDate from,
        Optional<LocalDate> by,
        int minutes)
        implements Errand.Run {
    private static final int USUAL_MINUTES = 20;
    private static final DateTimeFormatter WHOLE =
            DateTimeFormatter.ofPattern("EEEE, d MMMM uuuu", Locale.ENGLISH);

    private static final AskKey<String> FROM =
            AskKey.text("from", "the first day of practice; unsaid, today");
    private static final AskKey<String> BY =
            AskKey.text("by", "the day on which it is wanted, such as 2026-12-18");
    private static final AskKey<Integer> MINUTES =
            AskKey.whole("minutes", "of practice a day", Plan.LEAST, Plan.MOST);

    static final List<AskKey<?>> KEYS = keys(Matter.KEYS, keys(FROM, BY, MINUTES));

    static LearnAsk of(Question asked, Lexicon lexicon, Shelf shelf) {
        return new LearnAsk(
                Matter.of(asked, lexicon).document(),
                lexicon,
                shelf,
                asked.maybe(FROM)
                        .map(LogJson::day)
                        .orElseGet(() -> LocalDate.now(ZoneId.systemDefault())),
                asked.maybe(BY).map(LogJson::day),
                asked.or(MINUTES, USUAL_MINUTES));
    }

    @Override
    public ObjectNode run(Consumer<ObjectNode> tell, BooleanSupplier stop) {
        Optional<Path> found =
                Worked.orRefusal(
                        "the numbers of what it is made of",
                        () ->
                                PathSearch.of(
                                        pattern.pairing(),
                                        pattern.performer(),
                                        pattern.kit(),
                                        lexicon,
                                        step -> tell.accept(progress(step)),
                                        stop));
        if (found.isEmpty()) {
            return JsonNodeFactory.instance.objectNode().put("stopped", true);
        }
        Path path = found.get();
        long start = from.toEpochDay();
        Plan plan =
                Plan.of(
                        path,
                        LogOfPath.of(Log.of(shelf).look().entries(), pattern.name(), path),
                        lexicon,
                        start,
                        by.map(LocalDate::toEpochDay).orElse(start),
                        minutes);
        TellPath words = new TellPath(path, pattern.performer(), pattern.kit(), lexicon);
        ObjectNode answer =
                LearnJson.tree(
                        pattern,
                        plan,
                        words,
                        TellPath.plan(
                                plan,
                                by.isPresent(),
                                day -> LocalDate.ofEpochDay(day).format(WHOLE)),
                        by.isPresent());
        List<PatternDocument> drills = DrillDocuments.of(pattern, path, lexicon);
        for (int i = 0; i < drills.size(); i++) {
            ObjectNode node = (ObjectNode) answer.get("drills").get(i);
            node.put("why", words.drill(i).why());
            node.set("pattern", PatternJson.tree(drills.get(i)));
            node.set("moves", SmallPictures.of(drills.get(i).pairing(), SmallPictures.USUAL));
        }
        return answer;
    }

    private static ObjectNode progress(int step) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.putObject("progress")
                .put("text", step + " of " + PathSearch.STEPS + " tried")
                .put("done", step)
                .put("all", PathSearch.STEPS);
        return node;
    }
}
