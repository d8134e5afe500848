package deferent.page.web;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Size;
import deferent.motion.shared.Side;
import deferent.motion.trace.Count;
import deferent.motion.trace.Counts;
import deferent.page.Face;
import deferent.page.Palette;
import deferent.page.Scene;
import deferent.page.View;
import deferent.record.number.ReadingTables;
import deferent.record.number.Scale;
import deferent.record.number.SideTable;
import deferent.search.whole.Readings;
import deferent.tell.TellSizes;
import deferent.tell.Telling;
import deferent.tell.Told;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.IntStream;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * A pairing as one HTML file for a lesson: it plays, slows, is scrubbed and seen from three sides
 * without asking anything of any network. Its policy lets exactly its own script and style run.
 */
public final class LessonPage {
    private static final String TITLE = "What happens";

    private final Scene scene;
    private final Readings readings;
    private final String name;
    private final String note;
    private final View.Stand stand;

    private LessonPage(Scene scene, Readings readings, String name, String note, View.Stand stand) {
        this.scene = scene;
        this.readings = readings;
        this.name = name;
        this.note = note;
        this.stand = stand;
    }

    /** As the audience sees it. */
    public static String of(Scene scene, Readings readings, String name) {
        return of(scene, readings, name, "", View.Stand.AUDIENCE);
    }

    /**
     * One lesson as one file.
     *
     * @param scene what moves
     * @param readings what is told of it
     * @param name the lesson's title
     * @param note a few words for the student, may be empty
     * @param stand from where it is first seen
     */
    public static String of(
            Scene scene, Readings readings, String name, String note, View.Stand stand) {
        return new LessonPage(scene, readings, name, note, stand).html();
    }

    private String html() {
        String script = Modules.bundled("lesson/lesson.js");
        StringBuilder body = new StringBuilder(20_000);
        body(body);
        String style =
                Palette.css()
                        + letters(body + script)
                        + Modules.text("stage/ground.css")
                        + Modules.text("stage/common.css")
                        + Modules.text("lesson/lesson.css");
        StringBuilder page = new StringBuilder(320_000);
        page.append("<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
        page.append(
                        "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; script-src ")
                .append(hash(script))
                .append("; style-src ")
                .append(hash(style))
                .append(
                        "; img-src data:; font-src data:; base-uri 'none'; form-action 'none'\">\n");
        page.append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        page.append("<meta name=\"color-scheme\" content=\"light dark\">\n");
        page.append("<meta name=\"generator\" content=\"Deferent\">\n");
        page.append("<link rel=\"icon\" href=\"data:,\">\n<title>").append(escaped(name));
        page.append("</title>\n<style>").append(style).append("</style>\n</head>\n<body>\n");
        page.append(body)
                .append("<script type=\"application/json\" id=\"scene\">")
                .append(given().toString().replace("<", "\\u003c"))
                .append("</script>\n<script>")
                .append(script)
                .append("</script>\n</body>\n</html>\n");
        return page.toString();
    }

    /** The faces with the signs of some words and all that stand on a keyboard. */
    static String letters(String words) {
        StringBuilder letters = new StringBuilder();
        for (Face face : Face.values()) {
            letters.append(
                    face.embedded(
                            IntStream.concat(IntStream.rangeClosed(' ', '~'), words.codePoints())));
        }
        return letters.toString();
    }

    private void body(StringBuilder page) {
        page.append("<main>\n<div class=\"top\"><div><h1>").append(escaped(name)).append("</h1>\n");
        readings.phrase()
                .filter(phrase -> !phrase.equals(name))
                .ifPresent(
                        phrase ->
                                page.append("<p class=\"phrase\">")
                                        .append(escaped(phrase))
                                        .append("</p>\n"));
        page.append("</div><button type=\"button\" id=\"colours\">Dark or light</button></div>\n");
        if (!note.isBlank()) {
            page.append("<p class=\"note\">").append(escaped(note)).append("</p>\n");
        }
        dangers(page);
        page.append("<div class=\"lesson\"><div>\n");
        stage(page);
        page.append("</div><div>\n");
        happens(page);
        sizes(page);
        page.append("</div></div>\n<h2>Take care</h2>\n<ul>\n");
        for (String caution : Telling.cautions()) {
            page.append("<li>").append(escaped(caution)).append("</li>\n");
        }
        page.append("</ul>\n<footer>Made with Deferent.</footer>\n</main>\n");
        page.append(
                "<dialog class=\"care\" aria-labelledby=\"care-head\"><h2 id=\"care-head\"></h2><p></p>"
                        + "<form method=\"dialog\"><button value=\"slow\"></button><button value=\"full\">"
                        + "</button><button value=\"stay\"></button></form></dialog>\n");
        page.append(
                "<noscript>The picture is drawn by a script in this file; please allow it.</noscript>\n");
    }

    private void stage(StringBuilder page) {
        page.append("<fieldset class=\"views\"><legend>Seen by</legend>");
        for (View.Stand who : View.Stand.values()) {
            String key = who.name().toLowerCase(Locale.ROOT);
            page.append("<label><input type=\"radio\" name=\"view\" value=\"")
                    .append(key)
                    .append("\">")
                    .append(who.name().charAt(0))
                    .append(key.substring(1))
                    .append("</label>");
        }
        page.append("</fieldset>\n<div class=\"seen\"><canvas role=\"img\" aria-label=\"");
        page.append(
                escaped(
                        "Moving picture of "
                                + name
                                + ". "
                                + sentence("figure.left")
                                + " "
                                + sentence("figure.right")));
        page.append("\"></canvas>");
        for (Side side : Side.values()) {
            page.append("<span class=\"letter\" data-side=\"")
                    .append(side.word())
                    .append("\" aria-hidden=\"true\">")
                    .append(side == Side.LEFT ? 'L' : 'R')
                    .append("</span>");
        }
        page.append("<output id=\"count\" aria-hidden=\"true\"></output></div>\n");
        page.append(TRANSPORT);
        page.append(
                "<div class=\"scrub\"><label for=\"moment\"><span>Moment</span><output id=\"time\"></output></label>");
        page.append(
                "<input type=\"range\" id=\"moment\" min=\"0\" max=\"999\" step=\"1\" value=\"0\">");
        ticks(page);
        page.append("</div></div>\n<fieldset><legend>Show</legend>");
        for (String[] box :
                new String[][] {{"trail", "trail"}, {"path", "paths"}, {"link", "link"}}) {
            page.append("<label><input type=\"checkbox\" name=\"show\" value=\"")
                    .append(box[0])
                    .append("\" checked>")
                    .append(box[1])
                    .append("</label>");
        }
        page.append("</fieldset>\n").append(LEGEND);
        page.append(
                "<p class=\"keys\">Keys: space plays, [ and ] set the speed, comma and full stop step, V changes the view.</p>\n");
    }

    /** Where the counts fall, below the scrubber; the slider's knob is about 16 pixels wide. */
    private void ticks(StringBuilder page) {
        page.append("<svg aria-hidden=\"true\">");
        double start = scene.trace().interval().start();
        for (Count count : Counts.of(scene.trace())) {
            double share = (count.time() - start) / scene.period();
            String x = String.format(Locale.ROOT, "%.2f%%", 100 * share);
            page.append("<text x=\"")
                    .append(x)
                    .append("\" dx=\"")
                    .append(String.format(Locale.ROOT, "%.1f", 4 - 16 * share))
                    .append("\" y=\"15\">")
                    .append(escaped(count.said()))
                    .append("</text>");
        }
        page.append("</svg>");
    }

    private void dangers(StringBuilder page) {
        List<Told> dangers = Telling.dangers(readings);
        if (dangers.isEmpty()) {
            return;
        }
        page.append("<ul class=\"dangers\">\n");
        for (Told danger : dangers) {
            page.append("<li>").append(escaped(danger.text())).append("</li>\n");
        }
        page.append("</ul>\n");
    }

    private void happens(StringBuilder page) {
        page.append("<h2>").append(TITLE).append("</h2>\n<ul>\n");
        for (Told told : Telling.of(readings)) {
            if (told.key().startsWith("danger.") || told.key().equals("first")) {
                continue;
            }
            if (!told.key().startsWith("figure.")
                    && !told.key().startsWith("link")
                    && !told.key().startsWith("tempo")
                    && !told.key().startsWith("rod")
                    && !told.key().startsWith("closest_figure")
                    && told.tone() != Told.Tone.WARN) {
                continue;
            }
            page.append(told.tone() == Told.Tone.WARN ? "<li class=\"warn\">" : "<li>")
                    .append(escaped(told.text()))
                    .append("</li>\n");
        }
        page.append("</ul>\n");
    }

    private String sentence(String key) {
        return Telling.of(readings).stream()
                .filter(told -> told.key().equals(key))
                .map(Told::text)
                .findFirst()
                .orElse("");
    }

    private void sizes(StringBuilder page) {
        Pairing pairing = readings.pairing();
        page.append(
                "<h2>Sizes</h2>\n<table><thead><tr><td></td><th scope=\"col\" data-side=\"left\">Left</th>");
        page.append("<th scope=\"col\" data-side=\"right\">Right</th></tr></thead><tbody>\n");
        var hands = ReadingTables.OneSide.of(readings);
        row(page, SideTable.line(ReadingTables.HAND.row("motion"), hands));
        row(page, SideTable.line(ReadingTables.HAND.row("tether_m"), hands));
        row(page, "hand radius", side -> radius(pairing, side));
        row(page, "poi turns a cycle", side -> turns(pairing.part(side)));
        for (String key : List.of("width_m", "height_m", "outer_radius_m")) {
            row(page, SideTable.line(ReadingTables.FIGURE.row(key), readings::figure));
        }
        page.append("</tbody></table>\n<p>")
                .append(Scale.TEMPO.said(pairing.tempo()))
                .append(", one cycle in ")
                .append(Scale.TIME.said(pairing.period()))
                .append(".</p>\n");
    }

    private static void row(StringBuilder page, TellSizes.Row row) {
        row(page, row.name(), side -> side == Side.LEFT ? row.left() : row.right());
    }

    private static void row(StringBuilder page, String name, Function<Side, String> cell) {
        page.append("<tr><th scope=\"row\">").append(name).append("</th>");
        for (Side side : Side.values()) {
            page.append("<td>").append(escaped(cell.apply(side))).append("</td>");
        }
        page.append("</tr>\n");
    }

    private static String radius(Pairing pairing, Side side) {
        if (pairing.part(side).motion().riding()) {
            return "rides the " + side.other().word() + " head";
        }
        OptionalDouble radius = Size.of(side, Size.Kind.HAND_RADIUS).read(pairing);
        return radius.isPresent() ? Scale.LENGTH.said(radius.getAsDouble()) : "hand still";
    }

    private static String turns(Part part) {
        int turns = part.motion().spin().turns();
        return turns == 0 ? "swings or points" : Integer.toString(Math.abs(turns));
    }

    private ObjectNode given() {
        ObjectNode given = JsonNodeFactory.instance.objectNode();
        given.put("view", stand.name().toLowerCase(Locale.ROOT));
        ArrayNode counts = given.putArray("counts");
        double start = scene.trace().interval().start();
        for (Count count : Counts.of(scene.trace())) {
            counts.addObject().put("time_s", count.time() - start).put("text", count.said());
        }
        given.set("scene", SceneJson.of(scene));
        return given;
    }

    static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }

    static String hash(String text) {
        try {
            byte[] sum =
                    MessageDigest.getInstance("SHA-256")
                            .digest(text.getBytes(StandardCharsets.UTF_8));
            return "'sha256-" + Base64.getEncoder().encodeToString(sum) + "'";
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every JDK has SHA-256", e);
        }
    }

    private static final String TRANSPORT =
            """
            <div class="transport" role="toolbar" aria-label="Play">
            <button type="button" id="play" class="play" aria-pressed="false" aria-keyshortcuts="Space">\
            <svg viewBox="0 0 20 20" aria-hidden="true"><path class="go" d="M5 3.5v13l11-6.5z" fill="currentColor"/>\
            <path class="pause" d="M5 3.5h3.6v13H5zM11.4 3.5H15v13h-3.6z" fill="currentColor"/></svg><span>Play</span></button>
            <div class="speed" role="group" aria-label="Speed">\
            <button type="button" id="slower" aria-label="Slower" aria-keyshortcuts="[">−</button>\
            <output id="speed"></output>\
            <button type="button" id="faster" aria-label="Faster" aria-keyshortcuts="]">+</button></div>
            """;

    private static final String LEGEND =
            """
            <ul class="legend" aria-label="What the shapes mean">
            <li data-side="left"><svg viewBox="0 0 44 14" aria-hidden="true"><path d="M11 7h20" stroke="currentColor" stroke-width="2.4"/>\
            <circle cx="7" cy="7" r="4.6" fill="none" stroke="currentColor" stroke-width="2"/>\
            <circle cx="36" cy="7" r="5" fill="currentColor"/></svg><span>left hand and head</span></li>
            <li data-side="right"><svg viewBox="0 0 44 14" aria-hidden="true"><path d="M11 7h20" stroke="currentColor" stroke-width="2.6" stroke-dasharray="7 2.4"/>\
            <rect x="2.6" y="2.6" width="8.8" height="8.8" fill="none" stroke="currentColor" stroke-width="2"/>\
            <path d="m36 1 6 6-6 6-6-6z" fill="currentColor"/></svg><span>right hand and head</span></li>
            <li class="link-line"><svg viewBox="0 0 34 14" aria-hidden="true"><path d="M2 7h30" stroke="currentColor" stroke-width="3.4" stroke-dasharray="3.4 4"/></svg>\
            <span>link, carrier’s head to rider’s hand</span></li>
            </ul>
            """;
}
