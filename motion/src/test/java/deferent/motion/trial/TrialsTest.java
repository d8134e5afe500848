package deferent.motion.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

class TrialsTest {
    private int times;

    @Property(tries = 30)
    void aPropertyIsTriedEachTimeOnItsOwnValues(Any any) {
        double number = any.number(2, 3);
        assertThat(number).isBetween(2.0, 3.0);
        times++;
        assertThat(times).isLessThanOrEqualTo(30);
    }

    @Test
    void aPropertyIsTriedAsOftenAsItSays() {
        assertThat(drawn(1, any -> any.number(0, 1))).hasSize(100);
    }

    @Test
    void theSameSeedDrawsTheSameAndAnotherSeedOthers() {
        List<Object> drawn = drawn(1, any -> any.number(0, 1));
        assertThat(drawn(1, any -> any.number(0, 1))).isEqualTo(drawn);
        assertThat(drawn(2, any -> any.number(0, 1))).isNotEqualTo(drawn);
    }

    @Test
    void boundsNoughtAndOneAreAmongWhatIsDrawnAndNothingBeyond() {
        assertThat(drawn(1, any -> any.number(-3, 7)))
                .contains(-3.0, 7.0, 0.0, 1.0, -1.0)
                .allSatisfy(d -> assertThat((double) d).isBetween(-3.0, 7.0));
        assertThat(drawn(1, any -> any.number(0.3, 0.7)))
                .contains(0.3, 0.7)
                .allSatisfy(d -> assertThat((double) d).isBetween(0.3, 0.7));
        assertThat(drawn(1, any -> any.whole(3, 9))).contains(3, 4, 5, 6, 7, 8, 9).hasSize(100);
        assertThat(drawn(1, any -> any.of("a", "b"))).containsOnly("a", "b").contains("a", "b");
        assertThat(drawn(1, any -> any.text("xy", 1, 2)))
                .contains("x", "y", "xy")
                .allSatisfy(d -> assertThat((String) d).matches("[xy]{1,2}"));
    }

    @Test
    void aFailureTellsItsValuesMadePlainerAndHowToTryItOnceMore() {
        AssertionError failure =
                failure(
                        any -> {
                            double left = any.number(-5, 5);
                            int right = any.from(a -> a.whole(0, 9) + a.whole(1, 9));
                            String word = any.of("box", "diamond");
                            assertThat(left + right).as(word).isLessThan(2);
                        });
        assertThat(failure)
                .hasMessageContaining("[box]")
                .hasMessageContaining("-Dtest='Some#property' -Ddeferent.seed=1 -Ddeferent.try=")
                .hasMessageMatching("(?s).*\nWith: (-?[0-9.]+, 1|0.0, [0-9]+), box\n.*")
                .hasMessageMatching(
                        "(?s).*\nDrawn at first: -?[0-9.E-]+, [0-9]+, (box|diamond)\n.*")
                .hasCauseInstanceOf(AssertionError.class);
    }

    @Test
    void aTryThatDoesNotFitIsMadeUpForByAnother() {
        List<Integer> kept = new ArrayList<>();
        Trials.run(
                "Some#property",
                100,
                1,
                any -> {
                    int drawn = any.whole(1, 4);
                    assumeTrue(drawn > 1);
                    kept.add(drawn);
                });
        assertThat(kept).hasSize(100).doesNotContain(1);
    }

    @Test
    void aPropertyThatNextToNothingFitsFails() {
        assertThat(failure(any -> assumeTrue(any.whole(1, 4) == 2)))
                .hasMessageContaining("Some#property fits only");
    }

    private static List<Object> drawn(long seed, Function<Any, Object> draw) {
        List<Object> drawn = new ArrayList<>();
        Trials.run("Some#property", 100, seed, any -> drawn.add(draw.apply(any)));
        return drawn;
    }

    private static AssertionError failure(Consumer<Any> property) {
        return catchThrowableOfType(
                AssertionError.class, () -> Trials.run("Some#property", 100, 1, property));
    }
}
