package deferent.take;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.record.PatternDocument;
import deferent.reel.Kind;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Every ending there is, from the table alone. */
class EndingsTest {
    private static final PatternDocument PATTERN =
            PatternDocument.of(
                    "Anchor",
                    Phrase.parse("static spin vs triquetra").with(Tether.USUAL),
                    Performer.USUAL);

    /** What files begin with, by their formats' own descriptions, and after how many bytes. */
    private static final Map<String, String> STARTS =
            Map.ofEntries(
                    Map.entry("svg", "<svg"),
                    Map.entry("png", "\u0089PNG"),
                    Map.entry("pdf", "%PDF-"),
                    Map.entry("mp4", "....ftyp"),
                    Map.entry("webm", "\u001aE\u00df\u00a3"),
                    Map.entry("mov", "....ftyp"),
                    Map.entry("webp", "RIFF....WEBP"),
                    Map.entry("gif", "GIF89a"),
                    Map.entry("zip", "PK"),
                    Map.entry("html", "<!doctype html>"),
                    Map.entry("gltf", "{\n  \"accessors\""),
                    Map.entry("glb", "glTF"),
                    Map.entry("csv", "time_s,left_hand_x_m,"),
                    Map.entry("json", "{\n  \"format\": 1,\n  \"kind\": \"timing\""));

    @TempDir Path folder;

    private static Take take(Ending ending, Map<String, String> wishes) {
        return Take.of(PATTERN, List.of(), Wishes.of(ending, wishes), Lexicon.EMPTY);
    }

    /** Small, where a size is taken. */
    private static Take take(Ending ending) {
        return take(
                ending,
                ending.offers("").stream().anyMatch(o -> o.wish() == Wish.SIZE)
                        ? Map.of("size", "96")
                        : Map.of());
    }

    @Test
    void eachHasAKeyOfItsOwnByWhichItIsFound() {
        assertThat(Endings.all()).extracting(Ending::key).doesNotHaveDuplicates();
        for (Ending ending : Endings.all()) {
            Path file = Path.of("a.b", "flower." + ending.key().toUpperCase(java.util.Locale.ROOT));
            assertThat(Endings.of(file)).isSameAs(ending);
            assertThat(ending.words()).isNotBlank();
            assertThat(Endings.families()).contains(ending.family());
        }
    }

    @Test
    void everyKindOfClipIsAnEnding() {
        assertThat(Endings.all().stream().filter(Ending::filmed))
                .extracting(Ending::key)
                .containsExactlyElementsOf(Stream.of(Kind.values()).map(Kind::ending).toList());
    }

    @ParameterizedTest
    @ValueSource(strings = {"flower.xyz", "flower", "flower.", ".svg", "flower.svg.part"})
    void anotherNameIsRefusedWithTheEndingsThereAre(String name) {
        assertThatThrownBy(() -> Endings.of(Path.of(name)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining(
                        String.join(", ", Endings.all().stream().map(e -> "." + e.key()).toList()));
    }

    /** An ending that is not in the list above says here what its files begin with. */
    @ParameterizedTest
    @MethodSource("deferent.take.Endings#all")
    void aFileBeginsAsItsFormatSays(Ending ending) throws IOException {
        String start = STARTS.getOrDefault(ending.key(), "what its format says");
        Path file = folder.resolve("taken." + ending.key());
        Taken taken = take(ending).write(file, at -> {}, () -> false).orElseThrow();
        assertThat(taken.files()).startsWith(file);
        assertThat(taken.told()).isNotBlank();
        String written = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
        String regex = "(?s)" + start.replaceAll("[{%$]", "\\\\$0") + ".*";
        assertThat(written.substring(0, Math.min(99, written.length()))).matches(regex);
    }

    @ParameterizedTest
    @MethodSource("deferent.take.Endings#all")
    void whatIsStoppedLeavesTheOlderFile(Ending ending) throws IOException {
        Path file = Files.writeString(folder.resolve("taken." + ending.key()), "older");
        Optional<Taken> taken = take(ending).write(file, at -> {}, () -> true);
        if (taken.isEmpty()) {
            assertThat(file).hasContent("older");
        }
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left).containsExactly(file);
        }
    }

    @ParameterizedTest
    @MethodSource("deferent.take.Endings#all")
    void aPreviewShowsSomethingOfTheFile(Ending ending) {
        Preview preview = take(ending).preview(Preview.Calm.ALWAYS, () -> false).orElseThrow();
        assertThat(preview.bytes()).isNotEmpty();
        assertThat(preview.told()).isNotBlank();
        assertThat(preview.mediaType())
                .isIn("image/png", "image/svg+xml", "text/html", "text/plain");
        assertThat(preview.writable()).isTrue();
    }

    /** Each ending with each wish. */
    static Stream<Arguments> wishes() {
        return Endings.all().stream()
                .flatMap(e -> Arrays.stream(Wish.values()).map(w -> Arguments.of(e, w)));
    }

    @ParameterizedTest
    @MethodSource("wishes")
    void aWishThatMeansNothingIsRefusedAndWhatIsTakenInstead(Ending ending, Wish wish) {
        if (ending.takes(wish)) {
            return;
        }
        String others =
                Endings.all().stream()
                        .filter(e -> e.takes(wish))
                        .map(e -> "." + e.key())
                        .reduce((a, b) -> a + ", " + b)
                        .orElseThrow();
        assertThatThrownBy(() -> Wishes.of(ending, Map.of(wish.key(), "no")))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("." + ending.key())
                .hasMessageContaining(others);
    }

    @ParameterizedTest
    @MethodSource("deferent.take.Endings#all")
    void whatIsOfferedStandsInOrderAndKnowsWhatNothingSaidMeans(Ending ending) {
        assertThat(ending.offers()).extracting(Offer::wish).isSorted().doesNotHaveDuplicates();
        for (Offer offer : ending.offers()) {
            if (offer.wish().kind() == Wish.Kind.WORD) {
                assertThat(offer.values()).as(offer.wish().key()).contains(offer.unsaid());
            }
            if (offer.wish().kind() == Wish.Kind.YES) {
                assertThat(offer.unsaid()).as(offer.wish().key()).isIn("yes", "no");
            }
        }
    }

    @Test
    void aTransparentGroundIsOfferedWhereTheFileCanHaveOne() {
        assertThat(Endings.all().stream().filter(e -> e.takes(Wish.TRANSPARENT)))
                .extracting(Ending::key)
                .containsExactly("svg", "png", "pdf", "webm", "mov", "webp", "zip");
    }

    @Test
    void manyPatternsAreRefusedByWhatHoldsOne() {
        for (Ending ending : Endings.all()) {
            Wishes wishes = Wishes.of(ending, Map.of());
            List<PatternDocument> two = List.of(PATTERN, PATTERN);
            if (ending.many()) {
                assertThat(Take.of("Two", two, wishes, Lexicon.EMPTY).patterns()).hasSize(2);
            } else {
                assertThatThrownBy(() -> Take.of("Two", two, wishes, Lexicon.EMPTY))
                        .isInstanceOf(Refusal.class)
                        .hasMessageContaining(".pdf");
            }
        }
    }
}
