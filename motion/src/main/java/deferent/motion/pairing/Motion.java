package deferent.motion.pairing;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What one hand and its poi do over one cycle.
 *
 * @param path where the hand goes in the motion's plane
 * @param spin which way the tether points in it
 * @param weave how that plane passes from one side of the body to the other, if it does; one beat
 *     of an evenly turning poi is one beat of it
 */
public record Motion(HandPath path, SpinLaw spin, Optional<Weave> weave) {
    public Motion {
        weave.ifPresent(passes -> keepsTime(passes, path, spin));
    }

    /** A motion whose plane stays on its side of the body. */
    public Motion(HandPath path, SpinLaw spin) {
        this(path, spin, Optional.empty());
    }

    private static void keepsTime(Weave weave, HandPath path, SpinLaw spin) {
        if (path.rides()) {
            throw new Refusal(
                    "rides the other poi's head",
                    "hand of a weave",
                    "let it go its own way, or leave the weave out");
        }
        boolean beats = Math.abs(spin.turns()) == weave.beats();
        if (spin.even().isEmpty() || !beats) {
            throw new Refusal(
                    "does not turn evenly once a beat",
                    "poi of a weave of " + weave.beats() + " beats",
                    "give even turning, " + weave.beats() + " turns a cycle either way");
        }
    }

    /**
     * A flower's motion: hand round a circle, poi turning evenly; n = 1 gives extensions and
     * isolations.
     */
    public static Motion flower(double handRadius, int turns, double start) {
        return new Motion(Series.circle(handRadius), new Turns(turns, start));
    }

    /** Still hand, poi round it. */
    public static Motion staticSpin(int turns, double start) {
        return new Motion(Series.STILL, new Turns(turns, start));
    }

    /** Still hand, head swinging about straight down. */
    public static Motion pendulum(double amplitude) {
        return new Motion(Series.STILL, new Swing(amplitude, Swing.DOWN));
    }

    public Motion withPath(HandPath other) {
        return new Motion(other, spin, weave);
    }

    public Motion withSpin(SpinLaw other) {
        return new Motion(path, other, weave);
    }

    public Motion with(Weave other) {
        return new Motion(path, spin, Optional.of(other));
    }

    /** The whole motion turned by {@code angle} radians in its plane. */
    public Motion turned(double angle) {
        return new Motion(path.turned(angle), spin.turned(angle), weave);
    }

    public boolean riding() {
        return path.rides();
    }

    /** Whether the hand stays where it is, on one side of the body. */
    public boolean still() {
        return path.still() && weave.isEmpty();
    }

    /**
     * A pendulum about a still hand: nobody drives it, so it sets its own tempo, and hangs straight
     * down.
     */
    public boolean undriven() {
        return path.still() && spin.swings();
    }

    /**
     * Petals of a flower: |n − 1| for a circling hand and an evenly turning poi, 0 where n is −1, 0
     * or 1.
     */
    public int petals() {
        int round = path.circle().map(Series.Term::k).orElse(0);
        return spin.even().isPresent() && Math.abs(round) == 1 && Math.abs(spin.turns()) > 1
                ? Math.abs(spin.turns() * round - 1)
                : 0;
    }

    /** Where hand or poi is not smooth, by phase. */
    public List<Break> breaks() {
        return Stream.concat(path.breaks().stream(), spin.breaks().stream())
                .sorted(Comparator.comparingDouble(Break::phase).thenComparingInt(Break::order))
                .toList();
    }
}
