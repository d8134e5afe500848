package deferent.motion.pairing;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Provide;
import net.jqwik.api.domains.DomainContextBase;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** Pairings of every kind of hand path, spin law, plane, timing and rhythm, for property tests. */
public final class AnyPairing extends DomainContextBase {
    @Provide
    public Arbitrary<Pairing> pairings() {
        return Combinators.combine(
                        parts(false),
                        parts(true),
                        fraction(),
                        Arbitraries.of(Direction.values()),
                        Arbitraries.of(Sense.values()))
                .filter(
                        (left, right, ahead, direction, sense) ->
                                !(left.motion().undriven() && right.motion().undriven()))
                .as(
                        (left, right, ahead, direction, sense) ->
                                new Pairing(
                                        left,
                                        right,
                                        Timing.of(ahead),
                                        direction,
                                        sense,
                                        OptionalDouble.empty()));
    }

    private Arbitrary<Part> parts(boolean mayRide) {
        return Combinators.combine(
                        paths(mayRide),
                        spins(),
                        number(0.2, 1.2),
                        places(),
                        Arbitraries.integers().between(1, 4))
                .as(
                        (path, spin, tether, place, cycles) ->
                                new Part(new Motion(path, spin), Tether.of(tether), place, cycles));
    }

    @Provide
    public Arbitrary<HandPath> paths() {
        return paths(false);
    }

    private static Arbitrary<HandPath> paths(boolean mayRide) {
        Arbitrary<HandPath> circle = number(0.05, 1.5).map(Series::circle);
        Arbitrary<HandPath> ellipse =
                Combinators.combine(number(0.1, 1), number(-1, 1), angle()).as(Series::ellipse);
        Arbitrary<HandPath> line = Combinators.combine(number(0.1, 1), angle()).as(Series::line);
        Arbitrary<HandPath> arc =
                Combinators.combine(number(0.1, 1), angle(), number(0.2, 3.1)).as(Arc::new);
        Arbitrary<HandPath> polygon =
                Combinators.combine(Arbitraries.integers().between(3, 24), number(0.1, 1), angle())
                        .as(Polygon::new);
        Arbitrary<HandPath> drawn = number(0.3, 1).list().ofSize(8).map(AnyPairing::drawn);
        List<Arbitrary<? extends HandPath>> kinds =
                new ArrayList<>(
                        List.of(
                                Arbitraries.just(Series.STILL),
                                circle,
                                ellipse,
                                line,
                                arc,
                                polygon,
                                drawn));
        if (mayRide) {
            kinds.add(Arbitraries.just(new Riding()));
        }
        return Arbitraries.oneOf(kinds.stream().map(k -> k.map(p -> (HandPath) p)).toList());
    }

    // Four bowed pieces round the centre, with corners where they join.
    private static HandPath drawn(List<Double> far) {
        List<Drawn.Cubic> pieces = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            double a = far.get(i);
            double b = far.get((i + 1) % 4);
            double bow = far.get(4 + i);
            double from = i * Math.PI / 2;
            pieces.add(
                    new Drawn.Cubic(
                            a * Math.cos(from),
                            a * Math.sin(from),
                            bow * Math.cos(from + 0.5),
                            bow * Math.sin(from + 0.5),
                            bow * Math.cos(from + 1),
                            bow * Math.sin(from + 1),
                            b * Math.cos(from + Math.PI / 2),
                            b * Math.sin(from + Math.PI / 2)));
        }
        return new Drawn(pieces);
    }

    @Provide
    public Arbitrary<SpinLaw> spins() {
        Arbitrary<SpinLaw> even =
                Combinators.combine(Arbitraries.integers().between(-6, 6), angle()).as(Turns::new);
        Arbitrary<SpinLaw> swing =
                number(0.2, 2.8).map(amplitude -> new Swing(amplitude, Swing.DOWN));
        Arbitrary<SpinLaw> stretches =
                Combinators.combine(
                                angle(),
                                number(0.2, 0.8),
                                number(-3, 3),
                                Arbitraries.integers().between(-4, 4),
                                Arbitraries.of(Stretches.Ease.values()),
                                Arbitraries.of(Stretches.Ease.values()))
                        .as(
                                (start, share, turns, whole, first, second) ->
                                        new Stretches(
                                                start,
                                                List.of(
                                                        new Stretches.Stretch(share, turns, first),
                                                        new Stretches.Stretch(
                                                                1 - share,
                                                                whole - turns,
                                                                second))));
        return Arbitraries.oneOf(even, swing, stretches);
    }

    // Pendulums that nobody drives need a downhill, so level planes stay out.
    private static Arbitrary<Place> places() {
        Arbitrary<Plane> planes =
                Combinators.combine(
                                Arbitraries.of(Plane.Kind.WALL, Plane.Kind.WHEEL),
                                number(-1, 1),
                                number(-3, 3))
                        .as(Plane::new);
        Arbitrary<PlaneTurn> turns =
                Arbitraries.oneOf(
                        Arbitraries.just(PlaneTurn.NONE),
                        Combinators.combine(
                                        Arbitraries.integers().between(-2, 2),
                                        Arbitraries.of(PlaneTurn.Axis.values()),
                                        Arbitraries.of(PlaneTurn.Carries.values()))
                                .as(PlaneTurn::new));
        Arbitrary<Vector3D> centres =
                Combinators.combine(number(-1, 1), number(-1, 1), number(-1, 1))
                        .as((x, y, z) -> new Vector3D(x, y, z));
        return Combinators.combine(planes, turns, centres).as(Place::new);
    }

    private static Arbitrary<Double> fraction() {
        return number(0, 0.999);
    }

    private static Arbitrary<Double> angle() {
        return number(-3.1, 3.1);
    }

    private static Arbitrary<Double> number(double least, double most) {
        return Arbitraries.doubles().between(least, most).ofScale(3);
    }
}
