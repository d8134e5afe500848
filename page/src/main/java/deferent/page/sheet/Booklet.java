package deferent.page.sheet;

import deferent.motion.pairing.Refusal;
import deferent.record.PatternDocument;
import java.util.ArrayList;
import java.util.Collections;
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
 * Booklet.of("Winter market", patterns, Edition.USUAL).amongThemselves().write(out, progress, stop);
 * </pre>
 *
 * @param title on the cover
 * @param patterns in the order of the sheets; of a route, in the order it is gone, a pattern that
 *     comes again printed once
 * @param edition for which paper, onlooker and hand
 * @param order what the sheets tell of each other
 */
public record Booklet(String title, List<PatternDocument> patterns, Edition edition, Order order)
        implements Print {
    /** What the sheets tell of each other. */
    public enum Order {
        /** Nothing. */
        PLAIN,
        /** What each grows from and leads to among them all; comparing them takes a while. */
        AMONG_THEMSELVES,
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
        return new Booklet(title, patterns, edition, Order.PLAIN);
    }

    /** The same, telling what each grows from and leads to among them. */
    public Booklet amongThemselves() {
        return new Booklet(title, patterns, edition, Order.AMONG_THEMSELVES);
    }

    /** The same as a route, each pattern leading to the next. */
    public Booklet asRoute() {
        return new Booklet(title, patterns, edition, Order.ROUTE);
    }

    @Override
    public Optional<List<Leaf>> leaves(Consumer<PrintProgress> listener, BooleanSupplier stop) {
        List<PatternDocument> each = List.copyOf(new LinkedHashSet<>(patterns));
        Optional<List<Around>> around = around(each, listener, stop);
        if (around.isEmpty()) {
            return Optional.empty();
        }
        return Lessons.of(each, edition, listener, stop)
                .map(lessons -> bound(lessons, around.get()));
    }

    private Optional<List<Around>> around(
            List<PatternDocument> each, Consumer<PrintProgress> listener, BooleanSupplier stop) {
        return switch (order) {
            case PLAIN -> Optional.of(Collections.nCopies(each.size(), Around.NOTHING));
            case ROUTE ->
                    new Comparing(each, edition)
                            .along(patterns.stream().map(each::indexOf).toList(), listener, stop);
            case AMONG_THEMSELVES ->
                    new Comparing(each, edition).among(each.size(), listener, stop);
        };
    }

    /** Counts the pages before the sheets, lays out the sheets, then writes the contents. */
    private List<Leaf> bound(List<Lesson> lessons, List<Around> around) {
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
                            around.get(i),
                            leaf -> numbered.apply(first + leaf)));
        }
        List<Leaf> all = new ArrayList<>(front.leaves(pages, numbered));
        all.addAll(sheets);
        return List.copyOf(all);
    }
}
