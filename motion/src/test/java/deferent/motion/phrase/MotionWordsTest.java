package deferent.motion.phrase;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Turns;
import deferent.motion.shared.Side;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Motions are called what the trade calls them, and every word is explained. */
class MotionWordsTest {
    private static final Motion SNOWDROP =
            new Motion(
                    new Series(List.of(new Series.Term(1, 0.4, 0), new Series.Term(-2, 0.1, 0))),
                    new Turns(4, 0));
    private static final Lexicon OURS =
            Lexicon.EMPTY.with("Snow-drop two", SNOWDROP, Tether.of(0.6));

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
            static spin vs CAP | static spin
            isolation hand radius 10 cm vs CAP | isolation
            isolation hand start 40° vs CAP | isolation
            extension vs CAP | extension
            cat-eye vs CAP | horizontal cat-eye
            vertical cat-eye vs CAP | vertical cat-eye
            cat-eye tilt 30° vs CAP | cat-eye tilted 30°
            cat-eye tilt 30° vs CAP, counter-clockwise | cat-eye tilted 30°
            linear extension vs CAP | linear extension
            linear isolation tilt 20° vs CAP | linear isolation
            triquetra tilt 90° vs CAP | triquetra
            four-petal antispin vs CAP | four-petal antispin
            box four-petal in-spin vs CAP | box four-petal in-spin
            one-petal in-spin vs CAP | one-petal in-spin
            13-petal in-spin vs CAP | 13-petal in-spin
            half-and-half flower vs CAP | half-and-half flower
            half-and-half flower ease 0 vs CAP | half-and-half flower
            pendulum amplitude 20° vs CAP | pendulum
            stall vs CAP | stall
            CAP turns 1.5 out 0.5 back vs CAP | CAP
            toroid of a triquetra vs CAP | toroid of triquetra
            CAP with 3 petals vs CAP | triquetra CAP
            CAP with 5 petals vs CAP | CAP with 5 petals
            cat-eye CAP vs CAP | cat-eye CAP
            CAP tilt 90° vs CAP | CAP
            CAP start 10° vs CAP | arc, the poi turning twice
            CAP riding pendulum | CAP
            cat-eye CAP riding pendulum | cat-eye CAP
            triquetra riding pendulum | CAP-like triquetra
            triquetra riding isolation | triquetra, riding
            square turns -3 vs CAP | square, the poi turning three times against it
            line vs CAP | line, the poi turning once
            """)
    void theFirstHandIsCalledSo(String phrase, String name) {
        assertThat(MotionWords.of(Phrase.parse(phrase).pairing(), Side.LEFT)).isEqualTo(name);
    }

    @Test
    void aNameOfTheUsersOwnIsSaidReadAndScaledWithTheTether() {
        Phrase phrase = Phrase.parse("triquetra vs snowdrop two", OURS);
        assertThat(phrase.pairing().right().motion()).isEqualTo(SNOWDROP);
        Pairing longer = phrase.with(Tether.of(1.2));
        assertThat(longer.right().motion().path()).isEqualTo(SNOWDROP.path().scaled(2));
        assertThat(MotionWords.of(longer, Side.RIGHT, OURS)).isEqualTo("Snow-drop two");
        assertThat(Phrase.write(longer, OURS))
                .contains("triquetra vs Snow-drop two, tether 120 cm");
        Pairing sized = Phrase.parse("snow drop two hand radius 1 m vs CAP", OURS).pairing();
        assertThat(sized.left().motion().path().radius()).isEqualTo(1);
    }

    @Test
    void aTradeWordCannotBeGivenAway() {
        assertThatThrownBy(() -> Lexicon.EMPTY.with("Cat Eye", SNOWDROP, Tether.USUAL))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("a word of the trade");
        assertThatThrownBy(() -> Lexicon.EMPTY.with("2, then", SNOWDROP, Tether.USUAL))
                .isInstanceOf(Refusal.class);
    }

    @Test
    void everyWordIsExplainedUnderEachOfItsNames() {
        for (Words.Entry entry : Words.all()) {
            assertThat(entry.means()).as(entry.word()).isNotBlank();
            assertThat(Words.explain(entry.word())).isEqualTo(entry);
        }
        assertThat(Words.explain("long arm").word()).isEqualTo("extension");
        assertThat(Words.explain("cap").sizesUnsaid())
                .contains("half a turn on the way out", "720°/N");
        assertThat(Words.explain("three-petal antispin").word()).isEqualTo("triquetra");
        assertThat(Words.explain("snowdrop two", OURS).means()).contains("a motion of your own");
    }

    @Test
    void anUnknownWordIsOfferedTheNearest() {
        assertThatThrownBy(() -> Words.explain("triqetra"))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("did you mean triquetra?");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
            isolations versus cateye hand radius 0.3 m | isolation vs horizontal cat-eye
            flower turns -3, petals up vs CAP | ''
            flower turns -3 vs CAP stalling | four-petal antispin vs CAP stalling
            CAP turns 1.5 out 0.5 back vs stall | CAP turns 1.5 out 0.5 back vs stall
            CAP sweep 60° vs triquetra CAP | CAP with 6 petals vs triquetra CAP
            CAP tilt 90° way out 0.25 vs CAP turns 0.5 out 1.5 back | CAP middle 0° vs CAP
            CAP sweep 50° vs CAP turns 3 | CAP sweep 50° vs CAP turns 3
            cat-eye CAP riding stall | cat-eye CAP riding stall
            pendulum vs triquetra riding | pendulum vs triquetra riding
            CAP start 0° riding pendulum | one-petal in-spin riding pendulum
            pendulum tether 0.5 m vs CAP tether 500 mm | pendulum vs CAP, tether 50 cm
            isolation wheel vs triquetra wheel, timing 0.5 opposites | isolation vs triquetra, wheel plane, split time, opposite direction
            circle hand radius 20 cm turns 1 start 180° vs CAP | isolation hand radius 20 cm vs CAP
            antispin box flower vs vertical cat-eye | box four-petal antispin vs vertical cat-eye
            linear isolation tilt 20° vs CAP | linear isolation tilt 20° vs CAP
            isolation centre 10 cm left vs CAP cycles 2 | isolation centre 10 cm left vs CAP cycles 2
            triquetra against riding pendulum | triquetra vs pendulum riding
            cap riding pendulum tether 50 cm | CAP tether 60 cm riding pendulum tether 50 cm
            isolation vs triquetra, split-time opposites | isolation vs triquetra, split time, opposite direction
            """)
    void aPhraseIsWrittenInItsShortestWords(String said, String written) {
        if (written.isEmpty()) {
            assertThatThrownBy(() -> Phrase.parse(said)).isInstanceOf(PhraseError.class);
            return;
        }
        assertThat(Phrase.write(Phrase.parse(said).pairing())).contains(written);
    }
}
