package deferent.motion.pairing;

import java.util.ArrayList;
import java.util.List;

/**
 * A regular polygon walked at constant speed, once a cycle, the positive way.
 *
 * @param corners 3 to 24
 * @param radius from the centre to a corner, metres
 * @param start direction of the corner where the cycle starts, radians
 */
public record Polygon(int corners, double radius, double start) implements HandPath {
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
    public Polygon turned(double angle) {
        return new Polygon(corners, radius, start + angle);
    }
}
