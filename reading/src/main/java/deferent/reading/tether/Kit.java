package deferent.reading.tether;

import deferent.motion.pairing.Refusal;

/**
 * What the performer spins, apart from the tether's length, which is the pairing's: the same kit in
 * both hands.
 *
 * @param headMass kilograms, above 0, at most 5
 * @param headDiameter metres, above 0, at most 0.5
 * @param cordMass kilograms a metre of cord, 0 to 1; the cord is taken as straight and uniform
 * @param air whether the air's drag on the head counts
 * @param heads what the heads are made of, which says how much they harm
 */
public record Kit(double headMass, double headDiameter, double cordMass, boolean air, Heads heads) {
    /** What heads are made of: the harder, the less it takes to harm. */
    public enum Heads {
        /** Socks, foam, soft beanbags. */
        SOFT,
        /** Wood, glow sticks, batteries under a thin shell, contact heads. */
        HARD,
        /** Wicks that burn. */
        FIRE
    }

    /**
     * A soft head of 120 g and 7 cm on a cord without weight, in no air (sizes: common practice, no
     * source).
     */
    public static final Kit USUAL = new Kit(0.12, 0.07, 0, false);

    public Kit {
        Refusal.positive(headMass, 5, "head mass", "kg");
        Refusal.positive(headDiameter, 0.5, "head diameter", "m");
        Refusal.within(cordMass, 0, 1, "cord mass", "kg a metre");
    }

    /** With soft heads. */
    public Kit(double headMass, double headDiameter, double cordMass, boolean air) {
        this(headMass, headDiameter, cordMass, air, Heads.SOFT);
    }

    public Kit withHeads(Heads made) {
        return new Kit(headMass, headDiameter, cordMass, air, made);
    }

    public Kit withHeadMass(double kilograms) {
        return new Kit(kilograms, headDiameter, cordMass, air, heads);
    }

    public Kit withHeadDiameter(double metres) {
        return new Kit(headMass, metres, cordMass, air, heads);
    }

    public Kit withCordMass(double kilogramsAMetre) {
        return new Kit(headMass, headDiameter, kilogramsAMetre, air, heads);
    }

    public Kit withAir(boolean counts) {
        return new Kit(headMass, headDiameter, cordMass, counts, heads);
    }
}
