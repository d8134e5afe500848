package deferent.search.fit;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Size;
import deferent.motion.shared.Side;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import deferent.reading.tether.Cord;
import deferent.reading.tether.KeepTheFigure;
import deferent.reading.tether.Kit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;

/**
 * The fit with the cord taken into account: tempo and sizes such that the hand which keeps the
 * rider's figure lies on the carrier's head as nearly as it can.
 *
 * <p>The ideal fit makes the ideal hand path and the head path agree. A cord's hand leaves its
 * ideal path to keep the figure, the more the slower it goes, so sizes that close the picture do
 * not close the cords. Here the gap itself, between the hand that keeps the figure and the
 * carrier's figure in the rider's plane at {@value #COUNT} instants, is made least by Levenberg and
 * Marquardt's method (Hipparchus) from a stated grid of starts: the sizes as they are, and with the
 * tempo a quarter and a half faster. Sizes stay within their limits; the tempo, unless said
 * otherwise, within a half to one and a half times what it was, because many gaps only close as the
 * tempo grows without end. And because a gap always shrinks with the whole pairing, change has its
 * price: ten centimetres of a size, a fifth of a radian, ten cycles a minute each count as much as
 * a centimetre of gap.
 *
 * @param carrier whose head leads
 * @param pairing with the changes made
 * @param changes sizes moved, in the order of {@link Size#of}
 * @param gapBefore greatest gap over the cycle before, metres
 * @param gapAfter and after, metres
 * @param meanAfter root mean square gap after, metres
 * @param tolerance metres within which a link holds
 * @param possible whether a hand can keep the rider's figure there: no free fall, as many turns
 * @param evaluations how many pairings were tried
 */
public record CordedFit(
        Side carrier,
        Pairing pairing,
        List<SizeChange> changes,
        double gapBefore,
        double gapAfter,
        double meanAfter,
        double tolerance,
        boolean possible,
        int evaluations) {
    private static final int COUNT = 64;

    /** What changing a size by its unit costs: as much as this gap, metres. */
    private static final double COST = 0.01;

    public CordedFit {
        changes = List.copyOf(changes);
    }

    /** Whether the link then holds with cords. */
    public boolean closes() {
        return possible && gapAfter <= tolerance;
    }

    /** With tempo, timing, hand circles, tethers and the rider's height free. */
    public static CordedFit of(Pairing pairing, Side carrier, Kit kit) {
        Set<Size> free = new LinkedHashSet<>();
        free.add(Size.of(Side.LEFT, Size.Kind.TEMPO));
        free.add(Size.of(Side.LEFT, Size.Kind.TIMING));
        for (Side side : Side.values()) {
            free.add(Size.of(side, Size.Kind.HAND_RADIUS));
            free.add(Size.of(side, Size.Kind.TETHER));
        }
        free.add(Size.of(carrier.other(), Size.Kind.CENTRE_Y));
        return of(pairing, carrier, kit, free, Limits.USUAL);
    }

    public static CordedFit of(
            Pairing pairing, Side carrier, Kit kit, Set<Size> free, Limits limits) {
        return new SizeSearch(pairing, carrier, kit, free, limits).answer();
    }

    /** One search. */
    private static final class SizeSearch {
        private final Pairing pairing;
        private final Side carrier;
        private final Side rider;
        private final Kit kit;
        private final List<Size> sizes = new ArrayList<>();
        private final List<Limits.Range> ranges = new ArrayList<>();
        private int evaluations;

        SizeSearch(Pairing pairing, Side carrier, Kit kit, Set<Size> free, Limits limits) {
            this.pairing = pairing;
            this.carrier = carrier;
            this.rider = carrier.other();
            this.kit = kit;
            for (Size size : Size.of(pairing)) {
                if (free.contains(size)) {
                    double now = size.read(pairing).orElseThrow();
                    Limits.Range range = limits.of(size);
                    if (size.kind() == Size.Kind.TEMPO && !limits.said().containsKey(size)) {
                        range = new Limits.Range(Math.max(1, now / 2), Math.min(600, now * 1.5));
                    }
                    if (size.kind() == Size.Kind.TIMING && !limits.said().containsKey(size)) {
                        range = new Limits.Range(-1e3, 1e3);
                    }
                    if (now < range.least() || now > range.most()) {
                        throw new Refusal(
                                "is " + now + ", out of its limits",
                                size.key(),
                                "give it from " + range.least() + " to " + range.most());
                    }
                    sizes.add(size);
                    ranges.add(range);
                }
            }
        }

        CordedFit answer() {
            double[] start = new double[sizes.size()];
            for (int i = 0; i < start.length; i++) {
                start[i] = sizes.get(i).read(pairing).orElseThrow();
            }
            double before = greatest(gaps(pairing));
            double[] best = start;
            double least = cost(start);
            for (double quicker : new double[] {1, 1.25, 1.5}) {
                double[] from = start.clone();
                int tempo = sizes.indexOf(Size.of(Side.LEFT, Size.Kind.TEMPO));
                if (tempo < 0 && quicker > 1 || start.length == 0) {
                    break;
                }
                if (tempo >= 0) {
                    from[tempo] = clamped(tempo, from[tempo] * quicker);
                }
                double[] found = descended(from);
                double there = cost(found);
                if (there < least) {
                    least = there;
                    best = found;
                }
            }
            List<SizeChange> changes = new ArrayList<>();
            for (int i = 0; i < best.length; i++) {
                SizeChange change = new SizeChange(sizes.get(i), start[i], best[i]);
                if (change.slight()) {
                    best[i] = start[i];
                } else {
                    changes.add(change);
                }
            }
            Pairing fitted = with(best);
            KeepTheFigure kept = KeepTheFigure.of(Trace.of(fitted), rider, kit);
            double[] after = gaps(fitted);
            return new CordedFit(
                    carrier,
                    fitted,
                    changes,
                    before,
                    greatest(after),
                    Math.sqrt(square(after) / COUNT),
                    Place.HAND_BREADTH,
                    kept.possible() && kept.getsRound(),
                    evaluations);
        }

        private double[] descended(double[] from) {
            int n = from.length;
            double[] unit = new double[n];
            for (int i = 0; i < n; i++) {
                unit[i] = unit(sizes.get(i));
            }
            RealVector start = new ArrayRealVector(n);
            for (int i = 0; i < n; i++) {
                start.setEntry(i, from[i] / unit[i]);
            }
            try {
                RealVector found =
                        new LevenbergMarquardtOptimizer()
                                .optimize(
                                        new LeastSquaresBuilder()
                                                .start(start)
                                                .target(new double[3 * COUNT + n])
                                                .model(x -> valueAndSlopes(x, unit))
                                                .parameterValidator(x -> valid(x, unit))
                                                .maxEvaluations(200)
                                                .maxIterations(60)
                                                .build())
                                .getPoint();
                double[] out = new double[n];
                for (int i = 0; i < n; i++) {
                    out[i] = clamped(i, found.getEntry(i) * unit[i]);
                }
                return out;
            } catch (MathIllegalStateException tooMany) {
                // Its best so far is not told; the start then stands, and says so by its gap.
                return from;
            }
        }

        private RealVector valid(RealVector x, double[] unit) {
            RealVector out = x.copy();
            for (int i = 0; i < unit.length; i++) {
                out.setEntry(i, clamped(i, x.getEntry(i) * unit[i]) / unit[i]);
            }
            return out;
        }

        private Pair<RealVector, RealMatrix> valueAndSlopes(RealVector x, double[] unit) {
            int n = unit.length;
            double[] at = new double[n];
            for (int i = 0; i < n; i++) {
                at[i] = x.getEntry(i) * unit[i];
            }
            double[] value = weighed(at, unit);
            RealMatrix slopes = MatrixUtils.createRealMatrix(value.length, n);
            for (int i = 0; i < n; i++) {
                double h = 1e-6 * unit[i];
                double[] on = at.clone();
                // Inward at a limit.
                on[i] += at[i] + h > ranges.get(i).most() ? -h : h;
                double[] there = weighed(on, unit);
                for (int r = 0; r < value.length; r++) {
                    slopes.setEntry(r, i, (there[r] - value[r]) / (on[i] - at[i]) * unit[i]);
                }
            }
            return new Pair<>(new ArrayRealVector(value, false), slopes);
        }

        /** The gaps, and below them what the changes cost. */
        private double[] weighed(double[] at, double[] unit) {
            double[] out = Arrays.copyOf(gaps(with(at)), 3 * COUNT + at.length);
            for (int i = 0; i < at.length; i++) {
                double now = sizes.get(i).read(pairing).orElseThrow();
                out[3 * COUNT + i] = COST * Math.sqrt(COUNT) * (at[i] - now) / unit[i];
            }
            return out;
        }

        private double cost(double[] values) {
            double[] unit = new double[values.length];
            for (int i = 0; i < unit.length; i++) {
                unit[i] = unit(sizes.get(i));
            }
            return square(weighed(values, unit));
        }

        private double clamped(int i, double value) {
            return Math.max(ranges.get(i).least(), Math.min(ranges.get(i).most(), value));
        }

        /** Steps that count alike: ten centimetres, a fifth of a radian, ten cycles a minute. */
        private static double unit(Size size) {
            return switch (size.kind()) {
                case TEMPO -> 10;
                case TIMING -> 0.03;
                case START, TILT, AMPLITUDE -> 0.2;
                default -> 0.1;
            };
        }

        private Pairing with(double[] values) {
            Pairing out = pairing;
            for (int i = 0; i < values.length; i++) {
                Size size = sizes.get(i);
                double value = values[i];
                if (size.kind() == Size.Kind.TIMING) {
                    value -= Math.floor(value);
                }
                out = size.set(out, value);
            }
            return out;
        }

        /**
         * From the carrier's head to the rider's hand that keeps its figure, in the rider's plane.
         */
        private double[] gaps(Pairing tried) {
            evaluations++;
            Trace trace = Trace.of(tried);
            Cord cord = Cord.of(trace, rider, kit);
            Vector3D normal = tried.part(rider).place().plane().normal();
            double[] out = new double[3 * COUNT];
            for (int i = 0; i < COUNT; i++) {
                double t = trace.period() * (i + 0.5) / COUNT;
                State head = trace.head(rider).at(t);
                Vector3D gap =
                        KeepTheFigure.place(head, cord)
                                .subtract(trace.head(carrier).at(t).position());
                gap = gap.subtract(normal.scalarMultiply(gap.dotProduct(normal)));
                out[3 * i] = gap.getX();
                out[3 * i + 1] = gap.getY();
                out[3 * i + 2] = gap.getZ();
            }
            return out;
        }

        private static double square(double[] gaps) {
            double sum = 0;
            for (double g : gaps) {
                sum += g * g;
            }
            return sum;
        }

        private static double greatest(double[] gaps) {
            double most = 0;
            for (int i = 0; i < gaps.length; i += 3) {
                most =
                        Math.max(
                                most,
                                Math.sqrt(
                                        gaps[i] * gaps[i]
                                                + gaps[i + 1] * gaps[i + 1]
                                                + gaps[i + 2] * gaps[i + 2]));
            }
            return most;
        }
    }
}
