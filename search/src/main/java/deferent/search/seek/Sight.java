package deferent.search.seek;

import deferent.motion.pairing.SpinLaw;
import java.util.Locale;

/**
 * What is seen of one motion of a space at a glance: how large its figure is, how often it looks
 * the same when turned, and how simple it is to say.
 */
final class Sight {
    private static final int LOOKS = 96;

    private Sight() {}

    /** Greatest distance of the head from its figure's mean, in tethers. */
    static double outerRadius(SeriesCurve head) {
        if (head.terms() <= 2 && head.tail() == 0) {
            double sum = 0;
            for (int i = 0; i < head.terms(); i++) {
                sum += head.modulus(i);
            }
            return sum;
        }
        double most = 0;
        double[] at = new double[2];
        for (int i = 0; i < LOOKS; i++) {
            head.at((double) i / LOOKS, at);
            most = Math.max(most, Math.hypot(at[0], at[1]));
        }
        return most;
    }

    /** The lower, the simpler: still and circling hands, few turns, round sizes, plain starts. */
    static int simplicity(Space space, long key) {
        HandShape hand = space.handShape(key);
        int path =
                switch (hand.kind()) {
                    case STILL -> 0;
                    case CIRCLE -> 2 + 8 * (hand.first() - 1);
                    case ARC -> 12;
                    case PENDULUM_ARC -> 40;
                    case ELLIPSE -> hand.line() ? 14 : 20;
                    case LOOP -> 30;
                };
        SpinLaw law = space.law(key);
        int n = law.turns();
        int turning =
                law.match(
                        even -> n == 1 ? 0 : n == 0 ? 9 : Math.abs(n), stretches -> 25, swing -> 1);
        double start = Math.abs(space.startOf(key));
        boolean quarter = Math.abs(start / (Math.PI / 2) % 1) < 1e-9;
        int starting = start == 0 ? 0 : start == Math.PI ? 1 : quarter ? 4 : 10;
        int sizing = hand.size() % 0.5 == 0 ? 0 : hand.size() * 10 % 1 == 0 ? 3 : 6;
        return path + turning + starting + sizing;
    }

    /** What stays of a motion when its sizes change. */
    static String family(Space space, long key) {
        HandShape hand = space.handShape(key);
        String path =
                switch (hand.kind()) {
                    case STILL -> "still";
                    case CIRCLE -> hand.first() == 1 ? "circle" : "circle x" + hand.first();
                    case ELLIPSE -> hand.line() ? "line" : "ellipse";
                    case LOOP -> "loop " + hand.first() + " " + hand.second();
                    case ARC -> "arc";
                    case PENDULUM_ARC -> "pendulum arc";
                };
        SpinLaw law = space.law(key);
        String turning =
                law.match(
                        even -> "turns " + even.turns(),
                        s ->
                                String.format(
                                        Locale.ROOT,
                                        "%s and %s",
                                        s.stretches().get(0).turns(),
                                        s.stretches().get(1).turns()),
                        swing -> "swing");
        long start = Math.round(Math.toDegrees(space.startOf(key)));
        return path + ", " + turning + (start == 0 ? "" : " from " + start);
    }

    /** The same of a pair. */
    static String family(Space space, long carrier, long rider) {
        return family(space, carrier) + " > " + family(space, rider);
    }

    /** Of some motions the simplest to say, of equals the first. */
    static long simplest(Space space, long[] keys) {
        long best = -1;
        int least = Integer.MAX_VALUE;
        for (long key : keys) {
            int here = simplicity(space, key);
            if (here < least) {
                least = here;
                best = key;
            }
        }
        return best;
    }
}
