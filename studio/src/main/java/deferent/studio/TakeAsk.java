package deferent.studio;

import static deferent.studio.AskKey.keys;

import deferent.motion.phrase.Lexicon;
import deferent.record.PatternDocument;
import deferent.record.PatternJson;
import deferent.record.Shelf;
import deferent.record.ShelfError;
import deferent.take.Ending;
import deferent.take.Endings;
import deferent.take.Take;
import deferent.take.Wishes;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tools.jackson.databind.JsonNode;

/** Reads what shall be taken away: one pattern, some of them, or the whole shelf. */
final class TakeAsk {
    private static final int MOST_PATTERNS = 300;

    private static final int MOST_WISHES = 40;

    static final AskKey<String> AS = AskKey.text("as", "the file's ending");
    static final AskKey<JsonNode> WISHES =
            AskKey.tree("wishes", "how it is written, see /api/endings", AskKey.schema("object"));
    private static final AskKey<Boolean> SHELF = AskKey.mark("shelf", "the whole shelf");
    private static final AskKey<JsonNode> PATTERNS =
            AskKey.tree(
                    "patterns",
                    "some pattern documents",
                    AskKey.listSchema(AskKey.schema("object"), MOST_PATTERNS));
    private static final AskKey<String> TITLE = AskKey.text("title", "what many are called");
    private static final AskKey<Boolean> ROUTE =
            AskKey.yes("route", "whether they follow one another");

    static final List<AskKey<?>> KEYS =
            keys(Matter.or(PATTERNS, SHELF), keys(AS.must(), WISHES, TITLE, ROUTE));

    private TakeAsk() {}

    static Take of(Question asked, Lexicon lexicon, Shelf shelf) {
        Ending ending = Endings.of(asked.get(AS));
        Wishes wishes = Wishes.of(ending, wishes(asked));
        boolean whole = asked.or(SHELF, false);
        Optional<String> title = asked.maybe(TITLE).filter(t -> !t.isBlank());
        boolean route = asked.or(ROUTE, false);
        if (whole || asked.has(PATTERNS)) {
            Take take =
                    Take.of(
                            title.orElse(whole ? "My shelf" : "Patterns"),
                            whole ? shelf.look().patterns() : patterns(asked.get(PATTERNS)),
                            wishes,
                            lexicon);
            return route ? take.asRoute() : take;
        }
        Matter matter = Matter.of(asked, lexicon);
        List<PatternDocument> others = ending.many() ? others(shelf) : List.of();
        return Take.of(matter.document(), others, wishes, lexicon);
    }

    static Map<String, String> wishes(Question asked) {
        Map<String, String> said = new LinkedHashMap<>();
        if (!asked.has(WISHES)) {
            return said;
        }
        JsonNode node = asked.get(WISHES);
        if (!node.isObject() || node.size() > MOST_WISHES) {
            throw new BadRequest(400, "is no JSON object", "wishes", "give {\"size\": \"wide\"}");
        }
        for (Map.Entry<String, JsonNode> wish : node.properties()) {
            JsonNode value = wish.getValue();
            if (value.isBoolean()) {
                said.put(wish.getKey(), value.asBoolean() ? "yes" : "no");
            } else if (value.isString() || value.isNumber()) {
                said.put(wish.getKey(), value.asString());
            } else {
                throw new BadRequest(
                        400,
                        "is neither text nor a number, true or false",
                        "wishes." + wish.getKey(),
                        "give one of those");
            }
        }
        return said;
    }

    /** What a sheet may name to go on with; without a shelf that can be read, nothing. */
    private static List<PatternDocument> others(Shelf shelf) {
        try {
            return shelf.look().patterns();
        } catch (ShelfError unreadable) {
            return List.of();
        }
    }

    private static List<PatternDocument> patterns(JsonNode list) {
        if (!list.isArray() || list.size() > MOST_PATTERNS) {
            throw new BadRequest(
                    400, "is no list of at most " + MOST_PATTERNS, "patterns", "give [{...}, ...]");
        }
        List<PatternDocument> all = new ArrayList<>();
        list.forEach(node -> all.add(PatternJson.readPattern(node)));
        return all;
    }
}
