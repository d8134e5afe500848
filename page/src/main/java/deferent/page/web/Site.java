package deferent.page.web;

import deferent.page.Face;
import deferent.page.Palette;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.StillForm;
import deferent.page.Svg;
import deferent.page.sheet.Taught;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.BooleanSupplier;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Patterns and sets as a folder to publish: an index, a page for each, pictures and moving points
 * as files, one script and one style for all. The pages ask nothing of anybody but that folder,
 * which their policy keeps, and are read without the script as well.
 *
 * <p>The same shelf gives the same bytes. What a page says comes from its own pattern and from
 * those it names, so that a change of one pattern changes its files, the index, and the pages that
 * name it.
 */
public final class Site {
    /** Where one begins. */
    public static final String INDEX = "index.html";

    /** Points of a cycle, and instants of the performer; our choice, for small files. */
    private static final FigureJson.Grain FINE = new FigureJson.Grain(Scene.USUAL_COUNT / 3, 24);

    /** Across, pixels. */
    static final int PICTURE = 640;

    /** All that our own sentences use, and the letters of Western Europe. */
    private static final int[][] SIGNS = {
        {' ', '~'},
        {0xA0, 0xFF},
        {0x386, 0x3CE},
        {0x400, 0x45F},
        {0x2010, 0x2044},
        {0x2190, 0x2193},
        {0x2212, 0x2212},
        {0x221A, 0x221A},
        {0x2248, 0x2248},
        {0x2260, 0x2265}
    };

    private static final List<Face> FACES = List.of(Face.REGULAR, Face.BOLD, Face.SERIF);

    private final TaughtShelf shelf;
    private final SiteNames names;
    private final SortedMap<String, byte[]> files = new TreeMap<>();

    private Site(TaughtShelf shelf) {
        this.shelf = shelf;
        this.names = SiteNames.of(shelf);
    }

    /**
     * All files by their paths in the folder, which have slashes.
     *
     * @param done told of each page that is finished, how many there are by then
     * @param stop asked before each page
     * @return empty where it was stopped
     */
    public static Optional<SortedMap<String, byte[]>> of(
            TaughtShelf shelf, IntConsumer done, BooleanSupplier stop) {
        Site site = new Site(shelf);
        int pages = 0;
        for (int i = 0; i < shelf.patterns().size(); i++) {
            if (stop.getAsBoolean()) {
                return Optional.empty();
            }
            site.pattern(i);
            done.accept(++pages);
        }
        for (int i = 0; i < shelf.sets().size(); i++) {
            if (stop.getAsBoolean()) {
                return Optional.empty();
            }
            site.set(i);
            done.accept(++pages);
        }
        site.text(INDEX, new SiteIndex(shelf, site.names).html());
        shared().forEach(site::text);
        return Optional.of(site.files);
    }

    /** The style and the script, which are the same in every site. */
    public static Map<String, String> shared() {
        return Map.of("site.css", style(), "site.js", Modules.bundled("site/site.js"));
    }

    private void text(String path, String text) {
        files.put(path, text.getBytes(StandardCharsets.UTF_8));
    }

    private void pattern(int i) {
        Taught taught = shelf.patterns().get(i);
        String name = names.pattern(i);
        text(name + ".html", new SitePattern(shelf, names, i).html());
        ObjectNode moves = FigureJson.node().put("name", taught.pattern().name());
        FigureJson.played(moves, taught).set("scene", FigureJson.scene(taught, FINE));
        moves(name, moves);
        Scene scene = Scene.of(taught.trace());
        Still still = Still.square(PICTURE).with(taught.view());
        text(
                SitePage.picture(name),
                Svg.lightOrDark(scene, still.at(taught.trace().interval().start())));
        text(
                SitePage.picture(name + SitePage.POSES),
                Svg.lightOrDark(scene, still.with(StillForm.POSES, taught.moments())));
    }

    private void set(int i) {
        TaughtSet set = shelf.sets().get(i);
        text(names.set(i) + ".html", new SiteSet(shelf, names, i).html());
        ObjectNode moves = FigureJson.node().put("name", set.reading().name());
        ArrayNode steps = moves.putArray("steps");
        for (int step = 0; step < set.reading().places().size(); step++) {
            ObjectNode node = steps.addObject();
            FigureJson.step(node, set, step, FINE);
            names.spun(set, step)
                    .ifPresentOrElse(name -> node.put("moves", name), () -> node.putNull("moves"));
        }
        moves(names.set(i), moves);
    }

    private void moves(String name, ObjectNode moves) {
        text("moves/" + name + ".js", "deferentSite.put('" + name + "', " + moves + ");\n");
    }

    private static String style() {
        StringBuilder style = new StringBuilder(Palette.css());
        for (Face face : FACES) {
            IntStream signs =
                    Arrays.stream(SIGNS).flatMapToInt(run -> IntStream.rangeClosed(run[0], run[1]));
            style.append(face.embedded(signs)).append('\n');
        }
        for (String part :
                new String[] {
                    "stage/ground.css", "stage/common.css", "hall/controls.css", "site/site.css"
                }) {
            style.append(Modules.text(part));
        }
        return style.toString();
    }
}
