package deferent.record;

import deferent.motion.pairing.Form;
import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.Measure;
import java.util.ArrayList;
import java.util.List;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Hand paths that a few named sizes make, as JSON, and its schema: both follow from their form. */
final class FormJson {
    private FormJson() {}

    static ObjectNode write(ObjectNode node, Form.Sized path) {
        node.put("path", path.form().key());
        for (int i = 0; i < path.sizes().size(); i++) {
            Measure size = path.form().sizes().get(i);
            double value = path.sizes().get(i);
            switch (size.unit()) {
                case LENGTH -> node.put(size.key() + "_m", value);
                case ANGLE -> Angles.put(node, size.key(), value);
                case WHOLE -> node.put(size.key(), (int) value);
                case SHARE -> node.put(size.key(), value);
            }
        }
        return node;
    }

    static HandPath read(Form form, Keys keys) {
        List<Double> sizes = new ArrayList<>();
        String refused = keys.pointer();
        for (Measure size : form.sizes()) {
            sizes.add(
                    switch (size.unit()) {
                        case LENGTH -> keys.positive(size.key() + "_m", size.most(), "m");
                        case WHOLE ->
                                (double)
                                        keys.whole(
                                                size.key(), (int) size.least(), (int) size.most());
                        case SHARE ->
                                keys.number(
                                        size.key(),
                                        size.least(),
                                        size.most(),
                                        "of the cycle",
                                        size.unsaid());
                        case ANGLE ->
                                size.must()
                                        ? keys.angle(size.key())
                                        : keys.angle(size.key(), size.unsaid());
                    });
            // Other sizes are within their bounds when they have been read.
            if (size.bounded() && size.unit() == Measure.Unit.ANGLE) {
                refused = keys.pointerOfAngle(size.key());
            }
        }
        return keys.madeAt(refused, () -> form.made().apply(sizes));
    }

    /** Adds every form to the schema of a hand path. */
    static void describe(ObjectNode hand) {
        ArrayNode paths = (ArrayNode) hand.at("/properties/path/enum");
        for (Form form : HandPath.forms()) {
            paths.add(form.key());
            ObjectNode one = ((ArrayNode) hand.get("oneOf")).addObject();
            if (!form.means().isEmpty()) {
                one.put("description", form.means() + ".");
            }
            ObjectNode keys = one.putObject("properties");
            keys.putObject("path").put("const", form.key());
            ArrayNode required = one.putArray("required");
            ArrayNode angles = one.putArray("allOf");
            form.sizes().forEach(size -> describe(size, keys, required, angles));
            if (angles.isEmpty()) {
                one.remove("allOf");
            }
            one.putObject("patternProperties").putObject("^x_").put("$ref", "#/$defs/extra");
            one.put("additionalProperties", false);
        }
    }

    private static void describe(
            Measure size, ObjectNode keys, ArrayNode required, ArrayNode angles) {
        switch (size.unit()) {
            case LENGTH -> {
                bounds(keys, size.key() + "_m", size.least(), size.most());
                required.add(size.key() + "_m");
            }
            case WHOLE -> {
                keys.putObject(size.key())
                        .put("type", "integer")
                        .put("minimum", (int) size.least())
                        .put("maximum", (int) size.most());
                required.add(size.key());
            }
            case SHARE ->
                    keys.putObject(size.key())
                            .put("type", "number")
                            .put("minimum", size.least())
                            .put("maximum", size.most());
            case ANGLE -> {
                String degrees = size.key() + "_deg";
                String radians = size.key() + "_rad";
                if (size.bounded()) {
                    bounds(
                            keys,
                            degrees,
                            Math.toDegrees(size.least()),
                            Math.toDegrees(size.most()));
                    bounds(keys, radians, size.least(), size.most());
                } else {
                    keys.putObject(degrees).put("$ref", "#/$defs/degrees");
                    keys.putObject(radians).put("$ref", "#/$defs/radians");
                }
                angles.add(size.must() ? one(degrees, radians) : notBoth(degrees, radians));
            }
        }
    }

    private static void bounds(ObjectNode keys, String key, double above, double most) {
        keys.putObject(key)
                .put("type", "number")
                .put("exclusiveMinimum", above)
                .put("maximum", most);
    }

    private static ObjectNode one(String degrees, String radians) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        ArrayNode either = node.putArray("oneOf");
        either.addObject().putArray("required").add(degrees);
        either.addObject().putArray("required").add(radians);
        return node;
    }

    private static ObjectNode notBoth(String degrees, String radians) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.putObject("not").putArray("required").add(degrees).add(radians);
        return node;
    }
}
