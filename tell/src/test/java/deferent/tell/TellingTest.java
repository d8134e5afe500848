package deferent.tell;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.body.Reach;
import deferent.reading.worked.Detail;
import deferent.reading.worked.Worked;
import deferent.search.fit.ArmsFit;
import deferent.search.fit.Fit;
import deferent.search.whole.ReachHelps;
import deferent.search.whole.Readings;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
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
                        "No link from the left head to the right hand: they are up to 90 cm apart now, at best 30 cm all the way"
                                + " round, because the left head's circle (radius 30 cm) is smaller than the right"
                                + " hand's circle (radius 60 cm).");
        assertThat(text("isolation vs four-petal antispin", "fit.left").orElseThrow())
                .contains("right hand radius 30 cm");
    }

    @Test
    void aPoiThatEasesSaysHowFarThatTakesItsHeadOffTheDrawnIdeal() {
        // 2L·sin(Δ/2) with Δ = 2π·8·35/512·ease: eight turns a cycle from in-spin to antispin.
        assertThat(text("half-and-half flower vs static spin", "figure.left").orElseThrow())
                .endsWith(
                        " Its poi eases from one rate into the next, which takes the head up to 26"
                                + " cm off the drawn ideal.");
        assertThat(
                        text("half-and-half flower ease 1/16 vs static spin", "figure.left")
                                .orElseThrow())
                .contains("up to 13 cm off the drawn ideal");
        assertThat(text("half-and-half flower ease 0 vs static spin", "figure.left").orElseThrow())
                .doesNotContain("eases");
        assertThat(told("half-and-half flower hand radius 30 cm vs static spin"))
                .noneMatch(t -> t.text().contains("infinite force"));
        assertThat(told("half-and-half flower ease 0 hand radius 30 cm vs static spin"))
                .anyMatch(t -> t.text().contains("infinite force"));
    }

    @Test
    void whatATurnedTrunkReachesIsToldWithItsTurnAndWhatNoneReachesIsNot() {
        String phrase = "isolation vs horizontal cat-eye, tether 58 cm";
        Reach reach = read(phrase, Detail.LIVE).reach().reading().orElseThrow();
        long degrees = Math.round(Math.toDegrees(reach.trunk().greatest()));
        assertThat(degrees).isBetween(1L, 45L);
        assertThat(text(phrase, "reach.trunk").orElseThrow())
                .startsWith(
                        "Both hands reach their whole paths, with the trunk turned by up to "
                                + degrees
                                + "°");
        assertThat(text(phrase, "reach.left")).isEmpty();
        assertThat(text("triquetra hand radius 130 cm vs static spin", "reach.trunk").orElseThrow())
                .contains("even with the trunk turned and leaning.");
    }

    @Test
    void lessThanAFistGivesIsReachedAtFullStretchAndTellsWhatIsEasier() {
        assertThat(text("static spin vs triquetra", "reach.trunk").orElseThrow())
                .startsWith(
                        "Both hands just reach their whole paths, at full stretch, with the trunk")
                .contains("It is within easy reach with tethers of 44 cm and hand paths to match");
        assertThat(text("static spin vs triquetra", "first").orElseThrow()).doesNotContain("reach");
    }

    /** Each help that is told is read again: it does help. */
    @ParameterizedTest
    @MethodSource("deferent.motion.trial.TwelveClassics#all")
    void whatIsSaidToHelpAHandOutOfReachDoesHelp(String phrase) {
        Readings readings = read(phrase, Detail.SETTLED);
        Reach reach = readings.reach().reading().orElseThrow();
        List<Told> warned =
                Telling.of(readings).stream()
                        .filter(t -> t.key().startsWith("reach") && t.tone() == Told.Tone.WARN)
                        .filter(t -> !t.key().equals("reach.hands"))
                        .toList();
        assertThat(warned)
                .as("one line at most")
                .hasSize(reach.reached() || reach.atFullStretch() ? 0 : 1);
        if (reach.reached()) {
            return;
        }
        String told = text(phrase, "reach.trunk").orElseThrow();
        ReachHelps helps = readings.advice().orElseThrow().helps().reading().orElseThrow();
        ArmsFit smaller = helps.smaller().orElseThrow();
        assertThat(Reach.of(Trace.of(smaller.pairing()), readings.performer()).reached()).isTrue();
        assertThat(told)
                .contains(
                        reach.atFullStretch()
                                ? "It is within easy reach with"
                                : "It is within reach with")
                .contains(" tethers of ");
        helps.move()
                .ifPresent(
                        move -> {
                            assertThat(move.left()).isLessThan(reach.turned().tooFar() * 0.51);
                            assertThat(told).contains("oved 10 cm");
                        });
    }

    /** Fitted to the arms, none of them raises a warning of reach. */
    @ParameterizedTest
    @MethodSource("deferent.motion.trial.TwelveClassics#all")
    void fittedToTheArmsAClassicIsReached(String phrase) {
        Readings asked = read(phrase, Detail.LIVE);
        ArmsFit fit =
                ArmsFit.linked(
                                asked.pairing(),
                                Fit.of(asked.pairing(), asked.carrier()),
                                asked.performer(),
                                List.of())
                        .orElseThrow();
        assertThat(fit.shorterTether()).isGreaterThanOrEqualTo(0.30 - 1e-9);
        assertThat(Math.toDegrees(fit.reach().turned().greatest())).isLessThanOrEqualTo(45 + 1e-9);
        assertThat(Telling.of(Readings.of(fit.pairing(), asked.performer(), Detail.LIVE)))
                .filteredOn(t -> t.key().startsWith("reach") && !t.key().equals("reach.hands"))
                .allMatch(t -> t.tone() != Told.Tone.WARN);
        if (fit.closedTether().isPresent()) {
            assertThat(TellArms.of(Optional.of(fit)).text()).contains("It does not link so");
        }
    }

    @Test
    void theTieThatLinksIsToldFirstAndTheOtherAside() {
        List<Told> told = told("CAP riding pendulum");
        assertThat(told.get(1).key()).isEqualTo("link.right");
        assertThat(told.get(1).tone()).isEqualTo(Told.Tone.GOOD);
        assertThat(told.get(2).text()).startsWith("The other way round");
    }

    /** An extension's slip grows, but it is caught. */
    @Test
    void aSlipThatIsCaughtInTimeIsNoAlarm() {
        assertThat(told("triquetra vs extension"))
                .filteredOn(t -> t.key().equals("closest_figure.right"))
                .singleElement()
                .satisfies(
                        t -> {
                            assertThat(t.tone()).isEqualTo(Told.Tone.NOTE);
                            assertThat(t.text())
                                    .startsWith("A practised hand draws the right figure as meant")
                                    .contains("it needs a correction within 0.6 s");
                        });
    }

    /** Spinners do it every day (common practice, no source). */
    @Test
    void anIsolationIsDrawnAndHeld() {
        assertThat(told("isolation vs static spin, tempo 75"))
                .filteredOn(t -> t.key().equals("closest_figure.left"))
                .singleElement()
                .satisfies(
                        t -> {
                            assertThat(t.tone()).isEqualTo(Told.Tone.NOTE);
                            assertThat(t.text())
                                    .containsPattern(
                                            "within \\d mm at 75 a minute.*needs a correction within"
                                                    + " 0\\.\\d+ s");
                            assertThat(t.why()).contains("holds the figure but not its timing");
                        });
    }

    /** What is the same of both hands is said once. */
    @Test
    void twoExtensionsAreToldTogether() {
        assertThat(told("extension vs extension"))
                .filteredOn(t -> t.key().startsWith("closest_figure"))
                .singleElement()
                .satisfies(t -> assertThat(t.text()).contains("draws either figure as meant"));
    }

    /** One stroke a cycle is enough for a flower, and the hand's place is told. */
    @Test
    void whereOneStrokeIsEnoughItsPlaceIsTold() {
        assertThat(text("four-petal antispin vs triquetra", "closest_figure.left").orElseThrow())
                .containsPattern("once a turn at the (side|top|bottom)");
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
                .contains("the left head goes along an arc and the right hand goes round a circle");
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

    /**
     * Independent calculation, r = L/2 = 0.3 m, by differences of the hand = p + L·b/|b|, b = p″ −
     * g: 20.04 m/s and 789.0 m/s². The speed by hand: ω(L·a/(a − g) − r), a = ω²r.
     */
    @Test
    void whatNoArmDoesIsSaidNotToBeNeeded() {
        Readings readings = read("isolation vs extension, tempo 60", Detail.SETTLED);
        List<Told> told = Telling.of(readings);
        Told isolation = keyed(told, "closest_figure.left");
        assertThat(isolation.text())
                .matches(
                        "A practised hand draws the left figure within [0-9.]+ [cm]m at 60 a"
                                + " minute, leaving its path by up to [0-9]+ cm; it needs a"
                                + " correction within 0[.][0-9]+ s\\.");
        assertThat(isolation.tone()).isEqualTo(Told.Tone.NOTE);
        assertThat(isolation.why())
                .contains("no faster than 5 m/s and quickens by no more than 60 m/s²")
                .contains("Keeping the figure exactly would ask the hand for 20 m/s and 789 m/s².")
                .contains("Piorkowski");
        assertThat(told).extracting(Told::key).doesNotContain("figure_kept.left");
        // What a hand does exactly needs its correction all the same.
        assertThat(keyed(told, "figure_kept.right").text())
                .startsWith("To keep the right figure, the hand leaves its path by up to");
        assertThat(keyed(told, "closest_figure.right").text())
                .startsWith("A practised hand draws the right figure as meant at 60 a minute; it");
    }

    /** A hand circle of 0.6 m four times a second is 15 m/s by itself. */
    @Test
    void whatNoArmDoesOnItsOwnPathEitherIsNotPromised() {
        List<Told> told = Telling.of(read("static spin vs triquetra, tempo 240", Detail.SETTLED));
        assertThat(keyed(told, "closest_figure.right"))
                .satisfies(
                        t -> {
                            assertThat(t.tone()).isEqualTo(Told.Tone.WARN);
                            assertThat(t.text())
                                    .startsWith(
                                            "A practised hand draws nothing near the right figure");
                        });
    }

    /**
     * Where the figure asks for free fall, that is said, and how near a hand comes all the same.
     */
    @Test
    void aFigureThatNoHandKeepsIsDrawnNearly() {
        List<Told> told = Telling.of(read("isolation vs extension, tempo 50", Detail.SETTLED));
        assertThat(keyed(told, "figure_kept.left").tone()).isEqualTo(Told.Tone.WARN);
        assertThat(keyed(told, "closest_figure.left").text()).startsWith("A practised hand draws");
    }

    private static Told keyed(List<Told> told, String key) {
        return told.stream().filter(t -> t.key().equals(key)).findFirst().orElseThrow();
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
