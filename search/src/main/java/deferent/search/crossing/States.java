package deferent.search.crossing;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Side;
import deferent.motion.trace.State;
import deferent.motion.trace.TimedBreak;
import deferent.motion.trace.Trace;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A pairing's states over one common cycle: sampled at even times into contiguous arrays, and in
 * between by the quintic that has the place, velocity and acceleration of both ends. For a poi that
 * turns three times a cycle and 180 samples that quintic is right to 1e-10 m; stretches with a
 * break inside are asked of the trace itself.
 */
final class States {
    private static final int LEAST = 96;
    private static final int MOST = 720;
    private static final int A_TURN = 48;

    private final Pairing pairing;
    private final Trace trace;
    private final int count;
    private final double period;
    private final double[] samples;
    private final double[] accelerations;
    private final boolean[] broken;

    private States(Pairing pairing, int count) {
        this.pairing = pairing;
        this.trace = Trace.of(pairing);
        this.count = count;
        this.period = trace.period();
        this.samples = new double[State24.SIZE * count];
        this.accelerations = new double[State24.VELOCITY * count];
        this.broken = new boolean[count];
        double[] state = new double[State24.SIZE];
        for (int i = 0; i < count; i++) {
            double t = trace.interval().start() + i * step();
            for (Side side : Side.values()) {
                put(trace.hand(side).at(t), State24.hand(side), state, i);
                put(trace.head(side).at(t), State24.head(side), state, i);
            }
            System.arraycopy(state, 0, samples, State24.SIZE * i, State24.SIZE);
        }
        for (TimedBreak b : trace.breaks()) {
            int at = (int) Math.floor((b.time() - trace.interval().start()) / step());
            for (int i = at - 1; i <= at + 1; i++) {
                broken[Math.floorMod(i, count)] = true;
            }
        }
    }

    private void put(State s, int point, double[] state, int i) {
        State24.put(s, point, state);
        State24.put(s.acceleration(), accelerations, State24.VELOCITY * i + 3 * point);
    }

    /** At as many samples as the pairing's quickest part asks for. */
    static States of(Pairing pairing) {
        return of(pairing, usualCount(pairing));
    }

    static States of(Pairing pairing, int count) {
        Refusal.within(count, 8, 100_000, "samples", "samples");
        return new States(pairing, count);
    }

    private static int usualCount(Pairing pairing) {
        int turns = 1;
        for (Side side : Side.values()) {
            Part part = pairing.part(side);
            int plane = Math.abs(part.place().turn().turns());
            int poi = Math.max(2, part.motion().spin().liveliest());
            turns = Math.max(turns, part.cycles() * Math.max(poi, plane));
        }
        return Math.max(LEAST, Math.min(MOST, A_TURN * turns));
    }

    Pairing pairing() {
        return pairing;
    }

    Trace trace() {
        return trace;
    }

    int count() {
        return count;
    }

    double period() {
        return period;
    }

    double step() {
        return period / count;
    }

    /** All samples, {@link State24#SIZE} numbers each; read, do not write. */
    double[] samples() {
        return samples;
    }

    /** Accelerations at the samples, 12 numbers each; read, do not write. */
    double[] accelerations() {
        return accelerations;
    }

    /** Writes the state at any time. */
    void at(double time, double[] out) {
        double cycles = time / period;
        double where = (cycles - Math.floor(cycles)) * count;
        int i = Math.min((int) where, count - 1);
        if (broken[i]) {
            exact(time, out);
            return;
        }
        double x = where - i;
        int j = i + 1 == count ? 0 : i + 1;
        double h = step();
        double x2 = x * x;
        double x3 = x2 * x;
        double x4 = x3 * x;
        double x5 = x4 * x;
        double one = 10 * x3 - 15 * x4 + 6 * x5;
        double zero = 1 - one;
        double v0 = h * (x - 6 * x3 + 8 * x4 - 3 * x5);
        double v1 = h * (-4 * x3 + 7 * x4 - 3 * x5);
        double a0 = h * h * (0.5 * x2 - 1.5 * x3 + 1.5 * x4 - 0.5 * x5);
        double a1 = h * h * (0.5 * x3 - x4 + 0.5 * x5);
        double done = (30 * x2 - 60 * x3 + 30 * x4) / h;
        double dv0 = 1 - 18 * x2 + 32 * x3 - 15 * x4;
        double dv1 = -12 * x2 + 28 * x3 - 15 * x4;
        double da0 = h * (x - 4.5 * x2 + 6 * x3 - 2.5 * x4);
        double da1 = h * (1.5 * x2 - 4 * x3 + 2.5 * x4);
        int p = State24.SIZE * i;
        int q = State24.SIZE * j;
        int r = State24.VELOCITY * i;
        int s = State24.VELOCITY * j;
        for (int k = 0; k < State24.VELOCITY; k++) {
            double p0 = samples[p + k];
            double p1 = samples[q + k];
            double u0 = samples[p + State24.VELOCITY + k];
            double u1 = samples[q + State24.VELOCITY + k];
            double w0 = accelerations[r + k];
            double w1 = accelerations[s + k];
            out[k] = zero * p0 + one * p1 + v0 * u0 + v1 * u1 + a0 * w0 + a1 * w1;
            out[State24.VELOCITY + k] =
                    done * (p1 - p0) + dv0 * u0 + dv1 * u1 + da0 * w0 + da1 * w1;
        }
    }

    /** As {@link #at}, from the trace itself. */
    void exact(double time, double[] out) {
        for (Side side : Side.values()) {
            State24.put(trace.hand(side).at(time), State24.hand(side), out);
            State24.put(trace.head(side).at(time), State24.head(side), out);
        }
    }

    /** The middle of the centres of the sides asked for. */
    Vector3D middle(Who who) {
        Vector3D sum = Vector3D.ZERO;
        for (Side side : who.sides()) {
            sum = sum.add(pairing.part(side).place().centre());
        }
        return sum.scalarMultiply(1.0 / who.sides().size());
    }
}
