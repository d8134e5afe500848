package deferent.motion.phrase;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Side;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What spinners type is understood, or answered with phrases to pick. Common practice, no source.
 */
class TypedPhrasesTest {
    /** A line of the lists: what is typed, = ? or !, and the meaning. */
    record Typed(String phrase, char kind, String meaning) {
        static Typed of(String line) {
            String[] columns = line.split("\t");
            return new Typed(columns[0], columns[1].charAt(0), columns[1].substring(2));
        }

        @Override
        public String toString() {
            return phrase;
        }
    }

    static Stream<Typed> lines(String file) throws IOException {
        try (InputStream in =
                Objects.requireNonNull(TypedPhrasesTest.class.getResourceAsStream(file))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#") && !line.isBlank())
                    .map(Typed::of);
        }
    }

    static Stream<Typed> typed() throws IOException {
        return Stream.concat(lines("typed.tsv"), lines("typed-more.tsv"));
    }

    @ParameterizedTest
    @MethodSource("typed")
    void whatIsTypedIsUnderstood(Typed typed) {
        switch (typed.kind()) {
            case '=' ->
                    assertThat(Phrase.parse(typed.phrase()).pairing())
                            .isEqualTo(Phrase.parse(typed.meaning()).pairing());
            case '?' -> explained(typed.phrase());
            default -> saidBack(typed);
        }
    }

    private static void explained(String phrase) {
        PhraseError error =
                catchThrowableOfType(PhraseError.class, () -> Phrase.parse(phrase).pairing());
        assertThat(error).as(phrase).isNotNull();
        assertThat(error.what()).isNotBlank();
        assertThat(error.offers()).as(phrase).isNotEmpty();
        for (String offer : error.offers()) {
            assertThat(Phrase.parse(offer).pairing()).as(offer).isNotNull();
        }
    }

    private static void saidBack(Typed typed) {
        Pairing pairing = Phrase.parse(typed.phrase()).pairing();
        String written = Phrase.write(pairing).orElseThrow();
        assertThat(Phrase.parse(written).pairing()).isEqualTo(pairing);
        if (typed.meaning().startsWith("each on its own side")) {
            // Further out than the shoulder joints of a stature of 1.70 m, 0.129 of it.
            assertThat(pairing.left().place().centre().getX()).isGreaterThan(0.129 * 1.70);
            assertThat(pairing.right().place().centre().getX()).isLessThan(-0.129 * 1.70);
            assertThat(written).contains("left side", "right side");
            return;
        }
        List<String> said =
                List.of(
                        written,
                        MotionWords.of(pairing, Side.LEFT),
                        MotionWords.of(pairing, Side.RIGHT));
        String name =
                typed.meaning().contains("shoulder")
                        ? "at the shoulder"
                        : typed.meaning().toLowerCase(Locale.ROOT);
        assertThat(said)
                .as(typed.phrase())
                .anyMatch(words -> words.toLowerCase(Locale.ROOT).contains(name));
        String word = name.replaceFirst(",.*", "");
        assertThat(Words.explain(word).word()).isEqualToIgnoringCase(word);
    }
}
