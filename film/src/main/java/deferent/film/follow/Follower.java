package deferent.film.follow;

import deferent.film.light.LitSpot;
import deferent.motion.pairing.Refusal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Follows two heads through a film: many ways of giving the spots to them are kept side by side,
 * each with two guesses of where the heads are, and those that explain best what has been seen so
 * far go on (multiple hypotheses: Reid, IEEE Transactions on Automatic Control 24 (1979); here the
 * best of a fixed number). So where two heads cross or one is hidden nothing is settled before it
 * is seen how they come out of it.
 *
 * <p>What a head does is told by its cord: it cannot jump, nor turn sharply. How hard it may jerk
 * comes from the size of the picture the heads draw and the quickest turn a spinner makes.
 */
public final class Follower {
    private static final int WAYS = 40;
    private static final double HIDDEN = 8; // cost of a head that is not seen
    private static final double SHARED = 6; // cost of two heads in one spot
    private static final double UNUSED = 22; // cost of a moving light that is nobody's
    private static final double GATE = 50;
    private static final double QUICKEST = 16; // radians a second
    private static final double LOST = 1e6; // a guess that may be anywhere says nothing

    private final double strength;
    private final Tint tint;

    private Follower(double size, Tint tint) {
        this.tint = tint;
        double jerk = size / 2 * Math.pow(QUICKEST, 3) / 2;
        strength = jerk * jerk / QUICKEST;
    }

    private record Way(
            Guess left,
            Guess right,
            double cost,
            @Nullable LitSpot one,
            @Nullable LitSpot other,
            @Nullable Way before) {}

    /**
     * The two heads' spots frame by frame; which of them is the left hand's is not said.
     *
     * @param frames the spots of each frame, lamps left out
     * @return two lists as long as the frames, null where a head was not seen; empty where no frame
     *     holds two lights
     */
    public static List<List<@Nullable LitSpot>> follow(List<List<LitSpot>> frames) {
        double size = size(frames);
        int first = 0;
        while (first < frames.size() && frames.get(first).size() < 2) {
            first++;
        }
        if (first == frames.size()) {
            return List.of();
        }
        Follower follower = new Follower(size, Tint.of(frames));
        List<Way> ways = follower.begin(frames.get(first));
        for (int i = first + 1; i < frames.size(); i++) {
            ways = follower.on(ways, frames.get(i));
        }
        List<List<@Nullable LitSpot>> all = new ArrayList<>();
        for (List<@Nullable LitSpot> seen : spots(ways.get(0))) {
            List<@Nullable LitSpot> head = new ArrayList<>(Collections.nCopies(first, null));
            head.addAll(seen);
            all.add(head);
        }
        return all;
    }

    /**
     * The spots without those that are unlike both heads that somebody pointed at, in colour or
     * brightness.
     *
     * @throws deferent.motion.pairing.Refusal where nothing is seen at a place pointed at
     */
    public static List<List<LitSpot>> alike(List<List<LitSpot>> frames, HeadAt one, HeadAt other) {
        return Pointed.of(frames, one, other).alike(frames);
    }

    /**
     * The same from two heads that somebody pointed at, forward and backward. The head pointed at
     * first comes first.
     *
     * @throws deferent.motion.pairing.Refusal where nothing is seen at a place pointed at
     */
    public static List<List<@Nullable LitSpot>> follow(
            List<List<LitSpot>> frames, HeadAt one, HeadAt other) {
        Pointed pointed = Pointed.of(frames, one, other);
        if (pointed.at() > pointed.otherAt()) {
            List<List<@Nullable LitSpot>> turned = follow(frames, other, one);
            return List.of(turned.get(1), turned.get(0));
        }
        Tint tint = Tint.of(frames).turned(pointed.one(), pointed.other());
        Follower follower = new Follower(size(frames), tint);
        List<List<LitSpot>> after = frames.subList(pointed.at(), frames.size());
        List<Way> begun = new ArrayList<>();
        for (LitSpot spot :
                pointed.at() == pointed.otherAt() ? List.of(pointed.other()) : after.get(0)) {
            if (!spot.equals(pointed.one())) {
                begun.add(follower.way(pointed.one(), spot, 0));
            }
        }
        if (begun.isEmpty()) {
            throw new Refusal(
                    "is not seen where the other is pointed at",
                    "the head that is pointed at later",
                    "point at both in one frame");
        }
        Way end = follower.through(begun, after, pointed.otherAt() - pointed.at(), pointed.other());
        List<List<@Nullable LitSpot>> heads = spots(end);
        LitSpot met = heads.get(1).get(0);
        List<List<LitSpot>> before = Pointed.backward(frames.subList(0, pointed.at() + 1));
        Way start =
                follower.way(
                        Objects.requireNonNull(Pointed.backward(pointed.one())),
                        Objects.requireNonNull(Pointed.backward(met)),
                        0);
        Way back = follower.through(List.of(start), before, -1, pointed.other());
        List<List<@Nullable LitSpot>> all = new ArrayList<>();
        List<List<@Nullable LitSpot>> earlier = spots(back);
        for (int h = 0; h < 2; h++) {
            List<@Nullable LitSpot> head = new ArrayList<>();
            List<@Nullable LitSpot> turned = earlier.get(h);
            for (int i = turned.size() - 1; i > 0; i--) {
                head.add(Pointed.backward(turned.get(i)));
            }
            head.addAll(heads.get(h));
            all.add(head);
        }
        return all;
    }

    // The cheapest way through all frames after the first; of those that do not take what was
    // pointed at in its frame for the second head none.
    private Way through(List<Way> begun, List<List<LitSpot>> frames, int pinned, LitSpot pin) {
        List<Way> ways = begun;
        for (int i = 1; i < frames.size(); i++) {
            List<Way> next = on(ways, frames.get(i));
            if (i == pinned) {
                List<Way> kept = next.stream().filter(w -> pin.equals(w.other())).toList();
                next = kept.isEmpty() ? next : kept;
            }
            ways = next;
        }
        return ways.get(0);
    }

    private static List<List<@Nullable LitSpot>> spots(Way end) {
        List<@Nullable LitSpot> one = new ArrayList<>();
        List<@Nullable LitSpot> other = new ArrayList<>();
        for (Way way = end; way != null; way = way.before()) {
            one.add(way.one());
            other.add(way.other());
        }
        Collections.reverse(one);
        Collections.reverse(other);
        return List.of(one, other);
    }

    /** How large the picture is that the spots draw, pixels. */
    static double size(List<List<LitSpot>> frames) {
        double[] xs =
                frames.stream().flatMap(List::stream).mapToDouble(LitSpot::x).sorted().toArray();
        double[] ys =
                frames.stream().flatMap(List::stream).mapToDouble(LitSpot::y).sorted().toArray();
        if (xs.length == 0) {
            return 0;
        }
        int low = xs.length / 50;
        int high = xs.length - 1 - low;
        return Math.max(xs[high] - xs[low], ys[high] - ys[low]);
    }

    private List<Way> begin(List<LitSpot> spots) {
        List<Way> ways = new ArrayList<>();
        int most = Math.min(spots.size(), 6);
        for (int i = 0; i < most; i++) {
            for (int j = i + 1; j < most; j++) {
                boolean turned = tint.side(spots.get(i)) > tint.side(spots.get(j));
                LitSpot a = spots.get(turned ? j : i);
                LitSpot b = spots.get(turned ? i : j);
                ways.add(way(a, b, i + j + tint.cost(a, -1) + tint.cost(b, 1)));
            }
        }
        return ways;
    }

    private Way way(LitSpot a, LitSpot b, double cost) {
        return new Way(Guess.at(a, Guess.noise(a)), Guess.at(b, Guess.noise(b)), cost, a, b, null);
    }

    private List<Way> on(List<Way> ways, List<LitSpot> spots) {
        List<Way> next = new ArrayList<>();
        for (Way way : ways) {
            double time = spots.isEmpty() ? Double.NaN : spots.get(0).time();
            if (spots.isEmpty()) {
                next.add(
                        new Way(way.left(), way.right(), way.cost() + 2 * HIDDEN, null, null, way));
                continue;
            }
            Guess left = way.left().on(time, strength);
            Guess right = way.right().on(time, strength);
            for (int i = -1; i < spots.size(); i++) {
                double one = cost(left, spots, i, -1);
                if (one > HIDDEN + GATE) {
                    continue;
                }
                for (int j = -1; j < spots.size(); j++) {
                    double other = cost(right, spots, j, 1);
                    if (other > HIDDEN + GATE) {
                        continue;
                    }
                    boolean shared = i == j && i >= 0;
                    int used = (i >= 0 ? 1 : 0) + (j >= 0 && !shared ? 1 : 0);
                    double cost =
                            way.cost()
                                    + one
                                    + other
                                    + (shared ? SHARED : 0)
                                    + UNUSED * (spots.size() - used);
                    next.add(
                            new Way(
                                    seen(left, spots, i, shared),
                                    seen(right, spots, j, shared),
                                    cost,
                                    i < 0 ? null : spots.get(i),
                                    j < 0 ? null : spots.get(j),
                                    way));
                }
            }
        }
        next.sort(Comparator.comparingDouble(Way::cost));
        return best(next);
    }

    // Of ways that have come to the same guesses the cheapest alone goes on.
    private static List<Way> best(List<Way> sorted) {
        List<Way> kept = new ArrayList<>();
        for (Way way : sorted) {
            if (kept.size() == WAYS) {
                break;
            }
            if (kept.stream()
                    .noneMatch(k -> same(k.left(), way.left()) && same(k.right(), way.right()))) {
                kept.add(way);
            }
        }
        return kept;
    }

    private static boolean same(Guess a, Guess b) {
        double apart = Math.hypot(a.x()[0] - b.x()[0], a.y()[0] - b.y()[0]);
        double pace = Math.hypot(a.x()[1] - b.x()[1], a.y()[1] - b.y()[1]);
        return apart < 0.5 && pace < 0.2 * Math.sqrt(a.p()[3]);
    }

    private double cost(Guess guess, List<LitSpot> spots, int i, int head) {
        if (i < 0) {
            return HIDDEN;
        }
        LitSpot spot = spots.get(i);
        return Math.min(guess.cost(spot, Guess.noise(spot)), LOST) + tint.cost(spot, head);
    }

    private static Guess seen(Guess guess, List<LitSpot> spots, int i, boolean shared) {
        if (i < 0) {
            return guess;
        }
        LitSpot spot = spots.get(i);
        double noise = Guess.noise(spot);
        return guess.seen(spot, shared ? 3 * noise + 2 * spot.thickness() : noise);
    }
}
