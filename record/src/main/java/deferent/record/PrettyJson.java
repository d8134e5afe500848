package deferent.record;

import java.util.Iterator;
import java.util.Map;
import tools.jackson.databind.JsonNode;

/**
 * JSON for people and for git: an object or list that fits on a line stands on one line, anything
 * longer one entry a line; numbers plain; a newline at the end.
 */
public final class PrettyJson {
    private static final int WIDTH = 92;

    private PrettyJson() {}

    /** As text, a newline at the end. */
    public static String text(JsonNode node) {
        StringBuilder out = new StringBuilder();
        tall(node, 0, out);
        return out.append('\n').toString();
    }

    private static void any(JsonNode node, int indent, int used, StringBuilder out) {
        if (node.isContainer()) {
            StringBuilder line = new StringBuilder();
            flat(node, line);
            if (indent + used + line.length() > WIDTH && !node.isEmpty()) {
                tall(node, indent, out);
                return;
            }
            out.append(line);
            return;
        }
        flat(node, out);
    }

    private static void tall(JsonNode node, int indent, StringBuilder out) {
        String inner = "\n" + " ".repeat(indent + 2);
        if (node.isObject()) {
            out.append('{');
            String before = inner;
            for (Map.Entry<String, JsonNode> entry : node.properties()) {
                out.append(before);
                quote(entry.getKey(), out);
                out.append(": ");
                any(entry.getValue(), indent + 2, entry.getKey().length() + 5, out);
                before = "," + inner;
            }
            out.append("\n").append(" ".repeat(indent)).append('}');
        } else if (node.isArray()) {
            out.append('[');
            String before = inner;
            for (JsonNode entry : node) {
                out.append(before);
                any(entry, indent + 2, 1, out);
                before = "," + inner;
            }
            out.append("\n").append(" ".repeat(indent)).append(']');
        } else {
            flat(node, out);
        }
    }

    static void flat(JsonNode node, StringBuilder out) {
        if (node.isObject()) {
            out.append('{');
            Iterator<Map.Entry<String, JsonNode>> entries = node.properties().iterator();
            while (entries.hasNext()) {
                Map.Entry<String, JsonNode> entry = entries.next();
                quote(entry.getKey(), out);
                out.append(": ");
                flat(entry.getValue(), out);
                out.append(entries.hasNext() ? ", " : "");
            }
            out.append('}');
        } else if (node.isArray()) {
            out.append('[');
            Iterator<JsonNode> entries = node.iterator();
            while (entries.hasNext()) {
                flat(entries.next(), out);
                out.append(entries.hasNext() ? ", " : "");
            }
            out.append(']');
        } else if (node.isString()) {
            quote(node.stringValue(), out);
        } else if (node.isFloatingPointNumber()) {
            out.append(Numbers.plain(node.doubleValue()));
        } else {
            out.append(node);
        }
    }

    private static void quote(String text, StringBuilder out) {
        out.append('"');
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '"' -> out.append("\\\"");
                case '\\' -> out.append("\\\\");
                case '\n' -> out.append("\\n");
                case '\t' -> out.append("\\t");
                case '\r' -> out.append("\\r");
                default -> {
                    if (c < 0x20 || (Character.isSurrogate(c) && !paired(text, i))) {
                        out.append(String.format("\\u%04x", (int) c));
                    } else {
                        out.append(c);
                    }
                }
            }
        }
        out.append('"');
    }

    private static boolean paired(String text, int i) {
        return Character.isHighSurrogate(text.charAt(i))
                ? i + 1 < text.length() && Character.isLowSurrogate(text.charAt(i + 1))
                : i > 0 && Character.isHighSurrogate(text.charAt(i - 1));
    }
}
