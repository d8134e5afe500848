package deferent.reading.tether;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Interval;
import deferent.motion.trace.State;
import deferent.motion.trace.TimedBreak;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The force in one tether over a trace.
 *
 * <p>The head takes the force F = m(a − g) − D, with D the drag. Its part along the cord toward the
 * hand, T = −F·e, is the pull; a cord gives it where T ≥ 0. What is left across the cord is what a
 * rod would have to do and a cord cannot: it is the measure of how far an ideal trace is from a
 * cord's. Where T &lt; 0 even a rod would have to push, and a cord would be slack.
 *
 * <p>Gravity gives the head the power −m·g·v_y, positive on the way down, where gravity helps; over
 * a closed cycle it gives back what it took. The hand gives d(½mv² + mgy)/dt − D·v, whatever way it
 * gives it.
 *
 * <p>A corner of the path or a jump in the poi's rate takes an impulse, an infinite force for no
 * time: such instants are listed as {@link Jerk}s and everything else is read between them.
 *
 * @param side whose
 * @param headWeight one head weight, newtons
 * @param least least pull, newtons; below 0 a cord would have to push
 * @param leastTime when, seconds
 * @param greatest greatest pull, newtons
 * @param greatestTime when, seconds
 * @param mean over time, newtons
 * @param sideways greatest force across the cord, newtons
 * @param sidewaysTime when, seconds
 * @param slack where the pull would be negative
 * @param handForce greatest force on the hand, newtons; with a cord of mass, that included
 * @param handForceTime when, seconds
 * @param handAcceleration greatest of the hand itself, m/s²
 * @param headSpeed greatest, m/s
 * @param headSpeedTime when, seconds
 * @param headSpeedLeast least, m/s
 * @param energy the head's kinetic energy at its fastest, joules
 * @param gravityPower greatest power that gravity gives, watts
 * @param gravityWork joules gravity gives on the ways down over the trace
 * @param gravityHelps where it gives
 * @param handPower greatest power that the hand gives, watts
 * @param handWork joules the hand gives over the trace, counting only where it gives
 * @param jerks instants that take an impulse
 * @param newtons pull at evenly spaced times from the start, for the ribbon; read, do not write
 * @param sidewaysNewtons force across the cord at the same times
 */
public record Pull(
        Side side,
        double headWeight,
        double least,
        double leastTime,
        double greatest,
        double greatestTime,
        double mean,
        double sideways,
        double sidewaysTime,
        List<Interval> slack,
        double handForce,
        double handForceTime,
        double handAcceleration,
        double headSpeed,
        double headSpeedTime,
        double headSpeedLeast,
        double energy,
        double gravityPower,
        double gravityWork,
        List<Interval> gravityHelps,
        double handPower,
        double handWork,
        List<Jerk> jerks,
        double[] newtons,
        double[] sidewaysNewtons) {
    public Pull {
        Refusal.numbers(
                "the " + side.word() + " cord's pull",
                headWeight,
                least,
                leastTime,
                greatest,
                greatestTime,
                mean,
                sideways,
                sidewaysTime,
                handForce,
                handForceTime,
                handAcceleration,
                headSpeed,
                headSpeedTime,
                headSpeedLeast,
                energy,
                gravityPower,
                gravityWork,
                handPower,
                handWork);
        Refusal.numbers("the " + side.word() + " cord's pull", newtons);
        Refusal.numbers("the " + side.word() + " cord's pull", sidewaysNewtons);
    }

    /**
     * An instant that takes an impulse.
     *
     * @param time seconds
     * @param along impulse toward the hand, N·s; negative is a push, which a cord cannot give
     * @param across impulse across the cord, N·s, which a cord cannot give either
     * @param why in a few words
     */
    public record Jerk(double time, double along, double across, String why) {
        public Jerk {
            Refusal.numbers("the cord's impulse", time, along, across);
        }
    }

    /** How many samples a reading takes where nothing else is said. */
    public static final int USUAL_COUNT = 360;

    /** Samples a wiggle: where there are many in a cycle, the usual ones would miss them. */
    private static final int EACH = 32;

    public static Pull of(Trace trace, Side side, Kit kit) {
        return of(trace, side, Cord.of(trace, side, kit), USUAL_COUNT);
    }

    /**
     * The pull at so many times.
     *
     * @param count how many evenly spaced samples, 16 or more
     */
    public static Pull of(Trace trace, Side side, Cord cord, int count) {
        Times times = Times.of(trace, side, 2, samples(trace, side, count));
        Moment[] moments = new Moment[times.count()];
        for (int i = 0; i < moments.length; i++) {
            moments[i] = Moment.of(trace, side, cord, times.at(i));
        }
        Reader reader = new Reader(trace, side, cord, times, moments);
        double[] tension = reader.values(Moment::tension);
        double[] falling = reader.values(Moment::gravityPower);
        double[] giving = reader.values(Moment::handPower);
        double leastTime = reader.leastTime(tension, Moment::tension, 1);
        double greatestTime = reader.leastTime(tension, Moment::tension, -1);
        double sidewaysTime = reader.greatestTime(Moment::sideways);
        double handTime = reader.greatestTime(Moment::handForce);
        double speedTime = reader.greatestTime(Moment::speed);
        double slowTime = reader.leastTime(reader.values(Moment::speed), Moment::speed, 1);
        double speed = reader.at(speedTime).speed();
        double[] newtons = new double[count];
        double[] across = new double[count];
        double step = trace.period() / (trace.periodic() ? count : count - 1);
        for (int i = 0; i < count; i++) {
            Moment m = reader.at(trace.interval().start() + i * step);
            newtons[i] = m.tension();
            across[i] = m.sideways();
        }
        return new Pull(
                side,
                cord.headWeight(),
                reader.at(leastTime).tension(),
                leastTime,
                reader.at(greatestTime).tension(),
                greatestTime,
                times.mean(tension),
                reader.at(sidewaysTime).sideways(),
                sidewaysTime,
                slack(times, tension, leastTime, reader),
                reader.at(handTime).handForce(),
                handTime,
                reader.at(reader.greatestTime(Moment::handAcceleration)).handAcceleration(),
                speed,
                speedTime,
                reader.at(slowTime).speed(),
                0.5 * cord.kit().headMass() * speed * speed,
                reader.at(reader.greatestTime(Moment::gravityPower)).gravityPower(),
                times.integral(positive(falling)),
                times.below(negated(falling), t -> -reader.at(t).gravityPower()),
                reader.at(reader.greatestTime(Moment::handPower)).handPower(),
                times.integral(positive(giving)),
                jerks(trace, side, cord),
                newtons,
                across);
    }

    /**
     * The pull at one instant, newtons; just after a break, and below 0 where a cord would have to
     * push.
     *
     * @param time seconds
     */
    public static double at(Trace trace, Side side, Cord cord, double time) {
        return Moment.of(trace, side, cord, time).tension();
    }

    /** A force of {@code newtons} in head weights. */
    public double weights(double newtons) {
        return newtons / headWeight;
    }

    public double leastWeights() {
        return weights(least);
    }

    public double greatestWeights() {
        return weights(greatest);
    }

    /** Whether a cord never has to push. */
    public boolean taut() {
        return slack.isEmpty() && jerks.stream().noneMatch(j -> j.along() < 0);
    }

    // A pull that only grazes zero by rounding is no slack; one that dips below it between two
    // samples is.
    private static List<Interval> slack(
            Times times, double[] tension, double leastTime, Reader reader) {
        double grazing = 1e-9 * reader.cord().headWeight();
        DoubleUnaryOperator over = t -> reader.at(t).tension() + grazing;
        List<Interval> found =
                times.below(Arrays.stream(tension).map(t -> t + grazing).toArray(), over);
        return found.isEmpty() && over.applyAsDouble(leastTime) < 0
                ? List.of(times.dip(leastTime, over))
                : found;
    }

    /** How many samples of a cycle miss nothing, {@code count} or more. */
    static int samples(Trace trace, Side side, int count) {
        return Math.max(count, EACH * wiggles(trace, side));
    }

    /** How often hand or poi may go to and fro in the common cycle. */
    private static int wiggles(Trace trace, Side side) {
        int most = 0;
        for (Side one : Side.values()) {
            var part = trace.pairing().part(one);
            if (one == side || trace.pairing().part(side).motion().riding()) {
                int hand =
                        part.motion().path().asTerms().orElse(List.of()).stream()
                                .mapToInt(t -> Math.abs(t.k()))
                                .max()
                                .orElse(1);
                most =
                        Math.max(
                                most,
                                part.cycles() * Math.max(hand, part.motion().spin().liveliest()));
            }
        }
        return most;
    }

    private static double[] positive(double[] values) {
        double[] out = new double[values.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = Math.max(values[i], 0);
        }
        return out;
    }

    private static double[] negated(double[] values) {
        double[] out = new double[values.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = -values[i];
        }
        return out;
    }

    private static List<Jerk> jerks(Trace trace, Side side, Cord cord) {
        List<Jerk> found = new ArrayList<>();
        for (TimedBreak b : trace.breaks()) {
            if (b.side() != side || b.order() > 1) {
                continue;
            }
            Vector3D impulse =
                    trace.head(side)
                            .at(b.time())
                            .velocity()
                            .subtract(trace.head(side).before(b.time()).velocity())
                            .scalarMultiply(cord.kit().headMass());
            if (impulse.getNorm() < 1e-9 * cord.kit().headMass()) {
                continue;
            }
            Vector3D e =
                    trace.head(side)
                            .at(b.time())
                            .position()
                            .subtract(trace.hand(side).at(b.time()).position())
                            .normalize();
            double along = -impulse.dotProduct(e);
            found.add(
                    new Jerk(
                            b.time(),
                            along,
                            impulse.add(e.scalarMultiply(along)).getNorm(),
                            b.why()));
        }
        return List.copyOf(found);
    }

    /** What the tether does at one instant. */
    private record Moment(
            double tension,
            double sideways,
            double handForce,
            double handAcceleration,
            double speed,
            double gravityPower,
            double handPower) {
        static Moment of(Trace trace, Side side, Cord cord, double time) {
            Course hands = trace.hand(side);
            State hand = hands.at(time);
            State head = trace.head(side).at(time);
            Vector3D e = head.position().subtract(hand.position()).normalize();
            double mass = cord.kit().headMass();
            Vector3D drag = cord.drag(head.velocity());
            Vector3D force =
                    head.acceleration().subtract(cord.fall()).scalarMultiply(mass).subtract(drag);
            double tension = -force.dotProduct(e);
            double cordMass = cord.kit().cordMass() * cord.length();
            Vector3D onHand =
                    force.add(
                            hand.acceleration()
                                    .add(head.acceleration())
                                    .scalarMultiply(0.5)
                                    .subtract(cord.fall())
                                    .scalarMultiply(cordMass));
            return new Moment(
                    tension,
                    force.add(e.scalarMultiply(tension)).getNorm(),
                    onHand.getNorm(),
                    hand.acceleration().getNorm(),
                    head.velocity().getNorm(),
                    mass * cord.fall().dotProduct(head.velocity()),
                    force.dotProduct(head.velocity()));
        }
    }

    private interface Part {
        double of(Moment moment);
    }

    private record Reader(Trace trace, Side side, Cord cord, Times times, Moment[] moments) {
        Moment at(double time) {
            return Moment.of(trace, side, cord, time);
        }

        double[] values(Part part) {
            double[] out = new double[moments.length];
            for (int i = 0; i < out.length; i++) {
                out[i] = part.of(moments[i]);
            }
            return out;
        }

        double leastTime(double[] values, Part part, int sign) {
            double[] signed = sign > 0 ? values : negated(values);
            return times.least(signed, t -> sign * part.of(at(t)));
        }

        double greatestTime(Part part) {
            return leastTime(values(part), part, -1);
        }
    }
}
