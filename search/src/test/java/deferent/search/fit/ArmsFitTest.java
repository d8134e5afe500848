package deferent.search.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Size;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.body.Reach;
import deferent.reading.link.LinkReading;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ArmsFitTest {
    private static final Performer PERFORMER = Performer.of(1.70);

    /** Each with a link that holds: it still does, and the arms reach it. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "static spin vs triquetra",
                "isolation vs horizontal cat-eye hand radius 30cm, split time",
                "triquetra riding pendulum",
                "CAP riding pendulum",
                "four-petal antispin vs static spin",
                "horizontal cat-eye vs static spin"
            })
    void aLinkStaysALinkAndComesIntoReach(String phrase) {
        Pairing asked = Phrase.parse(phrase).pairing();
        ArmsFit fit = ArmsFit.of(asked, PERFORMER).orElseThrow();
        assertThat(fit.reached()).isTrue();
        assertThat(Math.toDegrees(fit.reach().turned().greatest())).isLessThanOrEqualTo(45);
        for (Side side : Side.values()) {
            LinkReading before = LinkReading.of(Trace.of(asked), side);
            LinkReading after = LinkReading.of(Trace.of(fit.pairing()), side);
            assertThat(after.shapeGap()).isCloseTo(before.shapeGap() * fit.scale(), within(2e-4));
        }
    }

    @Test
    void itIsTheLargestOfWholeCentimetres() {
        Pairing asked = Phrase.parse("static spin vs triquetra").pairing();
        ArmsFit fit = ArmsFit.of(asked, PERFORMER).orElseThrow();
        double tether = fit.pairing().part(Side.LEFT).tether().length();
        assertThat(tether).isEqualTo(Math.rint(tether * 100) / 100);
        Pairing larger = ArmsFit.scaled(asked, (tether + 0.01) / 0.60);
        assertThat(Reach.of(Trace.of(larger), PERFORMER).trunk().reached()).isFalse();
    }

    @Test
    void whatIsReachedAlreadyStaysAsItIs() {
        Pairing asked = Phrase.parse("isolation hand radius 20cm vs static spin").pairing();
        ArmsFit fit = ArmsFit.of(asked, PERFORMER).orElseThrow();
        assertThat(fit.scale()).isEqualTo(1);
        assertThat(fit.pairing()).isEqualTo(asked);
    }

    @Test
    void ofTethersOneOwnsTheLongestThatDoesIsTaken() {
        Pairing asked = Phrase.parse("static spin vs triquetra").pairing();
        List<Double> owned = List.of(0.30, 0.35, 0.50, 0.60);
        ArmsFit fit = ArmsFit.of(asked, PERFORMER, owned).orElseThrow();
        double free = ArmsFit.of(asked, PERFORMER).orElseThrow().scale() * 0.60;
        double longest =
                owned.stream().filter(l -> l <= free + 1e-3).max(Double::compare).orElseThrow();
        for (Side side : Side.values()) {
            assertThat(fit.pairing().part(side).tether().length()).isCloseTo(longest, within(1e-9));
        }
        assertThat(ArmsFit.of(asked, PERFORMER, List.of(0.60))).isEmpty();
    }

    @Test
    void aCentreThatNoArmComesNearIsFittedByNoSize() {
        Pairing before = Phrase.parse("static spin vs triquetra").pairing();
        Pairing asked = Size.of(Side.RIGHT, Size.Kind.CENTRE_Y).set(before, 2);
        assertThat(ArmsFit.of(asked, PERFORMER)).isEmpty();
    }

    @Test
    void aLinkIsClosedFirstWhereTheTethersStayLongEnough() {
        Pairing asked = Phrase.parse("static spin vs triquetra, right hand radius 54cm").pairing();
        ArmsFit fit = linked(asked);
        assertThat(fit.closedTether()).isEmpty();
        assertThat(fit.longEnough()).isTrue();
        assertThat(LinkReading.of(Trace.of(fit.pairing()), Side.LEFT).inPlaneGap())
                .isLessThan(1e-4);
    }

    @Test
    void aLinkThatWouldTakeTethersTooShortToSpinIsGivenUpAndTold() {
        Pairing asked = Phrase.parse("extension vs triquetra").pairing();
        ArmsFit fit = linked(asked);
        assertThat(fit.reached()).isTrue();
        assertThat(fit.longEnough()).isTrue();
        assertThat(fit.closedTether().orElseThrow()).isLessThan(ArmsFit.USUAL_SHORTEST);
        assertThat(fit.pairing()).isEqualTo(ArmsFit.of(asked, PERFORMER).orElseThrow().pairing());
    }

    @Test
    void theBodyBendsWhereTethersWouldBeTooShortOtherwiseAndNoMoreThanTheyTake() {
        Pairing asked = Phrase.parse("extension vs extension, opposites").pairing();
        assertThat(ArmsFit.of(asked, PERFORMER).orElseThrow().longEnough()).isFalse();
        ArmsFit fit = linked(asked);
        assertThat(fit.shorterTether()).isEqualTo(ArmsFit.USUAL_SHORTEST);
        assertThat(fit.reached()).isTrue();
        assertThat(fit.reach().bend()).isPresent();
    }

    @Test
    void seekingLooksWithinWhatTurningAloneReaches() {
        Pairing asked = Phrase.parse("isolation vs isolation, split time").pairing();
        assertThat(ArmsFit.of(asked, PERFORMER).orElseThrow().scale()).isEqualTo(1);
        ArmsFit turned = ArmsFit.within(asked, PERFORMER, 0.30).orElseThrow();
        assertThat(turned.scale()).isLessThan(1);
        assertThat(turned.reach().trunk().reached()).isTrue();
    }

    /** Both hands of a weave share one path; no link of head and hand is to take it from them. */
    @Test
    void noFitOfArmsTakesAWeaveApart() {
        Pairing asked = Phrase.parse("three-beat weave").pairing();
        Performer small = Performer.of(1.50);
        for (Side carrier : Side.values()) {
            ArmsFit fit =
                    ArmsFit.linked(asked, Fit.of(asked, carrier), small, List.of()).orElseThrow();
            Part left = fit.pairing().left();
            assertThat(left.motion()).isEqualTo(fit.pairing().right().motion());
            assertThat(left.tether()).isEqualTo(fit.pairing().right().tether());
            double before = asked.left().motion().weave().orElseThrow().out();
            double after = left.motion().weave().orElseThrow().out();
            assertThat(after).isCloseTo(before * fit.scale(), within(1e-5));
        }
    }

    private static ArmsFit linked(Pairing asked) {
        return ArmsFit.linked(asked, Fit.of(asked, Side.LEFT), PERFORMER, List.of()).orElseThrow();
    }
}
