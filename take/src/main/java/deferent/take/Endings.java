package deferent.take;

import deferent.motion.pairing.Refusal;
import deferent.page.MovingSvg;
import deferent.page.Png;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.Svg;
import deferent.page.web.Gltf;
import deferent.record.TimingTable;
import deferent.reel.Kind;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The table of endings: a row each, and for clips one of each {@link Kind}. */
public final class Endings {
    private static final List<Ending> ALL = rows();

    private Endings() {}

    private static List<Ending> rows() {
        List<Ending> rows = new ArrayList<>();
        rows.add(
                new PictureEnding(
                        "svg",
                        "image/svg+xml",
                        "picture that any vector program edits",
                        true,
                        text(Svg::of),
                        Optional.of(text(MovingSvg::of))));
        rows.add(
                new PictureEnding(
                        "png",
                        "image/png",
                        "picture in pixels",
                        false,
                        Png::write,
                        Optional.empty()));
        rows.add(
                new PrintEnding(
                        "pdf", "application/pdf", "sheet, booklet, cards or picture to print"));
        Stream.of(Kind.values()).map(ClipEnding::new).forEach(rows::add);
        rows.add(
                new PageEnding(
                        "html", "text/html", "page that plays by itself, without a network"));
        rows.add(
                new ModelEnding(
                        "gltf",
                        "model/gltf+json",
                        "moving model for 3-D programs",
                        Gltf::embedded));
        rows.add(
                new ModelEnding(
                        "glb",
                        "model/gltf-binary",
                        "the same model in one binary file",
                        Gltf::binary));
        rows.add(
                new TableEnding(
                        "csv",
                        "text/csv",
                        "table of hands, heads, angles and pulls",
                        TableEnding.lines(",")));
        rows.add(
                new TableEnding(
                        "json", "application/json", "the same table as JSON", TimingTable::json));
        return List.copyOf(rows);
    }

    private static PictureEnding.Draw text(BiFunction<Scene, Still, String> drawn) {
        return (scene, still, out) ->
                out.write(drawn.apply(scene, still).getBytes(StandardCharsets.UTF_8));
    }

    /** In the order they are offered. */
    public static List<Ending> all() {
        return ALL;
    }

    /** Those that the endings are of, in the order they are offered. */
    public static List<Ending.Family> families() {
        return ALL.stream().map(Ending::family).distinct().toList();
    }

    /** By a file's name. */
    public static Ending of(Path file) {
        String name = String.valueOf(file.getFileName());
        int dot = name.lastIndexOf('.');
        if (dot <= 0) {
            throw unknown("has no ending", file.toString(), ending -> true);
        }
        return of(name.substring(dot + 1), file.toString());
    }

    /** By its {@link Ending#key}. */
    public static Ending of(String key) {
        return of(key, key);
    }

    private static Ending of(String key, String where) {
        return ALL.stream()
                .filter(ending -> ending.key().equals(key.toLowerCase(Locale.ROOT)))
                .findFirst()
                .orElseThrow(() -> unknown("ends in ." + key, where, ending -> true));
    }

    /** A picture as the bytes of a file of that name. */
    public static byte[] picture(Path file, Scene scene, Still still) {
        if (of(file) instanceof PictureEnding picture) {
            return PictureEnding.bytes(picture.still(), scene, still);
        }
        throw unknown("is no picture's name", file.toString(), PictureEnding.class::isInstance);
    }

    private static Refusal unknown(String what, String where, Predicate<Ending> right) {
        return new Refusal(
                what + ", which nothing here writes", "file " + where, "end it in " + list(right));
    }

    /** Those of some kind, as an error lists them: ".svg, .png". */
    static String list(Predicate<Ending> which) {
        return ALL.stream()
                .filter(which)
                .map(ending -> "." + ending.key())
                .collect(Collectors.joining(", "));
    }
}
