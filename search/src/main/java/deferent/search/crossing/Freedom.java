package deferent.search.crossing;

import deferent.motion.pairing.Refusal;

/**
 * What may be done to the pairing that is crossed into, so that the states agree.
 *
 * @param shift how far it may be carried as a whole, metres; 0 to leave it where it is
 * @param turn how far it may be turned in its plane about the middle of its centres, radians up to
 *     π; 0 not at all. Pairings whose two planes are not parallel, with a plane that turns or with
 *     a pendulum that nobody drives are never turned
 * @param mirror whether both its motions may go round the other way
 * @param tempo by which factor it may be spun faster or slower, 1 (not) to 4. A pendulum that
 *     nobody drives keeps its own time
 * @param timing whether the timing between its two hands may be changed
 */
public record Freedom(double shift, double turn, boolean mirror, double tempo, boolean timing) {
    /** As it stands. */
    public static final Freedom NONE = new Freedom(0, 0, false, 1, false);

    public Freedom {
        Refusal.within(shift, 0, 10, "shift allowed", "m");
        Refusal.within(turn, 0, Math.PI, "turn allowed", "rad");
        Refusal.within(tempo, 1, 4, "tempo factor allowed", "");
    }

    public Freedom withShift(double metres) {
        return new Freedom(metres, turn, mirror, tempo, timing);
    }

    public Freedom withTurn(double radians) {
        return new Freedom(shift, radians, mirror, tempo, timing);
    }

    public Freedom withMirror(boolean allowed) {
        return new Freedom(shift, turn, allowed, tempo, timing);
    }

    public Freedom withTempo(double factor) {
        return new Freedom(shift, turn, mirror, factor, timing);
    }

    public Freedom withTiming(boolean allowed) {
        return new Freedom(shift, turn, mirror, tempo, allowed);
    }
}
