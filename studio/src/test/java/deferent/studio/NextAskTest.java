package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

/** What could come next, nothing else being said. */
class NextAskTest {
    @TempDir Path shelf = Path.of("");

    private JsonNode next(String more) {
        try (Visitor visitor = Visitor.to(shelf)) {
            long begun = System.nanoTime();
            JsonNode answer =
                    visitor.ask(
                            "{\"ask\":\"next\",\"phrase\":\"isolation vs isolation, tether 40"
                                    + " cm\""
                                    + more
                                    + "}");
            System.out.printf(
                    "what could come next: %d ms%n", (System.nanoTime() - begun) / 1_000_000);
            return answer;
        }
    }

    @Test
    void oneHandGoesIntoAnotherMotionWhileTheOtherGoesOnAndTheSmoothestComesFirst() {
        JsonNode answer = next(",\"tolerance_m\":0.6,\"speed_tolerance_m_s\":8");
        assertThat(answer.get("complete").asBoolean()).isTrue();
        assertThat(answer.get("order_of_keys").size()).isEqualTo(12);
        List<Double> weights = new ArrayList<>();
        HashSet<String> names = new HashSet<>();
        for (JsonNode key : answer.get("order_of_keys")) {
            for (JsonNode one : answer.get("answers")) {
                if (one.get("key").equals(key)) {
                    weights.add(one.get("roughness_weights").asDouble());
                    names.add(one.get("name").asString());
                    assertThat(one.get("who").asString()).isIn("left", "right");
                    assertThat(one.get("name").asString()).contains("isolation");
                }
            }
        }
        assertThat(weights).hasSize(12).isSorted();
        assertThat(names).hasSize(12).doesNotContain("isolation vs isolation, tether 40 cm");
    }

    @Test
    void whereNothingComesNearEnoughNothingIsFound() {
        JsonNode answer = next(",\"tolerance_m\":0.001,\"speed_tolerance_m_s\":0.01");
        assertThat(answer.get("order_of_keys").size()).isLessThan(12);
    }
}
