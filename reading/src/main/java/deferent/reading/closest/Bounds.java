package deferent.reading.closest;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.HandLimits;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * How far a hand at one instant is past each of its bounds, as a share, and how that changes with
 * the hand's own place, velocity, acceleration and jerk. All but the pull bound the length of a
 * vector. One for one thread: it holds one instant at a time.
 */
final class Bounds {
    static final HandBound[] ALL = HandBound.values();

    /**
     * By so much each bound is drawn in, so that what is left over between the instants and after
     * the last round still keeps the bound that was said.
     */
    static final double DRAWN_IN = 0.997;

    /** Leaving one's path is counted in shares of this at the least, metres. */
    private static final double LEAST_LEAVE = 0.02;

    /** A pull in shares of this at the least, head weights. */
    private static final double LEAST_PULL = 0.05;

    private final HandLimits limits;
    private final Optional<Shoulder> shoulder;
    private final int size;
    private final double[][] vector;
    private final double[] length = new double[ALL.length];
    private final double[] scale = new double[ALL.length];
    private final double[] most = new double[ALL.length];
    private final boolean[] said = new boolean[ALL.length];
    private double leastPull;
    private double pull;

    /**
     * An arm as the plane or space of a figure sees it.
     *
     * @param at the shoulder's components
     * @param off its distance across the plane, metres
     * @param arm length, metres
     */
    record Shoulder(double[] at, double off, double arm) {}

    Bounds(HandLimits limits, Optional<Shoulder> shoulder, int size) {
        this.limits = limits;
        this.shoulder = shoulder;
        this.size = size;
        this.vector = new double[ALL.length][size];
        say(HandBound.SPEED, limits.speed());
        say(HandBound.ACCELERATION, limits.acceleration());
        limits.jerk().ifPresent(jerk -> say(HandBound.JERK, jerk));
        shoulder.ifPresent(s -> say(HandBound.REACH, s.arm()));
        limits.leave().ifPresent(leave -> say(HandBound.LEAVE, leave));
        limits.leave()
                .ifPresent(
                        leave -> scale[HandBound.LEAVE.ordinal()] = Math.max(LEAST_LEAVE, leave));
        said[HandBound.PULL.ordinal()] = true;
        pullAtLeast(limits.leastPull());
    }

    private void say(HandBound bound, double value) {
        said[bound.ordinal()] = true;
        most[bound.ordinal()] = DRAWN_IN * value;
        scale[bound.ordinal()] = DRAWN_IN * value;
    }

    /** Bounds the pull otherwise, head weights. */
    void pullAtLeast(double weights) {
        leastPull = weights / DRAWN_IN;
        scale[HandBound.PULL.ordinal()] = Math.max(LEAST_PULL, leastPull);
    }

    /** Bounds it as said. */
    void pullAsSaid() {
        pullAtLeast(limits.leastPull());
    }

    boolean said(int bound) {
        return said[bound];
    }

    /** Highest derivative of the hand that is bounded. */
    int levels() {
        return limits.jerk().isPresent() ? 3 : 2;
    }

    /**
     * Takes in an instant.
     *
     * @param hand place, velocity, acceleration and jerk
     * @param idealHand where the ideal one is
     * @param pullOverMass m/s²
     */
    void at(double[][] hand, double[] idealHand, double pullOverMass) {
        pull = pullOverMass / Gravity.STANDARD;
        for (int b = 0; b < ALL.length; b++) {
            if (!said[b] || ALL[b] == HandBound.PULL) {
                continue;
            }
            double sum = 0;
            double[] v = vector[b];
            double[] from = hand[level(b)];
            for (int d = 0; d < size; d++) {
                v[d] =
                        from[d]
                                - switch (ALL[b]) {
                                    case REACH -> shoulder.orElseThrow().at()[d];
                                    case LEAVE -> idealHand[d];
                                    default -> 0;
                                };
                sum += v[d] * v[d];
            }
            double off = ALL[b] == HandBound.REACH ? shoulder.orElseThrow().off() : 0;
            length[b] = Math.sqrt(sum + off * off);
        }
    }

    /** The derivative of the hand that a bound is about. */
    static int level(int bound) {
        return switch (ALL[bound]) {
            case SPEED -> 1;
            case ACCELERATION -> 2;
            case JERK -> 3;
            case PULL, REACH, LEAVE -> 0;
        };
    }

    /** How far past a bound, as a share; below 0 within it. */
    double past(int bound) {
        return ALL[bound] == HandBound.PULL
                ? (leastPull - pull) / scale[bound]
                : (length[bound] - most[bound]) / scale[bound];
    }

    /** Writes how {@link #past} changes with the hand's derivative of that level. */
    void slope(int bound, double[] out) {
        for (int d = 0; d < size; d++) {
            out[d] = length[bound] > 0 ? vector[bound][d] / (length[bound] * scale[bound]) : 0;
        }
    }

    /** How it changes with the pull over mass, in seconds squared a metre. */
    double pullSlope() {
        return -1 / (Gravity.STANDARD * scale[HandBound.PULL.ordinal()]);
    }

    /**
     * By how much a length bends upward across its vector, in shares; 0 at its end, where it has no
     * direction.
     */
    double bend(int bound) {
        return length[bound] > 1e-9 ? 1 / (length[bound] * scale[bound]) : 0;
    }

    /** Unit vectors across a bound's vector. */
    double[][] across(int bound) {
        double[] v = vector[bound];
        if (size == 2) {
            double n = Math.hypot(v[0], v[1]);
            return n > 0 ? new double[][] {{-v[1] / n, v[0] / n}} : new double[0][];
        }
        Vector3D one = new Vector3D(v);
        if (one.getNorm() == 0) {
            return new double[0][];
        }
        Vector3D two = one.orthogonal();
        return new double[][] {two.toArray(), one.normalize().crossProduct(two).toArray()};
    }
}
