package deferent.page.web;

import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import deferent.page.Item;
import deferent.page.Scene;
import deferent.reading.body.Person;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * A scene as the browser's stage takes it: the moving points as packed floats, the items by what
 * they are drawn through.
 */
public final class SceneJson {
    private SceneJson() {}

    public static ObjectNode of(Scene scene) {
        return of(scene, Integer.MAX_VALUE);
    }

    /**
     * With the performer at no more instants than are needed.
     *
     * @param enough so many instants do for the performer, 1 or more
     */
    static ObjectNode of(Scene scene, int enough) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("period_s", scene.period());
        node.put("count", scene.count());
        node.put("periodic", scene.trace().periodic());
        node.set("samples", samples(scene.trace(), scene.count(), List.of(Side.values())));
        ArrayNode items = node.putArray("items");
        for (Item item : scene.items()) {
            item(items.addObject(), item, enough);
        }
        return node;
    }

    /** The moving points of some sides of a trace. */
    public static ObjectNode samples(Trace trace, int count, List<Side> sides) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        Samples samples = trace.samples(count);
        for (Side side : sides) {
            ObjectNode both = node.putObject(side.word());
            both.put("hand", packed(samples.hand(side)));
            both.put("head", packed(samples.head(side)));
        }
        return node;
    }

    private static void item(ObjectNode node, Item item, int enough) {
        node.put("id", item.id());
        node.put("role", item.role().key());
        if (item.side().isPresent()) {
            node.put("side", item.side().get().word());
        } else {
            node.putNull("side");
        }
        node.put("name", item.name());
        Item.Shape form = item.form();
        if (form instanceof Item.Shape.Run run) {
            node.put("form", "track");
            node.put("track", run.track().key());
            node.put("closed", run.closed());
        } else if (form instanceof Item.Shape.Spot spot) {
            node.put("form", "point");
            node.put("track", spot.track().key());
        } else if (form instanceof Item.Shape.Span span) {
            node.put("form", "segment");
            node.put("from", span.from().key());
            node.put("to", span.to().key());
        } else if (form instanceof Item.Shape.Fixed fixed) {
            node.put("form", "fixed");
            ArrayNode points = node.putArray("points");
            for (Vector3D p : fixed.points()) {
                point(points.addArray(), p);
            }
            node.put("closed", fixed.closed());
        } else if (form instanceof Item.Shape.Body body) {
            node.put("form", "person");
            person(node, body.person(), enough);
        }
    }

    /** Balls that never move as points, the others packed over so many instants. */
    private static void person(ObjectNode node, Person person, int enough) {
        int every = every(person.count(), enough);
        int count = person.count() / every;
        node.put("instants", count);
        ArrayNode balls = node.putArray("balls");
        for (Person.Ball ball : person.balls()) {
            ObjectNode one = balls.addObject();
            one.put("radius_m", rounded(ball.radius()));
            if (ball.at().size() == 1) {
                point(one.putArray("at"), ball.at(0));
            } else {
                double[] xyz = new double[3 * count];
                for (int i = 0; i < count; i++) {
                    System.arraycopy(ball.at(i * every).toArray(), 0, xyz, 3 * i, 3);
                }
                one.put("moves", packed(xyz));
            }
        }
        ArrayNode limbs = node.putArray("limbs");
        for (Person.Limb limb : person.limbs()) {
            ObjectNode one = limbs.addObject();
            one.put("group", limb.group().name().toLowerCase(Locale.ROOT));
            limb.balls().forEach(one.putArray("balls")::add);
        }
        ObjectNode stretched = node.putObject("stretched");
        for (Side side : Side.values()) {
            stretched.put(side.word(), person.stretched(side));
        }
    }

    /** How far apart instants can be, evenly, and still be enough. */
    private static int every(int count, int enough) {
        int every = Math.max(1, count / enough);
        while (count % every != 0) {
            every--;
        }
        return every;
    }

    /** Metres, to a hundredth of a millimetre. */
    public static void point(ArrayNode into, Vector3D p) {
        into.add(rounded(p.getX())).add(rounded(p.getY())).add(rounded(p.getZ()));
    }

    /** To a hundredth of a millimetre. */
    public static double rounded(double metres) {
        return Math.rint(metres * 1e5) / 1e5 + 0.0;
    }

    /** Little-endian floats, base64. */
    static String packed(double[] xyz) {
        ByteBuffer bytes = ByteBuffer.allocate(4 * xyz.length).order(ByteOrder.LITTLE_ENDIAN);
        for (double value : xyz) {
            bytes.putFloat((float) value);
        }
        return Base64.getEncoder().encodeToString(bytes.array());
    }
}
