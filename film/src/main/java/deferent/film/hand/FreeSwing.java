package deferent.film.hand;

import deferent.film.cycle.Cycle;
import deferent.film.cycle.Sights;
import deferent.film.cycle.Wave;
import deferent.film.light.LitSpot;
import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Refusal;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.special.elliptic.legendre.LegendreEllipticIntegral;
import org.jspecify.annotations.Nullable;

/**
 * A poi that swings freely from a still hand, read from its film alone: gravity gives the metres.
 * Its period is that of a pendulum, T = 2π·√(L/g)·(2/π)·K(sin(a/2)) (DLMF 19.2(ii), 22.19(i)), and
 * its amplitude a needs no scale: an arc as high as h and as wide as w on either side has tan(a/2)
 * = h/w. So L follows, and a pixel is L over the arc's radius in pixels. Where a hand moves no such
 * thing holds, and gravity says nothing of the scale.
 *
 * <p>The length is that to the head's centre of swing: for a ball of radius r on a light cord it
 * lies 2r²/(5L) below its middle, which for poi is less than half a percent of the length.
 *
 * @param period seconds
 * @param amplitude radians to either side
 * @param length metres, from the hand to the head
 * @param lengthError standard deviation, metres
 * @param metres a pixel
 * @param metresError standard deviation, as a share: of a small swing the arc's radius is hardly
 *     seen
 */
public record FreeSwing(
        double period,
        double amplitude,
        double length,
        double lengthError,
        double metres,
        double metresError) {
    private static final int LEAST = 24;
    private static final int MOMENTS = 400;
    // Above a quarter turn a cord goes slack before the swing's end.
    private static final double MOST = Math.toRadians(95);
    // How far the period of a swing that dies away may be off, as a share (our choice).
    private static final double PERIOD_ERROR = 0.002;

    /**
     * Of the spots of each frame, lamps left out; the brightest is taken for the head.
     *
     * @throws Refusal where nothing swings freely
     */
    public static FreeSwing of(List<List<LitSpot>> frames) {
        List<@Nullable LitSpot> head = frames.stream().map(FreeSwing::brightest).toList();
        Sights sights = Sights.of(head);
        if (sights.count() < LEAST) {
            throw new Refusal(
                    "shows no light that swings", "the film", "film one poi as it swings");
        }
        Wave wave = Cycle.of(sights).wave();
        double[] sides = new double[] {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
        double[] heights = sides.clone();
        for (int i = 0; i < MOMENTS; i++) {
            double[] at = wave.at(wave.period() * i / MOMENTS)[0];
            sides[0] = Math.min(sides[0], at[0]);
            sides[1] = Math.max(sides[1], at[0]);
            heights[0] = Math.min(heights[0], at[1]);
            heights[1] = Math.max(heights[1], at[1]);
        }
        double wide = (sides[1] - sides[0]) / 2;
        double high = heights[1] - heights[0];
        double amplitude = 2 * Math.atan2(high, wide);
        if (wide < 3 * wave.scatter() || amplitude > MOST) {
            throw new Refusal(
                    "does not swing to and fro below a still hand",
                    "the light in the film",
                    "let one poi hang and swing freely");
        }
        double ratio = slower(amplitude);
        double length = length(wave.period(), ratio);
        double radius = wide / Math.sin(amplitude);
        double off = wave.error(0, 0) + 0.05;
        double amplitudeOff = 2 * off / wide;
        double lengthOff =
                length * (2 * PERIOD_ERROR + 2 * (slower(amplitude + amplitudeOff) / ratio - 1));
        return new FreeSwing(
                wave.period(),
                amplitude,
                length,
                lengthOff,
                length / radius,
                Math.hypot(lengthOff / length, amplitudeOff / Math.max(1e-3, amplitude)));
    }

    private static @Nullable LitSpot brightest(List<LitSpot> spots) {
        return spots.stream().max(Comparator.comparingDouble(LitSpot::glow)).orElse(null);
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
