package deferent.app;

import deferent.motion.shared.Refused;
import deferent.record.Nearest;
import java.util.Collection;
import java.util.List;
import java.util.Locale;

/** Something asked for rightly that is not there. */
final class NotFound extends Refused {
    private static final long serialVersionUID = 1L;

    private final List<String> nearest;

    private NotFound(String what, String where, String right, List<String> nearest) {
        super(what, where, right);
        this.nearest = nearest;
    }

    NotFound(String what, String where, String right) {
        this(what, where, right, List.of());
    }

    /**
     * A name that nothing has.
     *
     * @param what "is not on the shelf"
     * @param where the option it was said to, a space after it; or empty
     * @param known names that are there
     */
    static NotFound named(
            String name, String what, String where, String right, Collection<String> known) {
        List<String> nearest = near(name, known);
        return new NotFound(
                what,
                where + "\"" + name + "\"",
                nearest.isEmpty()
                        ? right
                        : "did you mean \"" + String.join("\" or \"", nearest) + "\"?",
                nearest);
    }

    /** Names spelt nearly so, however large their letters. */
    static List<String> near(String name, Collection<String> known) {
        String said = name.toLowerCase(Locale.ROOT);
        List<String> near =
                Nearest.to(said, known.stream().map(n -> n.toLowerCase(Locale.ROOT)).toList());
        return near.stream()
                .flatMap(n -> known.stream().filter(k -> k.equalsIgnoreCase(n)).limit(1))
                .distinct()
                .toList();
    }

    @Override
    public List<String> nearest() {
        return nearest;
    }
}
