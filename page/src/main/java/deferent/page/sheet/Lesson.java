package deferent.page.sheet;

import deferent.motion.pairing.Pairing;
import deferent.motion.trace.Count;
import deferent.motion.trace.Counts;
import deferent.page.Scene;
import deferent.reading.worked.Detail;
import deferent.reading.worked.Worked;
import deferent.record.PatternDocument;
import deferent.record.number.ReadingTables;
import deferent.record.number.SideTable;
import deferent.search.whole.Readings;
import deferent.tell.TellFit;
import deferent.tell.TellHand;
import deferent.tell.TellSizes;
import deferent.tell.Telling;
import deferent.tell.Told;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * All that a sheet shows of one pattern, worked out and said, not yet laid out.
 *
 * @param pattern as it is printed: mirrored where the edition is
 * @param phrase the pairing in trade words, where they can say it
 * @param scene to draw
 * @param outlook from where
 * @param moments for the row of small pictures
 * @param dangers what can hurt in it, before all else
 * @param does what each hand does, then how they go together
 * @param sizes a row a size
 * @param performer for whom, and what reach says
 * @param drawn which motion each hand does and what its head draws
 * @param links how head and hand link
 * @param watch what to watch for
 * @param cautions what to mind whatever is spun; none where the document says it elsewhere
 * @param reach how far a head comes from its centre, metres, where that was worked out
 */
record Lesson(
        PatternDocument pattern,
        boolean mirrored,
        Optional<String> phrase,
        Scene scene,
        Outlook outlook,
        List<Count> moments,
        List<Told> dangers,
        List<Told> does,
        List<TellSizes.Row> sizes,
        List<Told> performer,
        List<Told> drawn,
        List<Told> links,
        List<Told> watch,
        List<String> cautions,
        OptionalDouble reach) {
    private static final int PICTURES = 6;
    private static final int MOST_PICTURES = 16;
    private static final int COSTS = 3;

    Lesson {
        moments = List.copyOf(moments);
        dangers = List.copyOf(dangers);
        does = List.copyOf(does);
        sizes = List.copyOf(sizes);
        performer = List.copyOf(performer);
        drawn = List.copyOf(drawn);
        links = List.copyOf(links);
        watch = List.copyOf(watch);
        cautions = List.copyOf(cautions);
    }

    /** Works everything out; takes a good part of a second. */
    static Lesson of(PatternDocument given, Edition edition) {
        PatternDocument pattern = printed(given, edition);
        return of(
                pattern,
                edition,
                Readings.of(
                        pattern.pairing(),
                        pattern.performer(),
                        pattern.kit(),
                        Detail.PRINTED,
                        edition.lexicon()));
    }

    /**
     * @param pattern as the edition prints it
     */
    static Lesson of(PatternDocument pattern, Edition edition, Readings readings) {
        Pairing pairing = pattern.pairing();
        List<Told> performer = new ArrayList<>(List.of(TellSizes.performer(readings)));
        List<Told> drawn = new ArrayList<>();
        List<Told> links = new ArrayList<>();
        List<Told> watch = new ArrayList<>();
        readings.advice()
                .flatMap(advice -> advice.costs().reading())
                .ifPresent(
                        costs ->
                                TellFit.costs(costs, pairing).stream()
                                        .limit(COSTS)
                                        .forEach(watch::add));
        for (Told told : Telling.of(readings)) {
            String about = told.key().replaceFirst("\\..*", "");
            switch (about) {
                case "link", "hands" -> links.add(told);
                case "reach" -> performer.add(told);
                case "figure" -> drawn.add(told);
                case "care", "neighbour", "closest_figure", "steadiness", "rod", "cord", "room" ->
                        watch.add(told);
                case "pull" -> {
                    if (told.tone() == Told.Tone.WARN) {
                        watch.add(told);
                    }
                }
                default -> {
                    // Said among the sizes, with the hands and above; or not for paper.
                }
            }
        }
        return new Lesson(
                pattern,
                edition.mirrored(),
                readings.phrase(),
                Scene.of(readings.trace()),
                Outlook.of(pairing, edition.stand()),
                moments(readings),
                Telling.dangers(readings),
                TellHand.of(readings),
                sizes(readings),
                performer,
                drawn,
                links,
                watch,
                Telling.cautions(),
                readings.farthest());
    }

    /** What to watch for, and what reach says. */
    List<Told> toWatch() {
        List<Told> all = new ArrayList<>(watch);
        all.addAll(performer.subList(1, performer.size()));
        return List.copyOf(all);
    }

    /** Its name; of a pattern that has none, its motions without their sizes. */
    String named() {
        return phrase.filter(pattern.name()::equals)
                .map(same -> PictureWords.called(scene))
                .orElse(pattern.name());
    }

    /** The worst danger in words that a child takes in: "the poi can hit each other". */
    Optional<String> danger() {
        return Telling.plainly(dangers);
    }

    /** For a document that has said what to mind once already. */
    Lesson withoutCautions() {
        return new Lesson(
                pattern, mirrored, phrase, scene, outlook, moments, dangers, does, sizes, performer,
                drawn, links, watch, List.of(), reach);
    }

    /** The pairing's own sizes, then what follows from them. */
    private static List<TellSizes.Row> sizes(Readings readings) {
        List<TellSizes.Row> rows = new ArrayList<>(TellSizes.rows(readings.pairing()));
        // A still hand has no circle that could be larger.
        rows.add(
                SideTable.line(
                        ReadingTables.HAND_REACH.row("largest_hand_radius_m"),
                        side ->
                                readings.pairing().part(side).still()
                                        ? Worked.unasked()
                                        : readings.reach().as("reach", r -> r.hand(side))));
        for (String key : List.of("width_m", "height_m")) {
            rows.add(SideTable.line(ReadingTables.FIGURE.row(key), readings::figure));
        }
        rows.removeIf(row -> row.left().isEmpty() && row.right().isEmpty());
        return rows;
    }

    /** The pattern as the edition prints it. */
    static PatternDocument printed(PatternDocument given, Edition edition) {
        return edition.mirrored() ? given.mirrored(edition.lexicon()) : given;
    }

    private static List<Count> moments(Readings readings) {
        List<Count> all = Counts.moments(readings.trace(), PICTURES);
        int step = (all.size() + MOST_PICTURES - 1) / MOST_PICTURES;
        List<Count> some = new ArrayList<>();
        for (int i = 0; i < all.size(); i += step) {
            some.add(all.get(i));
        }
        return some;
    }

    /** What the reader is told about whose left is where. */
    String standing() {
        return outlook.said()
                + (mirrored ? "; left-handed: each hand does what the other did." : ".");
    }
}
