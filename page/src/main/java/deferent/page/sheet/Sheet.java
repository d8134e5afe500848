package deferent.page.sheet;

import deferent.motion.pairing.Pairing;
import deferent.record.PatternDocument;
import deferent.search.crossing.CrossingRequest;
import deferent.search.crossing.Crossings;
import java.util.ArrayList;
import java.util.Comparator;
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
 * @param others patterns whose crossings with it are told; comparing them takes a while
 * @param request what counts as a crossing
 */
public record Sheet(
        PatternDocument pattern,
        Edition edition,
        List<PatternDocument> others,
        CrossingRequest request)
        implements Print {
    /** The gentlest few crossings are told. */
    static final int CROSSINGS = 3;

    public Sheet {
        others = List.copyOf(others);
    }

    /** A sheet that tells of no other pattern. */
    public static Sheet of(PatternDocument pattern, Edition edition) {
        return new Sheet(pattern, edition, List.of(), CrossingRequest.USUAL);
    }

    /** The same sheet, telling what it grows from and leads to among these patterns. */
    public Sheet among(List<PatternDocument> patterns) {
        return new Sheet(pattern, edition, patterns, request);
    }

    @Override
    public String title() {
        return pattern.name();
    }

    @Override
    public Optional<List<Leaf>> leaves(Consumer<PrintProgress> listener, BooleanSupplier stop) {
        Optional<List<Onward>> onward = onward(listener, stop);
        if (onward.isEmpty()) {
            return Optional.empty();
        }
        return Lessons.of(List.of(pattern), edition, listener, stop)
                .map(
                        lessons ->
                                SheetPage.leaves(
                                        lessons.get(0),
                                        edition,
                                        others.isEmpty()
                                                ? Around.NOTHING
                                                : Around.both(onward.get()),
                                        leaf ->
                                                Foot.of(
                                                        pattern.author()
                                                                .map(Foot::capital)
                                                                .orElse(""))));
    }

    /** The gentlest crossing into each other pattern, the gentlest few of those. */
    private Optional<List<Onward>> onward(Consumer<PrintProgress> listener, BooleanSupplier stop) {
        Pairing from = Lesson.printed(pattern, edition).pairing();
        List<PatternDocument> into =
                others.stream().filter(other -> !other.name().equals(pattern.name())).toList();
        List<Onward> found = new ArrayList<>();
        for (int i = 0; i < into.size(); i++) {
            if (stop.getAsBoolean()) {
                return Optional.empty();
            }
            PatternDocument other = into.get(i);
            Crossings.between(from, Lesson.printed(other, edition).pairing(), request)
                    .smoothest()
                    .ifPresent(c -> found.add(new Onward(pattern.name(), other.name(), c)));
            listener.accept(new PrintProgress(PrintProgress.Step.COMPARING, i + 1, into.size()));
        }
        return Optional.of(
                found.stream()
                        .sorted(
                                Comparator.comparingDouble(
                                        one -> one.crossing().roughness().weights()))
                        .limit(CROSSINGS)
                        .toList());
    }
}
