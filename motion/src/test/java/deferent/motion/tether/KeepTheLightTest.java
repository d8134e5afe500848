package deferent.motion.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Side;
import org.junit.jupiter.api.Test;

class KeepTheLightTest {
    // Independently computed in double precision for R = L = 0.60 m, one hand turn a second.
    @Test
    void aTriquetrasHandRoundsATriangleToKeepTheLight() {
        KeepTheLight keep = KeepTheLight.of(Spun.triquetra(1.0), Side.LEFT, Kit.USUAL);
        assertThat(keep.away().greatest()).isCloseTo(0.215, within(5e-4));
        assertThat(keep.away().mean()).isCloseTo(0.100, within(5e-4));
        assertThat(keep.away().fromPath()).isCloseTo(0.213, within(5e-4));
        assertThat(keep.away().fromPathMean()).isCloseTo(0.073, within(5e-4));
    }
}
