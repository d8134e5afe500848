package deferent.page.sheet;

import deferent.record.PatternDocument;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * A printed page that teaches one pattern.
 *
 * <pre>
 * Sheet.of(pattern, Edition.USUAL).write(out);
 * Sheet.of(pattern, Edition.USUAL).among(shelf).write(out, progress -> show(progress), stop);
 * </pre>
 *
 * @param pattern what it teaches
 * @param edition for which paper, onlooker and hand
 * @param others patterns whose transitions into it and out of it are told; comparing them takes a
 *     while
 */
public record Sheet(PatternDocument pattern, Edition edition, List<PatternDocument> others)
        implements Print {
    public Sheet {
        others = List.copyOf(others);
    }

    /** A sheet that tells of no other pattern. */
    public static Sheet of(PatternDocument pattern, Edition edition) {
        return new Sheet(pattern, edition, List.of());
    }

    /** The same sheet, telling what it grows from and leads to among these patterns. */
    public Sheet among(List<PatternDocument> patterns) {
        return new Sheet(pattern, edition, patterns);
    }

    @Override
    public String title() {
        return pattern.name();
    }

    @Override
    public Optional<List<Leaf>> leaves(Consumer<PrintProgress> listener, BooleanSupplier stop) {
        Optional<Around> around = around(listener, stop);
        if (around.isEmpty()) {
            return Optional.empty();
        }
        return Lessons.of(List.of(pattern), edition, listener, stop)
                .map(
                        lessons ->
                                SheetPage.leaves(
                                        lessons.get(0),
                                        edition,
                                        around.get(),
                                        leaf ->
                                                Foot.of(
                                                        pattern.author()
                                                                .map(Foot::capital)
                                                                .orElse(""))));
    }

    private Optional<Around> around(Consumer<PrintProgress> listener, BooleanSupplier stop) {
        if (others.isEmpty()) {
            return Optional.of(Around.NOTHING);
        }
        List<PatternDocument> all = new ArrayList<>(List.of(pattern));
        others.stream().filter(other -> !other.name().equals(pattern.name())).forEach(all::add);
        return new Comparing(all, edition).among(1, listener, stop).map(each -> each.get(0));
    }
}
