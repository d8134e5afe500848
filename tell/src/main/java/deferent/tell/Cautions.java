package deferent.tell;

import deferent.search.whole.Readings;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The usual cautions, where they matter. Common practice, no source; none of them is a permission,
 * and local rules and qualified practice come first.
 */
final class Cautions {
    static final String SHORT =
            "Take care: clear space, soft heads first; fire only with qualified practice and by local"
                    + " rules.";

    private Cautions() {}

    static List<String> of(Readings readings) {
        List<String> all = new ArrayList<>();
        all.add(
                "Keep people, animals and lamps well outside the figures, "
                        + reach(readings)
                        + ", and expect a head to fly further if a tether or a grip gives.");
        all.add(
                "Learn it with soft heads and at an easy tempo; hard or heavy heads bruise, and many"
                        + " repetitions tire wrists, elbows and shoulders. Rest when they ache.");
        all.add(
                "With fire: only with qualified practice, a trained safety person with a damp blanket, fuel"
                        + " stored away from the flame, clothes that do not melt, and local rules kept. Nothing"
                        + " here permits it.");
        all.add(
                "Fast or flickering lights can trouble people with photosensitive epilepsy: warn the"
                        + " audience before you show them.");
        return List.copyOf(all);
    }

    private static String reach(Readings readings) {
        OptionalDouble farthest = readings.farthest();
        if (farthest.isPresent()) {
            return "which reach " + Say.length(farthest.getAsDouble()) + " from their centre";
        }
        return "whose reach could not be worked out (a head goes as far out as its hand, and its"
                + " whole tether further)";
    }
}
