package deferent.tell;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.reading.worked.Detail;
import deferent.reading.worked.Worked;
import deferent.search.whole.Readings;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a spinner reads beside a pairing. */
class TellingTest {
    private static Readings read(String phrase, Detail detail) {
        return Readings.of(Phrase.parse(phrase).pairing(), Performer.USUAL, detail);
    }

    private static final Map<String, List<Told>> TOLD = new ConcurrentHashMap<>();

    private static List<Told> told(String phrase) {
        return TOLD.computeIfAbsent(phrase, p -> Telling.of(read(p, Detail.SETTLED)));
    }

    private static Optional<String> text(String phrase, String key) {
        return told(phrase).stream().filter(t -> t.key().equals(key)).map(Told::text).findFirst();
    }

    @Test
    void aMissNamesItsSizeItsCauseAndItsRemedy() {
        assertThat(text("isolation vs four-petal antispin", "link.left"))
                .contains(
                        "No link from the left head to the right hand: up to 90 cm apart now, at best 30 cm all the way"
                                + " round, because the isolation's head circle (30 cm) is smaller than"
                                + " the four-petal antispin's hand circle (60 cm).");
        assertThat(text("isolation vs four-petal antispin", "fit.left").orElseThrow())
                .contains("right hand radius 30 cm");
    }

    @Test
    void whatNoTrunkReachesIsNotToldToTurnTheTrunk() {
        assertThat(text("isolation vs horizontal cat-eye", "reach.left").orElseThrow())
                .endsWith("Turn or lean the trunk, or make the figure smaller.");
        assertThat(text("triquetra hand radius 130 cm vs static spin", "reach.left").orElseThrow())
                .endsWith("make the figure smaller, or bring its centre nearer.");
    }

    @Test
    void theTieThatLinksIsToldFirstAndTheOtherAside() {
        List<Told> told = told("CAP riding pendulum");
        assertThat(told.get(1).key()).isEqualTo("link.right");
        assertThat(told.get(1).tone()).isEqualTo(Told.Tone.GOOD);
        assertThat(told.get(2).text()).startsWith("The other way round");
    }

    /** An extension's slip grows, but in 213 ms it is no further aside than at first. */
    @Test
    void aSlipThatHasNotGrownBeforeAnAnswerIsNotSaidToBeSmaller() {
        assertThat(told("triquetra vs extension"))
                .extracting(Told::text)
                .anyMatch(
                        text ->
                                text.contains("right poi runs away: a slip grows")
                                        && text.contains("not before you can answer it"));
    }

    @Test
    void aPendulumPastAQuarterTurnIsSaidToNeedARod() {
        assertThat(text("pendulum amplitude 120 degrees vs triquetra", "rod.left").orElseThrow())
                .contains("needs a rod");
        assertThat(text("pendulum vs triquetra", "rod.left")).isEmpty();
    }

    @Test
    void aStaticSpinTooSlowAtAPendulumsTempoIsNotSaidToBeSoAtEveryTempo() {
        assertThat(text("pendulum vs static spin", "slowest.right").orElseThrow())
                .isEqualTo(
                        "At the tempo that the pendulum sets, the right cord does not stay taut.");
        assertThat(text("static spin vs triquetra", "slowest.left").orElseThrow())
                .startsWith("Slowest tempo for the left cord: 38.6 a minute");
    }

    @Test
    void anArcIsNoCircle() {
        assertThat(text("pendulum vs triquetra", "link.left").orElseThrow())
                .contains("an arc is no circle");
        assertThat(text("pendulum vs triquetra", "fit.left").orElseThrow())
                .startsWith("Let the right hand ride and it closes")
                .contains("cannot close")
                .contains("with the best sizes tried");
    }

    @Test
    void aLinkSaysWhetherItSurvivesRealCords() {
        assertThat(text("static spin vs triquetra", "truth.left").orElseThrow())
                .startsWith("On real cords the link");
        assertThat(text("extension vs triquetra", "truth.left")).isEmpty();
    }

    @Test
    void aHandWithCornersIsToldWhereNoCordFollowsItAndThePullIsTold() {
        Readings readings = read("static spin vs square turns 2", Detail.SETTLED);
        assertThat(readings.rightCord().handPathKept().failure()).isPresent();
        assertThat(readings.rightCord().pull().reading()).isPresent();
        assertThat(readings.leftCord().handPathKept().reading()).isPresent();
        List<Told> cords =
                Telling.of(readings).stream().filter(t -> t.key().startsWith("cord.")).toList();
        assertThat(cords).extracting(Told::key).doesNotHaveDuplicates();
        assertThat(cords)
                .first()
                .satisfies(
                        t -> {
                            assertThat(t.key()).isEqualTo("cord.right.figure_kept");
                            assertThat(t.tone()).isEqualTo(Told.Tone.WARN);
                            assertThat(t.text()).contains("could not be worked out: ");
                        });
    }

    @Test
    void whileDraggingTheDearReadingsAreLeftOutAndEstimatesAreMarked() {
        Readings live = read("static spin vs triquetra", Detail.LIVE);
        assertThat(live.advice()).isEmpty();
        assertThat(live.link(live.carrier()).reading().orElseThrow().quick()).isTrue();
        assertThat(live.leftCord().slowest()).isEqualTo(Worked.unasked());
        assertThat(live.leftCord().pull().reading().orElseThrow().greatest()).isPositive();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "static spin vs triquetra",
                "isolation vs horizontal cat-eye",
                "pendulum vs CAP",
                "triquetra riding pendulum",
                "toroid vs static spin",
                "linear isolation vs line",
                "isolation 2 cycles vs extension 3 cycles",
                "stall vs extension"
            })
    void everySentenceIsWholeAndEveryOneSaysWhy(String phrase) {
        for (Told told : told(phrase)) {
            assertThat(told.text()).endsWith(".").doesNotContain("NaN", "Infinity", "null", "  ");
            assertThat(told.why()).endsWith(".").doesNotContain("NaN", "Infinity", "null", "  ");
        }
        assertThat(Telling.cautions(read(phrase, Detail.LIVE)))
                .anyMatch(c -> c.contains("fire"))
                .anyMatch(c -> c.contains("soft heads"));
    }

    /** Behind the same hand circle, half a turn ahead. */
    @ParameterizedTest
    @CsvSource({
        "isolation, 60, becomes an extension.",
        "horizontal cat-eye, 120, becomes a vertical cat-eye."
    })
    void whereOnlyAnotherMotionIsLeftItHasItsName(String motion, double tempo, String told) {
        assertThat(
                        text(motion + " vs static spin, tempo " + tempo, "hand_path_kept.left")
                                .orElseThrow())
                .endsWith("the poi does another motion at this tempo: it " + told);
    }

    @Test
    void aPoiThatOnlyHangsIsSaidTo() {
        assertThat(text("extension vs static spin, tempo 10", "hand_path_kept.left").orElseThrow())
                .endsWith("left to itself the poi hangs.");
    }
}
