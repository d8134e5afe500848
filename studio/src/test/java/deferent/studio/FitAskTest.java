package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

class FitAskTest {
    @TempDir static Path shelf;
    private static Visitor visitor;

    @BeforeAll
    static void open() {
        visitor = Visitor.to(shelf);
    }

    @AfterAll
    static void close() {
        visitor.close();
    }

    @Test
    void aTriquetrasHandCircleIsBroughtToTheSpinsTether() {
        JsonNode fit =
                visitor.ask(
                        """
                        {"id":3,"ask":"fit","phrase":"static spin vs triquetra","carrier":"left",
                         "change":[{"set":"right.hand_radius_m","to":0.5}],"free":["right.hand_radius_m"]}
                        """);
        assertThat(fit.get("id").asInt()).isEqualTo(3);
        assertThat(fit.get("closes").asBoolean()).isTrue();
        JsonNode change = fit.at("/answers/0/changes/0");
        assertThat(change.get("key").asString()).isEqualTo("right.hand_radius_m");
        assertThat(change.get("from").asDouble()).isEqualTo(0.5);
        assertThat(change.get("to").asDouble()).isCloseTo(0.6, within(1e-6));
        assertThat(change.get("unit").asString()).isEqualTo("m");
        assertThat(fit.at("/answers/0/told").asString()).contains("60 cm");
    }

    @Test
    void anAnswerOpenedAsItIsLinks() {
        JsonNode fit =
                visitor.ask(
                        """
                        {"ask":"fit","phrase":"static spin vs triquetra",
                         "change":[{"set":"right.hand_radius_m","to":0.5}]}
                        """);
        ObjectNode question = Desk.JSON.createObjectNode();
        question.put("ask", "pairing");
        question.set("pattern", fit.at("/answers/0/pattern"));
        JsonNode answer = visitor.ask(question.toString());
        assertThat(answer.at("/readings/links/0/kind").asString()).isEqualTo("touching");
        assertThat(answer.get("phrase")).isEqualTo(fit.at("/answers/0/phrase"));
    }

    @Test
    void aPendulumsFitOffersTheHandThatRides() {
        JsonNode fit =
                visitor.ask(
                        """
                        {"ask":"fit","phrase":"pendulum vs triquetra","carrier":"left"}
                        """);
        assertThat(fit.get("closes").asBoolean()).isFalse();
        JsonNode ridden = fit.at("/answers/0");
        assertThat(ridden.get("rides").asBoolean()).isTrue();
        assertThat(ridden.get("phrase").asString()).isEqualTo("pendulum vs triquetra riding");
        assertThat(ridden.get("told").asString()).startsWith("let the right hand ride");
    }

    @Test
    void anExtensionCannotShrinkToATriquetrasHandCircle() {
        JsonNode fit =
                visitor.ask(
                        """
                        {"ask":"fit","phrase":"extension vs triquetra","carrier":"left","free":["left.hand_radius_m"]}
                        """);
        assertThat(fit.get("closes").asBoolean()).isFalse();
        assertThat(fit.get("answers").isEmpty()).isTrue();
        assertThat(fit.get("least_gap_m").asDouble()).isGreaterThan(0.001);
        assertThat(fit.get("told").asString()).startsWith("It cannot close").contains("tether");
    }

    @Test
    void anUnknownSizeOrHandIsRefused() {
        HttpResponse<String> size =
                visitor.post(
                        "/api/ask",
                        "{\"ask\":\"fit\",\"phrase\":\"static spin vs triquetra\",\"free\":[\"nose\"]}");
        assertThat(size.statusCode()).isEqualTo(422);
        HttpResponse<String> hand =
                visitor.post(
                        "/api/ask",
                        "{\"ask\":\"fit\",\"phrase\":\"static spin vs triquetra\",\"carrier\":\"third\"}");
        assertThat(hand.statusCode()).isEqualTo(400);
    }

    @Test
    void theLargestVersionTheArmsReachIsOneAnswerThatLinksAndIsReached() {
        JsonNode fit =
                visitor.ask(
                        """
                        {"ask":"fit","phrase":"static spin vs triquetra","arms":true,
                         "performer":{"stature_m":1.7}}
                        """);
        assertThat(fit.get("arms").asBoolean()).isTrue();
        assertThat(fit.get("reached").asBoolean()).isTrue();
        assertThat(fit.get("answers").size()).isEqualTo(1);
        JsonNode shorter = fit.at("/answers/0/changes/0");
        assertThat(shorter.get("from").asDouble()).isEqualTo(0.6);
        assertThat(shorter.get("to").asDouble()).isBetween(0.30, 0.59);
        ObjectNode question = Desk.JSON.createObjectNode();
        question.put("ask", "pairing");
        question.set("pattern", fit.at("/answers/0/pattern"));
        JsonNode readings = visitor.ask(question.toString()).get("readings");
        assertThat(readings.at("/links/0/kind").asString()).isEqualTo("touching");
        assertThat(readings.get("told").toString()).doesNotContain("beyond the arm's reach");
    }

    @Test
    void anAnswerOutOfReachIsToldWithTheVersionThatIsReached() {
        JsonNode beyond = visitor.ask("{\"ask\":\"fit\",\"phrase\":\"static spin vs triquetra\"}");
        assertThat(beyond.get("arms_told").asString()).contains("tethers of 44 cm");
        JsonNode within =
                visitor.ask(
                        "{\"ask\":\"fit\",\"phrase\":\"static spin vs triquetra, tether 40cm\"}");
        assertThat(within.has("arms_told")).isFalse();
    }

    @Test
    void aTallerPerformerGetsLongerTethers() {
        assertThat(fitted(1.7, "")).isGreaterThan(fitted(1.5, "") + 0.02);
    }

    @Test
    void ofTheTethersThatThereAreTheLongestThatWillDoIsTaken() {
        assertThat(fitted(1.7, ",\"owned_m\":[0.35,0.4,0.55]")).isEqualTo(0.4);
    }

    private static double fitted(double stature, String more) {
        return visitor.ask(
                        "{\"ask\":\"fit\",\"phrase\":\"static spin vs triquetra\",\"arms\":true,"
                                + "\"performer\":{\"stature_m\":"
                                + stature
                                + "}"
                                + more
                                + "}")
                .at("/answers/0/changes/0/to")
                .asDouble();
    }
}
