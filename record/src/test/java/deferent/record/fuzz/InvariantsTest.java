package deferent.record.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.IdentityHashMap;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every invariant of the written list is seen failing: a fuzz that cannot fail proves nothing. */
class InvariantsTest {
    static Stream<Invariant> everyInvariant() {
        return Invariants.ALL.stream();
    }

    @MethodSource("everyInvariant")
    @ParameterizedTest
    void aFalsifiedAnswerBreaksIt(Invariant invariant) {
        List<Lies.Lie> lies = Lies.about(invariant.name());
        assertThat(lies).as("lies that break: " + invariant.name()).isNotEmpty();
        IdentityHashMap<Whole, List<String>> honest = new IdentityHashMap<>();
        for (Lies.Lie lie : lies) {
            assertThat(honest.computeIfAbsent(lie.honest(), whole -> invariant.of(whole).found()))
                    .as("the honest answer, before " + lie)
                    .noneMatch(broken -> broken.contains(lie.says()));
            assertThat(invariant.of(lie.told()).found())
                    .as("what is said of " + lie)
                    .anyMatch(broken -> broken.contains(lie.says()));
        }
    }

    @Test
    void everyLieIsAboutAnInvariantOfTheList() {
        assertThat(Invariants.ALL.stream().map(Invariant::name))
                .doesNotHaveDuplicates()
                .containsAll(Lies.ALL.stream().map(Lies.Lie::invariant).toList());
    }

    /** Not that a number is no number, but that the finder walks into every corner. */
    @Test
    void aNumberThatIsNoneIsFoundHoweverDeepItStands() {
        Whole whole = Lies.linked();
        Whole deep =
                Lies.json(
                        whole,
                        tree -> {
                            tree.withArray("links")
                                    .get(0)
                                    .withArray("offset_m")
                                    .insert(1, Double.NaN);
                            tree.withObject("pull")
                                    .withObject("left")
                                    .put("x", Double.NEGATIVE_INFINITY);
                        });
        assertThat(Numbers.notFinite(whole.json())).isEmpty();
        assertThat(Numbers.notFinite(deep.json()))
                .containsExactlyInAnyOrder(
                        ".links[].offset_m[] is NaN", ".pull.left.x is -Infinity");
    }
}
