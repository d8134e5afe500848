package deferent.film.hand;

import deferent.film.cycle.Cycle;
import deferent.film.cycle.Sights;
import deferent.film.cycle.Wave;
import deferent.film.light.LitSpot;
import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.special.elliptic.legendre.LegendreEllipticIntegral;

/**
 * A poi, or any bob, that swings freely from a still hand, read from its film alone: gravity gives
 * the metres. Its period is that of a pendulum, T = 2π·√(L/g)·(2/π)·K(sin(a/2)) (DLMF 19.2(ii),
 * 22.19(i)), and its amplitude a needs no scale: an arc whose middle lies h from the chord between
 * its ends, that chord 2w long, has tan(a/2) = h/w, however the camera leans. So L follows, and a
 * pixel is L over the arc's radius in pixels. Where a hand moves no such thing holds, and gravity
 * says nothing of the scale.
 *
 * <p>The length is that to the bob's centre of swing: for a ball of radius r on a light cord it
 * lies 2r²/(5L) below its middle, which for poi is less than half a percent of the length.
 *
 * <p>Air that takes k·v² of a bob of mass m takes of its energy over a swing ∫k·|v|³dt =
 * (8/3)·k·ω²·L³·a³ for the small swing v = ωLa·cos ωt, whose energy is m·ω²·L²·a²/2; so a share
 * (8/3)·(k/m)·L·a of the amplitude is lost each swing (worked out here).
 *
 * @param period seconds
 * @param amplitude radians to either side, over the film's mean swing
 * @param length metres, from the hand to the bob
 * @param lengthError standard deviation, metres
 * @param metres a pixel
 * @param metresError standard deviation, as a share: of a small swing the arc's radius is hardly
 *     seen
 * @param lost share of its amplitude that it loses each swing, to and fro
 * @param lostError standard deviation of that share
 */
public record FreeSwing(
        double period,
        double amplitude,
        double length,
        double lengthError,
        double metres,
        double metresError,
        double lost,
        double lostError) {
    private static final int LEAST = 24;
    private static final int MOMENTS = 400;
    // Above a quarter turn a cord goes slack before the swing's end.
    private static final double MOST = Math.toRadians(95);
    // How far the period of a swing that dies away may be off, as a share (our choice).
    private static final double PERIOD_ERROR = 0.002;
    private static final double SCATTERED = 0.35; // of half the chord, more than a swing scatters
    private static final int LEAST_SWINGS = 3;

    /**
     * Of the spots of each frame, what stands still left out; of several that move the one that
     * goes most evenly is taken.
     *
     * @throws Refusal where nothing swings freely
     */
    public static FreeSwing of(List<List<LitSpot>> frames) {
        Sights sights = Sights.of(SwingingSpot.of(frames));
        if (sights.count() < LEAST) {
            throw new Refusal("shows nothing that swings", "the film", "film one poi as it swings");
        }
        // Somebody who lets it go, or catches it, is seen at one end of many a film.
        double from = sights.times()[0];
        double lasts = sights.times()[sights.count() - 1] - from;
        Optional<Arc> best = Optional.empty();
        for (double[] part : new double[][] {{0, 1}, {0.25, 1}, {0, 0.75}, {0.2, 0.8}, {0.5, 1}}) {
            Sights cut = sights.between(from + part[0] * lasts, from + part[1] * lasts + 1e-9);
            if (cut.count() >= LEAST) {
                Arc arc = Arc.of(cut);
                boolean whole = arc.swings() >= LEAST_SWINGS;
                if (whole && best.map(b -> arc.scattered() < 0.7 * b.scattered()).orElse(true)) {
                    best = Optional.of(arc);
                }
            }
        }
        return of(
                best.orElseThrow(
                        () ->
                                new Refusal(
                                        "does not swing to and fro three times",
                                        "what moves in the film",
                                        "film a bob for six swings or more")));
    }

    private static FreeSwing of(Arc arc) {
        double amplitude = 2 * Math.atan2(arc.sagitta(), arc.half());
        if (arc.scattered() > SCATTERED || amplitude > MOST || arc.open() > 0.5) {
            throw new Refusal(
                    "does not swing to and fro below a still hand",
                    "the light in the film",
                    "let one poi hang and swing freely");
        }
        double ratio = slower(amplitude);
        double length = length(arc.wave().period(), ratio);
        double radius = arc.half() / Math.sin(amplitude);
        double off = arc.wave().error(0, 0) + 0.05;
        double amplitudeOff = 2 * off / arc.half();
        double lengthOff =
                length * (2 * PERIOD_ERROR + 2 * (slower(amplitude + amplitudeOff) / ratio - 1));
        double[] lost = arc.lost();
        return new FreeSwing(
                arc.wave().period(),
                amplitude,
                length,
                lengthOff,
                length / radius,
                Math.hypot(lengthOff / length, amplitudeOff / Math.max(1e-3, amplitude)),
                lost[0],
                lost[1]);
    }

    /** How much of its speed squared the air takes, k over the bob's mass, a metre. */
    public double dragOverMass() {
        return Math.max(0, 3 * lost / (8 * length * amplitude));
    }

    /**
     * What a spot does that swings.
     *
     * @param wave its mean swing, pixels
     * @param half of the chord between its ends, pixels
     * @param sagitta from the chord to the arc's middle, pixels
     * @param open how far the way forth lies from the way back, of the sagitta and the half chord
     * @param sights of it
     * @param along the chord's direction, across and down
     */
    private record Arc(
            Wave wave, double half, double sagitta, double open, Sights sights, double[] along) {
        static Arc of(Sights sights) {
            Wave wave = Cycle.of(sights).wave();
            double[][] at = new double[MOMENTS][];
            int a = 0;
            int b = 0;
            for (int i = 0; i < MOMENTS; i++) {
                at[i] = wave.at(wave.period() * i / MOMENTS)[0];
            }
            double far = 0;
            for (int i = 0; i < MOMENTS; i++) {
                for (int j = 0; j < i; j++) {
                    double d = Math.hypot(at[i][0] - at[j][0], at[i][1] - at[j][1]);
                    if (d > far) {
                        far = d;
                        a = i;
                        b = j;
                    }
                }
            }
            double ux = (at[a][0] - at[b][0]) / Math.max(1e-9, far);
            double uy = (at[a][1] - at[b][1]) / Math.max(1e-9, far);
            double[] most = new double[2]; // of the way forth, and of the way back
            for (int i = 0; i < MOMENTS; i++) {
                double below = (at[i][1] - at[b][1]) * ux - (at[i][0] - at[b][0]) * uy;
                int way = i > b && i < a ? 0 : 1;
                most[way] = Math.abs(below) > Math.abs(most[way]) ? below : most[way];
            }
            return new Arc(
                    wave,
                    far / 2,
                    Math.abs(most[0] + most[1]) / 2,
                    Math.abs(most[0] - most[1]) / Math.max(1e-9, far),
                    sights,
                    new double[] {ux, uy});
        }

        double scattered() {
            return wave.scatter() / Math.max(1e-9, half);
        }

        double swings() {
            return (sights.times()[sights.count() - 1] - sights.times()[0]) / wave.period();
        }

        // The share of the amplitude lost each swing, and its error: along the chord one turn is
        // fitted to each swing, and a straight line to the logarithms of their sizes.
        double[] lost() {
            int n = (int) swings();
            List<double[]> sizes = new ArrayList<>();
            double rate = 2 * Math.PI / wave.period();
            for (int k = 0; k < n; k++) {
                double from = sights.times()[0] + k * wave.period();
                Sights one = sights.between(from, from + wave.period());
                if (one.count() < 8) {
                    continue;
                }
                double[][] rows = new double[one.count()][];
                double[] seen = new double[one.count()];
                for (int i = 0; i < rows.length; i++) {
                    double t = rate * one.times()[i];
                    rows[i] = new double[] {1, Math.cos(t), Math.sin(t)};
                    seen[i] = one.x()[i] * along[0] + one.y()[i] * along[1];
                }
                DecompositionSolver solver =
                        new QRDecomposition(new Array2DRowRealMatrix(rows, false), 1e-9)
                                .getSolver();
                if (solver.isNonSingular()) {
                    double[] c = solver.solve(new ArrayRealVector(seen, false)).toArray();
                    sizes.add(new double[] {k, Math.log(Math.max(1e-9, Math.hypot(c[1], c[2])))});
                }
            }
            return sizes.size() < LEAST_SWINGS ? new double[] {0, 1} : falls(sizes);
        }

        // By how much a straight line falls from swing to swing, and its standard deviation.
        private static double[] falls(List<double[]> sizes) {
            double mk = sizes.stream().mapToDouble(s -> s[0]).average().orElse(0);
            double ms = sizes.stream().mapToDouble(s -> s[1]).average().orElse(0);
            double kk = 0;
            double ks = 0;
            double ss = 0;
            for (double[] s : sizes) {
                kk += (s[0] - mk) * (s[0] - mk);
                ks += (s[0] - mk) * (s[1] - ms);
                ss += (s[1] - ms) * (s[1] - ms);
            }
            double slope = ks / kk;
            double left = Math.max(0, ss - slope * ks) / Math.max(1, sizes.size() - 2);
            return new double[] {1 - Math.exp(slope), Math.sqrt(left / kk)};
        }
    }

    private static double length(double period, double ratio) {
        double slow = period / (2 * Math.PI * ratio);
        return Gravity.STANDARD * slow * slow;
    }

    /** Period over that of a small swing. */
    static double slower(double amplitude) {
        double k = Math.sin(amplitude / 2);
        return LegendreEllipticIntegral.bigK(k * k) * 2 / Math.PI;
    }
}
