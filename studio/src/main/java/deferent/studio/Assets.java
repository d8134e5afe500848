package deferent.studio;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The files the studio hands out: the page's own, and the named libraries. Nothing else is reached,
 * whatever a path says: a path is letters, digits, hyphens, underscores and single dots between
 * slashes, of a known kind, and looked up below one folder or one package.
 */
final class Assets {
    private static final String PACKED = "deferent/studio/page/";

    /** What the studio's page shares with pages that leave the house, in the same folders. */
    private static final String SHARED = "deferent/page/web/";

    private static final String DOCS = "deferent/studio/docs/";

    private static final Pattern PATH =
            Pattern.compile(
                    "(?:[A-Za-z0-9_-]+(?:\\.[A-Za-z0-9_-]+)*/){0,8}[A-Za-z0-9_-]+(?:\\.[A-Za-z0-9_-]+)+");
    private static final Pattern SCRIPT =
            Pattern.compile(
                    "<script(?![^>]*\\bsrc\\s*=)[^>]*>(.*?)</script>",
                    Pattern.DOTALL | Pattern.CASE_INSENSITIVE);
    private static final Pattern STYLE =
            Pattern.compile("<style[^>]*>(.*?)</style>", Pattern.DOTALL | Pattern.CASE_INSENSITIVE);

    /** Stands in the page where the server puts what its addresses are relative to. */
    private static final String BASE = "<base href=\"/\">";

    private static final Map<String, String> KINDS =
            Map.of(
                    "html", "text/html;charset=utf-8",
                    "md", "text/markdown;charset=utf-8",
                    "js", "text/javascript;charset=utf-8",
                    "css", "text/css;charset=utf-8",
                    "svg", "image/svg+xml",
                    "png", "image/png",
                    "json", "application/json",
                    "webmanifest", "application/manifest+json",
                    "ttf", "font/ttf",
                    "wav", "audio/wav");

    private static final String WEBJARS = "META-INF/resources/webjars/";

    /**
     * The libraries and the typeface by the name the page uses, and where their package has them.
     */
    private static final Map<String, String> VENDORS =
            Map.of(
                    "three", WEBJARS + "three/0.181.1/",
                    "lit", WEBJARS + "lit/3.3.2/",
                    "lit-html", WEBJARS + "lit-html/3.3.2/",
                    "lit-element", WEBJARS + "lit-element/4.2.2/",
                    "lit-reactive-element", WEBJARS + "lit__reactive-element/2.1.2/",
                    "uplot", WEBJARS + "uplot/1.6.30/",
                    "roboto", "com/formdev/flatlaf/fonts/roboto/");

    /**
     * What stands in a page itself, as a policy lists it.
     *
     * @param scripts hashes of its scripts, each led by a space
     * @param styles hashes of its styles, each led by a space
     * @param base whether it says what its addresses are relative to
     */
    record Inline(String scripts, String styles, boolean base) {
        static final Inline NONE = new Inline("", "", false);

        static Inline of(byte[] html) {
            String text = new String(html, StandardCharsets.UTF_8);
            return new Inline(hashes(SCRIPT, text), hashes(STYLE, text), text.contains(BASE));
        }

        private static String hashes(Pattern pattern, String html) {
            StringBuilder all = new StringBuilder();
            Matcher found = pattern.matcher(html);
            while (found.find()) {
                byte[] hash = sha256(found.group(1).getBytes(StandardCharsets.UTF_8));
                all.append(" 'sha256-")
                        .append(Base64.getEncoder().encodeToString(hash))
                        .append('\'');
            }
            return all.toString();
        }
    }

    /** A file as it is sent. */
    record Asset(byte[] bytes, String kind, String tag, Inline inline) {
        /** A page whose addresses are all below a session's key. */
        Asset under(String session) {
            String html = new String(bytes, StandardCharsets.UTF_8);
            String based = html.replace(BASE, "<base href=\"/" + session + "/\">");
            return new Asset(based.getBytes(StandardCharsets.UTF_8), kind, tag, inline);
        }
    }

    /** What is packed is the same for every studio of a process. */
    private static final Map<String, Asset> SENT = new ConcurrentHashMap<>();

    private final Optional<Path> folder;

    Assets(Optional<Path> folder) {
        this.folder = folder;
    }

    /** A file of the page, its own or one that it shares. */
    Optional<Asset> page(String path) {
        if (!PATH.matcher(path).matches()) {
            return Optional.empty();
        }
        return own(path).or(() -> packed(SHARED + path));
    }

    /** A page of the guide, as HTML, or a picture of it. */
    Optional<Asset> docs(String path) {
        if (!PATH.matcher(path).matches()) {
            return Optional.empty();
        }
        Optional<Asset> found = packed(DOCS + path);
        if (!path.endsWith(".md")) {
            return found;
        }
        return found.flatMap(
                page -> {
                    String text = new String(page.bytes(), StandardCharsets.UTF_8);
                    String html = GuidePage.html(path, text, to -> packed(DOCS + to).isPresent());
                    return asset("guide.html", html.getBytes(StandardCharsets.UTF_8));
                });
    }

    /** What everybody may see. */
    Optional<Asset> shell() {
        return packed(PACKED + "shell.html");
    }

    private Optional<Asset> own(String path) {
        if (folder.isEmpty()) {
            return packed(PACKED + path);
        }
        try {
            Path root = folder.get().toRealPath();
            Path file = root.resolve(path);
            if (!Files.isRegularFile(file) || !file.toRealPath().startsWith(root)) {
                return Optional.empty();
            }
            return asset(path, Files.readAllBytes(file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A file of a library: "three" and "build/three.module.min.js". */
    Optional<Asset> vendor(String name, String path) {
        String place = VENDORS.get(name);
        return place == null || !PATH.matcher(path).matches()
                ? Optional.empty()
                : packed(place + path);
    }

    private Optional<Asset> packed(String resource) {
        Asset known = SENT.get(resource);
        if (known != null) {
            return Optional.of(known);
        }
        try (InputStream in = Assets.class.getClassLoader().getResourceAsStream(resource)) {
            if (in == null) {
                return Optional.empty();
            }
            Optional<Asset> read = asset(resource, in.readAllBytes());
            read.ifPresent(a -> SENT.put(resource, a));
            return read;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Optional<Asset> asset(String path, byte[] bytes) {
        String ending = path.substring(path.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
        String kind = KINDS.get(ending);
        if (kind == null) {
            return Optional.empty();
        }
        String tag = '"' + HexFormat.of().formatHex(sha256(bytes), 0, 12) + '"';
        return Optional.of(
                new Asset(
                        bytes, kind, tag, ending.equals("html") ? Inline.of(bytes) : Inline.NONE));
    }

    private static byte[] sha256(byte[] bytes) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(bytes);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every JDK has SHA-256", e);
        }
    }
}
