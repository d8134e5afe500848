package deferent.studio;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Trace;
import deferent.page.Scene;
import deferent.page.web.SceneJson;
import deferent.reading.tether.Cord;
import deferent.reading.tether.Kit;
import deferent.reading.tether.LetGo;
import deferent.reading.tether.Pull;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * A poi let go from a moment of what is shown: the hand goes on, the head does what a cord lets it.
 * Times in the answer count from that moment.
 */
final class LetGoAnswer {
    /** Longest that is shown, seconds. */
    static final double LONGEST = 10;

    /** Where nothing is said, seconds. */
    static final double USUAL = 5;

    /** Points a second where nothing is said. */
    static final int RATE = 60;

    private LetGoAnswer() {}

    /**
     * Lets go of a side of what is shown.
     *
     * @param time when, seconds
     * @param slip metres the head is put ahead on its way, the cord as long as before
     * @param seconds how long it is followed
     */
    static LetGo run(Trace shown, Side side, Kit kit, double time, double slip, double seconds) {
        double most = Math.PI * shown.pairing().part(side).tether().length();
        Refusal.within(slip, -most, most, "slip", "m");
        return LetGo.of(shown, side, kit, LetGo.Start.slipped(shown, side, time, slip), seconds);
    }

    /**
     * @param rate points a second
     */
    static ObjectNode of(LetGo run, Side carrier, int rate) {
        Trace trace = run.trace();
        double from = trace.interval().start();
        int count = Math.max(16, (int) Math.rint(rate * trace.period()) + 1);
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        answer.put("side", run.side().word());
        answer.put("from_s", from);
        answer.put("seconds", trace.period());
        answer.set("scene", SceneJson.of(Scene.of(trace, count, carrier, Optional.empty())));
        ObjectNode pull = answer.putObject("pull");
        for (Side side : Side.values()) {
            Cord cord = Cord.of(trace, side, run.cord().kit());
            pull.set(side.word(), Shown.pull(Pull.of(trace, side, cord, count), from));
        }
        // Where it really was slack, not where a rod would have had to push.
        ArrayNode slack = ((ObjectNode) pull.get(run.side().word())).putArray("slack");
        for (Interval s : trace.slack(run.side())) {
            slack.addObject()
                    .put("from_s", SceneJson.rounded(s.start() - from))
                    .put("to_s", SceneJson.rounded(s.end() - from));
        }
        answer.set("strip", Desk.strip(trace, carrier, List.of()));
        ArrayNode events = answer.putArray("events");
        for (LetGo.Event event : run.events()) {
            events.addObject()
                    .put("time_s", SceneJson.rounded(event.time() - from))
                    .put("kind", event.kind().name().toLowerCase(Locale.ROOT))
                    .put("speed_m_per_s", SceneJson.rounded(event.speed()))
                    .put("loss_j", SceneJson.rounded(event.loss()));
        }
        OptionalDouble lost = run.lostAt();
        if (lost.isPresent()) {
            answer.put("lost_at_s", SceneJson.rounded(lost.getAsDouble() - from));
        } else {
            answer.putNull("lost_at_s");
        }
        answer.put("farthest_m", SceneJson.rounded(run.farthest()));
        LetGo.Audit audit = run.audit();
        answer.putObject("audit")
                .put("start_j", audit.start())
                .put("end_j", audit.end())
                .put("hand_j", audit.hand())
                .put("air_j", audit.air())
                .put("snaps_j", audit.snaps())
                .put("unaccounted_j", audit.unaccounted());
        return answer;
    }
}
