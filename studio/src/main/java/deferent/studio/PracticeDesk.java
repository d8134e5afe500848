package deferent.studio;

import static deferent.studio.AskKey.keys;

import deferent.film.practice.OverWeeks;
import deferent.film.practice.PracticeTree;
import deferent.film.practice.PractisedFilm;
import deferent.film.practice.WeeksPicture;
import deferent.motion.phrase.Phrase;
import deferent.motion.phrase.PhraseError;
import deferent.page.Palette;
import deferent.record.Practice;
import deferent.record.PracticeLog;
import deferent.record.Shelf;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Practice over the weeks: keeps what was read from a film, and says how much closer it came. */
final class PracticeDesk {
    private static final int WIDEST = 2000;

    private static final AskKey<String> NAME =
            AskKey.text("name", "what to call it; unsaid, the pattern");
    private static final AskKey<Boolean> REPLACE =
            AskKey.yes("replace", "whether what was kept of this film before is replaced");
    private static final AskKey<Double> WRITTEN =
            AskKey.number(
                    "written_ms",
                    "when the film's file was last written, milliseconds since 1970",
                    0,
                    1e14,
                    "ms");
    private static final List<AskKey<?>> KEYS =
            keys(FilmDesk.KEYS, keys(NAME, REPLACE, WRITTEN.must()));

    private final PracticeLog log;
    private final FilmDesk films;
    private final Wordbook words;

    PracticeDesk(Shelf shelf, FilmDesk films, Wordbook words) {
        this.log = PracticeLog.of(shelf);
        this.films = films;
        this.words = words;
    }

    void configure(RoutesConfig routes) {
        routes.get("/api/practice", this::list);
        routes.get("/api/practice/weeks", this::weeks);
        routes.get("/api/practice/picture", this::picture);
        routes.post("/api/practice", this::keep);
    }

    private void list(Context context) {
        ShelfDesk.json(context, PracticeTree.of(log.look()));
    }

    private void weeks(Context context) {
        PracticeLog.Listing listing = log.look();
        String asked = pattern(context, listing);
        ObjectNode answer =
                OverWeeks.of(asked, listing)
                        .map(PracticeTree::of)
                        .orElseGet(
                                () -> JsonNodeFactory.instance.objectNode().put("pattern", asked));
        answer.setAll(PracticeTree.of(listing));
        ShelfDesk.json(context, answer);
    }

    /** What is compared, as it is kept, or in any words that mean the same. */
    private String pattern(Context context, PracticeLog.Listing listing) {
        String said = Optional.ofNullable(context.queryParam("pattern")).orElse("");
        if (!listing.of(said).isEmpty()) {
            return said;
        }
        try {
            return PractisedFilm.pattern(
                    Phrase.parse(said, words.lexicon()).pairing(), Optional.of(said));
        } catch (PhraseError aName) {
            return said;
        }
    }

    private void picture(Context context) {
        PracticeLog.Listing listing = log.look();
        OverWeeks weeks =
                OverWeeks.of(pattern(context, listing), listing)
                        .orElseThrow(
                                () ->
                                        new BadRequest(
                                                404,
                                                "was never kept",
                                                "practice of that",
                                                "keep what is read from a film of it"));
        boolean dark = "dark".equals(context.queryParam("theme"));
        context.contentType("image/svg+xml");
        context.header("Cache-Control", "no-store");
        context.result(
                WeeksPicture.svg(
                        weeks,
                        width(context.queryParam("width")),
                        dark ? Palette.Theme.DARK : Palette.Theme.LIGHT));
    }

    private static int width(@Nullable String said) {
        try {
            return said == null
                    ? WeeksPicture.USUAL
                    : Math.min(WIDEST, Math.max(WeeksPicture.NARROWEST, Integer.parseInt(said)));
        } catch (NumberFormatException notSo) {
            throw new BadRequest(400, "is no whole number", "width", "give pixels");
        }
    }

    private void keep(Context context) throws IOException {
        Question asked = Question.of(Desk.tree(Bodies.text(context)), KEYS);
        FilmDesk.Again again = films.again(asked);
        Instant written = Instant.ofEpochMilli(asked.get(WRITTEN).longValue());
        PractisedFilm film = PractisedFilm.of(again.file(), again.called(), written);
        Practice practice =
                film.read(again.film(), asked.maybe(NAME), again.ask().meant(), again.meantName());
        boolean replaced = log.twin(practice).isPresent();
        PracticeLog.Entry entry = log.keep(practice, asked.or(REPLACE, false));
        ShelfDesk.json(
                context,
                JsonNodeFactory.instance
                        .objectNode()
                        .put("id", entry.id())
                        .put("pattern", practice.pattern())
                        .put(
                                "told",
                                (replaced ? "Kept in place of the one before" : "Kept")
                                        + " beside the shelf, practised "
                                        + OverWeeks.day(practice)
                                        + " "
                                        + practice.dated().words()
                                        + "."));
    }
}
