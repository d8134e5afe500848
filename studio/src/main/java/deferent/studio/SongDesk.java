package deferent.studio;

import static deferent.studio.AskKey.keys;

import deferent.motion.song.Beats;
import deferent.record.Kept;
import deferent.record.Shelf;
import deferent.record.SongDocument;
import deferent.record.SongShelf;
import deferent.record.SongSound;
import deferent.sound.Mend;
import deferent.sound.Onsets;
import deferent.sound.SaidLevel;
import deferent.sound.SongReading;
import deferent.sound.words.SongTree;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Finds the beats of songs that the page brings, and keeps them on the shelf. A song is listened to
 * once; what somebody taps or sets right in it afterwards is answered from what was heard then.
 */
final class SongDesk implements AutoCloseable {
    private static final int MOST_TAPS = 2000;
    private static final int MOST_MENDS = 1000;

    private static final AskKey<String> CALLED = AskKey.text("called", "how its file is called");
    private static final AskKey<String> SONG = AskKey.text("song", "the key of a song brought in");
    private static final AskKey<List<Double>> TAPS =
            AskKey.numbers(
                    "taps_s",
                    "when somebody tapped beats, two or more in a row, from its beginning",
                    MOST_TAPS,
                    0,
                    SongReading.LONGEST,
                    "s");
    private static final AskKey<Integer> BAR =
            AskKey.whole(
                    "beats_a_bar",
                    "how many beats make a bar; unsaid it is found",
                    1,
                    Beats.LONGEST_BAR);
    private static final AskKey<String> LEVEL =
            AskKey.word("level", "twice or half as many beats", List.of("double", "half"));
    private static final AskKey<Integer> FIRST =
            AskKey.whole("first_bar", "the beat that begins a bar, from 0", 0, Beats.MOST);
    private static final AskKey<Integer> BEAT =
            AskKey.whole("beat", "the beat that falls at another time, from 0", 0, Beats.MOST);
    private static final AskKey<Double> TO =
            AskKey.number("to_s", "when it falls", 0, SongReading.LONGEST, "s");
    private static final AskKey<List<Question>> MENDS =
            AskKey.objects(
                    "mends",
                    "what is set right, one after another",
                    MOST_MENDS,
                    List.of(keys(LEVEL.must()), keys(FIRST.must()), keys(BEAT.must(), TO.must())));

    static final List<AskKey<?>> KEYS = keys(SONG.must(), TAPS, BAR, MENDS);

    private static final AskKey<String> NAME = AskKey.text("name", "under which it is kept");
    private static final AskKey<Boolean> REPLACE =
            AskKey.yes("replace", "whether in the place of the song of that name");
    private static final List<AskKey<?>> KEPT = keys(KEYS, keys(NAME.must(), REPLACE));

    private final Shelf shelf;
    private final Brought songs = new Brought("song");
    private final Map<String, Heard> heard =
            new LinkedHashMap<>() {
                private static final long serialVersionUID = 1L;

                @Override
                protected boolean removeEldestEntry(Map.Entry<String, Heard> eldest) {
                    return size() > Brought.KEPT;
                }
            };

    SongDesk(Shelf shelf) {
        this.shelf = shelf;
    }

    void configure(RoutesConfig routes) {
        routes.post("/api/song", this::begin);
        routes.post("/api/song/{key}", songs::bring);
        routes.post("/api/songs", this::keep);
    }

    private void begin(Context context) throws IOException {
        String called = Question.of(Desk.tree(Bodies.text(context)), keys(CALLED)).or(CALLED, "");
        ShelfDesk.json(
                context,
                JsonNodeFactory.instance.objectNode().put("song", songs.begin(fileName(called))));
    }

    /** As it is called where it comes from, less what no file here may have in its name. */
    static String fileName(String called) {
        String plain = called.replaceAll("[^\\p{L}\\p{N} ._()'&,+-]", "_").strip();
        String end = plain.substring(Math.max(0, plain.length() - 100));
        return end.matches("[. ]*") ? "song" : end.replaceFirst("^\\.", "_");
    }

    /** What was said of a song's beats before they were sought. */
    private record Said(SaidLevel level, OptionalInt bar) {
        static final Said NOTHING = new Said(SaidLevel.UNSAID, OptionalInt.empty());

        static Said of(Question asked) {
            List<Double> taps = asked.or(TAPS, List.of());
            return new Said(
                    taps.isEmpty() ? SaidLevel.UNSAID : SaidLevel.taps(taps),
                    asked.maybe(BAR).map(OptionalInt::of).orElseGet(OptionalInt::empty));
        }
    }

    /** What was last read from a song by what was said of it. */
    private record Last(Said said, SongReading reading) {}

    /** A song that was listened to. */
    private record Heard(Onsets onsets, Optional<Last> last) {}

    /** The beats of a song, told with how far it has come where it is listened to first. */
    Errand read(Question asked) {
        String key = asked.get(SONG);
        Path file = songs.file(key);
        Said said = Said.of(asked);
        List<Mend> mends = mends(asked);
        return new Errand(
                known(key).isPresent() ? Lanes.Work.SHORT : Lanes.Work.SONG,
                (tell, stop) ->
                        listened(key, file, tell, stop)
                                ? SongTree.tree(
                                        Mend.all(reading(key, file, said), mends), name(file))
                                : JsonNodeFactory.instance.objectNode().put("stopped", true));
    }

    private static String name(Path file) {
        return String.valueOf(file.getFileName());
    }

    /** Listens to it where that was not done; whether it has now been. */
    private boolean listened(
            String key, Path file, Consumer<ObjectNode> tell, BooleanSupplier stop) {
        if (known(key).isPresent()) {
            return true;
        }
        Paced<Double> paced = new Paced<>(share -> tell.accept(progress(share)));
        try {
            Optional<Onsets> onsets = SongReading.listen(file, paced::accept, stop);
            onsets.ifPresent(all -> put(key, new Heard(all, Optional.empty())));
            return onsets.isPresent();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ObjectNode progress(double share) {
        ObjectNode part = JsonNodeFactory.instance.objectNode();
        part.putObject("progress").put("share", Math.rint(share * 1e3) / 1e3);
        return part;
    }

    private SongReading reading(String key, Path file, Said said) {
        Heard song =
                known(key)
                        .orElseThrow(
                                () ->
                                        new BadRequest(
                                                404,
                                                "was not listened to yet, or is gone",
                                                "the song",
                                                "choose its file once more"));
        Optional<Last> last = song.last().filter(one -> one.said().equals(said));
        if (last.isPresent()) {
            return last.get().reading();
        }
        SongReading reading = SongReading.of(song.onsets(), said.level(), said.bar(), name(file));
        put(key, new Heard(song.onsets(), Optional.of(new Last(said, reading))));
        return reading;
    }

    private Optional<Heard> known(String key) {
        synchronized (heard) {
            return Optional.ofNullable(heard.get(key));
        }
    }

    private void put(String key, Heard song) {
        synchronized (heard) {
            heard.put(key, song);
        }
    }

    private static List<Mend> mends(Question asked) {
        return asked.or(MENDS, List.of()).stream().map(SongDesk::mend).toList();
    }

    private static Mend mend(Question one) {
        if (one.knows(LEVEL)) {
            return "double".equals(one.get(LEVEL)) ? new Mend.Doubled() : new Mend.Halved();
        }
        return one.knows(FIRST)
                ? new Mend.FirstBar(one.get(FIRST))
                : new Mend.Moved(one.get(BEAT), one.get(TO));
    }

    /** Keeps a song on the shelf, and its sound in the shelf's folder, since it comes from none. */
    private void keep(Context context) throws IOException {
        Question asked = Question.of(Desk.tree(Bodies.text(context)), KEPT);
        String key = asked.get(SONG);
        Path file = songs.file(key);
        Said said = Said.of(asked);
        List<Mend> mends = mends(asked);
        SongReading song = Mend.all(reading(key, file, said), mends);
        String name = asked.get(NAME).strip();
        SongDocument found =
                SongDocument.of(name, SongSound.of(file, song.seconds()), song.beats());
        boolean mended = !said.equals(Said.NOTHING) || !mends.isEmpty();
        Kept kept =
                SongShelf.keepWithSound(
                        shelf,
                        mended ? found.withMended(song.beats()) : found,
                        file,
                        asked.or(REPLACE, false),
                        "put this in its place");
        ShelfDesk.json(
                context,
                JsonNodeFactory.instance
                        .objectNode()
                        .put("id", kept.id())
                        .put("name", kept.document().name())
                        .put("told", "On the shelf: " + kept.document().name()));
    }

    @Override
    public void close() {
        songs.close();
    }
}
