package deferent.motion.api;

import deferent.motion.api.opened.Opened;
import deferent.motion.pairing.MirrorImage;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Size;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * A pairing: what two poi do, one in each hand, with all sizes and the tempo.
 *
 * <pre>
 * TwoPoi pairing = TwoPoi.of("isolation vs four-petal antispin, split time");
 * </pre>
 *
 * Two are equal where everything in them is.
 */
public final class TwoPoi {
    static {
        Opened.by(closed -> closed.pairing, TwoPoi::new);
    }

    private final Pairing pairing;

    private TwoPoi(Pairing pairing) {
        this.pairing = pairing;
    }

    /**
     * The pairing that a phrase says, with tethers of 60 cm where it says none.
     *
     * @param phrase in the trade's words, such as "static spin vs triquetra, split time"
     * @return the pairing, with usual sizes where the phrase leaves them unsaid
     * @throws deferent.motion.shared.Refused where it cannot be read, or says what cannot be
     */
    public static TwoPoi of(String phrase) {
        return new TwoPoi(Phrase.parse(phrase).pairing());
    }

    /**
     * The pairing that a phrase says, with tethers of that length where it says none.
     *
     * @param phrase in the trade's words
     * @param tether from the hand's grip to the head's centre, metres; above 0, at most 5
     * @return the pairing; sizes unsaid go with the tether
     * @throws deferent.motion.shared.Refused where it cannot be read, or says what cannot be
     */
    public static TwoPoi of(String phrase, double tether) {
        return new TwoPoi(Phrase.parse(phrase).with(Tether.of(tether)));
    }

    /**
     * A phrase that reads back as exactly this pairing.
     *
     * @return empty where the trade has no words for it
     */
    public Optional<String> phrase() {
        return Phrase.write(pairing);
    }

    /**
     * How quick it is.
     *
     * @return hand cycles a minute; beats of the poi where a hand weaves or both are still
     */
    public double tempo() {
        return pairing.tempo();
    }

    /**
     * How long it takes until both hands and both heads are back.
     *
     * @return seconds
     */
    public double period() {
        return pairing.period();
    }

    /**
     * The numbers that can be set, by the keys that pattern documents and {@code fit --free} have:
     * "left.hand_radius_m", "right.tilt_deg", "timing_cycles", "tempo_cycles_per_min". A pairing
     * lacks those that would mean nothing in it.
     *
     * @return each in the unit that its key ends in, left before right
     */
    public Map<String, Double> sizes() {
        Map<String, Double> sizes = new LinkedHashMap<>();
        for (Size size : Size.of(pairing)) {
            double value = size.read(pairing).orElseThrow();
            sizes.put(size.key(), size.kind().angle() ? Math.toDegrees(value) : value);
        }
        return Collections.unmodifiableMap(sizes);
    }

    /**
     * The same with one size changed.
     *
     * @param key one of {@link #sizes()}
     * @param value in the unit that the key ends in
     * @return the other pairing; this one stays as it is
     * @throws deferent.motion.shared.Refused where it has no such size, or not of that value
     */
    public TwoPoi with(String key, double value) {
        Size size = Size.named(key);
        return new TwoPoi(size.set(pairing, size.kind().angle() ? Math.toRadians(value) : value));
    }

    /**
     * As a mirror shows it: each hand does what the other did.
     *
     * @return the left-handed version, with the same sizes
     */
    public TwoPoi mirrored() {
        return new TwoPoi(MirrorImage.of(pairing));
    }

    /**
     * How long a tether is.
     *
     * @param side whose
     * @return metres from the hand's grip to the head's centre
     */
    public double tether(Side side) {
        return pairing.part(side).tether().length();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof TwoPoi two && pairing.equals(two.pairing);
    }

    @Override
    public int hashCode() {
        return pairing.hashCode();
    }

    @Override
    public String toString() {
        return phrase().orElse("a pairing that no phrase says");
    }
}
