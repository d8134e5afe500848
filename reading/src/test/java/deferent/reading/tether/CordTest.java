package deferent.reading.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Refusal;
import org.junit.jupiter.api.Test;

class CordTest {
    /**
     * Any mechanics textbook: a uniform rod swings as a point pendulum of two thirds its length.
     */
    @Test
    void aCordMuchHeavierThanItsHeadSwingsAsARodAlone() {
        Cord cord = new Cord(0.6, new Kit(1e-9, 0.01, 1, false), Gravity.STANDARD);
        assertThat(cord.swingLength()).isCloseTo(0.4, within(1e-8));
    }

    @Test
    void aCordWithoutWeightIsThePointPendulumItself() {
        Cord cord = new Cord(0.6, Kit.USUAL, Gravity.STANDARD);
        assertThat(cord.swingLength()).isEqualTo(0.6);
        assertThat(cord.swingMass()).isEqualTo(Kit.USUAL.headMass());
    }

    @Test
    void kitsThatCannotBeAreRefusedWithWhatWouldBeRight() {
        assertThatThrownBy(() -> new Kit(0, 0.07, 0, false))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("head mass")
                .hasMessageContaining("more than 0");
        assertThatThrownBy(() -> new Kit(-1, 0.07, 0, false)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> new Kit(Double.NaN, 0.07, 0, false)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> new Kit(0.1, 0, 0, false))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("head diameter");
        assertThatThrownBy(() -> new Kit(0.1, 0.07, -0.1, false))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("cord mass");
        assertThatThrownBy(() -> new Cord(0, Kit.USUAL, 9.8)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> new Cord(-0.6, Kit.USUAL, 9.8))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("tether");
        assertThatThrownBy(() -> new Cord(0.6, Kit.USUAL, Double.POSITIVE_INFINITY))
                .isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> Spun.staticSpin(0.01))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("tempo");
    }
}
