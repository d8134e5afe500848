package deferent.search.crossing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Side;
import java.util.List;
import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class GaugeTest {
    private static final Freedom ALL = Freedom.NONE.withShift(0.4).withTurn(Math.PI).withTempo(1.5);

    private static double square(
            double[] a, double[] b, Vector3D shift, double turn, double tempo, Gauge gauge) {
        Rotation rotation = new Rotation(Vector3D.PLUS_K, turn, RotationConvention.VECTOR_OPERATOR);
        CrossingRequest request = gauge.request();
        double sum = 0;
        for (int p = 0; p < State24.POINTS; p++) {
            Vector3D place =
                    rotation.applyTo(State24.place(b, p).subtract(gauge.pivot()))
                            .add(gauge.pivot())
                            .add(shift);
            Vector3D speed = rotation.applyTo(State24.velocity(b, p)).scalarMultiply(tempo);
            double off = place.distance(State24.place(a, p)) / request.place();
            double faster = speed.distance(State24.velocity(a, p)) / request.speed();
            sum += off * off + faster * faster;
        }
        return sum;
    }

    // Against a hundred random placings each, and small ones about the answer: none is nearer.
    @Test
    void noShiftTurnOrTempoThatIsAllowedComesNearer() {
        List<Pairing> shelf = AnyShelf.of(24, 9);
        Random random = new Random(9);
        CrossingRequest request = CrossingRequest.USUAL.with(ALL);
        for (int i = 0; i + 1 < shelf.size(); i++) {
            States from = States.of(shelf.get(i));
            States to = States.of(shelf.get(i + 1));
            Gauge gauge = new Gauge(request, to);
            double[] a = new double[State24.SIZE];
            double[] b = new double[State24.SIZE];
            from.exact(random.nextDouble(), a);
            to.exact(random.nextDouble(), b);
            gauge.measure(a, 0, b, 0);
            double best = gauge.square();
            assertThat(square(a, b, gauge.shift(), gauge.turn(), gauge.tempo(), gauge))
                    .isCloseTo(best, within(1e-6 * (1 + best)));
            assertThat(gauge.shift().getNorm()).isLessThanOrEqualTo(0.4 + 1e-12);
            assertThat(gauge.tempo()).isBetween(1 / 1.5 - 1e-12, 1.5 + 1e-12);
            for (int trial = 0; trial < 200; trial++) {
                boolean near = trial % 2 == 0;
                double by = near ? 1e-3 : 1;
                Vector3D shift =
                        new Vector3D(random.nextGaussian(), random.nextGaussian(), 0)
                                .scalarMultiply(0.2 * by)
                                .add(near ? gauge.shift() : Vector3D.ZERO);
                if (shift.getNorm() > 0.4) {
                    shift = shift.scalarMultiply(0.4 / shift.getNorm());
                }
                double turn = (near ? gauge.turn() : 0) + by * random.nextGaussian();
                double tempo =
                        (near ? gauge.tempo() : 1) * Math.exp(0.3 * by * random.nextGaussian());
                tempo = Math.max(1 / 1.5, Math.min(1.5, tempo));
                assertThat(square(a, b, shift, turn, tempo, gauge))
                        .isGreaterThanOrEqualTo(best * (1 - 1e-5) - 1e-9);
            }
        }
    }

    // What the gauge does to a state, the adjustment does to the pairing: riders, mirrored hands
    // and
    // arcs among them.
    @Test
    void thePairingStandsAsTheGaugeHasIt() {
        List<Pairing> shelf = AnyShelf.of(30, 11);
        Random random = new Random(11);
        CrossingRequest request = CrossingRequest.USUAL.with(ALL);
        for (int i = 0; i + 1 < shelf.size(); i++) {
            States from = States.of(shelf.get(i));
            States to = States.of(shelf.get(i + 1));
            Gauge gauge = new Gauge(request, to);
            double[] a = new double[State24.SIZE];
            double[] b = new double[State24.SIZE];
            double share = random.nextDouble();
            from.exact(random.nextDouble(), a);
            to.exact(share * to.period(), b);
            gauge.measure(a, 0, b, 0);
            Adjustment adjustment =
                    new Adjustment(
                            false, 0, gauge.turn(), gauge.pivot(), gauge.shift(), gauge.tempo());
            States there = States.of(adjustment.of(shelf.get(i + 1)));
            double[] stands = new double[State24.SIZE];
            there.exact(share * there.period(), stands);
            assertThat(stands).containsExactly(gauge.moved(), within(1e-6));
        }
    }

    @Test
    void aChangeOfTimingMovesTheRightHandAlone() {
        for (Pairing pairing : AnyShelf.of(30, 12)) {
            Adjustment late = new Adjustment(false, 0.3, 0, Vector3D.ZERO, Vector3D.ZERO, 1);
            States before = States.of(pairing);
            States after = States.of(late.of(pairing));
            double[] x = new double[State24.SIZE];
            double[] y = new double[State24.SIZE];
            double[] z = new double[State24.SIZE];
            before.exact(0.2, x);
            before.exact(0.5, y);
            after.exact(0.2, z);
            Landscape.takeRight(y, x);
            assertThat(z).containsExactly(x, within(1e-9));
        }
    }

    // The second derivative stands in the quintic, so its error falls with the sixth power of the
    // step; here it is far below any tolerance.
    @Test
    void statesBetweenSamplesAreThoseOfTheTrace() {
        Random random = new Random(13);
        for (Pairing pairing : AnyShelf.of(30, 13)) {
            States states = States.of(pairing);
            double[] x = new double[State24.SIZE];
            double[] y = new double[State24.SIZE];
            for (int i = 0; i < 50; i++) {
                double t = random.nextDouble() * 3 - 1;
                states.at(t, x);
                states.exact(t, y);
                assertThat(x).containsExactly(y, within(1e-5));
            }
        }
    }

    @Test
    void whatHasNoTurnIsLeftAsItStands() {
        Pairing pendulum = PathCrossingsTest.both(Motion.pendulum(1), 0.6, 0);
        assertThat(Gauge.turns(pendulum, Who.BOTH)).isFalse();
        Pairing flower = PathCrossingsTest.both(Motion.flower(0.6, -2, 0), 0.6, 0);
        assertThat(Gauge.turns(flower, Who.BOTH)).isTrue();
        Pairing across =
                flower.with(Side.RIGHT, flower.right().with(Place.usual(Side.RIGHT, Plane.WHEEL)));
        assertThat(Gauge.turns(across, Who.BOTH)).isFalse();
        assertThat(Gauge.turns(across, Who.LEFT)).isFalse();
    }
}
