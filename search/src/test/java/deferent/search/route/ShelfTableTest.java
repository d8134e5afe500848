package deferent.search.route;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import deferent.search.set.PairBook;
import deferent.search.transition.Grade;
import deferent.search.transition.Hindrance;
import deferent.search.transition.Transition;
import deferent.search.transition.TransitionFinder;
import deferent.search.transition.TransitionMemory;
import deferent.search.transition.TransitionRequest;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class ShelfTableTest {
    private static final List<Pairing> SHELF =
            Stream.of(
                            "extension vs extension, tether 40 cm, tempo 60",
                            "extension vs static spin, tether 40 cm, tempo 60",
                            "static spin vs triquetra, tether 40 cm, tempo 55",
                            "static spin vs static spin, tether 55 cm")
                    .map(phrase -> Phrase.parse(phrase).pairing())
                    .toList();

    private static PairBook book() {
        return new PairBook(Grade.USUAL, Performer.USUAL, Kit.USUAL);
    }

    private static ShelfTable whole(List<Pairing> shelf) {
        ShelfTable table = new ShelfTable(shelf, book());
        assertThat(table.run(at -> {}, pairs -> {}, () -> false)).isTrue();
        return table;
    }

    @Test
    void whatATableSaysOfAPairIsWhatIsFoundOfItAlone() {
        ShelfTable table = whole(SHELF);
        TransitionFinder finder =
                new TransitionFinder(TransitionRequest.USUAL, new TransitionMemory());
        assertThat(table.pairs()).hasSize(12);
        assertThat(table.progress().leading()).isPositive();
        for (ShelfPair pair : table.pairs()) {
            Optional<Transition> best =
                    finder.between(SHELF.get(pair.from()), SHELF.get(pair.to())).best();
            assertThat(pair.grade()).isEqualTo(best.map(Transition::grade));
            assertThat(pair.hardness())
                    .isEqualTo(best.map(Transition::hardness).orElse(Double.POSITIVE_INFINITY));
        }
    }

    @Test
    void betweenTethersThatDifferNothingIsSoughtAndNothingLeads() {
        ShelfTable table = new ShelfTable(SHELF, book());
        assertThat(table.known(0, 3).orElseThrow().why()).isEqualTo(Hindrance.TETHERS);
        assertThat(table.known(3, 0).orElseThrow().leads()).isFalse();
        assertThat(table.known(0, 1)).isEmpty();
    }

    @Test
    void aWayThereStaysAWayThereWhenTheShelfIsOrderedAnew() {
        List<Pairing> shelf = SHELF.subList(0, 2);
        ShelfTable table =
                new ShelfTable(
                        shelf,
                        book(),
                        (from, to) ->
                                from == 0
                                        ? ShelfPair.same(from, to)
                                        : ShelfPair.none(from, to, Hindrance.TOO_HARD));
        assertThat(table.run(at -> {}, pairs -> {}, () -> false)).isTrue();
        ShelfTable other = table.with(List.of(shelf.get(1), shelf.get(0)));
        assertThat(other.known(1, 0).orElseThrow().leads()).isTrue();
        assertThat(other.known(0, 1).orElseThrow().leads()).isFalse();
    }

    @Test
    void onePatternUnderTwoNamesGoesOnAsItIs() {
        ShelfTable table = new ShelfTable(List.of(SHELF.get(0), SHELF.get(0)), book());
        assertThat(table.known(0, 1).orElseThrow().grade()).contains(Grade.EASY);
        assertThat(table.known(1, 0).orElseThrow().hardness()).isZero();
    }

    @Test
    void aTableIsTheSameInSlicesAndGoesOnWhereItWasStopped() {
        List<ShelfPair> whole = whole(SHELF).pairs();
        ShelfTable other = new ShelfTable(SHELF, book());
        List<ShelfPair> slices = new ArrayList<>(other.slice(2, 4));
        slices.addAll(other.slice(0, 2));
        assertThat(slices).containsExactlyInAnyOrderElementsOf(whole);
        ShelfTable stopped = new ShelfTable(SHELF, book());
        List<TableProgress> heard = new ArrayList<>();
        List<ShelfPair> found = new ArrayList<>();
        assertThat(stopped.run(heard::add, found::addAll, () -> heard.size() == 1)).isFalse();
        assertThat(stopped.complete()).isFalse();
        assertThat(found).containsExactlyInAnyOrderElementsOf(stopped.pairs());
        found.clear();
        assertThat(stopped.run(heard::add, found::addAll, () -> false)).isTrue();
        assertThat(found).as("each once").containsExactlyInAnyOrderElementsOf(whole);
        assertThat(heard.get(heard.size() - 1).done()).isEqualTo(12);
        assertThat(heard.get(heard.size() - 1).all()).isEqualTo(12);
        assertThat(stopped.complete()).isTrue();
    }

    @Test
    void aPatternMoreCostsItsOwnPairsAlone() {
        ShelfTable three = whole(SHELF.subList(0, 2));
        List<Pairing> more = List.of(SHELF.get(2), SHELF.get(1), SHELF.get(0));
        ShelfTable table = three.with(more);
        assertThat(table.progress().done()).isEqualTo(2);
        assertThat(table.known(1, 2).orElseThrow().hardness())
                .as("under its new places")
                .isEqualTo(three.known(1, 0).orElseThrow().hardness());
        List<TableProgress> heard = new ArrayList<>();
        assertThat(table.run(heard::add, pairs -> {}, () -> false)).isTrue();
        assertThat(heard.get(0).done()).isGreaterThan(2);
        assertThat(table.pairs()).isEqualTo(whole(more).pairs());
    }
}
