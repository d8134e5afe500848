package deferent.record;

import deferent.motion.body.Performer;
import deferent.motion.pairing.Arc;
import deferent.motion.pairing.Direction;
import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.pairing.Polygon;
import deferent.motion.pairing.Riding;
import deferent.motion.pairing.Sense;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.pairing.Stretches;
import deferent.motion.pairing.Swing;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Timing;
import deferent.motion.pairing.Turns;
import deferent.motion.tether.Kit;
import java.util.List;
import java.util.OptionalDouble;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** Pattern documents of every make, for properties. */
final class PairingArbitraries {
    private PairingArbitraries() {}

    private static Arbitrary<Double> doubles(double least, double most) {
        return Arbitraries.doubles().between(least, most).ofScale(17);
    }

    /** Angles as code makes them: anything, multiples of a degree, and fractions of π. */
    static Arbitrary<Double> angles() {
        return Arbitraries.oneOf(
                doubles(-10, 10),
                Arbitraries.integers().between(-720, 720).map(Math::toRadians),
                Arbitraries.integers().between(-24, 24).map(k -> k * Math.PI / 12),
                Arbitraries.of(0.0, -0.0, Math.PI / 7, -Math.PI / 2));
    }

    static Arbitrary<HandPath> handPaths() {
        Arbitrary<HandPath> series =
                Combinators.combine(
                                Arbitraries.integers().between(1, 24),
                                doubles(0, 2),
                                angles(),
                                doubles(0, 2),
                                angles())
                        .as(
                                (k, r, a, r2, a2) ->
                                        new Series(
                                                List.of(
                                                        new Series.Term(k, r, a),
                                                        new Series.Term(-k, r2, a2))));
        Arbitrary<HandPath> ellipse =
                Combinators.combine(doubles(-1, 1), doubles(-1, 1), angles()).as(Series::ellipse);
        Arbitrary<HandPath> line = Combinators.combine(doubles(0.01, 1), angles()).as(Series::line);
        Arbitrary<HandPath> circle =
                Combinators.combine(doubles(0, 1), angles())
                        .as((r, a) -> new Series(List.of(new Series.Term(1, r, a))));
        Arbitrary<HandPath> arc =
                Combinators.combine(doubles(0.01, 2), angles(), doubles(0.01, Math.PI))
                        .as(Arc::new);
        Arbitrary<HandPath> polygon =
                Combinators.combine(
                                Arbitraries.integers().between(3, 24), doubles(0.01, 2), angles())
                        .as(Polygon::new);
        Arbitrary<HandPath> drawn =
                Combinators.combine(doubles(0.1, 1), doubles(0.1, 1), doubles(0.1, 2))
                        .as(
                                (w, h, size) ->
                                        SvgPath.parse(
                                                "M0 0 Q " + w + " " + h + " 1 0 A 1 1 0 0 1 0 1",
                                                size));
        return Arbitraries.oneOf(
                Arbitraries.just(Series.STILL), circle, line, ellipse, series, arc, polygon, drawn);
    }

    static Arbitrary<SpinLaw> spins() {
        Arbitrary<SpinLaw> turns =
                Combinators.combine(Arbitraries.integers().between(-24, 24), angles())
                        .as(Turns::new);
        Arbitrary<SpinLaw> stretches =
                Combinators.combine(
                                doubles(0.05, 0.95),
                                doubles(-6, 6),
                                Arbitraries.integers().between(-4, 4),
                                Arbitraries.of(Stretches.Ease.class),
                                angles())
                        .as(
                                (share, t, whole, ease, start) ->
                                        new Stretches(
                                                start,
                                                List.of(
                                                        new Stretches.Stretch(share, t, ease),
                                                        new Stretches.Stretch(
                                                                1 - share,
                                                                whole - t,
                                                                Stretches.Ease.EVEN))));
        Arbitrary<SpinLaw> swing = Combinators.combine(doubles(0.1, 3), angles()).as(Swing::new);
        return Arbitraries.frequencyOf(
                net.jqwik.api.Tuple.of(3, turns),
                net.jqwik.api.Tuple.of(2, stretches),
                net.jqwik.api.Tuple.of(1, swing));
    }

    static Arbitrary<Place> places() {
        Arbitrary<Plane> planes =
                Combinators.combine(
                                Arbitraries.of(Plane.Kind.class),
                                Arbitraries.oneOf(
                                        Arbitraries.just(0.0), doubles(-Math.PI, Math.PI)),
                                Arbitraries.oneOf(
                                        Arbitraries.just(0.0), doubles(-Math.PI, Math.PI)))
                        .as(Plane::new);
        Arbitrary<PlaneTurn> turns =
                Combinators.combine(
                                Arbitraries.integers().between(-2, 2),
                                Arbitraries.of(PlaneTurn.Axis.class),
                                Arbitraries.of(PlaneTurn.Carries.class))
                        .as(PlaneTurn::new);
        Arbitrary<Vector3D> centres =
                Combinators.combine(doubles(-2, 2), doubles(-2, 2), doubles(-2, 2))
                        .as(Vector3D::new);
        return Combinators.combine(planes, turns, centres).as(Place::new);
    }

    static Arbitrary<Part> parts() {
        return Combinators.combine(
                        handPaths(),
                        spins(),
                        doubles(0.2, 2),
                        places(),
                        Arbitraries.integers().between(1, 24))
                .as(
                        (path, spin, tether, place, cycles) ->
                                new Part(new Motion(path, spin), Tether.of(tether), place, cycles))
                .filter(part -> !part.motion().undriven());
    }

    static Arbitrary<Pairing> pairings() {
        Arbitrary<OptionalDouble> tempos =
                Arbitraries.oneOf(
                        Arbitraries.just(OptionalDouble.empty()),
                        doubles(1, 600).map(OptionalDouble::of));
        return Combinators.combine(
                        parts(),
                        parts(),
                        Arbitraries.oneOf(
                                Arbitraries.of(0.0, 0.25, 0.5),
                                Arbitraries.doubles().between(0, true, 1, false).ofScale(17)),
                        Arbitraries.of(Direction.class),
                        Arbitraries.of(Sense.class),
                        tempos,
                        Arbitraries.of(true, false, false, false))
                .as(
                        (left, right, ahead, direction, sense, tempo, rides) ->
                                new Pairing(
                                        left,
                                        rides
                                                ? right.with(right.motion().withPath(new Riding()))
                                                : right,
                                        Timing.of(ahead),
                                        direction,
                                        sense,
                                        tempo));
    }

    static Arbitrary<PatternDocument> patterns() {
        Arbitrary<String> texts =
                Arbitraries.strings()
                        .withChars("aé日\"\\ /~.,🎇".toCharArray())
                        .ofMinLength(1)
                        .ofMaxLength(20)
                        .filter(s -> !s.isBlank());
        Arbitrary<Performer> performers =
                Arbitraries.oneOf(
                        Arbitraries.just(Performer.USUAL), doubles(1, 2.5).map(Performer::of));
        Arbitrary<Kit> kits =
                Combinators.combine(
                                doubles(0.01, 1), doubles(0.01, 0.2), Arbitraries.of(true, false))
                        .as((mass, diameter, air) -> new Kit(mass, diameter, 0, air));
        return Combinators.combine(
                        texts,
                        texts.map(t -> t + "\n\t" + t),
                        texts.optional(),
                        texts.list().ofMaxSize(3),
                        pairings(),
                        performers,
                        kits)
                .as(
                        (name, note, author, tags, pairing, performer, kit) ->
                                new PatternDocument(
                                        name, note, author, tags, author, pairing, performer, kit));
    }
}
