package deferent.motion.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LowestTest {
    /** A step keeps (√5 − 1)/2 of the interval: Kiefer (1953), from memory. */
    @ParameterizedTest
    @ValueSource(doubles = {-0.99, -0.3, 0.4, 1.5, 3.95})
    void aCornerIsFoundToTheShareOfTheIntervalThatItsStepsLeave(double low) {
        List<Double> looked = new ArrayList<>();
        DoubleUnaryOperator distance =
                x -> {
                    looked.add(x);
                    return Math.abs(x - low);
                };
        for (int steps : new int[] {0, 1, 5, 24}) {
            looked.clear();
            Lowest found = Lowest.within(distance, -1, 4, steps);
            double left = 5 * Math.pow((Math.sqrt(5) - 1) / 2, steps);
            assertThat(found.at()).isCloseTo(low, within(left));
            assertThat(looked).hasSize(steps + 2).allMatch(x -> x > -1 && x < 4);
            assertThat(found.value())
                    .isEqualTo(looked.stream().mapToDouble(x -> Math.abs(x - low)).min().orElse(9));
            assertThat(found.value()).isEqualTo(Math.abs(found.at() - low));
        }
    }

    @Test
    void theFirstTwoPlacesCutTheIntervalGoldenly() {
        List<Double> looked = new ArrayList<>();
        Lowest.within(
                x -> {
                    looked.add(x);
                    return x;
                },
                2,
                12,
                0);
        assertThat(looked.get(0)).isCloseTo(2 + 3.8196601125, within(1e-9));
        assertThat(looked.get(1)).isCloseTo(2 + 6.1803398875, within(1e-9));
    }
}
