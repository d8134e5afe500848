package deferent.search.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Size;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import java.util.List;
import org.junit.jupiter.api.Test;

class SensitivityTest {
    private static final Pairing LINKED = Phrase.parse("static spin vs triquetra").pairing();
    private static final List<Cost> COSTS = Sensitivity.of(LINKED, Side.LEFT);

    @Test
    void aCentimetreOfTheRidersHandCircleCostsACentimetre() {
        Cost cost = cost(Side.RIGHT, Size.Kind.HAND_RADIUS);
        assertThat(cost.step()).isEqualTo(0.01);
        assertThat(cost.shapeCost()).isCloseTo(0.01, within(1e-4));
        assertThat(cost.placedCost()).isCloseTo(0.01, within(1e-9));
    }

    @Test
    void aCentimetreOfTheCarriersTetherCostsACentimetre() {
        assertThat(cost(Side.LEFT, Size.Kind.TETHER).gapCost()).isCloseTo(0.01, within(1e-4));
    }

    // A chord of five degrees on a circle of 0.6 m: 2·0.6·sin(2.5°).
    @Test
    void fiveDegreesOfTheTimingCostTheirChordAndNoShape() {
        Cost cost = cost(Side.LEFT, Size.Kind.TIMING);
        assertThat(cost.placedCost()).isCloseTo(1.2 * Math.sin(Math.toRadians(2.5)), within(1e-9));
        assertThat(cost.shapeCost()).isZero();
    }

    @Test
    void depthCostsNothingInThePlane() {
        assertThat(cost(Side.RIGHT, Size.Kind.CENTRE_Z).gapCost()).isCloseTo(0, within(1e-9));
    }

    @Test
    void theRidersOwnTetherBearsOnNothing() {
        assertThat(COSTS)
                .noneMatch(c -> c.size().equals(Size.of(Side.RIGHT, Size.Kind.TETHER)))
                .noneMatch(c -> c.size().kind() == Size.Kind.TEMPO);
    }

    @Test
    void theDearestIsToldFirst() {
        for (int i = 1; i < COSTS.size(); i++) {
            assertThat(COSTS.get(i).gapCost()).isLessThanOrEqualTo(COSTS.get(i - 1).gapCost());
        }
    }

    @Test
    void fiveDegreesOfAPendulumsSwingCostGap() {
        Pairing pairing = Phrase.parse("pendulum vs CAP").pairing();
        assertThat(Sensitivity.of(pairing, Side.LEFT))
                .anySatisfy(
                        c -> {
                            assertThat(c.size()).isEqualTo(Size.of(Side.LEFT, Size.Kind.AMPLITUDE));
                            assertThat(c.step()).isCloseTo(Math.toRadians(5), within(1e-12));
                            assertThat(c.shapeCost()).isGreaterThan(0.02);
                        });
    }

    private static Cost cost(Side side, Size.Kind kind) {
        return COSTS.stream()
                .filter(c -> c.size().equals(Size.of(side, kind)))
                .findFirst()
                .orElseThrow();
    }
}
