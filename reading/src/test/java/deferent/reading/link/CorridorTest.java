package deferent.reading.link;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import org.junit.jupiter.api.Test;

/** The room two walkers are given to walk in. */
class CorridorTest {
    /** Ten rough steps in step, each taken again in four, two of those to either side. */
    @Test
    void aboutTwoWalkersInStepItIsTwoRoughStepsAndTheMarginToEitherSide() {
        int[] pairs = new int[22];
        for (int k = 0; k <= 10; k++) {
            pairs[2 * k] = 10 - k;
            pairs[2 * k + 1] = 10 - k;
        }
        Corridor about = Corridor.about(pairs, 11, 10, 4, 2);
        assertThat(about.low()).hasSize(41);
        assertThat(about.low()[20]).isEqualTo(20 - 8 - 2);
        assertThat(about.high()[20]).isEqualTo(20 + 8 + 2);
        // Between two rough steps, those two alone have their say.
        assertThat(about.low()[21]).isEqualTo(20 - 4 - 2);
        assertThat(about.high()[21]).isEqualTo(24 + 4 + 2);
        assertThat(about.low()[0]).isZero();
        assertThat(about.low()[8]).isZero();
        assertThat(about.high()[0]).isEqualTo(4 + 4 + 2);
        assertThat(about.high()[32]).isEqualTo(40);
        assertThat(about.low()[40]).isEqualTo(36 - 4 - 2);
    }

    @Property(tries = 60)
    void itHoldsTheWholeWalkAndNeverFallsBack(Any any) {
        int n = 8;
        int factor = any.whole(1, 4);
        int[] pairs = new int[4 * n + 2];
        int count = 1;
        int i = n;
        int j = n;
        pairs[0] = n;
        pairs[1] = n;
        while (i > 0 || j > 0) {
            boolean both = any.of(true, false);
            boolean first = any.of(true, false);
            int before = i;
            i = i > 0 && (both || first || j == 0) ? i - 1 : i;
            j = j > 0 && (both || !first || before == 0) ? j - 1 : j;
            pairs[2 * count] = i;
            pairs[2 * count + 1] = j;
            count++;
        }
        Corridor about = Corridor.about(pairs, count, n, factor, any.whole(0, 3));
        for (int k = 0; k < count; k++) {
            int row = pairs[2 * k] * factor;
            assertThat(pairs[2 * k + 1] * factor).isBetween(about.low()[row], about.high()[row]);
        }
        for (int row = 1; row <= n * factor; row++) {
            assertThat(about.low()[row]).isBetween(about.low()[row - 1], about.high()[row - 1] + 1);
            assertThat(about.high()[row]).isGreaterThanOrEqualTo(about.high()[row - 1]);
        }
    }
}
