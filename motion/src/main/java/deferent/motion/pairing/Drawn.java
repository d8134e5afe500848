package deferent.motion.pairing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import org.hipparchus.geometry.euclidean.twod.Vector2D;

/**
 * A closed drawn path of cubic Bézier pieces (what an SVG path string says), walked once a cycle at
 * constant speed. Each piece's arc length is tabulated by Gauss–Legendre quadrature and inverted by
 * Newton steps; derivatives follow from the inverse function's rule, so they are exact on each
 * piece.
 *
 * @param pieces each starts where the one before ends, the first where the last ends
 */
public record Drawn(List<Cubic> pieces) implements HandPath {
    private static final double JOIN = 1e-6;
    // A parameter at which a piece goes slower than this share of its length stands.
    private static final double SLOW = 1e-3;

    /** A cubic Bézier curve from (u0, v0) to (u3, v3), metres. */
    public record Cubic(
            double u0,
            double v0,
            double u1,
            double v1,
            double u2,
            double v2,
            double u3,
            double v3) {
        public Cubic {
            for (double c : new double[] {u0, v0, u1, v1, u2, v2, u3, v3}) {
                Refusal.within(c, -10, 10, "point of a drawn hand path", "m");
            }
        }

        /** A straight piece. */
        public static Cubic line(double u0, double v0, double u3, double v3) {
            return new Cubic(
                    u0,
                    v0,
                    u0 + (u3 - u0) / 3,
                    v0 + (v3 - v0) / 3,
                    u3 - (u3 - u0) / 3,
                    v3 - (v3 - v0) / 3,
                    u3,
                    v3);
        }

        private static Jet along(double a, double b, double c, double d, double t) {
            double c1 = 3 * (b - a);
            double c2 = 3 * (c - 2 * b + a);
            double c3 = d - 3 * c + 3 * b - a;
            return new Jet(
                    a + t * (c1 + t * (c2 + t * c3)),
                    c1 + t * (2 * c2 + 3 * t * c3),
                    2 * c2 + 6 * t * c3,
                    6 * c3);
        }

        private Jet u(double t) {
            return along(u0, u1, u2, u3, t);
        }

        private Jet v(double t) {
            return along(v0, v1, v2, v3, t);
        }

        private double speed(double t) {
            return Math.max(Math.hypot(u(t).d1(), v(t).d1()), 1e-9);
        }

        private Cubic map(double cos, double sin) {
            return new Cubic(
                    cos * u0 - sin * v0, sin * u0 + cos * v0,
                    cos * u1 - sin * v1, sin * u1 + cos * v1,
                    cos * u2 - sin * v2, sin * u2 + cos * v2,
                    cos * u3 - sin * v3, sin * u3 + cos * v3);
        }
    }

    public Drawn {
        pieces = List.copyOf(pieces);
        if (pieces.isEmpty() || pieces.size() > 400) {
            throw new Refusal(
                    "has " + pieces.size() + " pieces", "drawn hand path", "give 1 to 400");
        }
        for (int i = 0; i < pieces.size(); i++) {
            Cubic end = pieces.get(i);
            Cubic next = pieces.get((i + 1) % pieces.size());
            if (Math.hypot(end.u3 - next.u0, end.v3 - next.v0) > JOIN) {
                throw new Refusal(
                        i + 1 == pieces.size()
                                ? "does not close"
                                : "has a gap after piece " + (i + 1),
                        "drawn hand path",
                        "end each piece where the next starts, the last where the first starts");
            }
        }
    }

    @Override
    public Course course() {
        return new Walk(pieces);
    }

    @Override
    public List<Break> breaks() {
        Walk walk = new Walk(pieces);
        List<Break> found = new ArrayList<>();
        for (double phase : walk.joins()) {
            PlaneJet a = walk.before(phase);
            PlaneJet b = walk.at(phase);
            double scale = walk.length();
            if (Math.hypot(a.u().d1() - b.u().d1(), a.v().d1() - b.v().d1()) > 1e-6 * scale) {
                found.add(new Break(phase, 1, "corner of the hand path"));
            } else if (Math.hypot(a.u().d2() - b.u().d2(), a.v().d2() - b.v().d2())
                    > 1e-4 * scale) {
                found.add(new Break(phase, 2, "the hand path's bend changes"));
            } else if (Math.hypot(a.u().d3() - b.u().d3(), a.v().d3() - b.v().d3())
                    > 1e-2 * scale) {
                found.add(new Break(phase, 3, "the hand path's bend starts to change otherwise"));
            }
        }
        return List.copyOf(found);
    }

    @Override
    public double radius() {
        double most = 0;
        for (Cubic piece : pieces) {
            for (int i = 0; i <= 32; i++) {
                most =
                        Math.max(
                                most,
                                Math.hypot(piece.u(i / 32.0).value(), piece.v(i / 32.0).value()));
            }
        }
        return most;
    }

    @Override
    public String noun() {
        return "drawn path";
    }

    @Override
    public String goes() {
        return "goes along a drawn path";
    }

    @Override
    public <T> T match(
            Function<Form.Sized, T> sized, Function<Series, T> summed, Function<Drawn, T> drawn) {
        return drawn.apply(this);
    }

    @Override
    public Drawn scaled(double factor) {
        return new Drawn(pieces.stream().map(p -> p.map(factor, 0)).toList());
    }

    @Override
    public Drawn turned(double angle) {
        return angle == 0
                ? this
                : new Drawn(
                        pieces.stream().map(p -> p.map(Math.cos(angle), Math.sin(angle))).toList());
    }

    /** The pieces with their tabulated lengths. */
    private static final class Walk implements Course {
        private static final int PARTS = 32;
        // Five-point Gauss–Legendre nodes and weights on [-1, 1]; Abramowitz and Stegun table 25.4.
        private static final double[] NODE = {
            0, 0.538469310105683, -0.538469310105683, 0.906179845938664, -0.906179845938664
        };
        private static final double[] WEIGHT = {
            0.568888888888889,
            0.478628670499366,
            0.478628670499366,
            0.236926885056189,
            0.236926885056189
        };

        private final List<Cubic> pieces;
        private final double[][] upTo;
        private final double[] starts;

        Walk(List<Cubic> pieces) {
            this.pieces = pieces;
            upTo = new double[pieces.size()][PARTS + 1];
            starts = new double[pieces.size() + 1];
            for (int p = 0; p < pieces.size(); p++) {
                for (int i = 0; i < PARTS; i++) {
                    upTo[p][i + 1] =
                            upTo[p][i]
                                    + between(pieces.get(p), (double) i / PARTS, (i + 1.0) / PARTS);
                }
                starts[p + 1] = starts[p] + upTo[p][PARTS];
            }
            if (length() < 1e-6) {
                throw new Refusal(
                        "has no length",
                        "drawn hand path",
                        "draw it longer, or keep the hand still");
            }
        }

        double length() {
            return starts[pieces.size()];
        }

        double[] joins() {
            double[] phases = new double[pieces.size()];
            for (int p = 0; p < phases.length; p++) {
                phases[p] = Math.min(starts[p] / length(), Math.nextDown(1.0));
            }
            return phases;
        }

        private static double between(Cubic piece, double a, double b) {
            double sum = 0;
            for (int i = 0; i < NODE.length; i++) {
                sum += WEIGHT[i] * piece.speed((a + b) / 2 + (b - a) / 2 * NODE[i]);
            }
            return sum * (b - a) / 2;
        }

        @Override
        public PlaneJet at(double phase) {
            double along = (phase - Math.floor(phase)) * length();
            int join = join(along);
            return join >= 0
                    ? onPiece(join % pieces.size(), starts[join % pieces.size()])
                    : onPiece(-join - 2, along);
        }

        @Override
        public Vector2D place(double phase) {
            double along = (phase - Math.floor(phase)) * length();
            int join = join(along);
            int p = join >= 0 ? join % pieces.size() : -join - 2;
            Cubic piece = pieces.get(p);
            double t = join >= 0 ? 0 : solved(p, along - starts[p]);
            return new Vector2D(piece.u(t).value(), piece.v(t).value());
        }

        @Override
        public PlaneJet before(double phase) {
            double along = (phase - Math.floor(phase)) * length();
            int join = join(along);
            if (join < 0) {
                return onPiece(-join - 2, along);
            }
            int previous = (join + pieces.size() - 1) % pieces.size();
            return onPiece(previous, starts[previous + 1]);
        }

        // The join at that length, rounded either way; else as a binary search says it.
        private int join(double along) {
            int p = Arrays.binarySearch(starts, along);
            if (p < 0) {
                double close = 1e-12 * length();
                int after = -p - 1;
                if (after < starts.length && starts[after] - along < close) {
                    return after;
                }
                if (after > 0 && along - starts[after - 1] < close) {
                    return after - 1;
                }
            }
            return p;
        }

        private PlaneJet onPiece(int p, double along) {
            Cubic piece = pieces.get(p);
            double left = Math.min(Math.max(along - starts[p], 0), upTo[p][PARTS]);
            double t = solved(p, left);
            double placeU = piece.u(t).value();
            double placeV = piece.v(t).value();
            // Where a handle is pulled in, the piece starts without speed: take the way it goes
            // from just beside.
            double slow = SLOW * upTo[p][PARTS];
            for (double beside = 1e-6; piece.speed(t) < slow && beside < 0.1; beside *= 2) {
                t += t < 0.5 ? beside : -beside;
            }
            Jet u = piece.u(t);
            Jet v = piece.v(t);
            double speed = piece.speed(t);
            double s1 = (u.d1() * u.d2() + v.d1() * v.d2()) / speed;
            double s2 =
                    (u.d2() * u.d2()
                                    + v.d2() * v.d2()
                                    + u.d1() * u.d3()
                                    + v.d1() * v.d3()
                                    - s1 * s1)
                            / speed;
            double cube = speed * speed * speed;
            Jet inverse =
                    new Jet(
                            t,
                            1 / speed,
                            -s1 / cube,
                            (3 * s1 * s1 - speed * s2) / (cube * speed * speed));
            Jet alongU = u.of(inverse).atRate(length());
            Jet alongV = v.of(inverse).atRate(length());
            return new PlaneJet(
                    new Jet(placeU, alongU.d1(), alongU.d2(), alongU.d3()),
                    new Jet(placeV, alongV.d1(), alongV.d2(), alongV.d3()));
        }

        // The parameter at which piece p is {@code along} metres from its start: Newton steps from
        // the table's straight line, halving where one would leave what is still possible.
        private double solved(int p, double along) {
            Cubic piece = pieces.get(p);
            int part = Arrays.binarySearch(upTo[p], along);
            part = Math.min(part >= 0 ? part : -part - 2, PARTS - 1);
            double from = (double) part / PARTS;
            double left = along - upTo[p][part];
            double low = from;
            double high = from + 1.0 / PARTS;
            double whole = upTo[p][part + 1] - upTo[p][part];
            double t = whole > 0 ? from + left / whole / PARTS : from;
            for (int i = 0; i < 60; i++) {
                double missing = left - between(piece, from, t);
                if (missing > 0) {
                    low = t;
                } else {
                    high = t;
                }
                double next = t + missing / piece.speed(t);
                next = next >= low && next <= high ? next : (low + high) / 2;
                boolean there = Math.abs(next - t) < 1e-14;
                t = next;
                if (there) {
                    break;
                }
            }
            return t;
        }
    }
}
