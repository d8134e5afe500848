package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.record.Kept;
import deferent.record.PatternDocument;
import deferent.record.SetDocument;
import deferent.record.SetStep;
import deferent.record.Shelf;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

/** Sets: how they go, how they are played, and what a shelf suggests. */
class SetAskTest {
    private static final String SMALL =
            "extension hand radius 10 cm vs extension hand radius 10 cm";
    private static final String STEPS =
            "\"steps\":[{\"id\":\"small-arms\",\"name\":\"Small arms\",\"counts\":8},"
                    + "{\"id\":\"larger-arms\",\"name\":\"Larger arms\",\"counts\":8}]";

    @TempDir Path shelf;
    private Visitor visitor;

    @BeforeEach
    void open() {
        Kept small = save("Small arms", SMALL);
        save("Larger arms", "extension hand radius 16 cm vs extension hand radius 16 cm");
        Shelf.at(shelf).saveNew(SetDocument.of("Evening", List.of(SetStep.of(small, 8))));
        visitor = Visitor.to(shelf);
    }

    private Kept save(String name, String phrase) {
        return Shelf.at(shelf)
                .saveNew(PatternDocument.of(name, Phrase.parse(phrase).pairing(), Performer.USUAL));
    }

    @AfterEach
    void close() {
        visitor.close();
    }

    /** What is refused, and why. */
    private JsonNode refused(String what, String more) {
        var answer = visitor.post("/api/ask", "{\"ask\":\"" + what + "\"," + more + "}");
        assertThat(answer.statusCode()).isEqualTo(422);
        return Desk.JSON.readTree(answer.body());
    }

    private JsonNode ask(String what, String more) {
        return visitor.ask("{\"id\":1,\"ask\":\"" + what + "\"," + more + "}");
    }

    @Test
    void aSetGoesThroughItsStepsWithSmallPicturesAndWhatLeadsOn() {
        JsonNode set = ask("set", "\"name\":\"Trial\"," + STEPS);
        assertThat(set.get("name").stringValue()).isEqualTo("Trial");
        assertThat(set.get("steps")).hasSize(2);
        assertThat(set.at("/steps/0/moves/count").intValue()).isEqualTo(SmallPictures.USUAL);
        assertThat(set.at("/steps/1/pattern/kind").stringValue()).isEqualTo("pattern");
        assertThat(set.at("/steps/1/reach_told/text").stringValue()).isNotBlank();
        assertThat(set.at("/transitions/0/told/text").stringValue()).isNotBlank();
        assertThat(set.at("/transitions/0/after").intValue()).isZero();
        assertThat(set.at("/told/0/text").stringValue()).startsWith("It takes ");
    }

    @Test
    void aSavedSetIsAskedForByItsPlaceOrName() {
        assertThat(ask("set", "\"saved\":\"evening\"").at("/steps/0/name").stringValue())
                .isEqualTo("Small arms");
        assertThat(ask("set", "\"saved\":\"Evening\"").get("steps")).hasSize(1);
        assertThat(refused("set", "\"saved\":\"morning\"").at("/error/what").stringValue())
                .isEqualTo("is no set on the shelf");
    }

    @Test
    void aStepWhosePatternIsGoneIsMissingAndTheRestStands() {
        JsonNode set =
                ask(
                        "set",
                        "\"steps\":[{\"id\":\"gone\",\"name\":\"Gone\",\"counts\":4},{\"phrase\":\""
                                + SMALL
                                + "\",\"counts\":4}]");
        assertThat(set.at("/steps/0/missing").booleanValue()).isTrue();
        assertThat(set.at("/steps/0/missing_told/text").stringValue()).contains("no longer");
        assertThat(set.at("/transitions/0/none/text").stringValue()).contains("gone");
        assertThat(set.at("/steps/1/starts_s").doubleValue()).isZero();
        assertThat(set.get("faults")).hasSize(1);
    }

    @Test
    void anEmptySetIsRefused() {
        assertThat(refused("set", "\"steps\":[]").at("/error/what").stringValue())
                .isEqualTo("has no patterns");
    }

    @Test
    void aSetIsPlayedAsAWholeAndInParts() {
        JsonNode set = ask("set", STEPS);
        JsonNode whole = ask("set-play", STEPS);
        assertThat(whole.get("seconds").doubleValue())
                .isCloseTo(set.get("seconds").doubleValue(), within(1e-3));
        assertThat(whole.at("/scene/periodic").booleanValue()).isFalse();
        JsonNode part = ask("set-play", STEPS + ",\"from_s\":1,\"to_s\":2.5,\"rate\":40");
        assertThat(part.get("seconds").doubleValue()).isCloseTo(1.5, within(1e-9));
        assertThat(part.at("/pull/left").isObject()).isTrue();
        assertThat(
                        refused("set-play", STEPS + ",\"from_s\":9,\"to_s\":2")
                                .at("/error/right")
                                .stringValue())
                .isEqualTo("give a part of it");
    }

    @Test
    void aSetIsTakenAwayAsASheetAndNotAsAPicture() {
        JsonNode taken = ask("set-take", "\"saved\":\"Evening\",\"as\":\"pdf\"");
        assertThat(taken.get("name").asString()).isEqualTo("evening.pdf");
        assertThat(visitor.get(taken.get("file").asString()).body()).startsWith("%PDF-");
        assertThat(
                        refused("set-take", "\"saved\":\"Evening\",\"as\":\"svg\"")
                                .at("/error/what")
                                .stringValue())
                .contains("which no set is written as");
    }

    @Test
    void aShelfSuggestsASetOfItsPatterns() {
        save("Middling arms", "extension hand radius 13 cm vs extension hand radius 13 cm");
        JsonNode found = ask("set-suggest", "\"count\":3");
        assertThat(found.at("/set/kind").stringValue()).isEqualTo("set");
        assertThat(found.at("/set/steps")).hasSize(3);
        assertThat(found.at("/set/steps/1/id").stringValue()).isEqualTo("larger-arms");
        assertThat(refused("set-suggest", "\"count\":5").at("/error/where").stringValue())
                .contains("shelf");
    }
}
