package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Trace;
import java.util.List;
import org.junit.jupiter.api.Test;

class BeginTest {

    @Test
    void aClockwiseIsolationBeginsAtTheLeftAndGoesUp() {
        List<String> said = begin("isolation vs triquetra");
        assertThat(said.get(0))
                .isEqualTo(
                        "Left hand: begin at the left of its path, 30 cm from the middle; go up"
                                + " first.");
        assertThat(said.get(1))
                .isEqualTo(
                        "Left poi: begin with the tether pointing right; the head goes down first.");
    }

    @Test
    void counterClockwiseBeginsAtTheRight() {
        assertThat(begin("isolation vs triquetra, counter-clockwise").get(0))
                .startsWith("Left hand: begin at the right of its path")
                .endsWith("go up first.");
    }

    @Test
    void aStillHandIsToldWhereToHold() {
        assertThat(begin("static spin vs triquetra").get(0))
                .isEqualTo("Left hand: hold it still at breastbone height, 34 cm in front of you.");
    }

    @Test
    void aPendulumStartsFromRestAtItsEnd() {
        assertThat(begin("pendulum vs CAP").get(1))
                .contains("tether pointing right")
                .contains("from rest down");
    }

    @Test
    void aRiderKeepsToTheOtherHead() {
        assertThat(begin("CAP riding pendulum"))
                .anySatisfy(line -> assertThat(line).contains("hand: keep it at the"));
    }

    @Test
    void inTheWheelPlaneFrontAndBackAreSaid() {
        assertThat(begin("isolation vs triquetra, wheel plane").get(0))
                .startsWith("Left hand: begin at the front of its path");
    }

    private static List<String> begin(String phrase) {
        return Begin.of(Trace.of(Phrase.parse(phrase).pairing()));
    }
}
