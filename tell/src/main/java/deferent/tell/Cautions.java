package deferent.tell;

import java.util.List;

/**
 * What to mind whatever is spun: said once a session and once a document. Common practice, no
 * source; none of it is a permission, and local rules and qualified practice come first.
 */
final class Cautions {
    static final String SHORT =
            "Take care: clear space, soft heads first; fire only with qualified practice and by local"
                    + " rules.";

    static final List<String> ALL =
            List.of(
                    "Clear the space: people, animals and lamps stand well outside the figures, and a"
                            + " head flies further where a cord or a grip gives.",
                    "Before each use look over cords, knots and handles; tie back hair and loose"
                            + " clothes.",
                    "Learn with soft heads at an easy tempo: hard and heavy heads bruise.",
                    "Rest when wrists, elbows or shoulders ache; take pain that lasts to a"
                            + " professional.",
                    "Flashing lights can trigger seizures in people with photosensitive epilepsy: warn"
                            + " them before you start.",
                    "Fire only with qualified practice, a safety person with a damp blanket beside you,"
                            + " fuel stored away from flames, clothes that do not melt, and local rules"
                            + " kept. Nothing here permits it.");

    private Cautions() {}
}
