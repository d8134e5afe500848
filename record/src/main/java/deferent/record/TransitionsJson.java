package deferent.record;

import static deferent.record.number.Written.rounded;

import deferent.motion.shared.Side;
import deferent.search.transition.Bridge;
import deferent.search.transition.Transition;
import deferent.search.transition.Transitions;
import deferent.tell.TellTransition;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Transitions as JSON: what was asked, then each, best first, with what either hand does. */
public final class TransitionsJson {
    private TransitionsJson() {}

    /** The transitions from one pattern to another as text. */
    public static String write(PatternDocument from, PatternDocument to, Transitions found) {
        return PrettyJson.text(tree(from, to, found));
    }

    /** The transitions from one pattern to another. */
    public static ObjectNode tree(PatternDocument from, PatternDocument to, Transitions found) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("from", from.name());
        node.put("to", to.name());
        node.put("hardest", Keys.word(found.request().hardest()));
        if (found.list().isEmpty()) {
            node.put("none", Keys.word(found.why()));
        }
        ToldJson.put(node.putArray("told"), TellTransition.of(found).subList(0, 1));
        ArrayNode list = node.putArray("transitions");
        found.list().forEach(t -> list.add(tree(t)));
        return node;
    }

    /** One transition, with its sentence. */
    public static ObjectNode tree(Transition t) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("grade", Keys.word(t.grade()));
        node.put("leaves_s", rounded(t.leaves()));
        node.put("seconds", rounded(t.seconds()));
        node.put("joins_s", rounded(t.joins()));
        node.put("one_after_the_other", t.oneAfterTheOther());
        for (Side side : Side.values()) {
            Bridge bridge = t.bridge(side);
            ObjectNode hand = node.putObject(side.word());
            hand.put("kind", Keys.word(bridge.kind()));
            if (bridge.keeps()) {
                continue;
            }
            hand.put("leaves_s", rounded(bridge.leaves()))
                    .put("seconds", rounded(bridge.seconds()))
                    .put("joins_s", rounded(bridge.joins()))
                    .put("stray_m", rounded(bridge.stray()))
                    .put("least_pull_weights", rounded(bridge.leastPull()))
                    .put("greatest_pull_weights", rounded(bridge.greatestPull()))
                    .put("hand_jerk_m_s3", rounded(bridge.jerk()));
        }
        ToldJson.put(node.putObject("told"), TellTransition.of(t));
        return node;
    }
}
