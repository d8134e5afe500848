package deferent.search.path;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.motion.phrase.PhraseError;
import deferent.motion.shared.Side;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/**
 * Tells which drill of a path a time of practice was of. A log has the phrase without a tempo, and
 * the tempo apart; one hand of the pattern counts for that hand alone.
 */
final class Whose {
    private final List<Drill> drills;
    private final List<Pairing> untimed;
    private final Lexicon lexicon;

    Whose(Path path, Lexicon lexicon) {
        this.lexicon = lexicon;
        this.drills = path.drills();
        this.untimed = drills.stream().map(drill -> untimed(drill.pairing())).toList();
    }

    /** The same without its tempo, which is where a log keeps it apart. */
    static Pairing untimed(Pairing pairing) {
        return pairing.withTempo(OptionalDouble.empty());
    }

    /**
     * Its place in the path; of several at different tempos the one nearest to the tempo said, or
     * the first that is not known yet.
     */
    Optional<Integer> of(Practised practised, IntPredicate known) {
        Optional<Pairing> said = pairing(practised.phrase());
        if (said.isEmpty()) {
            return Optional.empty();
        }
        if (practised.hand().isPresent()) {
            return alone(said.get(), practised.hand().get());
        }
        List<Integer> same =
                IntStream.range(0, drills.size())
                        .filter(n -> untimed.get(n).equals(said.get()))
                        .boxed()
                        .toList();
        OptionalDouble tempo = practised.tempo();
        return tempo.isPresent()
                ? same.stream()
                        .min(
                                Comparator.comparingDouble(
                                        n -> Math.abs(tempo(n) - tempo.getAsDouble())))
                : same.stream()
                        .filter(n -> !known.test(n))
                        .findFirst()
                        .or(() -> same.stream().reduce((first, last) -> last));
    }

    private double tempo(int n) {
        return drills.get(n).pairing().tempo();
    }

    private Optional<Integer> alone(Pairing said, Side side) {
        return IntStream.range(0, drills.size())
                .filter(n -> drills.get(n).kind() == DrillKind.ALONE)
                .filter(n -> drills.get(n).hand().equals(Optional.of(side)))
                .filter(
                        n ->
                                untimed.get(n).equals(said)
                                        || untimed.get(drills.size() - 1).equals(said))
                .boxed()
                .findFirst();
    }

    private Optional<Pairing> pairing(String phrase) {
        try {
            return Optional.of(untimed(Phrase.parse(phrase, lexicon).pairing()));
        } catch (PhraseError unknown) {
            return Optional.empty();
        }
    }
}
