package deferent.reading.tether;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * The direction n of a straight cord with mass whose head keeps its figure: n ∥ b + δ·n″ at every
 * instant, over a cycle.
 *
 * <p>That is where ∫ (δ/2)|n′|² − b·n dt stands still among unit vectors, a question to the whole
 * cycle at once: stepped through in time its solutions run away to either side, and so does putting
 * n″ back into the right side again and again. It is answered by Newton's method on spectral
 * elements with Gauss, Lobatto and Legendre's nodes (Canuto, Hussaini, Quarteroni and Zang,
 * Spectral Methods: Fundamentals in Single Domains, 2006, sections 2.3 and 3.8, from memory), each
 * node's change in the plane across its n, an element's inner nodes eliminated before the joints.
 */
final class HeavyDirection {
    private static final int DEGREE = 16;
    private static final int INNER = 2 * (DEGREE - 1);
    // What settles at all takes up to fourteen from a direction that is near.
    private static final int MOST_STEPS = 24;
    private static final int MOST_STEPS_NEAR = 16;
    private static final double LONGEST = 0.5;
    private static final double DONE = 1e-11;
    private static final double[] NODES = nodes();
    private static final double[] WEIGHTS = weights();
    private static final double[][] STIFFNESS = stiffness();
    private static final double[] BARYCENTRIC = barycentric();

    /** The pull's direction and size over mass, b. */
    interface Field {
        /**
         * The field at one time.
         *
         * @param last whether {@code time} ends a piece, so that the value just before it is meant
         */
        Vector3D at(double time, boolean last);
    }

    private final double[] joints;
    private final int elements;
    private final Vector3D[] load;
    private final double delta;
    private final Vector3D[] n;

    private HeavyDirection(Field b, double delta, double[] joints, Optional<Smooth> near) {
        this.joints = joints;
        this.elements = joints.length - 1;
        this.delta = delta;
        this.load = new Vector3D[elements * DEGREE];
        this.n = new Vector3D[load.length];
        Arrays.fill(load, Vector3D.ZERO);
        for (int k = 0; k < elements; k++) {
            for (int j = 0; j <= DEGREE; j++) {
                Vector3D there = b.at(j == DEGREE ? joints[k + 1] : time(k, j), j == DEGREE);
                int i = index(k, j);
                load[i] = load[i].add(there.scalarMultiply(WEIGHTS[j] * length(k) / 2));
            }
        }
        double[] guess = new double[3];
        for (int i = 0; i < n.length; i++) {
            double time = time(i / DEGREE, i % DEGREE);
            near.ifPresent(smooth -> smooth.at(time, false, guess));
            Vector3D from = near.isPresent() ? new Vector3D(guess) : load[i];
            n[i] = from.getNorm() > 0 ? from.normalize() : Vector3D.PLUS_J;
        }
    }

    /**
     * A stand-in for the direction; empty where Newton's method does not come to an end.
     *
     * @param delta length less swing length of the cord, metres
     * @param cuts start, the breaks between, end
     * @param about how many elements over the whole
     * @param near a direction to begin with; else b's own
     */
    static Optional<Smooth> of(
            Field b, double delta, double[] cuts, int about, Optional<Smooth> near) {
        HeavyDirection found = new HeavyDirection(b, delta, Smooth.parted(cuts, about), near);
        return found.settles(near.isPresent() ? MOST_STEPS_NEAR : MOST_STEPS)
                ? Optional.of(Smooth.of(found::interpolated, cuts, about))
                : Optional.empty();
    }

    private boolean settles(int most) {
        for (int step = 0; step < most; step++) {
            double moved = step();
            if (!(moved < Double.POSITIVE_INFINITY)) {
                return false;
            }
            if (moved < DONE) {
                return true;
            }
        }
        return false;
    }

    private double time(int element, int node) {
        return joints[element] + (NODES[node] + 1) / 2 * length(element);
    }

    private double length(int element) {
        return joints[element + 1] - joints[element];
    }

    private int index(int element, int node) {
        return (element * DEGREE + node) % n.length;
    }

    /** One of Newton's steps; returns the greatest angle by which it wanted to turn a node. */
    private double step() {
        Vector3D[] slope = slope();
        Vector3D[][] axes = new Vector3D[n.length][];
        for (int i = 0; i < n.length; i++) {
            axes[i] = Slips.axes(n[i]);
        }
        RealMatrix atJoints = MatrixUtils.createRealMatrix(2 * elements, 2 * elements);
        RealVector wanted = MatrixUtils.createRealVector(new double[2 * elements]);
        RealMatrix[] inner = new RealMatrix[elements];
        for (int k = 0; k < elements; k++) {
            inner[k] = eliminated(k, slope, axes, atJoints, wanted);
        }
        for (int k = 0; k < elements; k++) {
            int i = index(k, 0);
            for (int p = 0; p < 2; p++) {
                atJoints.addToEntry(2 * k + p, 2 * k + p, -n[i].dotProduct(slope[i]));
                wanted.addToEntry(2 * k + p, -axes[i][p].dotProduct(slope[i]));
            }
        }
        DecompositionSolver solver = new LUDecomposition(atJoints).getSolver();
        if (!solver.isNonSingular()) {
            return Double.POSITIVE_INFINITY;
        }
        return turned(axes, solver.solve(wanted), inner);
    }

    /** How the integral changes with each node's n, in all three directions. */
    private Vector3D[] slope() {
        Vector3D[] slope = new Vector3D[n.length];
        for (int i = 0; i < n.length; i++) {
            slope[i] = load[i].negate();
        }
        for (int k = 0; k < elements; k++) {
            for (int i = 0; i <= DEGREE; i++) {
                Vector3D sum = Vector3D.ZERO;
                for (int j = 0; j <= DEGREE; j++) {
                    sum = sum.add(n[index(k, j)].scalarMultiply(stiffness(k, i, j)));
                }
                int at = index(k, i);
                slope[at] = slope[at].add(sum);
            }
        }
        return slope;
    }

    private double stiffness(int element, int i, int j) {
        return delta * 2 / length(element) * STIFFNESS[i][j];
    }

    /**
     * Takes an element's inner nodes out of the equations. Adds what is left to those of its two
     * joints, and returns the inner nodes' changes: for none at the joints in the last column, for
     * one of each of the joints' four in the others, to be taken off.
     */
    private RealMatrix eliminated(
            int k, Vector3D[] slope, Vector3D[][] axes, RealMatrix atJoints, RealVector wanted) {
        Vector3D[] own = new Vector3D[INNER + 4];
        for (int i = 0; i <= DEGREE; i++) {
            System.arraycopy(axes[index(k, i)], 0, own, 2 * i, 2);
        }
        double[][] a = new double[INNER][INNER];
        double[][] right = new double[INNER][5];
        int[] ends = {0, 1, 2 * DEGREE, 2 * DEGREE + 1};
        for (int row = 0; row < INNER; row++) {
            int at = index(k, 1 + row / 2);
            for (int column = 0; column <= row; column++) {
                a[row][column] = bent(k, 2 + row, 2 + column, own);
                a[column][row] = a[row][column];
            }
            a[row][row] -= n[at].dotProduct(slope[at]);
            for (int c = 0; c < 4; c++) {
                right[row][c] = bent(k, 2 + row, ends[c], own);
            }
            right[row][4] = -own[2 + row].dotProduct(slope[at]);
        }
        DecompositionSolver solver =
                new LUDecomposition(MatrixUtils.createRealMatrix(a)).getSolver();
        RealMatrix rest = MatrixUtils.createRealMatrix(right);
        RealMatrix solved =
                solver.isNonSingular() ? solver.solve(rest) : rest.scalarMultiply(Double.NaN);
        for (int c = 0; c < 4; c++) {
            int row = 2 * ((k + c / 2) % elements) + c % 2;
            for (int d = 0; d < 4; d++) {
                double sum = bent(k, ends[c], ends[d], own);
                for (int i = 0; i < INNER; i++) {
                    sum -= right[i][c] * solved.getEntry(i, d);
                }
                atJoints.addToEntry(row, 2 * ((k + d / 2) % elements) + d % 2, sum);
            }
            double sum = 0;
            for (int i = 0; i < INNER; i++) {
                sum -= right[i][c] * solved.getEntry(i, 4);
            }
            wanted.addToEntry(row, sum);
        }
        return solved;
    }

    /** Of two of an element's own axes, two a node. */
    private double bent(int k, int i, int j, Vector3D[] own) {
        return stiffness(k, i / 2, j / 2) * own[i].dotProduct(own[j]);
    }

    private double turned(Vector3D[][] axes, RealVector atJoints, RealMatrix[] inner) {
        double[] by = new double[2 * n.length];
        double most = 0;
        for (int k = 0; k < elements; k++) {
            double[] ends = new double[4];
            for (int c = 0; c < 4; c++) {
                ends[c] = atJoints.getEntry(2 * ((k + c / 2) % elements) + c % 2);
            }
            by[2 * k * DEGREE] = ends[0];
            by[2 * k * DEGREE + 1] = ends[1];
            for (int i = 0; i < INNER; i++) {
                double change = inner[k].getEntry(i, 4);
                for (int c = 0; c < 4; c++) {
                    change -= inner[k].getEntry(i, c) * ends[c];
                }
                by[2 * (k * DEGREE + 1) + i] = change;
            }
        }
        for (int i = 0; i < n.length; i++) {
            most = Math.max(most, Math.hypot(by[2 * i], by[2 * i + 1]));
            if (Double.isNaN(by[2 * i]) || Double.isNaN(by[2 * i + 1])) {
                return Double.POSITIVE_INFINITY;
            }
        }
        double share = most > LONGEST ? LONGEST / most : 1;
        for (int i = 0; i < n.length; i++) {
            Vector3D aside =
                    new Vector3D(share * by[2 * i], axes[i][0], share * by[2 * i + 1], axes[i][1]);
            double angle = aside.getNorm();
            if (angle > 0) {
                n[i] =
                        n[i].scalarMultiply(Math.cos(angle))
                                .add(aside.scalarMultiply(Math.sin(angle) / angle))
                                .normalize();
            }
        }
        return most;
    }

    private void interpolated(double time, boolean last, double[] out) {
        int k = Arrays.binarySearch(joints, time);
        k = k >= 0 ? (last ? k - 1 : k) : -k - 2;
        k = Math.max(0, Math.min(k, elements - 1));
        double x = 2 * (time - joints[k]) / length(k) - 1;
        Vector3D sum = Vector3D.ZERO;
        double weights = 0;
        for (int j = 0; j <= DEGREE; j++) {
            Vector3D there = n[index(k, j)];
            double apart = x - NODES[j];
            if (apart == 0) {
                sum = there;
                weights = 1;
                break;
            }
            double w = BARYCENTRIC[j] / apart;
            sum = sum.add(there.scalarMultiply(w));
            weights += w;
        }
        out[0] = sum.getX() / weights;
        out[1] = sum.getY() / weights;
        out[2] = sum.getZ() / weights;
    }

    // --- Legendre's polynomials on [−1, 1] ---

    /** The polynomial of that degree and the one before it. */
    private static double[] legendre(int degree, double x) {
        double before = 1;
        double value = x;
        for (int k = 2; k <= degree; k++) {
            double next = ((2 * k - 1) * x * value - (k - 1) * before) / k;
            before = value;
            value = next;
        }
        return new double[] {value, before};
    }

    // The ends and the roots of the derivative; Newton's method from Chebyshev's points.
    private static double[] nodes() {
        double[] nodes = new double[DEGREE + 1];
        for (int j = 0; j <= DEGREE; j++) {
            double x = -Math.cos(Math.PI * j / DEGREE);
            for (int i = 0; i < 50; i++) {
                double[] p = legendre(DEGREE, x);
                x -= (x * p[0] - p[1]) / ((DEGREE + 1) * p[0]);
            }
            nodes[j] = x;
        }
        return nodes;
    }

    private static double[] weights() {
        double[] weights = new double[DEGREE + 1];
        for (int j = 0; j <= DEGREE; j++) {
            double p = legendre(DEGREE, NODES[j])[0];
            weights[j] = 2 / (DEGREE * (DEGREE + 1) * p * p);
        }
        return weights;
    }

    private static double[][] stiffness() {
        double[][] d = new double[DEGREE + 1][DEGREE + 1];
        for (int i = 0; i <= DEGREE; i++) {
            for (int j = 0; j <= DEGREE; j++) {
                if (i != j) {
                    d[i][j] =
                            legendre(DEGREE, NODES[i])[0]
                                    / legendre(DEGREE, NODES[j])[0]
                                    / (NODES[i] - NODES[j]);
                }
            }
        }
        d[0][0] = -DEGREE * (DEGREE + 1) / 4.0;
        d[DEGREE][DEGREE] = DEGREE * (DEGREE + 1) / 4.0;
        double[][] k = new double[DEGREE + 1][DEGREE + 1];
        for (int i = 0; i <= DEGREE; i++) {
            for (int j = 0; j <= DEGREE; j++) {
                for (int q = 0; q <= DEGREE; q++) {
                    k[i][j] += WEIGHTS[q] * d[q][i] * d[q][j];
                }
            }
        }
        return k;
    }

    private static double[] barycentric() {
        double[] w = new double[DEGREE + 1];
        for (int j = 0; j <= DEGREE; j++) {
            w[j] = 1;
            for (int i = 0; i <= DEGREE; i++) {
                w[j] /= i == j ? 1 : NODES[j] - NODES[i];
            }
        }
        return w;
    }
}
