package deferent.search.crossing;

import deferent.motion.pairing.Side;
import java.util.List;

/** Which hands cross over: both at once, or one while the other goes on as it was. */
public enum Who {
    BOTH(List.of(Side.LEFT, Side.RIGHT)),
    LEFT(List.of(Side.LEFT)),
    RIGHT(List.of(Side.RIGHT));

    private final List<Side> sides;

    Who(List<Side> sides) {
        this.sides = sides;
    }

    public List<Side> sides() {
        return sides;
    }

    public static Who of(Side side) {
        return side == Side.LEFT ? LEFT : RIGHT;
    }
}
