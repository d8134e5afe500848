package deferent.take;

import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Rate;
import deferent.page.sheet.CueSheet;
import deferent.page.sheet.Print;
import deferent.page.sheet.SetSheet;
import deferent.record.SetJson;
import deferent.record.cue.CueTable;
import deferent.record.cue.SetCues;
import deferent.record.cue.SungSet;
import deferent.reel.Kind;
import deferent.reel.WebVtt;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The table of endings in which a set is taken away: a row each. A table of its own, since the same
 * ending means another file here: a clip that plays the set once through, a sheet of all of it.
 */
public final class SetEndings {
    /** How such a file is written. */
    interface Writing {
        /** Of a set with what is wished. Whatever is wrong is refused before a byte is written. */
        Streamed.Writing of(SetTake take);
    }

    /**
     * A row.
     *
     * @param ending what it is, and what may be wished
     * @param sung whether only a set with a song is written so
     * @param writing how; empty for clips, which are filmed
     */
    public record Row(Ending ending, boolean sung, Optional<Writing> writing) {
        /** Without the dot: "mid". */
        public String key() {
            return ending.key();
        }
    }

    /**
     * A file of a set as it is offered: a row, or one of its forms.
     *
     * @param form said as the wish of that name; empty where there is one form alone
     * @param words what it is
     */
    public record Choice(Row row, Optional<String> form, String words) {}

    private static final Ending.Family CUES =
            new Ending.Family("cues", "Cues", "for whoever calls, plays or cuts");

    private static final String FORM =
            """
            sheet  sheet with pictures
            cue    cue sheet to print
            """;

    private static final List<Row> ALL = rows();

    private SetEndings() {}

    private static List<Row> rows() {
        List<Row> rows = new ArrayList<>();
        for (Kind kind : Kind.values()) {
            rows.add(new Row(new ClipEnding(kind), false, Optional.empty()));
        }
        rows.add(
                row(
                        Endings.of("pdf"),
                        "sheet with pictures, or cue sheet",
                        List.of(
                                Wish.VIEW.usual(),
                                Wish.PAPER.usual(),
                                Wish.LEFT_HANDED.usual(),
                                Wish.FORM
                                        .usual()
                                        .choosing(Offer.Choice.table(FORM))
                                        .unsaid("sheet")),
                        take -> printed(take)));
        rows.add(
                row(
                        Endings.of("html"),
                        "page that plays the set, to its song where it has one, without a network",
                        List.of(Wish.LEFT_HANDED.usual()),
                        SetPage::of));
        rows.add(
                row(
                        Endings.of("csv"),
                        "cue sheet as a table",
                        List.of(Wish.LEFT_HANDED.usual()),
                        take -> text("cue sheet as a table", CueTable.csv(take.cues()))));
        rows.add(
                row(
                        alone("vtt", "text/vtt"),
                        "cues as captions, timed to the song",
                        List.of(Wish.LEFT_HANDED.usual()),
                        take ->
                                text(
                                        "cues as captions",
                                        WebVtt.of(take.reading().name(), take.captions()))));
        rows.add(
                row(
                        alone("otio", "application/vnd.otio+json"),
                        "markers for programs that cut films",
                        List.of(Wish.FPS.usual().unsaid("25"), Wish.LEFT_HANDED.usual()),
                        SetEndings::timeline));
        rows.add(
                sung(
                        alone("wav", "audio/wav"),
                        "click track: a bar to count in, then a click on each beat of the song",
                        SetEndings::click));
        rows.add(
                sung(
                        alone("mid", "audio/midi"),
                        "tempo, bars, counts and markers for programs that make music",
                        SetEndings::midi));
        rows.add(
                row(
                        Endings.of("json"),
                        "the set worked out",
                        List.of(Wish.LEFT_HANDED.usual()),
                        take -> text("a set worked out", SetJson.write(take.reading()))));
        return List.copyOf(rows);
    }

    private static SetAlone alone(String key, String mediaType) {
        return new SetAlone(key, mediaType, "", CUES, List.of());
    }

    private static Row row(Ending as, String words, List<Offer> offers, Writing writing) {
        return new Row(
                new SetAlone(as.key(), as.mediaType(), words, as.family(), offers),
                false,
                Optional.of(writing));
    }

    private static Row sung(Ending as, String words, Writing writing) {
        return new Row(row(as, words, List.of(), writing).ending(), true, Optional.of(writing));
    }

    private static Streamed.Writing text(String told, String text) {
        return Streamed.Writing.whole(told, text.getBytes(StandardCharsets.UTF_8));
    }

    private static Streamed.Writing printed(SetTake take) {
        boolean cue = take.wishes().word(Wish.FORM).equals("cue");
        Print print =
                cue
                        ? new CueSheet(take.cues(), take.edition())
                        : new SetSheet(take.reading(), take.edition());
        return (out, listener, stop) ->
                print.write(out, p -> listener.accept(TakeProgress.of(p)), stop)
                        ? Optional.of(cue ? "cue sheet" : "sheet of a set")
                        : Optional.empty();
    }

    private static Streamed.Writing timeline(SetTake take) {
        Rate rate = Rate.of(take.wishes().text(Wish.FPS).orElseThrow());
        SetCues cues = take.cues();
        return text(
                cues.cues().size() + " markers at " + rate.said() + " frames a second",
                new Timeline(cues, take.song(), rate).json());
    }

    private static Streamed.Writing click(SetTake take) {
        ClickTrack track = ClickTrack.of(take.song().orElseThrow());
        return (out, listener, stop) -> {
            track.write(out);
            return Optional.of(track.told());
        };
    }

    private static Streamed.Writing midi(SetTake take) {
        SungSet sung = take.song().orElseThrow();
        return (out, listener, stop) -> {
            MidiSet.write(sung, out);
            return Optional.of("tempo, bars, counts and markers from the start of the song");
        };
    }

    /** In the order they are offered. */
    public static List<Row> all() {
        return ALL;
    }

    /** The same, each form of a row apart. */
    public static List<Choice> choices() {
        return ALL.stream().flatMap(SetEndings::forms).toList();
    }

    private static Stream<Choice> forms(Row row) {
        List<Offer.Choice> forms =
                row.writing().isEmpty()
                        ? List.of()
                        : row.ending().offers().stream()
                                .filter(offer -> offer.wish() == Wish.FORM)
                                .flatMap(offer -> offer.choices().stream())
                                .toList();
        return forms.isEmpty()
                ? Stream.of(new Choice(row, Optional.empty(), row.ending().words()))
                : forms.stream()
                        .map(form -> new Choice(row, Optional.of(form.value()), form.words()));
    }

    /** By a file's name. */
    public static Row of(Path file) {
        String name = String.valueOf(file.getFileName());
        return of(name.substring(name.lastIndexOf('.') + 1));
    }

    /** By its key. */
    public static Row of(String key) {
        return ALL.stream()
                .filter(row -> row.key().equals(key.toLowerCase(Locale.ROOT)))
                .findFirst()
                .orElseThrow(
                        () ->
                                new Refusal(
                                        "ends in ." + key + ", which no set is written as",
                                        "the file",
                                        "end it in " + listed(ALL.stream())));
    }

    /** ".mp4, .webm". */
    private static String listed(Stream<Row> rows) {
        return rows.map(row -> "." + row.key()).collect(Collectors.joining(", "));
    }

    /** Why a set without a song is not written so. */
    static Refusal songless(Row row) {
        return new Refusal(
                "wants a song, and the set has none",
                "a ." + row.key() + " file of a set",
                "give the set a song, or end the file in "
                        + listed(ALL.stream().filter(other -> !other.sung())));
    }
}
