package deferent.page.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.search.transition.Bridge;
import deferent.search.transition.Transition;
import deferent.search.transition.TransitionFinder;
import deferent.search.transition.TransitionRequest;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** The picture of a transition shows what its sentence says. */
class PassageTest {
    private static final Pairing SMALL =
            Phrase.parse("static spin vs triquetra hand radius 42 cm, tether 45 cm").pairing();
    private static final Pairing LEAVES =
            Phrase.parse("static spin vs triquetra, tether 45 cm").pairing();
    private static final TransitionFinder FINDER = new TransitionFinder(TransitionRequest.USUAL);
    private static final List<Transition> FOUND = FINDER.between(SMALL, LEAVES).list();

    @Test
    void everyHandThatTheSentenceNamesAsLeavingIsDrawnAndNoOther() {
        assertThat(FOUND).isNotEmpty();
        for (Transition transition : FOUND) {
            Passage passage = Passage.of(transition, FINDER);
            for (Side side : Side.values()) {
                assertThat(passage.ways().stream().anyMatch(way -> way.side() == side))
                        .isEqualTo(!transition.bridge(side).keeps());
            }
        }
    }

    @Test
    void aWayBeginsOnTheLeftPatternWhenItsHandLeavesAndEndsOnTheOtherWhenItJoins() {
        for (Transition transition : FOUND) {
            for (Passage.Way way : Passage.of(transition, FINDER).ways()) {
                Bridge bridge = transition.bridge(way.side());
                Trace from = FINDER.spun(SMALL);
                Trace to = FINDER.spun(LEAVES);
                near(first(way.head()), from.head(way.side()).position(bridge.leaves()));
                near(first(way.hand()), from.hand(way.side()).position(bridge.leaves()));
                near(last(way.head()), to.head(way.side()).position(bridge.joins()));
                near(last(way.hand()), to.hand(way.side()).position(bridge.joins()));
            }
        }
    }

    @Test
    void handAndHeadAreATetherApartAllTheWay() {
        for (Transition transition : FOUND) {
            for (Passage.Way way : Passage.of(transition, FINDER).ways()) {
                assertThat(way.hand()).hasSameSizeAs(way.head());
                for (int i = 0; i < way.hand().size(); i++) {
                    assertThat(way.hand().get(i).distance(way.head().get(i)))
                            .isBetween(0.445, 0.455);
                }
            }
        }
    }

    private static Vector3D first(List<Vector3D> places) {
        return places.get(0);
    }

    private static Vector3D last(List<Vector3D> places) {
        return places.get(places.size() - 1);
    }

    private static void near(Vector3D one, Vector3D other) {
        assertThat(one.distance(other)).isLessThan(0.005);
    }
}
