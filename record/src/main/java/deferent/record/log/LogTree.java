package deferent.record.log;

import deferent.record.NotListed;
import deferent.record.ToldJson;
import deferent.tell.LoggedPattern;
import deferent.tell.TellLog;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** A log of practice, added up, as JSON: for other programs. */
public final class LogTree {
    private LogTree() {}

    /** The calendar, each pattern, recent work against the usual, and what cannot be read. */
    public static ObjectNode of(
            LogWeeks calendar,
            List<LoggedPattern> patterns,
            Optional<RecentWork> work,
            List<NotListed> others) {
        ObjectNode all = JsonNodeFactory.instance.objectNode();
        all.put("today", calendar.today().toString());
        ArrayNode weeks = all.putArray("weeks");
        for (LogWeeks.Week week : calendar.weeks()) {
            ObjectNode one = weeks.addObject().put("monday", week.monday().toString());
            ArrayNode minutes = one.putArray("minutes");
            week.minutes().forEach(minutes::add);
            one.put("total_minutes", week.total());
            one.put("total_told", TellLog.minutes(week.total()));
        }
        all.put("entries_ahead", calendar.ahead());
        ArrayNode practised = all.putArray("patterns");
        patterns.forEach(pattern -> practised.add(of(pattern)));
        work.ifPresent(w -> all.set("recent_work", of(w)));
        ArrayNode unread = all.putArray("not_listed");
        others.forEach(n -> unread.addObject().put("file", n.file()).put("why", n.why()));
        return all;
    }

    /** What the log holds of a pattern. */
    public static ObjectNode of(LoggedPattern logged) {
        ObjectNode one = JsonNodeFactory.instance.objectNode();
        one.put("pattern", logged.pattern());
        one.put("times", logged.times());
        one.put("minutes", logged.minutes());
        ObjectNode parts = one.putObject("minutes_of_parts");
        logged.parts().forEach(parts::put);
        logged.reached()
                .ifPresent(
                        reached -> {
                            one.put("reached_cycles_per_min", reached.tempo());
                            reached.part().ifPresent(part -> one.put("reached_part", part));
                        });
        one.put("last", logged.last());
        logged.went().ifPresent(went -> one.put("went", went));
        ToldJson.put(one.putObject("told"), TellLog.pattern(logged));
        return one;
    }

    private static ObjectNode of(RecentWork work) {
        ObjectNode one = JsonNodeFactory.instance.objectNode();
        one.put("minutes", work.minutes());
        one.put("usual_minutes", work.usualMinutes());
        one.put("unweighed_minutes", work.unweighed());
        ArrayNode arms = one.putArray("arms");
        for (RecentWork.Worked arm : work.arms()) {
            arms.addObject()
                    .put("spot", arm.spot().name().toLowerCase(Locale.ROOT))
                    .put("hand", arm.side().word())
                    .put("week_n_s", arm.week())
                    .put("usual_week_n_s", arm.usual());
        }
        work.told().ifPresent(told -> ToldJson.put(one.putObject("told"), told));
        return one;
    }
}
