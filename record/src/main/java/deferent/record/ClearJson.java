package deferent.record;

import deferent.motion.phrase.Lexicon;
import deferent.motion.shared.Side;
import deferent.reading.body.InTheWay;
import deferent.record.number.Written;
import deferent.search.clear.Clearing;
import deferent.search.clear.PlaneChange;
import deferent.tell.TellClear;
import java.util.List;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** What is in the way in a pattern and what clears it, as JSON. */
public final class ClearJson {
    private ClearJson() {}

    /** As text. */
    public static String write(PatternDocument pattern, Clearing clearing, Lexicon lexicon) {
        return PrettyJson.text(tree(pattern, clearing, lexicon));
    }

    /** As a tree, to be part of a larger answer. */
    public static ObjectNode tree(PatternDocument pattern, Clearing clearing, Lexicon lexicon) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("told", TellClear.of(clearing).text());
        node.put("clear", clearing.clear());
        node.put("arms", clearing.arms());
        node.put("whole", clearing.whole());
        all(node.putArray("in_the_way"), clearing.inTheWay());
        clearing.cleared()
                .ifPresent(
                        cleared -> {
                            node.put("hands_breadths", Written.rounded(cleared.cost()));
                            for (Side side : Side.values()) {
                                node.set(side.word(), change(cleared.change(side)));
                            }
                            PatternDocument changed = pattern.saying(cleared.pairing(), lexicon);
                            changed.phrase().ifPresent(phrase -> node.put("phrase", phrase));
                            node.set("pattern", PatternJson.tree(changed));
                        });
        if (!clearing.clear() && clearing.cleared().isEmpty()) {
            all(node.putArray("remains"), clearing.remains());
        }
        return node;
    }

    private static void all(ArrayNode array, List<InTheWay> all) {
        for (InTheWay one : all) {
            ObjectNode node = array.addObject();
            node.put("what", Written.word(one.what()));
            one.side().ifPresent(side -> node.put("side", side.word()));
            node.put("forearm", one.forearm());
            node.put("time_s", Written.rounded(one.time()));
        }
    }

    private static ObjectNode change(PlaneChange change) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        ArrayNode shift = node.putArray("shift_m");
        for (double one : change.shift().toArray()) {
            shift.add(Written.rounded(one));
        }
        node.put("lean_deg", Written.rounded(Math.toDegrees(change.lean())));
        node.put("tip_deg", Written.rounded(Math.toDegrees(change.tip())));
        node.put("swivel_deg", Written.rounded(Math.toDegrees(change.swivel())));
        return node;
    }
}
