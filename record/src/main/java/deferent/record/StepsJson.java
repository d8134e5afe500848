package deferent.record;

import deferent.motion.phrase.Lexicon;
import java.util.ArrayList;
import java.util.List;
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
        keys.done();
        return new SetStep(what, counts);
    }
}
