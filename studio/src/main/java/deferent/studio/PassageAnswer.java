package deferent.studio;

import deferent.motion.pairing.Side;
import deferent.page.Scene;
import deferent.page.web.SceneJson;
import deferent.reading.body.Performer;
import deferent.reading.body.Person;
import deferent.reading.body.PoseOver;
import deferent.record.CrossingsJson;
import deferent.search.crossing.Passage;
import java.util.List;
import java.util.Optional;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * A passage as the stage plays it: from its start to its end once, all times counted from its
 * start.
 */
final class PassageAnswer {
    /** Points a second where nothing is said. */
    static final int RATE = 120;

    private static final int MOST = 9000;

    private PassageAnswer() {}

    /**
     * @param carrier whose head the link is drawn from
     * @param rate points a second; fewer where a long passage would take too many
     */
    static ObjectNode of(Passage passage, Side carrier, Performer performer, int rate) {
        double seconds = passage.trace().period();
        int count = Math.max(24, (int) Math.min(MOST, Math.rint(rate * seconds) + 1));
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        answer.put("seconds", seconds);
        answer.set(
                "scene",
                SceneJson.of(
                        Scene.of(
                                passage.trace(),
                                count,
                                carrier,
                                Optional.of(Person.of(PoseOver.of(passage.trace(), performer))))));
        ObjectNode pull = answer.putObject("pull");
        for (Side side : Side.values()) {
            pull.set(side.word(), Shown.pull(passage.pull(side), 0));
        }
        answer.set("strip", Desk.strip(passage.trace(), carrier, List.of()));
        answer.set("passage", CrossingsJson.tree(passage));
        var passages = answer.putArray("passages");
        for (var joint : answer.at("/passage/joints_s")) {
            ObjectNode one = passages.addObject();
            one.set("from_s", joint);
            one.set("to_s", joint);
            one.putArray("moments");
        }
        return answer;
    }
}
