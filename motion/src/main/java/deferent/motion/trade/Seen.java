package deferent.motion.trade;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.shared.Side;
import java.util.Optional;
import java.util.function.Function;

/**
 * A motion that is to be recognised. Sizes within a billionth of a trade word's own count as that.
 *
 * @param tether metres
 * @param mirrored whether the motion is mirrored before it is placed
 * @param onArc whether the other hand's head, which a rider follows, goes to and fro on an arc
 */
public record Seen(Motion motion, double tether, boolean mirrored, boolean onArc) {
    static final double NEAR = 1e-9;

    public static Seen of(Pairing pairing, Side side) {
        Part part = pairing.part(side);
        Motion other = pairing.part(side.other()).motion();
        return new Seen(
                part.motion(),
                part.tether().length(),
                pairing.mirrored(side),
                other.path().still() && other.spin().turns() == 0 && other.spin().even().isEmpty());
    }

    public Seen with(Motion other) {
        return new Seen(other, tether, mirrored, onArc);
    }

    SpinLaw spin() {
        return motion.spin();
    }

    boolean still() {
        return motion.still();
    }

    /** "square, the poi turning twice", to be said from {@code words} on. */
    Call described(String noun, String words) {
        return new Call(noun + ", " + SpinWords.turning(spin()), words);
    }

    /** A hand that goes once round a circle, and the poi as seen from where it begins. */
    record Circling(double radius, SpinLaw spin, double from) {
        boolean starts(double at) {
            return sameTurn(spin.starts().orElse(Double.NaN), at);
        }

        /** How far the figure is turned, the hand's own start with it. */
        double tilt() {
            return spin.starts().orElse(0) / (1 - spin.turns()) + from;
        }
    }

    Optional<Circling> circling() {
        return motion.path()
                .circle()
                .filter(c -> c.k() == 1)
                .map(c -> new Circling(c.radius(), spin().turned(-c.angle()), c.angle()));
    }

    /** The call of a circling hand whose poi turns evenly n times. */
    Optional<Call> circling(int n, Function<Circling, Optional<Call>> call) {
        return spin().even().isPresent() && spin().turns() == n
                ? circling().flatMap(call)
                : Optional.empty();
    }

    /** A flower under that name; a box flower of four petals says so, and one that stalls. */
    Optional<Call> flower(String name) {
        boolean four = Math.abs(spin().turns() - 1) == 4;
        boolean stalls = spin().inStretches().filter(s -> s.equals(s.resting())).isPresent();
        return circling()
                .filter(c -> c.spin().inStretches().map(s -> s.stretches().size()).orElse(1) == 1)
                .filter(c -> !c.spin().swings())
                .map(
                        c ->
                                four && repeats(c.tilt(), Math.PI / 4, Math.PI / 2)
                                        ? "box " + name
                                        : name)
                .map(words -> new Call(stalls ? words + ", stalling" : words, words));
    }

    /** A figure of two axes under that name, by the way it stands. */
    Optional<Call> standing(String level, String name, double tilt) {
        if (repeats(tilt, 0, Math.PI)) {
            return Optional.of(Call.of(level + name));
        }
        if (repeats(tilt, Math.PI / 2, Math.PI)) {
            return Optional.of(Call.of("vertical " + name));
        }
        double placed = Math.IEEEremainder(mirrored ? -tilt : tilt, Math.PI);
        return Optional.of(new Call(name + " tilted " + degrees(placed), name));
    }

    static boolean sameTurn(double a, double b) {
        return repeats(a, b, 2 * Math.PI);
    }

    private static boolean repeats(double a, double b, double period) {
        return Math.abs(Math.IEEEremainder(a - b, period)) < NEAR;
    }

    static String degrees(double radians) {
        return Amounts.number(Math.rint(Math.toDegrees(radians) * 10) / 10) + "°";
    }
}
