package deferent.search.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Arc;
import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Swing;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.motion.trade.Trade;
import deferent.motion.trade.TradeMotion;
import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import deferent.reading.body.Performer;
import deferent.reading.link.LinkReading;
import deferent.reading.shared.LinkKind;
import deferent.reading.tether.KeepTheFigure;
import deferent.reading.tether.Kit;
import deferent.reading.tether.Steadiness;
import deferent.search.path.LeftOut.Why;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class PathSearchTest {
    private static Pairing said(String phrase) {
        return Phrase.parse(phrase).pairing();
    }

    private static Path path(Pairing pairing) {
        return PathSearch.of(pairing, Performer.USUAL, Kit.USUAL, Lexicon.EMPTY);
    }

    private static Drill drill(Path path, DrillKind kind) {
        return path.drills().stream().filter(d -> d.kind() == kind).findFirst().orElseThrow();
    }

    private static Drill alone(Path path, Side side) {
        return path.drills().stream()
                .filter(d -> d.kind() == DrillKind.ALONE)
                .filter(d -> d.hand().equals(Optional.of(side)))
                .findFirst()
                .orElseThrow();
    }

    /** Every pattern that the trade has a word for, with another hand where it leaves one free. */
    private static Pairing trade(TradeMotion row, Any any) {
        String word = row.said().equals("loops") ? "loops 1 of 30 cm plus -2 of 10 cm" : row.said();
        boolean both = row.both().isPresent();
        String other = any.of("static spin", "isolation", "triquetra", "extension");
        return said(
                (both ? word : word + " vs " + other)
                        + (both ? "" : any.of("", ", split time", ", opposite direction"))
                        + any.of(", tether 40 cm", ", tether 50 cm"));
    }

    @Property(tries = 2)
    void theOrderOfEveryTradePatternHolds(Any any) {
        for (TradeMotion row : Trade.motions()) {
            Pairing whole = trade(row, any);
            Path path = path(whole);
            assertThat(path.whole().pairing()).as(row.said()).isEqualTo(whole);
            afterWhatItIsMadeOf(path, row.said());
            easierVersionsFirst(path, row.said());
            readsBack(path, row.said());
        }
    }

    private static void afterWhatItIsMadeOf(Path path, String what) {
        List<Drill> drills = path.drills();
        Pairing whole = path.whole().pairing();
        long both = drills.stream().filter(d -> d.kind() != DrillKind.ALONE).count();
        for (Side side : Side.values()) {
            Optional<Pairing> hand =
                    Resting.alone(whole, side, Performer.USUAL)
                            .filter(pairing -> Phrase.write(pairing).isPresent());
            List<Integer> stands =
                    IntStream.range(0, drills.size())
                            .filter(i -> Optional.of(drills.get(i).pairing()).equals(hand))
                            .boxed()
                            .toList();
            assertThat(stands).as(what).hasSize(hand.isPresent() ? 1 : 0);
            for (int at : stands) {
                assertThat((long) at).as(what).isLessThan(drills.size() - both);
                for (int i = (int) (drills.size() - both); i < drills.size(); i++) {
                    assertThat(drills.get(i).needs()).as(what).contains(at);
                }
            }
        }
        assertThat(path.whole().needs()).as(what).hasSize(drills.size() - 1);
    }

    private static void easierVersionsFirst(Path path, String what) {
        double[] versions =
                path.drills().stream()
                        .filter(d -> d.kind() != DrillKind.ALONE)
                        .mapToDouble(d -> d.hardness().total())
                        .toArray();
        assertThat(versions).as(what).isSorted();
        double[] hands =
                path.drills().stream()
                        .filter(d -> d.kind() == DrillKind.ALONE)
                        .mapToDouble(d -> d.hardness().total())
                        .toArray();
        assertThat(hands).as(what).isSorted();
    }

    private static void readsBack(Path path, String what) {
        for (Drill drill : path.drills()) {
            if (drill.kind() != DrillKind.WHOLE) {
                assertThat(drill.phrase()).as(what).isPresent();
            }
            drill.phrase()
                    .ifPresent(
                            phrase ->
                                    assertThat(said(phrase))
                                            .as(what + ": " + phrase)
                                            .isEqualTo(drill.pairing()));
        }
    }

    @Test
    void aHandAloneDoesWhatItDoesInThePatternWhileTheOtherPoiHangsStill() {
        Pairing whole = said("isolation vs triquetra, opposite direction, tether 45 cm, tempo 50");
        Path path = path(whole);
        Trace all = Trace.of(whole);
        for (Side side : Side.values()) {
            Trace trace = Trace.of(alone(path, side).pairing());
            assertThat(trace.pairing().period()).isCloseTo(whole.period(), within(1e-6));
            for (double share : new double[] {0, 0.13, 0.5, 0.81}) {
                double t = share * whole.period();
                assertThat(trace.head(side).position(t).distance(all.head(side).position(t)))
                        .isLessThan(1e-5);
                assertThat(trace.hand(side).position(t).distance(all.hand(side).position(t)))
                        .isLessThan(1e-5);
                Side still = side.other();
                assertThat(trace.head(still).at(t).velocity().getNorm()).isLessThan(1e-9);
                assertThat(
                                trace.hand(still)
                                        .position(t)
                                        .subtract(trace.head(still).position(t))
                                        .getY())
                        .isCloseTo(0.45, within(1e-9));
            }
        }
    }

    @Test
    void handsThatAreTakenApartDoNotMeet() {
        Drill apart = drill(path(said("static spin vs triquetra, tether 45 cm")), DrillKind.APART);
        Trace trace = Trace.of(apart.pairing());
        assertThat(LinkReading.both(trace))
                .extracting(LinkReading::kind)
                .doesNotContain(LinkKind.TOUCHING);
        assertThat(apart.hardness().meeting()).isZero();
    }

    @Test
    void whatHasToMeetIsHarderThanTheSameApart() {
        Path path = path(said("static spin vs triquetra, tether 45 cm"));
        assertThat(path.whole().hardness().meeting()).isGreaterThan(0);
        assertThat(path.whole().hardness().total())
                .isGreaterThan(drill(path, DrillKind.APART).hardness().total());
    }

    @Test
    void slipsCountByHowOftenTheyDoubleBeforeTheyCanBeAnswered() {
        Pairing pairing = said("static spin vs triquetra, tether 45 cm");
        Trace trace = Trace.of(pairing);
        double most =
                Stream.of(Side.values())
                        .map(side -> Steadiness.of(KeepTheFigure.of(trace, side, Kit.USUAL)))
                        .mapToDouble(Steadiness::growthInReaction)
                        .max()
                        .orElseThrow();
        assertThat(Hardness.of(pairing, Performer.USUAL, Kit.USUAL).slips())
                .isCloseTo(Math.log(most) / Math.log(2), within(1e-9));
    }

    @Test
    void aHandThatDoesNotGetThereIsHarder() {
        Pairing within = said("static spin vs triquetra, tether 40 cm");
        Pairing beyond = said("static spin vs triquetra centre 60 cm right, tether 40 cm");
        assertThat(Hardness.of(within, Performer.USUAL, Kit.USUAL).reach()).isZero();
        assertThat(Hardness.of(beyond, Performer.USUAL, Kit.USUAL).reach()).isGreaterThan(0.5);
    }

    @Test
    void aQuickPatternIsPractisedSlowerAndOneThatIsNoEasierSlowerLarger() {
        Path quick = path(said("static spin vs triquetra, tether 30 cm, tempo 120"));
        Drill slower = drill(quick, DrillKind.SLOWER);
        assertThat(slower.pairing().tempo()).isEqualTo(96);
        assertThat(slower.hardness().slips()).isGreaterThanOrEqualTo(0);
        Path slow = path(said("static spin vs triquetra, tether 30 cm"));
        assertThat(slow.drills()).extracting(Drill::kind).doesNotContain(DrillKind.SLOWER);
        Drill larger = drill(slow, DrillKind.LARGER);
        assertThat(larger.pairing().left().tether().length()).isCloseTo(0.36, within(1e-9));
        assertThat(larger.pairing().tempo()).isEqualTo(55);
    }

    @Test
    void aRidersHandAloneGoesAlongTheArcThatTheOtherHeadSwings() {
        Pairing whole = said("CAP riding pendulum, tether 42 cm");
        Drill alone = alone(path(whole), Side.LEFT);
        HandPath path = alone.pairing().left().motion().path();
        assertThat(path).isEqualTo(new Arc(0.42, Swing.DOWN, Math.PI / 2));
        // The same poi, and as long a cycle as a tempo in whole numbers lets it have.
        assertThat(alone.pairing().left().motion().spin()).isEqualTo(whole.left().motion().spin());
        assertThat(alone.pairing().tempo()).isEqualTo(39);
    }

    @Test
    void aSwingIsLearntOnASmallerOneWithEitherHandAloneAndWithAHandThatKeepsStill() {
        Path path = path(said("CAP riding pendulum, tether 42 cm"));
        assertThat(path.drills())
                .extracting(Drill::kind)
                .containsOnlyOnce(DrillKind.SMALLER_SWING, DrillKind.STILL_HAND)
                .filteredOn(kind -> kind == DrillKind.ALONE)
                .hasSize(2);
        Pairing smaller = drill(path, DrillKind.SMALLER_SWING).pairing();
        assertThat(smaller).isEqualTo(said("CAP riding pendulum amplitude 45°, tether 42 cm"));
        assertThat(Hardness.touching(Trace.of(smaller), Side.RIGHT)).isTrue();
    }

    @Test
    void whatIsLeftOutSaysWhy() {
        Path swing = path(said("CAP riding pendulum, tether 42 cm"));
        assertThat(swing.leftOut())
                .contains(
                        new LeftOut(DrillKind.APART, Optional.empty(), Why.BOUND),
                        new LeftOut(DrillKind.SLOWER, Optional.empty(), Why.OWN_TEMPO));
        Path plain = path(said("static spin vs triquetra, tether 45 cm"));
        assertThat(plain.leftOut())
                .contains(
                        new LeftOut(
                                DrillKind.STILL_HAND,
                                Optional.of(Side.RIGHT),
                                Why.ANOTHER_IS_NEARER));
        Path outside =
                path(
                        said(
                                "isolation centre 60 cm left vs isolation centre 60 cm right, tether 30 cm"));
        assertThat(outside.leftOut())
                .contains(new LeftOut(DrillKind.APART, Optional.empty(), Why.NOTHING_MEETS));
        // Nothing is both a drill and left out.
        for (Path path : List.of(swing, plain, outside)) {
            for (LeftOut left : path.leftOut()) {
                assertThat(path.drills())
                        .noneMatch(d -> d.kind() == left.kind() && d.hand().equals(left.hand()));
            }
        }
    }

    @Test
    void aSearchTellsHowFarItHasComeAndStopsWhereAsked() {
        Pairing whole = said("static spin vs triquetra");
        List<Integer> heard = new ArrayList<>();
        Optional<Path> stopped =
                PathSearch.of(
                        whole,
                        Performer.USUAL,
                        Kit.USUAL,
                        Lexicon.EMPTY,
                        heard::add,
                        () -> heard.size() > 2);
        assertThat(stopped).isEmpty();
        assertThat(heard).containsExactly(0, 1, 2);
    }
}
