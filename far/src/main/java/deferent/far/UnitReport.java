package deferent.far;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.UncheckedIOException;

/**
 * What is told of a unit that is done.
 *
 * @param unit its number
 * @param motions that lay in it
 * @param heads their head classes
 * @param answers class matches
 * @param exact those that link without changing a size
 * @param compared full comparisons of two curves
 * @param seconds of one processor that gathering and joining took
 */
record UnitReport(
        int unit,
        long motions,
        long heads,
        long answers,
        long exact,
        long compared,
        double seconds) {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    String json() {
        return JSON.valueToTree(this).toString();
    }

    static UnitReport parse(String json) {
        try {
            return JSON.readValue(json, UnitReport.class);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }
}
