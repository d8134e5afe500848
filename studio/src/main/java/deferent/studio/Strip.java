package deferent.studio;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import deferent.page.Scene;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** One cycle as a line: how far apart head and hand of each link are, and what happens when. */
final class Strip {
    private static final int COUNT = Scene.USUAL_COUNT;

    /** Of the samples, every second one is enough for a line on a screen. */
    private static final int STRIDE = 2;

    private static final int FINE = 1440;

    /** A head slower than this share of its greatest speed, between faster ones, stalls. */
    private static final double STALLS = 0.04;

    /** What a mark marks. */
    enum Kind {
        BEAT("beat"),
        PETAL("petal"),
        STALL("stall");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        String word() {
            return word;
        }
    }

    /**
     * @param time seconds from the start of the cycle
     */
    record Mark(double time, Kind kind, Side side) {}

    private Strip() {}

    /**
     * Distance from a carrier's head to the rider's hand in the carrier's plane, metres, at evenly
     * spaced times; depth across the plane left out, as real links run in neighbouring planes.
     */
    static double[] gap(Trace trace, Side carrier) {
        Samples samples = trace.samples(COUNT);
        Vector3D n = trace.pairing().part(carrier).place().plane().normal();
        double[] head = samples.head(carrier);
        double[] hand = samples.hand(carrier.other());
        double[] gap = new double[samples.count() / STRIDE];
        for (int at = 0; at < gap.length; at++) {
            int i = at * STRIDE;
            double x = head[3 * i] - hand[3 * i];
            double y = head[3 * i + 1] - hand[3 * i + 1];
            double z = head[3 * i + 2] - hand[3 * i + 2];
            double across = x * n.getX() + y * n.getY() + z * n.getZ();
            gap[at] = Math.sqrt(Math.max(0, x * x + y * y + z * z - across * across));
        }
        return gap;
    }

    static List<Mark> marks(Trace trace) {
        List<Mark> marks = new ArrayList<>();
        for (Side side : Side.values()) {
            beats(trace, side, marks);
            petals(trace, side, marks);
            stalls(trace, side, marks);
        }
        marks.sort(Comparator.comparingDouble(Mark::time));
        return List.copyOf(marks);
    }

    /** A beat is one full turn of a poi, counted from where its own cycle starts. */
    private static void beats(Trace trace, Side side, List<Mark> marks) {
        Pairing pairing = trace.pairing();
        Part part = pairing.part(side);
        int turns = part.motion().spin().turns();
        if (turns == 0) {
            return;
        }
        SpinLaw.Course spin = part.motion().spin().course();
        double start = spin.at(0).value();
        double before = 0;
        List<Double> phases = new ArrayList<>();
        phases.add(0.0);
        for (int i = 1; i < FINE; i++) {
            double turned =
                    Math.signum(turns)
                            * (spin.at((double) i / FINE).value() - start)
                            / (2 * Math.PI);
            double whole = Math.floor(turned + 1e-9);
            if (whole > Math.floor(before + 1e-9) && whole < Math.abs(turns)) {
                phases.add((i - 1 + (whole - before) / (turned - before)) / FINE);
            }
            before = Math.max(before, turned);
        }
        for (int cycle = 0; cycle < part.cycles(); cycle++) {
            for (double phase : phases) {
                add(marks, trace, side, Kind.BEAT, cycle + phase);
            }
        }
    }

    private static void add(List<Mark> marks, Trace trace, Side side, Kind kind, double phase) {
        Pairing pairing = trace.pairing();
        double share = (phase - pairing.startPhase(side)) / pairing.part(side).cycles();
        double within = share - Math.floor(share + 1e-9);
        marks.add(new Mark(Math.max(0, within) * trace.period(), kind, side));
    }

    /** Where the head is farthest from the motion's centre. */
    private static void petals(Trace trace, Side side, List<Mark> marks) {
        if (trace.pairing().part(side).motion().petals() == 0) {
            return;
        }
        Samples samples = trace.samples(COUNT);
        Vector3D centre = trace.pairing().part(side).place().centre();
        double[] out = new double[samples.count()];
        for (int i = 0; i < out.length; i++) {
            out[i] = Samples.point(samples.head(side), i).distance(centre);
        }
        for (double at : peaks(out, 1)) {
            marks.add(new Mark(at / COUNT * trace.period(), Kind.PETAL, side));
        }
    }

    /** Where the head stands still for an instant. */
    private static void stalls(Trace trace, Side side, List<Mark> marks) {
        Samples samples = trace.samples(COUNT);
        double[] head = samples.head(side);
        int n = samples.count();
        double[] speed = new double[n];
        double most = 0;
        for (int i = 0; i < n; i++) {
            speed[i] =
                    Samples.point(head, (i + 1) % n).distance(Samples.point(head, (i + n - 1) % n));
            most = Math.max(most, speed[i]);
        }
        for (double at : peaks(speed, -1)) {
            if (speed[(int) Math.rint(at) % n] < STALLS * most) {
                marks.add(new Mark(at / COUNT * trace.period(), Kind.STALL, side));
            }
        }
    }

    /**
     * Places, in samples of a closed row, of the local maxima ({@code way} 1) or minima (−1), by
     * the parabola through three neighbours; a flat row has none.
     */
    static List<Double> peaks(double[] row, int way) {
        List<Double> found = new ArrayList<>();
        int n = row.length;
        for (int i = 0; i < n; i++) {
            double a = way * row[(i + n - 1) % n];
            double b = way * row[i];
            double c = way * row[(i + 1) % n];
            if (b - a > 1e-12 && b >= c - 1e-12 && (b - c > 1e-12 || b > way * row[(i + 2) % n])) {
                double bend = a - 2 * b + c;
                double at = i + (bend == 0 ? 0 : 0.5 * (a - c) / bend);
                found.add(at < 0 ? at + n : at);
            }
        }
        return found;
    }
}
