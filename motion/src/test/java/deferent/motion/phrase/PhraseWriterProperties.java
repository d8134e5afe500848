package deferent.motion.phrase;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Arc;
import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Drawn;
import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.pairing.Polygon;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Riding;
import deferent.motion.pairing.Sense;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.pairing.Stretches;
import deferent.motion.pairing.Swing;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Timing;
import deferent.motion.pairing.Turns;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** What is written reads back as the very same pairing, to the last bit of every size. */
class PhraseWriterProperties {

    @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE, shrinking = ShrinkingMode.OFF)
    void everyPairingWithoutADrawnPathHasAPhraseThatReadsBackAsItself(
            @ForAll("pairings") Pairing pairing) {
        Optional<String> phrase = Phrase.write(pairing);
        assertThat(phrase).as("%s", pairing).isPresent();
        assertThat(Phrase.parse(phrase.orElseThrow()).pairing()).isEqualTo(pairing);
    }

    @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE, shrinking = ShrinkingMode.OFF)
    void everyPhraseWritesBackAsAPhraseForTheSamePairing(@ForAll("phrases") String phrase) {
        Pairing pairing;
        try {
            pairing = Phrase.parse(phrase).pairing();
        } catch (PhraseError impossible) {
            assertThat(impossible.what())
                    .containsAnyOf("said that already", "swing at two tempos", "tempo is");
            return;
        }
        String written = Phrase.write(pairing).orElseThrow();
        assertThat(Phrase.parse(written).pairing()).as(written).isEqualTo(pairing);
        assertThat(written.length()).as("%s for %s", written, phrase).isLessThan(240);
    }

    @Property(tries = 50, shrinking = ShrinkingMode.OFF)
    void aDrawnPathHasNoPhraseUntilItHasAName(@ForAll("lengths") double across) {
        Motion drawn =
                new Motion(
                        new Drawn(
                                List.of(
                                        Drawn.Cubic.line(0, 0, across, 0),
                                        Drawn.Cubic.line(across, 0, 0, across),
                                        Drawn.Cubic.line(0, across, 0, 0))),
                        new Turns(1, 0));
        Pairing pairing =
                Pairing.of(usual(Side.LEFT, drawn), usual(Side.RIGHT, Motion.flower(0.6, -2, 0)));
        assertThat(Phrase.write(pairing)).isEmpty();
        Lexicon named = Lexicon.EMPTY.with("paper dart", drawn, Tether.USUAL);
        assertThat(Phrase.write(pairing, named)).contains("paper dart vs triquetra");
        assertThat(Phrase.parse("paper dart vs triquetra", named).pairing()).isEqualTo(pairing);
    }

    private static Part usual(Side side, Motion motion) {
        return new Part(motion, Tether.USUAL, Place.usual(side, Plane.WALL), 1);
    }

    @Provide
    Arbitrary<String> phrases() {
        Arbitrary<String> motion =
                Arbitraries.of(
                        "static spin",
                        "static spin turns -2",
                        "extension",
                        "Extensions, hand radius 45 cm",
                        "isolation",
                        "isolation hand radius 10cm",
                        "cat eye",
                        "vertical cateye",
                        "cat-eye tilt 30°",
                        "cat-eye tilt 1/3 rad hand radius 40 cm",
                        "linear extension",
                        "vertical linear extension",
                        "linear isolation",
                        "linear isolation tilt -20 deg",
                        "triquetra",
                        "triquetra tilt 90°",
                        "box antispin flower",
                        "diamond four-petal in-spin",
                        "5 petal anti-spin tilt 7 degrees",
                        "one-petal inspin",
                        "flower turns -7",
                        "half-and-half flower",
                        "six-petal half and half",
                        "stall",
                        "stall amplitude 50°",
                        "CAP",
                        "CAP turns 1.5 out 0.5 back",
                        "CAP tilt 45° turns 3 hand radius 50 cm",
                        "CAP turns 1.75 out 0.25 back stalling sweep 60°",
                        "toroid",
                        "toroid of a triquetra plane turns 3 about level",
                        "toroid of an isolation poi alone",
                        "triangle turns -2",
                        "7-corner polygon hand start 12°",
                        "ellipse axes 50 cm by 20 cm tilt 10°",
                        "line vertical turns 2",
                        "arc sweep 40° turns -1",
                        "circle swinging amplitude 20°",
                        "isolation hand start 77°",
                        "loops 1 of 30 cm plus -3 of 10 cm 45° turns 2",
                        "square stretches 0.25 of 1.5 turns then 0.75 of -0.5 turns resting");
        Arbitrary<String> sizes =
                Arbitraries.of(
                        "",
                        "",
                        " tether 50 cm",
                        " tether 555 mm",
                        " wheel plane",
                        " floor plane tip 10°",
                        " swivel -30°",
                        " centre 10 cm left 20 cm up",
                        " centre at 0.1 m 0.2 m 0.4 m",
                        " depth 50 cm",
                        " cycles 3");
        Arbitrary<String> joint = Arbitraries.of(" vs ", " VS. ", " versus ", " against ");
        Arbitrary<String> shared =
                Arbitraries.of(
                        "",
                        ", split time",
                        ", quarter-time, opposites",
                        ", same time",
                        ", timing 1/3 opposite direction",
                        ", 90 bpm counter-clockwise",
                        ", timing 0.123 tempo 61.5",
                        ", tether 70 cm");
        return Combinators.combine(motion, sizes, joint, motion, sizes, shared)
                .as((a, b, c, d, e, f) -> a + b + c + d + e + f);
    }

    @Provide
    Arbitrary<Double> lengths() {
        return Arbitraries.oneOf(
                Arbitraries.integers().between(5, 200).map(cm -> cm / 100.0),
                Arbitraries.doubles().between(0.05, 2).ofScale(12),
                Arbitraries.randomValue(r -> 0.05 + 2 * r.nextDouble()));
    }

    private static Arbitrary<Double> angles() {
        return Arbitraries.oneOf(
                Arbitraries.of(0.0, -0.0, Math.PI / 2, Math.PI, -Math.PI / 2, -Math.PI),
                Arbitraries.integers().between(-180, 180).map(Math::toRadians),
                Arbitraries.randomValue(r -> 7 * r.nextDouble() - 3.5),
                Arbitraries.randomValue(r -> 1e-9 * r.nextGaussian()));
    }

    @Provide
    Arbitrary<Pairing> pairings() {
        Arbitrary<Timing> timing =
                Arbitraries.oneOf(
                        Arbitraries.of(
                                Timing.TOGETHER,
                                Timing.SPLIT,
                                Timing.QUARTER,
                                Timing.of(1.0 / 3),
                                Timing.of(5.0 / 7)),
                        Arbitraries.randomValue(r -> new Timing(r.nextDouble())));
        Arbitrary<OptionalDouble> tempo =
                Arbitraries.oneOf(
                        Arbitraries.just(OptionalDouble.empty()),
                        Arbitraries.randomValue(r -> OptionalDouble.of(1 + 599 * r.nextDouble())),
                        Arbitraries.integers().between(30, 120).map(t -> OptionalDouble.of(t)));
        Arbitrary<Pairing> made =
                Combinators.combine(
                                parts(Side.LEFT),
                                parts(Side.RIGHT),
                                timing,
                                Arbitraries.of(Direction.values()),
                                Arbitraries.of(Sense.values()),
                                tempo)
                        .as(PhraseWriterProperties::possible)
                        .filter(Optional::isPresent)
                        .map(Optional::orElseThrow);
        return made;
    }

    private static Optional<Pairing> possible(
            Part left,
            Part right,
            Timing timing,
            Direction direction,
            Sense sense,
            OptionalDouble tempo) {
        try {
            return Optional.of(new Pairing(left, right, timing, direction, sense, tempo));
        } catch (Refusal conflict) {
            return Optional.empty();
        }
    }

    private Arbitrary<Part> parts(Side side) {
        Arbitrary<Tether> tethers =
                Arbitraries.oneOf(Arbitraries.just(Tether.USUAL), lengths().map(Tether::of));
        return tethers.flatMap(
                tether ->
                        Combinators.combine(
                                        motions(tether.length()),
                                        places(side),
                                        Arbitraries.of(1, 1, 1, 2, 3, 24))
                                .as(
                                        (motion, place, cycles) ->
                                                new Part(motion, tether, place, cycles)));
    }

    private Arbitrary<Place> places(Side side) {
        Arbitrary<Double> lean = Arbitraries.oneOf(Arbitraries.just(0.0), angles());
        Arbitrary<Plane> planes =
                Arbitraries.oneOf(
                        Arbitraries.of(Plane.WALL, Plane.WHEEL, Plane.FLOOR),
                        Combinators.combine(Arbitraries.of(Plane.Kind.values()), lean, lean)
                                .as(
                                        (kind, tip, swivel) ->
                                                new Plane(kind, within(tip), within(swivel))));
        Arbitrary<PlaneTurn> turns =
                Arbitraries.oneOf(
                        Arbitraries.just(PlaneTurn.NONE),
                        Combinators.combine(
                                        Arbitraries.integers().between(-12, 12),
                                        Arbitraries.of(PlaneTurn.Axis.values()),
                                        Arbitraries.of(PlaneTurn.Carries.values()))
                                .as(PlaneTurn::new));
        Arbitrary<Double> shift =
                Arbitraries.oneOf(
                        Arbitraries.just(0.0),
                        Arbitraries.integers().between(-90, 90).map(cm -> cm / 100.0),
                        Arbitraries.randomValue(r -> 2 * r.nextDouble() - 1));
        return Combinators.combine(planes, turns, shift, shift, shift)
                .as(
                        (plane, turn, x, y, z) -> {
                            Place usual = Place.usual(side, plane).withTurn(turn);
                            return usual.withCentre(usual.centre().add(new Vector3D(x, y, z)));
                        });
    }

    private static double within(double angle) {
        return Math.max(-Math.PI, Math.min(Math.PI, angle));
    }

    private Arbitrary<Motion> motions(double tether) {
        Arbitrary<Double> sizes =
                Arbitraries.oneOf(Arbitraries.of(tether, tether / 2, 0.3), lengths());
        Arbitrary<HandPath> paths =
                Arbitraries.oneOf(
                        Arbitraries.just(Series.STILL),
                        sizes.map(Series::circle),
                        sizes.map(Series::circle),
                        Combinators.combine(sizes, angles())
                                .as((r, a) -> Series.circle(r).turned(a)),
                        Combinators.combine(sizes, angles()).as(Series::line),
                        Combinators.combine(sizes, sizes, angles()).as(Series::ellipse),
                        Combinators.combine(sizes, sizes, angles(), angles())
                                .as(
                                        (r, q, a, b) ->
                                                new Series(
                                                        List.of(
                                                                new Series.Term(1, r, a),
                                                                new Series.Term(-5, q, b)))),
                        Combinators.combine(
                                        sizes,
                                        Arbitraries.oneOf(Arbitraries.just(Swing.DOWN), angles()),
                                        Arbitraries.of(Math.PI / 2, Math.PI, 1.0, 1e-3))
                                .as(Arc::new),
                        Combinators.combine(Arbitraries.integers().between(3, 24), sizes, angles())
                                .as(Polygon::new),
                        Arbitraries.just(new Riding()));
        return Combinators.combine(paths, spins()).as(Motion::new);
    }

    private static Arbitrary<SpinLaw> spins() {
        Arbitrary<Stretches.Ease> eases = Arbitraries.of(Stretches.Ease.values());
        Arbitrary<SpinLaw> halves =
                Combinators.combine(
                                Arbitraries.integers().between(-6, 6),
                                Arbitraries.oneOf(
                                        Arbitraries.of(0.5, 1.5, -0.5, 1.0),
                                        Arbitraries.randomValue(r -> 4 * r.nextDouble() - 2)),
                                angles(),
                                eases,
                                eases)
                        .as(
                                (whole, out, start, a, b) ->
                                        new Stretches(
                                                start,
                                                List.of(
                                                        new Stretches.Stretch(0.5, out, a),
                                                        new Stretches.Stretch(
                                                                0.5, whole - out, b))));
        Arbitrary<SpinLaw> many =
                Combinators.combine(
                                Arbitraries.integers().between(1, 7),
                                Arbitraries.integers().between(-3, 3),
                                angles(),
                                eases)
                        .as(
                                (count, turns, start, ease) ->
                                        new Stretches(
                                                start,
                                                IntStream.range(0, count)
                                                        .mapToObj(
                                                                i ->
                                                                        new Stretches.Stretch(
                                                                                1.0 / count,
                                                                                turns,
                                                                                ease))
                                                        .toList()));
        return Arbitraries.oneOf(
                Combinators.combine(Arbitraries.integers().between(-24, 24), angles())
                        .as(Turns::new),
                Combinators.combine(
                                Arbitraries.of(-3, -2, -1, 0, 1, 2, 5),
                                Arbitraries.of(0.0, Math.PI, Math.PI / 2))
                        .as(Turns::new),
                halves,
                many,
                Combinators.combine(
                                Arbitraries.oneOf(
                                        Arbitraries.of(Math.PI / 2, 1.0, 3.0),
                                        Arbitraries.integers()
                                                .between(1, 179)
                                                .map(Math::toRadians)),
                                Arbitraries.oneOf(Arbitraries.just(Swing.DOWN), angles()))
                        .as(Swing::new));
    }
}
