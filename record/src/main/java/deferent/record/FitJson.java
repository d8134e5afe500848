package deferent.record;

import deferent.motion.fit.Answer;
import deferent.motion.fit.Change;
import deferent.motion.fit.FitReading;
import deferent.motion.pairing.Size;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.motion.tell.TellFit;
import deferent.motion.tell.Told;
import java.util.List;
import java.util.Optional;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * What a fit found as JSON: each answer with its pattern document, its phrase where there is one,
 * and its changes by the keys of sizes, angles in degrees.
 */
public final class FitJson {
    private FitJson() {}

    /** The fit as text. */
    public static String write(PatternDocument pattern, FitReading fit, Lexicon lexicon) {
        return PrettyJson.text(tree(pattern, fit, lexicon));
    }

    /** The fit of a pattern's pairing, as a tree to be part of a larger answer. */
    public static ObjectNode tree(PatternDocument pattern, FitReading fit, Lexicon lexicon) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("root", fit.root().word());
        node.put("goal", Keys.word(fit.goal()));
        node.put("closes", fit.closes());
        node.put("least_gap_m", rounded(fit.leastGap()));
        node.put("obstacle", Keys.word(fit.obstacle()));
        List<Told> told = TellFit.of(fit, pattern.pairing());
        ArrayNode sentences = node.putArray("told");
        told.forEach(
                one ->
                        sentences
                                .addObject()
                                .put("key", one.key())
                                .put("tone", Keys.word(one.tone()))
                                .put("text", one.text())
                                .put("why", one.why()));
        ArrayNode answers = node.putArray("answers");
        for (Answer answer : fit.answers()) {
            answers.add(answer(pattern, answer, lexicon));
        }
        return node;
    }

    /** The pattern with an answer's changes made, its phrase said anew. */
    public static PatternDocument changed(PatternDocument pattern, Answer answer, Lexicon lexicon) {
        Optional<String> phrase =
                Phrase.write(answer.pairing(), lexicon).filter(p -> p.length() <= Wording.PHRASE);
        return pattern.withPairing(answer.pairing()).withPhrase(phrase);
    }

    private static ObjectNode answer(PatternDocument pattern, Answer answer, Lexicon lexicon) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        PatternDocument changed = changed(pattern, answer, lexicon);
        changed.phrase().ifPresent(phrase -> node.put("phrase", phrase));
        node.put("told", TellFit.changes(answer, pattern.pairing()));
        ArrayNode changes = node.putArray("changes");
        for (Change change : answer.changes()) {
            Size size = change.size();
            changes.addObject()
                    .put("size", size.key())
                    .put("from", atEdge(size, change.from()))
                    .put("to", atEdge(size, change.to()));
        }
        node.put("gap_left_m", rounded(answer.gapLeft()));
        node.put("exact", answer.exact());
        node.put("moved_m", rounded(answer.moved()));
        node.set("pattern", PatternJson.tree(changed));
        return node;
    }

    private static double atEdge(Size size, double value) {
        return rounded(size.kind().angle() ? Math.toDegrees(value) : value);
    }

    private static double rounded(double value) {
        return Math.rint(value * 1e9) / 1e9 + 0.0;
    }
}
