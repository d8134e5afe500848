package deferent.record;

import deferent.motion.phrase.Lexicon;
import deferent.search.set.BodyTurn;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** The steps of a set, as they stand in its document and are sent to the studio. */
public final class StepsJson {
    private StepsJson() {}

    static ArrayNode write(List<SetStep> steps) {
        ArrayNode list = JsonNodeFactory.instance.arrayNode();
        for (SetStep step : steps) {
            ObjectNode node = list.addObject();
            if (step.what() instanceof SetStep.Held held) {
                node.set("pattern", PatternJson.tree(held.pattern()));
            } else if (step.what() instanceof SetStep.OfShelf shelf) {
                node.put("id", shelf.id()).put("name", shelf.name());
            }
            node.put("counts", step.counts());
            step.turn()
                    .ifPresent(
                            turn ->
                                    node.putObject("turn")
                                            .put("turn_deg", 90 * turn.quarters())
                                            .put("count", turn.count()));
            step.beatsACycle().ifPresent(beats -> node.put("beats_a_cycle", beats));
        }
        return list;
    }

    /** The steps under a key. */
    public static List<SetStep> read(Keys keys, String key, Lexicon lexicon) {
        List<SetStep> steps = new ArrayList<>();
        for (Keys.Item item : keys.items(key, 0, SetDocument.MOST_STEPS)) {
            steps.add(step(item.keys(), lexicon));
        }
        return steps;
    }

    private static SetStep step(Keys keys, Lexicon lexicon) {
        boolean held = keys.has("pattern");
        if (held && keys.has("id")) {
            throw keys.error("id", "stands beside \"pattern\"", "keep one of the two");
        }
        SetStep.What what =
                held
                        ? new SetStep.Held(
                                PatternJson.readPattern(
                                        keys.tree("pattern"), keys.pointer("pattern"), lexicon))
                        : new SetStep.OfShelf(
                                keys.text("id", Wording.NAME), keys.text("name", Wording.NAME));
        int counts = keys.whole("counts", 1, SetStep.MOST_COUNTS);
        Optional<BodyTurn> turn = keys.maybeObject("turn").map(at -> turn(at, counts));
        OptionalInt beats =
                keys.has("beats_a_cycle")
                        ? OptionalInt.of(keys.whole("beats_a_cycle", 1, SetStep.MOST_BEATS))
                        : OptionalInt.empty();
        keys.done();
        return new SetStep(what, counts, turn, beats);
    }

    private static BodyTurn turn(Keys keys, int counts) {
        int degrees = keys.whole("turn_deg", -180, 180);
        if (degrees % 90 != 0 || degrees == 0) {
            throw keys.error(
                    "turn_deg",
                    "is " + degrees + "°",
                    "give 90 or 180 to the left, or -90 or -180 to the right");
        }
        int count = keys.whole("count", 1, SetStep.MOST_COUNTS, 1);
        keys.done();
        return keys.madeOf(
                "count",
                () -> {
                    BodyTurn turn = new BodyTurn(degrees / 90, count);
                    turn.within(counts);
                    return turn;
                });
    }
}
