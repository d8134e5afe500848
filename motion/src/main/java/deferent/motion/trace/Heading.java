package deferent.motion.trace;

import deferent.motion.pairing.Facing;
import deferent.motion.pairing.Jet;

/** How the performer faces as time goes on. */
public interface Heading {
    /** Always the audience. */
    Heading AHEAD = time -> Jet.constant(0);

    /**
     * The angle from the audience, radians, to the performer's left above 0, with its derivatives.
     *
     * @param time seconds
     */
    Jet at(double time);

    /** As a facing has it whose cycle takes {@code period} seconds. */
    static Heading of(Facing facing, double period) {
        return facing.equals(Facing.AUDIENCE)
                ? AHEAD
                : time -> facing.at(time / period).atRate(1 / period);
    }

    /** One turn on top of another. */
    default Heading plus(Heading other) {
        return this == AHEAD ? other : other == AHEAD ? this : t -> at(t).plus(other.at(t));
    }
}
