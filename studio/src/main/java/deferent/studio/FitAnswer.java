package deferent.studio;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Lexicon;
import deferent.motion.shared.Side;
import deferent.record.PatternDocument;
import deferent.record.PatternJson;
import deferent.search.fit.ArmsFit;
import deferent.search.fit.FitReading;
import deferent.search.fit.Remedy;
import deferent.search.fit.SizeChange;
import deferent.tell.TellArms;
import deferent.tell.TellBecame;
import deferent.tell.TellFit;
import deferent.tell.Told;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** What a fit found, as the page takes it: each answer a pattern that can be opened as it is. */
final class FitAnswer {
    private FitAnswer() {}

    static ObjectNode of(FitReading fit, Matter matter, Lexicon lexicon) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("carrier", fit.carrier().word());
        node.put("goal", fit.goal().name().toLowerCase(Locale.ROOT));
        node.put("closes", fit.closes());
        node.put("least_gap_m", fit.leastGap());
        List<Told> told = TellFit.of(fit, matter.pairing());
        node.put("told", told.get(0).text());
        node.put("why", told.get(0).why());
        ArrayNode answers = node.putArray("answers");
        fit.riding()
                .ifPresent(
                        ridden -> {
                            ObjectNode one = answers.addObject().put("rides", true);
                            String ride = TellFit.ride(ridden, matter.pairing());
                            answer(one, ridden, ride, matter, lexicon);
                        });
        for (Remedy answer : fit.answers()) {
            String changes = TellFit.changes(answer, matter.pairing());
            answer(answers.addObject(), answer, changes, matter, lexicon);
        }
        ArmsFit.beside(matter.pairing(), fit, matter.document().performer())
                .ifPresent(reached -> node.put("arms_told", TellArms.beside(reached).text()));
        return node;
    }

    /** The largest version that the arms reach: one answer, or none. */
    static ObjectNode arms(Optional<ArmsFit> fit, Side carrier, Matter matter, Lexicon lexicon) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        Told told = TellArms.of(fit);
        node.put("carrier", carrier.word());
        node.put("arms", true);
        node.put("reached", fit.isPresent());
        node.put("told", told.text());
        node.put("why", told.why());
        ArrayNode answers = node.putArray("answers");
        fit.ifPresent(
                found -> {
                    ObjectNode one = answers.addObject();
                    one.put("scale", found.scale());
                    one.put("trunk_turn_deg", Math.toDegrees(found.reach().turned().greatest()));
                    pattern(one, found.pairing(), matter, lexicon);
                    changes(one, SizeChange.between(matter.pairing(), found.pairing()));
                    one.put("became", TellBecame.of(matter.pairing(), found.pairing()));
                });
        return node;
    }

    private static void answer(
            ObjectNode node, Remedy answer, String told, Matter matter, Lexicon lexicon) {
        pattern(node, answer.pairing(), matter, lexicon);
        changes(node, answer.changes());
        node.put("gap_left_m", answer.gapLeft());
        node.put("exact", answer.exact());
        node.put("told", told);
        node.put("became", TellBecame.of(matter.pairing(), answer.pairing()));
    }

    private static void pattern(ObjectNode node, Pairing pairing, Matter matter, Lexicon lexicon) {
        PatternDocument document = matter.document().saying(pairing, lexicon);
        Optional<String> phrase = document.phrase();
        node.set("pattern", PatternJson.tree(document));
        if (phrase.isPresent()) {
            node.put("phrase", phrase.get());
        } else {
            node.putNull("phrase");
        }
    }

    private static void changes(ObjectNode node, List<SizeChange> made) {
        ArrayNode changes = node.putArray("changes");
        for (SizeChange change : made) {
            SizeRow sizing = SizeRow.of(change.size(), change.to());
            changes.addObject()
                    .put("key", change.size().key())
                    .put("name", sizing.name())
                    .put("from", SizeRow.atEdge(change.size(), change.from()))
                    .put("to", sizing.value())
                    .put("unit", sizing.unit());
        }
    }
}
