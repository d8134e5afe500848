package deferent.tell;

import deferent.motion.pairing.Pairing;
import deferent.motion.trace.Counts;
import deferent.reading.body.Pass;
import deferent.reading.body.Pass.Kind;
import deferent.reading.body.Pass.Thing;
import deferent.reading.body.Pass.Way;
import deferent.reading.body.Passes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Says which poi or arm passes before, behind or over which, by counts: what a spinner has to
 * decide. What stays before the body goes without saying, and so does which of two cords is in
 * front where that is always the same one, because the room tells it. What comes again the other
 * way round is told once.
 */
final class TellPasses {
    // Shares of a cycle: what is no longer is a touch, not a pass; what lies so near to one another
    // is one.
    private static final double GLANCE = 0.01;
    private static final double NEAR = 0.03;
    private static final double SAME = 0.02;
    private static final int MANY = 4;

    // Metres too few to say.
    private static final double NOTHING = 0.0005;

    private final Pairing pairing;
    private final double cycle;
    private final Map<Who, List<Pass>> grouped;

    private TellPasses(Pairing pairing, Passes passes) {
        this.pairing = pairing;
        this.cycle = pairing.period();
        this.grouped = grouped(passes);
    }

    static List<Told> of(Pairing pairing, Passes passes) {
        return new TellPasses(pairing, passes).told();
    }

    /** One thing passing another; both segments of an arm go under the forearm's name. */
    private record Who(Thing one, Way way, Thing other) {
        boolean cords() {
            return one.kind() == Kind.POI && other.kind() == Kind.POI;
        }

        boolean arms() {
            return one.kind().arm() && other.kind().arm();
        }

        Who mirrored() {
            return new Who(one.mirrored(), way, other.mirrored());
        }

        /** In which order they are told. */
        int rank() {
            return arms() ? 0 : one.kind().body() || other.kind().body() ? 1 : cords() ? 3 : 2;
        }
    }

    /** A spell, seconds, and how near the two come in its middle, metres. */
    private record Spell(double from, double to, double by) {
        double middle() {
            return (from + to) / 2;
        }
    }

    private List<Told> told() {
        Map<Who, List<Spell>> all = new LinkedHashMap<>();
        for (Map.Entry<Who, List<Pass>> of : grouped.entrySet()) {
            List<Spell> spells = merged(of.getValue());
            if (!spells.isEmpty()) {
                all.put(of.getKey(), spells);
            }
        }
        List<Who> in =
                new ArrayList<>(all.keySet().stream().filter(who -> matters(who, all)).toList());
        in.sort(Comparator.comparingInt(Who::rank));
        List<Told> told = new ArrayList<>();
        while (!in.isEmpty()) {
            Who who = in.remove(0);
            List<Spell> spells = all.getOrDefault(who, List.of());
            Who back = who.mirrored();
            Optional<String> again =
                    in.contains(back)
                            ? again(who, spells, all.getOrDefault(back, List.of()))
                            : Optional.empty();
            again.ifPresent(same -> in.remove(back));
            String how = again.orElseGet(() -> sentence(who, always(spells)));
            told.add(
                    new Told(
                            "passes",
                            Told.Tone.NOTE,
                            Say.capital(when(spells)) + " " + how + ".",
                            why(who, spells)));
        }
        return told;
    }

    // By owners: a poi, an arm, a part of the body.
    private static Map<Who, List<Pass>> grouped(Passes passes) {
        Map<Who, List<Pass>> grouped = new LinkedHashMap<>();
        for (Pass pass : passes.all()) {
            if (!pass.touching()) {
                Who who = new Who(owner(pass.one()), pass.way(), owner(pass.other()));
                grouped.computeIfAbsent(who, none -> new ArrayList<>()).add(pass);
            }
        }
        return grouped;
    }

    private static Thing owner(Thing thing) {
        return thing.kind().arm() ? new Thing(Kind.FOREARM, thing.side()) : thing;
    }

    private List<Spell> merged(List<Pass> passes) {
        List<Spell> spells = new ArrayList<>();
        passes.stream()
                .sorted(Comparator.comparingDouble(pass -> pass.spell().start()))
                .forEach(pass -> join(spells, pass));
        int last = spells.size() - 1;
        // What runs over the cycle's end goes on at its start.
        if (last > 0 && spells.get(last).to - cycle > spells.get(0).from - NEAR * cycle) {
            Spell end = spells.remove(last);
            Spell start = spells.remove(0);
            spells.add(
                    new Spell(
                            end.from,
                            Math.max(end.to, start.to + cycle),
                            Math.min(end.by, start.by)));
        }
        spells.removeIf(spell -> spell.to - spell.from < GLANCE * cycle);
        return spells;
    }

    private void join(List<Spell> spells, Pass pass) {
        Spell next = new Spell(pass.spell().start(), pass.spell().end(), pass.by());
        int last = spells.size() - 1;
        if (last >= 0 && next.from - spells.get(last).to < NEAR * cycle) {
            Spell before = spells.remove(last);
            next =
                    new Spell(
                            before.from,
                            Math.max(before.to, next.to),
                            Math.min(before.by, next.by));
        }
        spells.add(next);
    }

    private static boolean matters(Who who, Map<Who, List<Spell>> all) {
        if (who.one.kind() == Kind.NECK) {
            // What passes behind the head too is told of that.
            Thing head = new Thing(Kind.HEAD, Optional.empty());
            return !all.containsKey(new Who(head, who.way, who.other));
        }
        if (who.other.kind().body()) {
            return who.way == Way.OVER;
        }
        if (who.cords()) {
            return all.containsKey(who.mirrored());
        }
        // Arms that cross over one another are told so.
        boolean over =
                all.keySet().stream()
                        .anyMatch(one -> one.way == Way.OVER && one.arms() && one.one.kind().arm());
        return !(who.arms() && who.way == Way.BEFORE && over);
    }

    /** How the same comes again with the sides changed about, if it does. */
    private Optional<String> again(Who who, List<Spell> spells, List<Spell> mirrored) {
        String what = sentence(who, false);
        if (shifted(spells, mirrored, 0) && !who.arms() && !who.cords()) {
            return Optional.of(each(who));
        }
        return shifted(spells, mirrored, cycle / 2)
                ? Optional.of(what + ", and half a cycle later the other way round")
                : Optional.empty();
    }

    private boolean shifted(List<Spell> spells, List<Spell> others, double by) {
        return spells.size() == others.size()
                && spells.stream()
                        .allMatch(
                                spell ->
                                        others.stream().anyMatch(other -> comes(spell, other, by)));
    }

    private boolean comes(Spell spell, Spell other, double by) {
        return Math.abs(Math.IEEEremainder(spell.middle() + by - other.middle(), cycle))
                        < SAME * cycle
                && Math.abs(spell.to - spell.from - other.to + other.from) < SAME * cycle;
    }

    private String each(Who who) {
        return who.one.kind().body()
                ? "each " + noun(who, false) + " passes behind your " + noun(who, true)
                : "each "
                        + noun(who, true)
                        + (who.other.kind().body()
                                ? " passes over your "
                                : " passes before the other ")
                        + noun(who, false);
    }

    /**
     * @param always whether it does so all the time, and so does not pass
     */
    private String sentence(Who who, boolean always) {
        String one = noun(who, true);
        String other = noun(who, false);
        String passes = always ? " is " : " passes ";
        if (who.one.kind().body()) {
            return "the " + side(who.other) + other + passes + "behind your " + one;
        }
        if (who.other.kind().body()) {
            return "the " + side(who.one) + one + passes + "over your " + other;
        }
        String last =
                one.equals(other) ? who.other.side().orElseThrow().word() : side(who.other) + other;
        return "the "
                + side(who.one)
                + one
                + (who.way == Way.BEFORE
                        ? passes + "before the "
                        : always ? " is over the " : " crosses over the ")
                + last;
    }

    private static String side(Thing thing) {
        return thing.side().map(side -> side.word() + " ").orElse("");
    }

    /** An arm of which one segment alone passes is called by that. */
    private String noun(Who who, boolean first) {
        Kind kind = (first ? who.one : who.other).kind();
        if (kind.arm()) {
            List<Kind> kinds =
                    Stream.of(who, who.mirrored())
                            .flatMap(either -> grouped.getOrDefault(either, List.of()).stream())
                            .map(pass -> (first ? pass.one() : pass.other()).kind())
                            .distinct()
                            .toList();
            return kinds.size() > 1
                    ? "arm"
                    : kinds.get(0) == Kind.FOREARM ? "forearm" : "upper arm";
        }
        return kind.name().toLowerCase(Locale.ROOT);
    }

    private String when(List<Spell> spells) {
        if (spells.size() == 1) {
            return when(spells.get(0));
        }
        return spells.size() > MANY
                ? spells.size() + " times a cycle, first " + when(spells.get(0)) + ","
                : Say.listed(spells.stream().map(this::when).toList(), "and");
    }

    private String when(Spell spell) {
        double beat = cycle / Counts.aCycle(pairing);
        if (always(List.of(spell))) {
            return "all the time";
        }
        if (spell.to - spell.from < beat) {
            return TellTransition.count(pairing, spell.middle());
        }
        String from = TellTransition.nearest(pairing, spell.from);
        String to = TellTransition.nearest(pairing, spell.to);
        return from.equals(to)
                ? TellTransition.count(pairing, spell.middle())
                : "from " + from + " to " + to;
    }

    private boolean always(List<Spell> spells) {
        return spells.stream().anyMatch(spell -> spell.to - spell.from > (1 - NEAR) * cycle);
    }

    private static String why(Who who, List<Spell> spells) {
        double by = spells.stream().mapToDouble(Spell::by).min().orElseThrow();
        boolean body = who.one.kind().body() || who.other.kind().body();
        String off = body ? " off the body's surface" : " apart";
        return (who.way == Way.OVER ? "Seen from above" : "Seen by the audience")
                + ", one lies over the other then"
                + (by < NOTHING ? "" : ", at least " + Say.length(by) + off)
                + ". Elbows are led out of the way where they can be.";
    }
}
