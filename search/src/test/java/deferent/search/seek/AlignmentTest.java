package deferent.search.seek;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class AlignmentTest {
    private static SeriesCurve any(Random dice, int terms) {
        int[] k = new int[terms];
        double[] re = new double[terms];
        double[] im = new double[terms];
        int at = -5 + dice.nextInt(3);
        for (int i = 0; i < terms; i++) {
            at += 1 + dice.nextInt(2);
            k[i] = at;
            re[i] = dice.nextGaussian();
            im[i] = dice.nextGaussian();
        }
        return SeriesCurve.of(k, re, im, terms, 0);
    }

    private static SeriesCurve moved(SeriesCurve curve, double turn, double lag, boolean mirrored) {
        int n = curve.terms();
        int[] k = new int[n];
        double[] re = new double[n];
        double[] im = new double[n];
        for (int i = 0; i < n; i++) {
            int from = mirrored ? n - 1 - i : i;
            k[i] = mirrored ? -curve.k(from) : curve.k(from);
            double angle = mirrored ? -curve.angle(from) : curve.angle(from);
            angle += turn + 2 * Math.PI * k[i] * lag;
            re[i] = curve.modulus(from) * Math.cos(angle);
            im[i] = curve.modulus(from) * Math.sin(angle);
        }
        return SeriesCurve.of(k, re, im, n, 0);
    }

    @Test
    void aPathTurnedMirroredAndLaggingIsTheSamePath() {
        Random dice = new Random(4);
        for (int i = 0; i < 300; i++) {
            SeriesCurve a = any(dice, 1 + i % 6);
            SeriesCurve b = moved(a, dice.nextDouble() * 6, dice.nextDouble(), i % 2 == 0);
            assertThat(Alignment.gap(a, b)).isLessThan(1e-6);
            assertThat(Alignment.same(a, b, 1e-6)).isTrue();
            assertThat(Signature.of(a)).isEqualTo(Signature.of(b));
            assertThat(Descriptor.distance(Descriptor.of(a), Descriptor.of(b))).isLessThan(1e-9);
        }
    }

    @Test
    void layingTheHandPathByTheBestAlignmentLeavesJustTheGap() {
        Random dice = new Random(5);
        for (int i = 0; i < 200; i++) {
            SeriesCurve head = any(dice, 1 + i % 5);
            SeriesCurve hand = any(dice, 1 + (i / 5) % 5);
            Alignment laid = Alignment.best(head, hand);
            double[] a = new double[2];
            double[] b = new double[2];
            double sum = 0;
            for (int s = 0; s < 200; s++) {
                head.at(s / 200.0, a);
                hand.at(s / 200.0 + laid.lag(), b);
                double v = laid.mirrored() ? -b[1] : b[1];
                double c = Math.cos(laid.turn());
                double d = Math.sin(laid.turn());
                sum += Math.pow(a[0] - (c * b[0] - d * v), 2);
                sum += Math.pow(a[1] - (d * b[0] + c * v), 2);
            }
            assertThat(Math.sqrt(sum / 200)).isCloseTo(laid.gap(), within(1e-6));
        }
    }

    @Test
    void theGapIsTheLeastOverEveryTurnMirrorAndLag() {
        Random dice = new Random(6);
        for (int i = 0; i < 200; i++) {
            SeriesCurve head = any(dice, 1 + i % 5);
            SeriesCurve hand = any(dice, 1 + (i / 5) % 5);
            double slow = Sampled.gap(Sampled.points(head, 720), Sampled.points(hand, 720));
            assertThat(Alignment.gap(head, hand))
                    .isLessThan(slow + 1e-9)
                    .isGreaterThan(slow - 2e-2);
        }
    }

    @Test
    void neitherModuliNorDescriptorsAreEverFurtherApartThanThePaths() {
        Random dice = new Random(7);
        for (int i = 0; i < 2000; i++) {
            SeriesCurve head = any(dice, 1 + i % 6);
            SeriesCurve hand = any(dice, 1 + (i / 6) % 6);
            double gap = Alignment.gap(head, hand);
            double moduli = Alignment.leastGap(head, hand);
            assertThat(moduli).isLessThan(gap + 1e-9);
            assertThat(Descriptor.distance(Descriptor.of(head), Descriptor.of(hand)))
                    .isLessThan(moduli + 1e-9);
        }
    }
}
