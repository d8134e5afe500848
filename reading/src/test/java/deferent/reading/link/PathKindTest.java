package deferent.reading.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import org.junit.jupiter.api.Test;

/** Paths of tethers of 60 cm. */
class PathKindTest {
    private static PathKind head(String motion) {
        return PathKind.of(samples(motion).head(Side.LEFT));
    }

    private static PathKind hand(String motion) {
        return PathKind.of(samples(motion).hand(Side.LEFT));
    }

    private static Samples samples(String motion) {
        return Trace.of(Phrase.parse(motion + " vs static spin, tempo 60").pairing()).samples();
    }

    @Test
    void aCircleAnArcALineAndAPointAreToldFromAFigure() {
        assertThat(head("isolation").sort()).isEqualTo(PathKind.Sort.CIRCLE);
        assertThat(head("isolation").size()).isCloseTo(0.3, within(1e-6));
        assertThat(hand("CAP").sort()).isEqualTo(PathKind.Sort.ARC);
        assertThat(hand("CAP").size()).isCloseTo(0.6, within(1e-6));
        assertThat(head("linear extension").sort()).isEqualTo(PathKind.Sort.LINE);
        assertThat(head("linear extension").size()).isCloseTo(1.2, within(1e-6));
        assertThat(hand("static spin").sort()).isEqualTo(PathKind.Sort.POINT);
        assertThat(head("triquetra").sort()).isEqualTo(PathKind.Sort.FIGURE);
        assertThat(head("cat-eye").sort()).isEqualTo(PathKind.Sort.FIGURE);
    }

    @Test
    void anArcThatIsAWholeCircleIsOne() {
        assertThat(hand("arc sweep 180°").sort()).isEqualTo(PathKind.Sort.CIRCLE);
    }
}
