package deferent.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Riding;
import deferent.motion.pairing.Turns;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.body.Person;
import deferent.reading.body.PoseOver;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class SceneTest {
    private final Trace trace = Trace.of(Pairings.isolationWithFourPetals());
    private final Scene scene = Scene.of(trace);

    @Test
    void everyPointOfTheSceneIsThePointOfTheTraceAtThatTime() {
        for (Side side : Side.values()) {
            double[] hand = scene.points(Track.hand(side));
            double[] head = scene.points(Track.head(side));
            for (int i = 0; i < scene.count(); i++) {
                double time = scene.period() * i / scene.count();
                assertThat(point(hand, i).distance(trace.hand(side).at(time).position()))
                        .isLessThan(1e-12);
                assertThat(point(head, i).distance(trace.head(side).at(time).position()))
                        .isLessThan(1e-12);
            }
        }
    }

    @Test
    void atAnyTimeBetweenSamplesThePointIsWorkedOutNotInterpolated() {
        assertThat(scene.at(Track.head(Side.RIGHT), 0.12345))
                .isEqualTo(trace.head(Side.RIGHT).at(0.12345).position());
    }

    @Test
    void headsAreInFrontOfTethersAndTethersInFrontOfTrails() {
        List<String> order = scene.items().stream().map(Item::id).toList();
        assertThat(order).doesNotHaveDuplicates();
        assertThat(order.indexOf("left-head-trail")).isLessThan(order.indexOf("right-tether"));
        assertThat(order.indexOf("right-tether")).isLessThan(order.indexOf("left-head"));
    }

    @Test
    void aStillHandHasNoPathToDraw() {
        Scene still = Scene.of(Trace.of(Pairings.staticSpinWithTriquetra()));
        assertThat(still.items()).extracting(Item::id).doesNotContain("left-hand-path");
        assertThat(still.items()).extracting(Item::id).contains("right-hand-path");
    }

    @Test
    void theTieGoesFromTheHeadThatKeepsNearerToTheOthersHand() {
        Trace spun = Trace.of(Pairings.staticSpinWithTriquetra());
        assertThat(Scene.nearer(spun)).isEqualTo(Side.LEFT);
        Trace swapped = Trace.of(Pairings.pair(Motion.flower(0.6, -2, 0), Motion.staticSpin(1, 0)));
        assertThat(Scene.nearer(swapped)).isEqualTo(Side.RIGHT);
    }

    @Test
    void aRidersCarrierLeadsWhateverTheDistance() {
        Motion rider = new Motion(new Riding(), new Turns(-2, 0));
        Trace ridden = Trace.of(Pairings.pair(rider, Motion.staticSpin(1, 0)));
        assertThat(Scene.nearer(ridden)).isEqualTo(Side.RIGHT);
        Scene drawn = Scene.of(ridden);
        Vector3D head = drawn.at(Track.head(Side.RIGHT), 0.3);
        Vector3D hand = drawn.at(Track.hand(Side.LEFT), 0.3);
        assertThat(head.getX()).isCloseTo(hand.getX(), within(1e-12));
    }

    @Test
    void thePerformerStandsBehindEverything() {
        Person person = Person.of(PoseOver.of(trace, Performer.USUAL));
        Scene withBody = Scene.of(trace, 24, Side.LEFT, Optional.of(person));
        Item first = withBody.items().get(0);
        assertThat(first.role()).isEqualTo(Role.BODY);
        assertThat(first.form()).isEqualTo(new Item.Shape.Body(person));
    }

    private static Vector3D point(double[] xyz, int i) {
        return new Vector3D(xyz[3 * i], xyz[3 * i + 1], xyz[3 * i + 2]);
    }
}
