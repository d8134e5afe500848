package deferent.studio;

import deferent.motion.pairing.Size;
import deferent.motion.phrase.Words;
import deferent.motion.shared.Side;
import deferent.motion.trace.Count;
import deferent.motion.trace.Counts;
import deferent.motion.trace.Trace;
import deferent.page.Scene;
import deferent.page.web.SceneJson;
import deferent.reading.closest.Closely;
import deferent.reading.closest.ClosestFigure;
import deferent.reading.link.LinkReading;
import deferent.reading.tether.Kit;
import deferent.reading.worked.Detail;
import deferent.reading.worked.Worked;
import deferent.record.AnswerPages;
import deferent.record.PatternJson;
import deferent.record.ReadingsJson;
import deferent.record.Shelf;
import deferent.record.number.SideTable;
import deferent.search.fit.ArmsFit;
import deferent.search.fit.Fit;
import deferent.search.fit.FitReading;
import deferent.search.whole.Keep;
import deferent.search.whole.Readings;
import deferent.search.whole.Staged;
import deferent.take.Endings;
import deferent.take.TransitionTake;
import deferent.take.Wishes;
import deferent.tell.Glossary;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Answers questions, one at a time; knows nothing of sockets. */
final class Desk {
    static final JsonMapper JSON =
            JsonMapper.builder().enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION).build();

    static final AskKey<String> DETAIL =
            AskKey.word(
                    "detail",
                    "settled brings what is dear, the certified shape gap first; unsaid is live",
                    List.of("live", "settled"));
    static final AskKey<Integer> SAMPLES =
            AskKey.whole("samples", "how many even times of the cycle are drawn", 24, 4320);
    static final AskKey<Double> TIME =
            AskKey.number("time_s", "what the clock shows", -1e6, 1e6, "s");
    static final AskKey<Boolean> BODY =
            AskKey.yes("body", "whether the performer is drawn; unsaid is true");
    static final AskKey<Boolean> TOLD =
            AskKey.yes(
                    "told",
                    "whether readings, their numbers and where to begin are told, beside what is"
                            + " drawn; unsaid is true");
    static final AskKey<Side> CARRIER =
            AskKey.one("carrier", "whose head leads; unsaid is the leading link's", Side.class);
    static final AskKey<List<String>> FREE =
            AskKey.texts("free", "keys of the sizes that may change; unsaid is all", 40);
    static final AskKey<Boolean> ARMS =
            AskKey.yes(
                    "arms",
                    "whether the largest version that the performer's arms reach is asked for");
    static final AskKey<List<Double>> OWNED =
            AskKey.numbers(
                    "owned_m",
                    "with arms: how long the tethers are that there are; unsaid is any length",
                    20,
                    0.05,
                    3,
                    "m");
    static final AskKey<Side> SIDE = AskKey.one("side", "whose poi", Side.class);
    static final AskKey<Double> SLIP =
            AskKey.number("slip_m", "how far the poi slips; unsaid is let go", -20, 20, "m");
    static final AskKey<Double> SECONDS =
            AskKey.number("seconds", "how long it is followed", 0.1, LetGoAnswer.LONGEST, "s");
    static final AskKey<Integer> RATE = AskKey.whole("rate", "samples a second", 10, 240);
    static final AskKey<String> WORD = AskKey.text("word", "one word; unsaid is all");
    static final AskKey<String> OF =
            AskKey.word(
                    "of",
                    "which of them",
                    List.of(
                            "seek",
                            "map",
                            "set-suggest",
                            "set-take",
                            "route",
                            "next",
                            "learn",
                            "take",
                            "transition-take",
                            "film",
                            "filmed",
                            "beats"));

    private final Wordbook words;
    private final Shelf shelf;
    private final MapDesk map;
    private final SetDesk sets;
    private final TakeDesk takes;
    private final FilmDesk films;
    private final SongDesk songs;
    private final Optional<AnswerPages> afar;
    private final PairBooks books = new PairBooks();
    private final Map<Side, ClosestFigure> nearest = new ConcurrentHashMap<>();

    Desk(
            Wordbook words,
            Shelf shelf,
            TakeDesk takes,
            FilmDesk films,
            SongDesk songs,
            Optional<AnswerPages> afar) {
        this.words = words;
        this.shelf = shelf;
        this.takes = takes;
        this.films = films;
        this.songs = songs;
        this.afar = afar;
        this.map = new MapDesk(shelf, books);
        this.sets = new SetDesk(shelf, words, books);
    }

    static JsonNode tree(String text) {
        JsonNode node = JSON.readTree(text);
        if (node == null || node.isMissingNode()) {
            throw new BadRequest(400, "is empty", "body", "send one JSON object");
        }
        return node;
    }

    /**
     * @param stop asked while what takes long is worked out: whether nobody waits for it any more
     */
    ObjectNode answer(Ask.Asked asked, BooleanSupplier stop) {
        ObjectNode answer = asked.answer(this, stop);
        words.trouble().ifPresent(told -> answer.put("shelf_told", told));
        return answer;
    }

    ObjectNode pairing(Question asked, BooleanSupplier stop) {
        boolean settled = asked.or(DETAIL, "live").equals("settled");
        boolean told = asked.or(TOLD, true);
        boolean body = asked.or(BODY, true);
        Optional<Side> carrier = asked.maybe(CARRIER);
        Keep keep = asked.or(Shown.SHOW, Keep.IDEAL);
        Matter matter = Matter.of(asked, words.lexicon());
        if (!told && keep == Keep.IDEAL) {
            return drawn(asked, matter, DrawnMove.ideal(matter, carrier, body));
        }
        Readings readings =
                Readings.of(
                        matter.pairing(),
                        matter.document().performer(),
                        matter.document().kit(),
                        settled ? Detail.SETTLED : Detail.LIVE,
                        words.lexicon(),
                        Closely.USUAL.until(stop));
        // A drag goes on from the closest figure of the move before; at rest it is begun anew, so
        // that the same question has the same answer.
        Staged shown =
                Staged.of(
                        readings,
                        keep,
                        matter.document().kit(),
                        s -> Closely.USUAL.until(stop).near(Optional.ofNullable(nearest.get(s))));
        nearest.putAll(shown.closest());
        ObjectNode answer = drawn(asked, matter, DrawnMove.of(readings, shown, carrier, body));
        if (told) {
            answer.set("readings", ReadingsJson.tree(readings));
            ArrayNode numbers = answer.putArray("numbers");
            numbers(numbers.addObject(), SideTable.links(readings));
            numbers(numbers.addObject(), SideTable.hands(readings));
            Begin.of(readings.trace()).forEach(answer.putArray("begin")::add);
        }
        return answer;
    }

    /** What a stage, a strip and what is set by hand are made from. */
    private static ObjectNode drawn(Question asked, Matter matter, DrawnMove drawn) {
        int count = asked.or(SAMPLES, Scene.USUAL_COUNT);
        Trace trace = drawn.ideal();
        Staged shown = drawn.shown();
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        answer.put("detail", asked.or(DETAIL, "live"));
        answer.set("pattern", PatternJson.tree(matter.document()));
        Optional<String> phrase = matter.document().phrase();
        if (phrase.isPresent()) {
            answer.put("phrase", phrase.get());
        } else {
            answer.putNull("phrase");
        }
        answer.put("name", matter.said());
        ObjectNode seen =
                SceneJson.of(Scene.of(shown.trace(), count, drawn.carrier(), drawn.person()));
        if (!shown.cordedSides().isEmpty()) {
            seen.set("ghost", SceneJson.samples(trace, count, shown.cordedSides()));
        }
        answer.set("scene", seen);
        answer.set("shown", Shown.told(shown));
        answer.set("pull", Shown.pull(shown));
        ObjectNode strip = strip(shown.trace(), drawn.carrier(), Strip.marks(trace));
        ArrayNode counts = strip.putArray("counts");
        for (Count beat : Counts.of(trace, 2)) {
            counts.addObject().put("time_s", beat.time()).put("text", beat.said());
        }
        answer.set("strip", strip);
        ArrayNode handles = answer.putArray("handles");
        Handle.of(trace, asked.or(TIME, 0.0)).forEach(h -> handle(handles.addObject(), h));
        ArrayNode sizes = answer.putArray("sizes");
        SizeRow.of(matter.pairing()).forEach(s -> size(sizes.addObject(), s));
        return answer;
    }

    private static void numbers(ObjectNode node, SideTable table) {
        node.put("caption", table.caption());
        table.columns().forEach(node.putArray("columns")::add);
        ArrayNode lines = node.putArray("lines");
        for (var line : table.lines()) {
            lines.addArray().add(line.name()).add(line.left()).add(line.right());
        }
    }

    ObjectNode fit(Question asked) {
        Optional<List<String>> free = asked.maybe(FREE);
        Matter matter = Matter.of(asked, words.lexicon());
        Side leads =
                asked.maybe(CARRIER)
                        .orElseGet(
                                () ->
                                        Readings.of(
                                                        matter.pairing(),
                                                        matter.document().performer(),
                                                        Detail.LIVE)
                                                .carrier());
        FitReading fit =
                Worked.orRefusal(
                        "the numbers of the fit",
                        () ->
                                free.isPresent()
                                        ? Fit.of(matter.pairing(), leads, sizes(free.get()))
                                        : Fit.of(matter.pairing(), leads));
        if (!asked.or(ARMS, false)) {
            return FitAnswer.of(fit, matter, words.lexicon());
        }
        Optional<ArmsFit> reached =
                Worked.orRefusal(
                        "the numbers of the fit to the arms",
                        () ->
                                ArmsFit.linked(
                                        matter.pairing(),
                                        fit,
                                        matter.document().performer(),
                                        asked.or(OWNED, List.of())));
        return FitAnswer.arms(reached, leads, matter, words.lexicon());
    }

    private static Set<Size> sizes(List<String> keys) {
        return keys.stream().map(Size::named).collect(Collectors.toCollection(LinkedHashSet::new));
    }

    ObjectNode letGo(Question asked) {
        Side side = asked.get(SIDE);
        double time = asked.or(TIME, 0.0);
        double slip = asked.or(SLIP, 0.0);
        double seconds = asked.or(SECONDS, LetGoAnswer.USUAL);
        int rate = asked.or(RATE, LetGoAnswer.RATE);
        Keep keep = asked.or(Shown.SHOW, Keep.IDEAL);
        Matter matter = Matter.of(asked, words.lexicon());
        Staged shown = shown(matter, keep);
        ObjectNode answer =
                LetGoAnswer.of(
                        LetGoAnswer.run(
                                shown.trace(), side, matter.document().kit(), time, slip, seconds),
                        shown.carrier(),
                        rate);
        answer.set("shown", Shown.told(shown));
        return answer;
    }

    ObjectNode set(Question asked, BooleanSupplier stop) {
        return sets.plan(asked, stop);
    }

    ObjectNode setPlay(Question asked, BooleanSupplier stop) {
        return sets.play(asked, stop);
    }

    Errand suggest(Question asked) {
        return sets.suggest(asked);
    }

    Errand map(Question asked) {
        return map.map(asked);
    }

    Errand route(Question asked) {
        return map.route(asked);
    }

    Errand take(Question asked) {
        return takes.take(asked);
    }

    Errand watch(Question asked) {
        return films.watch(asked);
    }

    Errand beats(Question asked) {
        return songs.read(asked);
    }

    Errand filmed(Question asked) {
        return films.take(asked, takes);
    }

    Errand seek(Question asked) {
        return new Errand(Lanes.Work.SEEK, SeekAsk.of(asked, words.lexicon(), shelf, afar));
    }

    Errand next(Question asked) {
        return new Errand(Lanes.Work.NEXT, NextAsk.of(asked, words.lexicon(), shelf, books));
    }

    Errand learn(Question asked) {
        return new Errand(Lanes.Work.SHORT, LearnAsk.of(asked, words.lexicon(), shelf));
    }

    ObjectNode photo(Question asked) {
        return takes.photo(asked);
    }

    ObjectNode transitions(Question asked) {
        return TransitionAsk.of(asked, words.lexicon()).all(books);
    }

    ObjectNode transitionPlay(Question asked) {
        return TransitionAsk.of(asked, words.lexicon())
                .played(books, asked.or(TransitionAsk.WHICH, 0), asked.or(RATE, PlayedAnswer.RATE));
    }

    /** A set as a file. */
    Errand setTake(Question asked) {
        return sets.take(asked, takes);
    }

    /** One of the transitions as a file. */
    Errand transitionTake(Question asked) {
        TransitionAsk ask = TransitionAsk.of(asked, words.lexicon());
        Wishes wishes = Wishes.of(Endings.of(asked.get(TakeAsk.AS)), TakeAsk.wishes(asked));
        int which = asked.or(TransitionAsk.WHICH, 0);
        return new Errand(
                wishes.ending().filmed() ? Lanes.Work.FILM : Lanes.Work.SHORT,
                (tell, stop) -> {
                    TransitionTake take = ask.take(books, which, wishes);
                    String name = take.fileName() + "." + wishes.ending().key();
                    return takes.write(name, take::write, tell, stop);
                });
    }

    private Staged shown(Matter matter, Keep keep) {
        Kit kit = matter.document().kit();
        return Staged.of(
                Readings.of(
                        matter.pairing(),
                        matter.document().performer(),
                        kit,
                        Detail.LIVE,
                        words.lexicon()),
                keep,
                kit);
    }

    static ObjectNode strip(Trace trace, Side carrier, List<Strip.Mark> all) {
        ObjectNode strip = JsonNodeFactory.instance.objectNode();
        strip.put("carrier", carrier.word());
        strip.put("tolerance_m", LinkReading.USUAL_TOLERANCE);
        ArrayNode links = strip.putArray("links");
        for (Side side : Side.values()) {
            ObjectNode link = links.addObject();
            link.put("carrier", side.word());
            ArrayNode gap = link.putArray("gap_m");
            ArrayNode main = side == carrier ? strip.putArray("gap_m") : null;
            for (double metres : Strip.gap(trace, side)) {
                gap.add(SceneJson.rounded(metres));
                if (main != null) {
                    main.add(SceneJson.rounded(metres));
                }
            }
        }
        ArrayNode marks = strip.putArray("marks");
        for (Strip.Mark mark : all) {
            marks.addObject()
                    .put("time_s", mark.time())
                    .put("kind", mark.kind().word())
                    .put("side", mark.side().word())
                    .put("name", mark.side().word() + " " + mark.kind().word());
        }
        return strip;
    }

    private static void handle(ObjectNode node, Handle handle) {
        node.put("key", handle.key());
        node.put("name", handle.name());
        SceneJson.point(node.putArray("at"), handle.at());
        if (handle.follows().isPresent()) {
            node.put("follows", handle.follows().get().key());
        } else {
            node.putNull("follows");
        }
        ObjectNode plane = node.putObject("plane");
        SceneJson.point(plane.putArray("at"), handle.at());
        SceneJson.point(plane.putArray("normal"), handle.normal());
    }

    private static void size(ObjectNode node, SizeRow sizing) {
        node.put("key", sizing.size().key());
        node.put("name", sizing.name());
        if (sizing.side().isPresent()) {
            node.put("side", sizing.side().get());
        } else {
            node.putNull("side");
        }
        node.put("value", sizing.value());
        node.put("unit", sizing.unit());
        node.put("least", sizing.least());
        node.put("most", sizing.most());
        node.put("step", sizing.step());
    }

    ObjectNode moves(Question asked) {
        return SmallPictures.moves(asked, words.lexicon());
    }

    ObjectNode complete(Question asked) {
        return SmallPictures.complete(asked, words.lexicon());
    }

    ObjectNode words(Question asked) {
        Optional<String> word = asked.maybe(WORD);
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        ArrayNode list = answer.putArray("words");
        List<Words.Entry> entries =
                word.isPresent()
                        ? List.of(Words.explain(word.get(), words.lexicon()))
                        : Words.all(words.lexicon());
        for (Words.Entry entry : entries) {
            ObjectNode node = list.addObject();
            node.put("word", entry.word());
            node.put("means", entry.means());
            node.put("sizes_unsaid", entry.sizesUnsaid());
            ArrayNode also = node.putArray("also_said");
            entry.alsoSaid().forEach(also::add);
            SmallPictures.word(node, entry, words.lexicon());
        }
        if (word.isEmpty()) {
            ArrayNode terms = answer.putArray("terms");
            for (Glossary.Term term : Glossary.all()) {
                ObjectNode node = terms.addObject().put("word", term.word());
                node.put("means", term.means());
                term.alsoSaid().forEach(node.putArray("also_said")::add);
                if (term.trade()) {
                    SmallPictures.word(node, Words.explain(term.word()), words.lexicon());
                }
            }
        }
        return answer;
    }
}
