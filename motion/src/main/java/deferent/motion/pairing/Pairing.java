package deferent.motion.pairing;

import deferent.motion.shared.Side;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Two motions, one a hand, with their timing, direction and placement: what "A vs B" says.
 *
 * <p>Opposite direction mirrors the right hand's motion across its plane's v, so that together and
 * opposite the hands meet at top and bottom. A left hand that goes counter-clockwise is mirrored
 * the same way. Both are applied after the motion and before its placement.
 *
 * @param left the first motion
 * @param right the second
 * @param timing how far the right hand's cycle is ahead
 * @param direction same or opposite
 * @param sense the left hand's, as the performer sees it
 * @param tempoSaid hand cycles a minute, or poi beats where the hand weaves or both are still, 1 to
 *     600; empty for 60, or for what an undriven pendulum asks
 * @param facing how the performer faces; places of the hands are the room's and do not turn
 */
public record Pairing(
        Part left,
        Part right,
        Timing timing,
        Direction direction,
        Sense sense,
        OptionalDouble tempoSaid,
        Facing facing) {
    /** Cycles a minute where nothing else is said. */
    public static final double USUAL_TEMPO = 60;

    public Pairing {
        if (left.motion().riding() && right.motion().riding()) {
            throw new Refusal("each ride the other", "hands", "let one of them lead");
        }
        tempoSaid.ifPresent(t -> Refusal.within(t, 1, 600, "tempo", "a minute"));
        OptionalDouble own = ownTempo(left, right);
        double second = swingPeriod(right) * right.cycles();
        double first = swingPeriod(left) * left.cycles();
        if (first > 0 && second > 0 && Math.abs(first - second) > 1e-3 * first) {
            throw new Refusal(
                    String.format(
                            Locale.ROOT,
                            "swing at two tempos, %.4f s and %.4f s a common cycle",
                            first,
                            second),
                    "pendulums",
                    "give both the same tether and swing, or drive one of them");
        }
        if (own.isPresent()
                && tempoSaid.isPresent()
                && Math.abs(own.getAsDouble() - tempoSaid.getAsDouble())
                        > 1e-3 * own.getAsDouble()) {
            throw new Refusal(
                    "is "
                            + tempoSaid.getAsDouble()
                            + " a minute, but a pendulum that nobody drives sets it",
                    "tempo",
                    String.format(
                            Locale.ROOT,
                            "leave it unsaid, or give %.3f, or change the tether or the swing",
                            own.getAsDouble()));
        }
    }

    /** Of a performer who faces the audience all the time. */
    public Pairing(
            Part left,
            Part right,
            Timing timing,
            Direction direction,
            Sense sense,
            OptionalDouble tempoSaid) {
        this(left, right, timing, direction, sense, tempoSaid, Facing.AUDIENCE);
    }

    public static Pairing of(Part left, Part right) {
        return new Pairing(
                left,
                right,
                Timing.TOGETHER,
                Direction.SAME,
                Sense.CLOCKWISE,
                OptionalDouble.empty());
    }

    public Part part(Side side) {
        return side == Side.LEFT ? left : right;
    }

    /** Whether a side's motion is mirrored across its plane's v before it is placed. */
    public boolean mirrored(Side side) {
        boolean leftMirrored = sense == Sense.COUNTER_CLOCKWISE;
        return side == Side.LEFT ? leftMirrored : leftMirrored ^ (direction == Direction.OPPOSITE);
    }

    /** Where a side's own cycle stands when the common cycle starts, in its own cycles. */
    public double startPhase(Side side) {
        return side == Side.LEFT ? 0 : timing.ahead();
    }

    /** Whether a hand passes from one side of the body to the other. */
    public boolean weaves() {
        return left.motion().weave().isPresent() || right.motion().weave().isPresent();
    }

    /** The side whose hand rides, if one does. */
    public Optional<Side> rider() {
        return left.motion().riding()
                ? Optional.of(Side.LEFT)
                : right.motion().riding() ? Optional.of(Side.RIGHT) : Optional.empty();
    }

    /** Hand cycles a minute, or poi beats where the hand weaves or both are still. */
    public double tempo() {
        OptionalDouble own = ownTempo(left, right);
        return own.isPresent() ? own.getAsDouble() : tempoSaid.orElse(USUAL_TEMPO);
    }

    /** Whether an undriven pendulum sets the tempo. */
    public boolean setsOwnTempo() {
        return ownTempo(left, right).isPresent();
    }

    /** Seconds of the common cycle. */
    public double period() {
        double own =
                Math.max(swingPeriod(left) * left.cycles(), swingPeriod(right) * right.cycles());
        return own > 0 ? own : 60 / tempo() * counted(left, right);
    }

    private static OptionalDouble ownTempo(Part left, Part right) {
        double common =
                Math.max(swingPeriod(left) * left.cycles(), swingPeriod(right) * right.cycles());
        return common > 0
                ? OptionalDouble.of(60 / common * counted(left, right))
                : OptionalDouble.empty();
    }

    private static double swingPeriod(Part part) {
        if (part.motion().undriven()) {
            Swing swing = part.motion().spin().swing().orElseThrow();
            return swing.period(part.tether().length(), Gravity.STANDARD);
        }
        return 0;
    }

    // Counted events in a common cycle: cycles of the first hand that moves, beats if it weaves,
    // else the left poi's beats.
    private static double counted(Part left, Part right) {
        if (!left.still()) {
            return left.cycles() * beats(left);
        }
        if (!right.still()) {
            return right.cycles() * beats(right);
        }
        return left.cycles() * Math.max(1, Math.abs(left.motion().spin().turns()));
    }

    private static int beats(Part part) {
        return part.motion().weave().map(Weave::beats).orElse(1);
    }

    public Pairing with(Side side, Part part) {
        return new Pairing(
                side == Side.LEFT ? part : left,
                side == Side.RIGHT ? part : right,
                timing,
                direction,
                sense,
                tempoSaid,
                facing);
    }

    public Pairing with(Timing other) {
        return new Pairing(left, right, other, direction, sense, tempoSaid, facing);
    }

    public Pairing with(Direction other) {
        return new Pairing(left, right, timing, other, sense, tempoSaid, facing);
    }

    public Pairing with(Sense other) {
        return new Pairing(left, right, timing, direction, other, tempoSaid, facing);
    }

    /** The same poi and hands in the room, with the body turned otherwise under them. */
    public Pairing with(Facing other) {
        return new Pairing(left, right, timing, direction, sense, tempoSaid, other);
    }

    public Pairing withTempo(OptionalDouble other) {
        return new Pairing(left, right, timing, direction, sense, other, facing);
    }
}
