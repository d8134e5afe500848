package deferent.reading.worked;

import deferent.motion.pairing.Refusal;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.Function;
import java.util.function.Supplier;
import org.hipparchus.exception.MathRuntimeException;
import org.locationtech.jts.geom.TopologyException;
import org.locationtech.jts.util.AssertionFailedException;

/**
 * One reading: worked out, not worked out with its reason, or not asked for. Each stands on its own
 * feet: what goes wrong in one is caught here and nowhere else, and takes no other with it.
 *
 * @param <T> what is read
 */
public sealed interface Worked<T> {

    /** Worked out. */
    record Out<T>(T value) implements Worked<T> {}

    /**
     * Not worked out.
     *
     * @param what the reading, as in "the pull of the left cord"
     * @param reason a clause in plain words, without a full stop
     * @param why what would be right, or what went wrong inside
     * @param restsOn the reading that it rests on, where that was not worked out
     */
    record Not<T>(String what, String reason, String why, Optional<String> restsOn)
            implements Worked<T> {
        /** One that fails by itself. */
        public Not(String what, String reason, String why) {
            this(what, reason, why, Optional.empty());
        }
    }

    /** Not asked for at this detail, or without sense for this motion. */
    record Unasked<T>() implements Worked<T> {}

    /**
     * Works one out. A refusal says its own reason; numbers that come to no end are a reason too. A
     * mistake in the program is none, nor is work that was called off.
     *
     * @param what the reading, as in "the pull of the left cord"
     */
    static <T> Worked<T> of(String what, Supplier<T> reading) {
        try {
            return new Out<>(orRefusal("its numbers", reading));
        } catch (Refusal refusal) {
            return new Not<>(
                    what, refusal.where() + " " + refusal.what(), capital(refusal.right()) + ".");
        }
    }

    /**
     * One that is asked for by itself, so that nothing else is to be told: numbers that come to no
     * end become a refusal in plain words.
     *
     * @param numbers whose, as in "the numbers of the fit"
     */
    static <T> T orRefusal(String numbers, Supplier<T> reading) {
        try {
            return reading.get();
        } catch (Refusal | CancellationException plain) {
            throw plain;
        } catch (MathRuntimeException
                | TopologyException
                | AssertionFailedException
                | ArithmeticException
                | IllegalArgumentException
                | IllegalStateException inside) {
            throw new Refusal(
                    "come to no end with these sizes at this tempo",
                    numbers,
                    "other sizes or another tempo may do (inside: "
                            + inside.getClass().getSimpleName()
                            + ", "
                            + String.valueOf(inside.getMessage()).strip()
                            + ")");
        }
    }

    private static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    static <T> Worked<T> unasked() {
        return new Unasked<>();
    }

    /** Where it was worked out. */
    default Optional<T> reading() {
        return this instanceof Out<T> out ? Optional.of(out.value()) : Optional.empty();
    }

    /** Where it was asked for and not worked out. */
    default Optional<Not<T>> failure() {
        return this instanceof Not<T> not ? Optional.of(not) : Optional.empty();
    }

    /** What follows from it, if anything does; where it was not worked out, that is the reason. */
    default <U> Worked<U> then(String next, Function<T, Worked<U>> following) {
        if (this instanceof Not<T> not) {
            return new Not<>(
                    next,
                    "it rests on " + not.what() + ", not worked out either: " + not.reason(),
                    not.why(),
                    Optional.of(not.what()));
        }
        return reading().map(following).orElseGet(Worked::unasked);
    }

    /** The same reading seen otherwise; what goes wrong in that is told as its own failure. */
    default <U> Worked<U> as(String what, Function<T, U> seen) {
        if (this instanceof Not<T> not) {
            return new Not<>(what, not.reason(), not.why());
        }
        return reading().map(r -> of(what, () -> seen.apply(r))).orElseGet(Worked::unasked);
    }

    /** This one, worked out now where it was not asked for before. */
    default Worked<T> orNow(String what, Supplier<T> reading) {
        return this instanceof Unasked ? of(what, reading) : this;
    }

    /** For one field of a table: what it says, that it was not worked out, or nothing. */
    default String said(Function<T, String> saying) {
        return this instanceof Not ? "not worked out" : reading().map(saying).orElse("");
    }
}
