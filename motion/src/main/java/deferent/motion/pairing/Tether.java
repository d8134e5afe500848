package deferent.motion.pairing;

/** A tether's length from the hand's grip to the head's centre, in metres; above 0, at most 5. */
public record Tether(double length) {
    /** Sixty centimetres, about an arm's length without the hand (common practice, no source). */
    public static final Tether USUAL = new Tether(0.60);

    public Tether {
        Refusal.positive(length, 5, "tether", "m");
    }

    public static Tether of(double metres) {
        return new Tether(metres);
    }
}
