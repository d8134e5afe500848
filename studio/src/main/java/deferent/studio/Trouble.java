package deferent.studio;

import deferent.motion.phrase.PhraseError;
import deferent.motion.shared.Refused;
import deferent.record.DocumentError;
import deferent.record.ShelfError;
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
        if (e instanceof Refused refused) {
            return new Trouble(status(refused), body(refused));
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

    private static int status(Refused refused) {
        if (refused instanceof BadRequest bad) {
            return bad.status();
        }
        if (refused instanceof ShelfError error) {
            return switch (error.kind()) {
                case MISSING -> 404;
                case CHANGED -> 412;
                case NAME -> 400;
                case SIZE -> 413;
                case FOLDER -> 500;
            };
        }
        return 422;
    }

    private static ObjectNode body(Refused refused) {
        ObjectNode body = body(refused.what(), refused.where(), refused.right());
        ObjectNode inner = (ObjectNode) body.get("error");
        if (refused instanceof PhraseError error) {
            inner.put("start", error.start());
            inner.put("end", error.end());
            inner.put("expected", error.expected());
            inner.put("underlined", error.underlined());
            ArrayNode offers = inner.putArray("offers");
            error.offers().forEach(offers::add);
        }
        if (refused instanceof DocumentError error && error.line() > 0) {
            inner.put("line", error.line());
            inner.put("column", error.column());
        }
        if (refused instanceof PhraseError || refused instanceof DocumentError) {
            ArrayNode list = inner.putArray("nearest");
            refused.nearest().forEach(list::add);
        }
        return body;
    }

    private static ObjectNode badJson(JacksonException json) {
        TokenStreamLocation at = json.getLocation();
        String where =
                at == null || at.getLineNr() < 1
                        ? "body"
                        : "line " + at.getLineNr() + ", column " + at.getColumnNr();
        return body("is not JSON: " + json.getOriginalMessage(), where, "send one JSON object");
    }

    /** {"error": {"what", "where", "right"}}. */
    static ObjectNode body(String what, String where, String right) {
        ObjectNode body = JsonNodeFactory.instance.objectNode();
        body.putObject("error").put("what", what).put("where", where).put("right", right);
        return body;
    }
}
