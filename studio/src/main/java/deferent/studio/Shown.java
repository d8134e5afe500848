package deferent.studio;

import deferent.motion.shared.Side;
import deferent.page.web.SceneJson;
import deferent.reading.tether.Pull;
import deferent.search.whole.Keep;
import deferent.search.whole.Staged;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** What is on the stage, ideal or corded, as the page is told of it. */
final class Shown {
    private Shown() {}

    static final AskKey<Keep> SHOW =
            AskKey.one("show", "what is on the stage; unsaid is the ideal", Keep.class);

    /** {"asked": "figure", "left": "figure", "right": "ideal", "why": {"right": "..."}}. */
    static ObjectNode told(Staged staged) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("asked", staged.keep().word());
        ObjectNode reasons = JsonNodeFactory.instance.objectNode();
        for (Side side : Side.values()) {
            node.put(side.word(), (staged.corded(side) ? staged.keep() : Keep.IDEAL).word());
            if (staged.why().containsKey(side)) {
                reasons.put(side.word(), staged.why().get(side));
            }
        }
        node.set("why", reasons);
        return node;
    }

    /** The pull of both cords over the cycle. */
    static ObjectNode pull(Staged staged) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        for (Side side : Side.values()) {
            Pull pull = staged.pulls().get(side);
            if (pull != null) {
                node.set(side.word(), pull(pull, 0));
            }
        }
        return node;
    }

    /**
     * One cord's pull.
     *
     * @param from what the trace's clock shows at the first sample, seconds
     */
    static ObjectNode pull(Pull pull, double from) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("head_weight_n", SceneJson.rounded(pull.headWeight()));
        node.put("least_weights", thousandths(pull.leastWeights()));
        node.put("greatest_weights", thousandths(pull.greatestWeights()));
        ArrayNode weights = node.putArray("weights");
        for (double newtons : pull.newtons()) {
            weights.add(thousandths(pull.weights(newtons)));
        }
        ArrayNode slack = node.putArray("slack");
        pull.slack()
                .forEach(
                        s ->
                                slack.addObject()
                                        .put("from_s", SceneJson.rounded(s.start() - from))
                                        .put("to_s", SceneJson.rounded(s.end() - from)));
        return node;
    }

    private static double thousandths(double weights) {
        return Math.rint(weights * 1e3) / 1e3 + 0.0;
    }
}
