package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Phrase;
import deferent.motion.phrase.PhraseError;
import deferent.record.DemoShelf;
import deferent.record.DocumentError;
import deferent.record.PatternJson;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A size out of its range is told in the unit that was typed, in figures people read. */
class RangeTest {
    private static final Pattern EXPONENT = Pattern.compile("[0-9]E[-+]?[0-9]|Infinity|NaN");

    @TempDir Path folder = Path.of("");

    private static String phrase(String text) {
        try {
            Phrase.parse(text).pairing();
            return "";
        } catch (PhraseError error) {
            return error.what() + "; " + error.expected();
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "isolation tether 9000 cm vs cap | tether is 9000 cm; more than 0 cm and at most 500 cm",
                "isolation tether 0 mm vs cap | tether is 0 mm; more than 0 mm and at most 5000 mm",
                "extension hand radius 20 m vs cap | hand radius is 20 m; more than 0 m and at most 10 m",
                "extension hand radius 20 tethers vs cap | hand radius is 20 tethers; more than 0 and at most 16.66666667 tethers",
                "isolation depth 2000 cm vs cap | centre z is 2000 cm; from -1000 cm to 1000 cm",
                "pendulum amplitude 200° vs cap | amplitude of a pendulum is 200°; more than 0° and at most 179.982°",
                "pendulum amplitude 2 turns vs cap | amplitude of a pendulum is 2 turns; more than 0 and at most 0.49995 turns",
                "pendulum amplitude 4 rad vs cap | amplitude of a pendulum is 4 rad; more than 0 rad and at most 3.141278494 rad",
                "cap, tempo 9000 | tempo is 9000 a minute; from 1 to 600 a minute",
            })
    void aPhraseIsToldInItsOwnUnit(String text, String told) {
        assertThat(phrase(text.contains(" vs ") ? text : "isolation vs " + text)).isEqualTo(told);
    }

    /** Every size word, in every unit, far too small and far too large. */
    @Test
    void noSizeOfAPhraseIsToldWithAnExponentOrInAnotherUnit() {
        String nines = "9".repeat(40);
        String tiny = "0." + "0".repeat(40) + "1";
        List<String> wrong = new ArrayList<>();
        int refused = 0;
        for (String number : List.of(nines, "-" + nines, tiny, "0", "-5", "99999")) {
            for (String size :
                    List.of(
                            "isolation tether %s %s",
                            "extension hand radius %s %s",
                            "isolation depth %s %s",
                            "isolation centre %s %s left",
                            "ellipse axes %s %s by 20 cm",
                            "loops 1 %s %s",
                            "line hand radius %s %s")) {
                for (String unit : List.of("cm", "m", "mm")) {
                    refused += told(wrong, String.format(size, number, unit), unit);
                }
            }
            for (String size :
                    List.of(
                            "pendulum amplitude %s %s",
                            "stall amplitude %s %s",
                            "cat-eye tilt %s %s",
                            "triquetra start %s %s",
                            "arc sweep %s %s",
                            "arc middle %s %s",
                            "isolation wall tip %s %s",
                            "isolation wall swivel %s %s",
                            "pendulum rest %s %s")) {
                for (String unit : List.of("°", "rad", "turns")) {
                    refused += told(wrong, String.format(size, number, unit), unit);
                }
            }
        }
        assertThat(wrong).isEmpty();
        assertThat(refused).isGreaterThan(150);
    }

    private static int told(List<String> wrong, String size, String unit) {
        String told = phrase(size + " vs static spin");
        boolean aboutRange =
                told.contains(" is ") && told.contains("more than") || told.contains("from -");
        if (EXPONENT.matcher(told).find()
                || aboutRange && !told.matches("(?s).*[0-9] ?" + unit + "( .*|;.*|$)")) {
            wrong.add(size + " -> " + told);
        }
        return aboutRange ? 1 : 0;
    }

    /** Every number of a document, far too small and far too large. */
    @Test
    void noNumberOfADocumentIsToldWithAnExponent() {
        String text = PatternJson.write(DemoShelf.documents().get(0));
        var numbers = Pattern.compile("(\"[a-z_]+\": )(-?[0-9.]+)").matcher(text);
        int refused = 0;
        while (numbers.find()) {
            for (String number : List.of("1e300", "-1e300", "1e-300", "-5.5", "123456789")) {
                String other =
                        text.substring(0, numbers.start(2))
                                + number
                                + text.substring(numbers.end(2));
                try {
                    PatternJson.read(other);
                } catch (DocumentError error) {
                    refused++;
                    assertThat(error.getMessage()).doesNotContainPattern(EXPONENT);
                }
            }
        }
        assertThat(refused).isGreaterThan(40);
        assertThat(error(text.replaceFirst("\"tether_m\": [0-9.]+", "\"tether_m\": 90")))
                .contains("is 90 m; give more than 0 and at most 5 m");
    }

    private static String error(String text) {
        try {
            PatternJson.read(text);
            return "";
        } catch (DocumentError error) {
            return error.getMessage();
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--tether=9000cm | tether: is 9000 cm; give more than 0 cm and at most 500 cm",
                "--tether=300in | tether: is 300 in; give more than 0 in and at most 196.8503937 in",
                "--tether=0m | tether: is 0 m; give more than 0 m and at most 5 m",
                "--hand-radius=90m | left.hand_radius_m: is 90 m; give more than 0 m and at most 10 m",
                "--hand-radius=99999mm | left.hand_radius_m: is 99999 mm; give more than 0 mm and at most 10000 mm",
                "--stature=17cm | stature: is 17 cm; give from 100 cm to 250 cm",
                "--arm=999999999999999999999999m | arm: is beyond 1000000000000000 m; give from 0.3 m to 1.2 m",
                "--head-mass=9kg | head mass: is 9 kg; give more than 0 kg and at most 5 kg",
                "--head-mass=9000000g | head mass: is 9000000 g; give more than 0 g and at most 5000 g",
                "--head-size=70cm | head diameter: is 70 cm; give more than 0 cm and at most 50 cm",
                "--tempo=9000 | tempo: is 9000 a minute; give from 1 to 600 a minute",
                "--set=right.tether=9000cm | tether: is 9000 cm; give more than 0 cm and at most 500 cm",
                "--set=left.centre_x=99m | centre x: is 99 m; give from -10 m to 10 m",
                "--set=left.start=9999turn | start angle: is 9999 turns; give from -999.9705074 to 999.9705074 turns",
            })
    void anOptionIsToldInTheUnitThatWasTyped(String option, String told) {
        assertThat(new Desk(folder).bad("read", "extension vs triquetra", option).err())
                .isEqualTo("deferent: " + told + System.lineSeparator());
    }
}
