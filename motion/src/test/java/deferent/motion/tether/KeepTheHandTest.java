package deferent.motion.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Side;
import org.junit.jupiter.api.Test;

class KeepTheHandTest {
    // Independently computed for R = L = 0.60 m, one hand turn a second.
    @Test
    void aTriquetraHasTwoWaysToFollowItsHandAndOneRunsAwaySlowly() {
        KeepTheHand keep = KeepTheHand.of(Spun.triquetra(1.0), Side.LEFT, Kit.USUAL);
        assertThat(keep.turns()).isEqualTo(-2);
        assertThat(keep.solutions())
                .extracting(KeepTheHand.Solution::leastPullWeights)
                .satisfiesExactlyInAnyOrder(
                        pull -> assertThat(pull).isCloseTo(2.87, within(0.005)),
                        pull -> assertThat(pull).isCloseTo(1.73, within(0.005)));
        assertThat(keep.solutions())
                .extracting(KeepTheHand.Solution::growth)
                .satisfiesExactlyInAnyOrder(
                        growth -> assertThat(growth).isCloseTo(1, within(1e-6)),
                        growth -> assertThat(growth).isCloseTo(1.027, within(5e-4)));
    }

    @Test
    void aSlowTriquetraWouldHaveToPushOneOfTheTwo() {
        KeepTheHand keep = KeepTheHand.of(Spun.triquetra(1.5), Side.LEFT, Kit.USUAL);
        assertThat(keep.solutions()).hasSize(2);
        assertThat(keep.solutions()).filteredOn(s -> !s.pulls()).hasSize(1);
        assertThat(keep.best()).hasValueSatisfying(s -> assertThat(s.pulls()).isTrue());
    }
}
