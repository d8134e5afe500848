package deferent.search.fit;

import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Tether;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.body.Reach;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The largest version of a pairing that a body reaches, tethers included.
 *
 * <p>Hand paths, tethers and the centres' distances in their planes are made smaller all by one
 * factor, about the point midway between the two centres. The figures stay similar, so a link in
 * the plane stays a link; planes stay as far apart as hands need. The factor is found by halving,
 * the trunk turned as {@link Reach} has it and nothing else bent, and then taken down to a tether
 * of whole centimetres, or to tethers one owns.
 *
 * <p>Asked for with a fit of the link, it is the link's answers that are made smaller, and the
 * first is taken whose tethers stay as long as tethers are; not so where it passes across the body,
 * since its hands are bound to each other already. Where none do, the pairing is made smaller as it
 * is, off its link, if that keeps them so.
 *
 * @param pairing the version; the pairing itself where it is reached as it stands
 * @param scale its size over the pairing's that was made smaller, above 0 and at most 1
 * @param reach its arms' reading
 * @param closedTether where the link is given up: how long its shorter tether would be with the
 *     link closed, metres
 */
public record ArmsFit(Pairing pairing, double scale, Reach reach, OptionalDouble closedTether) {
    /** Tethers under this are hardly spun, metres (common practice, no source). */
    public static final double USUAL_SHORTEST = 0.30;

    private static final double SHORTEST = 0.20;
    private static final double STEP = 0.01;
    private static final double EXACT = 1e-3;
    private static final double SLACK = 1e-4;

    /** How far a tether may be from one that is owned, metres: a knot moved along. */
    private static final double KNOT = 0.01;

    public ArmsFit {
        Refusal.within(scale, 0, 1, "scale", "of the pairing");
    }

    /**
     * With tethers of any length.
     *
     * @return empty where even tethers of {@value #SHORTEST} m are too long
     */
    public static Optional<ArmsFit> of(Pairing pairing, Performer performer) {
        return of(pairing, performer, List.of());
    }

    /**
     * With tethers one owns.
     *
     * @param owned lengths, metres; any length where empty
     * @return empty where none of them will do
     */
    public static Optional<ArmsFit> of(Pairing pairing, Performer performer, List<Double> owned) {
        ArmsFit whole = at(pairing, performer, 1);
        return whole.reached() && (owned.isEmpty() || owns(pairing, owned))
                ? Optional.of(whole)
                : turned(pairing, performer, owned);
    }

    private static Optional<ArmsFit> turned(
            Pairing pairing, Performer performer, List<Double> owned) {
        double longest = tethers(pairing).max().orElseThrow();
        double scale = largest(pairing, performer, SHORTEST / longest);
        return (owned.isEmpty() ? whole(scale, longest) : owned(pairing, scale, owned))
                .filter(s -> s * longest >= SHORTEST - 1e-9)
                .mapToObj(s -> at(pairing, performer, s))
                .filter(fit -> fit.reach.worst() <= SLACK)
                .findFirst();
    }

    /**
     * As it is, with tethers long enough to spin, the body bent where they take that.
     *
     * @return empty where no such tethers will do
     */
    public static Optional<ArmsFit> sized(Pairing pairing, Performer performer) {
        return of(pairing, performer)
                .filter(ArmsFit::longEnough)
                .or(() -> bent(pairing, performer, List.of()));
    }

    // The least bend is that of the shortest tethers that are long enough.
    private static Optional<ArmsFit> bent(
            Pairing pairing, Performer performer, List<Double> owned) {
        double shorter = tethers(pairing).min().orElseThrow();
        return (owned.isEmpty()
                        ? DoubleStream.of(USUAL_SHORTEST / shorter)
                        : owned(pairing, 1, owned).sorted())
                .filter(s -> s <= 1 && s * shorter >= USUAL_SHORTEST - 1e-9)
                .mapToObj(s -> at(pairing, performer, s))
                .filter(ArmsFit::reached)
                .findFirst();
    }

    /**
     * With tethers of any length but none under some, the trunk turned and nothing else bent.
     *
     * @param shortest metres
     * @return empty where tethers as short as that are too long
     */
    public static Optional<ArmsFit> within(Pairing pairing, Performer performer, double shortest) {
        double least = Math.min(1, shortest / tethers(pairing).min().orElseThrow());
        if (Reach.hopeless(Trace.of(scaled(pairing, least)), performer)) {
            return Optional.empty();
        }
        return turned(pairing, performer, List.of())
                .filter(fit -> fit.shorterTether() >= shortest - 1e-9);
    }

    /**
     * With its link closed, unless that makes a tether shorter than tethers are and to stay off the
     * link doesn't.
     *
     * @param link a fit of the pairing's link
     * @param owned tethers there are, metres; any length where empty
     * @return empty where no tether will do
     */
    public static Optional<ArmsFit> linked(
            Pairing pairing, FitReading link, Performer performer, List<Double> owned) {
        List<Pairing> closing =
                link.goal() == Goal.PLACED && !pairing.weaves()
                        ? link.answers().stream().map(Remedy::pairing).toList()
                        : List.of();
        List<ArmsFit> closed = fits(closing, p -> of(p, performer, owned));
        List<ArmsFit> all = new ArrayList<>(closed);
        all.addAll(fits(closing, p -> bent(p, performer, owned)));
        OptionalDouble best = closed.stream().mapToDouble(ArmsFit::shorterTether).max();
        List<ArmsFit> off = fits(List.of(pairing), p -> of(p, performer, owned));
        off.addAll(fits(List.of(pairing), p -> bent(p, performer, owned)));
        off.forEach(fit -> all.add(new ArmsFit(fit.pairing, fit.scale, fit.reach, best)));
        return all.stream()
                .filter(ArmsFit::longEnough)
                .findFirst()
                .or(() -> all.stream().max(Comparator.comparingDouble(ArmsFit::shorterTether)));
    }

    private static List<ArmsFit> fits(
            List<Pairing> pairings, Function<Pairing, Optional<ArmsFit>> fit) {
        return pairings.stream()
                .map(fit)
                .flatMap(Optional::stream)
                .collect(Collectors.toCollection(ArrayList::new));
    }

    /**
     * What to offer beside a fit whose first answer, or where it has none the pairing itself, is
     * out of reach.
     *
     * @return empty where it is within reach, or where no tether will do
     */
    public static Optional<ArmsFit> beside(Pairing pairing, FitReading link, Performer performer) {
        Pairing first = link.closes() ? link.answers().get(0).pairing() : pairing;
        return at(first, performer, 1).reached()
                ? Optional.empty()
                : linked(pairing, link, performer, List.of());
    }

    /** The shorter of its two tethers, metres. */
    public double shorterTether() {
        return tethers(pairing).min().orElseThrow();
    }

    /** Whether both its tethers are as long as tethers are. */
    public boolean longEnough() {
        return shorterTether() >= USUAL_SHORTEST - 1e-9;
    }

    private static ArmsFit at(Pairing pairing, Performer performer, double scale) {
        Pairing scaled = scale == 1 ? pairing : scaled(pairing, scale);
        return new ArmsFit(
                scaled, scale, Reach.of(Trace.of(scaled), performer), OptionalDouble.empty());
    }

    /**
     * Whether both hands get everywhere, the body turned and bent where that helps, and neither too
     * near its own shoulder.
     */
    public boolean reached() {
        return reach.reached();
    }

    // The largest factor that is reached, or the least there is.
    private static double largest(Pairing pairing, Performer performer, double least) {
        if (at(pairing, performer, 1).reach.worst() <= SLACK) {
            return 1;
        }
        double yes = Math.min(1, least);
        double no = 1;
        if (Reach.hopeless(Trace.of(scaled(pairing, yes)), performer)) {
            return yes;
        }
        while (no - yes > EXACT) {
            double half = (yes + no) / 2;
            if (at(pairing, performer, half).reach().trunk().reached()) {
                yes = half;
            } else {
                no = half;
            }
        }
        return yes;
    }

    // As large as found where it stands as asked, else tethers of whole centimetres below it.
    private static DoubleStream whole(double scale, double longest) {
        if (scale == 1) {
            return DoubleStream.of(1);
        }
        double most = Math.floor(scale * longest / STEP + 1e-9);
        return DoubleStream.iterate(most, n -> n >= 1, n -> n - 1).map(n -> n * STEP / longest);
    }

    private static DoubleStream owned(Pairing pairing, double scale, List<Double> owned) {
        double left = pairing.part(Side.LEFT).tether().length();
        return owned.stream()
                .mapToDouble(length -> length / left)
                .filter(s -> s <= scale + EXACT)
                .filter(s -> tethers(pairing).allMatch(l -> near(l * s, owned)))
                .boxed()
                .sorted((a, b) -> Double.compare(b, a))
                .mapToDouble(s -> s);
    }

    private static boolean owns(Pairing pairing, List<Double> owned) {
        return tethers(pairing).allMatch(length -> near(length, owned));
    }

    private static boolean near(double length, List<Double> owned) {
        return owned.stream().anyMatch(one -> Math.abs(one - length) <= KNOT);
    }

    private static DoubleStream tethers(Pairing pairing) {
        return DoubleStream.of(
                pairing.part(Side.LEFT).tether().length(),
                pairing.part(Side.RIGHT).tether().length());
    }

    /** The pairing {@code factor} (above 0) times the size, its planes as far apart as before. */
    public static Pairing scaled(Pairing pairing, double factor) {
        Vector3D middle =
                pairing.part(Side.LEFT)
                        .place()
                        .centre()
                        .add(pairing.part(Side.RIGHT).place().centre())
                        .scalarMultiply(0.5);
        Pairing made = pairing;
        for (Side side : Side.values()) {
            Part part = pairing.part(side);
            Vector3D off = part.place().centre().subtract(middle);
            Vector3D normal = part.place().plane().normal();
            Vector3D across = normal.scalarMultiply(off.dotProduct(normal));
            Vector3D centre = middle.add(across).add(factor, off.subtract(across));
            made =
                    made.with(
                            side,
                            new Part(
                                    scaled(part.motion(), factor),
                                    Tether.of(micrometres(part.tether().length() * factor)),
                                    part.place().withCentre(centre).settled(),
                                    part.cycles()));
        }
        return made;
    }

    private static Motion scaled(Motion motion, double factor) {
        Motion made = motion.withPath(scaled(motion.path(), factor));
        return motion.weave()
                .map(weave -> made.with(weave.withOut(micrometres(weave.out() * factor))))
                .orElse(made);
    }

    private static HandPath scaled(HandPath path, double factor) {
        return path.still() || path.rides()
                ? path
                : path.resized(micrometres(path.radius() * factor));
    }

    // So that 0.41 is the number nearest 0.41.
    private static double micrometres(double length) {
        return Math.rint(length * 1e6) / 1e6;
    }
}
