package deferent.reading.danger;

import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.body.Room;
import deferent.reading.tether.Kit;
import deferent.reading.tether.Pull;
import deferent.reading.worked.Detail;
import deferent.reading.worked.Worked;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * All that can hurt in one motion, the gravest first.
 *
 * @param heads with which heads it was looked for
 * @param all what asks for care or is a danger
 * @param unknown what could not be looked at, because what it rests on was not worked out
 */
public record Dangers(Kit.Heads heads, List<Danger> all, List<String> unknown) {
    public Dangers {
        all = List.copyOf(all);
        unknown = List.copyOf(unknown);
    }

    /**
     * Looked for in what was read already.
     *
     * @param detail live: without where each ends
     */
    public static Dangers of(
            Trace trace,
            Performer performer,
            Kit kit,
            Worked<Room> room,
            Worked<Pull> left,
            Worked<Pull> right,
            Detail detail) {
        DangerSearch search = new DangerSearch(trace, performer, kit, detail != Detail.LIVE);
        List<String> unknown = new ArrayList<>();
        room.reading().ifPresent(search::room);
        room.failure().ifPresent(not -> unknown.add(not.what()));
        for (Worked<Pull> pull : List.of(left, right)) {
            pull.reading().ifPresent(search::pull);
            pull.failure().ifPresent(not -> unknown.add(not.what()));
        }
        for (Side side : Side.values()) {
            search.turns(side);
            search.audience(side);
        }
        return new Dangers(
                kit.heads(),
                search.found().stream()
                        .sorted(
                                Comparator.comparing(Danger::level)
                                        .reversed()
                                        .thenComparing(Danger::hazard))
                        .toList(),
                unknown);
    }

    /** The gravest level of all; what could not be looked at counts for nothing. */
    public Level level() {
        return all.stream().map(Danger::level).max(Comparator.naturalOrder()).orElse(Level.CALM);
    }

    public List<Danger> of(Level level) {
        return all.stream().filter(danger -> danger.level() == level).toList();
    }

    /** What there is of a hazard: on that side, if it is of one. */
    public Optional<Danger> of(Hazard hazard, Side side) {
        return all.stream()
                .filter(d -> d.hazard() == hazard && d.side().orElse(side) == side)
                .findFirst();
    }
}
