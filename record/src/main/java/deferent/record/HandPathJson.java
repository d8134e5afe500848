package deferent.record;

import deferent.motion.pairing.Drawn;
import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.Series;
import java.util.ArrayList;
import java.util.List;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Hand paths as JSON. A series is written as the circle, line or ellipse it is where that reads
 * back exactly, else by its terms; a path of a few named sizes as its form says.
 */
final class HandPathJson {
    private static final List<String> WORDS =
            List.of("still", "circle", "line", "ellipse", "series", "drawn", "svg");
    private static final double MOST = 10;

    private HandPathJson() {}

    static ObjectNode write(HandPath path) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        return path.match(
                sized -> FormJson.write(node, sized),
                summed -> writeSeries(node, summed),
                drawn -> writeDrawn(node, drawn));
    }

    private static ObjectNode writeDrawn(ObjectNode node, Drawn drawn) {
        node.put("path", "drawn");
        ArrayNode pieces = node.putArray("pieces_m");
        for (Drawn.Cubic c : drawn.pieces()) {
            ArrayNode piece = pieces.addArray();
            for (double number :
                    new double[] {c.u0(), c.v0(), c.u1(), c.v1(), c.u2(), c.v2(), c.u3(), c.v3()}) {
                piece.add(number);
            }
        }
        return node;
    }

    private static ObjectNode writeSeries(ObjectNode node, Series series) {
        List<Series.Term> terms = series.terms();
        if (terms.isEmpty()) {
            return node.put("path", "still");
        }
        if (terms.size() == 1 && terms.get(0).k() == 1) {
            node.put("path", "circle").put("radius_m", terms.get(0).radius());
            if (Double.compare(terms.get(0).angle(), 0) != 0) {
                Angles.put(node, "start", terms.get(0).angle());
            }
            return node;
        }
        if (series.elliptic()) {
            double tilt = terms.get(1).angle();
            double a = series.along();
            double b = series.across();
            if (Series.ellipse(a, b, tilt).equals(series)) {
                node.put("path", b == 0 ? "line" : "ellipse");
                if (b == 0) {
                    node.put("half_length_m", a);
                } else {
                    node.putArray("semi_axes_m").add(a).add(b);
                }
                Angles.put(node, "tilt", tilt);
                return node;
            }
        }
        node.put("path", "series");
        ArrayNode list = node.putArray("terms");
        for (Series.Term term : terms) {
            ObjectNode one = list.addObject().put("turns", term.k());
            one.put("radius_m", term.radius());
            Angles.put(one, "angle", term.angle());
        }
        return node;
    }

    static HandPath read(Keys keys) {
        List<String> words = new ArrayList<>(WORDS);
        HandPath.forms().forEach(form -> words.add(form.key()));
        String word = keys.word("path", words);
        HandPath path =
                switch (word) {
                    case "still" -> Series.STILL;
                    case "circle" -> circle(keys);
                    case "line" -> line(keys);
                    case "ellipse" -> ellipse(keys);
                    case "series" -> series(keys);
                    case "drawn" -> drawn(keys);
                    case "svg" -> svg(keys);
                    default ->
                            FormJson.read(
                                    HandPath.forms().get(words.indexOf(word) - WORDS.size()), keys);
                };
        keys.done();
        return path;
    }

    private static HandPath circle(Keys keys) {
        double radius = keys.positive("radius_m", MOST, "m");
        double start = keys.angle("start", 0);
        return keys.made(() -> new Series(List.of(new Series.Term(1, radius, start))));
    }

    private static HandPath line(Keys keys) {
        double half = keys.positive("half_length_m", MOST, "m");
        double tilt = keys.angle("tilt", 0);
        return keys.made(() -> Series.line(half, tilt));
    }

    private static HandPath ellipse(Keys keys) {
        List<Keys.Item> axes = keys.items("semi_axes_m", 2, 2);
        double a = axes.get(0).number(-MOST, MOST, "m");
        double b = axes.get(1).number(-MOST, MOST, "m");
        double tilt = keys.angle("tilt", 0);
        return keys.made(() -> Series.ellipse(a, b, tilt));
    }

    private static HandPath series(Keys keys) {
        List<Series.Term> terms = new ArrayList<>();
        for (Keys.Item item : keys.items("terms", 0, 48)) {
            Keys term = item.keys();
            int turns = term.whole("turns", -24, 24);
            double radius = term.number("radius_m", 0, MOST, "m");
            double angle = term.angle("angle", 0);
            term.done();
            terms.add(term.made(() -> new Series.Term(turns, radius, angle)));
        }
        return keys.madeOf("terms", () -> new Series(terms));
    }

    private static HandPath drawn(Keys keys) {
        List<Drawn.Cubic> pieces = new ArrayList<>();
        for (Keys.Item item : keys.items("pieces_m", 1, 400)) {
            double[] n =
                    Keys.items(item.node(), item.pointer(), 8, 8).stream()
                            .mapToDouble(one -> one.number(-MOST, MOST, "m"))
                            .toArray();
            pieces.add(new Drawn.Cubic(n[0], n[1], n[2], n[3], n[4], n[5], n[6], n[7]));
        }
        return keys.madeOf("pieces_m", () -> walked(new Drawn(pieces)));
    }

    private static HandPath svg(Keys keys) {
        String text = keys.text("d", SvgPath.MOST_CHARACTERS);
        double radius = keys.positive("radius_m", MOST, "m");
        return keys.madeOf("d", () -> SvgPath.parse(text, radius));
    }

    // A path of no length is refused when it is walked; ask now, where the key is known.
    private static Drawn walked(Drawn drawn) {
        drawn.course();
        return drawn;
    }
}
