package deferent.motion.phrase;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A phrase that cannot be is underlined where it goes wrong, with what would be right there. */
class BadPhrasesTest {

    private static PhraseError error(String phrase) {
        return catchThrowableOfType(PhraseError.class, () -> Phrase.parse(phrase).pairing());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
            isolatoin vs triquetra | isolatoin | "isolatoin" is not a known word | a motion, or a word that goes with one
            isolation vs | '' | the second hand does nothing | a motion, such as triquetra
            vs triquetra | vs | the first hand does nothing | a motion before "vs"
            isolation vs triquetra vs CAP | vs | a third hand; here are two, a partner's hands are another pair | two motions with one "vs" between them
            isolation CAP vs triquetra | CAP | a second motion for the first hand | "vs" or "riding" before it
            isolation vs triquetra, tempo 60 tempo 70 | tempo 70 | a second tempo | only one of them
            isolation vs triquetra, split, quarter | quarter | "quarter" after "split" | only one of them
            isolation tether 60 vs triquetra | 60 | "tether" has a number without a unit | a length with cm, m, mm, in or ft
            isolation tether 60 kg vs triquetra | kg | "kg" is not a known unit | a length with cm, m, mm, in or ft
            isolation hand radius 30° vs triquetra | 30° | "hand radius" is not measured so | a length with cm, m, mm, in or ft, or in tethers
            cat-eye tilt steep vs triquetra | steep | "steep" is no number | a number with a unit of angle, such as 30°
            flower 2.5 petals vs triquetra | 2.5 petals | petals is 2.5 | a whole number
            flower 40 petals vs triquetra | 40 petals | petals are 40 | 1 to 25
            static spin tilt 30° vs triquetra | tilt 30° | "tilt" does not go with "static spin" | of its own sizes only turns, start, stretches, stalling, ease
            half-and-half flower ease 2 vs triquetra | ease 2 | ease is 2 of the cycle | from 0.01 to 1 of the cycle, or 0 for a rate that changes at once
            triquetra ease 1/4 vs static spin | ease 1/4 | ease goes with a poi that changes its rate, and this one keeps to its own | leave it out, or say "stalling" or how the poi turns in stretches
            CAP ease 0 vs triquetra | ease 0 | ease goes with a poi that changes its rate, and this one keeps to its own | leave it out, or say "stalling" or how the poi turns in stretches
            circle swinging ease 0 vs triquetra | ease 0 | ease goes with a poi that changes its rate, and this one keeps to its own | leave it out, or say "stalling" or how the poi turns in stretches
            isolation ease 0 vs triquetra | ease 0 | "ease" does not go with "isolation" | of its own sizes only hand radius, hand start
            isolation hand radius 70 cm vs triquetra | hand radius 70 cm | hand radius of an isolation is 70 cm | less than its tether of 60 cm
            pendulum amplitude 200° vs triquetra | amplitude 200° | amplitude of a pendulum is 200° | more than 0° and at most 179.982°
            CAP turns 1.5 out -0.5 back vs triquetra | turns 1.5 out -0.5 back | poi turns of a CAP are 1.5 out and -0.5 back | keep the poi turning one way, both numbers of one sign
            pendulum vs triquetra, tempo 60 | tempo 60 | tempo is 60.0 a minute, but a pendulum that nobody drives sets it | leave it unsaid, or give 32.708, or change the tether or the swing
            pendulum floor plane vs triquetra | floor plane | plane of a pendulum is level | an upright one, wall or wheel: gravity swings a pendulum in no other
            pendulum tip 20° vs static spin | tip 20° | plane of a pendulum leans 20° from upright | an upright one, wall or wheel: gravity swings a pendulum in no other
            static spin vs pendulum wheel tip -5° | tip -5° | plane of a pendulum leans 5° from upright | an upright one, wall or wheel: gravity swings a pendulum in no other
            pendulum tilt 30° vs static spin | tilt 30° | rest of a pendulum is 30° off straight down | leave it straight down, where gravity takes it, or let the hand drive the arc: a stall
            pendulum rest 0° vs static spin | rest 0° | rest of a pendulum is 90° off straight down | leave it straight down, where gravity takes it, or let the hand drive the arc: a stall
            point swinging rest 90° vs static spin | rest 90° | rest of a pendulum is 180° off straight down | leave it straight down, where gravity takes it, or let the hand drive the arc: a stall
            toroid of pendulum vs static spin | toroid | turning plane of a pendulum goes round | let it keep still: nothing turns the plane of a swing that nobody drives
            CAP turns 1.5 out 0.2 back vs triquetra | turns 1.5 out 0.2 back | poi turns of a CAP sum to 1.7 | turns out and back that sum to a whole number
            CAP turns 1 sweep 180° vs triquetra | sweep 180° | sweep of a CAP that turns once leaves no way back | a smaller arc, or more turns
            CAP with 1 petal vs triquetra | 1 petal | petals of a CAP are 1 | 2 to 25
            CAP with 3 petals sweep 40° vs triquetra | sweep 40° | "sweep" after "petals" | only one of them
            3-petal CAP riding pendulum | 3-petal | petals are said of a CAP that rides | leave them out: a rider's hand goes where the other head goes
            CAP way out 1.2 vs triquetra | way out 1.2 | way out along an arc is 1.2 of the cycle | from 0.02 to 0.98 of the cycle
            CAP riding vs triquetra riding | riding | hands each ride the other | let one of them lead
            isolation vs triquetra @ 3 | @ | "@" says nothing here | a size of the second hand, timing, direction, tempo, or the end
            isolation vs triquetra, 4 | 4 | "4" does not say what it is the size of | a size's word beside it, such as petals, tether, hand radius or tilt
            isolation vs triquetra, same time, split | split | "split" after "together" | only one of them
            static spin clockwise vs triquetra clockwise, opposite | opposite | the hands were said to turn one way | one of the two, senses or direction
            left isolation vs left triquetra | left isolation vs left | both motions are the left hand's | one for each hand
            isolation vs triquetra right tether 50 cm left | left | "left" among the words of the right hand | sizes of both or of one hand after a comma at the end
            isolation vs triquetra, amplitude 30° | amplitude 30° | neither motion takes "amplitude" | a size of one of the two motions
            """)
    void eachBadPhraseIsUnderlinedAndPutRight(
            String phrase, String wrong, String what, String expected) {
        PhraseError error = error(phrase);
        assertThat(error.text().substring(error.start(), Math.min(error.end(), phrase.length())))
                .isEqualTo(wrong);
        assertThat(error.what()).isEqualTo(what);
        assertThat(error.expected()).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
            isolatoin vs triquetra | isolation
            isolation vs triqueta | triquetra
            statc spin vs CAP | static spin
            cta eye vs CAP | cat-eye
            isolation verus CAP | versus
            isolation vs CAP, splt | split
            isolation teather 60 cm vs CAP | tether
            isolation vs four-pettal antispin | petals
            pendlum vs CAP | pendulum
            """)
    void aSlipOfSpellingIsOfferedTheNearestWord(String phrase, String nearest) {
        assertThat(error(phrase).nearest()).contains(nearest);
    }

    /** Gravity swings a pendulum one way; an arc that is driven may stand and lie as it likes. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
            pendulum tilt 30° vs static spin | pendulum vs static spin | stall tilt 30° vs static spin
            static spin vs pendulum amplitude 60° tilt -45° | static spin vs pendulum amplitude 60° | static spin vs stall amplitude 60° tilt -45°
            pendulum floor vs static spin | pendulum vs static spin | stall floor plane vs static spin
            pendulum tip 20° vs triquetra | pendulum vs triquetra | stall tip 20° vs triquetra
            """)
    void aPendulumThatGravityCannotSwingIsOfferedHangingOrDriven(
            String phrase, String hanging, String driven) {
        assertThat(error(phrase).offers()).containsExactly(hanging, driven);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "pendulum tilt 0° vs static spin",
                "pendulum tilt 360° vs static spin",
                "pendulum rest -90° vs static spin",
                "pendulum wheel swivel 30° vs static spin",
                "pendulum rest 90° tip 180° vs static spin",
                "static spin vs pendulum tilt 30° riding",
                "line swinging rest 0° floor vs static spin"
            })
    void oneThatHangsStraightDownOrIsDrivenReads(String phrase) {
        assertThat(Phrase.parse(phrase).pairing()).isNotNull();
    }

    @Test
    void theUnderliningStandsBelowTheWord() {
        assertThat(error("isolation vs triqueta, split").underlined())
                .isEqualTo("isolation vs triqueta, split\n             ^^^^^^^^");
    }

    @Test
    void whatBothHandsDoIsNotSaidOfOne() {
        assertThat(error("butterfly vs isolation").what()).contains("what both hands do");
        assertThat(error("butterfly vs isolation").offers()).contains("butterfly");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "isolation vs triquetra, tempo sixty | isolation vs triquetra, tempo 60",
                "isolation vs triquetra, tempo sixti | isolation vs triquetra, tempo 60",
                "thre-petal antispin vs static spin | triquetra vs static spin",
            })
    void aNumberInWordsIsOfferedInFigures(String phrase, String offered) {
        assertThat(error(phrase).offers()).contains(offered);
    }

    @Test
    void aWeaveOfBeatsThatNobodySpinsIsOfferedOthers() {
        assertThat(error("9 beat weave").offers()).contains("three-beat weave");
    }

    @ParameterizedTest
    @CsvSource({
        "three-beat waeve, 0, 16",
        "three-beat, 0, 10",
        "isolation vs 3 beat waeve, 13, 25",
    })
    void beatsThatAreOfNothingAreOfAWeave(String phrase, int start, int end) {
        PhraseError error = error(phrase);
        assertThat(error.what()).contains("counts the beats of a weave");
        assertThat(error.offers()).first().asString().endsWith("three-beat weave");
        assertThat(error.start()).isEqualTo(start);
        assertThat(error.end()).isEqualTo(end);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", ",,,", "°", "vs vs", "1e999999999999 cm tether", "riding"})
    void nothingMuchIsStillAnErrorWithAPlace(String phrase) {
        PhraseError error = error(phrase);
        assertThat(error.start()).isBetween(0, phrase.length());
        assertThat(error.end()).isBetween(error.start(), phrase.length());
    }

    @Property(tries = 2000)
    void whateverIsTypedEitherReadsOrIsAnErrorInsideThePhrase(Any any) {
        String typed = any.from(BadPhrasesTest::typed);
        try {
            assertThat(Phrase.parse(typed).pairing()).isNotNull();
        } catch (PhraseError error) {
            assertThat(error.start()).isBetween(0, typed.length());
            assertThat(error.end()).isBetween(error.start(), typed.length());
            assertThat(error.what()).isNotBlank();
            assertThat(error.expected()).isNotBlank();
        }
    }

    private static final List<String> WORDS =
            Stream.concat(
                            Words.all().stream().map(Words.Entry::word),
                            Stream.of(
                                    "vs", "vs", "vs", ",", "1/0", "0", "-3", "4", "60 cm", "30°",
                                    "1e400", "at", "out", "back", "plus", "then", "by", "tethers",
                                    "turns", "half", "/", "é", "𝄞"))
                    .toList();

    private static String typed(Any any) {
        return any.oneOf(
                () -> String.join(" ", any.list(0, 14, () -> any.of(WORDS))),
                () ->
                        "isolation vs triquetra "
                                + String.join(" ", any.list(6, 6, () -> any.of(WORDS))),
                () -> any.text(0, 40));
    }
}
