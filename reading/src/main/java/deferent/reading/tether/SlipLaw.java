package deferent.reading.tether;

import java.util.Arrays;

/**
 * What a small slip of the head obeys over a cycle while the hand answers it.
 *
 * <p>Let p be the head's place in the motion as meant, e the cord's direction, w = e′, λ = T/m the
 * pull over the mass, so that p″ = f(p′) − λe, f gravity and drag over the mass. A slip δp of the
 * head and a shift δh of the hand turn the cord by δe = (δp − δh)/L, across e. Both are taken
 * across e: what they have along it is δ(λ)'s to give. Then, across e,
 *
 * <pre>  (δp″)⊥ = −(λ/L)(δp − δh) + (∂f/∂v · δp′)⊥ . </pre>
 *
 * On axes a₁, a₂ across e that turn the shortest way with it, aᵢ′ = −(w·aᵢ)e, so for δp = Σxᵢaᵢ
 *
 * <pre>
 *   δp′       = Σ xᵢ′aᵢ − Σ xᵢ(w·aᵢ)e
 *   aₖ·δp″    = xₖ″ − (w·aₖ) Σ xᵢ(w·aᵢ)
 *   xₖ″       = (w·aₖ) Σ(w·aᵢ)xᵢ − κ(xₖ − uₖ) + drag,   κ = λ/L .
 * </pre>
 *
 * There is no Coriolis term: such axes do not spin about e. In a plane the one axis within it has
 * x″ = (θ′² − κ)x + κu, θ′ how fast the cord turns; the one across it x″ = −κ(x − u). With the hand
 * left alone, u = 0, these are the equations that {@link Swinging} has for slips in other
 * coordinates, and the same multipliers.
 *
 * <p>A cord with mass moves as a point of mass {@link Cord#swingMass} at {@link Cord#swingLength};
 * that point is the head here.
 *
 * <p>Between two times of the table the transition of (x, x′) and the effect of u at its start,
 * middle and end come from one step of the classic Runge-Kutta method, as fine as {@link HandTable}
 * is for a method of order eight, halved.
 */
final class SlipLaw {
    private final int axes;
    private final double[] times;
    private final double[] own;
    private final double[] shifted;
    private final double turnedCos;
    private final double turnedSin;

    private SlipLaw(
            int axes, double[] times, double[] own, double[] shifted, double cos, double sin) {
        this.axes = axes;
        this.times = times;
        this.own = own;
        this.shifted = shifted;
        this.turnedCos = cos;
        this.turnedSin = sin;
    }

    /** x″ = A·x + B·x′ + κ·u at one time; rows one after another. */
    record Rates(double[] place, double[] speed, double pull) {}

    /** Asked at a time; {@code before} where the value just before it is meant. */
    interface Source {
        Rates at(double time, boolean before);
    }

    /** For an equation of one's own; {@code times} from the start of its period to its end. */
    static SlipLaw of(int axes, double[] times, Source source) {
        return of(axes, times, source, 1, 0);
    }

    private static SlipLaw of(int axes, double[] times, Source source, double cos, double sin) {
        int steps = times.length - 1;
        int n = 2 * axes;
        double[] own = new double[steps * n * n];
        double[] shifted = new double[steps * n * axes * 3];
        for (int i = 0; i < steps; i++) {
            double h = times[i + 1] - times[i];
            Rates start = source.at(times[i], false);
            Rates middle = source.at(times[i] + h / 2, false);
            Rates end = source.at(times[i + 1], true);
            for (int j = 0; j < n; j++) {
                double[] y = new double[n];
                y[j] = 1;
                step(axes, h, start, middle, end, y, -1, 0);
                for (int k = 0; k < n; k++) {
                    own[(i * n + k) * n + j] = y[k];
                }
            }
            for (int when = 0; when < 3; when++) {
                for (int a = 0; a < axes; a++) {
                    double[] y = new double[n];
                    step(axes, h, start, middle, end, y, when, a);
                    for (int k = 0; k < n; k++) {
                        shifted[((i * 3 + when) * n + k) * axes + a] = y[k];
                    }
                }
            }
        }
        return new SlipLaw(axes, times, own, shifted, cos, sin);
    }

    // A step with u = 1 on one axis at one of its stages' times and 0 at the others.
    private static void step(
            int axes, double h, Rates start, Rates middle, Rates end, double[] y, int when, int a) {
        int n = y.length;
        double[] k1 = rate(axes, start, y, when == 0, a);
        double[] k2 = rate(axes, middle, plus(y, k1, h / 2), when == 1, a);
        double[] k3 = rate(axes, middle, plus(y, k2, h / 2), when == 1, a);
        double[] k4 = rate(axes, end, plus(y, k3, h), when == 2, a);
        for (int i = 0; i < n; i++) {
            y[i] += h / 6 * (k1[i] + 2 * k2[i] + 2 * k3[i] + k4[i]);
        }
    }

    private static double[] plus(double[] y, double[] k, double h) {
        double[] out = y.clone();
        for (int i = 0; i < y.length; i++) {
            out[i] += h * k[i];
        }
        return out;
    }

    private static double[] rate(int axes, Rates rates, double[] y, boolean shifted, int a) {
        double[] out = new double[y.length];
        for (int k = 0; k < axes; k++) {
            out[k] = y[axes + k];
            double sum = shifted && a == k ? rates.pull() : 0;
            for (int i = 0; i < axes; i++) {
                sum +=
                        rates.place()[k * axes + i] * y[i]
                                + rates.speed()[k * axes + i] * y[axes + i];
            }
            out[axes + k] = sum;
        }
        return out;
    }

    /** Within the plane of a planar motion, or across it. */
    static SlipLaw planar(MeantMotion meant, boolean within) {
        int axis = within ? 0 : 1;
        return of(
                1,
                meant.times(),
                (time, before) -> {
                    Rates both = meant.at(time, before).rates();
                    return new Rates(
                            new double[] {both.place()[3 * axis]},
                            new double[] {both.speed()[3 * axis]},
                            both.pull());
                });
    }

    /** On both axes of a motion in space. */
    static SlipLaw spatial(MeantMotion meant) {
        return of(
                2,
                meant.times(),
                (time, before) -> meant.at(time, before).rates(),
                meant.turnedCos(),
                meant.turnedSin());
    }

    int axes() {
        return axes;
    }

    int steps() {
        return times.length - 1;
    }

    /** Time of a node of whichever cycle. */
    double at(int node) {
        int cycles = Math.floorDiv(node, steps());
        return times[node - cycles * steps()] + cycles * period();
    }

    /** Time of a node or, for odd numbers, of the middle after it. */
    double half(int half) {
        return half % 2 == 0 ? times[half / 2] : (times[half / 2] + times[half / 2 + 1]) / 2;
    }

    /** What slips left alone become from one node to another, of whichever cycle. */
    double[] between(int first, int last) {
        int n = 2 * axes;
        double[] phi = new double[n * n];
        double[] y = new double[2 * n];
        double[] none = new double[3 * axes];
        for (int j = 0; j < n; j++) {
            Arrays.fill(y, 0);
            y[j] = 1;
            for (int node = first; node < last; node++) {
                int step = Math.floorMod(node, steps());
                step(step, y, 0, none, y, n);
                System.arraycopy(y, n, y, 0, n);
                if (step + 1 == steps()) {
                    begunAnew(y, 0);
                }
            }
            for (int k = 0; k < n; k++) {
                phi[k * n + j] = y[k];
            }
        }
        return phi;
    }

    double period() {
        return times[times.length - 1] - times[0];
    }

    double longestStep() {
        double most = 0;
        for (int i = 0; i < steps(); i++) {
            most = Math.max(most, times[i + 1] - times[i]);
        }
        return most;
    }

    /**
     * Moves a state (x, x′) over a step.
     *
     * @param u the hand's shift at the step's start, middle and end, axes one after another
     */
    void step(int step, double[] from, int at, double[] u, double[] to, int toAt) {
        int n = 2 * axes;
        for (int k = 0; k < n; k++) {
            double sum = 0;
            for (int j = 0; j < n; j++) {
                sum += own[(step * n + k) * n + j] * from[at + j];
            }
            for (int when = 0; when < 3; when++) {
                for (int a = 0; a < axes; a++) {
                    sum += shifted[((step * 3 + when) * n + k) * axes + a] * u[when * axes + a];
                }
            }
            to[toAt + k] = sum;
        }
    }

    /** The greatest multiplier's modulus where slips on one axis are left alone. */
    double growth() {
        double[] m = between(0, steps());
        return greatest(m[0], m[1], m[2], m[3]);
    }

    /** The greatest eigenvalue's modulus of a matrix of two rows. */
    static double greatest(double a, double b, double c, double d) {
        double half = (a + d) / 2;
        double product = a * d - b * c;
        double square = half * half - product;
        return square < 0 ? Math.sqrt(product) : Math.abs(half) + Math.sqrt(square);
    }

    /** A step on one axis, from a place in an array to the next. */
    void step(int step, double[] y, int at, double before, double middle, double after) {
        int o = 4 * step;
        int s = 6 * step;
        double x = y[at];
        double v = y[at + 1];
        y[at + 2] =
                own[o] * x
                        + own[o + 1] * v
                        + shifted[s] * before
                        + shifted[s + 2] * middle
                        + shifted[s + 4] * after;
        y[at + 3] =
                own[o + 2] * x
                        + own[o + 3] * v
                        + shifted[s + 1] * before
                        + shifted[s + 3] * middle
                        + shifted[s + 5] * after;
    }

    /** A shift of the hand on the axes of the cycle's start. */
    void shiftBegunAnew(double[] u, int at) {
        if (axes == 2) {
            double first = u[at];
            double second = u[at + 1];
            u[at] = turnedCos * first - turnedSin * second;
            u[at + 1] = turnedSin * first + turnedCos * second;
        }
    }

    /** A state at the cycle's end on the axes of its start, to which those have turned. */
    void begunAnew(double[] y, int at) {
        if (axes == 1) {
            return;
        }
        shiftBegunAnew(y, at);
        shiftBegunAnew(y, at + 2);
    }
}
