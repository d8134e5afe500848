package deferent.page.web;

import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Phrase;
import deferent.page.Palette;
import deferent.page.Scene;
import deferent.page.sheet.Taught;
import deferent.record.PatternDocument;
import deferent.record.SetPlaces;
import deferent.record.SetReading;
import deferent.tell.TellSet;
import deferent.tell.Telling;
import deferent.tell.Told;
import java.nio.charset.StandardCharsets;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Patterns and sets as one HTML file that practises with whoever holds a phone: from its own
 * storage, without asking anything of any network. A list of small moving figures; each of them
 * large, played, counted and looped; what sheets say of it; and a log of what was practised, which
 * leaves as a file. Its policy lets exactly its own script and style run.
 *
 * <p>No file is larger than {@link #MOST_BYTES}, so that a phone opens it at once (our choice):
 * where it would be, figures are sampled less finely, then performers are left out.
 */
public final class HallPage {
    /** Of a file at most. */
    public static final int MOST_BYTES = 5_000_000;

    private static final List<FigureJson.Grain> GRAINS =
            List.of(
                    new FigureJson.Grain(Scene.USUAL_COUNT, 96),
                    new FigureJson.Grain(Scene.USUAL_COUNT / 2, 36),
                    new FigureJson.Grain(Scene.USUAL_COUNT / 3, 0));

    private final TaughtShelf shelf;

    private HallPage(TaughtShelf shelf) {
        this.shelf = shelf;
    }

    /**
     * One file.
     *
     * @throws Refusal where there are too many for one file
     */
    public static String of(TaughtShelf shelf) {
        return of(shelf, MOST_BYTES);
    }

    /** As above, in so many bytes at most. */
    static String of(TaughtShelf shelf, int most) {
        HallPage page = new HallPage(shelf);
        String html = "";
        for (FigureJson.Grain grain : GRAINS) {
            html = page.html(grain);
            if (bytes(html) <= most) {
                return html;
            }
        }
        boolean heard =
                shelf.sets().stream()
                        .flatMap(set -> set.song().stream())
                        .anyMatch(song -> song.unheard().isEmpty());
        throw new Refusal(
                String.format(
                        Locale.ROOT,
                        "would be %.1f MB with its %s%d patterns, and a phone opens %s MB at once",
                        bytes(html) / 1e6,
                        heard ? "song and " : "",
                        shelf.patterns().size(),
                        new DecimalFormat("0.#", DecimalFormatSymbols.getInstance(Locale.ROOT))
                                .format(most / 1e6)),
                "the hall file \"" + shelf.title() + "\"",
                heard
                        ? "take the set away as a clip"
                        : "take a set of them away, or a folder with fewer");
    }

    private static int bytes(String html) {
        return html.getBytes(StandardCharsets.UTF_8).length;
    }

    private String html(FigureJson.Grain grain) {
        String script = Modules.bundled("hall/hall.js");
        String told = told(grain).toString();
        String body = body();
        String style =
                Palette.css()
                        + LessonPage.letters(body + told + script)
                        + Modules.text("stage/ground.css")
                        + Modules.text("stage/common.css")
                        + Modules.text("hall/controls.css")
                        + Modules.text("hall/hall.css");
        StringBuilder page = new StringBuilder(1_000_000);
        page.append("<!doctype html>\n<html lang=\"en\" data-theme=\"dark\">\n<head>\n");
        page.append("<meta charset=\"utf-8\">\n");
        page.append(
                        "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; script-src ")
                .append(LessonPage.hash(script))
                .append("; style-src ")
                .append(LessonPage.hash(style))
                .append(
                        "; img-src data:; font-src data:; media-src data:; base-uri 'none'; form-action 'none'\">\n");
        page.append(
                "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1,"
                        + " viewport-fit=cover\">\n");
        page.append("<meta name=\"color-scheme\" content=\"dark light\">\n");
        page.append("<meta name=\"generator\" content=\"Deferent\">\n");
        page.append("<link rel=\"icon\" href=\"data:,\">\n<title>")
                .append(LessonPage.escaped(shelf.title()))
                .append("</title>\n<style>")
                .append(style)
                .append("</style>\n</head>\n<body>\n")
                .append(body);
        json(page, "hall", told);
        for (int i = 0; i < shelf.patterns().size(); i++) {
            json(page, "scene-" + i, FigureJson.scene(shelf.patterns().get(i), grain).toString());
        }
        for (int i = 0; i < shelf.sets().size(); i++) {
            sound(page, i);
        }
        return page.append("<script>")
                .append(script)
                .append("</script>\n</body>\n</html>\n")
                .toString();
    }

    private static void json(StringBuilder page, String id, String json) {
        page.append("<script type=\"application/json\" id=\"")
                .append(id)
                .append("\">")
                .append(json.replace("<", "\\u003c"))
                .append("</script>\n");
    }

    private void sound(StringBuilder page, int set) {
        shelf.sets()
                .get(set)
                .song()
                .filter(song -> song.sound().length > 0)
                .ifPresent(
                        song ->
                                page.append("<audio id=\"song-")
                                        .append(set)
                                        .append("\" preload=\"auto\" src=\"data:")
                                        .append(song.mediaType())
                                        .append(";base64,")
                                        .append(Base64.getEncoder().encodeToString(song.sound()))
                                        .append("\"></audio>\n"));
    }

    private String body() {
        StringBuilder cautions = new StringBuilder();
        for (String caution : Telling.cautions()) {
            cautions.append("<li>").append(LessonPage.escaped(caution)).append("</li>\n");
        }
        return Modules.text("hall/hall.html")
                .replace("{title}", LessonPage.escaped(shelf.title()))
                .replace("{cautions}", cautions);
    }

    private ObjectNode told(FigureJson.Grain grain) {
        ObjectNode told = FigureJson.node();
        ArrayNode all = told.putArray("patterns");
        for (int i = 0; i < shelf.patterns().size(); i++) {
            pattern(all.addObject(), shelf.patterns().get(i)).put("listed", i < shelf.listed());
        }
        ArrayNode order = told.putArray("sets");
        for (TaughtSet set : shelf.sets()) {
            set(order.addObject(), set, grain);
        }
        return told;
    }

    private ObjectNode pattern(ObjectNode node, Taught taught) {
        PatternDocument pattern = taught.pattern();
        node.put("name", pattern.name());
        node.put("phrase", taught.phrase().orElse(""));
        node.put("log", logged(taught));
        node.put("note", pattern.note());
        FigureJson.played(node, taught);
        ArrayNode dangers = node.putArray("dangers");
        taught.dangers().forEach(danger -> dangers.add(danger.text()));
        ObjectNode does = node.putObject("does");
        does.put("left", taught.does().get(0).text());
        does.put("right", taught.does().get(1).text());
        does.put("together", taught.does().get(2).text());
        lines(node.putArray("links"), taught.links());
        lines(node.putArray("watch"), taught.watch());
        ArrayNode next = node.putArray("next");
        for (Taught.Next one : taught.next()) {
            ObjectNode to = next.addObject().put("name", one.name()).put("text", one.told().text());
            Optional<Integer> found = shelf.named(one.name());
            if (found.isPresent()) {
                to.put("to", found.get());
            } else {
                to.putNull("to");
            }
        }
        return node;
    }

    /** What a log calls it: its phrase without a tempo, or its name where no phrase says it. */
    private String logged(Taught taught) {
        return Phrase.write(
                        taught.pattern().pairing().withTempo(OptionalDouble.empty()),
                        shelf.lexicon())
                .orElse(taught.pattern().name());
    }

    private static void lines(ArrayNode into, List<Told> told) {
        for (Told one : told) {
            into.addObject()
                    .put("text", one.text())
                    .put("warns", one.tone() == Told.Tone.WARN || one.tone() == Told.Tone.DANGER);
        }
    }

    private void set(ObjectNode node, TaughtSet taught, FigureJson.Grain grain) {
        SetReading set = taught.reading();
        node.put("name", set.name());
        lines(node.putArray("told"), taught.told(taught.song().flatMap(TaughtSong::unheard)));
        taught.song()
                .ifPresentOrElse(s -> s.put(node.putObject("song")), () -> node.putNull("song"));
        ArrayNode steps = node.putArray("steps");
        for (int i = 0; i < set.places().size(); i++) {
            ObjectNode step = steps.addObject();
            FigureJson.step(step, taught, i, grain);
            step(step, set, i);
        }
    }

    private void step(ObjectNode node, SetReading set, int i) {
        SetPlaces.Place place = set.places().get(i);
        node.put("name", place.name());
        shelf.spun(set, i)
                .ifPresentOrElse(at -> node.put("pattern", at), () -> node.putNull("pattern"));
        node.put("said", TaughtSet.said(set, i));
        lines(node.putArray("lines"), TaughtSet.lines(set, i));
        ArrayNode dangers = node.putArray("dangers");
        TaughtSet.danger(set, i).ifPresent(danger -> dangers.add(danger.text()));
        boolean last = i >= set.plan().joints().size();
        node.put(
                "onward",
                last
                        ? ""
                        : TellSet.joint(
                                        set.plan().joints().get(i),
                                        place.name(),
                                        set.names().get((i + 1) % set.names().size()))
                                .text());
    }
}
