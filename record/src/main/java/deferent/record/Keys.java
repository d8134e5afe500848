package deferent.record;

import deferent.motion.pairing.Plain;
import deferent.motion.pairing.Refusal;
import deferent.record.number.Written;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Supplier;
import tools.jackson.databind.JsonNode;

/**
 * One JSON object being read. Each key is asked for by name and kind; {@link #done()} then refuses
 * the keys that nobody asked for. Every error carries the key's JSON pointer.
 */
public final class Keys {
    private final JsonNode node;
    private final String pointer;
    private final Set<String> known = new LinkedHashSet<>();
    private final Optional<Map<String, String>> extras;

    /** An object whose unknown keys are all refused. */
    public static Keys closed(JsonNode node, String pointer) {
        return new Keys(node, pointer, Optional.empty());
    }

    /** An object that may hold keys of other programs, and so may the objects in it. */
    static Keys open(JsonNode node, String pointer) {
        return new Keys(node, pointer, Optional.of(new LinkedHashMap<>()));
    }

    private Keys(JsonNode node, String pointer, Optional<Map<String, String>> extras) {
        if (!node.isObject()) {
            throw DocumentError.at(pointer, "is " + kind(node), "give an object with keys in { }");
        }
        this.node = node;
        this.pointer = pointer;
        this.extras = extras;
    }

    /**
     * What other programs' keys were found in it, and in the objects in it, once those are done.
     */
    Extras extras() {
        Map<String, String> inside = new LinkedHashMap<>();
        extras.orElse(Map.of())
                .forEach((at, text) -> inside.put(at.substring(pointer.length()), text));
        return made(() -> new Extras(inside));
    }

    String pointer() {
        return pointer;
    }

    public String pointer(String key) {
        return pointer + "/" + key.replace("~", "~0").replace("/", "~1");
    }

    public boolean has(String key) {
        known.add(key);
        return node.has(key);
    }

    DocumentError error(String key, String what, String right) {
        return DocumentError.at(pointer(key), what, right);
    }

    /** What {@code make} makes, a refusal turned into an error at this object. */
    <T> T made(Supplier<T> make) {
        return made(pointer, make);
    }

    /** What {@code make} makes, a refusal turned into an error at {@code key}. */
    <T> T madeOf(String key, Supplier<T> make) {
        return made(pointer(key), make);
    }

    /** What {@code make} makes, a refusal turned into an error at a pointer. */
    <T> T madeAt(String at, Supplier<T> make) {
        return made(at, make);
    }

    private static <T> T made(String at, Supplier<T> make) {
        try {
            return make.get();
        } catch (Refusal told) {
            // A document is in metres and in degrees, unless the key says radians.
            Refusal refusal = at.endsWith("_rad") ? told.in("radians", 1) : told;
            throw DocumentError.at(at, refusal.where() + " " + refusal.what(), refusal.right());
        }
    }

    private JsonNode need(String key, String wanted) {
        if (!has(key)) {
            List<String> there = new ArrayList<>(node.propertyNames());
            List<String> near = Nearest.to(key, there);
            throw DocumentError.at(
                    pointer,
                    "has no \"" + key + "\"",
                    "give it "
                            + wanted
                            + (near.isEmpty() ? "" : " (is \"" + near.get(0) + "\" meant for it?)"),
                    near);
        }
        return node.get(key);
    }

    /** A number from least to most. */
    public double number(String key, double least, double most, String unit) {
        JsonNode value = need(key, "a number");
        if (!value.isNumber()) {
            throw error(key, "is " + kind(value), "give a number" + spaced(unit));
        }
        double number = value.doubleValue();
        if (!(number >= least && number <= most)) {
            throw error(
                    key,
                    "is " + Plain.number(number) + spaced(unit),
                    "give from "
                            + Plain.number(least)
                            + " to "
                            + Plain.number(most)
                            + spaced(unit));
        }
        return number;
    }

    double number(String key, double least, double most, String unit, double unsaid) {
        return has(key) ? number(key, least, most, unit) : unsaid;
    }

    OptionalDouble maybe(String key, double least, double most, String unit) {
        return has(key)
                ? OptionalDouble.of(number(key, least, most, unit))
                : OptionalDouble.empty();
    }

    /** A number above zero. */
    double positive(String key, double most, String unit) {
        double number = number(key, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, unit);
        if (!(number > 0 && number <= most)) {
            throw error(
                    key,
                    "is " + Plain.number(number) + spaced(unit),
                    "give more than 0 and at most " + Plain.number(most) + spaced(unit));
        }
        return number;
    }

    double positive(String key, double most, String unit, double unsaid) {
        return has(key) ? positive(key, most, unit) : unsaid;
    }

    public boolean flag(String key, boolean unsaid) {
        if (!has(key)) {
            return unsaid;
        }
        JsonNode value = node.get(key);
        if (!value.isBoolean()) {
            throw error(key, "is " + kind(value), "give true or false");
        }
        return value.booleanValue();
    }

    public int whole(String key, int least, int most) {
        double number = number(key, least, most, "");
        if (number != Math.rint(number)) {
            throw error(key, "is " + Plain.number(number), "give a whole number");
        }
        return (int) number;
    }

    int whole(String key, int least, int most, int unsaid) {
        return has(key) ? whole(key, least, most) : unsaid;
    }

    /**
     * An angle in radians, from {@code stem_deg} or {@code stem_rad}. Degrees are what a hand
     * writes; radians stand where degrees would not give the same number back.
     */
    double angle(String stem) {
        String degrees = stem + "_deg";
        String radians = stem + "_rad";
        if (has(degrees) && has(radians)) {
            throw error(radians, "says the same as \"" + degrees + "\"", "keep one of the two");
        }
        return node.has(radians)
                ? number(radians, -Angles.MOST, Angles.MOST, "radians")
                : Angles.radians(
                        number(
                                degrees,
                                -Math.toDegrees(Angles.MOST),
                                Math.toDegrees(Angles.MOST),
                                "degrees"));
    }

    double angle(String stem, double unsaid) {
        boolean degrees = has(stem + "_deg");
        boolean radians = has(stem + "_rad");
        return degrees || radians ? angle(stem) : unsaid;
    }

    String pointerOfAngle(String stem) {
        return pointer(node.has(stem + "_rad") ? stem + "_rad" : stem + "_deg");
    }

    /** A text of any characters. */
    public String plainText(String key, int most) {
        JsonNode value = need(key, "a text in quotes");
        if (!value.isString()) {
            throw error(key, "is " + kind(value), "give a text in quotes");
        }
        if (value.stringValue().length() > most) {
            throw error(key, "is too long", "give at most " + most + " characters");
        }
        return value.stringValue();
    }

    /** What stands there, for somebody else to read. */
    public JsonNode tree(String key) {
        return need(key, "something");
    }

    String text(String key, int most) {
        JsonNode value = need(key, "a text in quotes");
        if (!value.isString()) {
            throw error(key, "is " + kind(value), "give a text in quotes");
        }
        return madeOf(key, () -> Wording.line(value.stringValue(), most, "text"));
    }

    Optional<String> maybeText(String key, int most) {
        return has(key) ? Optional.of(text(key, most)) : Optional.empty();
    }

    String note(String key) {
        if (!has(key)) {
            return "";
        }
        JsonNode value = node.get(key);
        if (!value.isString()) {
            throw error(key, "is " + kind(value), "give a text in quotes");
        }
        return madeOf(key, () -> Wording.note(value.stringValue()));
    }

    /** One of a few words; an enum's constants are spelt lower case, with hyphens. */
    public <E extends Enum<E>> E word(String key, Class<E> of) {
        List<String> words = new ArrayList<>();
        for (E constant : of.getEnumConstants()) {
            words.add(word(constant));
        }
        return of.getEnumConstants()[words.indexOf(word(key, words))];
    }

    <E extends Enum<E>> E word(String key, Class<E> of, E unsaid) {
        return has(key) ? word(key, of) : unsaid;
    }

    /** How a constant is spelt. */
    public static String word(Enum<?> constant) {
        return Written.word(constant);
    }

    public String word(String key, List<String> words) {
        String list = "\"" + String.join("\", \"", words) + "\"";
        JsonNode value = need(key, "one of " + list);
        if (!value.isString() || !words.contains(value.stringValue())) {
            List<String> near =
                    value.isString() ? Nearest.to(value.stringValue(), words) : List.of();
            throw DocumentError.at(
                    pointer(key),
                    "is " + (value.isString() ? "\"" + clip(value) + "\"" : kind(value)),
                    "give one of " + list + meant(near),
                    near);
        }
        return value.stringValue();
    }

    public List<String> texts(String key, int many, int most) {
        List<String> found = new ArrayList<>();
        for (Item item : items(key, 0, many)) {
            if (!item.node().isString()) {
                throw DocumentError.at(
                        item.pointer(), "is " + kind(item.node()), "give a text in quotes");
            }
            found.add(
                    made(
                            item.pointer(),
                            () -> Wording.line(item.node().stringValue(), most, "text")));
        }
        return found;
    }

    /** One entry of an array. */
    public record Item(JsonNode node, String pointer) {
        /** A document of its own. */
        Keys open() {
            return Keys.open(node, pointer);
        }

        public Keys keys() {
            return closed(node, pointer);
        }

        public double number(double least, double most, String unit) {
            if (!node.isNumber() || !(node.doubleValue() >= least && node.doubleValue() <= most)) {
                throw DocumentError.at(
                        pointer,
                        "is "
                                + (node.isNumber()
                                        ? Plain.number(node.doubleValue()) + spaced(unit)
                                        : kind(node)),
                        "give a number from "
                                + Plain.number(least)
                                + " to "
                                + Plain.number(most)
                                + spaced(unit));
            }
            return node.doubleValue();
        }
    }

    /** The entries of an array; none where the key is absent and {@code least} is 0. */
    public List<Item> items(String key, int least, int most) {
        if (least == 0 && !has(key)) {
            return List.of();
        }
        JsonNode value = need(key, "a list in [ ]");
        if (!value.isArray()) {
            throw error(key, "is " + kind(value), "give a list in [ ]");
        }
        return items(value, pointer(key), least, most);
    }

    static List<Item> items(JsonNode array, String pointer, int least, int most) {
        if (!array.isArray()) {
            throw DocumentError.at(pointer, "is " + kind(array), "give a list in [ ]");
        }
        if (array.size() < least || array.size() > most) {
            throw DocumentError.at(
                    pointer,
                    "has " + array.size() + " entries",
                    least == most ? "give " + least : "give " + least + " to " + most);
        }
        List<Item> found = new ArrayList<>();
        for (int i = 0; i < array.size(); i++) {
            found.add(new Item(array.get(i), pointer + "/" + i));
        }
        return found;
    }

    public Keys object(String key) {
        return new Keys(need(key, "an object with keys in { }"), pointer(key), extras);
    }

    Optional<Keys> maybeObject(String key) {
        return has(key) ? Optional.of(object(key)) : Optional.empty();
    }

    /** Keeps other programs' keys, and refuses the rest of those that were not asked for. */
    public void done() {
        for (String key : node.propertyNames()) {
            if (extras.isPresent() && key.startsWith(Extras.PREFIX)) {
                String text = madeOf(key, () -> Extras.text(node.get(key)));
                extras.get().put(pointer(key), text);
            } else if (!known.contains(key)) {
                List<String> near = Nearest.to(key, known);
                throw DocumentError.ofKey(
                        pointer(key),
                        "is no key known here",
                        near.isEmpty()
                                ? "give one of " + String.join(", ", known)
                                : "is \"" + near.get(0) + "\" meant?",
                        near);
            }
        }
    }

    private static String meant(List<String> near) {
        return near.isEmpty() ? "" : "; is \"" + near.get(0) + "\" meant?";
    }

    private static String clip(JsonNode text) {
        String value = text.stringValue();
        return value.length() > 40 ? value.substring(0, 40) + "…" : value;
    }

    private static String spaced(String unit) {
        return unit.isEmpty() ? "" : " " + unit;
    }

    static String kind(JsonNode node) {
        return switch (node.getNodeType()) {
            case OBJECT -> "an object";
            case ARRAY -> "a list";
            case STRING -> "a text";
            case NUMBER -> "a number";
            case BOOLEAN -> "true or false";
            case NULL -> "null";
            default -> "missing";
        };
    }
}
