package deferent.search.seek;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Drawn;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Swing;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Turns;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.body.Reach;
import deferent.reading.link.LinkReading;
import deferent.reading.shared.LinkKind;
import deferent.search.fit.ArmsFit;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class SeekTest {
    private static final double L = 0.6;
    private static final Space SPACE = Space.of(new Space.Grid(20, 2, 2, 6, 24, 3, true));
    private static final SeekRequest REQUEST = SeekRequest.of(SPACE);
    private static final Answers ANSWERS = new Seek(REQUEST).found();

    private static LinkReading link(Pairing pairing) {
        return LinkReading.quick(Trace.of(pairing), Side.LEFT);
    }

    /** The pairings that practice names are found as links, each at no distance from its phrase. */
    private static void rediscovered(String phrase) {
        rediscovered(ANSWERS, phrase);
    }

    private static void rediscovered(Answers answers, String phrase) {
        Pairing named = Phrase.parse(phrase).with(Tether.of(L));
        List<Like> like = answers.like(named, 3);
        assertThat(like.get(0).distance()).as(phrase).isLessThan(2e-3);
        assertThat(like.get(0).answer().exact()).as(phrase).isTrue();
        LinkReading read = link(like.get(0).pairing());
        assertThat(read.kind()).as(phrase).isEqualTo(LinkKind.TOUCHING);
        assertThat(read.inPlaneGap()).as(phrase).isLessThan(1e-4);
    }

    /** Linked pairings of the trade: common practice, no source. */
    @Test
    void everyLinkedPairingOfTheTradeIsRediscovered() {
        rediscovered("static spin vs triquetra");
        rediscovered("isolation vs horizontal cat-eye");
        rediscovered("static spin vs extension");
        rediscovered("static spin vs four-petal antispin");
        rediscovered("static spin vs three-petal in-spin");
        rediscovered("isolation vs isolation");
        rediscovered("CAP riding pendulum");
        rediscovered("pendulum vs triquetra riding");
        rediscovered("pendulum vs one-petal in-spin riding");
    }

    /** The demo shelf's own, at whatever tether and in whatever plane they stand there. */
    @Test
    void whatLinksOnTheDemoShelfIsRediscovered() {
        rediscovered("linear isolation vs line");
        rediscovered("triquetra riding pendulum");
        Answers shortest = new Seek(REQUEST.with(Tether.of(0.26))).found();
        rediscovered(
                shortest,
                "static spin vs triquetra, floor plane, tether 26 cm, centre 66 cm up 25 cm back");
    }

    @Test
    void aStaticSpinDrivesEveryFlowerWhoseHandCircleIsAsLongAsTheTether() {
        long carrier = SPACE.find(HandShape.POINT, new Turns(1, 0), 0).orElseThrow();
        for (int n = -6; n <= 6; n++) {
            long flower = SPACE.find(HandShape.circle(1, 1), new Turns(n, 0), 0).orElseThrow();
            assertThat(ANSWERS.links(carrier, flower)).as("%d turns", n).isTrue();
            long small = SPACE.find(HandShape.circle(1, 0.9), new Turns(n, 0), 0).orElseThrow();
            assertThat(ANSWERS.links(carrier, small)).as("%d turns, small", n).isFalse();
        }
    }

    @Test
    void everyIsolationDrivesTheFlowersOfItsHeadCircle() {
        for (int tenth = 1; tenth <= 9; tenth++) {
            long isolation =
                    SPACE.find(HandShape.circle(1, tenth / 10.0), new Turns(1, 0), Math.PI)
                            .orElseThrow();
            long triquetra =
                    SPACE.find(HandShape.circle(1, (20 - 2 * tenth) / 20.0), new Turns(-2, 0), 0)
                            .orElseThrow();
            assertThat(ANSWERS.links(isolation, triquetra)).as("%d tenths", tenth).isTrue();
        }
    }

    /**
     * An extension's head circle is never smaller than its tether: no triquetra of R = L can ride
     * it.
     */
    @Test
    void noExtensionDrivesATriquetraOfOneTether() {
        long triquetra = SPACE.find(HandShape.circle(1, 1), new Turns(-2, 0), 0).orElseThrow();
        for (long key : SPACE.build(0, SPACE.keys())) {
            if (SPACE.handShape(key).kind() == HandShape.Kind.CIRCLE
                    && SPACE.law(key).equals(new Turns(1, 0))
                    && SPACE.handShape(key).first() == 1
                    && SPACE.startOf(key) == 0) {
                assertThat(ANSWERS.links(key, triquetra)).isFalse();
            }
        }
    }

    /**
     * A swing has its own uneven time, so its arc swept evenly as a cosine has the shape but not
     * the timing.
     */
    @Test
    void aPendulumDrivesItsOwnArcAndNotAnEvenOne() {
        long pendulum =
                SPACE.find(HandShape.POINT, new Swing(Math.toRadians(90), Swing.DOWN), 0)
                        .orElseThrow();
        long own =
                SPACE.find(HandShape.pendulumArc(1, Math.toRadians(90)), new Turns(2, 0), 0)
                        .orElseThrow();
        long even =
                SPACE.find(HandShape.arc(1, Math.toRadians(105)), new Turns(2, 0), 0).orElseThrow();
        assertThat(ANSWERS.links(pendulum, own)).isTrue();
        assertThat(ANSWERS.links(pendulum, even)).isFalse();
    }

    @Test
    void everyAnswerIsPlacedSoThatTheRidersHandGoesWhereTheCarriersHeadGoes() {
        List<Answer> list =
                new Seek(REQUEST.with(Filter.NONE.exact()).withLimit(120, 2)).found().list();
        assertThat(list).hasSizeGreaterThan(60);
        for (Answer answer : list) {
            assertThat(answer.gap()).isZero();
            assertThat(answer.pairs()).isEqualTo((long) answer.carriers() * answer.riders());
            assertThat(link(answer.pairing()).inPlaneGap()).as(answer.said()).isLessThan(1e-4);
            if (answer.phrase()) {
                assertThat(Phrase.parse(answer.said()).with(Tether.of(L)))
                        .isEqualTo(answer.pairing());
            }
        }
    }

    @Test
    void exactAnswersComeFirstAndNearOnesWithTheSizeThatClosesThem() {
        List<Answer> list = ANSWERS.list();
        boolean near = false;
        int closed = 0;
        for (Answer answer : list) {
            assertThat(near && answer.exact()).isFalse();
            near |= !answer.exact();
            assertThat(answer.gap()).isLessThanOrEqualTo(REQUEST.tolerance() + 1e-9);
            for (Closing closing : answer.closings()) {
                closed++;
                assertThat(link(closing.pairing()).inPlaneGap())
                        .as("%s by %s", answer.said(), closing)
                        .isLessThan(1e-4);
                assertThat(closing.to()).isNotEqualTo(closing.from());
            }
        }
        assertThat(near).isTrue();
        assertThat(closed).isGreaterThan(20);
    }

    /** |r| = L − R for the isolation inside, R − L for the one whose hand circle is the larger. */
    @Test
    void aHandCircleSmallerThanTheTetherStillHasCarriersAndTheirSizesAreTold() {
        Motion rider = Motion.flower(0.42, -2, 0);
        List<Driver> drivers = Driver.of(SPACE, rider, Tether.of(L));
        assertThat(drivers)
                .anySatisfy(
                        d -> {
                            assertThat(d.said()).isEqualTo("isolation");
                            assertThat(d.sameTether()).isTrue();
                            assertThat(d.carrier().path().radius()).isCloseTo(0.18, within(1e-6));
                        })
                .anySatisfy(
                        d -> {
                            assertThat(d.sameTether()).isTrue();
                            assertThat(d.carrier().path().radius()).isCloseTo(1.02, within(1e-6));
                        })
                .anySatisfy(
                        d -> {
                            assertThat(d.said()).isEqualTo("static spin");
                            assertThat(d.tether().length()).isCloseTo(0.42, within(1e-6));
                        });
        for (Driver driver : drivers) {
            assertThat(link(driver.pairing()).inPlaneGap()).as(driver.said()).isLessThan(1e-4);
        }
        assertThat(drivers)
                .noneMatch(d -> d.sameTether() && d.said().equals("extension"))
                .noneMatch(d -> d.sameTether() && d.said().equals("static spin"));
    }

    @Test
    void freeTethersLetAStaticSpinDriveAFlowerOfAnySize() {
        Answers free =
                new Seek(REQUEST.with(Tethers.FREE).with(Filter.NONE.exact()).withLimit(40, 2))
                        .found();
        long carrier = SPACE.find(HandShape.POINT, new Turns(1, 0), 0).orElseThrow();
        long flower = SPACE.find(HandShape.circle(1, 0.35), new Turns(-2, 0), 0).orElseThrow();
        assertThat(free.links(carrier, flower)).isTrue();
        Pairing pairing = free.pairing(carrier, flower);
        assertThat(pairing.right().tether().length()).isCloseTo(L / 0.35, within(1e-9));
        for (Answer answer : free.list()) {
            assertThat(link(answer.pairing()).inPlaneGap()).as(answer.said()).isLessThan(1e-4);
        }
    }

    @Test
    void aStoppedSeekGoesOnWhereItStoodHereOrFromItsCheckpoint() {
        Seek whole = new Seek(REQUEST);
        List<SeekProgress> heard = new ArrayList<>();
        assertThat(whole.run(heard::add, () -> false)).isTrue();
        assertThat(heard.get(heard.size() - 1).stage()).isEqualTo(SeekProgress.Stage.DONE);
        assertThat(heard)
                .extracting(SeekProgress::stage)
                .contains(
                        SeekProgress.Stage.BUILD, SeekProgress.Stage.KEY, SeekProgress.Stage.JOIN);

        Seek stopped = new Seek(REQUEST);
        boolean[] stop = new boolean[1];
        assertThat(stopped.run(p -> stop[0] = p.stage() == SeekProgress.Stage.JOIN, () -> stop[0]))
                .isEqualTo(stopped.checkpoint().joined() >= whole.answers().headPaths());
        assertThat(stopped.checkpoint().joined()).isPositive();
        Seek resumed = Seek.resume(REQUEST, stopped.checkpoint());
        assertThat(resumed.run()).isTrue();
        assertThat(stopped.run()).isTrue();
        for (Seek seek : List.of(stopped, resumed)) {
            assertThat(seek.checkpoint().heads()).isEqualTo(whole.checkpoint().heads());
            assertThat(seek.checkpoint().hands()).isEqualTo(whole.checkpoint().hands());
            assertThat(seek.checkpoint().gaps()).isEqualTo(whole.checkpoint().gaps());
        }
        Seek never = new Seek(REQUEST);
        assertThat(never.run(p -> {}, () -> true)).isFalse();
        assertThatThrownBy(never::answers).isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(() -> Seek.resume(REQUEST.withTolerance(0.05), stopped.checkpoint()))
                .isInstanceOf(Refusal.class);
    }

    @Test
    void whatIsOutOfReachIsMadeSmallerUntilItIsReachedAndLinksAllTheSame() {
        List<Answer> reached =
                new Seek(REQUEST.withLimit(12, 3).with(Filter.NONE.reached())).found().list();
        assertThat(reached).isNotEmpty();
        for (Answer answer : reached) {
            Trace trace = Trace.of(answer.pairing());
            assertThat(Reach.of(trace, REQUEST.performer()).trunk().reached())
                    .as(answer.said())
                    .isTrue();
            assertThat(answer.pairing().left().tether().length())
                    .isBetween(ArmsFit.USUAL_SHORTEST - 1e-9, REQUEST.tether().length());
            if (answer.exact()) {
                assertThat(LinkReading.of(trace, Side.LEFT).inPlaneGap())
                        .as(answer.said())
                        .isLessThan(1e-4);
            }
        }
        assertThat(reached)
                .as("some of them had to be made smaller")
                .anyMatch(
                        a ->
                                a.pairing().left().tether().length()
                                        < REQUEST.tether().length() - 0.01);
        assertThat(new Seek(REQUEST.withLimit(12, 3)).found().list())
                .as("unless reach is not asked")
                .allMatch(a -> a.pairing().left().tether().equals(REQUEST.tether()))
                .anyMatch(a -> a.merit().missing() > 0.1);
    }

    @Test
    void filtersAndOrdersDoWhatTheySay() {
        SeekRequest few = REQUEST.withLimit(12, 3);
        assertThat(new Seek(few.with(Filter.NONE.symmetric(3))).found().list())
                .isNotEmpty()
                .allMatch(a -> a.merit().symmetry() >= 3);
        List<Answer> contrast = new Seek(few.with(Order.CONTRAST)).found().list();
        for (int i = 1; i < contrast.size(); i++) {
            assertThat(contrast.get(i).merit().contrast())
                    .isLessThanOrEqualTo(contrast.get(i - 1).merit().contrast() + 1e-12);
        }
        List<Answer> reach = new Seek(few.with(Order.REACH)).found().list();
        for (int i = 1; i < reach.size(); i++) {
            assertThat(reach.get(i).merit().missing())
                    .isGreaterThanOrEqualTo(reach.get(i - 1).merit().missing());
        }
        Pairing known = ANSWERS.list().get(0).pairing();
        List<Answer> fresh =
                new Seek(few.withShelf(List.of(known)).with(Filter.NONE.fresh())).found().list();
        assertThat(fresh).isNotEmpty().allMatch(a -> a.merit().toShelf().orElseThrow() > 1e-6);
        List<Answer> near =
                new Seek(few.withShelf(List.of(known)).with(Order.NEAR_SHELF)).found().list();
        assertThat(near.get(0).merit().toShelf().orElseThrow()).isLessThan(1e-6);
    }

    @Test
    void theCordRanksAndFiltersToo() {
        SeekRequest few = REQUEST.withLimit(2, 1);
        List<Answer> slowest = new Seek(few.with(Order.SLOWEST)).found().list();
        for (int i = 1; i < slowest.size(); i++) {
            assertThat(slowest.get(i).merit().slowest().orElse(Double.MAX_VALUE))
                    .isGreaterThanOrEqualTo(
                            slowest.get(i - 1).merit().slowest().orElse(Double.MAX_VALUE));
        }
        assertThat(slowest.get(0).merit().slowest()).isPresent();
        // A slip of 1 cm puts the head no more than 5 cm aside before it can be answered.
        List<Answer> steady =
                new Seek(few.with(Order.STEADINESS).with(Filter.NONE.steady(5))).found().list();
        assertThat(steady).isNotEmpty().allMatch(a -> a.merit().growth().orElseThrow() <= 5);
        // In the steadiest it puts it little more aside than it was.
        assertThat(steady.get(0).merit().growth().orElseThrow()).isBetween(0.5, 2.0);
    }

    @Test
    void aPendulumIsStagedHangingAndItsPlaneKeepsStill() {
        long pendulum =
                SPACE.find(HandShape.POINT, new Swing(Math.toRadians(90), Swing.DOWN), 0)
                        .orElseThrow();
        var staging = new Staging(SPACE, Tethers.EQUAL, 0.6);
        for (int n : new int[] {-3, -2, 2, 3}) {
            long flower = SPACE.find(HandShape.circle(1, 1), new Turns(n, 0), 0).orElseThrow();
            Pairing pairing = staging.pairing(flower, pendulum);
            assertThat(pairing.right().motion().spin().swing().orElseThrow().rest())
                    .isEqualTo(Swing.DOWN);
            assertThat(Toroids.of(pairing, 2)).isEmpty();
            assertThat(Toroids.of(staging.pairing(pendulum, flower), 2)).isEmpty();
        }
    }

    @Test
    void aLinkStaysLinkedWhenBothPlanesTurnAlike() {
        int toroids = 0;
        for (Answer answer :
                new Seek(REQUEST.with(Filter.NONE.exact()).withLimit(60, 2)).found().list()) {
            for (Pairing toroid : Toroids.of(answer.pairing(), 2)) {
                toroids++;
                Trace trace = Trace.of(toroid);
                for (double t = 0; t < trace.period(); t += trace.period() / 37) {
                    Vector3D apart =
                            trace.head(Side.LEFT)
                                    .at(t)
                                    .position()
                                    .subtract(trace.hand(Side.RIGHT).at(t).position());
                    assertThat(apart.getNorm())
                            .as(answer.said())
                            .isCloseTo(Place.HAND_BREADTH, within(1e-6));
                }
            }
        }
        assertThat(toroids).isGreaterThan(50);
    }

    @Test
    void aDrawnFigureFindsTheMotionsThatDrawItInWhateverTiming() {
        // an ellipse of 3 to 1 by four cubic arcs, as drawing tools make it (error under 3e-4 of
        // its size)
        double k = 0.5522847498;
        List<Drawn.Cubic> pieces =
                List.of(
                        new Drawn.Cubic(0.9, 0, 0.9, 0.3 * k, 0.9 * k, 0.3, 0, 0.3),
                        new Drawn.Cubic(0, 0.3, -0.9 * k, 0.3, -0.9, 0.3 * k, -0.9, 0),
                        new Drawn.Cubic(-0.9, 0, -0.9, -0.3 * k, -0.9 * k, -0.3, 0, -0.3),
                        new Drawn.Cubic(0, -0.3, 0.9 * k, -0.3, 0.9, -0.3 * k, 0.9, 0));
        List<Drawer> drawers = ANSWERS.drawing(new Drawn(pieces), 12);
        assertThat(drawers.get(0).gap()).isLessThan(2e-3);
        assertThat(drawers)
                .anySatisfy(
                        d -> {
                            // the isolation's partner: R = L/2 (or 2L), 1.8 by 0.6 m
                            assertThat(d.gap()).isLessThan(2e-3);
                            assertThat(d.said()).contains("cat-eye");
                            assertThat(d.tether().length()).isCloseTo(L, within(0.01));
                        });
        Set<Integer> classes = drawers.stream().map(Drawer::headClass).collect(Collectors.toSet());
        assertThat(classes).hasSize(drawers.size());
        assertThat(
                        drawers.stream()
                                .filter(d -> d.gap() < 2e-3)
                                .flatMap(d -> ANSWERS.tiedTo(d).stream()))
                .isNotEmpty()
                .allSatisfy(a -> assertThat(link(a.pairing()).inPlaneGap()).isLessThan(0.05));
    }
}
