package deferent.studio;

import deferent.motion.trace.Trace;
import deferent.page.Palette;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.Svg;
import deferent.record.Document;
import deferent.record.Kept;
import deferent.record.PatternDocument;
import deferent.record.PatternJson;
import deferent.record.Shelf;
import deferent.record.ShelfJson;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * The shelf over HTTP. A revision is an entity tag: whoever saves says which one they had seen, and
 * where somebody else was faster nothing is lost.
 */
final class ShelfDesk {
    private static final int THUMBNAIL = 240;
    private static final int MOST_THUMBNAILS = 500;

    private final Shelf shelf;
    private final Wordbook words;
    private final Map<String, String> thumbnails =
            new LinkedHashMap<>(64, 0.75f, true) {
                private static final long serialVersionUID = 1L;

                @Override
                protected boolean removeEldestEntry(Map.Entry<String, String> eldest) {
                    return size() > MOST_THUMBNAILS;
                }
            };

    ShelfDesk(Shelf shelf, Wordbook words) {
        this.shelf = shelf;
        this.words = words;
    }

    void configure(RoutesConfig routes) {
        routes.get("/api/shelf", this::list);
        routes.post("/api/shelf", this::add);
        routes.get("/api/shelf/{id}", this::show);
        routes.get("/api/shelf/{id}/thumbnail", this::thumbnail);
        routes.get("/api/shelf/{id}/moves", this::moves);
        routes.put("/api/shelf/{id}", this::save);
        routes.delete("/api/shelf/{id}", this::remove);
    }

    private void list(Context context) {
        json(context, ShelfJson.tree(shelf));
    }

    private void show(Context context) {
        Kept kept = shelf.load(context.pathParam("id"));
        context.header("ETag", tag(kept.revision()));
        json(context, PatternJson.tree(kept.document()));
    }

    private void add(Context context) {
        Document document = PatternJson.read(Bodies.text(context), words.lexicon());
        saved(context, shelf.saveNew(document), 201);
    }

    private void save(Context context) {
        String id = context.pathParam("id");
        Optional<String> match = Optional.ofNullable(context.header("If-Match"));
        boolean fresh = "*".equals(context.header("If-None-Match"));
        Document document = PatternJson.read(Bodies.text(context), words.lexicon());
        if (match.isPresent() == fresh) {
            throw new BadRequest(
                    428,
                    "does not say which revision it replaces",
                    "If-Match",
                    "send If-Match with the revision you opened, or If-None-Match: * for a new"
                            + " one");
        }
        if (fresh && !Shelf.slug(id).equals(id)) {
            throw new BadRequest(
                    400,
                    "is no name for a new file",
                    "\"" + id + "\"",
                    "call it " + Shelf.slug(id));
        }
        if (fresh) {
            saved(context, shelf.saveNew(id, document), 201);
        } else {
            saved(context, shelf.save(id, document, revision(match.orElseThrow())), 200);
        }
    }

    private void saved(Context context, Kept kept, int status) {
        words.changed();
        context.status(status);
        context.header("ETag", tag(kept.revision()));
        context.header("Location", "/api/shelf/" + kept.id());
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        answer.put("id", kept.id());
        answer.put("name", kept.document().name());
        answer.put("revision", kept.revision());
        json(context, answer);
    }

    private void remove(Context context) {
        Optional<String> match = Optional.ofNullable(context.header("If-Match"));
        if (match.isEmpty()) {
            throw new BadRequest(
                    428,
                    "does not say which revision it removes",
                    "If-Match",
                    "send If-Match with the revision you saw");
        }
        shelf.remove(context.pathParam("id"), revision(match.get()));
        words.changed();
        context.status(204);
    }

    /** What a moving thumbnail of it moves through. */
    private void moves(Context context) {
        Kept kept = shelf.load(context.pathParam("id"));
        context.header("ETag", tag(kept.revision()));
        context.header("Cache-Control", "no-cache");
        if (tag(kept.revision()).equals(context.header("If-None-Match"))) {
            context.status(304);
            return;
        }
        json(context, SmallPictures.of(pictured(kept).pairing(), SmallPictures.USUAL));
    }

    private static PatternDocument pictured(Kept kept) {
        if (kept.document() instanceof PatternDocument pattern) {
            return pattern;
        }
        throw new BadRequest(
                404,
                "is a " + kept.document().kind() + ", which has no picture",
                kept.id(),
                "ask for a pattern's");
    }

    private void thumbnail(Context context) {
        Kept kept = shelf.load(context.pathParam("id"));
        PatternDocument pattern = pictured(kept);
        Palette.Theme theme =
                "dark".equals(context.queryParam("theme"))
                        ? Palette.Theme.DARK
                        : Palette.Theme.LIGHT;
        String key = kept.revision() + "-" + theme.key();
        context.header("ETag", tag(key));
        context.header("Cache-Control", "no-cache");
        if (tag(key).equals(context.header("If-None-Match"))) {
            context.status(304);
            return;
        }
        context.contentType("image/svg+xml");
        context.result(drawn(key, pattern, theme));
    }

    private String drawn(String key, PatternDocument pattern, Palette.Theme theme) {
        synchronized (thumbnails) {
            String known = thumbnails.get(key);
            if (known != null) {
                return known;
            }
        }
        Scene scene = Scene.of(Trace.of(pattern.pairing()));
        String svg = Svg.of(scene, Still.square(THUMBNAIL).with(theme).clear());
        synchronized (thumbnails) {
            thumbnails.put(key, svg);
        }
        return svg;
    }

    private static String tag(String revision) {
        return '"' + revision + '"';
    }

    private static String revision(String tag) {
        return tag.length() >= 2 && tag.startsWith("\"") && tag.endsWith("\"")
                ? tag.substring(1, tag.length() - 1)
                : tag;
    }

    static void json(Context context, ObjectNode answer) {
        context.contentType("application/json;charset=utf-8");
        context.result(Desk.JSON.writeValueAsString(answer).getBytes(StandardCharsets.UTF_8));
    }
}
