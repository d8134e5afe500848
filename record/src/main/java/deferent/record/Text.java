package deferent.record;

import java.util.Optional;
import java.util.function.Function;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * JSON text: read into a tree within bounds, and, when something is wrong in the tree, read once
 * more to find the line and column of a key. The good case pays nothing for the bad one.
 */
final class Text {
    private static final JsonFactory FACTORY =
            JsonFactory.builder()
                    .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                    .streamReadConstraints(
                            StreamReadConstraints.builder()
                                    .maxNestingDepth(32)
                                    .maxNumberLength(100)
                                    .maxNameLength(200)
                                    .maxStringLength(100_000)
                                    .maxDocumentLength(PatternJson.MOST_BUNDLE_CHARACTERS)
                                    .build())
                    .build();
    private static final JsonMapper MAPPER = new JsonMapper(FACTORY);

    private Text() {}

    static JsonNode tree(String text, int most) {
        if (text.length() > most) {
            throw DocumentError.at(
                    "", "has " + text.length() + " characters", "give at most " + most);
        }
        String body = text.startsWith("\uFEFF") ? text.substring(1) : text;
        if (body.isBlank()) {
            throw DocumentError.at("", "is empty", "give a document in { }");
        }
        try {
            return MAPPER.readTree(body);
        } catch (JacksonException broken) {
            TokenStreamLocation at = broken.getLocation();
            int line = at == null ? 0 : at.getLineNr();
            int column = at == null ? 0 : at.getColumnNr();
            String what = broken.getOriginalMessage();
            DocumentError error =
                    DocumentError.at(
                            "",
                            "is not JSON: " + firstLine(what),
                            what.contains("Duplicate")
                                    ? "keep one of the two keys"
                                    : "look for a missing comma, quote or bracket here or just"
                                            + " before");
            throw error.placed(line, column, underlined(body, line, column, 1));
        }
    }

    /**
     * What stands under a key of the outermost object; empty where that is no text, and where what
     * stands before it is no JSON.
     */
    static Optional<String> outermost(String text, String key) {
        return under(
                text,
                key,
                parser ->
                        parser.currentToken() == JsonToken.VALUE_STRING
                                ? Optional.of(parser.getString())
                                : Optional.empty());
    }

    /** Whether a list stands under a key of the outermost object. */
    static boolean lists(String text, String key) {
        return under(
                        text,
                        key,
                        parser ->
                                parser.currentToken() == JsonToken.START_ARRAY
                                        ? Optional.of(true)
                                        : Optional.empty())
                .isPresent();
    }

    private static <T> Optional<T> under(
            String text, String key, Function<JsonParser, Optional<T>> wanted) {
        String body = text.startsWith("\uFEFF") ? text.substring(1) : text;
        try (JsonParser parser = FACTORY.createParser(ObjectReadContext.empty(), body)) {
            if (parser.nextToken() != JsonToken.START_OBJECT) {
                return Optional.empty();
            }
            while (parser.nextToken() == JsonToken.PROPERTY_NAME) {
                boolean meant = parser.currentName().equals(key);
                parser.nextToken();
                Optional<T> found = meant ? wanted.apply(parser) : Optional.empty();
                if (found.isPresent()) {
                    return found;
                }
                parser.skipChildren();
            }
        } catch (JacksonException broken) {
            // Whoever reads it as a whole tells what is wrong with it.
        }
        return Optional.empty();
    }

    private static String firstLine(String message) {
        String line = message.lines().findFirst().orElse("");
        return line.endsWith(".") ? line.substring(0, line.length() - 1) : line;
    }

    /** The same error with line, column and the line itself, found by its pointer. */
    static DocumentError located(DocumentError error, String text) {
        if (error.line() > 0) {
            return error;
        }
        String body = text.startsWith("\uFEFF") ? text.substring(1) : text;
        try (JsonParser parser = FACTORY.createParser(ObjectReadContext.empty(), body)) {
            TokenStreamLocation at = TokenStreamLocation.NA;
            int width = 1;
            boolean found = false;
            for (JsonToken token = parser.nextToken();
                    token != null && !found;
                    token = parser.nextToken()) {
                String pointer = parser.streamReadContext().pathAsPointer().toString();
                if (pointer.equals(error.pointer())) {
                    boolean key = token == JsonToken.PROPERTY_NAME;
                    if (key || token.isScalarValue() || at.getLineNr() < 1) {
                        at = parser.currentTokenLocation();
                        width = width(parser, token);
                    }
                    found = !key || error.ofKey();
                }
            }
            return at.getLineNr() < 1
                    ? error
                    : error.placed(
                            at.getLineNr(),
                            at.getColumnNr(),
                            underlined(body, at.getLineNr(), at.getColumnNr(), width));
        } catch (JacksonException broken) {
            return error;
        }
    }

    private static int width(JsonParser parser, JsonToken token) {
        return switch (token) {
            case PROPERTY_NAME, VALUE_STRING -> parser.getString().length() + 2;
            case START_OBJECT, START_ARRAY, END_OBJECT, END_ARRAY -> 1;
            default -> parser.getString().length();
        };
    }

    private static String underlined(String body, int line, int column, int width) {
        if (line < 1) {
            return "";
        }
        String text = body.lines().skip(line - 1L).findFirst().orElse("");
        int from = Math.max(0, Math.min(column - 1, text.length()));
        int start = Math.max(0, from - 60);
        String shown = text.substring(start, Math.min(text.length(), start + 100));
        String number = "%5d | ".formatted(line);
        int marks = Math.max(1, Math.min(width, shown.length() - (from - start)));
        return number
                + shown.replace('\t', ' ')
                + "\n"
                + " ".repeat(number.length() - 2)
                + "| "
                + " ".repeat(from - start)
                + "^".repeat(marks);
    }
}
