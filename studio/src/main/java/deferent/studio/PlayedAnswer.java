package deferent.studio;

import deferent.motion.shared.Side;
import deferent.motion.trace.Count;
import deferent.motion.trace.Trace;
import deferent.page.Scene;
import deferent.page.web.SceneJson;
import deferent.reading.body.Performer;
import deferent.reading.body.Person;
import deferent.reading.body.PoseOver;
import deferent.reading.tether.Cord;
import deferent.reading.tether.Kit;
import deferent.reading.tether.Pull;
import deferent.record.TransitionsJson;
import deferent.search.transition.Played;
import deferent.search.transition.Transition;
import deferent.tell.PassageMoment;
import java.util.List;
import java.util.Optional;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** What is spun on cords as the stage plays it, all times counted from its start. */
final class PlayedAnswer {
    /** Points a second where nothing is said. */
    static final int RATE = 120;

    private static final int MOST = 14_500;

    private PlayedAnswer() {}

    /**
     * @param rate points a second; fewer where what is long would take too many
     */
    static ObjectNode of(Trace trace, Performer performer, Kit kit, int rate) {
        Side carrier = Scene.nearer(trace);
        double seconds = trace.period();
        int count = Math.max(24, (int) Math.min(MOST, Math.rint(rate * seconds) + 1));
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        answer.put("seconds", seconds);
        answer.set(
                "scene",
                SceneJson.of(
                        Scene.of(
                                trace,
                                count,
                                carrier,
                                Optional.of(Person.of(PoseOver.of(trace, performer))))));
        ObjectNode pull = answer.putObject("pull");
        for (Side side : Side.values()) {
            Cord cord = Cord.of(trace, side, kit);
            pull.set(
                    side.word(),
                    Shown.pull(Pull.of(trace, side, cord, Math.max(24, count / 2)), 0));
        }
        answer.set("strip", Desk.strip(trace, carrier, List.of()));
        return answer;
    }

    /**
     * What happens in transitions that are played one after the other: from when to when each
     * takes, and when and where each hand leaves and joins.
     */
    static ArrayNode passages(Played played, List<Transition> transitions) {
        ArrayNode all = JsonNodeFactory.instance.arrayNode();
        for (int i = 0; i < transitions.size(); i++) {
            ObjectNode node = all.addObject();
            node.put("from_s", SceneJson.rounded(played.left().get(i)));
            node.put("to_s", SceneJson.rounded(played.entered().get(i + 1)));
            node.set("transition", TransitionsJson.tree(transitions.get(i)));
            ArrayNode moments = node.putArray("moments");
            for (PassageMoment moment : PassageMoment.of(played, i, transitions.get(i))) {
                ObjectNode one = moments.addObject();
                one.put("time_s", SceneJson.rounded(moment.time()));
                one.put("side", moment.side().word());
                one.put("kind", moment.leaves() ? "leaves" : "joins");
                one.put("count", moment.count());
                SceneJson.point(one.putArray("hand"), moment.hand());
                SceneJson.point(one.putArray("head"), moment.head());
            }
        }
        return all;
    }

    /** Puts counts along the strip. */
    static void counts(ObjectNode answer, List<Count> counts) {
        ArrayNode all = ((ObjectNode) answer.get("strip")).putArray("counts");
        for (Count count : counts) {
            all.addObject()
                    .put("time_s", SceneJson.rounded(count.time()))
                    .put("text", count.said());
        }
    }
}
