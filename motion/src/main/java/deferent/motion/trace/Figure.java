package deferent.motion.trace;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;

/**
 * The light: what one head draws over one of its own cycles, measured in the plane of its motion.
 *
 * <p>A figure that leaves its plane (a toroid, a rider on a carrier of another plane) is measured
 * as it is cast onto that plane, save for its length and outer radius, which are taken in space,
 * and its width or height, whichever the turning foreshortens: there the extent across the plane
 * counts where it is greater.
 *
 * @param width extent along the plane's u, metres
 * @param height extent along the plane's v, metres
 * @param signedArea by Green's theorem, square metres; positive for what goes round the positive
 *     way (u toward v), each round counted
 * @param unionArea of all the path goes round at least once on balance (winding not zero), square
 *     metres
 * @param length the distance the head travels, metres
 * @param outerRadius the head's greatest distance from the centre of its part, metres
 * @param petals |n − 1| for flowers, 0 where n is −1, 0 or 1 and for what is no flower
 * @param cusps places where the head stops and leaves the way it came: a hypocycloid's points, and
 *     either end of a line or a swing
 * @param symmetryOrder into how many equal turns about its middle the figure can be turned onto
 *     itself, to a thousandth of its size; 0 for a circle and a still head, which any turn leaves
 *     as they were
 * @param selfCrossings points at which the path runs through itself at an angle, each once; a path
 *     passed over twice has none
 */
public record Figure(
        double width,
        double height,
        double signedArea,
        double unionArea,
        double length,
        double outerRadius,
        int petals,
        int cusps,
        int symmetryOrder,
        int selfCrossings) {
    public Figure {
        Refusal.numbers("the figure", width, height, signedArea, unionArea, length, outerRadius);
    }

    private static final int SAMPLES = 720;
    // Above this many turns a cycle, twice as many samples and more keep a turn's shape.
    private static final int USUAL_TURNS = 8;

    /**
     * The figure of a side's head. Length and signed area hold to about 1e-9 of the figure; so does
     * the union where the path does not cross itself, else it holds to about 1e-5.
     */
    public static Figure of(Trace trace, Side side) {
        return measured(trace, side, false);
    }

    /**
     * The same while something is dragged: length and areas to about 1e-6, a crossed union 1e-2.
     */
    public static Figure quick(Trace trace, Side side) {
        return measured(trace, side, true);
    }

    private static Figure measured(Trace trace, Side side, boolean quick) {
        int turns = trace.pairing().part(side).motion().spin().turns();
        int samples = SAMPLES * ((Math.abs(turns) + USUAL_TURNS - 1) / USUAL_TURNS);
        HeadPath path = HeadPath.of(trace, side, Math.max(samples, SAMPLES));
        int petals = trace.pairing().part(side).motion().petals();
        if (path.still()) {
            return new Figure(0, 0, 0, 0, 0, path.outerRadius(), petals, 0, 0, 0);
        }
        Symmetry symmetry = Symmetry.of(path);
        Travel travel = Travel.along(path, quick ? 1e-6 : 1e-10);
        int crossings = SelfCrossings.count(path);
        double area = Math.abs(travel.signedArea()) / symmetry.rounds();
        boolean simple = crossings == 0 && area <= path.width() * path.height();
        return new Figure(
                path.width(),
                path.height(),
                travel.signedArea(),
                simple ? area : wound(path.plane((quick ? 1 : 4) * path.count())),
                travel.length(),
                path.outerRadius(),
                petals,
                path.cusps(),
                symmetry.order(),
                crossings);
    }

    private static double wound(double[][] plane) {
        return WoundArea.of(plane[0], plane[1]);
    }
}
