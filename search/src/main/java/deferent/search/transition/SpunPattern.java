package deferent.search.transition;

import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Origin;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.body.Reach;
import deferent.reading.body.Room;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A pattern as a practised performer spins it, and what of it every passage into and out of it
 * needs. What is asked for seldom is worked out when it is first asked for.
 */
final class SpunPattern {
    private final Pairing pairing;
    private final Performer performer;
    private final Trace trace;
    private final Hindrance hindrance;
    private final Map<Side, SpunSide> sides = new EnumMap<>(Side.class);
    private double reachShort = Double.NaN;
    private double nearness = Double.NaN;

    SpunPattern(Pairing pairing, Performer performer, SideDrawings drawer) {
        this.pairing = pairing;
        this.performer = performer;
        Trace ideal = Trace.of(pairing);
        Map<Side, Course> hands = new EnumMap<>(Side.class);
        Map<Side, Course> heads = new EnumMap<>(Side.class);
        Hindrance found = hindrance(ideal);
        for (Side side : Side.values()) {
            if (found == Hindrance.NONE) {
                DrawnSide drawn = drawer.draw(ideal, side);
                hands.put(side, drawn.hand());
                heads.put(side, drawn.head());
                found = drawn.near() ? found : Hindrance.NOT_DRAWN;
            } else {
                hands.put(side, ideal.hand(side));
                heads.put(side, ideal.head(side));
            }
        }
        this.trace =
                new Trace(
                        pairing,
                        Origin.CORDED,
                        ideal.interval(),
                        true,
                        hands,
                        heads,
                        List.of(),
                        Map.of(),
                        List.of(),
                        0);
        this.hindrance = found;
        if (found == Hindrance.NONE) {
            for (Side side : Side.values()) {
                sides.put(side, SpunSide.of(trace, side));
            }
        }
    }

    private Hindrance hindrance(Trace ideal) {
        for (Side side : Side.values()) {
            if (pairing.part(side).place().turn().turns() != 0) {
                return Hindrance.TURNING_PLANE;
            }
        }
        Reach reach = Reach.of(ideal, performer);
        return reach.reached() || reach.atFullStretch() ? Hindrance.NONE : Hindrance.REACH;
    }

    Pairing pairing() {
        return pairing;
    }

    /** As it is drawn: corded and periodic. */
    Trace trace() {
        return trace;
    }

    double period() {
        return trace.period();
    }

    Hindrance hindrance() {
        return hindrance;
    }

    SpunSide side(Side side) {
        @Nullable SpunSide table = sides.get(side);
        if (table == null) {
            throw new IllegalStateException("a pattern that is hindered has no tables");
        }
        return table;
    }

    /** By how much an arm is too short for it as it is drawn, metres. */
    synchronized double reachShort() {
        if (Double.isNaN(reachShort)) {
            reachShort = Reach.of(trace, performer).turned().tooFar();
        }
        return reachShort;
    }

    /**
     * The least distance of the two tethers with their ends from each other, and of either from the
     * body, metres.
     */
    synchronized double nearness() {
        if (Double.isNaN(nearness)) {
            nearness = nearness(trace, performer);
        }
        return nearness;
    }

    static double nearness(Trace trace, Performer performer) {
        Room room = Room.of(trace, performer);
        return Math.min(
                room.tetherToTether().distance(),
                Math.min(
                        room.left().tetherToBody().distance(),
                        room.right().tetherToBody().distance()));
    }
}
