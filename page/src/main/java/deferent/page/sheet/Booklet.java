package deferent.page.sheet;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.record.PatternDocument;
import deferent.search.crossing.CrossingRequest;
import deferent.search.crossing.Crossings;
import deferent.search.crossing.ShelfCrossing;
import deferent.search.crossing.ShelfMap;
import deferent.search.crossing.ShelfTable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.IntFunction;

/**
 * A shelf or a route as a book of lessons: a cover, contents, what to know before spinning, then a
 * sheet a pattern.
 *
 * <pre>
 * Booklet.of("Winter market", patterns, Edition.USUAL).write(out);
 * Booklet.of("Winter market", patterns, Edition.USUAL).crossed().write(out, progress, stop);
 * </pre>
 *
 * @param title on the cover
 * @param patterns in the order of the sheets; of a route, in the order it is gone, a pattern that
 *     comes again printed once
 * @param edition for which paper, onlooker and hand
 * @param order what the sheets tell of each other
 * @param request what counts as a crossing
 */
public record Booklet(
        String title,
        List<PatternDocument> patterns,
        Edition edition,
        Order order,
        CrossingRequest request)
        implements Print {
    /** What the sheets tell of each other. */
    public enum Order {
        /** Nothing. */
        PLAIN,
        /** What each grows from and leads to among them all; comparing them takes a while. */
        CROSSED,
        /** How each grows from the one before and leads to the next. */
        ROUTE
    }

    public Booklet {
        patterns = List.copyOf(patterns);
        if (patterns.isEmpty()) {
            throw new Refusal("has no patterns", "booklet", "save one on the shelf first");
        }
        if (title.isBlank()) {
            throw new Refusal("is empty", "title of a booklet", "give it a name");
        }
    }

    /** Patterns that tell nothing of each other. */
    public static Booklet of(String title, List<PatternDocument> patterns, Edition edition) {
        return new Booklet(title, patterns, edition, Order.PLAIN, CrossingRequest.USUAL);
    }

    /** The same, telling what each grows from and leads to among them. */
    public Booklet crossed() {
        return new Booklet(title, patterns, edition, Order.CROSSED, request);
    }

    /** The same as a route, each pattern leading to the next. */
    public Booklet asRoute() {
        return new Booklet(title, patterns, edition, Order.ROUTE, request);
    }

    @Override
    public Optional<List<Leaf>> leaves(Consumer<PrintProgress> listener, BooleanSupplier stop) {
        List<PatternDocument> each = List.copyOf(new LinkedHashSet<>(patterns));
        Optional<Neighbours> neighbours = neighbours(each, listener, stop);
        if (neighbours.isEmpty()) {
            return Optional.empty();
        }
        return Lessons.of(each, edition, listener, stop)
                .map(lessons -> bound(lessons, neighbours.get()));
    }

    private record Neighbours(List<List<Onward>> from, List<List<Onward>> to) {
        static Neighbours none(int patterns) {
            List<List<Onward>> from = new ArrayList<>();
            List<List<Onward>> to = new ArrayList<>();
            for (int i = 0; i < patterns; i++) {
                from.add(new ArrayList<>());
                to.add(new ArrayList<>());
            }
            return new Neighbours(from, to);
        }
    }

    private Optional<Neighbours> neighbours(
            List<PatternDocument> each, Consumer<PrintProgress> listener, BooleanSupplier stop) {
        Neighbours found = Neighbours.none(each.size());
        return switch (order) {
            case PLAIN -> Optional.of(found);
            case ROUTE -> along(each, found, listener, stop);
            case CROSSED -> among(each, found, listener, stop);
        };
    }

    private Optional<Neighbours> along(
            List<PatternDocument> each,
            Neighbours found,
            Consumer<PrintProgress> listener,
            BooleanSupplier stop) {
        int steps = patterns.size() - 1;
        for (int i = 0; i < steps; i++) {
            if (stop.getAsBoolean()) {
                return Optional.empty();
            }
            PatternDocument one = patterns.get(i);
            PatternDocument next = patterns.get(i + 1);
            Crossings.between(pairing(one), pairing(next), request)
                    .smoothest()
                    .map(c -> new Onward(one.name(), next.name(), c))
                    .ifPresent(
                            onward -> {
                                found.to().get(each.indexOf(one)).add(onward);
                                found.from().get(each.indexOf(next)).add(onward);
                            });
            listener.accept(new PrintProgress(PrintProgress.Step.COMPARING, i + 1, steps));
        }
        return Optional.of(found);
    }

    private Optional<Neighbours> among(
            List<PatternDocument> each,
            Neighbours found,
            Consumer<PrintProgress> listener,
            BooleanSupplier stop) {
        ShelfTable table = new ShelfTable(each.stream().map(this::pairing).toList(), request);
        boolean done =
                table.run(
                        p ->
                                listener.accept(
                                        new PrintProgress(
                                                PrintProgress.Step.COMPARING, p.done(), p.all())),
                        stop);
        if (!done) {
            return Optional.empty();
        }
        ShelfMap map = ShelfMap.of(table);
        for (int i = 0; i < each.size(); i++) {
            List<Onward> to = found.to().get(i);
            map.crossings(i).stream()
                    .sorted(Comparator.comparingDouble(ShelfCrossing::roughness))
                    .limit(Sheet.CROSSINGS)
                    .forEach(
                            crossing ->
                                    to.add(
                                            new Onward(
                                                    each.get(crossing.from()).name(),
                                                    each.get(crossing.to()).name(),
                                                    table.crossing(crossing))));
        }
        return Optional.of(found);
    }

    private Pairing pairing(PatternDocument pattern) {
        return Lesson.printed(pattern, edition).pairing();
    }

    /** Counts the pages before the sheets, lays out the sheets, then writes the contents. */
    private List<Leaf> bound(List<Lesson> lessons, Neighbours neighbours) {
        FrontPages front = new FrontPages(title, lessons, edition, order);
        Foot foot = Foot.of(front.foot());
        IntFunction<Foot> numbered = page -> foot.on(page);
        int before = front.count();
        List<Leaf> sheets = new ArrayList<>();
        List<Integer> pages = new ArrayList<>();
        for (int i = 0; i < lessons.size(); i++) {
            int first = before + sheets.size() + 1;
            pages.add(first);
            sheets.addAll(
                    SheetPage.leaves(
                            lessons.get(i).withoutCautions(),
                            edition,
                            new Around(
                                    order != Order.PLAIN,
                                    order == Order.ROUTE,
                                    neighbours.from().get(i),
                                    neighbours.to().get(i)),
                            leaf -> numbered.apply(first + leaf)));
        }
        List<Leaf> all = new ArrayList<>(front.leaves(pages, numbered));
        all.addAll(sheets);
        return List.copyOf(all);
    }
}
