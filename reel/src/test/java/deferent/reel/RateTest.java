package deferent.reel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.motion.pairing.Refusal;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import org.junit.jupiter.api.Test;

class RateTest {
    @Test
    void whatCamerasCallThemIsUnderstoodExactly() {
        assertThat(
                        List.of("23.976", "24", "25", "29.97", "30", "50", "59.94", "60").stream()
                                .map(Rate::of))
                .containsExactlyElementsOf(Rate.USUAL);
        assertThat(Rate.of("60000/2002")).isEqualTo(Rate.NTSC);
        assertThat(Rate.USUAL.stream().map(Rate::said))
                .containsExactly("23.976", "24", "25", "29.97", "30", "50", "59.94", "60");
    }

    @Test
    void noFrameDriftsInAnHour() {
        for (Rate rate : Rate.USUAL) {
            for (long frame : new long[] {1, 1799, 108_000, 215_999}) {
                BigDecimal exact =
                        BigDecimal.valueOf(frame * rate.den())
                                .divide(BigDecimal.valueOf(rate.num()), MathContext.DECIMAL64);
                assertThat(Math.abs(rate.time(frame) - exact.doubleValue())).isLessThan(1e-11);
            }
        }
    }

    @Test
    void whatIsNoRateIsRefused() {
        for (String said : List.of("", "fast", "0", "-25", "1000", "29.98", "30/0", "1/2/3")) {
            assertThatThrownBy(() -> Rate.of(said))
                    .as(said)
                    .isInstanceOf(Refusal.class)
                    .hasMessageContaining("30000/1001");
        }
    }
}
