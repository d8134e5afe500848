package deferent.record.number;

import deferent.motion.shared.Side;
import deferent.reading.danger.Danger;
import deferent.reading.danger.DangerEnd;
import deferent.reading.danger.Dangers;
import deferent.reading.danger.Hazard;
import deferent.reading.danger.Level;
import deferent.reading.tether.Kit;
import deferent.reading.worked.Worked;
import deferent.search.whole.Readings;
import java.util.List;
import java.util.OptionalDouble;

/** What can hurt, as JSON: a row a number, as {@link ReadingTables} has them. */
final class DangerTables {
    private static final Table<Danger> DANGER =
            Table.<Danger>named("danger")
                    .word("level", "care or danger", Level.class, Danger::level)
                    .word("quantity", "what it is", Hazard.class, Danger::hazard)
                    .value("side", "whose", Written.word(Side.class).maybe(), Danger::side)
                    .number("value", "how much, in its unit", Danger::value)
                    .number("limit", "where this level begins", Danger::limit)
                    .text("unit", "of value and limit", danger -> danger.hazard().unit())
                    .number("time_s", "when it is worst", Danger::time)
                    .value(
                            "ends_with",
                            "what has to change",
                            Written.word(DangerEnd.Kind.class).maybe(),
                            danger -> danger.end().map(DangerEnd::kind))
                    .maybe(
                            "ends_at_tempo_cycles_per_min",
                            "gone at this tempo and below",
                            danger -> end(danger, DangerEnd.Kind.TEMPO))
                    .maybe(
                            "ends_forward_m",
                            "gone with everything so much further forward",
                            danger -> end(danger, DangerEnd.Kind.FORWARD))
                    .maybe(
                            "ends_apart_m",
                            "gone with the planes so much further apart",
                            danger -> end(danger, DangerEnd.Kind.APART))
                    .maybe(
                            "ends_at_size_share",
                            "gone with tethers and hand paths at that share",
                            danger -> end(danger, DangerEnd.Kind.SIZE));

    /** The gravest level. */
    static final Written<Worked<Level>> LEVEL = Written.word(Level.class).worked();

    /** All that asks for care or is a danger; empty where all is calm. */
    static final Written<Worked<List<Danger>>> ALL = DANGER.written().listed().worked();

    static final Written<Worked<List<String>>> UNKNOWN = Written.text().listed().worked();

    static final Written<Worked<Kit.Heads>> HEADS = Written.word(Kit.Heads.class).worked();

    private DangerTables() {}

    static Worked<Level> level(Readings all) {
        return all.dangers().as("danger level", Dangers::level);
    }

    static Worked<List<Danger>> all(Readings all) {
        return all.dangers().as("dangers", Dangers::all);
    }

    static Worked<List<String>> unknown(Readings all) {
        return all.dangers().as("what was not looked at", Dangers::unknown);
    }

    static Worked<Kit.Heads> heads(Readings all) {
        return all.dangers().as("the heads", Dangers::heads);
    }

    private static OptionalDouble end(Danger danger, DangerEnd.Kind kind) {
        return danger.end().stream()
                .filter(end -> end.kind() == kind)
                .mapToDouble(DangerEnd::value)
                .findFirst();
    }
}
