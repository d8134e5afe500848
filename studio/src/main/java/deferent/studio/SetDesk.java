package deferent.studio;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Trace;
import deferent.record.Kept;
import deferent.record.PatternJson;
import deferent.record.SetJson;
import deferent.record.SetPlaces;
import deferent.record.SetReading;
import deferent.record.SetStep;
import deferent.record.Shelf;
import deferent.record.SuggestedSet;
import deferent.record.ToldJson;
import deferent.record.cue.SungSet;
import deferent.search.set.PairBook;
import deferent.search.set.SetPlan;
import deferent.search.set.SetTrace;
import deferent.search.set.SuggestionSearch;
import deferent.search.transition.Grade;
import deferent.take.SetEndings;
import deferent.take.SetTake;
import deferent.take.Wishes;
import deferent.tell.TellSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Sets: what is asked of one is worked out anew with every change of it, so what leads from one
 * pattern to another is kept.
 */
final class SetDesk {
    static final AskKey<Integer> COUNT =
            AskKey.whole(
                    "count", "how many patterns", SuggestionSearch.FEWEST, SuggestionSearch.MOST);
    static final AskKey<String> BEGIN =
            AskKey.text("begin", "the id of the pattern it begins with");

    static final AskKey<Double> FROM =
            AskKey.number("from_s", "where the part begins", 0, 1e6, "s");
    static final AskKey<Double> TO = AskKey.number("to_s", "where it ends", 0, 1e6, "s");

    /** What is played at once, seconds. */
    private static final double LONGEST = 120;

    /** In a set of more steps a pattern that comes again has its small picture once. */
    private static final int MOST_PICTURES = 60;

    private final Shelf shelf;
    private final Wordbook words;
    private final PairBooks books;

    SetDesk(Shelf shelf, Wordbook words, PairBooks books) {
        this.shelf = shelf;
        this.words = words;
        this.books = books;
    }

    private PairBook book(List<SetPlaces.Place> places, Grade hardest) {
        return books.of(hardest, SetReading.performer(places), SetReading.kit(places));
    }

    private SetReading read(SetAsk ask, BooleanSupplier stop) {
        return SetReading.of(
                        ask.name(),
                        ask.places(),
                        ask.song(),
                        book(ask.places(), ask.hardest()),
                        ask.round(),
                        at -> {},
                        stop)
                .orElseThrow(SetDesk::stopped);
    }

    private static BadRequest stopped() {
        return new BadRequest(503, "was stopped", "the set", "ask again");
    }

    /** How a set goes. */
    ObjectNode plan(Question asked, BooleanSupplier stop) {
        SetReading reading = read(SetAsk.of(asked, shelf, words.lexicon()), stop);
        ObjectNode answer = SetJson.tree(reading);
        Set<Pairing> pictured = new HashSet<>();
        for (int i = 0; i < reading.places().size(); i++) {
            ObjectNode step = (ObjectNode) answer.get("steps").get(i);
            reading.places()
                    .get(i)
                    .pattern()
                    .filter(
                            p ->
                                    pictured.add(p.pairing())
                                            || reading.places().size() <= MOST_PICTURES)
                    .ifPresent(
                            p ->
                                    step.set(
                                            "moves",
                                            SmallPictures.of(p.pairing(), SmallPictures.USUAL)));
        }
        return answer;
    }

    /**
     * A part of a set, or all of it, as the stage plays it: all times counted from the part's
     * start.
     */
    ObjectNode play(Question asked, BooleanSupplier stop) {
        SetAsk ask = SetAsk.of(asked, shelf, words.lexicon());
        PairBook book = book(ask.places(), ask.hardest());
        SetReading reading = read(ask, stop);
        double from = asked.or(FROM, 0.0);
        double to = Math.min(asked.or(TO, LONGEST + from), reading.plan().seconds());
        if (to - from > LONGEST) {
            throw new BadRequest(
                    422,
                    "is longer than " + (int) LONGEST + " s",
                    "from_s to to_s",
                    "ask for one part after the other");
        }
        Trace trace = SetTrace.of(reading.plan(), book, from, to);
        ObjectNode answer =
                PlayedAnswer.of(
                        trace,
                        book.performer(),
                        book.kit(),
                        asked.or(Desk.RATE, PlayedAnswer.RATE));
        answer.put("name", reading.name());
        answer.put("from_s", from);
        answer.put("to_s", to);
        answer.put("set_seconds", reading.plan().seconds());
        return answer;
    }

    /** A set as a file. */
    Errand take(Question asked, TakeDesk takes) {
        SetAsk ask = SetAsk.of(asked, shelf, words.lexicon());
        Wishes wishes =
                Wishes.of(SetEndings.of(asked.get(TakeAsk.AS)).ending(), TakeAsk.wishes(asked));
        return new Errand(
                wishes.ending().filmed() ? Lanes.Work.FILM : Lanes.Work.SHORT,
                (tell, stop) -> {
                    SetReading reading = read(ask, stop);
                    SetTake take =
                            new SetTake(
                                    reading,
                                    SungSet.of(reading, shelf.folder()),
                                    book(ask.places(), ask.hardest()),
                                    wishes,
                                    words.lexicon());
                    String name = Shelf.slug(ask.name()) + "." + wishes.ending().key();
                    return takes.write(name, take::write, tell, stop);
                });
    }

    /** A set of the shelf's patterns, told with how far it has come. */
    Errand suggest(Question asked) {
        int count = asked.or(COUNT, 6);
        Optional<String> begin = asked.maybe(BEGIN);
        Grade hardest = asked.or(SetAsk.HARDEST, Grade.USUAL);
        return new Errand(
                Lanes.Work.MAP, (tell, stop) -> suggested(count, begin, hardest, tell, stop));
    }

    private ObjectNode suggested(
            int count,
            Optional<String> begin,
            Grade hardest,
            Consumer<ObjectNode> tell,
            BooleanSupplier stop) {
        Shelf.Listing listing = shelf.look();
        List<Kept> patterns = SuggestedSet.patterns(listing);
        List<SetPlaces.Place> all =
                SetPlaces.on(listing)
                        .of(patterns.stream().map(kept -> SetStep.of(kept, 1)).toList());
        Paced<SetPlan.Progress> paced = new Paced<>(at -> tell.accept(progress(at)));
        SuggestedSet found =
                SuggestedSet.of(patterns, count, begin, book(all, hardest), paced, stop)
                        .orElseThrow(SetDesk::stopped);
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        answer.put("outcome", found.found().outcome().name().toLowerCase(java.util.Locale.ROOT));
        ToldJson.put(answer.putArray("told"), List.of(found.told()));
        answer.set(
                "set",
                PatternJson.tree(
                        found.set()
                                .map(set -> set.withHardest(hardest))
                                .orElseThrow(
                                        () ->
                                                new Refusal(
                                                        "there is none in which each leads into the next",
                                                        "a set of " + count + " from the shelf",
                                                        "ask for fewer, or save more patterns"))));
        return answer;
    }

    private static ObjectNode progress(SetPlan.Progress at) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.putObject("progress")
                .put("text", TellSet.progress(at))
                .put("done", at.done())
                .put("all", at.all());
        return node;
    }
}
