package deferent.motion.phrase;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Tether;
import deferent.motion.trade.Amounts;
import deferent.motion.trade.Call;
import deferent.motion.trade.Seen;
import deferent.motion.trade.Sizes;
import deferent.motion.trade.Spelling;
import deferent.motion.trade.Trade;
import deferent.motion.trade.TradeMotion;
import deferent.motion.trade.Word;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The user's own names of motions, on top of the trade's words. Immutable. */
public final class Lexicon {
    public static final Lexicon EMPTY = new Lexicon(Map.of());

    private final Map<String, TradeMotion> byKey;

    private Lexicon(Map<String, TradeMotion> byKey) {
        this.byKey = byKey;
    }

    /** This lexicon and one name more; a name given again takes the newer motion. */
    public Lexicon with(String name, Motion motion, Tether tether) {
        String key = Spelling.key(name);
        if (key.isEmpty() || !Character.isLetter(key.charAt(0)) || !Spelling.sayable(name)) {
            throw new Refusal(
                    "\"" + name + "\" cannot be said in a phrase",
                    "name of a motion",
                    "give letters, figures, spaces and hyphens, a letter first");
        }
        if (Trade.spelt(key).isPresent() || Word.spelt(key).isPresent()) {
            throw new Refusal(
                    "\"" + name + "\" is a word of the trade",
                    "name of a motion",
                    "give it a name of its own");
        }
        if (motion.riding()) {
            throw new Refusal(
                    "rides another's head", "\"" + name + "\"", "name a motion of its own path");
        }
        Map<String, TradeMotion> more = new LinkedHashMap<>(byKey);
        more.put(key, row(name.strip(), motion, tether));
        return new Lexicon(Collections.unmodifiableMap(more));
    }

    private static TradeMotion row(String name, Motion motion, Tether tether) {
        Seen seen = new Seen(motion, tether.length(), false, false);
        return new TradeMotion(
                List.of(name),
                "a motion of your own: " + Trade.called(seen).name(),
                "as it was named, scaled with the tether from " + Amounts.length(tether.length()),
                Word.and(Word.HAND_RADIUS, Word.TILT, Word.HORIZONTAL, Word.VERTICAL),
                sizes -> sized(motion, sizes, tether.length()),
                other ->
                        other.motion().spin().equals(motion.spin())
                                ? Optional.of(new Call(name, name))
                                : Optional.empty());
    }

    // With the hand radius that is said, or else scaled with the tether.
    private static Motion sized(Motion motion, Sizes sizes, double tether) {
        double size = motion.path().radius();
        double factor =
                sizes.has(Word.HAND_RADIUS) && size > 0
                        ? sizes.radius(1) / size
                        : sizes.tether() / tether;
        return factor == 1 || size == 0 ? motion : motion.withPath(motion.path().scaled(factor));
    }

    /** The motions in it, in the order they were first given. */
    public List<TradeMotion> motions() {
        return List.copyOf(byKey.values());
    }

    /** The user's motion of that {@link Spelling#key}, or else the trade's. */
    Optional<TradeMotion> spelt(String key) {
        return Optional.ofNullable(byKey.get(key)).or(() -> Trade.spelt(key));
    }
}
