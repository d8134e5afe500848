package deferent.studio;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import tools.jackson.databind.JsonNode;

/**
 * One object of a question, read key by key: each says what it must be, and keys that nobody read
 * are refused at the end, so that a slip of the pen does not pass in silence.
 */
final class Question {
    private final JsonNode node;
    private final String path;
    private final Set<String> known = new HashSet<>();

    private Question(JsonNode node, String path) {
        this.node = node;
        this.path = path;
    }

    static Question of(JsonNode node, String where) {
        if (!node.isObject()) {
            throw new BadRequest(400, "is no JSON object", where, "send {...}");
        }
        return new Question(node, "");
    }

    boolean has(String key) {
        known.add(key);
        return node.has(key) && !node.get(key).isNull();
    }

    /** Whether the key is there and null, which is something else than not being there. */
    boolean isNull(String key) {
        known.add(key);
        return node.has(key) && node.get(key).isNull();
    }

    JsonNode node(String key) {
        if (!has(key)) {
            throw new BadRequest(400, "is missing", path + key, "give it");
        }
        return node.get(key);
    }

    String text(String key) {
        JsonNode value = node(key);
        if (!value.isString()) {
            throw new BadRequest(400, "is no text", path + key, "give it in quotes");
        }
        if (value.asString().length() > 2000) {
            throw new BadRequest(400, "is too long", path + key, "give at most 2000 characters");
        }
        return value.asString();
    }

    Optional<String> maybeText(String key) {
        return has(key) ? Optional.of(text(key)) : Optional.empty();
    }

    /** One of some words; the first where nothing is said. */
    String word(String key, List<String> words) {
        if (!has(key)) {
            return words.get(0);
        }
        String said = text(key);
        if (!words.contains(said)) {
            throw new BadRequest(
                    400, "is \"" + said + "\"", path + key, "say " + String.join(" or ", words));
        }
        return said;
    }

    boolean yes(String key, boolean unsaid) {
        if (!has(key)) {
            return unsaid;
        }
        if (!node(key).isBoolean()) {
            throw new BadRequest(400, "is neither true nor false", path + key, "say true or false");
        }
        return node(key).asBoolean();
    }

    double number(String key, double least, double most) {
        JsonNode value = node(key);
        double number = value.isNumber() ? value.asDouble() : Double.NaN;
        if (!(number >= least && number <= most)) {
            throw new BadRequest(
                    400,
                    value.isNumber() ? "is " + value.asString() : "is no number",
                    path + key,
                    "give a number from " + plain(least) + " to " + plain(most));
        }
        return number;
    }

    OptionalDouble maybeNumber(String key, double least, double most) {
        return has(key) ? OptionalDouble.of(number(key, least, most)) : OptionalDouble.empty();
    }

    int whole(String key, int least, int most, int unsaid) {
        if (!has(key)) {
            return unsaid;
        }
        double number = number(key, least, most);
        if (number != Math.rint(number)) {
            throw new BadRequest(400, "is " + number, path + key, "give a whole number");
        }
        return (int) number;
    }

    /** A point of the frame, metres. */
    Vector3D point(String key) {
        JsonNode value = node(key);
        if (!value.isArray() || value.size() != 3) {
            throw new BadRequest(400, "is no point", path + key, "give [x, y, z] in metres");
        }
        double[] xyz = new double[3];
        for (int i = 0; i < 3; i++) {
            JsonNode part = value.get(i);
            if (!part.isNumber() || !(Math.abs(part.asDouble()) <= 100)) {
                throw new BadRequest(
                        400,
                        "is no point nearby",
                        path + key,
                        "give [x, y, z] in metres, within 100");
            }
            xyz[i] = part.asDouble();
        }
        return new Vector3D(xyz);
    }

    Optional<Vector3D> maybePoint(String key) {
        return has(key) ? Optional.of(point(key)) : Optional.empty();
    }

    Optional<Question> maybeObject(String key) {
        return has(key) ? Optional.of(inner(node(key), path + key)) : Optional.empty();
    }

    List<Question> objects(String key, int most) {
        List<Question> all = new ArrayList<>();
        if (has(key)) {
            JsonNode list = node(key);
            if (!list.isArray() || list.size() > most) {
                throw new BadRequest(
                        400, "is no list of at most " + most, path + key, "give [{...}, ...]");
            }
            for (int i = 0; i < list.size(); i++) {
                all.add(inner(list.get(i), path + key + "[" + i + "]"));
            }
        }
        return all;
    }

    Optional<List<String>> maybeTexts(String key, int most) {
        if (!has(key)) {
            return Optional.empty();
        }
        JsonNode list = node(key);
        List<String> all = new ArrayList<>();
        if (!list.isArray() || list.size() > most) {
            throw new BadRequest(
                    400, "is no list of at most " + most, path + key, "give [\"...\"]");
        }
        for (JsonNode item : list) {
            all.add(item.asString());
        }
        return Optional.of(List.copyOf(all));
    }

    private static Question inner(JsonNode value, String at) {
        if (!value.isObject()) {
            throw new BadRequest(400, "is no JSON object", at, "give {...}");
        }
        return new Question(value, at + ".");
    }

    /** Refuses whatever key was not asked for. */
    void done() {
        for (String key : node.propertyNames()) {
            if (!known.contains(key)) {
                throw new BadRequest(
                        400,
                        "is no known key",
                        path + key,
                        "use " + String.join(", ", known.stream().sorted().toList()));
            }
        }
    }

    String where(String key) {
        return path + key;
    }

    private static String plain(double number) {
        return number == Math.rint(number) && Math.abs(number) < 1e15
                ? Long.toString((long) number)
                : Double.toString(number);
    }
}
