package deferent.tell;

import deferent.search.route.RouteFound;
import deferent.search.route.RouteSearch;
import deferent.search.route.ShelfMap;
import deferent.search.route.TableProgress;
import deferent.search.transition.Grade;
import deferent.search.transition.Hindrance;
import deferent.tell.Told.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.IntFunction;
import java.util.stream.IntStream;

/** Says the shelf as a map, and a route over it. */
public final class TellRoute {
    /** More names than that nobody reads. */
    private static final int MOST_NAMES = 3;

    private TellRoute() {}

    /**
     * The patterns of a route in their order; or that there is none.
     *
     * @param from what it starts with
     * @param to what it is to lead to
     * @param names of the shelf's patterns
     * @param grades of its steps as they are played
     */
    public static List<Told> of(
            RouteFound found,
            String from,
            String to,
            IntFunction<String> names,
            List<Grade> grades) {
        List<Told> told = new ArrayList<>();
        told.add(
                found.route()
                        .map(
                                route ->
                                        way(
                                                route.patterns().stream()
                                                        .map(names::apply)
                                                        .toList(),
                                                grades))
                        .orElseGet(() -> none(found, from, to)));
        if (!found.done()) {
            told.add(
                    new Told(
                            "route.stopped",
                            Tone.NOTE,
                            found.route().isPresent()
                                    ? "Stopped, so there may be a gentler route."
                                    : "Stopped before the search was over.",
                            "Only what had been worked out by then was looked at."));
        }
        return List.copyOf(told);
    }

    private static Told way(List<String> names, List<Grade> grades) {
        String why =
                "The route of which all steps together are gentlest; a change more counts as a tenth"
                        + " of a grade (our choice). How each is played depends on the counts, too.";
        if (grades.isEmpty()) {
            return new Told(
                    "route",
                    Tone.GOOD,
                    String.join(", then ", names) + ": you are there already.",
                    why);
        }
        Grade hardest = grades.stream().max(Grade::compareTo).orElseThrow();
        boolean alike = grades.stream().distinct().count() == 1;
        String how =
                grades.size() == 1
                        ? TellTransition.grade(hardest)
                        : alike
                                ? TellTransition.grade(hardest) + " each time"
                                : "at its hardest " + TellTransition.grade(hardest);
        return new Told(
                "route",
                hardest == Grade.HARD ? Tone.NOTE : Tone.GOOD,
                String.join(", then ", names) + ": " + how + ".",
                why);
    }

    private static Told none(RouteFound found, String from, String to) {
        if (!found.done()) {
            return new Told(
                    "route",
                    Tone.NOTE,
                    "No route from " + from + " to " + to + " was found so far.",
                    "Pairs compared: " + found.looked() + ".");
        }
        String because = TellTransition.because(found.straight());
        return new Told(
                "route",
                Tone.NOTE,
                "Nothing leads from "
                        + from
                        + " to "
                        + to
                        + ", nor through other patterns of the shelf"
                        + (found.straight() == Hindrance.NONE ? "." : ": " + because + "."),
                "Everything that can be reached from the first was tried, up to the grade that was"
                        + " asked. The reason told is the one straight from the first to the second.");
    }

    /** How far a search for a route has come. */
    public static String progress(RouteSearch.Progress at) {
        return compared(at.looked())
                + at.best()
                        .map(
                                route ->
                                        route.steps().size() == 1
                                                ? ", one change leads there"
                                                : ", "
                                                        + route.steps().size()
                                                        + " changes lead there")
                        .orElse("");
    }

    private static String compared(int pairs) {
        return pairs == 1 ? "1 pair of patterns compared" : pairs + " pairs of patterns compared";
    }

    /** How far a map has come. */
    public static String progress(TableProgress at) {
        return at.done() + " of " + at.all() + " pairs compared, " + at.leading() + " lead on";
    }

    /**
     * What the map shows: whether one can get from every pattern to every other.
     *
     * @param names of the shelf's patterns
     * @param complete whether every pair is worked out
     */
    public static List<Told> map(ShelfMap map, IntFunction<String> names, boolean complete) {
        List<Told> told = new ArrayList<>();
        if (map.size() > 1) {
            told.add(islands(map, names));
        }
        if (!complete) {
            told.add(
                    new Told(
                            "map.stopped",
                            Tone.NOTE,
                            "Stopped before all patterns were compared, so more may lead on.",
                            "Only what had been worked out by then is drawn."));
        }
        return List.copyOf(told);
    }

    private static Told islands(ShelfMap map, IntFunction<String> names) {
        List<Set<Integer>> islands = map.islands();
        List<String> alone = named(map, names, i -> !map.leadsIn(i) && !map.leadsOn(i));
        List<String> ends = named(map, names, i -> map.leadsIn(i) && !map.leadsOn(i));
        List<String> starts = named(map, names, i -> !map.leadsIn(i) && map.leadsOn(i));
        StringBuilder text = new StringBuilder();
        int largest = islands.get(0).size();
        if (islands.size() == 1) {
            text.append("You can get from every pattern to every other.");
        } else if (largest > 1) {
            text.append("You can get between ")
                    .append(largest)
                    .append(" of the ")
                    .append(map.size())
                    .append(" patterns as you like.");
        }
        say(text, "Nothing leads into or out of ", alone);
        say(text, "Nothing leads on from ", ends);
        say(text, "Nothing leads into ", starts);
        if (text.isEmpty()) {
            text.append("No pattern can be come back to once it is left.");
        }
        return new Told(
                "map",
                islands.size() == 1 ? Tone.GOOD : Tone.NOTE,
                text.toString(),
                "A transition goes one way: what leads into a pattern need not lead back. The map has"
                        + " the gentlest from each pattern to each other, up to the grade that was asked.");
    }

    private interface Which {
        boolean holds(int pattern);
    }

    private static List<String> named(ShelfMap map, IntFunction<String> names, Which which) {
        return IntStream.range(0, map.size()).filter(which::holds).mapToObj(names).toList();
    }

    private static void say(StringBuilder text, String begins, List<String> names) {
        if (names.isEmpty()) {
            return;
        }
        text.append(text.isEmpty() ? "" : " ").append(begins);
        text.append(
                names.size() > MOST_NAMES
                        ? names.size() + " patterns."
                        : Say.listed(names, "or") + ".");
    }
}
