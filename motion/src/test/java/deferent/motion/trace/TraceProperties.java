package deferent.motion.trace;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.AnyPairing;
import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Turns;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

class TraceProperties {
    // Central differences of the eighth order; Fornberg, Mathematics of Computation 51 (1988).
    private static final double[] EIGHTH = {4.0 / 5, -1.0 / 5, 4.0 / 105, -1.0 / 280};

    @Property
    void everyDerivativeIsTheSlopeOfTheOneBefore(Any any) {
        Pairing pairing = any.from(AnyPairing::of);
        double share = any.number(0, 1);
        slopes(Trace.of(pairing), share);
    }

    @Property
    void soItIsAroundABodyThatTurns(Any any) {
        String smooth = any.of("isolation vs triquetra", "toroid of extension vs static spin");
        Pairing pairing = Phrase.parse(smooth).pairing().with(AnyPairing.facing(any));
        double share = any.number(0, 1);
        // Where a turn begins or ends its fifth derivative jumps, which differences feel.
        boolean atAnEdge =
                pairing.facing().turns().stream()
                        .flatMapToDouble(t -> DoubleStream.of(t.begins(), t.begins() + t.takes()))
                        .anyMatch(edge -> Math.abs(Math.IEEEremainder(edge - share, 1)) < 6e-4);
        if (!atAnEdge) {
            slopes(Trace.of(pairing).aroundBody(new BodyAxis(0.1)), share);
        }
    }

    private static void slopes(Trace trace, double share) {
        double time = share * trace.period();
        double step = 1e-4 * trace.period();
        if (nearABreak(trace, time, 5 * step)) {
            return;
        }
        for (Side side : Side.values()) {
            for (Course course : List.of(trace.hand(side), trace.head(side))) {
                sameSlope(course, State::position, State::velocity, time, step);
                sameSlope(course, State::velocity, State::acceleration, time, step);
                sameSlope(course, State::acceleration, State::jerk, time, step);
            }
        }
    }

    private static void sameSlope(
            Course course,
            Function<State, Vector3D> lower,
            Function<State, Vector3D> upper,
            double time,
            double step) {
        DoubleFunction<Vector3D> f = t -> lower.apply(course.at(t));
        Vector3D slope = Vector3D.ZERO;
        double scale = upper.apply(course.at(time)).getNorm();
        double level = 0;
        for (int i = 0; i < EIGHTH.length; i++) {
            double off = (i + 1) * step;
            Vector3D rise = f.apply(time + off).subtract(f.apply(time - off));
            slope = slope.add(EIGHTH[i] / step, rise);
            scale = Math.max(scale, upper.apply(course.at(time + off)).getNorm());
            scale = Math.max(scale, upper.apply(course.at(time - off)).getNorm());
            level = Math.max(level, f.apply(time + off).getNorm());
        }
        assertThat(slope.distance(upper.apply(course.at(time))))
                .isLessThan(1e-6 * scale + 1e-14 * level / step + 1e-9);
    }

    private static boolean nearABreak(Trace trace, double time, double within) {
        return trace.breaks().stream()
                .anyMatch(
                        b -> {
                            double off = Math.abs(time - b.time());
                            return off < within || trace.period() - off < within;
                        });
    }

    @Property
    void theEndOfTheCommonCycleIsItsStart(Any any) {
        Pairing pairing = any.from(AnyPairing::of);
        double share = any.number(0, 1);
        Trace trace = Trace.of(pairing);
        double time = share * trace.period();
        if (nearABreak(trace, time, 1e-6 * trace.period())) {
            return;
        }
        for (Side side : Side.values()) {
            for (Course course : List.of(trace.hand(side), trace.head(side))) {
                State now = course.at(time);
                State again = course.at(time + trace.period());
                assertThat(now.position().distance(again.position())).isLessThan(1e-9);
                assertThat(now.velocity().distance(again.velocity()))
                        .isLessThan(1e-7 * (1 + now.velocity().getNorm()));
            }
        }
    }

    @Property
    void aTetherKeepsItsLength(Any any) {
        Pairing pairing = any.from(AnyPairing::of);
        double share = any.number(0, 1);
        Trace trace = Trace.of(pairing);
        for (Side side : Side.values()) {
            double time = share * trace.period();
            double length =
                    trace.hand(side)
                            .at(time)
                            .position()
                            .distance(trace.head(side).at(time).position());
            assertThat(length)
                    .isCloseTo(
                            pairing.part(side).tether().length(),
                            org.assertj.core.api.Assertions.within(1e-12));
        }
    }

    @Property
    void aPlaceIsTheSameWithAndWithoutItsDerivatives(Any any) {
        Pairing pairing = any.from(AnyPairing::of);
        double share = any.number(0, 1);
        Trace trace = Trace.of(pairing);
        double time = share * trace.period();
        for (Side side : Side.values()) {
            for (Course course : List.of(trace.hand(side), trace.head(side))) {
                assertThat(course.position(time).distance(course.at(time).position()))
                        .isLessThan(1e-12);
            }
        }
    }

    @Property
    void everyListedBreakJumpsInItsOrderAndInNoLowerOne(Any any) {
        HandPath path = any.from(AnyPairing::path);
        SpinLaw spin = any.from(AnyPairing::spin);
        Motion[] alone = {
            new Motion(path, new Turns(1, 0)), Motion.staticSpin(1, 0).withSpin(spin)
        };
        for (Motion motion : alone) {
            Part part = new Part(motion, Tether.USUAL, Place.usual(Side.LEFT, Plane.WALL), 3);
            Part still =
                    new Part(
                            Motion.flower(0.3, 1, 0),
                            Tether.USUAL,
                            Place.usual(Side.RIGHT, Plane.WALL),
                            1);
            Trace trace = Trace.of(Pairing.of(part, still));
            for (TimedBreak b : trace.breaks()) {
                Course head = trace.head(b.side());
                double unit = 3 / trace.period();
                double[] jumps = jumps(head, b.time(), unit);
                for (int order = 0; order < b.order(); order++) {
                    assertThat(jumps[order])
                            .as("%s: order %d of %s", b.why(), order, motion)
                            .isLessThan(order == 0 ? 1e-9 : Math.pow(10, 2 * order - 6));
                }
                assertThat(jumps[b.order()])
                        .as("%s: order %d of %s", b.why(), b.order(), motion)
                        .isGreaterThan(1e-10);
            }
        }
    }

    // In units of the motion's own cycle.
    private static double[] jumps(Course course, double time, double unit) {
        State a = course.before(time);
        State b = course.at(time);
        return new double[] {
            a.position().distance(b.position()),
            a.velocity().distance(b.velocity()) / unit,
            a.acceleration().distance(b.acceleration()) / (unit * unit),
            a.jerk().distance(b.jerk()) / (unit * unit * unit)
        };
    }

    @Property
    void atABreakBothSidesAreTheLimitsOfWhatIsBesideThem(Any any) {
        Pairing pairing = any.from(AnyPairing::of);
        Trace trace = Trace.of(pairing);
        double little = 1e-7 * trace.period();
        for (TimedBreak b : trace.breaks()) {
            for (Course course : List.of(trace.hand(b.side()), trace.head(b.side()))) {
                Vector3D after = course.at(b.time()).velocity();
                Vector3D before = course.before(b.time()).velocity();
                double scale = 1 + after.getNorm() + before.getNorm();
                assertThat(after.distance(course.at(b.time() + little).velocity()))
                        .isLessThan(1e-3 * scale);
                assertThat(before.distance(course.at(b.time() - little).velocity()))
                        .isLessThan(1e-3 * scale);
            }
        }
    }
}
