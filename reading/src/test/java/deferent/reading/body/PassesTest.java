package deferent.reading.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Trace;
import deferent.reading.body.Pass.Kind;
import deferent.reading.body.Pass.Thing;
import deferent.reading.body.Pass.Way;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class PassesTest {
    private static final Performer PERFORMER = Performer.of(1.70);

    private static Part still(Plane plane, Vector3D grip, double tether) {
        return new Part(
                Motion.staticSpin(1, 0),
                Tether.of(tether),
                new Place(plane, PlaneTurn.NONE, grip),
                1);
    }

    private static Passes of(Trace trace) {
        return Passes.of(trace, Reach.of(trace, PERFORMER));
    }

    private static Passes of(Part left, Part right) {
        return of(Trace.of(Pairing.of(left, right)));
    }

    private static Passes of(String phrase) {
        return of(Trace.of(Phrase.parse(phrase).pairing()));
    }

    private static List<Pass> all(Passes passes, Thing one, Way way, Thing other) {
        return passes.all().stream()
                .filter(
                        pass ->
                                pass.one().equals(one)
                                        && pass.way() == way
                                        && pass.other().equals(other))
                .toList();
    }

    private static Thing left(Kind kind) {
        return Thing.of(Side.LEFT, kind);
    }

    private static Thing right(Kind kind) {
        return Thing.of(Side.RIGHT, kind);
    }

    private static Thing body(Kind kind) {
        return new Thing(kind, Optional.empty());
    }

    /**
     * Left grip 10 cm to the left of the right one, both cords of 40 cm turning clockwise as the
     * performer sees it: the two are parallel and cross nothing in view, but the left one sweeps
     * over the right forearm, which hangs below its grip.
     */
    @Test
    void theNearerCordPassesBeforeTheOthersForearm() {
        Vector3D grip = new Vector3D(-0.20, 0, 0.30);
        Passes passes =
                of(
                        still(Plane.WALL, grip.add(new Vector3D(0.2, 0, 0.3)), 0.4),
                        still(Plane.WALL, grip, 0.2));
        List<Pass> before = all(passes, left(Kind.POI), Way.BEFORE, right(Kind.FOREARM));
        assertThat(before).hasSize(1);
        assertThat(all(passes, right(Kind.FOREARM), Way.BEFORE, left(Kind.POI))).isEmpty();
        assertThat(before.get(0).by())
                .as("the cord's plane is 30 cm before the grip, and the elbow is behind that")
                .isGreaterThan(0.30);
    }

    /** The spell is that in which the cord's line, from far off, lies across the arm's. */
    @Test
    void aPassLastsAsLongAsTheTwoCrossInView() {
        Trace trace = Trace.of(Phrase.parse("isolation vs isolation, opposites").pairing());
        Reach reach = Reach.of(trace, PERFORMER);
        PoseOver pose = PoseOver.surely(trace, reach);
        List<Pass> all = Passes.of(trace, pose).all();
        int seen = 0;
        int agree = 0;
        for (int i = 0; i < pose.count(); i++) {
            double time = pose.time(i);
            boolean crossing =
                    java.awt.geom.Line2D.linesIntersect(
                            trace.hand(Side.LEFT).position(time).getX(),
                            trace.hand(Side.LEFT).position(time).getY(),
                            trace.head(Side.LEFT).position(time).getX(),
                            trace.head(Side.LEFT).position(time).getY(),
                            pose.elbow(Side.RIGHT, i).getX(),
                            pose.elbow(Side.RIGHT, i).getY(),
                            pose.wrist(Side.RIGHT, i).getX(),
                            pose.wrist(Side.RIGHT, i).getY());
            boolean told =
                    all.stream()
                            .filter(
                                    pass ->
                                            pass.way() == Way.BEFORE
                                                    && List.of(pass.one(), pass.other())
                                                            .containsAll(
                                                                    List.of(
                                                                            left(Kind.POI),
                                                                            right(Kind.FOREARM))))
                            .anyMatch(pass -> during(pass.spell(), time, trace.period()));
            seen += crossing ? 1 : 0;
            agree += crossing == told ? 1 : 0;
        }
        assertThat(seen).as("they cross for a while").isGreaterThan(10);
        assertThat(agree).isEqualTo(pose.count());
    }

    private static boolean during(Interval spell, double time, double period) {
        return spell.start() <= time && time <= spell.end()
                || spell.start() <= time + period && time + period <= spell.end();
    }

    @Test
    void cordsPassAsTheRoomHasThemCross() {
        Trace trace = Trace.of(Phrase.parse("isolation vs isolation, opposites").pairing());
        List<Passing> crossings = Room.of(trace, PERFORMER).passings();
        List<Pass> before = all(of(trace), left(Kind.POI), Way.BEFORE, right(Kind.POI));
        assertThat(crossings).isNotEmpty();
        assertThat(before).hasSameSizeAs(crossings);
        for (int i = 0; i < before.size(); i++) {
            assertThat(before.get(i).time()).isCloseTo(crossings.get(i).time(), within(1e-6));
            assertThat(before.get(i).by()).isCloseTo(crossings.get(i).depthBetween(), within(1e-6));
        }
    }

    /** Half a cycle apart, whichever hand is above has its forearm above. */
    @Test
    void handsThatGoRoundEachOtherCrossOneArmOverTheOtherAndThenTheOtherWayRound() {
        Passes passes = of("isolation vs isolation, tether 40 cm, split time");
        List<Pass> over = all(passes, left(Kind.FOREARM), Way.OVER, right(Kind.FOREARM));
        List<Pass> under = all(passes, right(Kind.FOREARM), Way.OVER, left(Kind.FOREARM));
        assertThat(over).isNotEmpty();
        assertThat(under).isNotEmpty();
        Trace trace =
                Trace.of(
                        Phrase.parse("isolation vs isolation, tether 40 cm, split time").pairing());
        for (Pass pass : over) {
            assertThat(trace.hand(Side.LEFT).position(pass.time()).getY())
                    .isGreaterThan(trace.hand(Side.RIGHT).position(pass.time()).getY());
        }
    }

    /** A grip above the crown, from which the cord leans back over it and hangs down behind. */
    @Test
    void aWheelRoundTheHeadPassesOverItAndBehindIt() {
        double face = PERFORMER.height(0.935);
        Vector3D grip = new Vector3D(0, face + 0.15, -0.05);
        Passes passes =
                of(
                        still(Plane.WHEEL, grip, 0.6),
                        still(Plane.WALL, new Vector3D(-0.3, -0.2, 0.3), 0.1));
        assertThat(all(passes, left(Kind.POI), Way.OVER, body(Kind.HEAD))).isNotEmpty();
        List<Pass> behind = all(passes, body(Kind.HEAD), Way.BEFORE, left(Kind.POI));
        assertThat(behind).isNotEmpty();
        assertThat(all(passes, right(Kind.POI), Way.OVER, body(Kind.HEAD))).isEmpty();
        assertThat(all(passes, body(Kind.HEAD), Way.BEFORE, right(Kind.POI))).isEmpty();
    }

    @Test
    void aPoiInFrontPassesBeforeTheBodyByItsDistanceFromTheFront() {
        Passes passes =
                of(
                        still(Plane.WALL, new Vector3D(0.1, 0, 0.40), 0.2),
                        still(Plane.WALL, new Vector3D(-0.3, 0, 0.30), 0.1));
        List<Pass> before = all(passes, left(Kind.POI), Way.BEFORE, body(Kind.TRUNK));
        assertThat(before).hasSize(1);
        assertThat(before.get(0).spell().length()).as("its whole cycle").isEqualTo(1.0);
        // The trunk's front holds the breastbone.
        assertThat(before.get(0).by()).isCloseTo(0.40, within(1e-9));
    }

    @Test
    void cordsInOnePlaneTouchAndNeitherPassesTheOther() {
        Pairing mirrored =
                Pairing.of(
                                still(Plane.WALL, new Vector3D(0.1, 0, 0.3), 0.4),
                                still(Plane.WALL, new Vector3D(-0.1, 0, 0.3), 0.4))
                        .with(Direction.OPPOSITE);
        Passes passes = of(Trace.of(mirrored));
        List<Pass> cords =
                passes.all().stream()
                        .filter(pass -> pass.one().kind() == Kind.POI)
                        .filter(pass -> pass.other().kind() == Kind.POI)
                        .toList();
        assertThat(cords).isNotEmpty().allMatch(Pass::touching);
    }

    @Test
    void anArmThatIsTooShortIsLeftOut() {
        Passes passes = of("extension vs extension, opposites");
        assertThat(passes.leftArm()).isFalse();
        assertThat(passes.all())
                .noneMatch(pass -> pass.one().equals(left(Kind.FOREARM)))
                .noneMatch(pass -> pass.other().equals(left(Kind.FOREARM)));
    }

    @Test
    void theBodyHasNoSideAndNothingPassesItsOwn() {
        assertThatThrownBy(() -> new Thing(Kind.TRUNK, Optional.of(Side.LEFT)))
                .isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> new Thing(Kind.POI, Optional.empty())).isInstanceOf(Refusal.class);
        assertThatThrownBy(
                        () ->
                                new Pass(
                                        left(Kind.POI),
                                        left(Kind.FOREARM),
                                        Way.BEFORE,
                                        new Interval(0, 1),
                                        0.5,
                                        0.1))
                .isInstanceOf(Refusal.class);
    }

    /**
     * The hands of a three- or five-beat weave do the same half a cycle apart, so each forearm goes
     * over the other once (common practice, no source), however the elbows are led.
     */
    @Test
    void theForearmsOfAWeaveGoOverEachOtherByTurns() {
        for (String phrase :
                List.of("three-beat weave", "reverse three-beat weave", "five-beat weave")) {
            Trace trace = Trace.of(Phrase.parse(phrase).pairing());
            List<Pass> all = of(trace).all();
            List<Pass> lefts = all.stream().filter(pass -> armOver(pass, Side.LEFT)).toList();
            List<Pass> rights = all.stream().filter(pass -> armOver(pass, Side.RIGHT)).toList();
            assertThat(lefts).as(phrase).isNotEmpty().hasSameSizeAs(rights);
            for (Pass pass : lefts) {
                double later = (pass.time() + trace.period() / 2) % trace.period();
                assertThat(rights)
                        .as(phrase)
                        .anyMatch(other -> Math.abs(other.time() - later) < 0.05);
            }
        }
    }

    private static boolean armOver(Pass pass, Side side) {
        return pass.way() == Way.OVER
                && pass.one().kind().arm()
                && pass.other().kind().arm()
                && pass.one().side().equals(Optional.of(side));
    }
}
