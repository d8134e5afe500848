package deferent.studio;

import static deferent.studio.AskKey.keys;

import deferent.record.Keys;
import deferent.search.whole.Keep;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.stream.Stream;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * What can be asked of the studio, one row an ask: its keys, the lane in which it is worked on, and
 * who answers it. The protocol's schema is written from these rows.
 */
enum Ask {
    PAIRING(
            "readings and scene of a pairing",
            asked -> dear(asked.maybe(Desk.DETAIL).filter("settled"::equals).isPresent(), asked),
            Desk::pairing,
            keys(
                    Matter.KEYS,
                    keys(
                            Desk.DETAIL,
                            Desk.SAMPLES,
                            Desk.TIME,
                            Desk.BODY,
                            Desk.TOLD,
                            Desk.CARRIER,
                            Shown.SHOW))),
    FIT(
            "what would close a link",
            asked -> Optional.of(Lanes.Work.SHORT),
            (desk, asked, stop) -> desk.fit(asked),
            keys(Matter.KEYS, keys(Desk.CARRIER, Desk.FREE, Desk.ARMS, Desk.OWNED))),
    LETGO(
            "a poi let go, or slipped",
            asked -> dear(false, asked),
            (desk, asked, stop) -> desk.letGo(asked),
            keys(
                    Matter.KEYS,
                    keys(
                            Desk.SIDE.must(),
                            Desk.TIME,
                            Desk.SLIP,
                            Desk.SECONDS,
                            Desk.RATE,
                            Shown.SHOW))),
    TRANSITIONS(
            "the short passages from one pattern to another, best first",
            asked -> Optional.of(Lanes.Work.SHORT),
            (desk, asked, stop) -> desk.transitions(asked),
            TransitionAsk.KEYS),
    LEARN("an order to learn a pattern in, and its days", Desk::learn, LearnAsk.KEYS),
    NEXT("what could come next, nothing else being said", Desk::next, NextAsk.KEYS),
    TRANSITION_PLAY(
            "one transition, played",
            asked -> Optional.of(Lanes.Work.SHORT),
            (desk, asked, stop) -> desk.transitionPlay(asked),
            keys(TransitionAsk.KEYS, keys(TransitionAsk.WHICH, Desk.RATE))),
    TRANSITION_TAKE(
            "one transition as a clip or a picture",
            Desk::transitionTake,
            keys(TransitionAsk.KEYS, keys(TransitionAsk.WHICH, TakeAsk.AS.must(), TakeAsk.WISHES))),
    ROUTE(
            "the gentlest way over the map from one pattern to another",
            Desk::route,
            keys(MapDesk.FROM.must(), MapDesk.TO.must(), SetAsk.HARDEST)),
    PHOTO(
            "how to photograph a pattern",
            asked -> Optional.of(Lanes.Work.SHORT),
            (desk, asked, stop) -> desk.photo(asked),
            keys(Matter.KEYS, TakeDesk.PHOTO)),
    WORDS(
            "the words of phrases",
            asked -> Optional.empty(),
            (desk, asked, stop) -> desk.words(asked),
            keys(Desk.WORD)),
    MOVES(
            "what small moving pictures of phrases move through",
            asked -> Optional.of(Lanes.Work.SHORT),
            (desk, asked, stop) -> desk.moves(asked),
            keys(SmallPictures.PHRASES, SmallPictures.SAMPLES)),
    COMPLETE(
            "what could be written at a place of a phrase",
            asked -> Optional.empty(),
            (desk, asked, stop) -> desk.complete(asked),
            keys(SmallPictures.TEXT.must(), SmallPictures.AT)),
    SEEK("pairings that link", Desk::seek, SeekAsk.KEYS),
    MAP("the shelf as a map", Desk::map, keys(SetAsk.HARDEST)),
    SET(
            "how a set goes: patterns in order, each for so many counts, and what leads on",
            asked -> Optional.of(Lanes.Work.SHORT),
            Desk::set,
            SetAsk.KEYS),
    SET_PLAY(
            "a set, or a part of it, played",
            asked -> Optional.of(Lanes.Work.SHORT),
            Desk::setPlay,
            keys(SetAsk.KEYS, keys(SetDesk.FROM, SetDesk.TO, Desk.RATE))),
    SET_TAKE(
            "a set as a clip or a sheet",
            Desk::setTake,
            keys(SetAsk.KEYS, keys(TakeAsk.AS.must(), TakeAsk.WISHES))),
    SET_SUGGEST(
            "patterns of the shelf in an order that can be spun, hardest in the middle",
            Desk::suggest,
            keys(SetDesk.COUNT, SetDesk.BEGIN, SetAsk.HARDEST)),
    FILM("what a film of practice shows", Desk::watch, FilmDesk.KEYS),
    FILMED("a file of a film of practice", Desk::filmed, FilmDesk.TAKEN),
    BEATS("the beats of a song, how quick they are, and its bars", Desk::beats, SongDesk.KEYS),
    TAKE("a file of a pattern, of some or of the shelf", Desk::take, TakeAsk.KEYS),
    /** Over a socket alone; by POST the asker hangs up. */
    STOP(
            "the end of what is told in parts, a seek or a file under way for one, with what it"
                    + " has",
            asked -> Optional.empty(),
            (desk, asked, stop) -> {
                throw new BadRequest(400, "is \"stop\"", "ask", "hang up instead");
            },
            keys(Desk.OF));

    /** Answers at once, or after some work in a lane. */
    private interface Answer {
        ObjectNode of(Desk desk, Question asked, BooleanSupplier stop);
    }

    private static final AskKey<JsonNode> ID =
            AskKey.tree("id", "given back with the answer", JsonNodeFactory.instance.objectNode());
    private static final AskKey<String> ASK =
            AskKey.word("ask", "what is asked", Stream.of(values()).map(Ask::word).toList());

    private final String means;
    private final Function<Question, Optional<Lanes.Work>> lane;
    private final Answer answer;
    private final Optional<BiFunction<Desk, Question, Errand>> errand;
    private final List<AskKey<?>> own;

    Ask(
            String means,
            Function<Question, Optional<Lanes.Work>> lane,
            Answer answer,
            List<AskKey<?>> own) {
        this.means = means;
        this.lane = lane;
        this.answer = answer;
        this.errand = Optional.empty();
        this.own = own;
    }

    /** One that is answered in parts. */
    Ask(String means, BiFunction<Desk, Question, Errand> errand, List<AskKey<?>> own) {
        this.means = means;
        this.lane = asked -> Optional.empty();
        this.answer = (desk, asked, stop) -> errand.apply(desk, asked).whole(stop);
        this.errand = Optional.of(errand);
        this.own = own;
    }

    String word() {
        return Keys.word(this);
    }

    /** What is answered in parts: over a socket as they come, else all in one. */
    boolean inParts() {
        return errand.isPresent();
    }

    /** A question as it came, with the row it belongs to. */
    record Asked(Ask ask, Question question) {
        static Asked of(String text) {
            JsonNode tree = Desk.tree(text);
            String word = Question.one(tree, ASK);
            Ask ask =
                    Stream.of(values())
                            .filter(a -> a.word().equals(word))
                            .findFirst()
                            .orElseThrow();
            return new Asked(ask, Question.of(tree, ask.all()));
        }

        JsonNode id() {
            return question.maybe(ID).orElseGet(JsonNodeFactory.instance::nullNode);
        }

        /** The lane it is worked on in; empty where it is answered at once. */
        Optional<Lanes.Work> lane(Desk desk) {
            return ask.inParts() ? Optional.of(errand(desk).work()) : ask.lane.apply(question);
        }

        Errand errand(Desk desk) {
            return ask.errand.orElseThrow().apply(desk, question);
        }

        ObjectNode answer(Desk desk, BooleanSupplier stop) {
            ObjectNode answer = ask.answer.of(desk, question, stop);
            question.maybe(ID).ifPresent(id -> answer.set("id", id));
            return answer;
        }
    }

    /** Its keys, those of every question first. */
    List<AskKey<?>> all() {
        return keys(keys(ASK.must(), ID), own);
    }

    private static final Set<Keep> SLOW = EnumSet.of(Keep.HAND_PATH, Keep.CLOSEST);

    /**
     * A poi behind a hand that keeps its path and the closest figure take a while, whatever else is
     * dear.
     */
    private static Optional<Lanes.Work> dear(boolean dear, Question asked) {
        return dear || SLOW.contains(asked.or(Shown.SHOW, Keep.IDEAL))
                ? Optional.of(Lanes.Work.SHORT)
                : Optional.empty();
    }

    /** All questions as JSON Schema, draft 2020-12. */
    static ObjectNode schema() {
        ObjectNode schema = JsonNodeFactory.instance.objectNode();
        schema.put("$schema", "https://json-schema.org/draft/2020-12/schema");
        schema.put("title", "Questions to the studio");
        ArrayNode any = schema.putArray("oneOf");
        for (Ask ask : values()) {
            ObjectNode one = AskKey.objectSchema(ask.all());
            one.put("title", ask.word()).put("description", ask.means);
            ((ObjectNode) one.get("properties").get("ask")).put("const", ask.word()).remove("enum");
            any.add(one);
        }
        return schema;
    }
}
