package deferent.reading.danger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Size;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.motion.trade.Trade;
import deferent.motion.trade.TradeMotion;
import deferent.motion.trial.TwelveClassics;
import deferent.reading.body.Performer;
import deferent.reading.body.Reach;
import deferent.reading.body.Room;
import deferent.reading.tether.Kit;
import deferent.reading.tether.Pull;
import deferent.reading.worked.Detail;
import deferent.reading.worked.Worked;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class DangersTest {
    /** The middle of the face of a performer of 1.70 m, and its front, metres in the frame. */
    private static final double FACE_HEIGHT = (0.935 - 0.769) * 1.70;

    private static final double FACE_FRONT = (0.065 - 0.06) * 1.70;

    private static Pairing centred(Pairing pairing, Side side, double x, double y, double z) {
        Pairing there = Size.of(side, Size.Kind.CENTRE_X).set(pairing, x);
        there = Size.of(side, Size.Kind.CENTRE_Y).set(there, y);
        return Size.of(side, Size.Kind.CENTRE_Z).set(there, z);
    }

    private static Danger there(Dangers dangers, Hazard hazard, Side side) {
        Optional<Danger> danger = dangers.of(hazard, side);
        assertThat(danger).as(hazard + " in " + dangers).isPresent();
        return danger.orElseThrow();
    }

    private static void isDanger(Dangers dangers, Hazard hazard, Side side) {
        assertThat(there(dangers, hazard, side).level()).isEqualTo(Level.DANGER);
    }

    /** By hand: m(ω²R + n²ω²L + g) with a petal straight down, ω(R + 2L) and ½mv². */
    @Test
    void aTriquetraAt180WithHeadsOf300GramsIsADanger() {
        Dangers dangers =
                Read.of(Read.at("static spin vs triquetra", 180), Kit.USUAL.withHeadMass(0.3));
        double w = 6 * Math.PI;
        double pull = 0.3 * (w * w * 0.6 + 4 * w * w * 0.6 + Gravity.STANDARD);
        double speed = w * (0.6 + 2 * 0.6);
        assertThat(pull).isCloseTo(323, within(0.5));
        assertThat(speed).isCloseTo(34, within(0.1));
        assertThat(0.5 * 0.3 * speed * speed).isCloseTo(173, within(0.5));
        isDanger(dangers, Hazard.PULL, Side.RIGHT);
        isDanger(dangers, Hazard.HEAD_SPEED, Side.RIGHT);
        isDanger(dangers, Hazard.HEAD_ENERGY, Side.RIGHT);
        assertThat(there(dangers, Hazard.PULL, Side.RIGHT).value())
                .as("no petal hangs quite straight down here")
                .isCloseTo(pull, within(1.0));
        assertThat(there(dangers, Hazard.HEAD_SPEED, Side.RIGHT).value())
                .isCloseTo(speed, within(1e-6));
        assertThat(there(dangers, Hazard.HEAD_ENERGY, Side.RIGHT).value())
                .isCloseTo(0.5 * 0.3 * speed * speed, within(1e-4));
    }

    static Stream<String> motionsOfFullTurns() {
        return Trade.motions().stream()
                .map(TradeMotion::said)
                .filter(
                        key -> {
                            Optional<Pairing> pairing = paired(key);
                            return pairing.isPresent()
                                    && !pairing.get().setsOwnTempo()
                                    && pairing.get().left().motion().spin().turns() != 0;
                        });
    }

    private static Optional<Pairing> paired(String key) {
        try {
            return Optional.of(Phrase.parse(key + " vs " + key).pairing());
        } catch (RuntimeException needsMore) {
            return Optional.empty();
        }
    }

    @MethodSource("motionsOfFullTurns")
    @ParameterizedTest
    void whateverTurnsFullyAt600AMinuteIsADanger(String key) {
        Dangers dangers = Read.of(Read.at(key + " vs " + key, 600), Kit.USUAL);
        assertThat(dangers.level()).isEqualTo(Level.DANGER);
        for (Side side : Side.values()) {
            assertThat(dangers.of(Level.DANGER))
                    .as(side + " of " + dangers)
                    .anyMatch(d -> d.side().equals(Optional.of(side)));
        }
    }

    @Test
    void thereAreManyMotionsOfFullTurns() {
        assertThat(motionsOfFullTurns()).hasSizeGreaterThan(10);
    }

    @Test
    void aStillHandBeforeTheFaceIsADanger() {
        Pairing spin = Phrase.parse("static spin vs static spin").pairing();
        Pairing near = centred(spin, Side.LEFT, 0, FACE_HEIGHT, FACE_FRONT + 0.12);
        Danger danger = there(Read.of(near, Kit.USUAL), Hazard.FACE, Side.LEFT);
        assertThat(danger.level()).isEqualTo(Level.DANGER);
        assertThat(danger.value()).isCloseTo(0.12, within(1e-6));
        assertThat(danger.end().orElseThrow().kind()).isEqualTo(DangerEnd.Kind.FORWARD);
        assertThat(danger.end().orElseThrow().value()).isCloseTo(0.03, within(1e-5));
    }

    /**
     * Its cords pass 17 cm before the face; arms of 1.70 m do not hold it half a metre further out.
     */
    @Test
    void aWeaveIsNotSentFurtherForwardThanArmsReach() {
        Pairing weave = Phrase.parse("three-beat weave").pairing();
        Danger danger = there(Read.of(weave, Kit.USUAL), Hazard.FACE, Side.LEFT);
        assertThat(danger.end()).contains(DangerEnd.BEYOND_REACH);
        Pairing forward = weave;
        for (Side side : Side.values()) {
            Part part = weave.part(side);
            Vector3D centre = part.place().centre().add(new Vector3D(0, 0, 0.5));
            forward = forward.with(side, part.with(part.place().withCentre(centre)));
        }
        assertThat(Reach.of(Trace.of(forward), Performer.USUAL).reached()).isFalse();
    }

    @Test
    void aHeadTwelveCentimetresFromTheFaceIsADanger() {
        Pairing spin = Phrase.parse("static spin vs static spin").pairing();
        // The head's surface, 3.5 cm before its centre, at the lowest point of its circle.
        Pairing near = centred(spin, Side.RIGHT, 0, FACE_HEIGHT + 0.6, FACE_FRONT + 0.12 + 0.035);
        Danger danger = there(Read.of(near, Kit.USUAL), Hazard.FACE, Side.RIGHT);
        assertThat(danger.level()).isEqualTo(Level.DANGER);
        assertThat(danger.value()).isCloseTo(0.12, within(1e-6));
    }

    @Test
    void aCordBeforeTheThroatAndOneBeforeTheGroinAreDangers() {
        Pairing spin = Phrase.parse("static spin vs static spin").pairing();
        double throat = (0.85 - 0.769) * 1.70;
        isDanger(
                Read.of(centred(spin, Side.LEFT, 0.3, throat, 0.05), Kit.USUAL),
                Hazard.THROAT,
                Side.LEFT);
        double groin = (0.48 - 0.769) * 1.70;
        isDanger(
                Read.of(centred(spin, Side.LEFT, 0.3, groin, 0.05), Kit.USUAL),
                Hazard.GROIN,
                Side.LEFT);
    }

    @Test
    void headsThatMeetAbove5MetresASecondAreADanger() {
        Pairing spins = Phrase.parse("static spin vs static spin, opposites").pairing();
        Pairing inOnePlane = centred(spins, Side.RIGHT, 0, 0, 0.34);
        Danger danger = there(Read.of(inOnePlane, Kit.USUAL), Hazard.HEADS_MEET, Side.LEFT);
        assertThat(danger.level()).isEqualTo(Level.DANGER);
        assertThat(danger.value()).as("both at 3.77 m/s, head on").isCloseTo(7.54, within(0.01));
        Danger slow =
                there(
                        Read.of(inOnePlane.withTempo(java.util.OptionalDouble.of(35)), Kit.USUAL),
                        Hazard.HEADS_MEET,
                        Side.LEFT);
        assertThat(slow.level()).as("at 4.4 m/s").isEqualTo(Level.CARE);
        assertThat(Read.of(spins, Kit.USUAL).of(Hazard.HEADS_MEET, Side.LEFT))
                .as("a hand's breadth apart")
                .isEmpty();
    }

    @Test
    void aHeadThatStrikesTheOtherHandIsADangerAndOneThatLeadsItIsNot() {
        Pairing spins = Phrase.parse("static spin vs static spin").pairing();
        Pairing struck =
                centred(spins, Side.RIGHT, 0, -0.6, 0.34)
                        .withTempo(java.util.OptionalDouble.of(90));
        isDanger(Read.of(struck, Kit.USUAL), Hazard.HAND_STRUCK, Side.LEFT);
        Pairing linked =
                centred(Phrase.parse("static spin vs triquetra").pairing(), Side.RIGHT, 0, 0, 0.34);
        assertThat(Read.of(linked, Kit.USUAL).of(Hazard.HAND_STRUCK, Side.LEFT)).isEmpty();
    }

    @Test
    void cordsThroughOneAnotherAreADanger() {
        Pairing spins = Phrase.parse("static spin vs static spin, opposites").pairing();
        Pairing through = centred(spins, Side.RIGHT, 0.5, 0, 0.34);
        Danger danger = there(Read.of(through, Kit.USUAL), Hazard.CORDS, Side.LEFT);
        assertThat(danger.level()).isEqualTo(Level.DANGER);
        assertThat(danger.value()).isCloseTo(0, within(1e-9));
        assertThat(danger.end().orElseThrow())
                .isEqualTo(new DangerEnd(DangerEnd.Kind.APART, danger.end().get().value()));
        assertThat(danger.end().orElseThrow().value()).isCloseTo(0.01, within(1e-5));
    }

    @Test
    void aCordHeadOrHandThroughTheBodyIsADanger() {
        Pairing spins = Phrase.parse("static spin vs static spin").pairing();
        Danger cord =
                there(
                        Read.of(centred(spins, Side.LEFT, 0.4, -0.2, -0.1), Kit.USUAL),
                        Hazard.BODY,
                        Side.LEFT);
        assertThat(cord.level()).isEqualTo(Level.DANGER);
        assertThat(cord.value()).isNegative();
        isDanger(
                Read.of(centred(spins, Side.RIGHT, 0, 0, -0.1), Kit.USUAL),
                Hazard.BODY,
                Side.RIGHT);
    }

    @Test
    void aFigureThatGoesFarOutAsksForRoomAndEndsSmaller() {
        Pairing wide = Phrase.parse("static spin vs extension tether 1.7m").pairing();
        Danger danger = there(Read.of(wide, Kit.USUAL), Hazard.AUDIENCE, Side.RIGHT);
        assertThat(danger.level()).isEqualTo(Level.DANGER);
        assertThat(danger.value()).isCloseTo(Math.hypot(1.7 + 1.7, 0.26) + 0.035, within(1e-3));
        assertThat(danger.end().orElseThrow().kind()).isEqualTo(DangerEnd.Kind.SIZE);
    }

    static Stream<String> classics() {
        return TwelveClassics.ALL.stream();
    }

    @MethodSource("classics")
    @ParameterizedTest
    void noClassicIsADangerAt60TurnsOfThePoi(String phrase) {
        Pairing pairing = TwelveClassics.turning(phrase, 60);
        Dangers dangers = Read.of(pairing, Kit.USUAL);
        assertThat(dangers.of(Level.DANGER)).isEmpty();
        assertThat(dangers.unknown()).isEmpty();
    }

    @Test
    void thereAreTwelveClassics() {
        assertThat(TwelveClassics.ALL).hasSize(12).doesNotHaveDuplicates();
    }

    @EnumSource(Hazard.class)
    @ParameterizedTest
    void hardHeadsAndFireAreNeverAllowedMore(Hazard hazard) {
        Bound soft = Bound.of(hazard, Kit.Heads.SOFT);
        for (Kit.Heads heads : List.of(Kit.Heads.HARD, Kit.Heads.FIRE)) {
            Bound stricter = Bound.of(hazard, heads);
            assertThat(stricter.hazard()).isEqualTo(hazard);
            assertThat(stricter.heads()).isEqualTo(heads);
            assertThat(stricter.level(soft.danger() + (hazard.keptAway() ? -1e-9 : 1e-9)))
                    .isEqualTo(Level.DANGER);
            assertThat(stricter.level(soft.care() + (hazard.keptAway() ? -1e-9 : 1e-9)))
                    .isNotEqualTo(Level.CALM);
        }
    }

    @Test
    void whatIsCalmWithSoftHeadsMayBeADangerWithFire() {
        Pairing fast = Read.at("isolation vs triquetra", 55);
        assertThat(Read.of(fast, Kit.USUAL).level()).isEqualTo(Level.CALM);
        isDanger(Read.of(fast, Kit.USUAL.withHeads(Kit.Heads.FIRE)), Hazard.HEAD_SPEED, Side.RIGHT);
    }

    @Test
    void aDragIsToldTheSameDangersWithoutTheirEnds() {
        Pairing fast = Read.at("static spin vs triquetra", 180);
        Dangers live = Read.of(fast, Kit.USUAL, Detail.LIVE);
        Dangers settled = Read.of(fast, Kit.USUAL, Detail.SETTLED);
        assertThat(live.all()).hasSameSizeAs(settled.all()).isNotEmpty();
        assertThat(live.all()).allMatch(d -> d.end().isEmpty());
        assertThat(settled.all()).allMatch(d -> d.end().isPresent());
        assertThat(live.all())
                .extracting(Danger::hazard)
                .isEqualTo(settled.all().stream().map(Danger::hazard).toList());
    }

    @Test
    void whatWasNotWorkedOutIsNamedAndTheRestIsLookedAt() {
        Pairing fast = Read.at("static spin vs triquetra", 180);
        Trace trace = Trace.of(fast);
        Kit kit = Kit.USUAL;
        Dangers dangers =
                Dangers.of(
                        trace,
                        Performer.USUAL,
                        kit,
                        new Worked.Not<Room>("how near things come", "no reason", ""),
                        Worked.of("left", () -> Pull.of(trace, Side.LEFT, kit)),
                        Worked.of("right", () -> Pull.of(trace, Side.RIGHT, kit)),
                        Detail.LIVE);
        assertThat(dangers.unknown()).containsExactly("how near things come");
        isDanger(dangers, Hazard.HEAD_SPEED, Side.RIGHT);
    }

    @Test
    void theGravestComesFirst() {
        List<Level> levels =
                Read.of(Read.at("static spin vs triquetra", 180), Kit.USUAL.withHeadMass(0.3))
                        .all()
                        .stream()
                        .map(Danger::level)
                        .toList();
        assertThat(levels).contains(Level.CARE, Level.DANGER);
        assertThat(levels.indexOf(Level.CARE)).isGreaterThan(levels.lastIndexOf(Level.DANGER));
    }

    /** A still poi weighs a newton on the hand, whatever the shoulder. */
    @Test
    void aPointIsolationLoadsTheShoulderThoughItsHeadHardlyMoves() {
        Pairing fast = Read.at("point isolation vs static spin", 200);
        Part left = fast.left();
        assertThat(left.motion().spin().turns()).isNotZero();
        Dangers dangers = Read.of(fast, Kit.USUAL);
        isDanger(dangers, Hazard.SHOULDER, Side.LEFT);
        assertThat(dangers.of(Hazard.HEAD_SPEED, Side.LEFT)).isEmpty();
    }
}
