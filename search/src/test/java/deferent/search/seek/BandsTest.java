package deferent.search.seek;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.motion.pairing.Refusal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What is cut into bands is found as if it had not been cut. */
class BandsTest {
    private static final List<SeekRequest> REQUESTS =
            List.of(
                    SeekRequest.of(Space.of(new Space.Grid(20, 2, 2, 4, 8, 3, true))),
                    SeekRequest.of(Space.of(new Space.Grid(7, 3, 1, 4, 8, 5, true)))
                            .withTolerance(0.03),
                    SeekRequest.of(Space.of(new Space.Grid(9, 3, 2, 5, 12, 4, true)))
                            .with(Tethers.FREE),
                    SeekRequest.of(Space.of(new Space.Grid(40, 2, 2, 4, 8, 2, true)))
                            .withTolerance(0));

    private record Name(long carrier, int rider) implements Comparable<Name> {
        @Override
        public int compareTo(Name o) {
            return Comparator.comparingLong(Name::carrier)
                    .thenComparingInt(Name::rider)
                    .compare(this, o);
        }
    }

    private record Row(int leads, int follows, double gap, long simplest) {}

    /** Classes, index and join over everything at once, as a seek does it. */
    private static Map<Name, Row> whole(SeekRequest request) {
        Look look = new Look(request.space(), request.tethers());
        long[] keys = request.space().build(0, request.space().keys());
        long[] signatures = new long[keys.length];
        for (int i = 0; i < keys.length; i++) {
            signatures[i] = Signature.of(look.head(keys[i]));
        }
        HeadClasses heads = HeadClasses.of(look, keys, signatures);
        HandClasses hands = new HandClasses(look);
        Matches matches = new Join(look, heads, hands, request.nearness()).slice(0, heads.count());
        Map<Name, Row> found = new TreeMap<>();
        for (int m = 0; m < matches.count(); m++) {
            long[] members = heads.members(matches.head(m));
            long simplest =
                    Arrays.stream(members)
                            .boxed()
                            .min(
                                    Comparator.comparingInt(
                                            (Long key) -> Sight.simplicity(request.space(), key)))
                            .orElseThrow();
            int hand = matches.hand(m);
            int path = request.space().path(hands.keys(hand)[0]);
            Row row = new Row(members.length, hands.keys(hand).length, matches.gap(m), simplest);
            assertThat(found.put(new Name(Arrays.stream(members).min().orElseThrow(), path), row))
                    .isNull();
        }
        return found;
    }

    private static Map<Name, Row> named(List<BandMatches> bands) {
        Map<Name, Row> found = new TreeMap<>();
        BandMatches all = BandMatches.all(bands);
        for (int m = 0; m < all.count(); m++) {
            Row row = new Row(all.leads()[m], all.follows()[m], all.gaps()[m], all.simplest()[m]);
            assertThat(found.put(new Name(all.carriers()[m], all.riders()[m]), row)).isNull();
        }
        return found;
    }

    @Test
    void allBandsTogetherFindWhatTheWholeSeekFinds() {
        for (SeekRequest request : REQUESTS) {
            Map<Name, Row> whole = whole(request);
            assertThat(whole).hasSizeGreaterThan(200);
            for (int count : new int[] {1, 7}) {
                Bands bands = Bands.of(request, count);
                assertThat(bands.count()).isEqualTo(count);
                List<BandMatches> parts = IntStream.range(0, count).mapToObj(bands::seek).toList();
                assertThat(named(parts)).isEqualTo(whole);
            }
        }
    }

    /** In whatever order keys come, in however many shares of signatures a band is split. */
    @Test
    void aBandMayBeSplitBySignatureAndItsKeysComeInAnyOrder() {
        SeekRequest request = REQUESTS.get(2);
        Bands bands = Bands.at(request, Bands.of(request, 3).edges());
        Random random = new Random(7);
        List<BandMatches> parts = new ArrayList<>();
        for (int band = 0; band < bands.count(); band++) {
            for (int share = 0; share < 3; share++) {
                List<long[]> mine = new ArrayList<>();
                long cut = request.space().keys() / 3 + 5;
                for (long[] range : new long[][] {{cut, request.space().keys()}, {0, cut}}) {
                    Keyed keyed = bands.key(range[0], range[1]);
                    for (int i = 0; i < keyed.count(); i++) {
                        if (keyed.bands()[i] == band
                                && Long.remainderUnsigned(keyed.signatures()[i], 3) == share) {
                            mine.add(new long[] {keyed.keys()[i], keyed.signatures()[i]});
                        }
                    }
                }
                Collections.shuffle(mine, random);
                parts.add(
                        bands.join(
                                band,
                                mine.stream().mapToLong(m -> m[0]).toArray(),
                                mine.stream().mapToLong(m -> m[1]).toArray()));
            }
        }
        assertThat(named(parts)).isEqualTo(whole(request));
    }

    @Test
    void everyMotionLiesInOneBandAndWhatIsRuledOutByItsPowerIsInAnother() {
        for (SeekRequest request : REQUESTS) {
            Bands bands = Bands.of(request, 5);
            Keyed all = bands.key(0, request.space().keys());
            assertThat(all.keys()).isEqualTo(request.space().build(0, request.space().keys()));
            for (int band = 0; band < 5; band++) {
                int wanted = band;
                assertThat(bands.key(0, request.space().keys(), band).keys())
                        .isEqualTo(
                                IntStream.range(0, all.count())
                                        .filter(i -> all.bands()[i] == wanted)
                                        .mapToLong(i -> all.keys()[i])
                                        .toArray());
            }
        }
    }

    /** What bands rest on: a curve's number changes no more than the curve. */
    @Test
    void numbersAreNeverFurtherApartThanCurves() {
        for (SeekRequest request : REQUESTS) {
            Look look = new Look(request.space(), request.tethers());
            long[] keys = request.space().build(0, request.space().keys());
            for (int i = 0; i < 2000; i++) {
                SeriesCurve head = look.head(keys[(int) (i * 7919L % keys.length)]);
                SeriesCurve hand = look.hand((int) (i * 104_729L % request.space().paths()));
                assertThat(Math.abs(look.number(head) - look.number(hand)))
                        .isLessThanOrEqualTo(Alignment.gap(head, hand) + 1e-6);
            }
        }
    }

    @Test
    void bandsHoldAboutAsManyMotionsEach() {
        Bands bands = Bands.of(REQUESTS.get(0), 4);
        long[] expected = bands.expected();
        long all = REQUESTS.get(0).space().count();
        int[] counts = new int[4];
        for (int band : bands.key(0, REQUESTS.get(0).space().keys()).bands()) {
            counts[band]++;
        }
        for (int band = 0; band < 4; band++) {
            assertThat((double) counts[band]).isBetween(0.15 * all, 0.35 * all);
            assertThat((double) expected[band]).isBetween(0.8 * counts[band], 1.2 * counts[band]);
        }
        assertThatThrownBy(() -> Bands.at(REQUESTS.get(0), new double[] {2, 1}))
                .isInstanceOf(Refusal.class);
    }
}
