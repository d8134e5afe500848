package deferent.record;

import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Side;

/** The weights a performer spins, one a hand. */
public record Kit(Head left, Head right) {
    /**
     * A poi's head.
     *
     * @param mass kilograms, above 0, at most 5
     * @param diameter metres, above 0, at most 0.5
     */
    public record Head(double mass, double diameter) {
        /** A soft practice head of 120 g and 8 cm (common practice, no source). */
        public static final Head USUAL = new Head(0.12, 0.08);

        public Head {
            Refusal.positive(mass, 5, "head mass", "kg");
            Refusal.positive(diameter, 0.5, "head diameter", "m");
        }
    }

    public static final Kit USUAL = new Kit(Head.USUAL, Head.USUAL);

    public Head head(Side side) {
        return side == Side.LEFT ? left : right;
    }
}
