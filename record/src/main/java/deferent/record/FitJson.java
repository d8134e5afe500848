package deferent.record;

import static deferent.record.number.Written.rounded;

import deferent.motion.pairing.Size;
import deferent.motion.phrase.Lexicon;
import deferent.search.fit.ArmsFit;
import deferent.search.fit.CordedFit;
import deferent.search.fit.FitReading;
import deferent.search.fit.Remedy;
import deferent.search.fit.SizeChange;
import deferent.tell.TellArms;
import deferent.tell.TellFit;
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
        node.put("carrier", fit.carrier().word());
        node.put("goal", Keys.word(fit.goal()));
        node.put("closes", fit.closes());
        node.put("least_gap_m", rounded(fit.leastGap()));
        node.put("obstacle", Keys.word(fit.obstacle()));
        ToldJson.put(node.putArray("told"), TellFit.of(fit, pattern.pairing()));
        fit.riding()
                .ifPresent(
                        ridden ->
                                node.set(
                                        "riding",
                                        answer(
                                                pattern,
                                                ridden,
                                                TellFit.ride(ridden, pattern.pairing()),
                                                lexicon)));
        ArrayNode answers = node.putArray("answers");
        for (Remedy answer : fit.answers()) {
            String told = TellFit.changes(answer, pattern.pairing());
            answers.add(answer(pattern, answer, told, lexicon));
        }
        ArmsFit.beside(pattern.pairing(), fit, pattern.performer())
                .ifPresent(
                        reached ->
                                node.set(
                                        "within_reach",
                                        armsTree(pattern, Optional.of(reached), lexicon)));
        return node;
    }

    /** The fit of a pattern's pairing on real cords, as text. */
    public static String write(PatternDocument pattern, CordedFit fit, Lexicon lexicon) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        PatternDocument changed = pattern.saying(fit.pairing(), lexicon);
        node.put("carrier", fit.carrier().word());
        node.put("closes", fit.closes());
        node.put("possible", fit.possible());
        node.put("gap_before_m", rounded(fit.gapBefore()));
        node.put("gap_after_m", rounded(fit.gapAfter()));
        node.put("mean_after_m", rounded(fit.meanAfter()));
        node.put("tolerance_m", rounded(fit.tolerance()));
        changed.phrase().ifPresent(phrase -> node.put("phrase", phrase));
        node.put("told", TellFit.corded(fit, pattern.pairing()).text());
        changes(node.putArray("changes"), fit.changes());
        node.set("pattern", PatternJson.tree(changed));
        return PrettyJson.text(node);
    }

    /** The fit of a pairing to its performer's arms, as text. */
    public static String arms(PatternDocument pattern, Optional<ArmsFit> fit, Lexicon lexicon) {
        return PrettyJson.text(armsTree(pattern, fit, lexicon));
    }

    private static ObjectNode armsTree(
            PatternDocument pattern, Optional<ArmsFit> fit, Lexicon lexicon) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("reached", fit.isPresent());
        node.put("told", TellArms.of(fit).text());
        fit.ifPresent(
                found -> {
                    PatternDocument changed = pattern.saying(found.pairing(), lexicon);
                    node.put("scale", rounded(found.scale()));
                    node.put(
                            "trunk_turn_deg",
                            rounded(Math.toDegrees(found.reach().turned().greatest())));
                    found.closedTether().ifPresent(t -> node.put("closed_tether_m", rounded(t)));
                    changed.phrase().ifPresent(phrase -> node.put("phrase", phrase));
                    node.set("pattern", PatternJson.tree(changed));
                });
        return node;
    }

    private static ObjectNode answer(
            PatternDocument pattern, Remedy answer, String told, Lexicon lexicon) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        PatternDocument changed = pattern.saying(answer.pairing(), lexicon);
        changed.phrase().ifPresent(phrase -> node.put("phrase", phrase));
        node.put("told", told);
        changes(node.putArray("changes"), answer.changes());
        node.put("gap_left_m", rounded(answer.gapLeft()));
        node.put("exact", answer.exact());
        node.put("moved_m", rounded(answer.moved()));
        node.set("pattern", PatternJson.tree(changed));
        return node;
    }

    private static void changes(ArrayNode array, List<SizeChange> changes) {
        for (SizeChange change : changes) {
            Size size = change.size();
            array.addObject()
                    .put("size", size.key())
                    .put("from", atEdge(size, change.from()))
                    .put("to", atEdge(size, change.to()));
        }
    }

    private static double atEdge(Size size, double value) {
        return rounded(size.kind().angle() ? Math.toDegrees(value) : value);
    }
}
