package deferent.record;

import static deferent.record.number.Written.rounded;

import deferent.motion.pairing.Side;
import deferent.search.crossing.Adjustment;
import deferent.search.crossing.Crossing;
import deferent.search.crossing.CrossingRequest;
import deferent.search.crossing.Crossings;
import deferent.search.crossing.Freedom;
import deferent.search.crossing.Passage;
import deferent.search.crossing.Props;
import deferent.tell.TellCrossing;
import deferent.tell.Told;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Crossings as JSON: what was asked, each moment smoothest first with what changes there, and the
 * passage through the smoothest. A tolerance that is unbounded is left out.
 */
public final class CrossingsJson {
    private CrossingsJson() {}

    /** The crossings from one pattern to another as text. */
    public static String write(
            PatternDocument from,
            PatternDocument to,
            Crossings crossings,
            Optional<Passage> smoothest) {
        return PrettyJson.text(tree(from, to, crossings, smoothest));
    }

    /** The same as a tree to be part of a larger answer. */
    public static ObjectNode tree(
            PatternDocument from,
            PatternDocument to,
            Crossings crossings,
            Optional<Passage> smoothest) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        named(node.putObject("from"), from);
        named(node.putObject("to"), to);
        node.set("request", request(crossings.request()));
        List<Told> told = TellCrossing.of(crossings);
        ToldJson.put(node.putArray("told"), told.subList(0, 1));
        ArrayNode list = node.putArray("crossings");
        crossings.smoothestFirst().forEach(c -> list.add(tree(c)));
        if (crossings.list().isEmpty()) {
            node.set(
                    "nearest",
                    tree(Crossings.nearest(crossings.from(), crossings.to(), crossings.request())));
        }
        smoothest.ifPresent(passage -> node.set("passage", tree(passage)));
        return node;
    }

    private static void named(ObjectNode node, PatternDocument pattern) {
        node.put("name", pattern.name());
        pattern.phrase().ifPresent(phrase -> node.put("phrase", phrase));
        node.put("period_s", rounded(pattern.pairing().period()));
        node.set("pattern", PatternJson.tree(pattern));
    }

    /** What counted as a crossing. */
    static ObjectNode request(CrossingRequest request) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("tolerance_m", request.place());
        if (Double.isFinite(request.speed())) {
            node.put("speed_tolerance_m_s", request.speed());
        }
        node.put("who", Keys.word(request.who()));
        node.put("compared", Keys.word(request.compared()));
        node.put("blend_s", request.blend());
        Freedom freedom = request.freedom();
        node.putObject("freedom")
                .put("shift_m", freedom.shift())
                .put("turn_deg", rounded(Math.toDegrees(freedom.turn())))
                .put("mirror", freedom.mirror())
                .put("tempo_factor", freedom.tempo())
                .put("timing", freedom.timing());
        return node;
    }

    /** One moment, with its sentence. */
    public static ObjectNode tree(Crossing c) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("from_s", rounded(c.fromTime()));
        node.put("from_cycles", rounded(c.fromShare()));
        node.put("to_s", rounded(c.toTime()));
        node.put("to_cycles", rounded(c.toShare()));
        node.put("who", Keys.word(c.who()));
        node.put("need", Keys.word(c.need()));
        for (Side side : Side.values()) {
            node.put(side.word(), Keys.word(c.need(side)));
        }
        node.put("place_gap_m", rounded(c.placeGap()));
        node.put("speed_gap_m_s", rounded(c.speedGap()));
        node.putObject("roughness")
                .put("hands_weights", rounded(c.roughness().hands()))
                .put("heads_weights", rounded(c.roughness().heads()));
        node.set("before", props(c.before()));
        node.set("after", props(c.after()));
        node.put("together_s", rounded(c.together()));
        node.put("tether_change_m", rounded(c.tetherChange()));
        if (!c.adjustment().none()) {
            node.set("adjustment", adjustment(c.adjustment()));
        }
        ToldJson.put(node.putObject("told"), TellCrossing.of(c));
        return node;
    }

    private static ObjectNode props(Props props) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        props.direction().ifPresent(d -> node.put("direction", Keys.word(d)));
        node.put("ahead_turns", rounded(props.ahead()));
        node.put("left_turns_per_s", rounded(props.left()));
        node.put("right_turns_per_s", rounded(props.right()));
        node.put("said", TellCrossing.props(props));
        return node;
    }

    private static ObjectNode adjustment(Adjustment a) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("mirrored", a.mirrored());
        node.put("timing_cycles", rounded(a.timing()));
        node.put("turn_deg", rounded(Math.toDegrees(a.turn())));
        put(node.putArray("about_m"), a.about());
        put(node.putArray("shift_m"), a.shift());
        node.put("tempo_factor", rounded(a.tempo()));
        return node;
    }

    private static void put(ArrayNode array, Vector3D v) {
        array.add(rounded(v.getX())).add(rounded(v.getY())).add(rounded(v.getZ()));
    }

    /** Whether a cord can do it, and how hard it pulls. */
    public static ObjectNode tree(Passage passage) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("corded", passage.corded());
        node.put("taut", passage.taut());
        node.put("why", Keys.word(passage.why()));
        node.put("extra_hands_weights", rounded(passage.extraHands()));
        node.put("extra_heads_weights", rounded(passage.extraHeads()));
        node.put("astray_m", rounded(passage.astray()));
        for (Side side : Side.values()) {
            node.putObject(side.word())
                    .put("least_weights", rounded(passage.pull(side).leastWeights()))
                    .put("greatest_weights", rounded(passage.pull(side).greatestWeights()));
        }
        ArrayNode joints = node.putArray("joints_s");
        passage.joints().forEach(joint -> joints.add(rounded(joint)));
        ToldJson.put(node.putObject("told"), TellCrossing.of(passage));
        return node;
    }
}
