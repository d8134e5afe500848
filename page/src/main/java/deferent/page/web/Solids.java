package deferent.page.web;

import de.javagl.jgltf.model.creation.MeshPrimitiveBuilder;
import de.javagl.jgltf.model.impl.DefaultMeshPrimitiveModel;
import java.nio.FloatBuffer;
import java.nio.IntBuffer;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** The bodies of a model: balls and bars, and for the right hand's things bodies with corners. */
final class Solids {
    private static final int ROUND = 20;

    private final List<Vector3D> points = new ArrayList<>();
    private final List<Vector3D> normals = new ArrayList<>();
    private final List<Integer> corners = new ArrayList<>();

    private Solids() {}

    /** A hand: a ball, or a cube as wide. */
    static DefaultMeshPrimitiveModel marker(boolean round, double radius) {
        return round ? ball(radius) : cube(radius);
    }

    /** A head: a ball, or an octahedron that fills about as much. */
    static DefaultMeshPrimitiveModel head(boolean round, double radius) {
        return round ? ball(radius) : octahedron(1.25 * radius);
    }

    /** From the origin along +Y. */
    static DefaultMeshPrimitiveModel bar(double radius, double length) {
        Solids bar = new Solids();
        for (int i = 0; i <= ROUND; i++) {
            double a = 2 * Math.PI * (i % ROUND) / ROUND;
            Vector3D out = new Vector3D(Math.sin(a), 0, Math.cos(a));
            bar.point(new Vector3D(radius, out), out);
            bar.point(new Vector3D(radius, out, length, Vector3D.PLUS_J), out);
            if (i > 0) {
                int at = 2 * i;
                bar.face(at - 2, at, at + 1, at - 1);
            }
        }
        return bar.built();
    }

    private static DefaultMeshPrimitiveModel ball(double radius) {
        Solids ball = new Solids();
        int rings = ROUND / 2;
        for (int j = 0; j <= rings; j++) {
            double up = Math.PI * (0.5 - (double) j / rings);
            for (int i = 0; i <= ROUND; i++) {
                double a = 2 * Math.PI * (i % ROUND) / ROUND;
                Vector3D out =
                        new Vector3D(
                                Math.cos(up) * Math.sin(a),
                                Math.sin(up),
                                Math.cos(up) * Math.cos(a));
                ball.point(new Vector3D(radius, out), out);
                if (i > 0 && j > 0) {
                    int at = j * (ROUND + 1) + i;
                    int above = at - ROUND - 1;
                    // At either pole a face has three corners.
                    if (j == 1) {
                        ball.triangle(at - 1, at, above);
                    } else if (j == rings) {
                        ball.triangle(at, above, above - 1);
                    } else {
                        ball.face(at - 1, at, above, above - 1);
                    }
                }
            }
        }
        return ball.built();
    }

    private static DefaultMeshPrimitiveModel cube(double half) {
        Solids cube = new Solids();
        Vector3D[] axes = {Vector3D.PLUS_I, Vector3D.PLUS_J, Vector3D.PLUS_K};
        for (int axis = 0; axis < 3; axis++) {
            for (int way = -1; way <= 1; way += 2) {
                Vector3D out = axes[axis].scalarMultiply(way);
                Vector3D a = axes[(axis + 1) % 3].scalarMultiply(way);
                Vector3D b = axes[(axis + 2) % 3];
                int at = cube.points.size();
                for (int[] corner : new int[][] {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}}) {
                    cube.point(
                            new Vector3D(half, out, half * corner[0], a, half * corner[1], b), out);
                }
                cube.face(at, at + 1, at + 2, at + 3);
            }
        }
        return cube.built();
    }

    private static DefaultMeshPrimitiveModel octahedron(double reach) {
        Solids body = new Solids();
        for (int octant = 0; octant < 8; octant++) {
            Vector3D x = new Vector3D((octant & 1) == 0 ? reach : -reach, 0, 0);
            Vector3D y = new Vector3D(0, (octant & 2) == 0 ? reach : -reach, 0);
            Vector3D z = new Vector3D(0, 0, (octant & 4) == 0 ? reach : -reach);
            Vector3D out = x.add(y).add(z).normalize();
            boolean turned = Integer.bitCount(octant) % 2 == 1;
            int at = body.points.size();
            for (Vector3D corner : turned ? List.of(x, z, y) : List.of(x, y, z)) {
                body.point(corner, out);
            }
            body.triangle(at, at + 1, at + 2);
        }
        return body.built();
    }

    private void point(Vector3D at, Vector3D normal) {
        points.add(at);
        normals.add(normal);
    }

    private void triangle(int a, int b, int c) {
        corners.addAll(List.of(a, b, c));
    }

    private void face(int a, int b, int c, int d) {
        triangle(a, b, c);
        triangle(a, c, d);
    }

    private DefaultMeshPrimitiveModel built() {
        return MeshPrimitiveBuilder.create()
                .setTriangles()
                .setIntIndicesAsShort(
                        IntBuffer.wrap(corners.stream().mapToInt(Integer::intValue).toArray()))
                .addPositions3D(buffer(points))
                .addNormals3D(buffer(normals))
                .build();
    }

    private static FloatBuffer buffer(List<Vector3D> all) {
        FloatBuffer out = FloatBuffer.allocate(3 * all.size());
        for (Vector3D p : all) {
            out.put((float) p.getX()).put((float) p.getY()).put((float) p.getZ());
        }
        out.rewind();
        return out;
    }
}
