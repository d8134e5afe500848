package deferent.page.web;

import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Side;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Count;
import deferent.motion.trace.Counts;
import deferent.motion.trace.Trace;
import deferent.page.Palette;
import deferent.page.Scene;
import deferent.page.sheet.Taught;
import deferent.reading.body.Person;
import deferent.reading.body.PoseOver;
import deferent.reading.danger.Level;
import deferent.record.PatternDocument;
import deferent.record.SetPlaces;
import deferent.record.SetReading;
import deferent.search.set.Stay;
import deferent.tell.TellSet;
import deferent.tell.Telling;
import deferent.tell.Told;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
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

    private static final int PARTS = 4;

    private final String title;
    private final List<Taught> patterns;
    private final int listed;
    private final List<SetReading> sets;
    private final Lexicon lexicon;

    private HallPage(
            String title,
            List<Taught> patterns,
            int listed,
            List<SetReading> sets,
            Lexicon lexicon) {
        this.title = title;
        this.patterns = patterns;
        this.listed = listed;
        this.sets = sets;
        this.lexicon = lexicon;
    }

    /**
     * How finely moving points are given.
     *
     * @param samples of hands and heads over a cycle
     * @param instants of the performer over one hand cycle; 0 for no performer
     */
    private record Grain(int samples, int instants) {
        static final List<Grain> ALL =
                List.of(
                        new Grain(Scene.USUAL_COUNT, 96),
                        new Grain(Scene.USUAL_COUNT / 2, 36),
                        new Grain(Scene.USUAL_COUNT / 3, 0));
    }

    /**
     * One file.
     *
     * @param title over the list
     * @param patterns those to choose from, then those that only stand in sets
     * @param listed how many there are to choose from
     * @param sets worked out, of these patterns
     * @param lexicon the user's own words
     * @throws Refusal where there are too many for one file
     */
    public static String of(
            String title,
            List<Taught> patterns,
            int listed,
            List<SetReading> sets,
            Lexicon lexicon) {
        HallPage page = new HallPage(title, patterns, listed, sets, lexicon);
        String html = "";
        for (Grain grain : Grain.ALL) {
            html = page.html(grain);
            if (bytes(html) <= MOST_BYTES) {
                return html;
            }
        }
        throw new Refusal(
                String.format(
                        Locale.ROOT,
                        "would be %.1f MB with its %d patterns, and a phone opens %.0f MB at once",
                        bytes(html) / 1e6,
                        patterns.size(),
                        MOST_BYTES / 1e6),
                "the hall file \"" + title + "\"",
                "take a set of them away, or a folder with fewer");
    }

    private static int bytes(String html) {
        return html.getBytes(StandardCharsets.UTF_8).length;
    }

    private String html(Grain grain) {
        String script = Modules.bundled("hall/hall.js");
        String told = told().toString();
        String body = body();
        String style =
                Palette.css()
                        + LessonPage.letters(body + told + script)
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
                        "; img-src data:; font-src data:; base-uri 'none'; form-action 'none'\">\n");
        page.append(
                "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1,"
                        + " viewport-fit=cover\">\n");
        page.append("<meta name=\"color-scheme\" content=\"dark light\">\n");
        page.append("<meta name=\"generator\" content=\"Deferent\">\n");
        page.append("<link rel=\"icon\" href=\"data:,\">\n<title>")
                .append(LessonPage.escaped(title))
                .append("</title>\n<style>")
                .append(style)
                .append("</style>\n</head>\n<body>\n")
                .append(body);
        json(page, "hall", told);
        for (int i = 0; i < patterns.size(); i++) {
            json(page, "scene-" + i, scene(patterns.get(i), grain).toString());
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

    private String body() {
        StringBuilder cautions = new StringBuilder();
        for (String caution : Telling.cautions()) {
            cautions.append("<li>").append(LessonPage.escaped(caution)).append("</li>\n");
        }
        return Modules.text("hall/hall.html")
                .replace("{title}", LessonPage.escaped(title))
                .replace("{cautions}", cautions);
    }

    private static ObjectNode scene(Taught taught, Grain grain) {
        Trace trace = taught.trace();
        Optional<Person> body =
                grain.instants() == 0
                        ? Optional.empty()
                        : Optional.of(Person.of(PoseOver.of(trace, taught.pattern().performer())));
        int cycles =
                Stream.of(Side.values())
                        .mapToInt(side -> trace.pairing().part(side).cycles())
                        .max()
                        .orElse(1);
        return SceneJson.of(
                Scene.of(trace, grain.samples(), Scene.nearer(trace), body),
                Math.max(1, grain.instants() * cycles));
    }

    private ObjectNode told() {
        ObjectNode told = JsonNodeFactory.instance.objectNode();
        ArrayNode all = told.putArray("patterns");
        for (int i = 0; i < patterns.size(); i++) {
            pattern(all.addObject(), patterns.get(i)).put("listed", i < listed);
        }
        ArrayNode order = told.putArray("sets");
        for (SetReading set : sets) {
            set(order.addObject(), set);
        }
        return told;
    }

    private ObjectNode pattern(ObjectNode node, Taught taught) {
        PatternDocument pattern = taught.pattern();
        node.put("name", pattern.name());
        node.put("phrase", taught.phrase().orElse(""));
        node.put("log", logged(taught));
        node.put("note", pattern.note());
        node.put("tempo", pattern.pairing().tempo());
        node.put("period_s", taught.trace().period());
        node.put("stand", taught.side().name().toLowerCase(Locale.ROOT));
        counts(node.putArray("counts"), taught.trace(), Counts.of(taught.trace()));
        counts(node.putArray("parts"), taught.trace(), Counts.moments(taught.trace(), PARTS));
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
            Optional<Integer> found = named(one.name());
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
        return Phrase.write(taught.pattern().pairing().withTempo(OptionalDouble.empty()), lexicon)
                .orElse(taught.pattern().name());
    }

    private Optional<Integer> named(String name) {
        for (int i = 0; i < patterns.size(); i++) {
            if (patterns.get(i).pattern().name().equals(name)) {
                return Optional.of(i);
            }
        }
        return Optional.empty();
    }

    private static void counts(ArrayNode into, Trace trace, List<Count> counts) {
        for (Count count : counts) {
            into.addObject()
                    .put("share", (count.time() - trace.interval().start()) / trace.period())
                    .put("said", count.said());
        }
    }

    private static void lines(ArrayNode into, List<Told> told) {
        for (Told one : told) {
            into.addObject()
                    .put("text", one.text())
                    .put("warns", one.tone() == Told.Tone.WARN || one.tone() == Told.Tone.DANGER);
        }
    }

    private void set(ObjectNode node, SetReading set) {
        node.put("name", set.name());
        lines(node.putArray("told"), set.told());
        ArrayNode steps = node.putArray("steps");
        for (int i = 0; i < set.places().size(); i++) {
            step(steps.addObject(), set, i);
        }
    }

    private void step(ObjectNode node, SetReading set, int i) {
        SetPlaces.Place place = set.places().get(i);
        node.put("name", place.name());
        node.putNull("pattern");
        node.put("counts", 0);
        node.put("said", "gone from the shelf");
        node.put("enters", 0);
        List<Told> lines = new ArrayList<>();
        set.plan().stays().get(i).ifPresent(stay -> stay(node, stay, lines));
        set.turn(i).ifPresent(turn -> lines.addAll(TellSet.turn(turn)));
        lines(node.putArray("lines"), lines);
        boolean last = i >= set.plan().joints().size();
        node.put("wait_s", last ? 0 : set.plan().joints().get(i).seconds());
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

    private void stay(ObjectNode node, Stay stay, List<Told> lines) {
        for (int i = 0; i < patterns.size(); i++) {
            if (patterns.get(i).pattern().pairing().equals(stay.wanted().pairing())) {
                node.put("pattern", i);
                break;
            }
        }
        node.put("counts", stay.counts());
        node.put(
                "said",
                TellSet.counts(stay.counts()) + ", from " + TellSet.duration(stay.starts()));
        double cycles = stay.entered() / stay.wanted().pairing().period();
        node.put("enters", cycles - Math.floor(cycles));
        if (!TellSet.reached(stay)) {
            lines.add(TellSet.reach(stay));
        }
        if (TellSet.level(stay) == Level.DANGER) {
            TellSet.danger(stay).ifPresent(lines::add);
        }
    }
}
