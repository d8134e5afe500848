package deferent.reading.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Swing;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LetGoTableTest {
    private static final double G = Gravity.STANDARD;

    private static LetGoTable of(double degrees, double speed, double seconds, double step) {
        Cord cord = new Cord(0.6, Kit.USUAL, G);
        return LetGoTable.of(cord, Math.toRadians(degrees), speed, seconds, step);
    }

    /** Pull cos(a) weights at the end of a swing of a, 3 − 2cos(a) at the bottom: textbook. */
    @Test
    void thePullIsACosineAtTheEndAndMostAtTheBottom() {
        double quarter = new Swing(Math.PI / 3, -1).period(0.6, G) / 4;
        List<LetGoTable.Row> rows = of(60, 0, 2 * quarter, quarter).rows();
        double weight = Kit.USUAL.headMass() * G;
        assertThat(rows).hasSize(3);
        assertThat(rows.get(0).pull()).isCloseTo(0.5 * weight, within(1e-9));
        assertThat(rows.get(1).pull()).isCloseTo(2 * weight, within(1e-9));
        assertThat(rows.get(1).angle()).isCloseTo(0, within(1e-9));
        assertThat(rows.get(1).speed()).isCloseTo(Math.sqrt(G * 0.6), within(1e-9));
        assertThat(rows.get(2).angle()).isCloseTo(-Math.PI / 3, within(1e-9));
        assertThat(rows).noneMatch(LetGoTable.Row::slack);
    }

    @Test
    void aSpeedTowardGreaterAnglesTakesItThere() {
        assertThat(of(0, 1, 0.1, 0.1).rows().get(1).angle()).isPositive();
        assertThat(of(0, -1, 0.1, 0.1).rows().get(1).angle()).isNegative();
    }

    /** Free fall from level with the hand's own height and above is slack at once: g·e &lt; 0. */
    @Test
    void fromAboveTheHandItFliesWithoutPull() {
        List<LetGoTable.Row> rows = of(120, 0, 0.2, 0.1).rows();
        assertThat(rows).allMatch(LetGoTable.Row::slack).allMatch(row -> row.pull() == 0);
        assertThat(rows.get(2).speed()).isCloseTo(0.2 * G, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({
        "200, 0, 1, 0.1, start angle",
        "30, 1000, 1, 0.1, start speed",
        "30, 0, 1, 2, step",
        "30, 0, 600, 0.001, rows",
        "30, 0, 0, 0.1, time to simulate",
        "30, 100, 600, 1, too often"
    })
    void whatCannotBeFollowedIsRefused(
            double degrees, double speed, double seconds, double step, String told) {
        assertThatThrownBy(() -> of(degrees, speed, seconds, step))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining(told);
    }
}
