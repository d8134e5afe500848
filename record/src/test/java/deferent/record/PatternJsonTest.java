package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import deferent.motion.body.Performer;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.Tether;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

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
                Optional.of(Kit.USUAL));
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
                          "kit": {
                            "left": {"head_mass_kg": 0.12, "head_diameter_m": 0.08},
                            "right": {"head_mass_kg": 0.12, "head_diameter_m": 0.08}
                          }
                        }
                        """);
    }

    @Test
    void aPatternComesBackAsItWas() {
        assertThat(PatternJson.read(PatternJson.write(linked()))).isEqualTo(linked());
        assertThat(PatternJson.read(PatternJson.tree(linked()))).isEqualTo(linked());
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
                        """
                           22 |       "hand": {"path": "circle", "radius_m": -0.3},
                              |                                              ^^^^""");
    }

    static DocumentError wrong(String text) {
        return catchThrowableOfType(DocumentError.class, () -> PatternJson.read(text));
    }
}
