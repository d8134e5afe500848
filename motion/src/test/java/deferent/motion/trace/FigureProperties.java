package deferent.motion.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.AnyPairing;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.pairing.Side;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.domains.Domain;

@Domain(AnyPairing.class)
class FigureProperties {
    @Property(tries = 50)
    void aFigureAgreesWithItsOwnDensePolygon(@ForAll Pairing pairing) {
        Trace trace = Trace.of(pairing);
        for (Side side : Side.values()) {
            Figure figure = Figure.of(trace, side);
            HeadPath dense = HeadPath.of(trace, side, 20_000);
            double size = Math.max(figure.outerRadius(), 0.1);
            double length = 0;
            double area = 0;
            double[] u = dense.u();
            double[] v = dense.v();
            for (int i = 0; i < u.length; i++) {
                int j = (i + 1) % u.length;
                length += Math.hypot(u[j] - u[i], v[j] - v[i]);
                area += (u[i] * v[j] - u[j] * v[i]) / 2;
            }
            assertThat(figure.signedArea()).isCloseTo(area, within(1e-4 * size * (size + length)));
            // The polygon cuts a hand path's corners.
            if (flat(pairing, side)) {
                assertThat(figure.length()).isCloseTo(length, within(1e-3 * size));
            }
            assertThat(figure.length()).isGreaterThan(length - 1e-4 * size);
        }
    }

    private static boolean flat(Pairing pairing, Side side) {
        boolean turns = pairing.part(side).place().turn().turns() != 0;
        return !turns && pairing.rider().isEmpty();
    }

    @Property(tries = 50)
    void theUnionIsNoLargerThanWhatTheFigureSpans(@ForAll Pairing pairing) {
        Trace trace = Trace.of(pairing);
        for (Side side : Side.values()) {
            Figure figure = Figure.of(trace, side);
            assertThat(figure.unionArea())
                    .isLessThanOrEqualTo(figure.width() * figure.height() + 1e-9);
        }
    }

    @Property(tries = 50)
    void theQuickFigureIsTheSettledOneToWhatThinningLeavesOut(@ForAll Pairing pairing) {
        Trace trace = Trace.of(pairing);
        for (Side side : Side.values()) {
            Figure quick = Figure.quick(trace, side);
            Figure settled = Figure.of(trace, side);
            double size = settled.outerRadius();
            assertThat(quick.length()).isCloseTo(settled.length(), within(1e-4 * size + 1e-9));
            assertThat(quick.signedArea())
                    .isCloseTo(settled.signedArea(), within(1e-4 * size * size + 1e-9));
            assertThat(quick.selfCrossings()).isEqualTo(settled.selfCrossings());
            if (pairing.part(side).place().turn().equals(PlaneTurn.NONE)) {
                // Chords that stray by at most THIN times the extent, along the whole path.
                double left = WoundArea.THIN * (settled.width() + settled.height());
                assertThat(quick.unionArea())
                        .isCloseTo(settled.unionArea(), within(left * settled.length() + 1e-9));
            }
        }
    }
}
