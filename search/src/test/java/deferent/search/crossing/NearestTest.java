package deferent.search.crossing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import org.junit.jupiter.api.Test;

class NearestTest {
    // Two extensions whose hand circles differ by 20 cm are 20 cm and 2π·20 cm/s apart in step.
    @Test
    void whatNeverMeetsIsToldHowNearItComes() {
        Pairing small = PathCrossingsTest.both(Motion.flower(0.3, 1, 0), 0.6, 0);
        Pairing great = PathCrossingsTest.both(Motion.flower(0.5, 1, 0), 0.6, 0);
        assertThat(Crossings.between(small, great).list()).isEmpty();
        Crossing nearest = Crossings.nearest(small, great, CrossingRequest.USUAL);
        assertThat(nearest.placeGap()).isCloseTo(0.2, within(0.01));
        assertThat(nearest.speedGap()).isCloseTo(2 * Math.PI * 0.2, within(0.05));
    }
}
