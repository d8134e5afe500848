package deferent.page;

import deferent.motion.shared.Side;
import deferent.reading.body.Person;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * One thing that is seen, with its role and its form in space.
 *
 * @param role what it is
 * @param side whose it is; of a link, its carrier's; empty for what belongs to nobody's hand
 * @param form the points it is drawn through, metres, in the frame
 */
public record Item(Role role, Optional<Side> side, Shape form) {
    /** The points of a thing: moving ones by their track, still ones as they are. */
    public sealed interface Shape {
        /** The line a moving point runs along over the whole interval. */
        record Run(Track track, boolean closed) implements Shape {}

        /** A moving point. */
        record Spot(Track track) implements Shape {}

        /** The straight line between two moving points at the same instant. */
        record Span(Track from, Track to) implements Shape {}

        /** A line through points that do not move, or one such point. */
        record Fixed(List<Vector3D> points, boolean closed) implements Shape {
            public Fixed {
                points = List.copyOf(points);
            }
        }

        /** The performer's limbs, which go with the hands. */
        record Body(Person person) implements Shape {}
    }

    static Item of(Role role, Side side, Shape form) {
        return new Item(role, Optional.of(side), form);
    }

    /** Unlike any other in the scene: "left-head-trail". */
    public String id() {
        return side.map(s -> s.word() + "-").orElse("") + role.key();
    }

    /** For people who cannot see the picture: "left head's trail". */
    public String name() {
        if (role == Role.LINK) {
            return side.map(s -> s.word() + " head to " + s.other().word() + " hand")
                    .orElse("link");
        }
        return side.map(s -> s.word() + " ").orElse("") + role.words();
    }
}
