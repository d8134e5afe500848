package deferent.studio;

import static deferent.studio.AskKey.keys;

import deferent.motion.trace.Trace;
import deferent.reading.photo.Led;
import deferent.reading.photo.PhotoReading;
import deferent.reading.worked.Worked;
import deferent.record.PhotoJson;
import deferent.record.Shelf;
import deferent.reel.Natives;
import deferent.take.Ending;
import deferent.take.Endings;
import deferent.take.Offer;
import deferent.take.Preview;
import deferent.take.SetEndings;
import deferent.take.Take;
import deferent.take.TakeProgress;
import deferent.take.Taken;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.Stream;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Takes patterns away: what there is to choose, previews, and the files themselves. */
final class TakeDesk implements AutoCloseable {
    /** Pages that are previewed and panels that preview, so many of each. */
    private static final int MOST = 8;

    private final Wordbook words;
    private final Shelf shelf;
    private final TakenFolder taken = new TakenFolder(TakenFolder.MOST);
    private final Lanes lanes;
    private final Map<String, AtomicBoolean> newest = bounded();
    private final Map<String, byte[]> pages = bounded();

    TakeDesk(Wordbook words, Shelf shelf, Lanes lanes) {
        this.words = words;
        this.shelf = shelf;
        this.lanes = lanes;
    }

    private static <V> Map<String, V> bounded() {
        return new LinkedHashMap<>() {
            private static final long serialVersionUID = 1L;

            @Override
            protected boolean removeEldestEntry(Map.Entry<String, V> eldest) {
                return size() > MOST;
            }
        };
    }

    private static final AskKey<String> PANEL =
            AskKey.text("panel", "whose newer preview drops an older one");
    private static final AskKey<Preview.Calm> CALM =
            AskKey.one("calm", "when clips stand still; unsaid never", Preview.Calm.class);
    private static final List<AskKey<?>> PREVIEW = keys(TakeAsk.KEYS, keys(PANEL, CALM));

    private static final AskKey<Double> LIGHT =
            AskKey.number("light_m", "a light's size; unsaid the head's", 1e-3, 0.5, "m");
    private static final AskKey<Double> LED =
            AskKey.number("led_hz", "how often a light blinks", 0, 1e6, "Hz");
    private static final AskKey<Double> DUTY =
            AskKey.number("duty", "the share of a blink that is lit", 0, 1, "");
    private static final AskKey<Double> SHUTTER =
            AskKey.number("shutter_s", "how long a photograph is exposed", 0, 3600, "s");
    static final List<AskKey<?>> PHOTO = keys(LIGHT, LED, DUTY, SHUTTER);

    void configure(RoutesConfig routes) {
        routes.get("/api/endings", this::endings);
        routes.post("/api/preview", this::preview);
        routes.get("/api/preview/{key}", this::page);
        routes.get("/api/taken/{key}/{name}", this::send);
    }

    private void endings(Context context) {
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        ArrayNode families = answer.putArray("families");
        for (Ending.Family family : Endings.families()) {
            families.addObject()
                    .put("key", family.key())
                    .put("title", family.title())
                    .put("words", family.words());
        }
        ArrayNode endings = answer.putArray("endings");
        for (Ending ending : Endings.all()) {
            ObjectNode node = endings.addObject();
            node.put("key", ending.key());
            node.put("words", ending.words());
            node.put("family", ending.family().key());
            ArrayNode wishes = node.putArray("wishes");
            ending.offers().forEach(offer -> offer(wishes.addObject(), offer));
        }
        ArrayNode sets = answer.putArray("set_endings");
        for (SetEndings.Choice choice : SetEndings.choices()) {
            ObjectNode node = sets.addObject();
            node.put("key", choice.row().key());
            choice.form().ifPresent(form -> node.put("form", form));
            node.put("words", choice.words());
            node.put("sung", choice.row().sung());
            node.put("filmed", choice.row().ending().filmed());
        }
        // Loading the video libraries takes a while and much memory: only for who wants clips.
        if ("true".equals(context.queryParam("clips"))) {
            Optional<String> why = Natives.available();
            ObjectNode clips = answer.putObject("clips");
            clips.put("here", why.isEmpty());
            clips.put("why", why.orElse(""));
        }
        ShelfDesk.json(context, answer);
    }

    private static void offer(ObjectNode node, Offer offer) {
        node.put("key", offer.wish().key());
        node.put("title", offer.wish().title());
        node.put("means", offer.wish().means());
        node.put("kind", offer.wish().kind().key());
        node.put("unsaid", offer.unsaid());
        node.put("often", offer.wish().often());
        node.put("open", offer.wish().open());
        ArrayNode choices = node.putArray("choices");
        offer.choices()
                .forEach(c -> choices.addObject().put("value", c.value()).put("words", c.words()));
        ArrayNode forms = node.putArray("forms");
        offer.forms().forEach(forms::add);
        ArrayNode many = node.putArray("many");
        offer.many().forEach(many::add);
        offer.wish().insteadOf().ifPresent(other -> node.put("instead_of", other.key()));
    }

    /** Writes a file, told with how far it has come. */
    Errand take(Question asked) {
        Take take = TakeAsk.of(asked, words.lexicon(), shelf);
        return new Errand(
                take.wishes().ending().filmed() || take.patterns().size() > 1
                        ? Lanes.Work.FILM
                        : Lanes.Work.SHORT,
                (tell, stop) -> write(take, tell, stop));
    }

    /** What writes a file. */
    interface Writing {
        Optional<Taken> write(Path file, Consumer<TakeProgress> listener, BooleanSupplier stop);
    }

    ObjectNode write(Take take, Consumer<ObjectNode> tell, BooleanSupplier stop) {
        return write(take.fileName() + "." + take.wishes().ending().key(), take::write, tell, stop);
    }

    ObjectNode write(
            String name, Writing writing, Consumer<ObjectNode> tell, BooleanSupplier stop) {
        TakenFolder.Place place = taken.open();
        boolean whole = false;
        try {
            Path target = place.folder().resolve(name);
            Optional<Taken> written =
                    writing.write(
                            target,
                            new Paced<>(at -> tell.accept(progress(at.share(), at.told()))),
                            stop);
            ObjectNode answer = JsonNodeFactory.instance.objectNode();
            if (written.isEmpty() || stop.getAsBoolean()) {
                answer.put("stopped", true);
                return answer;
            }
            answer(answer, place, written.get());
            taken.keep(place);
            whole = true;
            return answer;
        } finally {
            if (!whole) {
                taken.discard(place);
            }
        }
    }

    static ObjectNode progress(double share, String told) {
        ObjectNode part = JsonNodeFactory.instance.objectNode();
        part.putObject("progress")
                .put("share", Math.rint(Math.max(0, Math.min(1, share)) * 1e3) / 1e3)
                .put("told", told);
        return part;
    }

    private static void answer(ObjectNode answer, TakenFolder.Place place, Taken written) {
        Path file = written.files().get(0);
        file(answer, place, file);
        answer.put("told", written.told());
        answer.put("caution", written.caution().orElse(""));
        ArrayNode beside = answer.putArray("beside");
        written.files().stream().skip(1).forEach(f -> file(beside.addObject(), place, f));
    }

    private static void file(ObjectNode node, TakenFolder.Place place, Path file) {
        String name = String.valueOf(file.getFileName());
        node.put("file", Gate.TAKEN + place.key() + "/" + name);
        node.put("name", name);
        try {
            node.put("bytes", Files.size(file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void send(Context context) throws IOException {
        String name = context.pathParam("name");
        Path file = taken.find(context.pathParam("key"), name).orElseThrow(() -> gone());
        Gate.welcome(context.req());
        context.header("Content-Disposition", "attachment; filename=\"" + name + "\"");
        context.contentType(mediaType(name));
        context.header("Content-Length", Long.toString(Files.size(file)));
        context.result(Files.newInputStream(file));
    }

    private static String mediaType(String name) {
        String key = name.substring(name.lastIndexOf('.') + 1);
        return Stream.concat(
                        Endings.all().stream(),
                        SetEndings.all().stream().map(SetEndings.Row::ending))
                .filter(ending -> ending.key().equals(key))
                .findFirst()
                .orElseThrow()
                .mediaType();
    }

    private static BadRequest gone() {
        return new BadRequest(404, "is not there any more", "the file", "write the file once more");
    }

    private void preview(Context context) {
        Question asked = Question.of(Desk.tree(Bodies.text(context)), PREVIEW);
        String panel = asked.or(PANEL, "");
        Preview.Calm calm = asked.or(CALM, Preview.Calm.NEVER);
        Take take = TakeAsk.of(asked, words.lexicon(), shelf);
        AtomicBoolean older = new AtomicBoolean();
        Caller.answer(
                context,
                lanes.of(take.wishes().ending().filmed() ? Lanes.Work.GLIMPSE : Lanes.Work.SHORT),
                stop -> preview(take, calm, () -> older.get() || stop.getAsBoolean()));
        synchronized (newest) {
            AtomicBoolean before = newest.remove(panel);
            if (before != null) {
                before.set(true);
            }
            newest.put(panel, older);
        }
    }

    private ObjectNode preview(Take take, Preview.Calm calm, BooleanSupplier stop) {
        Optional<Preview> preview =
                stop.getAsBoolean() ? Optional.empty() : take.preview(calm, stop);
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        if (preview.isPresent()) {
            told(answer, preview.get());
        } else {
            answer.put("dropped", true);
        }
        return answer;
    }

    private void told(ObjectNode answer, Preview preview) {
        answer.put("media_type", preview.mediaType());
        answer.put("told", preview.told());
        answer.put("moves", preview.moves());
        answer.put("caution", preview.caution());
        answer.put("note", preview.note());
        answer.put("writable", preview.writable());
        switch (preview.mediaType()) {
            case "text/html" -> {
                String key = OneUse.random();
                synchronized (pages) {
                    pages.put(key, preview.bytes());
                }
                answer.put("page", Gate.FRAMED + key);
            }
            case "text/plain" ->
                    answer.put("text", new String(preview.bytes(), StandardCharsets.UTF_8));
            default -> answer.put("base64", Base64.getEncoder().encodeToString(preview.bytes()));
        }
    }

    private void page(Context context) {
        byte[] html = page(context.pathParam("key")).orElseThrow(() -> gone());
        context.header("Content-Security-Policy", Gate.framed(html));
        context.header("X-Frame-Options", "SAMEORIGIN");
        context.contentType("text/html;charset=utf-8");
        context.result(html);
    }

    private Optional<byte[]> page(String key) {
        Optional<byte[]> found = Optional.empty();
        synchronized (pages) {
            for (Map.Entry<String, byte[]> one : pages.entrySet()) {
                if (OneUse.same(one.getKey(), key)) {
                    found = Optional.of(one.getValue());
                }
            }
        }
        return found;
    }

    /** How to photograph a pattern. */
    ObjectNode photo(Question asked) {
        Optional<Led> led = asked.maybe(LED).map(hertz -> new Led(hertz, asked.or(DUTY, 0.5)));
        Matter matter = Matter.of(asked, words.lexicon());
        return PhotoJson.tree(
                Worked.orRefusal(
                        "the numbers of the photograph",
                        () ->
                                PhotoReading.of(
                                        Trace.of(matter.pairing()),
                                        asked.or(LIGHT, matter.document().kit().headDiameter()),
                                        led,
                                        asked.maybeNumber(SHUTTER))));
    }

    /** What files there are to be fetched; for tests. */
    TakenFolder files() {
        return taken;
    }

    @Override
    public void close() {
        synchronized (newest) {
            newest.values().forEach(older -> older.set(true));
        }
        taken.close();
    }
}
