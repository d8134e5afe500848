package deferent.reading.tether;

import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Course;
import deferent.motion.trace.Lowest;
import java.util.Arrays;
import java.util.List;
import org.hipparchus.complex.Complex;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.linear.EigenDecompositionNonSymmetric;
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
 * <p>Over a reaction time τ: the head is put aside across the cord, at the worst moment and in the
 * worst direction, its speed across the cord as it should be; how many times as far it is aside a
 * time τ later. Displacement is held against displacement, so nothing is weighed against speed. A
 * slip x is c = x/L, and its speed is as it should be where d·unit + s·c = 0, s being the hand's
 * speed along the cord; so this is the greatest singular value of Φcc − (s/unit)·Φcd, Φ the
 * propagator.
 *
 * <p>Leverage: what a small shift of the hand, kept from then on, does to the slip that grows
 * fastest. A shift by δh leaves the head where it is and turns the cord by −δh⊥/L; its effect a
 * cycle later is read off with the left eigenvector of the monodromy, carried to that instant.
 *
 * @param multipliers largest first
 * @param growth over a cycle: modulus of the greatest
 * @param verdict in one word
 * @param reaction the reaction time, seconds
 * @param growthInReaction how many times as far aside a slip is after it, at the worst
 * @param worstTime when a slip grows most within a reaction time, seconds
 * @param leverageTime when a correction does most, seconds
 * @param leverage effect there over the mean effect
 * @param doubling seconds in which the fastest slip doubles; infinite where none grows
 */
public record Steadiness(
        List<Complex> multipliers,
        double growth,
        Verdict verdict,
        double reaction,
        double growthInReaction,
        double worstTime,
        double leverageTime,
        double leverage,
        double doubling) {
    public Steadiness {
        Refusal.numbers(
                "the slip", growth, reaction, growthInReaction, worstTime, leverageTime, leverage);
    }

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

    /** So far may the logarithm of the volume be off, where no multiplier is past all digits. */
    private static final double VOLUME = 1e-3;

    private static final double SURE = 1e5;

    /** By golden sections; a maximum's height is as good as the square of its place. */
    private static final int SECTIONS = 12;

    public static Steadiness of(Orbit orbit) {
        return of(orbit, REACTION);
    }

    /**
     * What becomes of a slip before it can be answered, and over a cycle.
     *
     * @param reaction seconds
     */
    public static Steadiness of(Orbit orbit, double reaction) {
        return new Asking(orbit, reaction).answer();
    }

    /** Steadiness of the poi whose hand keeps the figure and does not correct. */
    public static Steadiness of(KeepTheFigure kept) {
        if (!kept.possible()) {
            throw new Refusal(
                    "has no steadiness: the figure asks for free fall or for a hand that jumps",
                    kept.side().word() + " hand that keeps the figure",
                    "spin faster, or change the figure");
        }
        return of(kept.orbit());
    }

    /** Steadiness of a poi that follows a hand which keeps its own path. */
    public static Steadiness of(KeepTheHandPath.Solution solution) {
        return of(solution.orbit());
    }

    /** Metres that a slip of {@code metres} has become before it can be answered, at the worst. */
    public double slipped(double metres) {
        return metres * growthInReaction;
    }

    static Refusal swingsTooOften() {
        return new Refusal(
                "swings too often in a cycle to follow how a slip of it grows",
                "so short a cord",
                "take a longer tether, or a shorter cycle");
    }

    private static Verdict verdict(double growth) {
        return growth > 1 + EVEN
                ? Verdict.RUNS_AWAY
                : growth < 1 - EVEN ? Verdict.STEADIES : Verdict.NEUTRAL;
    }

    /** One steadiness in the making. */
    private static final class Asking {
        private final Orbit orbit;
        private final HandTable table;
        private final Cord cord;
        private final double reaction;
        private final double unit;
        private final Floquet floquet;
        private final Course head;

        Asking(Orbit orbit, double reaction) {
            this.orbit = orbit;
            this.table = orbit.table();
            this.cord = orbit.cord();
            this.reaction = reaction;
            this.floquet = Floquet.of(orbit);
            this.unit = floquet.unit();
            this.head = orbit.course();
        }

        Steadiness answer() {
            double growth = floquet.growth();
            if (!Double.isFinite(growth)) {
                throw new Refusal(
                        "lets a slip grow past all counting within one cycle",
                        "hand that does not correct",
                        "take a longer tether, or a shorter cycle");
            }
            // Liouville: without air a cycle keeps the volume of slips, so they cannot all shrink.
            // Beside the shortest cords rounding is all that is left of them.
            if (!cord.kit().air()
                    && (verdict(growth) == Verdict.STEADIES
                            || growth < SURE && Math.abs(floquet.volume()) > VOLUME)) {
                throw swingsTooOften();
            }
            List<Floquet.Leg> legs = floquet.legs();
            double[] levers = levers();
            int most = 0;
            for (int i = 0; i < legs.size(); i++) {
                if (levers[i] > levers[most]) {
                    most = i;
                }
            }
            double worstTime = worstTime();
            Verdict verdict = verdict(growth);
            return new Steadiness(
                    floquet.multipliers(),
                    growth,
                    verdict,
                    reaction,
                    grown(worstTime),
                    worstTime,
                    table.time(legs.get(most).from()),
                    levers[most] / Arrays.stream(levers).average().orElseThrow(),
                    verdict == Verdict.RUNS_AWAY
                            ? orbit.period() * Math.log(2) / Math.log(growth)
                            : Double.POSITIVE_INFINITY);
        }

        /** The moment from which a slip grows most: about the worst of the legs' starts. */
        private double worstTime() {
            List<Floquet.Leg> legs = floquet.legs();
            double time = table.start();
            double most = 0;
            int worst = 0;
            for (int i = 0; i < legs.size(); i++) {
                double grown = grown(table.time(legs.get(i).from()));
                if (grown > most) {
                    most = grown;
                    time = table.time(legs.get(i).from());
                    worst = i;
                }
            }
            double before = length((worst + legs.size() - 1) % legs.size());
            Lowest found =
                    Lowest.within(t -> -grown(t), time - before, time + length(worst), SECTIONS);
            return -found.value() > most
                    ? KeepTheFigure.wrapped(found.at(), table.over(), false)
                    : time;
        }

        /** How many times as far aside a slip is a reaction time after it. */
        private double grown(double begun) {
            List<Floquet.Leg> legs = floquet.legs();
            double time = KeepTheFigure.wrapped(begun, table.over(), false);
            int next = legs.size() - 1;
            while (next > 0 && table.time(legs.get(next).from()) > time) {
                next--;
            }
            double[] start = Orbit.state(table.hand().at(time), head.at(time), cord);
            double along = along(time, start);
            RealMatrix slips = MatrixUtils.createRealIdentityMatrix(4);
            double left = reaction;
            double within = time - table.time(legs.get(next).from());
            while (left > 1e-12) {
                Floquet.Leg leg = legs.get(next);
                double whole = length(next) - within;
                if (within == 0 && left >= whole) {
                    slips = leg.slips().multiply(slips);
                } else {
                    slips = part(leg, within, Math.min(whole, left), start).multiply(slips);
                }
                left -= whole;
                within = 0;
                next = (next + 1) % legs.size();
                start = legs.get(next).start();
            }
            RealMatrix aside =
                    slips.getSubMatrix(0, 1, 0, 1)
                            .subtract(slips.getSubMatrix(0, 1, 2, 3).scalarMultiply(along / unit));
            return new SingularValueDecomposition(aside).getNorm();
        }

        /** What a part of a leg does to slips. */
        private RealMatrix part(Floquet.Leg leg, double within, double lasting, double[] start) {
            double[] y = Slips.about(start, Floquet.axes(orbit, start), 2, unit);
            Marching marching = new Marching(cord, 4);
            double time = table.time(leg.from()) + within;
            double end = time + lasting;
            for (int step = leg.from(); step < table.steps() && time < end - 1e-12; step++) {
                double to = Math.min(end, table.time(step + 1));
                if (to > time) {
                    marching.closely(table, time, to, y);
                    time = to;
                }
            }
            double[] to = Arrays.copyOf(y, 6);
            return MatrixUtils.createRealMatrix(Slips.matrix(y, Floquet.axes(orbit, to), 2, unit));
        }

        /** Seconds that a leg lasts. */
        private double length(int leg) {
            List<Floquet.Leg> legs = floquet.legs();
            double end =
                    leg + 1 < legs.size()
                            ? table.time(legs.get(leg + 1).from())
                            : table.over().end();
            return end - table.time(legs.get(leg).from());
        }

        /** The hand's speed along the cord. */
        private double along(double time, double[] start) {
            return table.hand()
                    .at(time)
                    .velocity()
                    .dotProduct(new Vector3D(start[0], start[1], start[2]));
        }

        /** wᵀM = λwᵀ for the greatest multiplier; its length such that wᵀM is about 1. */
        private Complex[] leftEigenvector() {
            // The eigenvalues' own search does not end where numbers are very great.
            double scale = 1 / Math.max(floquet.growth(), Double.MIN_NORMAL);
            EigenDecompositionNonSymmetric own =
                    new EigenDecompositionNonSymmetric(
                            floquet.monodromy().scalarMultiply(scale).transpose());
            Complex[] values = own.getEigenvalues();
            Complex greatest = floquet.multipliers().get(0).multiply(scale);
            int nearest = 0;
            for (int i = 1; i < values.length; i++) {
                if (values[i].subtract(greatest).norm()
                        < values[nearest].subtract(greatest).norm()) {
                    nearest = i;
                }
            }
            Complex[] w = own.getEigenvector(nearest).toArray();
            for (int k = 0; k < w.length; k++) {
                w[k] = w[k].multiply(scale);
            }
            return w;
        }

        /**
         * Greatest effect of a unit shift of the hand at each leg's start on the left eigenvector's
         * slip at the cycle's end: wᵀ·Φ·(slip), Φ from there to the end, so wᵀ is carried back leg
         * by leg.
         */
        private double[] levers() {
            List<Floquet.Leg> legs = floquet.legs();
            double[] levers = new double[legs.size()];
            Complex[] w = leftEigenvector();
            for (int i = legs.size() - 1; i >= 0; i--) {
                w = carriedBack(w, legs.get(i).slips());
                double s = along(table.time(legs.get(i).from()), legs.get(i).start());
                // A shift δh along axis a: c = −1/L, and q keeps the head's velocity: d = s/L.
                double sum = 0;
                for (int a = 0; a < 2; a++) {
                    double effect =
                            w[2 + a].multiply(s / unit).subtract(w[a]).norm() / cord.length();
                    sum += effect * effect;
                }
                levers[i] = Math.sqrt(sum);
            }
            return levers;
        }

        private static Complex[] carriedBack(Complex[] w, RealMatrix m) {
            Complex[] out = new Complex[w.length];
            for (int j = 0; j < out.length; j++) {
                out[j] = Complex.ZERO;
                for (int k = 0; k < w.length; k++) {
                    out[j] = out[j].add(w[k].multiply(m.getEntry(k, j)));
                }
            }
            return out;
        }
    }
}
