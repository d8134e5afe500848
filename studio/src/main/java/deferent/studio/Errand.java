package deferent.studio;

import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * A question that takes long and tells how far it has come: its answer comes in parts, the last of
 * them with what the whole came to.
 *
 * @param work the lane it is done in
 */
record Errand(Lanes.Work work, Run run) {
    /** The whole of it at once. */
    ObjectNode whole(BooleanSupplier stop) {
        ArrayNode answers = JsonNodeFactory.instance.arrayNode();
        ObjectNode last =
                run.run(
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

    /** How it is done. */
    interface Run {
        /**
         * Runs to the end, or until stopped with what was found by then.
         *
         * @param tell takes a part of the answer, at once
         * @param stop asked every little while
         * @return the last part
         */
        ObjectNode run(Consumer<ObjectNode> tell, BooleanSupplier stop);
    }
}
