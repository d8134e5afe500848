package deferent.search.seek;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Series;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PathOutlineTest {
    private static final Space SPACE = Space.of(new Space.Grid(5, 2, 2, 6, 24, 3, true));

    @Test
    void aFigureHasOneOutlineInWhateverTimingAndDirection() {
        SeriesCurve line = SeriesTerms.ofPath(Series.line(0.6, 0.4).course(), 256).curve();
        SeriesCurve doubled = SeriesTerms.ofPath(new Series(List.of()).course(), 16).curve();
        assertThat(doubled.size()).isZero();
        SeriesCurve even = PathOutline.of(line, 256);
        assertThat(PathOutline.gap(even, even.backwards())).isLessThan(1e-6);
        long[] keys = SPACE.build(0, SPACE.keys());
        for (int i = 0; i < keys.length; i += 1997) {
            SeriesCurve head = SPACE.head(keys[i]);
            if (head.size() > Look.POINT) {
                assertThat(
                                PathOutline.gap(
                                        PathOutline.of(head, 256),
                                        PathOutline.of(head.backwards().scaled(3), 256)))
                        .isLessThan(1e-3);
            }
        }
    }

    /**
     * What lets the search by figure stop: coarse descriptions are hardly further apart than the
     * outlines.
     */
    @Test
    void coarseDescriptionsAreNeverMuchFurtherApartThanTheOutlines() {
        long[] keys = SPACE.build(0, SPACE.keys());
        Random dice = new Random(8);
        double most = 0;
        for (int i = 0; i < 1000; i++) {
            SeriesCurve a = SPACE.head(keys[dice.nextInt(keys.length)]);
            SeriesCurve b = SPACE.head(keys[dice.nextInt(keys.length)]);
            if (Math.min(a.size(), b.size()) < Look.POINT) {
                continue;
            }
            double coarse =
                    Descriptor.distance(
                            Descriptor.of(PathOutline.of(a, 64)),
                            Descriptor.of(PathOutline.of(b, 64)));
            most =
                    Math.max(
                            most,
                            coarse
                                    - PathOutline.gap(
                                            PathOutline.of(a, 256), PathOutline.of(b, 256)));
        }
        assertThat(most).isLessThan(0.03);
    }
}
