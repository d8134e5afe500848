package deferent.tell;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.MirrorImage;
import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.reading.worked.Detail;
import deferent.search.whole.Readings;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a sheet says to somebody who has never seen the pairing. */
class TellHandTest {
    private static List<String> told(Pairing pairing) {
        return TellHand.of(readings(pairing)).stream().map(Told::text).toList();
    }

    private static List<String> told(String phrase) {
        return told(Phrase.parse(phrase).pairing());
    }

    private static Readings readings(Pairing pairing) {
        return Readings.of(pairing, Performer.of(1.72), Detail.LIVE);
    }

    @Test
    void aStaticSpinIsSaidByItsStillHandAndTheWayItsPoiGoes() {
        assertThat(told("static spin vs triquetra"))
                .containsExactly(
                        "Static spin. The hand stays where it is; its poi goes round it clockwise. It"
                                + " begins with the tether pointing left.",
                        "Triquetra. The hand goes round a circle clockwise; its poi turns twice against"
                                + " it (antispin). It begins with the hand at the left, the tether pointing"
                                + " left.",
                        "The two go together, in the same direction. The tempo is 60 a minute: one cycle"
                                + " takes 1 s.");
    }

    @Test
    void anIsolationPointsInwardAndAnExtensionOutward() {
        List<String> told = told("isolation vs extension, split time, opposites");
        assertThat(told.get(0))
                .contains("turns once the same way (in-spin)")
                .contains("with the hand at the left, the tether pointing right");
        assertThat(told.get(1)).contains("counter-clockwise").contains("(in-spin)");
        assertThat(told.get(2)).startsWith("The two go in split time, in opposite directions");
    }

    @Test
    void aRiderAPendulumAndALineAreSaidAsWhatTheyAre() {
        assertThat(told("CAP riding pendulum").get(0))
                .contains("The hand rides: it goes where the right head goes");
        assertThat(told("CAP riding pendulum").get(1))
                .contains("its poi swings 90 degrees to either side");
        assertThat(told("linear isolation vs line").get(0)).contains("to and fro on a line");
        assertThat(told("CAP vs static spin").get(0)).contains("comes and goes along an arc");
    }

    @Test
    void inTheWheelPlaneItGoesForwardOverTheTopOrBack() {
        List<String> told = told("static spin wheel plane vs static spin wheel plane, opposites");
        assertThat(told.get(0)).contains("over the top in the wheel plane");
        assertThat(told.get(1)).contains("over the top in the wheel plane");
        assertThat(told.get(0).contains("forward over"))
                .isNotEqualTo(told.get(1).contains("forward over"));
    }

    @Test
    void theMirrorImageIsToldTheOtherWayRoundWithTheHandsChanged() {
        List<String> image =
                told(MirrorImage.of(Phrase.parse("static spin vs triquetra").pairing()));
        assertThat(image.get(0))
                .startsWith("Triquetra. The hand goes round a circle counter-clockwise")
                .contains("hand at the right, the tether pointing right");
        assertThat(image.get(1)).startsWith("Static spin.").contains("counter-clockwise");
    }

    @Test
    void sizesAreToldARowASize() {
        Readings readings =
                readings(Phrase.parse("static spin vs triquetra tether 45 cm").pairing());
        assertThat(TellSizes.rows(readings.pairing()))
                .contains(new TellSizes.Row("Hand radius", "still", "45 cm"))
                .extracting(TellSizes.Row::name)
                .contains("Tether", "Centre, in front")
                .doesNotContain("Centre, height");
        assertThat(TellSizes.performer(readings).text())
                .isEqualTo("For a performer of 1.72 m, arm 66 cm from shoulder to grip.");
        assertThat(TellSizes.brief(readings.pairing()))
                .containsExactly(
                        "Left: hand still, tether 60 cm",
                        "Right: hand 45 cm, tether 45 cm",
                        "60 a minute, 1 s a cycle");
    }

    @Test
    void printedReadingsTellHoldsAndCostsButNoFitAndNoFloor() {
        Readings printed =
                Readings.of(
                        Phrase.parse("static spin vs triquetra hand radius 45 cm").pairing(),
                        Performer.of(1.72),
                        Detail.PRINTED);
        List<String> keys = Telling.of(printed).stream().map(Told::key).toList();
        assertThat(keys)
                .anyMatch(k -> k.startsWith("steadiness."))
                .anyMatch(k -> k.startsWith("cost."));
        assertThat(keys)
                .noneMatch(k -> k.startsWith("fit."))
                .noneMatch(k -> k.startsWith("slowest."));
    }
}
