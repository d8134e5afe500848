package deferent.page.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The page's script modules in one plain script, for a file that has to carry everything: each
 * module becomes a function that returns what it exports, those it imports before it. It knows the
 * two forms our own modules keep to, imports by name on one line and exports by declaration, and
 * says so when it meets another.
 */
final class Modules {
    private static final Pattern IMPORT =
            Pattern.compile("^import \\{([^}]*)\\} from '([^']+)';$", Pattern.MULTILINE);
    private static final Pattern EXPORT =
            Pattern.compile("^export (?:class|function|const) (\\w+)", Pattern.MULTILINE);
    private static final Pattern LEFT =
            Pattern.compile("^(?:import|export)\\b.*$", Pattern.MULTILINE);

    private final Map<String, String> names = new LinkedHashMap<>();
    private final StringBuilder script = new StringBuilder();

    private Modules() {}

    /** The script of a module and of all it imports. */
    static String bundled(String path) {
        Modules modules = new Modules();
        modules.script.append("'use strict';\n(() => {\n");
        modules.add(path);
        return modules.script.append("})();\n").toString();
    }

    private void add(String path) {
        if (names.containsKey(path)) {
            return;
        }
        String source = text(path);
        StringBuilder imports = new StringBuilder();
        Matcher imported = IMPORT.matcher(source);
        while (imported.find()) {
            String other = resolved(path, imported.group(2));
            add(other);
            imports.append("const {")
                    .append(imported.group(1).replace(" as ", ": "))
                    .append("} = ")
                    .append(names.get(other))
                    .append(";\n");
        }
        List<String> exported = new ArrayList<>();
        Matcher exports = EXPORT.matcher(source);
        while (exports.find()) {
            exported.add(exports.group(1));
        }
        String body =
                IMPORT.matcher(source)
                        .replaceAll("")
                        .replaceAll("(?m)^export (?=class|function|const)", "");
        Matcher left = LEFT.matcher(body);
        if (left.find() || body.contains("</script")) {
            throw new IllegalStateException(path + " cannot stand in one script with others");
        }
        String name = "module" + names.size();
        names.put(path, name);
        script.append("const ").append(name).append(" = (() => {\n").append(imports);
        script.append(body.strip()).append("\nreturn {");
        script.append(String.join(", ", exported)).append("};\n})();\n");
    }

    private static String resolved(String from, String to) {
        List<String> parts = new ArrayList<>(List.of(from.split("/")));
        parts.remove(parts.size() - 1);
        for (String part : to.split("/")) {
            if (part.equals("..")) {
                parts.remove(parts.size() - 1);
            } else if (!part.equals(".")) {
                parts.add(part);
            }
        }
        return String.join("/", parts);
    }

    /** A file of this package's resources. */
    static String text(String path) {
        try (InputStream in = Modules.class.getResourceAsStream(path)) {
            if (in == null) {
                throw new IllegalStateException(path + " is not packed with the page");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
