package deferent.search.seek;

import deferent.motion.pairing.Refusal;

/**
 * Motions with what brings equal head paths together: the key slice of a seek, in plain arrays
 * under stable keys, so that it can be made and sent anywhere.
 *
 * @param keys of the motions, rising
 * @param signatures of their head paths, one a motion
 * @param bands in which they lie, one a motion
 */
public record Keyed(long[] keys, long[] signatures, int[] bands) {
    public Keyed {
        if (keys.length != signatures.length || keys.length != bands.length) {
            throw new Refusal("has arrays of different lengths", "keyed", "give one a motion");
        }
    }

    public int count() {
        return keys.length;
    }
}
