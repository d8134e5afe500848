package deferent.film.practice;

import deferent.motion.shared.Side;
import deferent.record.Practice;
import deferent.record.PracticeLog;
import deferent.record.ToldJson;
import deferent.record.number.Written;
import java.util.LinkedHashMap;
import java.util.Map;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Practice over the weeks as JSON, for the page and for other programs. */
public final class PracticeTree {
    private PracticeTree() {}

    /**
     * What was practised: each pattern with how often and when last; and files that cannot be read.
     */
    public static ObjectNode of(PracticeLog.Listing listing) {
        ObjectNode all = JsonNodeFactory.instance.objectNode();
        Map<String, Integer> often = new LinkedHashMap<>();
        Map<String, Practice> latest = new LinkedHashMap<>();
        for (PracticeLog.Entry entry : listing.entries()) {
            often.merge(entry.practice().pattern(), 1, Integer::sum);
            latest.put(entry.practice().pattern(), entry.practice());
        }
        ArrayNode patterns = all.putArray("patterns");
        latest.forEach(
                (pattern, last) ->
                        patterns.addObject()
                                .put("pattern", pattern)
                                .put("times", often.getOrDefault(pattern, 1))
                                .put("last", last.date().toString()));
        ArrayNode others = all.putArray("not_listed");
        listing.others().forEach(n -> others.addObject().put("file", n.file()).put("why", n.why()));
        return all;
    }

    /** One pattern's progress. */
    public static ObjectNode of(OverWeeks progress) {
        ObjectNode all = JsonNodeFactory.instance.objectNode();
        all.put("pattern", progress.pattern());
        ToldJson.put(all.putArray("told"), progress.told());
        ArrayNode times = all.putArray("times");
        for (PracticeLog.Entry entry : progress.entries()) {
            Practice practice = entry.practice();
            ObjectNode one = times.addObject();
            one.put("id", entry.id());
            one.put("name", practice.name());
            one.put("date", practice.date().toString());
            one.put("dated_by", Written.word(practice.dated()));
            practice.author().ifPresent(author -> one.put("author", author));
            one.put("clip", practice.clip().name());
            ArrayNode found = one.putArray("findings");
            practice.findings().forEach(f -> found.add(f.said()));
        }
        ArrayNode kinds = all.putArray("kinds");
        for (OffKind kind : progress.kinds()) {
            ObjectNode one = kinds.addObject();
            one.put("key", kind.key());
            kind.side().map(Side::word).ifPresent(hand -> one.put("hand", hand));
            one.put("noun", kind.noun());
            one.put("unit", kind.unit());
            one.put("worth_saying", kind.worthSaying());
            one.put("told", kind.values().size() > 1 && kind.told());
            ArrayNode values = one.putArray("values");
            for (OffKind.Value value : kind.values()) {
                values.addObject()
                        .put("date", value.practice().date().toString())
                        .put("value", value.value())
                        .put("error", value.error())
                        .put("said", kind.table(value));
            }
        }
        return all;
    }
}
