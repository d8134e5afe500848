package deferent.reading.link;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Lowest;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Whether the two hands go one and the same path in a mirror, the one some time after the other:
 * what binds the hands of a weave, where no head leads a hand.
 *
 * <p>The mirror stands upright, front to back, through the middle of the body; nothing else is
 * moved. The lag is the one with which the mean squared distance between the right hand and the
 * left one's image is least, sought on even samples and narrowed by golden section.
 *
 * @param gap how far the right hand is at most from where the mirror shows the left one that much
 *     earlier, metres
 * @param lag by how many common cycles the right hand is later, in [−0.5, 0.5)
 */
public record MirroredHands(double gap, double lag) {
    private static final int SAMPLES = 240;
    private static final int STEPS = 30;

    public MirroredHands {
        Refusal.numbers("hands in a mirror", gap, lag);
    }

    /** Of a periodic trace in which a hand passes from one side of the body to the other. */
    public static Optional<MirroredHands> of(Trace trace) {
        boolean weaves =
                trace.pairing().left().motion().weave().isPresent()
                        && trace.pairing().right().motion().weave().isPresent();
        return weaves && trace.periodic() ? Optional.of(compared(trace)) : Optional.empty();
    }

    private static MirroredHands compared(Trace trace) {
        Samples samples = trace.samples(SAMPLES);
        double[] left = samples.hand(Side.LEFT);
        double[] right = samples.hand(Side.RIGHT);
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int shift = 0; shift < SAMPLES; shift++) {
            double sum = 0;
            for (int i = 0; i < SAMPLES; i++) {
                int a = 3 * i;
                int b = 3 * ((i + shift) % SAMPLES);
                double dx = right[b] + left[a];
                double dy = right[b + 1] - left[a + 1];
                double dz = right[b + 2] - left[a + 2];
                sum += dx * dx + dy * dy + dz * dz;
            }
            // Of lags that are as good, as two cycles in a common one have, the least.
            if (sum < least - 1e-12) {
                least = sum;
                best = shift;
            }
        }
        double step = trace.period() / SAMPLES;
        double later =
                Lowest.within(t -> apart(trace, t)[0], (best - 1) * step, (best + 1) * step, STEPS)
                        .at();
        double lag = later / trace.period();
        return new MirroredHands(apart(trace, later)[1], lag - Math.floor(lag + 0.5));
    }

    // Mean squared and greatest distance of the right hand, so much later, from the left's image.
    private static double[] apart(Trace trace, double later) {
        Course left = trace.hand(Side.LEFT);
        Course right = trace.hand(Side.RIGHT);
        double sum = 0;
        double most = 0;
        for (int i = 0; i < SAMPLES; i++) {
            double time = trace.interval().start() + trace.period() * i / SAMPLES;
            Vector3D a = left.position(time);
            Vector3D b = right.position(time + later);
            double d = new Vector3D(-a.getX(), a.getY(), a.getZ()).distance(b);
            sum += d * d;
            most = Math.max(most, d);
        }
        return new double[] {sum / SAMPLES, most};
    }
}
