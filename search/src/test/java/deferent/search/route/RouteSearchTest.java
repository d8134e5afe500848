package deferent.search.route;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import deferent.search.set.PairBook;
import deferent.search.transition.Grade;
import deferent.search.transition.Hindrance;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Shelves whose pairs are made up, so that every one of them can be tried in every order. */
class RouteSearchTest {
    private static final PairBook BOOK = new PairBook(Grade.HARD, Performer.USUAL, Kit.USUAL);

    /** Static spins, each at a tempo of its own so that no two are one pattern. */
    private static List<Pairing> patterns(int count) {
        List<Pairing> all = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            all.add(
                    Phrase.parse("static spin vs static spin, tempo " + (50 + i) + ", tether 50 cm")
                            .pairing());
        }
        return all;
    }

    /** A shelf of which all is known: a hardness above 2 stands for no transition. */
    private static ShelfTable table(double[][] hardness) {
        ShelfTable table = told(hardness);
        table.slice(0, hardness.length);
        return table;
    }

    private static ShelfPair pair(int from, int to, double hardness) {
        return hardness > 2
                ? ShelfPair.none(from, to, Hindrance.TOO_HARD)
                : new ShelfPair(
                        from,
                        to,
                        Optional.of(Grade.values()[(int) Math.ceil(hardness)]),
                        hardness,
                        Hindrance.NONE);
    }

    /** Of some two to six patterns what leads where: a third of it easy, half of it not at all. */
    private static double[][] any(Random random) {
        double[][] all = all(2 + random.nextInt(5), 0);
        for (double[] row : all) {
            for (int to = 0; to < row.length; to++) {
                row[to] = Math.max(0, 6 * random.nextDouble() - 2);
            }
        }
        return all;
    }

    /** The least cost over every order of patterns, none twice. */
    private static double exhaustive(double[][] hardness, int at, int to, Set<Integer> gone) {
        if (at == to) {
            return 0;
        }
        double least = Double.POSITIVE_INFINITY;
        for (int next = 0; next < hardness.length; next++) {
            if (next != at && hardness[at][next] <= 2 && gone.add(next)) {
                double on = exhaustive(hardness, next, to, gone);
                least = Math.min(least, hardness[at][next] + 0.1 + on);
                gone.remove(next);
            }
        }
        return least;
    }

    @Test
    void noOrderOfPatternsIsGentlerThanTheRoute() {
        Random random = new Random(11);
        int found = 0;
        int through = 0;
        for (int i = 0; i < 400; i++) {
            double[][] hardness = any(random);
            int to = hardness.length - 1;
            RouteFound known = new RouteSearch(table(hardness), 0, to).run();
            ShelfTable asked = told(hardness);
            RouteFound late = new RouteSearch(asked, 0, to).run();
            double least = exhaustive(hardness, 0, to, new HashSet<>(Set.of(0)));
            for (RouteFound one : List.of(known, late)) {
                assertThat(one.done()).isTrue();
                assertThat(one.route().isPresent()).isEqualTo(least < Double.POSITIVE_INFINITY);
                one.route()
                        .ifPresent(
                                route -> assertThat(route.cost()).isCloseTo(least, within(1e-9)));
            }
            assertThat(late.looked()).isEqualTo(asked.progress().done());
            found += late.route().isPresent() ? 1 : 0;
            through += late.route().filter(route -> route.steps().size() > 1).isPresent() ? 1 : 0;
        }
        assertThat(found).isBetween(100, 390);
        assertThat(through).isGreaterThan(60);
    }

    /** A table that makes its pairs up when they are asked for. */
    private static ShelfTable told(double[][] hardness) {
        return new ShelfTable(
                patterns(hardness.length), BOOK, (from, to) -> pair(from, to, hardness[from][to]));
    }

    private static double[][] all(int size, double hardness) {
        double[][] all = new double[size][size];
        for (double[] row : all) {
            Arrays.fill(row, hardness);
        }
        return all;
    }

    @Test
    void whereTheStraightWayIsEasyNothingElseIsLookedAt() {
        RouteFound found = new RouteSearch(told(all(200, 0)), 3, 150).run();
        assertThat(found.looked()).isEqualTo(1);
        assertThat(found.route().orElseThrow().patterns()).containsExactly(3, 150);
    }

    @Test
    void roundAHardChangeAFewPairsOf40000Do() {
        double[][] hardness = all(200, 0);
        hardness[3][150] = 1.4;
        RouteFound found = new RouteSearch(told(hardness), 3, 150).run();
        assertThat(found.route().orElseThrow().steps()).hasSize(2);
        assertThat(found.looked()).isLessThan(6);
    }

    @Test
    void aChangeThatLeadsOnlyOneWayIsNotGoneBack() {
        double[][] hardness = all(3, 3);
        hardness[0][1] = 0.5;
        hardness[1][2] = 0.5;
        ShelfTable table = table(hardness);
        assertThat(new RouteSearch(table, 0, 2).run().route().orElseThrow().patterns())
                .containsExactly(0, 1, 2);
        RouteFound back = new RouteSearch(table, 2, 0).run();
        assertThat(back.route()).isEmpty();
        assertThat(back.straight()).isEqualTo(Hindrance.TOO_HARD);
    }

    @Test
    void twoEasyChangesAreGentlerThanOneWithPracticeAndTenAreNot() {
        double[][] hardness = all(3, 0);
        hardness[0][2] = 0.3;
        assertThat(new RouteSearch(table(hardness), 0, 2).run().route().orElseThrow().steps())
                .hasSize(2);
        double[][] row = all(11, 3);
        for (int i = 0; i < 10; i++) {
            row[i][i + 1] = 0;
        }
        row[0][10] = 0.8;
        Route route = new RouteSearch(table(row), 0, 10).run().route().orElseThrow();
        assertThat(route.steps()).hasSize(1);
        assertThat(route.hardest()).contains(Grade.PRACTISED);
    }

    @Test
    void aSearchThatIsStoppedHasWhatItFoundByThen() {
        double[][] hardness = all(6, 0.9);
        List<RouteSearch.Progress> heard = new ArrayList<>();
        RouteFound found =
                new RouteSearch(told(hardness), 0, 5).run(heard::add, () -> heard.size() >= 2);
        assertThat(found.done()).isFalse();
        assertThat(found.route().orElseThrow().patterns()).containsExactly(0, 5);
        assertThat(heard.get(0).looked()).isEqualTo(1);
        assertThat(heard.get(0).best()).isPresent();
    }

    @Test
    void whoIsThereAlreadyNeedsNoChange() {
        RouteFound found = new RouteSearch(told(all(3, 0)), 1, 1).run();
        assertThat(found.route().orElseThrow().patterns()).containsExactly(1);
        assertThat(found.route().orElseThrow().hardest()).isEmpty();
        assertThat(found.looked()).isZero();
    }

    @Test
    void aRouteLeadsOnFromWhereItIs() {
        assertThatThrownBy(() -> new Route(0, List.of(pair(1, 2, 0)))).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> new Route(0, List.of(pair(0, 2, 3)))).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> pair(2, 2, 0)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> new RouteSearch(table(all(2, 0)), 0, 2).run())
                .isInstanceOf(Refusal.class);
    }

    @Test
    void islandsAreWhatOneCanComeBackFrom() {
        double[][] hardness = all(5, 3);
        hardness[0][1] = 0;
        hardness[1][0] = 0;
        hardness[1][2] = 0; // and no way back
        hardness[2][3] = 0;
        hardness[3][2] = 0;
        ShelfMap map = ShelfMap.of(table(hardness));
        assertThat(map.islands()).containsExactlyInAnyOrder(Set.of(0, 1), Set.of(2, 3), Set.of(4));
        assertThat(map.pairs()).hasSize(5);
        assertThat(map.leadsOn(4)).isFalse();
        assertThat(map.leadsIn(2)).isTrue();
        hardness[3][0] = 1.5;
        assertThat(ShelfMap.of(table(hardness)).islands().get(0)).containsExactly(0, 1, 2, 3);
    }
}
