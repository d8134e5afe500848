package deferent.search.path;

import deferent.motion.pairing.Refusal;
import java.util.List;

/**
 * A pattern's drills in an order to learn them in. Each stands after what it needs, and the pattern
 * itself, the last one, needs all others.
 *
 * @param drills in order, one or more
 * @param leftOut what was thought of besides
 */
public record Path(List<Drill> drills, List<LeftOut> leftOut) {
    public Path {
        drills = List.copyOf(drills);
        leftOut = List.copyOf(leftOut);
        if (drills.isEmpty() || drills.get(drills.size() - 1).kind() != DrillKind.WHOLE) {
            throw new Refusal(
                    "does not end with the pattern", "a path", "let its last drill be the whole");
        }
        for (int i = 0; i < drills.size(); i++) {
            for (int need : drills.get(i).needs()) {
                if (need < 0 || need >= i) {
                    throw new Refusal(
                            "comes before number " + (need + 1) + ", which it needs",
                            "number " + (i + 1) + " of a path",
                            "put it after that");
                }
            }
        }
    }

    /** The pattern itself. */
    public Drill whole() {
        return drills.get(drills.size() - 1);
    }
}
