package deferent.page.sheet;

import deferent.motion.phrase.Lexicon;
import deferent.motion.trace.Count;
import deferent.motion.trace.Trace;
import deferent.page.View;
import deferent.record.PatternDocument;
import deferent.tell.TellTransition;
import deferent.tell.Told;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.IntStream;

/**
 * What a sheet says of a pattern, sentence by sentence, for a face that sets it in its own way.
 *
 * @param trace the pattern's ideal
 * @param view from which its planes show
 * @param seen the same in words: "Seen by the audience, from above"
 * @param moments for numbered poses, seconds
 * @param side from which its planes show
 * @param dangers what can hurt in it, before all else
 * @param does what the left hand does and how it begins, then the right, then how they go together
 * @param drawn which motion each hand does and what its head draws, the left first
 * @param links how head and hand link
 * @param watch what to watch for
 * @param next what it leads to among the others, the easiest first; empty where none were compared
 */
public record Taught(
        PatternDocument pattern,
        Optional<String> phrase,
        Trace trace,
        View view,
        String seen,
        List<Double> moments,
        Seen side,
        List<Told> dangers,
        List<Told> does,
        List<Told> drawn,
        List<Told> links,
        List<Told> watch,
        List<Next> next) {
    /** From where a pattern's planes don't look like lines. */
    public enum Seen {
        FRONT,
        ABOVE,
        /** From the performer's left. */
        SIDE,
        /** From a little to the side and above. */
        SLANT
    }

    /**
     * What a pattern leads to.
     *
     * @param name of the pattern it leads to; empty where there is none
     * @param told how
     */
    public record Next(String name, Told told) {}

    public Taught {
        moments = List.copyOf(moments);
        dangers = List.copyOf(dangers);
        does = List.copyOf(does);
        drawn = List.copyOf(drawn);
        links = List.copyOf(links);
        watch = List.copyOf(watch);
        next = List.copyOf(next);
    }

    /**
     * Of several patterns, in their order; takes a good part of a second each.
     *
     * @param compared of so many of the first it is told what leads from one to another, which
     *     takes longer
     * @return empty where it was stopped
     */
    public static Optional<List<Taught>> of(
            List<PatternDocument> patterns,
            Lexicon lexicon,
            int compared,
            Consumer<PrintProgress> listener,
            BooleanSupplier stop) {
        Edition edition = Edition.USUAL.with(lexicon);
        Optional<List<Around>> around =
                compared > 1
                        ? new Comparing(patterns.subList(0, compared), edition)
                                .among(compared, listener, stop)
                        : Optional.of(List.of());
        if (around.isEmpty()) {
            return Optional.empty();
        }
        return Lessons.of(patterns, edition, listener, stop)
                .map(
                        lessons ->
                                IntStream.range(0, lessons.size())
                                        .mapToObj(
                                                i ->
                                                        of(
                                                                lessons.get(i),
                                                                i < around.get().size()
                                                                        ? around.get().get(i)
                                                                        : Around.NOTHING))
                                        .toList());
    }

    private static Taught of(Lesson lesson, Around around) {
        List<Next> next = new ArrayList<>();
        for (Onward one : around.to()) {
            next.add(
                    new Next(
                            one.to(),
                            one.way()
                                    .map(way -> TellTransition.of(way.transition()))
                                    .orElseGet(() -> TellTransition.none(one.why()))));
        }
        if (around.asked() && next.isEmpty()) {
            next.add(new Next("", TellTransition.noNeighbour()));
        }
        return new Taught(
                lesson.pattern(),
                lesson.phrase(),
                lesson.scene().trace(),
                lesson.outlook().view(),
                lesson.outlook().said(),
                lesson.moments().stream().map(Count::time).toList(),
                seen(lesson.outlook()),
                lesson.dangers(),
                lesson.does(),
                lesson.drawn(),
                lesson.links(),
                lesson.toWatch(),
                next);
    }

    /** From where it is seen, and on which side of the picture the performer's left then is. */
    public String whoseLeft() {
        return seen + "; " + new Outlook(view, seen).leftOfPicture() + ".";
    }

    private static Seen seen(Outlook outlook) {
        double turn = Math.abs(outlook.view().turn());
        double lift = outlook.view().lift();
        if (turn == 0) {
            return lift == 0 ? Seen.FRONT : Seen.ABOVE;
        }
        return lift == 0 ? Seen.SIDE : Seen.SLANT;
    }
}
