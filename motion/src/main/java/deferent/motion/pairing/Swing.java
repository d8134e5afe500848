package deferent.motion.pairing;

import java.util.List;
import java.util.function.Function;
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

    private static final double LEAST_TERM = 1e-18;

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

    /**
     * The tether with which one swing out and back takes so many seconds, metres: {@link #period}
     * the other way.
     */
    public double tether(double period, double gravity) {
        double k = Math.sin(amplitude / 2);
        double unit = 4 * LegendreEllipticIntegral.bigK(k * k);
        return gravity * Math.pow(period / unit, 2);
    }

    @Override
    public Course course() {
        double m = Math.pow(Math.sin(amplitude / 2), 2);
        double quarter = LegendreEllipticIntegral.bigK(m);
        double[][] series = series(quarter, LegendreEllipticIntegral.nome(m));
        return phase -> {
            double x = 2 * Math.PI * (phase - Math.rint(phase));
            double half = 0;
            double speed = 0;
            double c = Math.cos(x);
            double s = Math.sin(x);
            double cosStep = c * c - s * s;
            double sinStep = 2 * s * c;
            for (int n = 0; n < series[0].length; n++) {
                half -= series[0][n] * c;
                speed += series[1][n] * s;
                double next = c * cosStep - s * sinStep;
                s = s * cosStep + c * sinStep;
                c = next;
            }
            double angle = 2 * Math.asin(half);
            Jet inOwnTime = new Jet(angle, speed, -Math.sin(angle), -Math.cos(angle) * speed);
            return inOwnTime.atRate(4 * quarter).plus(rest);
        };
    }

    /**
     * The series of k·sn and 2k·cn in odd multiples of the phase, from the lower end: powers of the
     * nome q, so a dozen terms at a quarter turn and some ninety at most. Source: DLMF 22.11.1 and
     * 22.11.2. Our own because the library's functions work out the same numbers a moment at a
     * time, some four times slower.
     */
    private static double[][] series(double quarter, double q) {
        int terms = (int) Math.ceil(Math.log(LEAST_TERM) / Math.log(q));
        double[][] series = new double[2][terms];
        for (int n = 0; n < terms; n++) {
            double sign = n % 2 == 0 ? 1 : -1;
            double term = sign * 2 * Math.PI / quarter * Math.pow(q, n + 0.5);
            double odd = Math.pow(q, 2 * n + 1);
            series[0][n] = term / (1 - odd);
            series[1][n] = 2 * term / (1 + odd);
        }
        return series;
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
