package deferent.page.sheet;

import deferent.motion.pairing.Pairing;
import deferent.reading.body.Performer;
import deferent.record.PatternDocument;
import deferent.search.transition.Transition;
import deferent.search.transition.TransitionFinder;
import deferent.search.transition.TransitionRequest;
import deferent.search.transition.Transitions;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Predicate;

/**
 * Patterns compared, as an edition prints them: what leads from one to another for whoever spins
 * the one that is left, within the usual grade. What is worked out of a pattern serves all its
 * pairs.
 */
final class Comparing {
    /** Of the patterns that lead to one, and of those it leads to, the easiest few are told. */
    private static final int FEW = 2;

    private final List<PatternDocument> patterns;
    private final Edition edition;
    private final Map<Performer, TransitionFinder> finders = new ConcurrentHashMap<>();

    /** The way from one pattern to another, by their numbers. */
    record Pair(int from, int to) {}

    /** What was found, in the order of the pairs. */
    private record Found(Pair pair, Transitions transitions) {
        double hardness() {
            return transitions.best().map(Transition::hardness).orElse(Double.POSITIVE_INFINITY);
        }

        double jerk() {
            return transitions.best().map(Transition::jerk).orElse(Double.POSITIVE_INFINITY);
        }
    }

    Comparing(List<PatternDocument> patterns, Edition edition) {
        this.patterns = patterns.stream().map(p -> Lesson.printed(p, edition)).toList();
        this.edition = edition;
    }

    private TransitionFinder finder(int from) {
        return finders.computeIfAbsent(
                patterns.get(from).performer(),
                performer -> new TransitionFinder(TransitionRequest.USUAL.with(performer)));
    }

    private Pairing pairing(int i) {
        return patterns.get(i).pairing();
    }

    /**
     * What is around each pattern on a route, by the pattern's number; empty where it was stopped.
     *
     * @param route numbers of patterns in the order they are gone
     */
    Optional<List<Around>> along(
            List<Integer> route, Consumer<PrintProgress> listener, BooleanSupplier stop) {
        List<Pair> pairs = new ArrayList<>();
        for (int i = 0; i + 1 < route.size(); i++) {
            Pair pair = new Pair(route.get(i), route.get(i + 1));
            if (!pairs.contains(pair)) {
                pairs.add(pair);
            }
        }
        return compared(pairs, listener, stop)
                .map(
                        found -> {
                            List<Onward> told = found.stream().map(this::onward).toList();
                            List<Around> all = new ArrayList<>();
                            for (int i = 0; i < patterns.size(); i++) {
                                List<Onward> from = new ArrayList<>();
                                List<Onward> to = new ArrayList<>();
                                for (int k = 0; k < pairs.size(); k++) {
                                    if (pairs.get(k).from() == i) {
                                        to.add(told.get(k));
                                    }
                                    if (pairs.get(k).to() == i) {
                                        from.add(told.get(k));
                                    }
                                }
                                all.add(new Around(true, true, from, to));
                            }
                            return all;
                        });
    }

    /** What is around each of the first so many among them all; empty where it was stopped. */
    Optional<List<Around>> among(
            int first, Consumer<PrintProgress> listener, BooleanSupplier stop) {
        List<Pair> pairs = new ArrayList<>();
        for (int i = 0; i < patterns.size(); i++) {
            for (int j = 0; j < patterns.size(); j++) {
                if ((i < first || j < first) && !pairing(i).equals(pairing(j))) {
                    pairs.add(new Pair(i, j));
                }
            }
        }
        return compared(pairs, listener, stop)
                .map(
                        found -> {
                            List<Found> easiest =
                                    found.stream()
                                            .filter(one -> !one.transitions().list().isEmpty())
                                            .sorted(
                                                    Comparator.comparingDouble(Found::hardness)
                                                            .thenComparingDouble(Found::jerk))
                                            .toList();
                            List<Around> all = new ArrayList<>();
                            for (int i = 0; i < first; i++) {
                                int at = i;
                                all.add(
                                        new Around(
                                                true,
                                                false,
                                                few(easiest, pair -> pair.to() == at),
                                                few(easiest, pair -> pair.from() == at)));
                            }
                            return all;
                        });
    }

    private List<Onward> few(List<Found> easiest, Predicate<Pair> which) {
        return easiest.stream()
                .filter(one -> which.test(one.pair()))
                .limit(FEW)
                .map(this::onward)
                .toList();
    }

    private Optional<List<Found>> compared(
            List<Pair> pairs, Consumer<PrintProgress> listener, BooleanSupplier stop) {
        return Several.of(
                pairs.size(),
                i -> {
                    Pair pair = pairs.get(i);
                    return new Found(
                            pair,
                            finder(pair.from()).between(pairing(pair.from()), pairing(pair.to())));
                },
                done ->
                        listener.accept(
                                new PrintProgress(
                                        PrintProgress.Step.COMPARING, done, pairs.size())),
                stop);
    }

    private Onward onward(Found found) {
        Pair pair = found.pair();
        return new Onward(
                patterns.get(pair.from()).name(),
                patterns.get(pair.to()).name(),
                found.transitions()
                        .best()
                        .map(
                                transition ->
                                        new Onward.Way(
                                                transition,
                                                Passage.of(transition, finder(pair.from())),
                                                Outlook.of(
                                                        List.of(
                                                                pairing(pair.from()),
                                                                pairing(pair.to())),
                                                        edition.stand()))),
                found.transitions().why());
    }
}
