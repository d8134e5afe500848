package deferent.tell;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.body.Reach;
import deferent.reading.worked.Detail;
import deferent.search.fit.Fit;
import deferent.search.fit.FitReading;
import deferent.search.fit.Neighbours;
import deferent.search.fit.Sensitivity;
import deferent.search.whole.Readings;
import java.util.List;
import org.junit.jupiter.api.Test;

class TellFitTest {
    private static List<Told> told(String phrase) {
        Pairing pairing = Phrase.parse(phrase).pairing();
        return TellFit.of(Fit.of(pairing, Side.LEFT), pairing);
    }

    @Test
    void aRingTooSmallIsToldBothSizesThatCloseIt() {
        List<Told> told = told("static spin vs triquetra hand radius 45 cm");
        assertThat(told.get(0).tone()).isEqualTo(Told.Tone.GOOD);
        assertThat(told.get(0).text()).startsWith("It can close in 2 ways");
        assertThat(told)
                .extracting(Told::text)
                .contains(
                        "Make the left tether 45 cm (now 60 cm).",
                        "Make the right hand radius 60 cm (now 45 cm).");
    }

    @Test
    void anExtensionIsToldThatItsHeadCircleIsLargerThanItsTether() {
        assertThat(told("extension vs triquetra").get(0).text())
                .contains("an extension's head circle is always larger than its tether (60 cm)");
    }

    @Test
    void aPendulumIsToldThatAnArcIsNoCircle() {
        Told verdict = told("pendulum vs triquetra").get(0);
        assertThat(verdict.tone()).isEqualTo(Told.Tone.WARN);
        assertThat(verdict.text())
                .startsWith(
                        "Let the right hand ride and it closes: \"pendulum vs triquetra riding\". As it"
                                + " is said it cannot close: with the best sizes tried the left head")
                .contains("an arc is no circle");
    }

    @Test
    void aCapBesideAPendulumIsOfferedToRideAndNotToldThatNothingNeedsToChange() {
        assertThat(told("pendulum vs CAP"))
                .hasSize(1)
                .allSatisfy(
                        one ->
                                assertThat(one.text())
                                        .startsWith(
                                                "Let the right hand ride and it closes: \"pendulum vs CAP"
                                                        + " riding\". As it is said it cannot close")
                                        .contains("the same path at different paces"));
    }

    @Test
    void aHandThatRidesAsAnotherMotionIsSaidTo() {
        assertThat(told("pendulum vs pentagram").get(0).text())
                .startsWith(
                        "Let the right hand ride and it closes, as a CAP-like triquetra: \"pendulum vs"
                                + " triquetra riding\".");
        assertThat(told("static spin vs CAP").get(0).text())
                .startsWith("Let the right hand ride and it closes, as a one-petal in-spin: ");
    }

    @Test
    void anAnswerSaysWhichMotionItMakes() {
        assertThat(told("isolation vs stall"))
                .extracting(Told::text)
                .contains(
                        "Make the left tether 30 cm (now 60 cm), which makes the left motion a point"
                                + " isolation.");
    }

    @Test
    void whatClosesInShapeAloneIsNotSaidToClose() {
        Pairing pairing = Phrase.parse("pendulum amplitude 60° vs CAP").pairing();
        FitReading fit = Fit.of(pairing, Side.LEFT);
        assertThat(TellFit.remedy(fit, fit.answers(), pairing).orElseThrow().text())
                .isEqualTo(
                        "Let the right hand ride and it closes: \"pendulum amplitude 60° vs CAP"
                                + " riding\". To close it in shape, though not at every instant, make the"
                                + " left swing to each side 90 degrees (now 60 degrees).");
    }

    @Test
    void whatOnlyLongerArmsCouldCloseIsNotAdvised() {
        Pairing pairing = Phrase.parse("extension vs extension, opposites").pairing();
        Readings readings = Readings.of(pairing, Performer.USUAL, Detail.SETTLED);
        assertThat(readings.advice().orElseThrow().fit().reading().orElseThrow().answers())
                .isNotEmpty();
        assertThat(readings.advice().orElseThrow().within())
                .allSatisfy(
                        answer ->
                                assertThat(
                                                Reach.of(
                                                                Trace.of(answer.pairing()),
                                                                Performer.USUAL)
                                                        .worst())
                                        .isLessThan(
                                                readings.reach().reading().orElseThrow().worst()
                                                        + 0.011));
        assertThat(Telling.of(readings).stream().map(Told::text))
                .noneMatch(text -> text.contains("hand radius 120 cm"));
    }

    @Test
    void aCircleIsNoLine() {
        assertThat(told("isolation vs vertical line").get(0).text())
                .endsWith("because a circle is no line.");
        assertThat(told("stall vs triquetra CAP").get(0).text())
                .endsWith("because none of the sizes that are free makes the two arcs one.");
    }

    @Test
    void aChangeThatWouldReadTheSameBeforeAndAfterIsToldToMoreDecimals() {
        assertThat(told("static spin vs triquetra, tether 150 cm, timing 0.99988"))
                .extracting(Told::text)
                .contains(
                        "Make the timing together (now 0.9999 of a cycle ahead).",
                        "Make the left poi's start -0.04 degrees (now 0 degrees).");
    }

    @Test
    void aLinkThatIsClosedNeedsNoChange() {
        assertThat(told("static spin vs triquetra").get(0).text())
                .startsWith("It closes as it stands: ");
    }

    @Test
    void timingIsToldInTheTradesWords() {
        assertThat(told("isolation vs horizontal cat-eye"))
                .extracting(Told::text)
                .contains("Make the timing split (now together).");
    }

    @Test
    void whatAMissCostsIsToldDearestFirst() {
        Pairing pairing = Phrase.parse("static spin vs triquetra").pairing();
        List<Told> costs = TellFit.costs(Sensitivity.of(pairing, Side.LEFT), pairing);
        assertThat(costs.get(0).text())
                .isEqualTo(
                        "If the timing is 5 degrees of a turn out, head and hand are 5.2 cm further apart.");
        assertThat(costs)
                .extracting(Told::text)
                .contains(
                        "If the left tether, the right hand radius or either centre (sideways or in height) is"
                                + " 1 cm out, head and hand are 1 cm further apart.");
    }

    @Test
    void aCatEyeIsToldThatItTurnsIntoALinearExtension() {
        Pairing pairing = Phrase.parse("horizontal cat-eye vs static spin").pairing();
        assertThat(TellFit.neighbours(Neighbours.of(pairing, Side.LEFT), Side.LEFT, pairing))
                .extracting(Told::text)
                .contains(
                        "As the left hand radius grows from 30 cm to 60 cm, the left motion turns into a"
                                + " linear extension.");
    }

    @Test
    void aLinearExtensionIsNotToldToTurnIntoOne() {
        Pairing pairing = Phrase.parse("linear extension vs static spin").pairing();
        assertThat(TellFit.neighbours(Neighbours.of(pairing, Side.LEFT), Side.LEFT, pairing))
                .extracting(Told::text)
                .noneMatch(text -> text.contains("linear extension"));
    }

    @Test
    void aCentreIsPutSomewhereAndASizeIsMadeOne() {
        assertThat(told("static spin vs triquetra centre 20 cm up"))
                .extracting(Told::text)
                .contains(
                        "Put the right centre level with the breastbone (now 20 cm above the breastbone).");
    }
}
