package deferent.motion.pairing;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** What one hand and its poi do over one cycle. */
public record Motion(HandPath path, SpinLaw spin) {
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
        return new Motion(other, spin);
    }

    public Motion withSpin(SpinLaw other) {
        return new Motion(path, other);
    }

    /** The whole motion turned by {@code angle} radians in its plane. */
    public Motion turned(double angle) {
        return new Motion(path.turned(angle), spin.turned(angle));
    }

    public boolean riding() {
        return path.rides();
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
