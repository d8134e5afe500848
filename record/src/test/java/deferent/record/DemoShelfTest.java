package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.networknt.schema.InputFormat;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Size;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import deferent.reading.body.Reach;
import deferent.reading.body.TrunkTurn;
import deferent.reading.danger.Level;
import deferent.reading.link.LinkReading;
import deferent.reading.shared.LinkKind;
import deferent.reading.worked.Detail;
import deferent.search.whole.Readings;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the notes of the demo set claim is what the readings say. */
class DemoShelfTest {
    private static final double NOTHING = 1e-3;

    private static List<PatternDocument> patterns() {
        return DemoShelf.documents().stream()
                .filter(PatternDocument.class::isInstance)
                .map(PatternDocument.class::cast)
                .toList();
    }

    private static PatternDocument named(String name) {
        return patterns().stream().filter(p -> p.name().equals(name)).findFirst().orElseThrow();
    }

    private static LinkReading link(Pairing pairing, Side carrier) {
        return LinkReading.of(Trace.of(pairing), carrier);
    }

    private static LinkReading link(String name) {
        return link(named(name).pairing(), Side.LEFT);
    }

    @Test
    void thereAreADozenPairingsEachInventedAndEachWithANote() {
        assertThat(patterns())
                .hasSize(12)
                .allSatisfy(
                        p -> {
                            assertThat(p.author()).contains("invented demo data");
                            assertThat(p.note()).hasSizeGreaterThan(60);
                            assertThat(p.performer().assumed()).isFalse();
                        });
        assertThat(patterns()).extracting(PatternDocument::name).doesNotHaveDuplicates();
        assertThat(
                        DocumentProperties.SCHEMA.validate(
                                PatternJson.writeBundle(DemoShelf.documents()), InputFormat.JSON))
                .isEmpty();
    }

    @Test
    void everyPhraseSaysItsPairing() {
        Lexicon own = Lexicon.EMPTY;
        for (Document document : DemoShelf.documents()) {
            if (document instanceof MotionDocument motion) {
                own = motion.in(own);
            }
        }
        List<PatternDocument> all = new ArrayList<>(patterns());
        for (Document document : DemoShelf.documents()) {
            if (document instanceof SetDocument set) {
                set.steps().forEach(step -> all.add(((SetStep.Held) step.what()).pattern()));
            }
        }
        for (PatternDocument p : all) {
            assertThat(Phrase.parse(p.phrase().orElseThrow(), own).pairing())
                    .as(p.name())
                    .isEqualTo(p.pairing());
        }
    }

    @ParameterizedTest
    @CsvSource({
        "Ring under the eaves,TOUCHING",
        "The late lantern,FOLLOWED",
        "Two lamps on one shelf,CARRIED",
        "The sliding ladder,ROD"
    })
    void fourLinkExactlyEachByOtherMeans(String name, LinkKind kind) {
        LinkReading link = link(name);
        assertThat(link.kind()).isEqualTo(kind);
        assertThat(link.shapeGap()).isLessThan(NOTHING);
        assertThat(link.clockGap()).isLessThan(NOTHING);
        assertThat(named(name).tags()).contains("links");
    }

    @Test
    void theRingTouchesInNeighbouringPlanes() {
        LinkReading link = link("Ring under the eaves");
        assertThat(link.inPlaneGap()).isLessThan(NOTHING);
        assertThat(link.depthGap()).isCloseTo(0.08, within(1e-9));
    }

    @Test
    void theLateLanternIsHalfACycleLateAndTouchesInSplitTime() {
        assertThat(Math.abs(link("The late lantern").lag())).isCloseTo(0.5, within(1e-6));
        Pairing split =
                named("The late lantern").pairing().with(deferent.motion.pairing.Timing.SPLIT);
        assertThat(link(split, Side.LEFT).kind()).isEqualTo(LinkKind.TOUCHING);
    }

    @Test
    void eachLampIsCarriedThreeTenthsOfAMetreBesideTheOther() {
        Pairing lamps = named("Two lamps on one shelf").pairing();
        for (Side side : Side.values()) {
            LinkReading link = link(lamps, side);
            assertThat(link.kind()).isEqualTo(LinkKind.CARRIED);
            double out = side == Side.LEFT ? -0.3 : 0.3;
            assertThat(link.offset().getX()).isCloseTo(out, within(1e-6));
            assertThat(link.offset().getY()).isCloseTo(0, within(1e-6));
        }
    }

    @Test
    void noneIsADangerWithSoftHeads() {
        assertThat(patterns())
                .allSatisfy(
                        p ->
                                assertThat(
                                                Readings.of(
                                                                p.pairing(),
                                                                p.performer(),
                                                                p.kit(),
                                                                Detail.LIVE,
                                                                Lexicon.EMPTY)
                                                        .dangers()
                                                        .reading()
                                                        .orElseThrow()
                                                        .all())
                                        .as(p.name())
                                        .noneMatch(d -> d.level() == Level.DANGER));
    }

    @Test
    void everyPairingIsReachedByItsPerformerWithTheTrunkTurned() {
        assertThat(patterns())
                .allSatisfy(
                        p -> {
                            Reach reach = Reach.of(Trace.of(p.pairing()), p.performer());
                            assertThat(reach.trunk().reached()).as(p.name()).isTrue();
                            assertThat(reach.trunk().greatest())
                                    .as(p.name())
                                    .isLessThanOrEqualTo(TrunkTurn.MOST);
                        });
    }

    @Test
    void theLadderKeepsItsLength() {
        Samples samples = Trace.of(named("The sliding ladder").pairing()).samples(360);
        double[] head = samples.head(Side.LEFT);
        double[] hand = samples.hand(Side.RIGHT);
        double first = Samples.point(head, 0).distance(Samples.point(hand, 0));
        for (int i = 0; i < samples.count(); i++) {
            assertThat(Samples.point(head, i).distance(Samples.point(hand, i)))
                    .isCloseTo(first, within(1e-9));
        }
    }

    @ParameterizedTest
    @CsvSource({"The swing by the gate", "Three leaves from a branch"})
    void twoAreDrivenByAPendulumAndTouchIt(String name) {
        Pairing pairing = named(name).pairing();
        assertThat(pairing.setsOwnTempo()).isTrue();
        assertThat(pairing.tempo()).isLessThan(Pairing.USUAL_TEMPO);
        Side pendulum = pairing.rider().orElseThrow().other();
        assertThat(link(pairing, pendulum).kind()).isEqualTo(LinkKind.TOUCHING);
        assertThat(link(pairing, pendulum).inPlaneGap()).isLessThan(NOTHING);
    }

    @Test
    void aCatEyeCapInItsOwnTimeStraysFromThePendulumByTwoCentimetres() {
        LinkReading link = link(Phrase.parse("pendulum vs cat-eye CAP").pairing(), Side.LEFT);
        assertThat(link.shapeGap()).isLessThan(NOTHING);
        assertThat(link.clockGap()).isGreaterThan(0.01);
        assertThat(link.inPlaneGap()).isCloseTo(0.02, within(0.005));
    }

    @Test
    void twoLeaveTheWall() {
        Samples globe = Trace.of(named("The paper globe").pairing()).samples(360);
        double least = Double.MAX_VALUE;
        double most = -Double.MAX_VALUE;
        for (int i = 0; i < globe.count(); i++) {
            double z = Samples.point(globe.head(Side.LEFT), i).getZ();
            least = Math.min(least, z);
            most = Math.max(most, z);
        }
        assertThat(most - least).as("the globe's depth").isGreaterThan(0.2);

        Pairing level = named("Round the brazier").pairing();
        for (Side side : Side.values()) {
            assertThat(level.part(side).place().plane()).isEqualTo(Plane.FLOOR);
        }
        assertThat(link(level, Side.LEFT).kind()).isEqualTo(LinkKind.TOUCHING);
    }

    @Test
    void theSmallRingMissesBy10CmAndClosesWithEitherOfTheTwoSizes() {
        Pairing small = named("A ring too small").pairing();
        assertThat(link(small, Side.LEFT).kind()).isEqualTo(LinkKind.NONE);
        assertThat(link(small, Side.LEFT).shapeGap()).isCloseTo(0.10, within(NOTHING));
        Pairing wider = Size.of(Side.RIGHT, Size.Kind.HAND_RADIUS).set(small, 0.45);
        Pairing shorter = Size.of(Side.LEFT, Size.Kind.TETHER).set(small, 0.35);
        for (Pairing closed : List.of(wider, shorter)) {
            assertThat(link(closed, Side.LEFT).kind()).isEqualTo(LinkKind.TOUCHING);
            assertThat(link(closed, Side.LEFT).inPlaneGap()).isLessThan(NOTHING);
        }
    }

    @Test
    void noSizeMakesTheArcARing() {
        Pairing arc = named("The arc that is no ring").pairing();
        assertThat(link(arc, Side.LEFT).kind()).isEqualTo(LinkKind.NONE);
        for (double radius = 0.1; radius < 1.3; radius += 0.1) {
            Pairing tried = Size.of(Side.RIGHT, Size.Kind.HAND_RADIUS).set(arc, radius);
            assertThat(link(tried, Side.LEFT).shapeGapAtLeast())
                    .as("hand circle of " + radius)
                    .isGreaterThan(0.08);
        }
    }

    @Test
    void twoGoRoundWhileThreeDo() {
        Pairing pairing = named("Two against three").pairing();
        assertThat(pairing.left().cycles()).isEqualTo(2);
        assertThat(pairing.right().cycles()).isEqualTo(3);
    }

    @Test
    void theLanternLoopIsTooWideForTheUsualIsolationButNotForANarrowOne() {
        Pairing loop = named("The lantern loop").pairing();
        assertThat(loop.right().motion().path().radius()).isCloseTo(0.42, within(1e-9));
        assertThat(link(loop, Side.LEFT).kind()).isEqualTo(LinkKind.NONE);
        // An isolation's head goes round on tether less hand circle.
        Pairing narrow = Size.of(Side.LEFT, Size.Kind.HAND_RADIUS).set(loop, 0.60 - 0.42);
        assertThat(link(narrow, Side.LEFT).shapeGap()).isLessThan(NOTHING);
    }
}
