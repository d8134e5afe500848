package deferent.film.held;

import deferent.motion.shared.Side;
import java.util.Optional;

/**
 * One thing that is off.
 *
 * @param fault what kind of thing
 * @param side whose; empty for both
 * @param value how far off, in SI: metres, seconds or radians, positive or negative as the fault
 *     says
 * @param meant what was meant, where that is a number; 0 otherwise
 * @param what the hand path's noun, or where on the figure, in words
 * @param weight how much of the picture it spoils, metres; what matters most stands first
 * @param moment seconds into the film at which it is seen best the first time
 */
public record Finding(
        Fault fault,
        Optional<Side> side,
        double value,
        double meant,
        String what,
        double weight,
        double moment) {
    /** In a sentence. */
    public String said() {
        return fault.said(this);
    }

    /** What usually mends it. */
    public String mend() {
        return fault.mend(this);
    }

    String hand() {
        return side.map(Side::word).orElse("");
    }

    boolean less() {
        return value < 0;
    }
}
