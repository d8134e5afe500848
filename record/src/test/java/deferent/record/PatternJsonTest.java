package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import deferent.motion.pairing.Facing;
import deferent.motion.pairing.HandLimits;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Tether;
import deferent.motion.shared.Side;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PatternJsonTest {
    static Pairing staticSpinVsTriquetra() {
        return Pairing.of(
                new Part(
                        Motion.staticSpin(1, 0),
                        Tether.USUAL,
                        Place.usual(Side.LEFT, Plane.WALL),
                        1),
                new Part(
                        Motion.flower(0.6, -2, Math.PI / 2),
                        Tether.USUAL,
                        Place.usual(Side.RIGHT, Plane.WALL),
                        1));
    }

    static PatternDocument linked() {
        return new PatternDocument(
                "Ring under the eaves",
                "The still hand's ring carries the other hand.",
                Optional.of("invented demo data"),
                List.of("links", "wall"),
                Optional.of("static spin vs triquetra"),
                staticSpinVsTriquetra(),
                Performer.of(1.72).withArm(0.61),
                Kit.USUAL.withHeadMass(0.15),
                Extras.NONE);
    }

    @Test
    void aPatternReadsAsASpinnerWouldWriteIt() {
        assertThat(PatternJson.write(linked()))
                .isEqualTo(
                        """
                        {
                          "format": 1,
                          "kind": "pattern",
                          "name": "Ring under the eaves",
                          "note": "The still hand's ring carries the other hand.",
                          "author": "invented demo data",
                          "tags": ["links", "wall"],
                          "phrase": "static spin vs triquetra",
                          "pairing": {
                            "timing_cycles": 0,
                            "direction": "same",
                            "sense": "clockwise",
                            "left": {
                              "hand": {"path": "still"},
                              "spin": {"law": "turns", "turns": 1, "start_deg": 0},
                              "tether_m": 0.6,
                              "plane": {"kind": "wall"},
                              "centre_m": [0, 0, 0.34],
                              "cycles": 1
                            },
                            "right": {
                              "hand": {"path": "circle", "radius_m": 0.6},
                              "spin": {"law": "turns", "turns": -2, "start_deg": 90},
                              "tether_m": 0.6,
                              "plane": {"kind": "wall"},
                              "centre_m": [0, 0, 0.26],
                              "cycles": 1
                            }
                          },
                          "performer": {"stature_m": 1.72, "arm_m": 0.61},
                          "kit": {"head_mass_kg": 0.15, "head_diameter_m": 0.07, "cord_kg_per_m": 0, "air": false}
                        }
                        """);
    }

    @Test
    void aPatternComesBackAsItWas() {
        assertThat(PatternJson.read(PatternJson.write(linked()))).isEqualTo(linked());
        assertThat(PatternJson.read(PatternJson.tree(linked()))).isEqualTo(linked());
    }

    @Test
    void aPerformersHandsStandInTheDocumentWhereTheyAreNotTheUsual() {
        PatternDocument strong =
                linked().withPerformer(
                                Performer.of(1.72)
                                        .withHands(
                                                HandLimits.USUAL.withPace(6, 80).withLeave(0.15)));
        String text = PatternJson.write(strong);
        assertThat(text)
                .contains("\"hand_speed_m_per_s\": 6")
                .contains("\"hand_acceleration_m_per_s2\": 80")
                .contains("\"hand_leave_m\": 0.15");
        assertThat(PatternJson.read(text)).isEqualTo(strong);
        assertThat(PatternJson.write(linked())).doesNotContain("hand_speed");
        assertThat(wrong(text.replace("s\": 6", "s\": 0")).where())
                .isEqualTo("performer.hand_speed_m_per_s");
    }

    @Test
    void whatIsUsualMayBeLeftOut() {
        PatternDocument read =
                PatternJson.readPattern(
                        """
                        {"format": 1, "name": "short", "pairing": {
                          "left": {"hand": {"path": "still"}, "spin": {"law": "turns", "turns": 1},
                                   "tether_m": 0.6},
                          "right": {"hand": {"path": "circle", "radius_m": 0.6},
                                    "spin": {"law": "turns", "turns": -2, "start_deg": 90},
                                    "tether_m": 0.6}}}
                        """);
        assertThat(read.pairing()).isEqualTo(staticSpinVsTriquetra());
        assertThat(read.performer()).isEqualTo(Performer.USUAL);
    }

    @Test
    void aSpinWhoseEaseIsNotKeptWithItEasesAsUsual() {
        String text =
                PatternJson.write(linked())
                        .replace(
                                "\"law\": \"turns\", \"turns\": 1, \"start_deg\": 0",
                                "\"law\": \"stretches\", \"start_deg\": 0, \"ease_share\": 0, \"stretches\":"
                                        + " [{\"share\": 0.5, \"turns\": 2.5}, {\"share\": 0.5, \"turns\":"
                                        + " -1.5}]");
        PatternDocument drawn = (PatternDocument) PatternJson.read(text);
        assertThat(ease(drawn)).isZero();
        assertThat(PatternJson.read(PatternJson.write(drawn))).isEqualTo(drawn);
        PatternDocument older =
                (PatternDocument) PatternJson.read(text.replace("\"ease_share\": 0, ", ""));
        assertThat(ease(older)).isEqualTo(0.125);
        assertThat(PatternJson.write(older)).contains("\"ease_share\": 0.125");
        DocumentError error = wrong(text.replace("\"ease_share\": 0,", "\"ease_share\": 0.005,"));
        assertThat(error.where()).isEqualTo("pairing.left.spin.ease_share");
        assertThat(error.right())
                .isEqualTo(
                        "give from 0.01 to 1 of the cycle, or 0 for a rate that changes at once");
    }

    private static double ease(PatternDocument document) {
        return document.pairing().left().motion().spin().inStretches().orElseThrow().ease();
    }

    @Test
    void anErrorPointsAtLineColumnAndKeyAndSaysWhatWouldBeRight() {
        String text =
                PatternJson.write(linked()).replace("\"radius_m\": 0.6", "\"radius_m\": -0.3");
        DocumentError error = wrong(text);
        assertThat(error.where()).isEqualTo("pairing.right.hand.radius_m");
        assertThat(error.line()).isEqualTo(22);
        assertThat(error.column()).isEqualTo(46);
        assertThat(error.what()).isEqualTo("is -0.3 m");
        assertThat(error.right()).isEqualTo("give more than 0 and at most 10 m");
        assertThat(error.underlined())
                .isEqualTo(
                        "   22 |       \"hand\": {\"path\": \"circle\", \"radius_m\": -0.3},\n"
                                + "      |                                              ^^^^");
    }

    @Test
    void anUnknownKeyIsRefusedWithTheNearestOne() {
        DocumentError error =
                wrong(PatternJson.write(linked()).replace("\"tether_m\"", "\"tehter_m\""));
        assertThat(error.where()).isEqualTo("pairing.left");
        assertThat(error.what()).isEqualTo("has no \"tether_m\"");
        assertThat(error.nearest()).containsExactly("tehter_m");

        DocumentError extra =
                wrong(PatternJson.write(linked()).replace("\"author\"", "\"athour\""));
        assertThat(extra.where()).isEqualTo("athour");
        assertThat(extra.line()).isEqualTo(6);
        assertThat(extra.column()).isEqualTo(3);
        assertThat(extra.nearest()).containsExactly("author");
        assertThat(extra.underlined()).endsWith("|   ^^^^^^^^");
    }

    @Test
    void aNewerFormatIsRefusedAsNewer() {
        DocumentError error =
                wrong(PatternJson.write(linked()).replace("\"format\": 1", "\"format\": 2"));
        assertThat(error)
                .hasMessage(
                        "line 2, column 13, format: is 2, newer than this deferent, which reads up"
                                + " to 1; use the newer deferent that wrote it; the document is"
                                + " left as it is");
    }

    /** Gravity swings a pendulum about straight down, in an upright plane that keeps still. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
            {"law": "turns", "turns": 1, "start_deg": 0} | {"law": "swing", "amplitude_deg": 60, "rest_deg": -60} | rest of a pendulum is 30° off straight down
            "plane": {"kind": "wall"} | "plane": {"kind": "floor"} | plane of a pendulum is level
            "plane": {"kind": "wall"} | "plane": {"kind": "wheel", "tip_deg": 10} | plane of a pendulum leans 10° from upright
            "plane": {"kind": "wall"} | "plane": {"kind": "wall"}, "plane_turn": {"turns": 1} | turning plane of a pendulum goes round
            """)
    void aPendulumThatGravityCannotSwingIsRefusedWithItsPlace(
            String there, String written, String told) {
        String turning = "{\"law\": \"turns\", \"turns\": 1, \"start_deg\": 0}";
        String text =
                PatternJson.write(linked())
                        .replace("  \"phrase\": \"static spin vs triquetra\",\n", "")
                        .replaceFirst(Pattern.quote(there), Matcher.quoteReplacement(written))
                        .replace(turning, "{\"law\": \"swing\", \"amplitude_deg\": 60}");
        DocumentError error = wrong(text);
        assertThat(error.where()).isEqualTo("pairing.left");
        assertThat(error.what()).isEqualTo(told);
        assertThat(error.line()).isEqualTo(12);
    }

    @Test
    void aBodyThatDoesNotTurnBackIsRefusedWithWhatWouldBeRight() {
        String once =
                "\"facing\": {\"turns\": [{\"begins_cycles\": 0.2, \"takes_cycles\": 0.1,"
                        + " \"turn_deg\": TURN}]}, \"left\": {";
        String text =
                PatternJson.write(linked())
                        .replace("  \"phrase\": \"static spin vs triquetra\",\n", "")
                        .replace("\"left\": {", once);
        DocumentError turnedAway = wrong(text.replace("TURN", "180"));
        assertThat(turnedAway.where()).isEqualTo("pairing.facing");
        assertThat(turnedAway.what()).contains("the next cycle would begin turned");
        assertThat(turnedAway.right()).startsWith("turn back, or on round");
        DocumentError slanted = wrong(text.replace("TURN", "60"));
        assertThat(slanted.where()).isEqualTo("pairing.facing.turns.0.turn_deg");
        assertThat(slanted.right()).startsWith("give quarter turns");
        PatternDocument round = (PatternDocument) PatternJson.read(text.replace("TURN", "-360"));
        assertThat(round.pairing().facing()).isEqualTo(Facing.of(new Facing.Turn(0.2, 0.1, -4)));
    }

    @Test
    void textThatIsNoJsonIsToldWithItsLine() {
        DocumentError error = wrong("{\n  \"format\": 1,\n  \"name\" \"short\"\n}");
        assertThat(error.line()).isEqualTo(3);
        assertThat(error.what()).startsWith("is not JSON: ");
        assertThat(error.right()).contains("missing comma");
        assertThat(wrong("{\"format\": 1, \"format\": 1}").right())
                .isEqualTo("keep one of the two keys");
        assertThat(wrong("  ").what()).isEqualTo("is empty");
        assertThat(wrong("{} {}").what()).startsWith("is not JSON");
    }

    @Test
    void aRefusedPairingIsToldAtTheKeyThatRefusesIt() {
        String pendulum =
                """
                {"format": 1, "name": "swing", "pairing": {
                  "tempo_cycles_per_min": 90,
                  "left": {"hand": {"path": "still"}, "tether_m": 0.6,
                           "spin": {"law": "swing", "amplitude_deg": 60}},
                  "right": {"hand": {"path": "still"}, "tether_m": 0.6,
                            "spin": {"law": "turns", "turns": 1}}}}
                """;
        DocumentError tempo = wrong(pendulum);
        assertThat(tempo.where()).isEqualTo("pairing.tempo_cycles_per_min");
        assertThat(tempo.line()).isEqualTo(2);
        assertThat(tempo.right()).startsWith("leave it unsaid, or give ");

        DocumentError amplitude =
                wrong(pendulum.replace("\"amplitude_deg\": 60", "\"amplitude_deg\": 190"));
        assertThat(amplitude.where()).isEqualTo("pairing.left.spin.amplitude_deg");
        assertThat(amplitude.line()).isEqualTo(4);

        DocumentError both =
                wrong(
                        pendulum.replace(
                                "\"amplitude_deg\": 60",
                                "\"amplitude_deg\": 60, \"amplitude_rad\": 1"));
        assertThat(both.where()).isEqualTo("pairing.left.spin.amplitude_rad");
        assertThat(both.right()).isEqualTo("keep one of the two");
    }

    @Test
    void aWordThatIsNoneOfTheChoicesGetsTheNearest() {
        DocumentError error =
                wrong(
                        PatternJson.write(linked())
                                .replace("\"path\": \"circle\"", "\"path\": \"cirle\""));
        assertThat(error.where()).isEqualTo("pairing.right.hand.path");
        assertThat(error.nearest()).containsExactly("circle");
    }

    @Test
    void aMotionOfOnesOwnComesBackAsItWas() {
        MotionDocument loop =
                new MotionDocument(
                        "lantern loop",
                        List.of("loop of light"),
                        "A drop on its side.",
                        Optional.empty(),
                        List.of(),
                        new Motion(
                                SvgPath.parse("M0 0 C 0 1 1 1 1 0 S 0 -1 0 0 Z", 0.4),
                                new deferent.motion.pairing.Turns(2, 0.1)),
                        Tether.of(0.7),
                        Extras.NONE);
        assertThat(PatternJson.read(PatternJson.write(loop))).isEqualTo(loop);
    }

    @Test
    void aDrawnPathMayBeGivenAsSvg() {
        String text =
                """
                {"format": 1, "kind": "motion", "name": "drop", "tether_m": 0.6,
                 "hand": {"path": "svg", "d": "M0 0 L 2 0 L 1 2 Z", "radius_m": 0.5},
                 "spin": {"law": "turns", "turns": 1}}
                """;
        MotionDocument read = (MotionDocument) PatternJson.read(text);
        assertThat(read.motion().path()).isEqualTo(SvgPath.parse("M0 0 L 2 0 L 1 2 Z", 0.5));
        DocumentError error = wrong(text.replace("L 1 2", "K 1 2"));
        assertThat(error.where()).isEqualTo("hand.d");
        assertThat(error.what()).contains("character 12");
    }

    @Test
    void aBundleHoldsManyAndSaysWhichOneIsWrong() {
        String bundle =
                PatternJson.writeBundle(List.of(linked(), linked().withName("a second one")));
        assertThat(PatternJson.readBundle(bundle))
                .containsExactly(linked(), linked().withName("a second one"));
        assertThat(PatternJson.readBundle(PatternJson.write(linked()))).containsExactly(linked());
        DocumentError error =
                catchThrowableOfType(
                        DocumentError.class,
                        () -> PatternJson.readBundle(bundle.replace("\"a second one\"", "\"\"")));
        assertThat(error.where()).isEqualTo("documents.1.name");
    }

    @Test
    void aDocumentThatIsTooLongIsRefused() {
        String long_ =
                PatternJson.write(linked())
                        .replace("clockwise\"", "clockwise\"" + " ".repeat(1_000_000));
        assertThat(wrong(long_).right()).isEqualTo("give at most 1000000");
        assertThat(wrong("[".repeat(100)).what()).startsWith("is not JSON");
    }

    static DocumentError wrong(String text) {
        return catchThrowableOfType(DocumentError.class, () -> PatternJson.read(text));
    }
}
