package deferent.studio;

import static deferent.studio.AskKey.keys;

import deferent.film.FilmAsk;
import deferent.film.FilmReading;
import deferent.film.FilmReading.Seen;
import deferent.film.follow.HeadAt;
import deferent.film.over.Overlay;
import deferent.film.words.FilmJson;
import deferent.film.words.TellFilm;
import deferent.motion.shared.Side;
import deferent.motion.trace.Interval;
import deferent.reading.body.Performer;
import deferent.record.PatternDocument;
import deferent.record.ToldJson;
import deferent.take.FilmEndings;
import deferent.take.Filmed;
import deferent.take.Take;
import deferent.take.Wishes;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Watches films of practice. What was seen in one that the page brought is kept beside it, so that
 * another question about the same film is answered at once.
 */
final class FilmDesk implements AutoCloseable {
    private static final String NAMED = "film";

    private static final AskKey<String> FILM = AskKey.text("film", "the key of a film brought in");
    private static final AskKey<String> CALLED = AskKey.text("called", "how its file is called");
    private static final AskKey<Double> TETHER =
            AskKey.number(
                    "tether_m",
                    "how long both tethers are; unsaid, those of what was meant",
                    0.1,
                    5,
                    "m");
    private static final AskKey<Double> PIXEL =
            AskKey.number("pixel_m", "how large a pixel is at the performer", 1e-5, 0.1, "m");
    private static final AskKey<Side> FIRST =
            AskKey.one("first", "whose light is further left in the picture at first", Side.class);
    private static final AskKey<Boolean> MIRRORED =
            AskKey.yes("mirrored", "whether it shows a mirror's picture");
    private static final int LONGEST = 86_400; // seconds
    private static final AskKey<Double> FROM =
            AskKey.number("from_s", "where the part that is watched begins", 0, LONGEST, "s");
    private static final AskKey<Double> TO =
            AskKey.number("to_s", "where it ends", 0, LONGEST, "s");

    private static final AskKey<Double> TIME =
            AskKey.number("time_s", "when, from the film's beginning", 0, LONGEST, "s");
    private static final AskKey<Double> X =
            AskKey.number("x", "from the left of the upright picture", -1, 20_000, "pixels");
    private static final AskKey<Double> Y =
            AskKey.number("y", "from its top", -1, 20_000, "pixels");
    private static final List<AskKey<?>> HEAD = keys(TIME.must(), X.must(), Y.must());
    private static final int BOTH = 2;
    private static final AskKey<JsonNode> HEADS =
            AskKey.tree(
                    "pointed",
                    "both heads, where somebody pointed at them",
                    AskKey.listSchema(AskKey.objectSchema(HEAD), BOTH));

    /** What was meant is said as any pattern is; unsaid, the nearest pairing is named. */
    static final List<AskKey<?>> KEYS =
            keys(
                    Matter.MAYBE,
                    keys(FILM.must(), CALLED, TETHER, PIXEL, FIRST, MIRRORED, FROM, TO, HEADS));

    static final List<AskKey<?>> TAKEN = keys(KEYS, keys(TakeAsk.AS.must(), TakeAsk.WISHES));

    private final Wordbook words;
    private final Brought films = new Brought(NAMED);
    private final Map<String, Seen> seen =
            new LinkedHashMap<>() {
                private static final long serialVersionUID = 1L;

                @Override
                protected boolean removeEldestEntry(Map.Entry<String, Seen> eldest) {
                    return size() > Brought.KEPT;
                }
            };

    FilmDesk(Wordbook words) {
        this.words = words;
    }

    void configure(RoutesConfig routes) {
        routes.post("/api/film", this::begin);
        routes.post("/api/film/{key}", films::bring);
    }

    private void begin(Context context) throws IOException {
        ShelfDesk.json(
                context, JsonNodeFactory.instance.objectNode().put("film", films.begin(NAMED)));
    }

    /** What a film shows, told with how far it has come. */
    Errand watch(Question asked) {
        String key = asked.get(FILM);
        Path file = films.file(key);
        FilmAsk ask = ask(asked);
        String called = asked.or(CALLED, "the film");
        return new Errand(
                Lanes.Work.FILM, (tell, stop) -> watch(key, file, called, ask, tell, stop));
    }

    /**
     * A film read once more by what was seen in it.
     *
     * @param called how its file is called
     * @param meantName the meant pattern's own name
     */
    record Again(
            Path file, String called, FilmAsk ask, FilmReading film, Optional<String> meantName) {}

    Again again(Question asked) {
        String key = asked.get(FILM);
        Seen known =
                known(key)
                        .orElseThrow(
                                () ->
                                        new BadRequest(
                                                404,
                                                "was not watched yet, or is gone",
                                                "the film",
                                                "watch it first"));
        FilmAsk ask = ask(asked);
        return new Again(
                films.file(key),
                asked.or(CALLED, "the film"),
                ask,
                FilmReading.of(known, ask),
                meant(asked).map(PatternDocument::name));
    }

    private Optional<PatternDocument> meant(Question asked) {
        return asked.has(Matter.PHRASE) || asked.has(Matter.PATTERN)
                ? Optional.of(Matter.of(asked, words.lexicon()).document())
                : Optional.empty();
    }

    private FilmAsk ask(Question asked) {
        FilmAsk ask = FilmAsk.NOTHING.mirrored(asked.or(MIRRORED, false));
        Optional<Double> tether = asked.maybe(TETHER);
        if (tether.isPresent()) {
            ask = ask.tethered(tether.get());
        }
        Optional<Double> pixel = asked.maybe(PIXEL);
        if (pixel.isPresent()) {
            ask = ask.scaled(pixel.get());
        }
        Optional<Side> first = asked.maybe(FIRST);
        if (first.isPresent()) {
            ask = ask.first(first.get());
        }
        Optional<Double> from = asked.maybe(FROM);
        Optional<Double> to = asked.maybe(TO);
        if (from.isPresent() || to.isPresent()) {
            ask = ask.within(new Interval(from.orElse(0.0), to.orElse((double) LONGEST)));
        }
        if (asked.has(HEADS)) {
            List<HeadAt> heads = new ArrayList<>();
            for (JsonNode node : asked.get(HEADS)) {
                Question head = Question.of(node, HEAD);
                heads.add(new HeadAt(head.get(TIME), head.get(X), head.get(Y)));
            }
            if (heads.size() != BOTH) {
                throw new BadRequest(
                        400, "are " + heads.size(), "pointed", "point at each head once");
            }
            ask = ask.pointing(heads.get(0), heads.get(1));
        }
        Optional<PatternDocument> meant = meant(asked);
        if (meant.isPresent()) {
            ask = ask.meaning(meant.get().pairing(), meant.get().phrase().orElse(""));
        }
        return ask;
    }

    /** A file of a film, told with how far it has come. */
    Errand take(Question asked, TakeDesk takes) {
        String key = asked.get(FILM);
        Path file = films.file(key);
        FilmAsk ask = ask(asked);
        String called = asked.or(CALLED, "the film");
        Wishes wishes = Wishes.of(FilmEndings.of(asked.get(TakeAsk.AS)), TakeAsk.wishes(asked));
        Performer performer = meant(asked).map(PatternDocument::performer).orElse(Performer.USUAL);
        return new Errand(
                Lanes.Work.FILM,
                (tell, stop) -> {
                    Optional<Seen> known = seen(key, file, called, ask, tell, stop);
                    if (known.isEmpty()) {
                        return JsonNodeFactory.instance.objectNode().put("stopped", true);
                    }
                    FilmReading film = FilmReading.of(known.get(), ask);
                    Filmed filmed = new Filmed(file, film, performer, ask.kit());
                    return takes.write(Take.of(filmed, wishes, words.lexicon()), tell, stop);
                });
    }

    private Optional<Seen> seen(
            String key,
            Path file,
            String called,
            FilmAsk ask,
            Consumer<ObjectNode> tell,
            BooleanSupplier stop) {
        Optional<Seen> known = known(key);
        if (known.isEmpty()) {
            known = look(file, called, ask, tell, stop);
            known.ifPresent(all -> keep(key, all));
        }
        return known;
    }

    private ObjectNode watch(
            String key,
            Path file,
            String called,
            FilmAsk ask,
            Consumer<ObjectNode> tell,
            BooleanSupplier stop) {
        Optional<Seen> known = seen(key, file, called, ask, tell, stop);
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        if (known.isEmpty() || stop.getAsBoolean()) {
            return answer.put("stopped", true);
        }
        FilmReading film = FilmReading.of(known.get(), ask);
        answer.set("film", FilmJson.tree(film));
        ToldJson.put(answer.putArray("told"), TellFilm.of(film));
        answer.set("over", FilmOver.of(Overlay.of(film)));
        return answer;
    }

    private static Optional<Seen> look(
            Path file,
            String called,
            FilmAsk ask,
            Consumer<ObjectNode> tell,
            BooleanSupplier stop) {
        Paced<Double> paced = new Paced<>(share -> tell.accept(progress(share)));
        try {
            return Seen.of(file, called, ask, paced::accept, stop);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ObjectNode progress(double share) {
        ObjectNode part = JsonNodeFactory.instance.objectNode();
        part.putObject("progress").put("share", Math.rint(share * 1e3) / 1e3);
        return part;
    }

    private Optional<Seen> known(String key) {
        synchronized (seen) {
            return Optional.ofNullable(seen.get(key));
        }
    }

    private void keep(String key, Seen all) {
        synchronized (seen) {
            seen.put(key, all);
        }
    }

    @Override
    public void close() {
        films.close();
    }
}
