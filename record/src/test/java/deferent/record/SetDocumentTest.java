package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.networknt.schema.InputFormat;
import deferent.motion.phrase.Phrase;
import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import deferent.reading.body.Performer;
import deferent.record.landing.Landing;
import deferent.search.set.BodyTurn;
import deferent.search.transition.Grade;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SetDocumentTest {
    @TempDir Path folder;

    private static final PatternDocument RING = PatternJsonTest.linked();
    private static final PatternDocument LONG_ARMS = said("Long arms", "extension vs extension");

    private static PatternDocument said(String name, String phrase) {
        return PatternDocument.of(name, Phrase.parse(phrase).pairing(), Performer.USUAL);
    }

    private Shelf shelf() {
        return Shelf.at(folder.resolve("shelf"));
    }

    private SetPlaces.Place only(SetDocument set) {
        return SetPlaces.on(shelf().look()).of(set.steps()).get(0);
    }

    @Test
    void aSetKeepsTheHardestTransitionItTakesAndAnOlderOneTakesTheUsual() {
        SetDocument set = SetDocument.of("Evening", List.of(SetStep.of(RING, 8)));
        String older = PatternJson.write(set);
        assertThat(older).doesNotContain("hardest");
        assertThat(((SetDocument) PatternJson.read(older)).hardest()).isEqualTo(Grade.USUAL);
        for (Grade grade : Grade.values()) {
            String text = PatternJson.write(set.withHardest(grade));
            assertThat(((SetDocument) PatternJson.read(text)).hardest()).isEqualTo(grade);
            assertThat(DocumentProperties.SCHEMA.validate(text, InputFormat.JSON)).isEmpty();
        }
        String wrong =
                PatternJson.write(set.withHardest(Grade.HARD)).replace("\"hard\"", "\"harder\"");
        assertThatThrownBy(() -> PatternJson.read(wrong))
                .isInstanceOf(DocumentError.class)
                .hasMessageContaining("hardest");
        assertThat(DocumentProperties.SCHEMA.validate(wrong, InputFormat.JSON)).isNotEmpty();
        assertThat(set.withHardest(Grade.HARD).withName("Night").hardest()).isEqualTo(Grade.HARD);
    }

    @Test
    void aSetReadsAsASpinnerWouldWriteIt() {
        SetDocument set =
                SetDocument.of(
                        "Market evening",
                        List.of(
                                new SetStep(new SetStep.OfShelf("long-arms", "Long arms"), 16),
                                new SetStep(new SetStep.OfShelf("ring", "Ring"), 8)));
        assertThat(PatternJson.write(set))
                .isEqualTo(
                        """
                        {
                          "format": 1,
                          "kind": "set",
                          "name": "Market evening",
                          "steps": [
                            {"id": "long-arms", "name": "Long arms", "counts": 16},
                            {"id": "ring", "name": "Ring", "counts": 8}
                          ]
                        }
                        """);
        assertThat(PatternJson.read(PatternJson.write(set))).isEqualTo(set);
    }

    @Test
    void aTurnOfTheBodyStandsWithItsCountAndOneBeyondTheStepIsRefused() {
        SetStep step = new SetStep(new SetStep.OfShelf("ring", "Ring"), 8);
        SetDocument set = SetDocument.of("Evening", List.of(step.with(new BodyTurn(-2, 5))));
        String text = PatternJson.write(set);
        assertThat(text).contains("\"turn\": {\"turn_deg\": -180, \"count\": 5}");
        assertThat(PatternJson.read(text)).isEqualTo(set);
        assertThatThrownBy(() -> PatternJson.read(text.replace("\"count\": 5", "\"count\": 9")))
                .isInstanceOf(DocumentError.class)
                .hasMessageContaining("steps.0.turn.count")
                .hasMessageContaining("is on count 9 of 8")
                .hasMessageContaining("give a count from 1 to 8");
        assertThatThrownBy(() -> PatternJson.read(text.replace("-180", "45")))
                .hasMessageContaining("give 90 or 180 to the left");
    }

    @Test
    void aSongStandsWithItsBeatAndAStepWithItsBeatsACycle() {
        SetStep step = new SetStep(new SetStep.OfShelf("ring", "Ring"), 8).with(OptionalInt.of(4));
        SetDocument set =
                SetDocument.of("Evening", List.of(step))
                        .withSong(Optional.of(new SetSong("snow", "Snow", 8)));
        String text = PatternJson.write(set);
        assertThat(text)
                .contains("\"counts\": 8, \"beats_a_cycle\": 4")
                .contains("\"song\": {\"id\": \"snow\", \"name\": \"Snow\", \"from_beat\": 8}");
        assertThat(PatternJson.read(text)).isEqualTo(set);
        // An older file says neither.
        String older =
                text.replace(", \"beats_a_cycle\": 4", "")
                        .replaceFirst(",\\s*\"song\": \\{[^}]*}", "");
        assertThat(PatternJson.read(older))
                .isEqualTo(SetDocument.of("Evening", List.of(step.with(OptionalInt.empty()))));
        assertThatThrownBy(() -> PatternJson.read(text.replace("cycle\": 4", "cycle\": 33")))
                .isInstanceOf(DocumentError.class)
                .hasMessageContaining("steps.0.beats_a_cycle");
        assertThatThrownBy(() -> PatternJson.read(text.replace("beat\": 8", "beat\": -1")))
                .hasMessageContaining("song.from_beat");
        assertThatThrownBy(() -> PatternJson.read(text.replace("\"format\": 1", "\"format\": 2")))
                .hasMessageContaining("newer than this deferent");
    }

    @Property(tries = 150)
    void everySetReadsBackAsItWasAndIsValidAfterThePublishedSchema(Any any) {
        SetDocument set = any.from(AnySet::of);
        String text = PatternJson.write(set);
        assertThat(PatternJson.read(text)).isEqualTo(set);
        assertThat(DocumentProperties.SCHEMA.validate(text, InputFormat.JSON)).isEmpty();
    }

    @Property(tries = 60)
    void aBundleWithSetsInItReadsBackAsItWas(Any any) {
        List<Document> documents = any.from(AnySet::bundle);
        String text = PatternJson.writeBundle(documents);
        assertThat(PatternJson.readBundle(text)).isEqualTo(documents);
        assertThat(DocumentProperties.SCHEMA.validate(text, InputFormat.JSON)).isEmpty();
    }

    @ParameterizedTest(name = "{1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"format\": 1|\"format\": 2|format",
                "\"counts\": 16|\"counts\": 0|steps.0.counts",
                "\"counts\": 16|\"counts\": 1001|steps.0.counts",
                "\"counts\": 16|\"counts\": 1.5|steps.0.counts",
                ", \"counts\": 16||steps.0",
                "\"id\": \"long-arms\", ||steps.0",
                "\"id\": \"long-arms\"|\"id\": \"\"|steps.0.id",
                "\"name\": \"Long arms\", ||steps.0",
                "\"name\": \"Long arms\"|\"name\": \"Long arms\", \"beats\": 3|steps.0.beats",
                "[{\"id\"|{\"id\"|",
                "\"steps\"|\"step\"|step",
            })
    void aWrongSetIsWrongForReaderAndSchema(String right, String wrong, String where) {
        String good =
                """
                {"format": 1, "kind": "set", "name": "Evening",
                 "steps": [{"id": "long-arms", "name": "Long arms", "counts": 16}]}
                """;
        assertThat(DocumentProperties.SCHEMA.validate(good, InputFormat.JSON)).isEmpty();
        assertThat(PatternJson.read(good)).isInstanceOf(SetDocument.class);
        assertThat(good).contains(right);
        String text = good.replace(right, wrong == null ? "" : wrong);
        assertThatThrownBy(() -> PatternJson.read(text))
                .isInstanceOfSatisfying(
                        DocumentError.class,
                        e -> {
                            assertThat(e.line()).isPositive();
                            if (where != null) {
                                assertThat(e.where()).isEqualTo(where);
                            }
                        });
        if (where != null) {
            assertThat(DocumentProperties.SCHEMA.validate(text, InputFormat.JSON)).isNotEmpty();
        }
    }

    @Test
    void aStepIsAPatternOfTheShelfOrOneWrittenOutAndNeitherAMotionNorASet() {
        String held = PatternJson.write(SetDocument.of("Held", List.of(SetStep.of(RING, 8))));
        assertThat(PatternJson.read(held)).isInstanceOf(SetDocument.class);
        for (String wrong :
                List.of(
                        held.replace("\"kind\": \"pattern\"", "\"kind\": \"set\""),
                        held.replace("\"kind\": \"pattern\"", "\"kind\": \"motion\""),
                        held.replace("\"counts\"", "\"id\": \"a\", \"name\": \"b\", \"counts\""))) {
            assertThatThrownBy(() -> PatternJson.read(wrong))
                    .isInstanceOf(DocumentError.class)
                    .hasMessageContaining("steps.0.");
            assertThat(DocumentProperties.SCHEMA.validate(wrong, InputFormat.JSON)).isNotEmpty();
        }
    }

    @Test
    void aSetStandsOnTheShelfBesideThePatterns() {
        Kept arms = shelf().saveNew(LONG_ARMS);
        Kept set = shelf().saveNew(SetDocument.of("Evening", List.of(SetStep.of(arms, 16))));
        assertThat(shelf().look().patterns()).containsExactly(LONG_ARMS);
        assertThat(shelf().find("evening")).contains(set);
        assertThat(shelf().look().notListed()).isEmpty();
        var tree = ShelfJson.tree(shelf());
        assertThat(tree.at("/patterns").size()).isEqualTo(1);
        assertThat(tree.at("/motions").size()).isZero();
        assertThat(tree.at("/sets/0/name").asString("")).isEqualTo("Evening");
        assertThat(tree.at("/sets/0/steps/0/id").asString("")).isEqualTo("long-arms");
    }

    @Test
    void aSetFromANewerProgramIsListedWithItsReasonAndNeverWrittenOver() throws IOException {
        Kept kept = shelf().saveNew(SetDocument.of("Evening", List.of()));
        Path file = shelf().file(kept.id());
        String newer = Files.readString(file).replace("\"format\": 1", "\"format\": 2");
        Files.writeString(file, newer);
        assertThat(shelf().look().notListed().get(0).why()).contains("newer");
        assertThatThrownBy(() -> shelf().save("evening", kept.document(), kept.revision()))
                .isInstanceOf(DocumentError.class);
        assertThat(file).hasContent(newer);
    }

    @Test
    void aCrashInTheMiddleOfASaveLeavesTheOldSet() {
        SetDocument old = SetDocument.of("Evening", List.of(SetStep.of(RING, 8)));
        Kept kept = shelf().saveNew(old);
        Shelf dying =
                Shelf.at(
                        folder.resolve("shelf"),
                        file -> {
                            Landing.NEW.open(file).write(ByteBuffer.wrap(new byte[] {'{'}));
                            throw new IOException("the power went");
                        });
        assertThatThrownBy(
                        () ->
                                dying.save(
                                        kept.id(),
                                        SetDocument.of("Evening", List.of()),
                                        kept.revision()))
                .isInstanceOf(ShelfError.class);
        assertThat(shelf().load("evening").document()).isEqualTo(old);
    }

    @Test
    void aStepFindsItsPatternThoughItsFileWasRenamed() throws IOException {
        Kept arms = shelf().saveNew(LONG_ARMS);
        SetDocument set = SetDocument.of("Evening", List.of(SetStep.of(arms, 16)));
        Files.move(shelf().file("long-arms"), shelf().file("arms"));
        assertThat(only(set).id()).contains("arms");
        assertThat(only(set).was()).isEmpty();
        assertThat(only(set).pattern()).contains(LONG_ARMS);
    }

    @Test
    void aStepFindsItsPatternThoughItIsCalledOtherwiseNow() {
        Kept arms = shelf().saveNew(LONG_ARMS);
        SetDocument set = SetDocument.of("Evening", List.of(SetStep.of(arms, 16)));
        shelf().save(arms.id(), LONG_ARMS.withName("Wide arms"), arms.revision());
        assertThat(only(set).was()).contains("Long arms");
        assertThat(only(set).name()).isEqualTo("Wide arms");
    }

    @Test
    void aPatternOfTheNameGoesBeforeAnotherThatTookItsFile() throws IOException {
        Kept arms = shelf().saveNew(LONG_ARMS);
        SetDocument set = SetDocument.of("Evening", List.of(SetStep.of(arms, 16)));
        Files.move(shelf().file("long-arms"), shelf().file("arms"));
        shelf().saveNew("long-arms", RING);
        assertThat(only(set).pattern()).contains(LONG_ARMS);
        assertThat(only(set).id()).contains("arms");
    }

    @Test
    void aRemovedPatternIsMissingAndKeepsItsNameAndABrokenOneSaysWhy() throws IOException {
        Kept arms = shelf().saveNew(LONG_ARMS);
        SetDocument set = SetDocument.of("Evening", List.of(SetStep.of(arms, 16)));
        Files.writeString(shelf().file("long-arms"), "{");
        assertThat(only(set).missing()).isTrue();
        assertThat(only(set).unread()).isPresent();
        Files.delete(shelf().file("long-arms"));
        assertThat(only(set).missing()).isTrue();
        assertThat(only(set).unread()).isEmpty();
        assertThat(only(set).name()).isEqualTo("Long arms");
    }

    @Test
    void aSetThatIsImportedFindsItsPatternsWhereTheyWerePut() {
        Kept arms = shelf().saveNew(LONG_ARMS);
        // The set's name comes before the pattern's, so that it is read first.
        shelf().saveNew(SetDocument.of("Evening", List.of(SetStep.of(arms, 16))));
        Shelf other = Shelf.at(folder.resolve("other"));
        PatternDocument namesake = RING.withName("Long arms");
        other.saveNew(namesake);
        List<Kept> put = other.importAll(shelf().exportAll());
        assertThat(put).extracting(Kept::id).containsExactly("evening", "long-arms-2");
        SetDocument set = (SetDocument) put.get(0).document();
        assertThat(SetPlaces.on(other.look()).of(set.steps()).get(0).pattern()).contains(LONG_ARMS);
        // Again, and nothing is there twice.
        other.importAll(shelf().exportAll());
        assertThat(other.list()).hasSize(3);
        // The same shelf again keeps the very ids.
        assertThat(shelf().importAll(shelf().exportAll())).hasSize(2);
        assertThat(shelf().list()).hasSize(2);
    }

    @Test
    void whatAnotherProgramKeepsInASetComesBack() {
        SetDocument set =
                new SetDocument(
                        "Evening",
                        "",
                        Optional.empty(),
                        List.of(),
                        List.of(),
                        Grade.USUAL,
                        Optional.empty(),
                        new Extras(Map.of("/x_song", "{\"bpm\": 120}")));
        assertThat(PatternJson.read(PatternJson.write(set))).isEqualTo(set);
    }
}
