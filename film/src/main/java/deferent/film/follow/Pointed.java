package deferent.film.follow;

import deferent.film.light.LitSpot;
import deferent.motion.pairing.Refusal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Two heads that somebody pointed at: the spots they are, and what else may be one of them.
 *
 * @param one the spot pointed at first
 * @param other the other
 * @param at frame of the first
 * @param otherAt frame of the other
 */
record Pointed(LitSpot one, LitSpot other, int at, int otherAt) {
    private static final double REACH = 0.06; // of what the spots draw, from a click to its spot
    private static final double LEAST_REACH = 25; // pixels
    private static final double NEAR = 0.12; // seconds from a click to its frame
    private static final double TINTED = 14; // of a colour's 128, within which it is the same
    private static final double LIKE = 0.45; // of its own saturation, likewise
    private static final double SIZES = 9; // times as bright on the whole, or as little

    /**
     * Of the spots of each frame.
     *
     * @throws Refusal where nothing is seen at a place pointed at
     */
    static Pointed of(List<List<LitSpot>> frames, HeadAt one, HeadAt other) {
        int[] a = find(frames, one);
        int[] b = find(frames, other);
        LitSpot first = frames.get(a[0]).get(a[1]);
        LitSpot second = frames.get(b[0]).get(b[1]);
        if (first.equals(second)) {
            throw new Refusal(
                    "are one light",
                    "both heads that are pointed at",
                    "point at them in a frame in which they are apart");
        }
        return new Pointed(first, second, a[0], b[0]);
    }

    private static int[] find(List<List<LitSpot>> frames, HeadAt head) {
        double reach = Math.max(LEAST_REACH, REACH * Follower.size(frames));
        int[] best = {-1, -1};
        double least = reach;
        for (int i = 0; i < frames.size(); i++) {
            List<LitSpot> spots = frames.get(i);
            for (int k = 0; k < spots.size(); k++) {
                LitSpot spot = spots.get(k);
                double late = Math.abs(spot.time() - head.time());
                double away =
                        Math.hypot(spot.x() - head.x(), spot.y() - head.y())
                                + late / NEAR * LEAST_REACH;
                if (late < NEAR && away < least) {
                    least = away;
                    best = new int[] {i, k};
                }
            }
        }
        if (best[0] < 0) {
            throw new Refusal(
                    "shows nothing that moves",
                    String.format(
                            Locale.ROOT,
                            "the film at %.2f s, %.0f pixels across and %.0f down",
                            head.time(),
                            head.x(),
                            head.y()),
                    "point at the middle of a head");
        }
        return best;
    }

    /** The frames with nothing in them but what may be one of both. */
    List<List<LitSpot>> alike(List<List<LitSpot>> frames) {
        List<List<LitSpot>> kept = new ArrayList<>();
        for (List<LitSpot> spots : frames) {
            kept.add(spots.stream().filter(s -> like(s, one) || like(s, other)).toList());
        }
        return kept;
    }

    private static boolean like(LitSpot spot, LitSpot head) {
        double off = Math.hypot(spot.blue() - head.blue(), spot.red() - head.red());
        double larger = spot.glow() / head.glow();
        return off < Math.max(TINTED, LIKE * Math.hypot(head.blue(), head.red()))
                && larger < SIZES
                && larger > 1 / SIZES;
    }

    /** The frames the other way round, as a film run backward. */
    static List<List<LitSpot>> backward(List<List<LitSpot>> frames) {
        List<List<LitSpot>> turned = new ArrayList<>();
        for (List<LitSpot> spots : frames) {
            turned.add(spots.stream().map(Pointed::backward).toList());
        }
        Collections.reverse(turned);
        return turned;
    }

    static @Nullable LitSpot backward(@Nullable LitSpot s) {
        return s == null ? null : s.at(-s.time());
    }
}
