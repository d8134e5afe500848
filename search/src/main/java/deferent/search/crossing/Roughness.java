package deferent.search.crossing;

import deferent.motion.pairing.Gravity;

/**
 * How rough it is to pass: the least extra acceleration that takes up a step of place Δp and a step
 * of velocity Δv within a time T.
 *
 * <p>Before the crossing a point has the acceleration its old motion asks for, after it the one its
 * new motion asks for; let u(τ), −T/2 ≤ τ ≤ T/2, be what is added. To arrive in place and in step
 *
 * <pre>  ∫u dτ = Δv,    ∫τ·u dτ = −Δp. </pre>
 *
 * Among all such u the one of least ∫|u|² lies in the span of the two functions 1 and τ that the
 * conditions test it with (projection theorem; Luenberger, Optimization by Vector Space Methods,
 * 1969, section 3.10): u = Δv/T − 12·Δp·τ/T³. The two are orthogonal, so its root mean square is
 *
 * <pre>  √(|Δv|²/T² + 12·|Δp|²/T⁴), </pre>
 *
 * and no blend whatever has less. The least peak along one line, by the bang-bang solution, is
 * 2·(|Δp| + √(Δp² + T²Δv²/4))/T² (Bryson and Ho, Applied Optimal Control, 1975, section 3.9, solved
 * for the bound): {@link #leastPeak}.
 *
 * @param hands greatest of the hands' in weights
 * @param heads greatest of the heads' in weights; what the pull in the tether has to add
 */
public record Roughness(double hands, double heads) {
    /** The greater of the two, by which crossings are ranked. */
    public double weights() {
        return Math.max(hands, heads);
    }

    /**
     * Root mean square of the least extra acceleration, weights.
     *
     * @param place |Δp|, metres
     * @param speed |Δv|, metres a second
     * @param blend T, seconds
     */
    public static double least(double place, double speed, double blend) {
        double offset = place / (blend * blend);
        double step = speed / blend;
        return Math.sqrt(step * step + 12 * offset * offset) / Gravity.STANDARD;
    }

    /**
     * Least peak of the extra acceleration where both steps lie along one line, weights; never less
     * than {@link #least}.
     */
    public static double leastPeak(double place, double speed, double blend) {
        double half = blend * speed / 2;
        return 2
                * (place + Math.sqrt(place * place + half * half))
                / (blend * blend)
                / Gravity.STANDARD;
    }
}
