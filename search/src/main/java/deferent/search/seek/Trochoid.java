package deferent.search.seek;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Tether;
import java.util.Optional;

/**
 * A flower's figure as the handbooks of curves know it: drawn by a point on an arm of a circle that
 * rolls without slipping on a fixed one, outside (epitrochoid) or inside (hypotrochoid).
 *
 * <p>With a hand circle R gone round k times and a tether L turning n times a cycle, m = n/k: a
 * rolling circle of radius b = R/|m| whose centre goes round the hand's circle turns as the poi
 * does, on a fixed circle of a = R·|m − 1|/|m|, the arm being the tether. Cusps where L = b.
 * Source: J. D. Lawrence, A Catalog of Special Plane Curves (1972), chapter 6, epitrochoid and
 * hypotrochoid.
 *
 * <p>Double generation: hand and poi may change parts, R and L, k and n, and the head goes the same
 * way; so each such curve is rolled in two ways, on two fixed circles, by motions that are not the
 * same. Source: Daniel Bernoulli (1725); R. C. Yates, A Handbook on Curves and their Properties
 * (1952), epi- and hypo-cycloids (both from memory).
 *
 * @param hand radius of the hand's circle R, metres
 * @param rounds hand turns a cycle k, above 0
 * @param tether L, metres
 * @param turns poi turns a cycle n, not 0 and not k
 */
public record Trochoid(double hand, int rounds, double tether, int turns) {
    /**
     * The figure of a circling hand with an evenly turning poi; empty for other motions and for
     * circles.
     */
    public static Optional<Trochoid> of(Motion motion, Tether tether) {
        Optional<Series.Term> circle = motion.path().circle();
        if (circle.isEmpty() || motion.spin().even().isEmpty()) {
            return Optional.empty();
        }
        Series.Term only = circle.get();
        int way = Integer.signum(only.k());
        int turns = way * motion.spin().turns();
        return turns == 0 || turns == way * only.k()
                ? Optional.empty()
                : Optional.of(new Trochoid(only.radius(), way * only.k(), tether.length(), turns));
    }

    /** Poi turns a hand turn, m. */
    public double ratio() {
        return (double) turns / rounds;
    }

    /** Whether the circle rolls outside, or round, the fixed one: an in-spin. */
    public boolean epitrochoid() {
        return turns > 0;
    }

    /** Radius of the rolling circle b, metres. */
    public double rolling() {
        return hand / Math.abs(ratio());
    }

    /** Radius of the fixed circle a, metres. */
    public double fixed() {
        return hand * Math.abs(ratio() - 1) / Math.abs(ratio());
    }

    /** Loops, cusps or bulges of the figure. */
    public int petals() {
        return Math.abs(turns - rounds) / SeriesCurve.gcd(turns, rounds);
    }

    /** Whether the petals end in cusps: the arm as long as the rolling circle's radius. */
    public boolean cusped() {
        return Math.abs(tether - rolling()) < 1e-9;
    }

    /** Signed area swept over a cycle, square metres: π(k·R² + n·L²). */
    public double signedArea() {
        return Math.PI * (rounds * hand * hand + turns * tether * tether);
    }

    /** The other motion that draws the same figure. */
    // Hand and tether change places.
    @SuppressWarnings("ArgumentSelectionDefectChecker")
    public Trochoid otherGeneration() {
        return turns > 0
                ? new Trochoid(tether, turns, hand, rounds)
                : new Trochoid(tether, -turns, hand, -rounds);
    }

    /** What the handbooks call it. */
    public String name() {
        Trochoid slow = Math.abs(turns) >= rounds ? this : otherGeneration();
        if (slow.rounds == 1) {
            if (slow.turns == -1) {
                return Math.abs(hand - tether) < 1e-9 ? "line (Cardan's circles)" : "ellipse";
            }
            if (slow.cusped()) {
                return switch (slow.turns) {
                    case 2 -> "cardioid";
                    case 3 -> "nephroid";
                    case -2 -> "deltoid";
                    case -3 -> "astroid";
                    default -> slow.turns > 0 ? "epicycloid" : "hypocycloid";
                };
            }
            if (slow.turns == 2) {
                return "limaçon";
            }
        }
        return Math.abs(hand - tether) < 1e-9
                ? "rose"
                : slow.cusped()
                        ? turns > 0 ? "epicycloid" : "hypocycloid"
                        : turns > 0 ? "epitrochoid" : "hypotrochoid";
    }
}
