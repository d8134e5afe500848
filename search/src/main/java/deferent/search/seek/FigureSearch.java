package deferent.search.seek;

import deferent.motion.pairing.Drawn;
import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.Tether;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.IntStream;

/**
 * Which motions draw a given figure. Timing is forgotten: what is compared are outlines walked at
 * constant speed. Every head class's outline is described coarsely, and those whose description is
 * nearest are compared in full, as far as a full comparison can still beat the answers there are.
 */
final class FigureSearch {
    private static final int COARSE = 64;
    private static final int FINE = 256;
    private static final int SLICE = 4096;
    // An outline of 64 points stands this far, as a share of its size, from one of very many, at
    // most, for figures
    // of up to a dozen loops; measured by the tests.
    private static final double COARSENESS = 0.03;

    // Gaps that differ by less than this share of the figure's size count as the same.
    private static final double EVEN = 1e-6;

    private final Space space;
    private final HeadClasses heads;

    FigureSearch(Space space, HeadClasses heads) {
        this.space = space;
        this.heads = heads;
    }

    /**
     * The nearest {@code count} motions, nearest first, then simplest, one a head path; fewer where
     * it was stopped.
     */
    List<Drawer> nearest(
            Drawn figure, int count, Consumer<SeekProgress> listener, BooleanSupplier stop) {
        SeriesCurve wanted = sampled(figure.course());
        double size = PathOutline.size(wanted, FINE);
        SeriesCurve coarse = PathOutline.of(wanted, COARSE);
        SeriesCurve fine = PathOutline.of(wanted, FINE);
        double[] at = Descriptor.of(coarse);
        int all = heads.count();
        double[] apart = new double[all];
        for (int from = 0; from < all; from += 16 * SLICE) {
            if (stop.getAsBoolean()) {
                return List.of();
            }
            int start = from;
            int end = Math.min(all, from + 16 * SLICE);
            IntStream.range(0, (end - start + SLICE - 1) / SLICE)
                    .parallel()
                    .forEach(
                            s -> {
                                int low = start + s * SLICE;
                                for (int c = low; c < Math.min(end, low + SLICE); c++) {
                                    apart[c] = apart(c, at);
                                }
                            });
            listener.accept(new SeekProgress(SeekProgress.Stage.JOIN, end, all, 0));
        }
        List<Integer> order =
                IntStream.range(0, all)
                        .boxed()
                        .sorted(Comparator.comparingDouble(c -> apart[c]))
                        .toList();
        List<Drawer> found = new ArrayList<>();
        for (int c : order) {
            if (found.size() >= count
                    && apart[c] - COARSENESS > found.get(count - 1).gap() / size) {
                break;
            }
            long key = heads.key(c, 0);
            SeriesCurve head = space.head(key);
            double gap = PathOutline.gap(PathOutline.of(head, FINE), fine) * size;
            int simplicity = Sight.simplicity(space, key);
            if (found.size() < count
                    || before(gap / size, simplicity, found.get(count - 1), size)) {
                Tether tether =
                        Tether.of(
                                Math.min(
                                        5,
                                        PathOutline.size(wanted, FINE)
                                                / PathOutline.size(head, FINE)));
                found.add(
                        new Drawer(
                                key,
                                c,
                                gap,
                                tether,
                                space.motion(key, tether.length()),
                                Saying.of(space.motion(key, tether.length()), tether)));
                found.sort(
                        Comparator.comparingDouble((Drawer d) -> level(d.gap() / size))
                                .thenComparingInt(d -> Sight.simplicity(space, d.key())));
                if (found.size() > count) {
                    found.remove(count);
                }
            }
        }
        return List.copyOf(found);
    }

    private boolean before(double gap, int simplicity, Drawer last, double size) {
        double there = level(last.gap() / size);
        return level(gap) < there
                || level(gap) == there && simplicity < Sight.simplicity(space, last.key());
    }

    // Very many motions draw a circle, all as well but for rounding; then the simpler comes first.
    private static double level(double gap) {
        return Math.rint(gap / EVEN);
    }

    private double apart(int c, double[] at) {
        SeriesCurve head = space.head(heads.key(c, 0));
        return head.size() < Look.POINT
                ? Double.MAX_VALUE
                : Descriptor.distance(Descriptor.of(PathOutline.of(head, COARSE)), at);
    }

    private static SeriesCurve sampled(HandPath.Course course) {
        return SeriesTerms.ofPath(course, 1024).curve();
    }
}
