package deferent.search.clear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Side;
import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Trace;
import deferent.reading.body.ArmThrough;
import deferent.reading.body.Clash;
import deferent.reading.body.InTheWay;
import deferent.reading.body.Performer;
import deferent.reading.body.Reach;
import deferent.reading.body.Room;
import deferent.reading.tether.Kit;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class ClearSearchTest {
    private static final Performer PERFORMER = Performer.USUAL;

    private static Pairing pairing(String phrase) {
        return Phrase.parse(phrase).pairing();
    }

    private static Clearing of(String phrase) {
        return ClearSearch.of(pairing(phrase), PERFORMER, Kit.USUAL);
    }

    private static boolean clear(Pairing pairing) {
        Trace trace = Trace.of(pairing);
        return InTheWay.of(trace, Reach.of(trace, PERFORMER), ClearSearch.kept(Kit.USUAL))
                .isEmpty();
    }

    @Test
    void whatIsClearIsLeftAsItIs() {
        Clearing clearing =
                of("static spin at the shoulder vs static spin at the shoulder, tether 20 cm");
        assertThat(clearing.clear()).isTrue();
        assertThat(clearing.cleared()).isEmpty();
        assertThat(clearing.remains()).isEmpty();
    }

    /** One arm has to come from behind past the other's cord; a finger's breadth makes room. */
    @Test
    void twoSpinsAboutOneCentreNeedALittleRoomForTheArm() {
        Clearing clearing = of("static spin vs static spin");
        assertThat(clearing.inTheWay())
                .anyMatch(
                        one ->
                                one.what() == InTheWay.What.ARM_OF_POI
                                        && one.side().orElseThrow() == Side.LEFT);
        Clearing.Cleared cleared = clearing.cleared().orElseThrow();
        assertThat(cleared.cost()).isPositive().isLessThan(0.5);
        Trace trace = Trace.of(cleared.pairing());
        Reach reach = Reach.of(trace, PERFORMER);
        assertThat(ArmThrough.of(trace, reach)).isEmpty();
        assertThat(new Clash(trace, 0.035).cords().distance()).isGreaterThan(0.01);
        assertThat(Room.of(trace, PERFORMER).headToHead().distance()).isGreaterThan(0.07);
    }

    /** Every place of the right hand on a grid that costs a quarter less is in something's way. */
    @Test
    void noPlaceOnAGridOfOneHandIsCheaper() {
        Pairing pairing = pairing("static spin vs static spin");
        double least = of("static spin vs static spin").cleared().orElseThrow().cost();
        double most = 0.75 * least * Place.HAND_BREADTH;
        int tried = 0;
        for (int i = -4; i <= 4; i++) {
            for (int j = -4; j <= 4; j++) {
                Vector3D by = new Vector3D(0, i * most / 4, j * most / 4);
                if (by.getNorm() <= most) {
                    Part right = pairing.right();
                    Place place = right.place();
                    Pairing moved =
                            pairing.with(
                                    Side.RIGHT,
                                    right.with(place.withCentre(place.centre().add(by))));
                    assertThat(clear(moved)).as("moved by %s", by).isFalse();
                    tried++;
                }
            }
        }
        assertThat(tried).isGreaterThan(40);
    }

    /** A trunk that is 22 cm to each side of its middle and a poi's plane have to part. */
    @Test
    void wheelsThroughTheBodyMoveAside() {
        Clearing clearing = of("static spin wheel plane vs static spin wheel plane");
        assertThat(clearing.inTheWay()).allMatch(one -> one.what() == InTheWay.What.BODY);
        Clearing.Cleared cleared = clearing.cleared().orElseThrow();
        assertThat(clear(cleared.pairing())).isTrue();
        double half = PERFORMER.shoulder(Side.LEFT).getX();
        assertThat(cleared.pairing().left().place().centre().getX() + 0.035)
                .as("beside the trunk, with the head's own radius")
                .isGreaterThan(half);
    }

    @Test
    void whatIsStoppedSaysWhatWasFoundSoFar() {
        int[] asked = {0};
        Clearing clearing =
                ClearSearch.of(
                        pairing("isolation vs horizontal cat-eye, split time"),
                        PERFORMER,
                        Kit.USUAL,
                        done -> asked[0]++,
                        () -> asked[0] > 5);
        assertThat(clearing.whole()).isFalse();
        assertThat(asked[0]).isLessThan(10);
        assertThat(clearing.inTheWay()).isNotEmpty();
    }

    /** Three and four of a kind: 24 cm and 40 degrees of a 30 cm tether make √(3² + 2.62²). */
    @Test
    void aChangeCountsByHowFarTheHeadsPathGoes() {
        PlaneChange change =
                new PlaneChange(
                        Side.LEFT, new Vector3D(0, 0.24, 0), 0.7, 0, Math.toRadians(40), 0.30);
        assertThat(change.cost()).isCloseTo(Math.hypot(3, 0.30 * 0.6981317 / 0.08), within(1e-6));
        assertThat(change.within()).as("leaned too far").isFalse();
    }
}
