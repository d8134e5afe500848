package deferent.search.fit;

import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Size;
import java.util.HashMap;
import java.util.Map;

/**
 * Between which values the fit may set a size. Where nothing is said: hand circles from 5 cm to 1.5
 * m, tethers from 20 cm to 1.5 m, swings from 5 to 175 degrees, centres 3 m either way; angles and
 * timing anywhere.
 */
public record Limits(Map<Size, Range> said) {
    public static final Limits USUAL = new Limits(Map.of());

    /** From {@code least} to {@code most}, both allowed. */
    public record Range(double least, double most) {
        public Range {
            if (!(most >= least)) {
                throw new Refusal(
                        "go from " + least + " to " + most, "limits of a size", "swap them");
            }
        }

        boolean holds(double value) {
            return value >= least - 1e-9 && value <= most + 1e-9;
        }
    }

    public Limits {
        said = Map.copyOf(said);
    }

    public Limits with(Size size, double least, double most) {
        Map<Size, Range> more = new HashMap<>(said);
        more.put(size, new Range(least, most));
        return new Limits(more);
    }

    public Range of(Size size) {
        Range own = said.get(size);
        if (own != null) {
            return own;
        }
        return switch (size.kind()) {
            case HAND_RADIUS -> new Range(0.05, 1.5);
            case TETHER -> new Range(0.2, 1.5);
            case AMPLITUDE -> new Range(Math.toRadians(5), Math.toRadians(175));
            case CENTRE_X, CENTRE_Y, CENTRE_Z -> new Range(-3, 3);
            case START, TILT -> new Range(-1e3, 1e3);
            case TIMING -> new Range(0, 1);
            case TEMPO -> new Range(1, 600);
        };
    }
}
