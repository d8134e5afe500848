package deferent.motion.tether;

import deferent.motion.pairing.Refusal;
import java.util.List;
import org.hipparchus.complex.Complex;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.linear.EigenDecompositionNonSymmetric;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;

/**
 * How a small slip of the head grows while the hand keeps its path and does not correct it.
 *
 * <p>Over a cycle: the Floquet multipliers, eigenvalues of the monodromy of the slips' own
 * equations ({@link Swinging}), four of them. Without drag the poi is a Hamiltonian system and they
 * come in pairs λ, 1/λ: a slip that dies in one way grows in another, so at best it neither grows
 * nor dies; only drag steadies.
 *
 * <p>Over a reaction time τ, begun at the worst moment: the greatest singular value of the slip's
 * propagator. A slip counts as (x, y/Ω) in the Euclidean norm: x the head's displacement across the
 * cord in metres, y its speed across the cord beside what it should be, Ω = 2π over the cycle. A
 * neutral poi can have a singular value well above 1: a slip in speed becomes one in place.
 *
 * <p>Leverage: what a small shift of the hand, kept from then on, does to the slip that grows
 * fastest. A shift by δh leaves the head where it is and turns the cord by −δh⊥/L; its effect a
 * cycle later is read off with the left eigenvector of the monodromy, carried to that instant.
 *
 * @param multipliers largest first
 * @param growth over a cycle: modulus of the greatest
 * @param verdict in one word
 * @param reaction the reaction time, seconds
 * @param growthInReaction greatest singular value over it
 * @param worstTime when a slip grows most within a reaction time, seconds
 * @param leverageTime when a correction does most, seconds
 * @param leverage effect there over the mean effect
 * @param doubling seconds in which the fastest slip doubles; infinite where none grows
 */
public record Hold(
        List<Complex> multipliers,
        double growth,
        Verdict verdict,
        double reaction,
        double growthInReaction,
        double worstTime,
        double leverageTime,
        double leverage,
        double doubling) {

    /** What becomes of a slip. */
    public enum Verdict {
        /** It dies away: every multiplier inside the unit circle. Only drag can do that. */
        STEADIES,
        /** It neither grows nor dies, or grows no faster than with time itself. */
        NEUTRAL,
        /** It grows from cycle to cycle. */
        RUNS_AWAY
    }

    /**
     * Simple visual reaction, hardware corrected, mean over 1469 adults: 213 ms. Woods and others,
     * Frontiers in Human Neuroscience 9:131 (2015).
     */
    public static final double REACTION = 0.213;

    /**
     * How far from 1 a modulus still counts as 1: a double multiplier 1, which every poi about a
     * still hand has, splits by the square root of the integration's error.
     */
    public static final double EVEN = 1e-4;

    private static final int MOMENTS = 48;

    public static Hold of(Orbit orbit) {
        return of(orbit, REACTION);
    }

    /**
     * @param reaction seconds
     */
    public static Hold of(Orbit orbit, double reaction) {
        return new Asking(orbit, reaction).answer();
    }

    /** Hold of the poi whose hand keeps the light's hand path and does not correct. */
    public static Hold of(KeepTheLight light) {
        if (!light.possible()) {
            throw new Refusal(
                    "cannot be held: the light asks for free fall or for a hand that jumps",
                    light.side().word() + " hand that keeps the light",
                    "spin faster, or change the figure");
        }
        return of(light.orbit());
    }

    /** Hold of a poi that follows a hand which keeps its own path. */
    public static Hold of(KeepTheHand.Solution solution) {
        return of(solution.orbit());
    }

    /** Metres that a slip of {@code metres} has become before it can be answered, at the worst. */
    public double slipped(double metres) {
        return metres * growthInReaction;
    }

    private static Verdict verdict(double growth) {
        return growth > 1 + EVEN
                ? Verdict.RUNS_AWAY
                : growth < 1 - EVEN ? Verdict.STEADIES : Verdict.NEUTRAL;
    }

    /** One hold in the making. */
    private static final class Asking {
        private final Orbit orbit;
        private final HandTable table;
        private final Cord cord;
        private final double reaction;
        private final double unit;
        private final Floquet floquet;

        Asking(Orbit orbit, double reaction) {
            this.orbit = orbit;
            this.table = orbit.table();
            this.cord = orbit.cord();
            this.reaction = reaction;
            this.floquet = Floquet.of(orbit);
            this.unit = floquet.unit();
        }

        Hold answer() {
            int every = Math.max(1, table.steps() / MOMENTS);
            Complex[] left = leftEigenvector();
            Vector3D[] startAxes = Floquet.axes(orbit, orbit.start());
            double[] slips = Slips.about(orbit.start(), startAxes, 2, unit);
            double[] state = orbit.start();
            Marching together = new Marching(cord, 4);
            double worst = 0;
            double worstTime = table.start();
            double most = 0;
            double mostTime = table.start();
            double sum = 0;
            int moments = 0;
            for (int i = 0; i < table.steps(); i++) {
                if (i % every == 0) {
                    double grown = grown(i, state);
                    if (grown > worst) {
                        worst = grown;
                        worstTime = table.time(i);
                    }
                    double lever = lever(i, slips, left);
                    sum += lever;
                    moments++;
                    if (lever > most) {
                        most = lever;
                        mostTime = table.time(i);
                    }
                }
                together.step(table, i, slips);
                System.arraycopy(slips, 0, state, 0, 6);
            }
            double growth = floquet.growth();
            Verdict verdict = verdict(growth);
            return new Hold(
                    floquet.multipliers(),
                    growth,
                    verdict,
                    reaction,
                    worst,
                    worstTime,
                    mostTime,
                    most / (sum / moments),
                    verdict == Verdict.RUNS_AWAY
                            ? orbit.period() * Math.log(2) / Math.log(growth)
                            : Double.POSITIVE_INFINITY);
        }

        /** Greatest singular value of the propagator over the reaction time from step {@code i}. */
        private double grown(int i, double[] state) {
            Vector3D[] axes = Floquet.axes(orbit, state);
            double s = along(i, state, false);
            double[] y = Slips.about(state, axes, 2, unit);
            Marching marching = new Marching(cord, 4);
            double left = reaction;
            int step = i;
            while (left > 1e-12) {
                double h = table.length(step);
                if (left >= h * (1 - 1e-9)) {
                    marching.step(table, step, y);
                    left -= h;
                    step = (step + 1) % table.steps();
                } else {
                    marching.step(table, table.time(step), table.time(step) + left, y);
                    break;
                }
            }
            double[] end = new double[6];
            System.arraycopy(y, 0, end, 0, 6);
            double[][] m = Slips.matrix(y, Floquet.axes(orbit, end), 2, unit);
            double partial = left > 1e-12 ? left : 0;
            Vector3D h = table.hand().at(table.time(step) + partial).velocity();
            double sEnd = h.dotProduct(new Vector3D(end[0], end[1], end[2]));
            RealMatrix physical =
                    physical(sEnd)
                            .multiply(MatrixUtils.createRealMatrix(m))
                            .multiply(inverse(physical(s)));
            return new SingularValueDecomposition(physical).getNorm();
        }

        private double along(int i, double[] state, boolean before) {
            Vector3D h =
                    before
                            ? table.hand().before(table.time(i)).velocity()
                            : table.hand().at(table.time(i)).velocity();
            return h.dotProduct(new Vector3D(state[0], state[1], state[2]));
        }

        // From (c, d) to (x, y/Ω): x = L·c; the cord's e′ changes by (d·unit + s·c)/ℓ, the head's
        // speed across the cord by L times that.
        private RealMatrix physical(double s) {
            double omega = 2 * Math.PI / orbit.period();
            double ratio = cord.length() / cord.swingLength();
            double[][] m = new double[4][4];
            for (int a = 0; a < 2; a++) {
                m[a][a] = cord.length();
                m[2 + a][a] = ratio * s / omega;
                m[2 + a][2 + a] = ratio * unit / omega;
            }
            return MatrixUtils.createRealMatrix(m);
        }

        // None of what is turned round here is singular, however small its numbers are.
        private static final double SINGULAR = 1e-300;

        private static RealMatrix inverse(RealMatrix m) {
            return new LUDecomposition(m, SINGULAR).getSolver().getInverse();
        }

        /** wᵀM = λwᵀ for the greatest multiplier. */
        private Complex[] leftEigenvector() {
            EigenDecompositionNonSymmetric own =
                    new EigenDecompositionNonSymmetric(
                            MatrixUtils.createRealMatrix(floquet.monodromy()).transpose());
            Complex[] values = own.getEigenvalues();
            Complex greatest = floquet.multipliers().get(0);
            int nearest = 0;
            for (int i = 1; i < values.length; i++) {
                if (values[i].subtract(greatest).norm()
                        < values[nearest].subtract(greatest).norm()) {
                    nearest = i;
                }
            }
            return own.getEigenvector(nearest).toArray();
        }

        /**
         * Greatest effect of a unit shift of the hand at step {@code i} on the left eigenvector's
         * slip a cycle on: wᵀ·Φ⁻¹·(slip), Φ from the start to here.
         */
        private double lever(int i, double[] slips, Complex[] left) {
            double[] state = new double[6];
            System.arraycopy(slips, 0, state, 0, 6);
            Vector3D[] axes = Floquet.axes(orbit, state);
            double[][] phi = Slips.matrix(slips, axes, 2, unit);
            double s = along(i, state, false);
            RealMatrix back = inverse(MatrixUtils.createRealMatrix(phi));
            // A shift δh along axis a: c = −1/L, and q keeps the head's velocity: d = s/L.
            double sum = 0;
            for (int a = 0; a < 2; a++) {
                Complex effect = Complex.ZERO;
                for (int k = 0; k < 4; k++) {
                    double moved =
                            (-back.getEntry(k, a) + back.getEntry(k, 2 + a) * s / unit)
                                    / cord.length();
                    effect = effect.add(left[k].multiply(moved));
                }
                sum += effect.norm() * effect.norm();
            }
            return Math.sqrt(sum);
        }
    }
}
