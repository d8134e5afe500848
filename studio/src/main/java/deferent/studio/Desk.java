package deferent.studio;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.Size;
import deferent.motion.phrase.Words;
import deferent.motion.trace.Trace;
import deferent.page.Scene;
import deferent.page.web.SceneJson;
import deferent.reading.body.BodyOutline;
import deferent.reading.link.LinkReading;
import deferent.reading.tether.Kit;
import deferent.reading.worked.Detail;
import deferent.reading.worked.Worked;
import deferent.record.CrossingsJson;
import deferent.record.PatternDocument;
import deferent.record.PatternJson;
import deferent.record.ReadingsJson;
import deferent.record.Shelf;
import deferent.search.crossing.Crossing;
import deferent.search.crossing.CrossingRequest;
import deferent.search.crossing.Passage;
import deferent.search.crossing.Who;
import deferent.search.fit.Fit;
import deferent.search.fit.FitReading;
import deferent.search.whole.Keep;
import deferent.search.whole.Readings;
import deferent.search.whole.Staged;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
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

    private static final Set<String> SLOW = Set.of("fit", "crossings", "passage", "photo");

    static final List<String> ERRANDS = List.of("seek", "map", "take");

    /** Longest that a pattern is played before and after its crossing, seconds. */
    private static final double LONGEST_LEAD = 4;

    private final Wordbook words;
    private final Shelf shelf;
    private final MapDesk map;
    private final TakeDesk takes;

    Desk(Wordbook words, Shelf shelf, TakeDesk takes) {
        this.words = words;
        this.shelf = shelf;
        this.takes = takes;
        this.map = new MapDesk(shelf);
    }

    /** The question's object, or a refusal. */
    static Question question(String text) {
        return Question.of(tree(text), "question");
    }

    static JsonNode tree(String text) {
        JsonNode node = JSON.readTree(text);
        if (node == null || node.isMissingNode()) {
            throw new BadRequest(400, "is empty", "body", "send one JSON object");
        }
        return node;
    }

    /**
     * The lane of a question that takes long to answer, so that a newer one may overtake it; empty
     * for one that is answered at once.
     */
    static Optional<Lanes.Work> slow(Question asked) {
        String ask = asked.maybeText("ask").orElse("");
        if (ask.equals("route")) {
            return Optional.of(Lanes.Work.MAP);
        }
        boolean slow =
                SLOW.contains(ask)
                        || asked.maybeText("show").filter(Keep.HAND_PATH.word()::equals).isPresent()
                        || asked.maybeText("detail").filter("settled"::equals).isPresent();
        return slow ? Optional.of(Lanes.Work.SHORT) : Optional.empty();
    }

    /** The lane of any question; empty for one that is answered at once. */
    Optional<Lanes.Work> lane(String text) {
        Question asked = question(text);
        return ERRANDS.contains(asked.maybeText("ask").orElse(""))
                ? Optional.of(errand(asked).work())
                : slow(asked);
    }

    ObjectNode answer(Question asked) {
        return answer(asked, () -> false);
    }

    /**
     * @param stop asked while what takes long is worked out: whether nobody waits for it any more
     */
    ObjectNode answer(Question asked, BooleanSupplier stop) {
        String ask = asked.text("ask");
        ObjectNode answer =
                switch (ask) {
                    case "pairing" -> pairing(asked);
                    case "fit" -> fit(asked);
                    case "letgo" -> letGo(asked);
                    case "crossings" -> crossings(asked);
                    case "passage" -> passage(asked);
                    case "words" -> words(asked);
                    case "seek", "map", "take" -> whole(errand(asked).run(), stop);
                    case "route" -> route(asked, stop);
                    case "photo" -> takes.photo(asked);
                    default ->
                            throw new BadRequest(
                                    400,
                                    "is \"" + ask + "\"",
                                    "ask",
                                    "ask for \"pairing\", \"fit\", \"letgo\", \"crossings\","
                                            + " \"passage\", \"seek\", \"map\", \"route\","
                                            + " \"take\", \"photo\" or \"words\"");
                };
        if (asked.has("id")) {
            answer.set("id", asked.node("id"));
        }
        words.trouble().ifPresent(told -> answer.put("shelf_told", told));
        return answer;
    }

    private ObjectNode pairing(Question asked) {
        boolean settled = asked.word("detail", List.of("live", "settled")).equals("settled");
        int count = asked.whole("samples", 24, 4320, Scene.USUAL_COUNT);
        double time = asked.maybeNumber("time_s", -1e6, 1e6).orElse(0);
        boolean body = asked.yes("body", true);
        Keep keep = Shown.asked(asked);
        Matter matter = Matter.of(asked, words.lexicon());
        asked.has("id");
        asked.done();

        Readings readings =
                Readings.of(
                        matter.pairing(),
                        matter.document().performer(),
                        matter.document().kit(),
                        settled ? Detail.SETTLED : Detail.LIVE,
                        words.lexicon());
        Trace trace = readings.trace();
        Staged shown = Staged.of(readings, keep, matter.document().kit());
        Side carrier = shown.carrier();
        Scene scene =
                Scene.of(
                        shown.trace(),
                        count,
                        carrier,
                        body ? BodyOutline.of(matter.document().performer()).drawn() : List.of());

        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        answer.put("detail", settled ? "settled" : "live");
        answer.set("pattern", PatternJson.tree(matter.document()));
        Optional<String> phrase = matter.document().phrase();
        if (phrase.isPresent()) {
            answer.put("phrase", phrase.get());
        } else {
            answer.putNull("phrase");
        }
        answer.put("name", matter.said());
        answer.set("readings", ReadingsJson.tree(readings));
        ObjectNode seen = SceneJson.of(scene);
        if (!shown.cordedSides().isEmpty()) {
            seen.set("ghost", SceneJson.samples(trace, count, shown.cordedSides()));
        }
        answer.set("scene", seen);
        answer.set("shown", Shown.told(shown));
        answer.set("pull", Shown.pull(shown));
        answer.set("strip", strip(shown.trace(), carrier, Strip.marks(trace)));
        ArrayNode handles = answer.putArray("handles");
        Handle.of(trace, time).forEach(h -> handle(handles.addObject(), h));
        ArrayNode sizes = answer.putArray("sizes");
        SizeRow.of(matter.pairing()).forEach(s -> size(sizes.addObject(), s));
        ArrayNode begin = answer.putArray("begin");
        Begin.of(trace).forEach(begin::add);
        return answer;
    }

    private ObjectNode fit(Question asked) {
        Optional<String> carrier = asked.maybeText("carrier");
        Optional<List<String>> free = asked.maybeTexts("free", 40);
        Matter matter = Matter.of(asked, words.lexicon());
        asked.has("id");
        asked.done();
        Side leads =
                carrier.isPresent()
                        ? side("carrier", carrier.get())
                        : Readings.of(matter.pairing(), matter.document().performer(), Detail.LIVE)
                                .carrier();
        FitReading fit =
                Worked.orRefusal(
                        "the numbers of the fit",
                        () ->
                                free.isPresent()
                                        ? Fit.of(matter.pairing(), leads, sizes(free.get()))
                                        : Fit.of(matter.pairing(), leads));
        return FitAnswer.of(fit, matter, words.lexicon());
    }

    private static Set<Size> sizes(List<String> keys) {
        return keys.stream().map(Size::named).collect(Collectors.toCollection(LinkedHashSet::new));
    }

    private static Side side(String key, String word) {
        for (Side side : Side.values()) {
            if (side.word().equals(word)) {
                return side;
            }
        }
        throw new BadRequest(400, "is \"" + word + "\"", key, "say left or right");
    }

    private ObjectNode letGo(Question asked) {
        Side side = side("side", asked.text("side"));
        double time = asked.maybeNumber("time_s", -1e6, 1e6).orElse(0);
        double slip = asked.maybeNumber("slip_m", -20, 20).orElse(0);
        double seconds =
                asked.maybeNumber("seconds", 0.1, LetGoAnswer.LONGEST).orElse(LetGoAnswer.USUAL);
        int rate = asked.whole("rate", 10, 240, LetGoAnswer.RATE);
        Keep keep = Shown.asked(asked);
        Matter matter = Matter.of(asked, words.lexicon());
        asked.has("id");
        asked.done();
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

    /** What is answered in parts: over a socket as they come, else all in one. */
    Errand errand(Question asked) {
        Errand errand =
                switch (asked.text("ask")) {
                    case "map" -> map.map(CrossingAsk.asTheyStand(asked));
                    case "take" -> takes.take(asked);
                    default ->
                            new Errand(Lanes.Work.SEEK, SeekAsk.of(asked, words.lexicon(), shelf));
                };
        asked.has("id");
        asked.done();
        return errand;
    }

    private static ObjectNode whole(Errand.Run errand, BooleanSupplier stop) {
        ArrayNode answers = JsonNodeFactory.instance.arrayNode();
        ObjectNode last =
                errand.run(
                        part -> {
                            if (part.has("answer")) {
                                answers.add(part.get("answer"));
                            }
                        },
                        stop);
        if (!answers.isEmpty() || last.has("order_of_keys")) {
            last.set("answers", answers);
        }
        return last;
    }

    private ObjectNode route(Question asked, BooleanSupplier stop) {
        CrossingRequest request = CrossingAsk.asTheyStand(asked);
        String from = asked.text("from");
        String to = asked.text("to");
        int rate = asked.whole("rate", 10, 240, PassageAnswer.RATE);
        asked.has("id");
        asked.done();
        return map.route(request, from, to, rate, stop);
    }

    private ObjectNode crossings(Question asked) {
        CrossingAsk ask = CrossingAsk.of(asked, words.lexicon());
        asked.has("id");
        asked.done();
        return CrossingsJson.tree(ask.from(), ask.to(), ask.found(), Optional.empty());
    }

    private ObjectNode passage(Question asked) {
        int which = asked.whole("crossing", 0, 100_000, 0);
        int rate = asked.whole("rate", 10, 240, PassageAnswer.RATE);
        OptionalDouble lead = asked.maybeNumber("lead_s", 0, LONGEST_LEAD);
        CrossingAsk ask = CrossingAsk.of(asked, words.lexicon());
        asked.has("id");
        asked.done();
        List<Crossing> all = ask.found().smoothestFirst();
        if (which >= all.size()) {
            throw new BadRequest(
                    422,
                    "is " + which + " of " + all.size(),
                    "crossing",
                    "ask for the crossings first, and count from 0");
        }
        Crossing crossing = all.get(which);
        // So much of either that each is seen whole.
        double usual = Math.max(crossing.from().period(), crossing.to().period());
        Passage passage =
                Passage.of(crossing, lead.orElse(Math.min(LONGEST_LEAD, usual)), ask.from().kit());
        ObjectNode answer =
                PassageAnswer.of(
                        passage,
                        Scene.nearer(Trace.of(ask.from().pairing())),
                        ask.from().performer(),
                        rate);
        answer.put("from", ask.from().name());
        answer.put("to", ask.to().name());
        answer.set("crossing", CrossingsJson.tree(crossing));
        answer.set("after", PatternJson.tree(after(ask, crossing)));
        return answer;
    }

    /** The second pattern as it is entered, with whatever was done to it so that it could be. */
    private PatternDocument after(CrossingAsk ask, Crossing crossing) {
        if (crossing.who() != Who.BOTH) {
            Pairing mixed = ask.from().pairing();
            for (Side side : crossing.who().sides()) {
                mixed = mixed.with(side, crossing.to().part(side));
            }
            return ask.to().saying(mixed, words.lexicon());
        }
        return crossing.adjustment().none()
                ? ask.to()
                : ask.to().saying(crossing.to(), words.lexicon());
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

    private ObjectNode words(Question asked) {
        Optional<String> word = asked.maybeText("word");
        asked.has("id");
        asked.done();
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
        }
        return answer;
    }
}
