package deferent.bench;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Tether;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.tether.KeepTheFigure;
import deferent.reading.tether.KeepTheHandPath;
import deferent.reading.tether.Kit;
import deferent.reading.tether.LetGo;
import deferent.reading.tether.Pull;
import deferent.reading.tether.SlowestTempo;
import deferent.reading.tether.Steadiness;
import java.util.concurrent.TimeUnit;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;

/**
 * What a cord costs: all live readings of one pairing (both hands: pull, keep the figure, keep the
 * hand path, steadiness of both), wanted under 60 ms; a simulated minute at 10⁻⁹ rad, wanted under
 * 25 ms, beside a plain Hipparchus Dormand–Prince run of the same poi written as θ″ = ((g −
 * h″)·t)/L, at tolerances of its own that stand in the code; the two runs' errors have not been
 * matched.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class CordBench {
    private static final double TETHER = 0.60;

    private final Pairing pairing =
            Pairing.of(
                    part(Side.LEFT, Motion.staticSpin(1, 0)),
                    part(Side.RIGHT, Motion.flower(TETHER, -2, 0)));
    private final Trace swinging =
            Trace.of(
                    Pairing.of(
                            part(Side.LEFT, Motion.pendulum(1.5)),
                            part(Side.RIGHT, Motion.pendulum(1.5))));
    private final Trace triquetra = followed();

    private static Part part(Side side, Motion motion) {
        return new Part(motion, Tether.of(TETHER), Place.usual(side, Plane.WALL), 1);
    }

    private Trace followed() {
        Trace ideal = Trace.of(pairing);
        KeepTheHandPath keep = KeepTheHandPath.of(ideal, Side.RIGHT, Kit.USUAL);
        return keep.in(
                ideal,
                keep.best()
                        .orElseThrow(
                                () ->
                                        new IllegalStateException(
                                                "a triquetra at 60 a minute has a taut motion")));
    }

    /**
     * Pull, keep the figure, keep the hand path and steadiness, both hands, from the pairing on.
     */
    @Benchmark
    public void liveReadings(Blackhole hole) {
        Trace ideal = Trace.of(pairing);
        for (Side side : Side.values()) {
            hole.consume(Pull.of(ideal, side, Kit.USUAL));
            KeepTheFigure kept = KeepTheFigure.of(ideal, side, Kit.USUAL);
            hole.consume(kept);
            hole.consume(Steadiness.of(kept));
            KeepTheHandPath hand = KeepTheHandPath.of(ideal, side, Kit.USUAL);
            hole.consume(hand);
            hand.best().ifPresent(s -> hole.consume(Steadiness.of(s)));
        }
    }

    /** All slowest tempos of both hands, which may come later. */
    @Benchmark
    public void slowest(Blackhole hole) {
        for (Side side : Side.values()) {
            hole.consume(SlowestTempo.of(pairing, side, Kit.USUAL));
        }
    }

    /** A minute of an undamped pendulum. */
    @Benchmark
    public LetGo minuteOfPendulum() {
        return LetGo.of(swinging, Side.LEFT, Kit.USUAL, LetGo.Start.on(swinging, Side.LEFT, 0), 60);
    }

    /** A minute of a triquetra whose hand is kept. */
    @Benchmark
    public LetGo minuteOfTriquetra() {
        return LetGo.of(
                triquetra, Side.RIGHT, Kit.USUAL, LetGo.Start.on(triquetra, Side.RIGHT, 0), 60);
    }

    /** Baseline of {@link #minuteOfPendulum}. */
    @Benchmark
    public double[] plainMinuteOfPendulum() {
        return plain(swinging, Side.LEFT);
    }

    /** Baseline of {@link #minuteOfTriquetra}. */
    @Benchmark
    public double[] plainMinuteOfTriquetra() {
        return plain(triquetra, Side.RIGHT);
    }

    private static double[] plain(Trace trace, Side side) {
        OrdinaryDifferentialEquation poi =
                new OrdinaryDifferentialEquation() {
                    @Override
                    public int getDimension() {
                        return 2;
                    }

                    @Override
                    public double[] computeDerivatives(double t, double[] y) {
                        Vector3D a = trace.hand(side).at(t).acceleration();
                        double across =
                                a.getX() * Math.sin(y[0])
                                        - (Gravity.STANDARD + a.getY()) * Math.cos(y[0]);
                        return new double[] {y[1], across / TETHER};
                    }
                };
        var hand = trace.hand(side).at(0);
        var head = trace.head(side).at(0);
        Vector3D e = head.position().subtract(hand.position()).scalarMultiply(1 / TETHER);
        Vector3D w = head.velocity().subtract(hand.velocity()).scalarMultiply(1 / TETHER);
        return new DormandPrince853Integrator(1e-8, 1, 1e-12, 1e-12)
                .integrate(
                        poi,
                        new ODEState(
                                0,
                                new double[] {
                                    Math.atan2(e.getY(), e.getX()),
                                    e.getX() * w.getY() - e.getY() * w.getX()
                                }),
                        60)
                .getPrimaryState();
    }
}
