package deferent.sound;

import deferent.motion.pairing.Refusal;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What somebody says of a song's beats before they are sought: which of the tempi that are double
 * and half of each other is meant, and perhaps where beats are. A recording often leaves that open.
 *
 * @param period about how far apart beats are, seconds; empty where nobody said
 * @param taps about when some beats fall, seconds; may be none
 */
public record SaidLevel(OptionalDouble period, List<Double> taps) {
    /** Nothing is said. */
    public static final SaidLevel UNSAID = new SaidLevel(OptionalDouble.empty(), List.of());

    /** Slowest and quickest beats that are sought, a minute. */
    public static final double SLOWEST = 40;

    public static final double QUICKEST = 240;

    public SaidLevel {
        taps = List.copyOf(taps);
        period.ifPresent(
                p -> Refusal.within(60 / p, SLOWEST, QUICKEST, "song's tempo", "beats a minute"));
    }

    /** About so many beats a minute. */
    public static SaidLevel tempo(double aMinute) {
        Refusal.within(aMinute, SLOWEST, QUICKEST, "song's tempo", "beats a minute");
        return new SaidLevel(OptionalDouble.of(60 / aMinute), List.of());
    }

    /** Beats about then: two or more in a row, one tap a beat, seconds going up. */
    public static SaidLevel taps(List<Double> taps) {
        if (taps.size() < 2) {
            throw new Refusal(
                    taps.isEmpty() ? "are none" : "are only one", "taps", "tap two beats or more");
        }
        for (int i = 1; i < taps.size(); i++) {
            if (!(taps.get(i) > taps.get(i - 1)) || taps.get(i - 1) < 0) {
                throw new Refusal(
                        "go from " + taps.get(i - 1) + " s to " + taps.get(i) + " s",
                        "taps",
                        "give seconds that go up");
            }
        }
        double apart = (taps.get(taps.size() - 1) - taps.get(0)) / (taps.size() - 1);
        Refusal.within(60 / apart, SLOWEST, QUICKEST, "tempo of taps", "beats a minute");
        return new SaidLevel(OptionalDouble.of(apart), taps);
    }
}
