package deferent.motion.pairing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import org.junit.jupiter.api.Test;

class RefusalTest {
    private static Refusal of(double value, double least, double most, String unit) {
        return catchThrowableOfType(
                Refusal.class, () -> Refusal.within(value, least, most, "size", unit));
    }

    @Test
    void whatWouldBeRightNamesTheBoundsThatThereAre() {
        double none = Double.POSITIVE_INFINITY;
        assertThat(of(9, 1, 3, "m").right()).isEqualTo("give from 1 m to 3 m");
        assertThat(of(0, 1, none, "m").right()).isEqualTo("give 1 m or more");
        assertThat(of(9, -none, 3, "m").right()).isEqualTo("give at most 3 m");
        assertThat(of(Double.NaN, -none, none, "m").right()).isEqualTo("give a finite number");
        assertThat(of(Double.NaN, 1, 3, "turns").what()).isEqualTo("is no number turns");
        assertThat(of(2e15, 1, 3, "").what()).isEqualTo("is beyond 1000000000000000");
        assertThat(of(-1e-12, 1, 3, "").what()).isEqualTo("is within -0.000000001");
    }

    @Test
    void anAngleIsSaidInDegreesUnlessItWasTypedOtherwise() {
        Refusal refusal = of(Math.PI, 0, Math.PI / 2, "rad");
        assertThat(refusal.getMessage()).isEqualTo("size: is 180°; give from 0° to 90°");
        assertThat(refusal.in("turns", 2 * Math.PI).getMessage())
                .isEqualTo("size: is 0.5 turns; give from 0 to 0.25 turns");
        assertThat(of(9, 0.5, 1.5, "m").in("cm", 0.01).getMessage())
                .isEqualTo("size: is 900 cm; give from 50 cm to 150 cm");
        assertThat(refusal.range()).contains(new Range(Math.PI, 0, Math.PI / 2, false, "rad"));
        Refusal other = new Refusal("is odd", "size", "give another");
        assertThat(other.in("m", 1)).isSameAs(other);
        assertThat(other.range()).isEmpty();
    }

    @Test
    void whatFitsIsHandedOn() {
        assertThat(Refusal.within(2, 1, 3, "size", "m")).isEqualTo(2);
        assertThat(Refusal.angle(-1.5, "size")).isEqualTo(-1.5);
    }
}
