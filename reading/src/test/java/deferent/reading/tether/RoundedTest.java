package deferent.reading.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Polygon;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Riding;
import deferent.motion.pairing.Turns;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import org.junit.jupiter.api.Test;

class RoundedTest {
    private static final Polygon BOX = new Polygon(4, 0.3, Math.PI / 4);

    @Test
    void aBoxIsRefusedWithTheTimeOfItsCornerAndARoundedOneIsNot() {
        Trace box = Spun.of(new Motion(BOX, new Turns(-3, 0)), 1.0);
        assertThatThrownBy(() -> KeepTheFigure.of(box, Side.LEFT, Kit.USUAL))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("infinite force at 0.000 s")
                .hasMessageContaining("round the corner");
        assertThatThrownBy(() -> KeepTheHandPath.of(box, Side.LEFT, Kit.USUAL))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("corner of the hand path");
        Rounded rounded = Rounded.of(BOX, 7);
        Trace smooth = Spun.of(new Motion(rounded.path(), new Turns(-3, 0)), 1.0);
        assertThat(KeepTheFigure.of(smooth, Side.LEFT, Kit.USUAL).away().greatest()).isFinite();
    }

    @Test
    void theMoreHarmonicsTheNearerToTheCorners() {
        double last = Double.POSITIVE_INFINITY;
        for (int highest : new int[] {1, 3, 7, 15, 24}) {
            double farthest = Rounded.of(BOX, highest).farthest();
            assertThat(farthest).isLessThan(last);
            last = farthest;
        }
        assertThat(last).isLessThan(0.02);
    }

    @Test
    void aRidersHandHasNoPathOfItsOwnToRound() {
        assertThatThrownBy(() -> Rounded.of(new Riding(), 5)).isInstanceOf(Refusal.class);
    }
}
