package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.networknt.schema.InputFormat;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A document may give its phrase alone; one that gives sizes too is told where they disagree. */
class PhraseAloneTest {
    @TempDir Path folder = Path.of("");

    private static String alone(String phrase) {
        return "{\"format\": 1, \"name\": \"short\", \"phrase\": \"" + phrase + "\"}";
    }

    private static PatternDocument kept(String phrase, String sized) {
        return PatternDocument.of("both", Phrase.parse(sized).pairing(), Performer.USUAL)
                .withPhrase(Optional.of(phrase));
    }

    @Test
    void aPhraseAloneIsThePairingItSays() {
        String text = alone("isolation vs triquetra tether 55 cm, split time");
        PatternDocument read = (PatternDocument) PatternJson.read(text);
        assertThat(read.pairing())
                .isEqualTo(
                        Phrase.parse("isolation vs triquetra tether 55 cm, split time").pairing());
        assertThat(DocumentProperties.SCHEMA.validate(text, InputFormat.JSON)).isEmpty();
        assertThat(PatternJson.read(PatternJson.write(read))).isEqualTo(read);
        assertThat(read.disagreement(Lexicon.EMPTY)).isEmpty();
    }

    @Test
    void aPhraseAloneThatCannotBeReadIsToldAtItsKey() {
        assertThatThrownBy(() -> PatternJson.read(alone("isolashun vs triquetra")))
                .isInstanceOf(DocumentError.class)
                .hasMessageContaining("line 1, column ")
                .hasMessageContaining("phrase: stands without a \"pairing\" and cannot be read")
                .hasMessageContaining("isolation");
        String none = "{\"format\": 1, \"name\": \"short\"}";
        assertThatThrownBy(() -> PatternJson.read(none)).hasMessageContaining("has no \"pairing\"");
        assertThat(DocumentProperties.SCHEMA.validate(none, InputFormat.JSON)).isNotEmpty();
    }

    @Test
    void onTheShelfAndInABundleItMaySayTheMotionsThatStandThere() throws IOException {
        Files.writeString(folder.resolve("a.json"), alone("lantern loop vs static spin"));
        Files.writeString(folder.resolve("b.json"), alone("moth loop vs static spin"));
        MotionDocument loop =
                MotionDocument.of("lantern loop", Motion.flower(0.3, -3, 0), Tether.USUAL);
        Shelf shelf = Shelf.at(folder);
        shelf.saveNew(loop);
        Shelf.Listing listing = shelf.look();
        assertThat(listing.kept()).extracting(Kept::id).containsExactly("a", "lantern-loop");
        assertThat(listing.notListed()).extracting(NotListed::file).containsExactly("b.json");
        PatternDocument read = (PatternDocument) shelf.load("a").document();
        assertThat(read.pairing().left().motion()).isEqualTo(loop.motion());
        String bundle =
                "{\"format\": 1, \"kind\": \"bundle\", \"documents\": ["
                        + alone("lantern loop vs static spin")
                        + ", "
                        + PatternJson.write(loop)
                        + "]}";
        assertThat(PatternJson.readBundle(bundle)).containsExactly(read, loop);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "isolation vs triquetra | isolation tether 70 cm vs triquetra",
                "isolation vs triquetra | isolation vs triquetra, tempo 80",
                "isolation vs triquetra, tether 50 cm | isolation tether 50 cm vs triquetra tether 50 cm",
                "a remark of no pairing at all | isolation vs triquetra",
                "CAP vs static spin | CAP vs static spin",
            })
    void whatAPhraseLeavesUnsaidSaysNothingAgainstTheSizes(String phrase, String sized) {
        assertThat(kept(phrase, sized).disagreement(Lexicon.EMPTY)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "isolation tether 50 cm vs triquetra | isolation vs triquetra | left tether 50 cm in the phrase, 60 cm in the sizes",
                "isolation vs triquetra | isolation hand radius 20 cm vs triquetra | left hand radius 30 cm in the phrase, 20 cm in the sizes",
                "isolation vs triquetra, split time | isolation vs triquetra | timing 0.5 cycles in the phrase, 0 cycles in the sizes",
                "isolation vs triquetra, tempo 80 | isolation vs triquetra | tempo 80 a minute in the phrase, 60 a minute in the sizes",
                "isolation vs cat-eye tilt 30° | isolation vs cat-eye | right tilt 30° in the phrase, 0° in the sizes",
                "isolation vs triquetra, opposite | isolation vs triquetra | direction opposite in the phrase, same in the sizes",
                "isolation vs triquetra, counter-clockwise | isolation vs triquetra | counter-clockwise in the phrase, clockwise in the sizes",
                "extension vs triquetra | extension vs four-petal antispin | right hand \"triquetra",
            })
    void wherePhraseAndSizesDisagreeBothAreTold(String phrase, String sized, String told) {
        assertThat(kept(phrase, sized).disagreement(Lexicon.EMPTY).orElseThrow())
                .startsWith("phrase and sizes disagree: ")
                .contains(told)
                .contains("The sizes count; to go by the phrase leave out \"pairing\"");
    }

    @Test
    void theDemoSetAgreesWithItself() {
        assertThat(DemoShelf.documents())
                .filteredOn(PatternDocument.class::isInstance)
                .allSatisfy(
                        d ->
                                assertThat(((PatternDocument) d).disagreement(Lexicon.EMPTY))
                                        .isEmpty());
    }
}
