package deferent.studio;

import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.PhraseError;
import deferent.record.DocumentError;
import deferent.record.ShelfError;
import java.util.List;
import java.util.logging.Level;
import java.util.logging.Logger;
import tools.jackson.core.JacksonException;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * What went wrong, as an answer: what, where, and what would be right, with the status a request
 * gets for it.
 */
record Trouble(int status, ObjectNode body) {
    private static final Logger LOG = Logger.getLogger(Trouble.class.getName());

    static Trouble of(Throwable e) {
        if (e instanceof PhraseError error) {
            ObjectNode body =
                    body(error.what(), error.text().isBlank() ? "phrase" : "phrase", right(error));
            ObjectNode inner = (ObjectNode) body.get("error");
            inner.put("start", error.start());
            inner.put("end", error.end());
            inner.put("expected", error.expected());
            inner.put("underlined", error.underlined());
            nearest(inner, error.nearest());
            return new Trouble(422, body);
        }
        if (e instanceof Refusal refusal) {
            return new Trouble(422, body(refusal.what(), refusal.where(), refusal.right()));
        }
        if (e instanceof DocumentError error) {
            ObjectNode body = body(error.what(), error.where(), error.right());
            ObjectNode inner = (ObjectNode) body.get("error");
            if (error.line() > 0) {
                inner.put("line", error.line());
                inner.put("column", error.column());
            }
            nearest(inner, error.nearest());
            return new Trouble(422, body);
        }
        if (e instanceof ShelfError error) {
            int status =
                    switch (error.kind()) {
                        case MISSING -> 404;
                        case CHANGED -> 412;
                        case NAME -> 400;
                        case SIZE -> 413;
                        case FOLDER -> 500;
                    };
            return new Trouble(status, body(error.what(), error.where(), error.right()));
        }
        if (e instanceof BadRequest bad) {
            return new Trouble(bad.status(), body(bad.what(), bad.where(), bad.right()));
        }
        if (e instanceof JacksonException json) {
            return new Trouble(400, badJson(json));
        }
        LOG.log(Level.SEVERE, "a question could not be answered", e);
        return new Trouble(
                500,
                body(
                        "could not be worked out",
                        "studio",
                        "this is a fault of the studio; what was logged says more"));
    }

    private static String right(PhraseError error) {
        return error.nearest().isEmpty()
                ? error.expected()
                : "did you mean " + String.join(" or ", error.nearest()) + "?";
    }

    private static ObjectNode badJson(JacksonException json) {
        TokenStreamLocation at = json.getLocation();
        String where =
                at == null || at.getLineNr() < 1
                        ? "body"
                        : "line " + at.getLineNr() + ", column " + at.getColumnNr();
        return body("is not JSON: " + json.getOriginalMessage(), where, "send one JSON object");
    }

    private static void nearest(ObjectNode inner, List<String> words) {
        ArrayNode list = inner.putArray("nearest");
        words.forEach(list::add);
    }

    /** {"error": {"what", "where", "right"}}. */
    static ObjectNode body(String what, String where, String right) {
        ObjectNode body = JsonNodeFactory.instance.objectNode();
        body.putObject("error").put("what", what).put("where", where).put("right", right);
        return body;
    }
}
