package deferent.motion.pairing;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * A regular polygon walked at constant speed, once a cycle, the positive way.
 *
 * @param corners 3 to 24
 * @param radius from the centre to a corner, metres
 * @param start direction of the corner where the cycle starts, radians
 */
public record Polygon(int corners, double radius, double start) implements HandPath {
    /** What documents and phrases know of it. */
    public static final Form FORM =
            new Form(
                    "polygon",
                    "the hand walks a regular polygon",
                    "four corners, one tether from the centre to each",
                    List.of(
                            Measure.whole("corners", "corners", 3, 24, 4)
                                    .meaning(
                                            "how many corners a polygon has",
                                            "four",
                                            "corner",
                                            "sided"),
                            Measure.length("radius", "hand radius", 1),
                            Measure.angle("start", "hand start", 0, false)),
                    sizes -> new Polygon(sizes.get(0).intValue(), sizes.get(1), sizes.get(2)));

    public Polygon {
        Refusal.within(corners, 3, 24, "corners of a polygon", "corners");
        Refusal.positive(radius, 10, "radius of a polygon", "m");
        Refusal.angle(start, "start of a polygon");
    }

    @Override
    public Course course() {
        return new Course() {
            @Override
            public PlaneJet at(double phase) {
                double along = along(phase);
                int edge = (int) Math.floor(along);
                return edge < corners ? onEdge(edge, along) : onEdge(0, 0);
            }

            @Override
            public PlaneJet before(double phase) {
                double along = along(phase);
                int edge = (int) Math.ceil(along) - 1;
                return edge < 0 ? onEdge(corners - 1, corners) : onEdge(edge, along);
            }
        };
    }

    // Edges walked since the cycle's start; a corner's phase rounded either way is that corner.
    private double along(double phase) {
        double along = (phase - Math.floor(phase)) * corners;
        double corner = Math.rint(along);
        return Math.abs(along - corner) < 1e-12 ? corner : along;
    }

    private PlaneJet onEdge(int edge, double along) {
        double a = start + 2 * Math.PI * edge / corners;
        double b = start + 2 * Math.PI * (edge + 1) / corners;
        double share = along - edge;
        double du = radius * (Math.cos(b) - Math.cos(a));
        double dv = radius * (Math.sin(b) - Math.sin(a));
        return new PlaneJet(
                Jet.line(radius * Math.cos(a) + share * du, du * corners),
                Jet.line(radius * Math.sin(a) + share * dv, dv * corners));
    }

    @Override
    public List<Break> breaks() {
        List<Break> found = new ArrayList<>();
        for (int i = 0; i < corners; i++) {
            found.add(new Break((double) i / corners, 1, "corner of the hand path"));
        }
        return List.copyOf(found);
    }

    @Override
    public Polygon scaled(double factor) {
        return new Polygon(corners, radius * factor, start);
    }

    @Override
    public Polygon resized(double other) {
        return new Polygon(corners, other, start);
    }

    @Override
    public OptionalDouble tilt() {
        return OptionalDouble.of(start);
    }

    @Override
    public String noun() {
        return switch (corners) {
            case 3 -> "triangle";
            case 4 -> "square";
            case 5 -> "pentagon";
            case 6 -> "hexagon";
            case 8 -> "octagon";
            default -> corners + "-corner polygon";
        };
    }

    @Override
    public String goes() {
        return "goes round "
                + (corners < 5 ? "a " + noun() : "a polygon of " + corners + " corners");
    }

    @Override
    public int sense() {
        return 1;
    }

    @Override
    public <T> T match(
            Function<Form.Sized, T> sized, Function<Series, T> summed, Function<Drawn, T> drawn) {
        return sized.apply(FORM.of((double) corners, radius, start));
    }

    @Override
    public Polygon turned(double angle) {
        return new Polygon(corners, radius, start + angle);
    }
}
