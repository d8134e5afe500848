package deferent.bundle;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * The licence of every part, with its text: the one its jar brings along, else the common text of
 * one of those it may be taken under. A part without either stops the bundling.
 */
final class Licences {
    /** What a list of parts calls a licence, and the file with its common text. */
    private static final Map<String, String> TEXTS =
            Map.ofEntries(
                    Map.entry("Apache-2.0", "Apache-2.0.txt"),
                    Map.entry("MIT", "MIT.txt"),
                    Map.entry("MIT X11 License", "MIT.txt"),
                    Map.entry("BSD-2-Clause", "BSD-2-Clause.txt"),
                    Map.entry("BSD-3-Clause", "BSD-3-Clause.txt"),
                    Map.entry("EPL-2.0", "EPL-2.0.txt"),
                    Map.entry("Eclipse Public License (EPL) 2.0", "EPL-2.0.txt"));

    private static final String NOTICES = "(?i)(.*/)?(LICEN[CS]E|NOTICE|COPYING)[^/]*";

    private Licences() {}

    /**
     * @param parts the list of parts (CycloneDX)
     * @param made what will be packed: its {@code parts.json} and {@code licences/}
     */
    static void gathered(Jars jars, Path parts, Path sources, Path made) throws IOException {
        Files.copy(parts, made.resolve("parts.json"));
        Path licences = Files.createDirectories(made.resolve("licences"));
        Path top = sources.resolve("../../..").normalize();
        Files.copy(top.resolve("LICENSE"), licences.resolve("Apache-2.0.txt"));
        Files.copy(top.resolve("NOTICE"), licences.resolve("NOTICE.txt"));
        for (String text :
                List.of("MIT", "BSD-2-Clause", "BSD-3-Clause", "EPL-2.0", "LGPL-3.0", "GPL-3.0")) {
            String name = text + ".txt";
            Files.copy(sources.resolve("licences").resolve(name), licences.resolve(name));
        }
        List<String> lines = new ArrayList<>();
        lines.add("Every part of this program, its licence, and where the text is.");
        lines.add(
                "Java itself: runtime/legal. FFmpeg's libraries: LGPL-3.0.txt, with GPL-3.0.txt, to");
        lines.add("which it refers; NOTICE.txt tells what else is built into them.");
        lines.add("");
        Map<String, List<String>> known = licences(parts);
        for (Path jar : jars.all()) {
            lines.add(row(jar, known, licences));
        }
        Files.write(licences.resolve("README.txt"), lines);
    }

    private static String row(Path jar, Map<String, List<String>> known, Path licences)
            throws IOException {
        String name = Jars.name(jar).replaceFirst("\\.jar$", "");
        List<String> under = known.getOrDefault(name, List.of());
        Set<String> texts = new TreeSet<>(brought(jar, licences.resolve(name)));
        if (texts.isEmpty()) {
            under.stream().map(l -> TEXTS.getOrDefault(l, "")).forEach(texts::add);
            texts.remove("");
        } else {
            texts = Set.of(name + "/");
        }
        if (under.isEmpty() || texts.isEmpty()) {
            throw new IllegalStateException(
                    name + " has no licence that is known: " + under + "; add its text");
        }
        return name + ": " + String.join(" or ", under) + " (" + String.join(", ", texts) + ")";
    }

    /** Its own texts, copied out. */
    private static List<String> brought(Path jar, Path to) throws IOException {
        List<String> copied = new ArrayList<>();
        try (ZipFile zip = new ZipFile(jar.toFile())) {
            for (ZipEntry entry :
                    zip.stream()
                            .filter(e -> !e.isDirectory() && e.getName().matches(NOTICES))
                            .filter(e -> !e.getName().endsWith(".class"))
                            .toList()) {
                String name = entry.getName().replaceFirst("^META-INF/", "").replace('/', '-');
                Files.createDirectories(to);
                Files.copy(zip.getInputStream(entry), to.resolve(name));
                copied.add(name);
            }
        }
        return copied;
    }

    /** By a jar's name without its ending. */
    private static Map<String, List<String>> licences(Path parts) throws IOException {
        Map<String, List<String>> known = new TreeMap<>();
        JsonNode all = JsonMapper.shared().readTree(Files.readString(parts)).path("components");
        for (JsonNode part : all) {
            List<String> under = new ArrayList<>();
            for (JsonNode licence : part.path("licenses")) {
                JsonNode said = licence.path("license");
                under.add(
                        said.path("id")
                                .asString(
                                        said.path("name")
                                                .asString(
                                                        licence.path("expression").asString(""))));
            }
            String purl = part.path("purl").asString("");
            String classifier =
                    purl.contains("classifier=")
                            ? "-" + purl.replaceFirst(".*classifier=([^&]*).*", "$1")
                            : "";
            known.put(
                    part.path("name").asString("")
                            + "-"
                            + part.path("version").asString("")
                            + classifier,
                    List.copyOf(under));
        }
        return known;
    }
}
