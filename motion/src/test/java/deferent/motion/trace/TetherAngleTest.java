package deferent.motion.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.pairing.Swing;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Timing;
import deferent.motion.shared.Side;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class TetherAngleTest {
    private static final Motion SPIN = Motion.staticSpin(1, 0);

    private static Part part(Motion motion, Side side, int cycles) {
        return new Part(motion, Tether.USUAL, Place.usual(side, Plane.WALL), cycles);
    }

    private static Pairing left(Motion motion, int cycles) {
        return Pairing.of(part(motion, Side.LEFT, cycles), part(SPIN, Side.RIGHT, 1));
    }

    @Test
    void anEvenlyTurningPoiTurnsOnEvenlyCycleAfterCycle() {
        for (int cycles : new int[] {1, 4}) {
            for (int turns : new int[] {6, 1, 0, -2, -6}) {
                Trace trace = Trace.of(left(Motion.flower(0.5, turns, 0.4), cycles));
                TetherAngle angle = TetherAngle.of(trace, Side.LEFT);
                double grown = 2 * Math.PI * turns * cycles;
                assertThat(angle.growth()).isCloseTo(grown, within(1e-12));
                for (double share = 0; share < 1; share += 0.0137) {
                    double time = share * trace.period();
                    assertThat(angle.at(time, 0)).isCloseTo(0.4 + share * grown, within(1e-9));
                    assertThat(angle.at(time, 3))
                            .isCloseTo(0.4 + (share + 3) * grown, within(1e-9));
                }
            }
        }
    }

    @Test
    void aPendulumsTetherComesBackAndHangsDownInMidSwing() {
        Trace trace = Trace.of(left(Motion.pendulum(2.5), 1));
        TetherAngle angle = TetherAngle.of(trace, Side.LEFT);
        double[] shares = {0, 0.25, 0.5, 0.75};
        double[] off = {-2.5, 0, 2.5, 0};
        assertThat(angle.growth()).isZero();
        double start = angle.at(0, 0) + 2.5;
        assertThat(Math.cos(start - Swing.DOWN)).isCloseTo(1, within(1e-12));
        for (int i = 0; i < shares.length; i++) {
            assertThat(angle.at(shares[i] * trace.period(), 2))
                    .isCloseTo(start + off[i], within(1e-9));
        }
    }

    @ParameterizedTest
    @EnumSource(PlaneTurn.Axis.class)
    void inAPlaneThatTurnsTheAngleIsThatWithinThePlane(PlaneTurn.Axis axis) {
        for (Direction direction : Direction.values()) {
            Part right = part(Motion.flower(0.5, 3, 0.4), Side.RIGHT, 2);
            PlaneTurn turn = new PlaneTurn(2, axis, PlaneTurn.Carries.FIGURE);
            Pairing pairing =
                    Pairing.of(part(SPIN, Side.LEFT, 1), right.with(right.place().withTurn(turn)))
                            .with(direction)
                            .with(Timing.of(0.2));
            Trace trace = Trace.of(pairing);
            TetherAngle angle = TetherAngle.of(trace, Side.RIGHT);
            int way = direction == Direction.SAME ? 1 : -1;
            assertThat(angle.growth()).isCloseTo(way * 12 * Math.PI, within(1e-12));
            double start = 0.4 + 2 * Math.PI * 3 * 0.2;
            double first = direction == Direction.SAME ? start : Math.PI - start;
            assertThat(Math.cos(angle.at(0, 0) - first)).isCloseTo(1, within(1e-12));
            for (double share = 0; share < 1; share += 0.0137) {
                assertThat(angle.at(share * trace.period(), 0) - angle.at(0, 0))
                        .isCloseTo(way * 12 * Math.PI * share, within(1e-9));
            }
        }
    }

    @Test
    void overAPieceOfACycleItGrowsByThatPiece() {
        Pairing pairing = left(SPIN, 1);
        Trace whole = Trace.of(pairing);
        Map<Side, Course> hands =
                Map.of(Side.LEFT, whole.hand(Side.LEFT), Side.RIGHT, whole.hand(Side.RIGHT));
        Map<Side, Course> heads =
                Map.of(Side.LEFT, whole.head(Side.LEFT), Side.RIGHT, whole.head(Side.RIGHT));
        Trace piece =
                new Trace(
                        pairing,
                        Origin.MEASURED,
                        new Interval(0.25, 0.625),
                        false,
                        hands,
                        heads,
                        List.of(),
                        Map.of(),
                        List.of(),
                        0.004);
        TetherAngle angle = TetherAngle.of(piece, Side.LEFT);
        assertThat(angle.growth()).isCloseTo(0.75 * Math.PI, within(1e-12));
        assertThat(angle.at(0.5, 0)).isCloseTo(Math.PI, within(1e-12));
        assertThat(piece.period()).isEqualTo(0.375);
        assertThat(piece.uncertainty()).isEqualTo(0.004);
        assertThat(piece.samples(4).time(3)).isCloseTo(0.625, within(1e-12));
        assertThat(piece.ownCycle(Side.LEFT)).isSameAs(piece);
    }
}
