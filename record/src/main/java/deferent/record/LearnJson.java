package deferent.record;

import deferent.record.number.Written;
import deferent.search.path.Drill;
import deferent.search.path.Hardness;
import deferent.search.path.Plan;
import deferent.search.path.PlannedDay;
import deferent.search.path.Sitting;
import deferent.search.path.Standing;
import deferent.tell.TellPath;
import deferent.tell.Told;
import java.time.LocalDate;
import java.util.List;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** An order to learn in and its days, as JSON; days of a plan are those since 1970-01-01. */
public final class LearnJson {
    private LearnJson() {}

    /**
     * As text.
     *
     * @param told what the plan comes to, in a sentence
     * @param wanted whether a day was said by which it is wanted
     */
    public static String write(
            PatternDocument pattern, Plan plan, TellPath words, Told told, boolean wanted) {
        return PrettyJson.text(tree(pattern, plan, words, told, wanted));
    }

    /** As a tree, to be part of a larger answer. */
    public static ObjectNode tree(
            PatternDocument pattern, Plan plan, TellPath words, Told told, boolean wanted) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("pattern", pattern.name());
        node.put("told", told.text());
        node.put("model", TellPath.MODEL);
        node.put("minutes_a_day", plan.minutesADay());
        node.put("from", date(plan.from()));
        if (wanted) {
            node.put("by", date(plan.by()));
            node.put("kept", plan.kept());
        }
        node.put("ready", date(plan.ready()));
        ArrayNode drills = node.putArray("drills");
        List<Drill> all = plan.path().drills();
        for (int i = 0; i < all.size(); i++) {
            drills.add(drill(i, all.get(i), words));
            Standing begun = plan.begun().get(i);
            ((ObjectNode) drills.get(i))
                    .put("practised_minutes", Written.rounded(begun.minutes()))
                    .put("known", begun.known());
        }
        ArrayNode leftOut = node.putArray("left_out");
        words.leftOut().forEach(leftOut::add);
        ArrayNode days = node.putArray("days");
        plan.days().forEach(day -> days.add(day(day)));
        return node;
    }

    private static String date(long day) {
        return LocalDate.ofEpochDay(day).toString();
    }

    private static ObjectNode drill(int i, Drill drill, TellPath words) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("number", i + 1);
        node.put("kind", Written.word(drill.kind()));
        drill.hand().ifPresent(side -> node.put("hand", side.word()));
        node.put("name", TellPath.name(drill));
        drill.phrase().ifPresent(phrase -> node.put("phrase", phrase));
        node.put("tempo_cycles_per_min", Written.rounded(drill.pairing().tempo()));
        node.put("minutes", drill.minutes());
        Hardness hard = drill.hardness();
        ObjectNode points = node.putObject("hardness");
        points.put("total", Written.rounded(hard.total()));
        points.put("hands", Written.rounded(hard.hands()));
        points.put("slips", Written.rounded(hard.slips()));
        points.put("slack_cords", Written.rounded(hard.cords()));
        points.put("meeting", Written.rounded(hard.meeting()));
        points.put("reach", Written.rounded(hard.reach()));
        points.put("planes", Written.rounded(hard.planes()));
        ArrayNode needs = node.putArray("needs");
        drill.needs().forEach(need -> needs.add(need + 1));
        node.put("told", words.drill(i).text());
        TellPath.Said said = words.said(i);
        said.danger().ifPresent(danger -> node.put("danger", danger));
        node.put("todo", said.todo());
        node.put("meets", said.meets());
        node.put("often", said.often());
        return node;
    }

    private static ObjectNode day(PlannedDay day) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("date", date(day.day()));
        ArrayNode sittings = node.putArray("sittings");
        for (Sitting sitting : day.sittings()) {
            ObjectNode one = sittings.addObject();
            one.put("drill", sitting.number() + 1);
            one.put("minutes", sitting.minutes());
            one.put("again", sitting.review());
        }
        return node;
    }
}
