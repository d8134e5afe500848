package deferent.tell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.motion.pairing.Refusal;
import deferent.reading.body.Nearness;
import deferent.reading.worked.Worked;
import java.util.NoSuchElementException;
import java.util.concurrent.CancellationException;
import java.util.stream.Stream;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.TopologyException;
import org.locationtech.jts.util.AssertionFailedException;

class WorkedTest {
    private static Worked.Not<Object> failing(Throwable thrown) {
        return Worked.of(
                        "the pull of the left cord",
                        () -> {
                            throw sneaky(thrown);
                        })
                .failure()
                .orElseThrow();
    }

    @SuppressWarnings("unchecked")
    private static <T extends Throwable> RuntimeException sneaky(Throwable thrown) throws T {
        throw (T) thrown;
    }

    @Test
    void aRefusalSaysItsOwnReasonAndWhatWouldBeRight() {
        Worked.Not<Object> not = failing(new Refusal("jumps", "the left hand", "round the corner"));
        assertThat(not.what()).isEqualTo("the pull of the left cord");
        assertThat(not.reason()).isEqualTo("the left hand jumps");
        assertThat(not.why()).isEqualTo("Round the corner.");
    }

    static Stream<RuntimeException> numbersThatComeToNoEnd() {
        return Stream.of(
                singular(),
                new TopologyException("side location conflict"),
                new AssertionFailedException("should never reach here"),
                new ArithmeticException("/ by zero"),
                new IllegalArgumentException("no bracket"),
                new IllegalStateException("too many evaluations"));
    }

    // What Hipparchus really throws.
    private static RuntimeException singular() {
        try {
            new LUDecomposition(MatrixUtils.createRealMatrix(2, 2)).getSolver().getInverse();
            throw new AssertionError("a matrix of noughts was inverted");
        } catch (MathIllegalStateException | IllegalArgumentException e) {
            throw new AssertionError("Hipparchus throws under another roof now", e);
        } catch (RuntimeException e) {
            return e;
        }
    }

    @ParameterizedTest
    @MethodSource("numbersThatComeToNoEnd")
    void numbersThatComeToNoEndAreToldPlainlyAndTheCauseIsTheWhy(RuntimeException thrown) {
        Worked.Not<Object> not = failing(thrown);
        assertThat(not.reason())
                .contains("come to no end")
                .doesNotContain(thrown.getMessage(), "Exception");
        assertThat(not.why())
                .contains(thrown.getClass().getSimpleName(), thrown.getMessage())
                .endsWith(".");
    }

    @MethodSource("numbersThatComeToNoEnd")
    @ParameterizedTest
    void oneAskedForByItselfIsRefusedWithTheReason(RuntimeException thrown) {
        assertThatThrownBy(
                        () ->
                                Worked.orRefusal(
                                        "the numbers of the fit",
                                        () -> {
                                            throw thrown;
                                        }))
                .isInstanceOf(Refusal.class)
                .hasMessageStartingWith("the numbers of the fit: come to no end with these sizes")
                .hasMessageContaining("other sizes or another tempo may do");
        Refusal own = new Refusal("jumps", "the left hand", "round the corner");
        assertThatThrownBy(
                        () ->
                                Worked.orRefusal(
                                        "the numbers of the fit",
                                        () -> {
                                            throw own;
                                        }))
                .isSameAs(own);
        assertThat(Worked.orRefusal("the numbers of the fit", () -> 3)).isEqualTo(3);
    }

    static Stream<Throwable> mistakesOfTheProgramAndWorkCalledOff() {
        return Stream.of(
                new NullPointerException("x"),
                new IndexOutOfBoundsException(3),
                new NoSuchElementException("none"),
                new CancellationException("the asker has gone"),
                new StackOverflowError(),
                new AssertionError("never"));
    }

    @ParameterizedTest
    @MethodSource("mistakesOfTheProgramAndWorkCalledOff")
    void mistakesOfTheProgramAreNotHiddenNorIsWorkCalledOff(Throwable thrown) {
        assertThatThrownBy(() -> failing(thrown)).isSameAs(thrown);
    }

    @Test
    void aReadingWhoseNumberIsNoneIsNotWorkedOut() {
        assertThat(Worked.of("x", () -> new Nearness(0.1, 0.2)).reading()).isPresent();
        for (double none : new double[] {Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThat(Worked.of("x", () -> new Nearness(none, 0.2)).failure()).isPresent();
            assertThat(Worked.of("x", () -> new Nearness(0.1, none)).failure()).isPresent();
        }
    }

    @Test
    void whatRestsOnAnotherSaysOnWhichAndWhyThatFailed() {
        Worked<Integer> figure = new Worked.Not<>("the figure kept", "it falls", "Spin faster.");
        Worked.Not<String> slips =
                figure.then("the slips", kept -> Worked.of("the slips", kept::toString))
                        .failure()
                        .orElseThrow();
        assertThat(slips.what()).isEqualTo("the slips");
        assertThat(slips.reason()).contains("it rests on the figure kept", "it falls");
        assertThat(slips.restsOn()).contains("the figure kept");
        assertThat(Worked.<Integer>unasked().then("the slips", Worked.Out::new))
                .isEqualTo(Worked.unasked());
    }

    @Test
    void inATableItSaysItsValueOrThatItWasNotWorkedOutOrNothing() {
        assertThat(Worked.of("x", () -> 3).said(n -> n + " cm")).isEqualTo("3 cm");
        assertThat(new Worked.Not<Integer>("x", "y", "z").said(n -> n + " cm"))
                .isEqualTo("not worked out");
        assertThat(Worked.<Integer>unasked().said(n -> n + " cm")).isEmpty();
    }
}
