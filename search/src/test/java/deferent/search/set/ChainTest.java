package deferent.search.set;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ChainTest {
    private static final Run A_SECOND = new Run(1, 4, 0.25);

    private static double stay(Run run, double entered, double leaves) {
        return run.stay(entered, new Door(leaves, 0, 0, 0), A_SECOND);
    }

    @Test
    void aPatternIsKeptUntilTheNearestMomentItCanBeLeft() {
        // Left at 0.3 of every cycle: after 4.3 s, or after 3.3 s.
        assertThat(stay(A_SECOND, 0, 0.3)).isCloseTo(4.3, within(1e-12));
        // Entered at 0.4: after 3.9 s.
        assertThat(stay(A_SECOND, 0.4, 0.3)).isCloseTo(3.9, within(1e-12));
        // A leaving time of a later cycle is the same moment.
        assertThat(stay(A_SECOND, 0.4, 2.3)).isCloseTo(3.9, within(1e-12));
    }

    @Test
    void aPatternIsSeenForACountAtLeast() {
        Run brief = new Run(1, 0.25, 0.25);
        assertThat(stay(brief, 0, 0.1)).isCloseTo(1.1, within(1e-12));
        assertThat(stay(brief, 0, 0.25)).isCloseTo(0.25, within(1e-12));
        assertThat(stay(new Run(0.1, 1, 1), 0, 0)).isCloseTo(1, within(1e-12));
    }

    @Test
    void aGentlerTransitionIsWorthHoldingAPatternALittleLonger() {
        List<Run> runs = List.of(A_SECOND, A_SECOND);
        List<List<Door>> doors = List.of(List.of(new Door(0, 0, 0, 4), new Door(0.5, 0, 0, 0)));
        Chain chain = Chain.open(runs, doors, SongBars.NONE);
        // Two counts off for a transition a grade easier.
        assertThat(chain.doors()).containsExactly(1);
        assertThat(chain.cost()).isCloseTo(2, within(1e-12));
        // The last ends when it is asked to.
        assertThat(chain.stay(1)).isEqualTo(4);
    }

    @Test
    void whereATransitionEntersMattersToTheNextStay() {
        List<Run> runs = List.of(A_SECOND, A_SECOND, A_SECOND);
        // Both leave in time; the one enters just after the next can be left.
        List<List<Door>> doors =
                List.of(
                        List.of(new Door(0, 0.5, 0, 0), new Door(0, 0, 0, 0.1)),
                        List.of(new Door(0, 0, 0, 0)));
        assertThat(Chain.open(runs, doors, SongBars.NONE).doors()).containsExactly(1, 0);
    }

    @Test
    void aRoundEndsWhereItBegan() {
        List<Run> runs = List.of(A_SECOND, new Run(0.75, 2, 0.25));
        List<List<Door>> doors =
                List.of(
                        List.of(new Door(0.2, 0.1, 0, 0), new Door(0.6, 0.3, 0, 0)),
                        List.of(new Door(0.5, 0.9, 0, 0), new Door(0.7, 0.2, 0, 0.5)));
        Chain chain = Chain.round(runs, doors);
        double clock = doors.get(1).get(chain.door(1)).joins();
        for (int k = 0; k < 2; k++) {
            Door out = doors.get(k).get(chain.door(k));
            double left = (clock + chain.stay(k) - out.leaves()) / runs.get(k).cycle();
            assertThat(left - Math.rint(left)).isCloseTo(0, within(1e-9));
            clock = out.joins();
        }
    }

    @Property(tries = 200)
    void noOtherChoiceIsBetterOpen(Any any) {
        List<Run> runs = any.list(1, 4, () -> run(any));
        List<List<Door>> doors = new ArrayList<>();
        for (int i = 1; i < runs.size(); i++) {
            doors.add(any.list(1, 3, () -> door(any)));
        }
        Chain chain = Chain.open(runs, doors, SongBars.NONE);
        assertThat(chain.cost()).isCloseTo(exhaustive(runs, doors, 0, 0, -1), within(1e-9));
        assertThat(chain.cost()).isCloseTo(cost(runs, doors, chain), within(1e-9));
    }

    @Property(tries = 200)
    void noOtherChoiceIsBetterInARound(Any any) {
        List<Run> runs = any.list(1, 4, () -> run(any));
        List<List<Door>> doors = new ArrayList<>();
        runs.forEach(run -> doors.add(any.list(1, 3, () -> door(any))));
        double least = Double.POSITIVE_INFINITY;
        List<Door> last = doors.get(doors.size() - 1);
        for (int i = 0; i < last.size(); i++) {
            least = Math.min(least, exhaustive(runs, doors, 0, last.get(i).joins(), i));
        }
        assertThat(Chain.round(runs, doors).cost()).isCloseTo(least, within(1e-9));
    }

    private static Run run(Any any) {
        return new Run(any.number(0.2, 3), any.number(0.3, 8), any.number(0.1, 0.5));
    }

    private static Door door(Any any) {
        return new Door(any.number(0, 5), any.number(0, 5), any.number(0, 2), any.number(0, 8));
    }

    /** Every choice of all, one after the other. */
    private static double exhaustive(
            List<Run> runs, List<List<Door>> doors, int k, double entered, int closing) {
        if (k == runs.size() - 1 && closing < 0) {
            return 0;
        }
        double least = Double.POSITIVE_INFINITY;
        for (int j = 0; j < doors.get(k).size(); j++) {
            if (k < runs.size() - 1 || j == closing) {
                Door out = doors.get(k).get(j);
                Run run = runs.get(k);
                double here = out.weight() + off(run, entered, out);
                double rest =
                        k < runs.size() - 1
                                ? exhaustive(runs, doors, k + 1, out.joins(), closing)
                                : 0;
                least = Math.min(least, here + rest);
            }
        }
        return least;
    }

    private static double off(Run run, double entered, Door out) {
        return run.off(run.stay(entered, out, A_SECOND), entered, out, A_SECOND);
    }

    private static double cost(List<Run> runs, List<List<Door>> doors, Chain chain) {
        double cost = 0;
        for (int k = 0; k < doors.size(); k++) {
            cost +=
                    doors.get(k).get(chain.door(k)).weight()
                            + Math.abs(chain.stay(k) - runs.get(k).asked()) / runs.get(k).count();
        }
        return cost;
    }
}
