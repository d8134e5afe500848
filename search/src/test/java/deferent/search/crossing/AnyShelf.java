package deferent.search.crossing;

import deferent.motion.pairing.Arc;
import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Polygon;
import deferent.motion.pairing.Riding;
import deferent.motion.pairing.Sense;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.Stretches;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Timing;
import deferent.motion.pairing.Turns;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;

/** Shelves of all sorts of pairings of one tempo, the same each time. */
final class AnyShelf {
    private static final double TETHER = 0.6;

    private AnyShelf() {}

    static List<Pairing> of(int count, long seed) {
        Random random = new Random(seed);
        List<Pairing> shelf = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            shelf.add(one(random));
        }
        return shelf;
    }

    // Of a few families, with small changes of size, tilt and timing: a spinner's shelf rather than
    // noise, of which no two would ever meet.
    private static Pairing one(Random random) {
        int family = random.nextInt(7);
        Motion left = motion(family, random);
        Motion right =
                random.nextInt(6) == 0
                        ? new Motion(new Riding(), left.spin())
                        : motion(random.nextInt(3) == 0 ? random.nextInt(7) : family, random);
        return new Pairing(
                new Part(left, Tether.of(TETHER), Place.usual(Side.LEFT, Plane.WALL), 1),
                new Part(right, Tether.of(TETHER), Place.usual(Side.RIGHT, Plane.WALL), 1),
                Timing.of(random.nextInt(2) / 2.0),
                random.nextInt(3) > 0 ? Direction.SAME : Direction.OPPOSITE,
                random.nextInt(4) == 0 ? Sense.COUNTER_CLOCKWISE : Sense.CLOCKWISE,
                OptionalDouble.of(60));
    }

    private static Motion motion(int family, Random random) {
        double by = 0.02 * random.nextInt(5);
        double tilt = Math.toRadians(5) * random.nextInt(3);
        return switch (family) {
            case 0 -> new Motion(Series.circle(0.52 + by), new Turns(1, 0));
            case 1 -> new Motion(Series.circle(0.05 + by), new Turns(1, tilt));
            case 2 -> new Motion(Series.circle(0.3 + by), new Turns(-1, tilt));
            case 3 -> new Motion(Series.circle(0.52 + by), new Turns(-2, tilt));
            case 4 -> new Motion(new Arc(0.52 + by, Math.PI / 2, Math.PI / 2), new Turns(2, tilt));
            case 5 -> new Motion(new Polygon(4, 0.52 + by, tilt), new Turns(1, 0));
            default ->
                    new Motion(
                            Series.ellipse(0.52 + by, 0.5, tilt),
                            new Stretches(
                                    tilt,
                                    List.of(
                                            new Stretches.Stretch(0.5, 1.5, Stretches.Ease.EVEN),
                                            new Stretches.Stretch(
                                                    0.5, -0.5, Stretches.Ease.RESTING))));
        };
    }
}
