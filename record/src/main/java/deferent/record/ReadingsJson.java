package deferent.record;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Side;
import deferent.motion.trace.Figure;
import deferent.motion.trace.Interval;
import deferent.reading.body.HandReach;
import deferent.reading.body.Lying;
import deferent.reading.body.Nearness;
import deferent.reading.body.Passing;
import deferent.reading.body.Performer;
import deferent.reading.body.Reach;
import deferent.reading.body.Room;
import deferent.reading.body.SideRoom;
import deferent.reading.link.LinkReading;
import deferent.reading.worked.Worked;
import deferent.search.whole.Readings;
import deferent.tell.Telling;
import deferent.tell.Told;
import java.util.function.BiConsumer;
import java.util.function.ToDoubleFunction;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Readings as JSON, the same object from the command line and from the studio. Lengths end in _m,
 * times in _s, angles in _deg, areas in _m2; numbers are rounded to 1e-9 of their unit. A reading
 * that could not be worked out stands as {"not_worked_out": "reason"}; one that was not asked for
 * is left out.
 */
public final class ReadingsJson {
    /** Key of the reason why a reading could not be worked out. */
    private static final String NOT = "not_worked_out";

    private ReadingsJson() {}

    /** The readings as text. */
    public static String write(Readings readings) {
        return PrettyJson.text(tree(readings));
    }

    /** The readings as a tree, to be part of a larger answer. */
    public static ObjectNode tree(Readings readings) {
        Pairing pairing = readings.pairing();
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        readings.phrase().ifPresent(phrase -> node.put("phrase", phrase));
        put(node, "tempo_cycles_per_min", pairing.tempo());
        put(node, "period_s", pairing.period());
        ObjectNode hands = node.putObject("hands");
        ArrayNode links = node.putArray("links");
        for (Side side : Side.values()) {
            hands.set(side.word(), hand(readings, side));
            ObjectNode link = links.addObject();
            link.put("head", side.word());
            link.put("hand", side.other().word());
            put(link, readings.link(side), ReadingsJson::link);
        }
        put(node.putObject("room"), readings.room(), ReadingsJson::room);
        put(node.putObject("reach"), readings.reach(), ReadingsJson::reach);
        CordJson.put(node, readings);
        ArrayNode told = node.putArray("told");
        for (Told one : Telling.of(readings)) {
            told.addObject()
                    .put("key", one.key())
                    .put("tone", Keys.word(one.tone()))
                    .put("text", one.text())
                    .put("why", one.why());
        }
        ArrayNode cautions = node.putArray("cautions");
        Telling.cautions(readings).forEach(cautions::add);
        return node;
    }

    private static ObjectNode hand(Readings readings, Side side) {
        var part = readings.pairing().part(side);
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("motion", readings.hand(side).motion());
        put(node, "tether_m", part.tether().length());
        // A rider's path has no size of its own: it is the carrier's head path.
        if (part.motion().riding()) {
            put(node, "hand_radius_m", readings.link(side.other()), LinkReading::handRadius);
        } else {
            put(node, "hand_radius_m", part.motion().path().radius());
        }
        put(node.putObject("figure"), readings.hand(side).figure(), ReadingsJson::figure);
        return node;
    }

    private static void figure(ObjectNode drawn, Figure figure) {
        put(drawn, "width_m", figure.width());
        put(drawn, "height_m", figure.height());
        put(drawn, "signed_area_m2", figure.signedArea());
        put(drawn, "union_area_m2", figure.unionArea());
        put(drawn, "length_m", figure.length());
        put(drawn, "outer_radius_m", figure.outerRadius());
        drawn.put("petals", figure.petals());
        drawn.put("cusps", figure.cusps());
        drawn.put("symmetry_order", figure.symmetryOrder());
        drawn.put("self_crossings", figure.selfCrossings());
    }

    private static void link(ObjectNode node, LinkReading link) {
        node.put("kind", link.kind().word());
        put(node, "tolerance_m", link.tolerance());
        put(node, "shape_gap_m", link.shapeGap());
        // An estimate makes no promise of its error.
        if (!link.quick()) {
            put(node, "shape_gap_error_m", link.shapeGapError());
        }
        put(node, "shape_gap_at_least_m", link.shapeGapAtLeast());
        node.put("shape_gap_is_estimate", link.quick());
        put(node, "clock_gap_m", link.clockGap());
        put(node, "lag_cycles", link.lag());
        put(node, "placed_gap_m", link.placedGap());
        put(node, "inplane_gap_m", link.inPlaneGap());
        put(node, "depth_gap_m", link.depthGap());
        put(node.putArray("offset_m"), link.offset());
        put(node, "worst_time_s", link.worstTime());
        put(node, "share_of_figure", link.shareOfFigure());
        put(node, "hands_breadths", link.handsBreadths());
    }

    private static void room(ObjectNode node, Room room) {
        put(node, "head_to_head", room.headToHead());
        put(node, "tether_to_tether", room.tetherToTether());
        for (Side side : Side.values()) {
            SideRoom one = room.side(side);
            ObjectNode sided = node.putObject(side.word());
            put(sided, "head_to_other_hand", one.headToOtherHand());
            put(sided, "head_to_body", one.headToBody());
            put(sided, "hand_to_body", one.handToBody());
            put(sided, "tether_to_body", one.tetherToBody());
            sided.put("nearest_part", Keys.word(one.nearestPart()));
        }
        ArrayNode passings = node.putArray("tethers_cross_in_view");
        for (Passing passing : room.passings()) {
            ObjectNode one = passings.addObject();
            put(one, "from_s", passing.spell().start());
            put(one, "to_s", passing.spell().end());
            put(one, "depth_between_m", passing.depthBetween());
            passing.front().ifPresent(side -> one.put("in_front", side.word()));
            one.set("left_plane", lying(passing.leftLies()));
            one.set("right_plane", lying(passing.rightLies()));
        }
    }

    private static ObjectNode lying(Lying lying) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("nearest", Keys.word(lying.nearest()));
        put(node, "off_deg", Math.toDegrees(lying.off()));
        return node;
    }

    private static void reach(ObjectNode node, Reach reach) {
        Performer performer = reach.performer();
        ObjectNode body = node.putObject("performer");
        put(body, "stature_m", performer.stature());
        body.put("stature_is_assumed", performer.assumed());
        put(body, "arm_m", performer.arm());
        put(body, "shoulder_width_m", performer.shoulderWidth());
        for (Side side : Side.values()) {
            HandReach hand = reach.hand(side);
            ObjectNode one = node.putObject(side.word());
            one.put("everywhere", hand.everywhere());
            put(one, "farthest_m", hand.farthest());
            put(one, "farthest_time_s", hand.farthestTime());
            put(one, "nearest_m", hand.nearest());
            put(one, "nearest_time_s", hand.nearestTime());
            put(one, "too_far_m", hand.tooFar());
            put(one, "too_near_m", hand.tooNear());
            ArrayNode missing = one.putArray("out_of_reach_s");
            for (Interval spell : hand.missing()) {
                missing.addArray().add(rounded(spell.start())).add(rounded(spell.end()));
            }
            hand.largestRadius().ifPresent(r -> put(one, "largest_hand_radius_m", r));
        }
        ObjectNode hands = node.putObject("hands");
        put(hands, "least_distance", reach.hands());
        hands.put("meet", reach.handsMeet());
    }

    private static void put(ObjectNode node, String key, Nearness nearness) {
        put(node, key + "_m", nearness.distance());
        put(node, key + "_time_s", nearness.time());
    }

    private static void put(ArrayNode array, Vector3D v) {
        array.add(rounded(v.getX())).add(rounded(v.getY())).add(rounded(v.getZ()));
    }

    /** A reading as the contents of its own object. */
    static <T> void put(ObjectNode node, Worked<T> worked, BiConsumer<ObjectNode, T> contents) {
        worked.reading().ifPresent(reading -> contents.accept(node, reading));
        worked.failure().ifPresent(not -> node.put(NOT, not.reason()));
    }

    /** A reading under a key of its own, left out where it was not asked for. */
    static <T> void put(
            ObjectNode node, String key, Worked<T> worked, BiConsumer<ObjectNode, T> contents) {
        if (!(worked instanceof Worked.Unasked)) {
            put(node.putObject(key), worked, contents);
        }
    }

    /** One number of a reading. */
    private static <T> void put(
            ObjectNode node, String key, Worked<T> worked, ToDoubleFunction<T> number) {
        worked.reading().ifPresent(reading -> put(node, key, number.applyAsDouble(reading)));
        worked.failure().ifPresent(not -> node.putObject(key).put(NOT, not.reason()));
    }

    /** A number, which must be one: a reading refuses any other when it is made. */
    static void put(ObjectNode node, String key, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(key + " is " + value + ", not a number");
        }
        node.put(key, rounded(value));
    }

    // Adding zero turns −0.0 into 0.0.
    static double rounded(double value) {
        return Math.abs(value) < 1e6 ? Math.rint(value * 1e9) / 1e9 + 0.0 : value;
    }
}
