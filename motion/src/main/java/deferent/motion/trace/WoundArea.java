package deferent.motion.trace;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.noding.IntersectionAdder;
import org.locationtech.jts.noding.MCIndexNoder;
import org.locationtech.jts.noding.NodedSegmentString;
import org.locationtech.jts.noding.Noder;
import org.locationtech.jts.noding.OrientedCoordinateArray;
import org.locationtech.jts.noding.SegmentString;
import org.locationtech.jts.noding.snap.SnappingNoder;
import org.locationtech.jts.operation.polygonize.Polygonizer;

/**
 * The area of all that a closed path winds round on balance: the sampled path is cut where it
 * crosses itself, the pieces are joined into faces, and the faces whose winding number is not zero
 * are added up.
 */
final class WoundArea {
    private static final double SNAP = 1e-8;

    /** How far a quick path's chords may stray from the samples, as a share of width and height. */
    static final double THIN = 2e-4;

    private WoundArea() {}

    /** From that many points of the exact path. */
    static double of(HeadPath path, int corners) {
        double[][] plane = path.plane(corners);
        return of(SelfCrossings.ring(plane[0], plane[1]), path.width() + path.height());
    }

    /** From the samples, thinned where they hardly bend. */
    static double quick(HeadPath path) {
        double size = path.width() + path.height();
        return of(thinned(SelfCrossings.ring(path.u(), path.v()), THIN * size), size);
    }

    // Drops points as long as the middle one of those dropped lies within {@code off} of the chord.
    private static Coordinate[] thinned(Coordinate[] ring, double off) {
        List<Coordinate> kept = new ArrayList<>();
        int from = 0;
        kept.add(ring[0]);
        for (int to = 2; to < ring.length; to++) {
            Coordinate a = ring[from];
            Coordinate b = ring[to];
            Coordinate middle = ring[(from + to) / 2];
            double chord = Math.hypot(b.x - a.x, b.y - a.y);
            double aside =
                    Math.abs((b.x - a.x) * (middle.y - a.y) - (middle.x - a.x) * (b.y - a.y));
            if (aside > off * chord || a.distance(middle) > chord) {
                from = to - 1;
                kept.add(ring[from]);
            }
        }
        kept.add(ring[0]);
        return kept.toArray(new Coordinate[0]);
    }

    private static double of(Coordinate[] ring, double size) {
        Noder swift = new MCIndexNoder(new IntersectionAdder(new RobustLineIntersector()));
        Polygonizer faces = faces(swift, ring);
        boolean clean =
                faces.getDangles().isEmpty()
                        && faces.getCutEdges().isEmpty()
                        && faces.getInvalidRingLines().isEmpty();
        if (!clean) {
            // Where the path runs along itself, points next to each other have to be made one.
            faces = faces(new SnappingNoder(SNAP * size), ring);
        }
        double sum = 0;
        for (Object face : faces.getPolygons()) {
            Polygon polygon = (Polygon) face;
            if (windings(ring, polygon.getInteriorPoint().getCoordinate()) != 0) {
                sum += polygon.getArea();
            }
        }
        return sum;
    }

    private static Polygonizer faces(Noder noder, Coordinate[] ring) {
        noder.computeNodes(List.of(new NodedSegmentString(ring, null)));
        GeometryFactory lines = new GeometryFactory();
        Polygonizer faces = new Polygonizer();
        for (SegmentString piece : pieces(noder.getNodedSubstrings())) {
            faces.add(lines.createLineString(piece.getCoordinates()));
        }
        return faces;
    }

    // Each piece once, whichever way it runs: faces are made of edges, not of passes.
    private static List<SegmentString> pieces(Collection<?> noded) {
        List<SegmentString> all = new ArrayList<>();
        Set<Object> seen = new HashSet<>();
        for (Object piece : noded) {
            SegmentString string = (SegmentString) piece;
            if (seen.add(new OrientedCoordinateArray(string.getCoordinates()))) {
                all.add(string);
            }
        }
        return all;
    }

    // Crossings of the ray to the right, upward counted up and downward down.
    private static int windings(Coordinate[] ring, Coordinate p) {
        int count = 0;
        for (int i = 0; i + 1 < ring.length; i++) {
            Coordinate a = ring[i];
            Coordinate b = ring[i + 1];
            if (a.y <= p.y != b.y <= p.y) {
                double side = (b.x - a.x) * (p.y - a.y) - (p.x - a.x) * (b.y - a.y);
                if (b.y > a.y ? side > 0 : side < 0) {
                    count += b.y > a.y ? 1 : -1;
                }
            }
        }
        return count;
    }
}
