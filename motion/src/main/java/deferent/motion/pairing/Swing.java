package deferent.motion.pairing;

import java.util.List;
import java.util.function.Function;
import org.hipparchus.special.elliptic.jacobi.CopolarN;
import org.hipparchus.special.elliptic.jacobi.JacobiElliptic;
import org.hipparchus.special.elliptic.jacobi.JacobiEllipticBuilder;
import org.hipparchus.special.elliptic.legendre.LegendreEllipticIntegral;

/**
 * A pendulum's swing about {@code rest}, in its own uneven time: the angle from rest is
 * 2·asin(k·sn(4K·phase − K, k)) with k = sin(amplitude/2), so the cycle starts at the end of lower
 * angle and goes the positive way first. Source: DLMF 22.19(i).
 *
 * @param amplitude from rest to either end, radians, above 0 and below π; past π/2 a cord goes
 *     slack before the end, so it takes a rod
 * @param rest where the swing hangs, radians; −π/2 is straight down in an upright plane
 */
public record Swing(double amplitude, double rest) implements SpinLaw {
    public static final double DOWN = -Math.PI / 2;

    public Swing {
        Refusal.positive(amplitude, 0.9999 * Math.PI, "amplitude of a pendulum", "rad");
        Refusal.angle(rest, "rest of a pendulum");
    }

    /**
     * Whether a cord would go slack before the end of the swing: past a quarter turn, pull
     * cos(amplitude) &lt; 0.
     */
    public boolean needsRod() {
        return amplitude > Math.PI / 2 + 1e-12;
    }

    /**
     * Seconds for one swing out and back about a still hand: 4K(k)·√(tether/gravity). DLMF
     * 22.19(i).
     */
    public double period(double tether, double gravity) {
        double k = Math.sin(amplitude / 2);
        return 4 * LegendreEllipticIntegral.bigK(k * k) * Math.sqrt(tether / gravity);
    }

    @Override
    public Course course() {
        double k = Math.sin(amplitude / 2);
        JacobiElliptic jacobi = JacobiEllipticBuilder.build(k * k);
        double quarter = LegendreEllipticIntegral.bigK(k * k);
        return phase -> {
            CopolarN n = jacobi.valuesN(4 * quarter * (phase - Math.rint(phase)) - quarter);
            double angle = 2 * Math.asin(k * n.sn());
            double speed = 2 * k * n.cn();
            Jet inOwnTime = new Jet(angle, speed, -Math.sin(angle), -Math.cos(angle) * speed);
            return inOwnTime.atRate(4 * quarter).plus(rest);
        };
    }

    @Override
    public List<Break> breaks() {
        return List.of();
    }

    @Override
    public int turns() {
        return 0;
    }

    @Override
    public <T> T match(
            Function<Turns, T> even, Function<Stretches, T> inStretches, Function<Swing, T> swing) {
        return swing.apply(this);
    }

    @Override
    public Swing turned(double angle) {
        return new Swing(amplitude, rest + angle);
    }
}
