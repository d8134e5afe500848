package deferent.search.crossing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Side;
import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Course;
import deferent.reading.tether.Kit;
import deferent.search.crossing.FlowingSet.Outcome;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ShelfMapTest {
    /**
     * Extensions whose hand circles grow by 4 cm from one to the next, so each meets its own few.
     */
    private static List<Pairing> growing(int count) {
        List<Pairing> shelf = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            shelf.add(PathCrossingsTest.both(Motion.flower(0.3 + 0.04 * i, 1, 0), 0.6, 0));
        }
        return shelf;
    }

    private static ShelfMap map(List<Pairing> shelf) {
        ShelfTable table = new ShelfTable(shelf, CrossingRequest.USUAL.withTolerance(0.05, 1));
        table.run();
        return ShelfMap.of(table);
    }

    @Test
    void fromASmallExtensionToAGreatOneTheRouteGoesThroughThoseBetween() {
        ShelfMap map = map(growing(6));
        Route route = map.route(0, 5).orElseThrow();
        assertThat(route.patterns()).containsExactly(0, 1, 2, 3, 4, 5);
        // Each step: 4 cm and 2π·4 cm a second, nothing else.
        double step = Roughness.least(0.04, 2 * Math.PI * 0.04, CrossingRequest.USUAL.blend());
        assertThat(route.roughness()).isCloseTo(5 * step, within(1e-6));
    }

    @Test
    void aPatternThatIsNotKnownIsGoneRoundOrCutsTheWay() {
        ShelfMap map = map(growing(6));
        assertThat(map.route(0, 5, i -> i != 3)).isEmpty();
        assertThat(map.route(0, 2, i -> i < 2)).isPresent();
    }

    @Test
    void aHardPatternIsGoneRoundWhereThereIsAnotherWay() {
        List<Pairing> shelf = new ArrayList<>(growing(3));
        shelf.add(PathCrossingsTest.both(Motion.flower(0.341, 1, 0), 0.6, 0));
        ShelfMap map = map(shelf);
        assertThat(map.route(0, 2).orElseThrow().crossings()).hasSize(2);
        Route easy = map.withDifficulty(new double[] {0, 5, 0, 0}).route(0, 2).orElseThrow();
        assertThat(easy.patterns()).containsExactly(0, 3, 2);
        Route other = map.withDifficulty(new double[] {0, 0, 0, 5}).route(0, 2).orElseThrow();
        assertThat(other.patterns()).containsExactly(0, 1, 2);
        assertThat(map.routes(0, 2, i -> true, 3)).hasSizeGreaterThanOrEqualTo(2);
    }

    @Test
    void whatCanBePassedCanBePassedBack() {
        ShelfMap map = map(growing(4));
        for (ShelfCrossing crossing : map.crossings()) {
            assertThat(map.crossing(crossing.to(), crossing.from())).contains(crossing.back());
        }
    }

    @Test
    void aSetOfEightComesBackToWhereItStarts() {
        // In two rows side by side, so that there is a crossing out and another back.
        List<Pairing> shelf = new ArrayList<>(growing(4));
        for (int i = 0; i < 4; i++) {
            shelf.add(PathCrossingsTest.both(Motion.flower(0.301 + 0.04 * i, 1, 0), 0.6, 0));
        }
        FlowingSet set = map(shelf).set(0, 8);
        assertThat(set.outcome()).isEqualTo(Outcome.BEST);
        List<Integer> patterns = set.route().orElseThrow().patterns();
        assertThat(patterns).hasSize(9).startsWith(0).endsWith(0);
        assertThat(patterns.stream().distinct()).hasSize(8);
    }

    @Test
    void whereThePatternsStandInARowThereIsProvenToBeNoSet() {
        assertThat(map(growing(8)).set(0, 8).outcome()).isEqualTo(Outcome.NONE);
    }

    @Test
    void patternsThatShareNothingStandOnIslandsOfTheirOwn() {
        List<Pairing> shelf = new ArrayList<>(growing(3));
        shelf.add(Phrase.parse("five-petal antispin vs five-petal antispin").pairing());
        ShelfMap map = map(shelf);
        assertThat(map.islands()).hasSize(2);
        assertThat(map.route(0, 3)).isEmpty();
    }

    @Test
    void aRouteCanBePlayedWithoutAJump() {
        ShelfMap map = map(growing(4));
        Route route = map.route(0, 3).orElseThrow();
        Passage played = map.play(route, Kit.USUAL);
        assertThat(played.joints()).hasSize(3);
        for (Side side : Side.values()) {
            for (Course course : List.of(played.trace().hand(side), played.trace().head(side))) {
                double step = played.trace().period() / 4000;
                for (int i = 1; i < 4000; i++) {
                    double moved =
                            course.position(i * step).distance(course.position((i - 1) * step));
                    assertThat(moved).isLessThan(step * 20);
                }
            }
        }
    }

    @Test
    void whatAMapIsAskedMustBeOnTheShelf() {
        ShelfMap map = map(growing(2));
        assertThatThrownBy(() -> map.route(0, 2)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> map.withDifficulty(new double[1])).isInstanceOf(Refusal.class);
        assertThatThrownBy(
                        () ->
                                new ShelfTable(
                                        growing(2),
                                        CrossingRequest.USUAL.with(Freedom.NONE.withShift(1))))
                .isInstanceOf(Refusal.class);
    }
}
