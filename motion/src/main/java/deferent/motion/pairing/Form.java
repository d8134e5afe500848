package deferent.motion.pairing;

import java.util.List;
import java.util.function.Function;

/**
 * A kind of hand path that a few named sizes make. What documents, their schema, phrases and the
 * list of words know of such a path is this row.
 *
 * @param key its name in documents and its word in phrases
 * @param means what the hand does, for the list of words
 * @param unsaid the sizes that a phrase leaves out, in words
 * @param sizes in the order in which {@code made} takes them
 * @param made the path of those sizes, metres and radians
 */
public record Form(
        String key,
        String means,
        String unsaid,
        List<Measure> sizes,
        Function<List<Double>, HandPath> made) {
    public Form {
        sizes = List.copyOf(sizes);
    }

    /** A path's form with its sizes. */
    public record Sized(Form form, List<Double> sizes) {}

    Sized of(Double... sizes) {
        return new Sized(this, List.of(sizes));
    }
}
