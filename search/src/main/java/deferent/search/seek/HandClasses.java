package deferent.search.seek;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Hand paths gathered like head paths, with the index over them that head paths ask. Motions that
 * share one hand path are its riders; a path gone round twice a cycle is the same path.
 */
final class HandClasses {
    private final Space space;
    private final int[][] paths;
    private final int[] classOf;
    private final SeriesCurve[] curves;
    private final int[] riders;
    private final NearIndex index;

    /** All hand paths of a space. */
    HandClasses(Look look) {
        this(look, 0, Double.MAX_VALUE, true);
    }

    /** The hand paths whose {@link Look#number} is between; their classes are those of all. */
    static HandClasses within(Look look, double least, double most) {
        return new HandClasses(look, least, most, false);
    }

    private HandClasses(Look look, double least, double most, boolean all) {
        space = look.space();
        List<List<Integer>> found = new ArrayList<>();
        Map<Long, List<Integer>> bySignature = new HashMap<>();
        classOf = new int[all ? space.paths() : 0];
        Arrays.fill(classOf, -1);
        List<SeriesCurve> firsts = new ArrayList<>();
        for (int path = 0; path < space.paths(); path++) {
            if (!look.mayBeWithin(path, least, most)) {
                continue;
            }
            SeriesCurve curve = look.hand(path);
            double number = look.number(curve);
            if (curve.size() < Look.POINT
                    || number < least
                    || number > most
                    || space.count(path) == 0) {
                continue;
            }
            List<Integer> alike =
                    bySignature.computeIfAbsent(Signature.of(curve), s -> new ArrayList<>());
            int c = -1;
            for (int other : alike) {
                if (Alignment.same(firsts.get(other), curve, HeadClasses.SAME)) {
                    c = other;
                }
            }
            if (c < 0) {
                c = found.size();
                found.add(new ArrayList<>());
                firsts.add(curve);
                alike.add(c);
            }
            found.get(c).add(path);
            if (all) {
                classOf[path] = c;
            }
        }
        paths =
                found.stream()
                        .map(l -> l.stream().mapToInt(Integer::intValue).toArray())
                        .toArray(int[][]::new);
        curves = firsts.toArray(SeriesCurve[]::new);
        riders = new int[paths.length];
        double[] points = new double[paths.length * Descriptor.SIZE];
        for (int c = 0; c < paths.length; c++) {
            for (int path : paths[c]) {
                riders[c] += space.count(path);
            }
            Descriptor.write(curves[c], points, c * Descriptor.SIZE);
        }
        index = new NearIndex(points);
    }

    int count() {
        return paths.length;
    }

    SeriesCurve curve(int c) {
        return curves[c];
    }

    /** The least number of the class's paths. */
    int path(int c) {
        return paths[c][0];
    }

    /** How many motions ride this path. */
    int riders(int c) {
        return riders[c];
    }

    long[] keys(int c) {
        return Arrays.stream(paths[c])
                .mapToObj(space::riders)
                .flatMapToLong(Arrays::stream)
                .toArray();
    }

    /** The class of a motion's hand path, below 0 for a still hand. */
    int of(long key) {
        return classOf[space.path(key)];
    }

    NearIndex index() {
        return index;
    }
}
