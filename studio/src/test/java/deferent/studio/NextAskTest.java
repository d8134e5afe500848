package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import deferent.record.PatternDocument;
import deferent.search.set.PairBook;
import deferent.search.transition.Grade;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** What could come next, nothing else being said. */
class NextAskTest {
    private static final String EXTENSIONS = "extension vs extension, tether 40 cm";

    private static PatternDocument said(String phrase) {
        return PatternDocument.of(phrase, Phrase.parse(phrase).pairing(), Performer.USUAL);
    }

    private static NextAsk next(String phrase, List<PatternDocument> kept) {
        PairBook book = new PairBook(Grade.USUAL, Performer.USUAL, Kit.USUAL);
        return new NextAsk(said(phrase), book, kept, Lexicon.EMPTY, 24);
    }

    @Test
    void oneHandGoesIntoAnotherMotionWhileTheOtherGoesOnAndTheEasiestComesFirst() {
        List<JsonNode> answers = new ArrayList<>();
        ObjectNode last =
                next(EXTENSIONS, List.of())
                        .run(
                                part -> {
                                    if (part.has("answer")) {
                                        answers.add(part.get("answer"));
                                    }
                                },
                                () -> answers.size() >= 6);
        assertThat(last.get("complete").asBoolean()).as("it was stopped").isFalse();
        int alone = 0;
        for (JsonNode one : answers) {
            String hands = one.get("hands").asString();
            assertThat(one.at("/transition/grade").asString()).isIn("easy", "practised");
            assertThat(one.at("/transition/told/text").asString()).contains(", in ");
            assertThat(one.get("name").asString()).isNotEqualTo(EXTENSIONS).contains("extension");
            if (!hands.equals("both")) {
                alone++;
                String other = hands.equals("left") ? "right" : "left";
                assertThat(one.at("/transition/" + other + "/kind").asString())
                        .as("the other hand goes on")
                        .isEqualTo("keeps");
            }
        }
        assertThat(alone).as("of six, those with one hand alone").isPositive();
        List<Double> hardness =
                StreamSupport.stream(last.get("order_of_keys").spliterator(), false)
                        .map(
                                key ->
                                        answers.stream()
                                                .filter(a -> a.get("key").equals(key))
                                                .findFirst()
                                                .orElseThrow()
                                                .get("hardness")
                                                .asDouble())
                        .toList();
        assertThat(hardness).hasSize(6).isSorted();
        assertThat(6 + last.get("dangers").asInt() + last.get("not_possible").asInt())
                .as("each that was tried is told, left out or not possible")
                .isEqualTo(last.get("tried").asInt());
    }

    @Test
    void whatThePatternItselfDoesNotAllowIsTheReasonWhyNothingLeadsOn() {
        ObjectNode last =
                next("extension vs extension, tether 60 cm", List.of())
                        .run(part -> {}, () -> false);
        assertThat(last.get("order_of_keys")).isEmpty();
        assertThat(last.get("none").asString()).isEqualTo("reach");
        assertThat(last.get("why_here").asBoolean()).isTrue();
        assertThat(last.get("why").asString()).contains("arms do not reach");
    }
}
