package deferent.search.seek;

import java.util.Arrays;

/**
 * A number that is the same for curves which are one another after a turn, a shift, a mirror and a
 * lag, and as good as never for others: moduli to a ten-millionth, read in the mirror image in
 * which the first unlike pair k, −k has the longer term at k; and of the three longest terms the
 * one angle that turn and lag leave, (k2−k3)·θ1 + (k3−k1)·θ2 + (k1−k2)·θ3 over the common divisor
 * of its factors.
 *
 * <p>Rounding may part two equal curves once in many millions; they are then two classes with the
 * same answers, and nothing is lost. Unlike curves with one signature are told apart by comparing
 * them.
 */
final class Signature {
    static final double STEP = 1e-7;

    private Signature() {}

    static long of(SeriesCurve curve) {
        int way = way(curve);
        long hash = 0x9E3779B97F4A7C15L;
        int count = curve.terms();
        for (int i = 0; i < count; i++) {
            int at = way < 0 ? count - 1 - i : i;
            long size = Math.round(curve.modulus(at) / STEP);
            if (size != 0) {
                hash = mix(mix(hash, (long) (way < 0 ? -1 : 1) * curve.k(at)), size);
            }
        }
        if (count == 3 || count > 3 && way != 0) {
            double angle = free(curve, longest(curve, way));
            angle = way == 0 ? Math.abs(angle) : way * angle;
            // just short of half a turn and just past it are one angle
            long step = Math.round(angle / 1e-5);
            long half = Math.round(Math.PI / 1e-5);
            hash = mix(hash, Math.abs(Math.abs(step) - half) <= 1 ? half : step);
        }
        return hash;
    }

    /**
     * The three longest terms, by rising k; of equals the ones of lower k in the chosen mirror
     * image.
     */
    private static int[] longest(SeriesCurve curve, int way) {
        int count = curve.terms();
        int[] three = {-1, -1, -1};
        for (int round = 0; round < 3; round++) {
            long most = -1;
            for (int i = 0; i < count; i++) {
                int at = way < 0 ? count - 1 - i : i;
                long size = Math.round(curve.modulus(at) / STEP);
                if (size > most && at != three[0] && at != three[1]) {
                    most = size;
                    three[round] = at;
                }
            }
        }
        Arrays.sort(three);
        return three;
    }

    /** 1 as it is, −1 mirrored, 0 where both have the same moduli. */
    private static int way(SeriesCurve curve) {
        for (int k = 1; k <= SeriesCurve.WIDEST; k++) {
            int there = curve.find(k);
            int back = curve.find(-k);
            double off =
                    (there < 0 ? 0 : curve.modulus(there)) - (back < 0 ? 0 : curve.modulus(back));
            if (Math.abs(off) > STEP) {
                return off > 0 ? 1 : -1;
            }
        }
        return 0;
    }

    private static double free(SeriesCurve c, int[] at) {
        int f1 = c.k(at[1]) - c.k(at[2]);
        int f2 = c.k(at[2]) - c.k(at[0]);
        int f3 = c.k(at[0]) - c.k(at[1]);
        int common = SeriesCurve.gcd(SeriesCurve.gcd(f1, f2), f3);
        double angle =
                Math.floorDiv(f1, common) * c.angle(at[0])
                        + Math.floorDiv(f2, common) * c.angle(at[1])
                        + Math.floorDiv(f3, common) * c.angle(at[2]);
        return Math.IEEEremainder(angle, 2 * Math.PI);
    }

    private static long mix(long hash, long value) {
        long h = (hash ^ value) * 0xFF51AFD7ED558CCDL;
        h ^= h >>> 32;
        h *= 0xC4CEB9FE1A85EC53L;
        return h ^ (h >>> 29);
    }
}
