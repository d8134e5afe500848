package deferent.record;

import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Facing;
import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.pairing.Sense;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Timing;
import deferent.motion.pairing.Weave;
import deferent.motion.shared.Side;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Pairings as JSON, written out in full; a hand may leave out what has a usual value: plane wall,
 * the usual centre, one cycle, together, same direction, clockwise, facing the audience.
 */
final class PairingJson {
    /** As many as fit in a cycle, each as quick as can be. */
    private static final int MOST_TURNS = 100;

    private PairingJson() {}

    static ObjectNode write(Pairing pairing) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("timing_cycles", pairing.timing().ahead());
        node.put("direction", Keys.word(pairing.direction()));
        node.put("sense", Keys.word(pairing.sense()));
        pairing.tempoSaid().ifPresent(tempo -> node.put("tempo_cycles_per_min", tempo));
        if (!pairing.facing().equals(Facing.AUDIENCE)) {
            node.set("facing", write(pairing.facing()));
        }
        node.set("left", write(pairing.left()));
        node.set("right", write(pairing.right()));
        return node;
    }

    private static ObjectNode write(Facing facing) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("from_deg", 90 * facing.from());
        ArrayNode turns = node.putArray("turns");
        for (Facing.Turn turn : facing.turns()) {
            turns.addObject()
                    .put("begins_cycles", turn.begins())
                    .put("takes_cycles", turn.takes())
                    .put("turn_deg", 90 * turn.quarters());
        }
        return node;
    }

    private static ObjectNode write(Part part) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.set("hand", HandPathJson.write(part.motion().path()));
        node.set("spin", SpinJson.write(part.motion().spin()));
        part.motion().weave().ifPresent(weave -> node.set("weave", write(weave)));
        node.put("tether_m", part.tether().length());
        node.set("plane", write(part.place().plane()));
        PlaneTurn turn = part.place().turn();
        if (!turn.equals(PlaneTurn.NONE)) {
            node.putObject("plane_turn")
                    .put("turns", turn.turns())
                    .put("axis", Keys.word(turn.axis()))
                    .put("carries", Keys.word(turn.carries()));
        }
        Vector3D c = part.place().centre();
        node.putArray("centre_m").add(c.getX()).add(c.getY()).add(c.getZ());
        node.put("cycles", part.cycles());
        return node;
    }

    private static ObjectNode write(Plane plane) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("kind", Keys.word(plane.kind()));
        if (Double.compare(plane.tip(), 0) != 0) {
            Angles.put(node, "tip", plane.tip());
        }
        if (Double.compare(plane.swivel(), 0) != 0) {
            Angles.put(node, "swivel", plane.swivel());
        }
        return node;
    }

    static Pairing read(Keys keys) {
        Part left = part(keys.object("left"), Side.LEFT);
        Part right = part(keys.object("right"), Side.RIGHT);
        double ahead = keys.number("timing_cycles", 0, 1, "cycles", 0);
        Timing timing = keys.madeOf("timing_cycles", () -> new Timing(ahead));
        Direction direction = keys.word("direction", Direction.class, Direction.SAME);
        Sense sense = keys.word("sense", Sense.class, Sense.CLOCKWISE);
        OptionalDouble tempo = keys.maybe("tempo_cycles_per_min", 1, 600, "a minute");
        Facing facing = keys.maybeObject("facing").map(PairingJson::facing).orElse(Facing.AUDIENCE);
        keys.done();
        return keys.madeAt(
                tempo.isPresent() ? keys.pointer("tempo_cycles_per_min") : keys.pointer(),
                () -> new Pairing(left, right, timing, direction, sense, tempo, facing));
    }

    private static Facing facing(Keys keys) {
        int from = keys.has("from_deg") ? quarters(keys, "from_deg", 0, 3) : 0;
        List<Facing.Turn> turns = new ArrayList<>();
        for (Keys.Item item : keys.items("turns", 0, MOST_TURNS)) {
            turns.add(turn(item.keys()));
        }
        keys.done();
        return keys.made(() -> new Facing(from, turns));
    }

    private static int quarters(Keys keys, String key, int least, int most) {
        int degrees = keys.whole(key, 90 * least, 90 * most);
        if (degrees % 90 != 0) {
            throw keys.error(key, "is " + degrees + "°", "give quarter turns: 90, 180, -90, ...");
        }
        return degrees / 90;
    }

    private static Facing.Turn turn(Keys keys) {
        double begins = keys.number("begins_cycles", 0, 1, "cycles");
        double takes = keys.number("takes_cycles", 0.01, 1, "cycles");
        int quarters = quarters(keys, "turn_deg", -4, 4);
        keys.done();
        return keys.made(() -> new Facing.Turn(begins, takes, quarters));
    }

    private static Part part(Keys keys, Side side) {
        Motion motion = motion(keys);
        Tether tether = Tether.of(keys.positive("tether_m", 5, "m"));
        Plane plane =
                keys.maybeObject("plane")
                        .map(PairingJson::plane)
                        .orElseGet(
                                () ->
                                        motion.weave()
                                                .map(w -> new Plane(w.between().plane(), 0, 0))
                                                .orElse(Plane.WALL));
        PlaneTurn turn =
                keys.maybeObject("plane_turn").map(PairingJson::planeTurn).orElse(PlaneTurn.NONE);
        Vector3D centre =
                keys.has("centre_m")
                        ? centre(keys.items("centre_m", 3, 3))
                        : Place.usual(side, plane, motion).centre();
        int cycles = keys.whole("cycles", 1, 24, 1);
        keys.done();
        return keys.made(() -> new Part(motion, tether, new Place(plane, turn, centre), cycles));
    }

    static Motion motion(Keys keys) {
        HandPath path = HandPathJson.read(keys.object("hand"));
        SpinLaw spin = SpinJson.read(keys.object("spin"));
        Optional<Weave> weave = keys.maybeObject("weave").map(PairingJson::weave);
        return weave.isEmpty()
                ? new Motion(path, spin)
                : keys.madeOf("weave", () -> new Motion(path, spin, weave));
    }

    static ObjectNode write(Weave weave) {
        return JsonNodeFactory.instance
                .objectNode()
                .put("between", Keys.word(weave.between()))
                .put("own_beats", weave.own())
                .put("across_beats", weave.across())
                .put("out_m", weave.out());
    }

    private static Weave weave(Keys keys) {
        Weave.Between between = keys.word("between", Weave.Between.class);
        int own = keys.whole("own_beats", 1, Weave.MOST_BEATS);
        int across = keys.whole("across_beats", 1, Weave.MOST_BEATS);
        double out = keys.number("out_m", 0, 1, "m");
        keys.done();
        return keys.made(() -> new Weave(between, own, across, out));
    }

    private static Plane plane(Keys keys) {
        Plane.Kind kind = keys.word("kind", Plane.Kind.class);
        double tip = keys.angle("tip", 0);
        double swivel = keys.angle("swivel", 0);
        keys.done();
        return keys.made(() -> new Plane(kind, tip, swivel));
    }

    private static PlaneTurn planeTurn(Keys keys) {
        int turns = keys.whole("turns", -12, 12);
        PlaneTurn.Axis axis = keys.word("axis", PlaneTurn.Axis.class, PlaneTurn.Axis.UPRIGHT);
        PlaneTurn.Carries carries =
                keys.word("carries", PlaneTurn.Carries.class, PlaneTurn.Carries.FIGURE);
        keys.done();
        return new PlaneTurn(turns, axis, carries);
    }

    private static Vector3D centre(List<Keys.Item> items) {
        return new Vector3D(
                items.get(0).number(-10, 10, "m"),
                items.get(1).number(-10, 10, "m"),
                items.get(2).number(-10, 10, "m"));
    }
}
