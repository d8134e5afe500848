package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Drawn;
import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.PlaneJet;
import deferent.motion.pairing.Refusal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SvgPathTest {
    @Test
    void twoHalfCirclesMakeACircleOfTheWantedRadius() {
        HandPath.Course course =
                SvgPath.parse("M 100 50 A 50 50 0 0 1 0 50 A 50 50 0 0 1 100 50 Z", 0.3).course();
        for (int i = 0; i < 360; i++) {
            PlaneJet p = course.at(i / 360.0);
            assertThat(Math.hypot(p.u().value(), p.v().value())).isCloseTo(0.3, within(1e-7));
        }
    }

    @Test
    void upInThePictureIsUpInThePlane() {
        Drawn triangle = SvgPath.parse("M 0 0 L 2 0 L 1 -2 Z", 1);
        double top = triangle.pieces().stream().mapToDouble(Drawn.Cubic::v3).max().orElseThrow();
        double tipU =
                triangle.pieces().stream()
                        .filter(c -> c.v3() == top)
                        .mapToDouble(Drawn.Cubic::u3)
                        .findFirst()
                        .orElseThrow();
        assertThat(tipU).isEqualTo(0);
    }

    @Test
    void thePathIsCentredAndAsLargeAsWanted() {
        Drawn square = SvgPath.parse("m 10 10 h 4 v 4 h -4", 0.5);
        assertThat(square.radius()).isCloseTo(0.5, within(1e-12));
        assertThat(square.pieces()).hasSize(4);
        assertThat(square.pieces().stream().mapToDouble(Drawn.Cubic::u0).sum()).isZero();
        assertThat(square.pieces().stream().mapToDouble(Drawn.Cubic::v0).sum()).isZero();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "M0 0 L1 0 L1 1 Z|m0 0 l1 0 l0 1 z",
                "M0 0 L1 0 L1 1 Z|M0 0 H1 V1 Z",
                "M0 0 L1 0 L1 1 Z|M0,0 1,0 1,1",
                "M0 0 C0 1 1 1 1 0 C1 -1 2 -1 2 0 Z|M0 0 C0 1 1 1 1 0 S2 -1 2 0 Z",
                "M0 0 C0 1 1 1 1 0 C1 -1 2 -1 2 0 Z|M0 0 c0 1 1 1 1 0 s1 -1 1 0 z",
                "M0 0 Q1 1 2 0 Q3 -1 4 0 Z|M0 0 Q1 1 2 0 T4 0 Z",
                "M0 0 Q1 1 2 0 Q3 -1 4 0 Z|m0 0 q1 1 2 0 t2 0 z",
                "M0 0 A1 1 0 0 1 2 0 Z|m0 0 a1 1 0 0 1 2 0 z",
            })
    void theLettersSayTheSameInTheirSeveralWays(String one, String other) {
        assertThat(SvgPath.parse(other, 0.4)).isEqualTo(SvgPath.parse(one, 0.4));
    }

    @Test
    void aQuadraticCurveIsTheSameParabolaAsACubic() {
        // y = 2t(1-t), x = 2t, so y = x(2 - x)/2: the middle is at height 1/2 over the chord.
        Drawn.Cubic piece = SvgPath.parse("M0 0 Q 1 1 2 0 Z", 1).pieces().get(0);
        double scale = (piece.u3() - piece.u0()) / 2;
        double middle = (piece.v0() + 3 * piece.v1() + 3 * piece.v2() + piece.v3()) / 8;
        assertThat((piece.v0() - middle) / scale).isCloseTo(0.5, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "M0 0 L1 0 K 2 2|character 11",
                "L1 0|begin with M",
                "M0 0 L1|after character 7",
                "M0 0 L1 0 L1 1 Z M 5 5 L 6 6|second outline at character 18",
                "M0 0 L1 0 L1 1 Z L 3 3|after it is closed",
                "M0 0|draws nothing",
                "M0 0 L0 0 Z|draws nothing",
            })
    void aWrongPathSaysWhereAndWhat(String text, String said) {
        assertThatThrownBy(() -> SvgPath.parse(text, 0.4))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining(said);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, 11, Double.NaN})
    void aSizeThatNoHandReachesIsRefused(double radius) {
        assertThatThrownBy(() -> SvgPath.parse("M0 0 L1 0 L1 1 Z", radius))
                .isInstanceOf(Refusal.class);
    }

    @Test
    void anEmptyPathIsRefused() {
        assertThatThrownBy(() -> SvgPath.parse("  ", 0.4)).hasMessageContaining("empty");
    }
}
