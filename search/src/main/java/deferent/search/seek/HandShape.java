package deferent.search.seek;

import deferent.motion.pairing.Arc;
import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Swing;
import java.util.ArrayList;
import java.util.List;

/**
 * A hand path of the space, sizes in tethers, with its Fourier terms.
 *
 * <p>Terms in closed form: circles, ellipses and loops are their own; an arc's are Bessel functions
 * of its half sweep, and a pendulum arc's come from its Jacobi functions: both worked out by a sum
 * over {@value #SAMPLES} phases, which for such smooth paths is exact to rounding.
 *
 * @param kind what it is
 * @param first turns of the first term (circles and loops: k ≥ 1), else 1
 * @param second turns of the second term, 0 where there is none
 * @param size radius of the first term, or of an arc's circle
 * @param other radius of the second term (at most {@code size} in an ellipse), or an arc's half
 *     sweep or a pendulum's amplitude in radians
 */
record HandShape(Kind kind, int first, int second, double size, double other) {
    static final int SAMPLES = 512;

    enum Kind {
        STILL,
        CIRCLE,
        /** An ellipse; a line where both radii are one. */
        ELLIPSE,
        LOOP,
        ARC,
        PENDULUM_ARC
    }

    static final HandShape POINT = new HandShape(Kind.STILL, 1, 0, 0, 0);

    static HandShape circle(int rounds, double radius) {
        return new HandShape(Kind.CIRCLE, rounds, 0, radius, 0);
    }

    static HandShape ellipse(double out, double back) {
        return new HandShape(Kind.ELLIPSE, 1, -1, out, back);
    }

    static HandShape loop(int first, int second, double size, double other) {
        return new HandShape(Kind.LOOP, first, second, size, other);
    }

    static HandShape arc(double radius, double halfSweep) {
        return new HandShape(Kind.ARC, 1, 0, radius, halfSweep);
    }

    static HandShape pendulumArc(double radius, double amplitude) {
        return new HandShape(Kind.PENDULUM_ARC, 1, 0, radius, amplitude);
    }

    boolean line() {
        return kind == Kind.ELLIPSE && size == other;
    }

    boolean swept() {
        return kind == Kind.ARC || kind == Kind.PENDULUM_ARC;
    }

    /**
     * Greatest distance from the path's centre, in tethers, as {@code HandPath.radius()} says it.
     */
    double reach() {
        return kind == Kind.ELLIPSE || kind == Kind.LOOP ? size + other : size;
    }

    /** The same shape at radius one. */
    HandShape unit() {
        return new HandShape(kind, first, second, 1, other);
    }

    /**
     * The hand path with that tether, metres; arcs hang, a pendulum's arc as the series of its
     * terms.
     */
    HandPath path(double tether) {
        return switch (kind) {
            case STILL -> Series.STILL;
            case CIRCLE -> new Series(List.of(new Series.Term(first, round(size * tether), 0)));
            case ELLIPSE, LOOP ->
                    new Series(
                            List.of(
                                    new Series.Term(first, round(size * tether), 0),
                                    new Series.Term(second, round(other * tether), 0)));
            case ARC -> new Arc(round(size * tether), Swing.DOWN, other);
            case PENDULUM_ARC -> {
                List<Series.Term> terms = new ArrayList<>();
                SeriesTerms found = terms();
                for (int i = 0; i < found.k().length; i++) {
                    double radius = Math.hypot(found.re()[i], found.im()[i]) * tether;
                    if (found.k()[i] != 0 && Math.abs(found.k()[i]) <= 24 && radius > 1e-10) {
                        terms.add(
                                new Series.Term(
                                        found.k()[i],
                                        radius,
                                        Math.atan2(found.im()[i], found.re()[i])));
                    }
                }
                yield new Series(terms);
            }
        };
    }

    // 0.9 rather than 0.8999999999999999, for those who read it
    private static double round(double metres) {
        return Math.rint(metres * 1e12) / 1e12;
    }

    SeriesTerms terms() {
        return switch (kind) {
            case STILL -> new SeriesTerms(new int[0], new double[0], new double[0], 0);
            case CIRCLE ->
                    new SeriesTerms(new int[] {first}, new double[] {size}, new double[] {0}, 0);
            case ELLIPSE, LOOP ->
                    first < second
                            ? new SeriesTerms(
                                    new int[] {first, second},
                                    new double[] {size, other},
                                    new double[2],
                                    0)
                            : new SeriesTerms(
                                    new int[] {second, first},
                                    new double[] {other, size},
                                    new double[2],
                                    0);
            case ARC -> SeriesTerms.ofPath(path(1).course(), SAMPLES);
            case PENDULUM_ARC -> {
                SeriesTerms swing = SeriesTerms.ofSpin(new Swing(other, Swing.DOWN), SAMPLES);
                yield swing.scaled(size);
            }
        };
    }
}
