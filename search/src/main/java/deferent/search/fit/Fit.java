package deferent.search.fit;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Size;
import deferent.motion.phrase.MotionWords;
import deferent.motion.shared.Side;
import deferent.reading.link.LinkReading;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Changes the free sizes of a pairing until the link from the carrier's head to the rider's hand
 * closes.
 *
 * <p>First the shapes are made to agree, by closed forms where there are any and by search where
 * not; then head and hand are brought together in time, turn and place. Unless one goal is asked
 * for, touching in the carrier's plane is tried first and the shape alone where that cannot be had.
 * Every answer has been read afterwards: its gap is what the reading says, not what the formula
 * promised.
 */
public final class Fit {
    private static final int MOST = 8;

    private final FitLink link;
    private final Pairing pairing;
    private final Set<Size> free;
    private final Limits limits;
    private final LinkReading now;
    private final ShapeFit shape;
    private final List<Trial> shaped;
    private final Trial nearest;

    private Fit(Pairing pairing, LinkReading now, Set<Size> free, Limits limits) {
        this.link = new FitLink(pairing, now);
        this.pairing = pairing;
        this.free = free;
        this.limits = limits;
        this.now = now;
        this.shape = new ShapeFit(link, limits, pairing, free);
        List<Trial> found = new ArrayList<>();
        if (ShapeFit.closed(now)) {
            found.add(Trial.of(pairing));
        }
        Trial best = Trial.of(pairing);
        if (found.isEmpty()) {
            found.addAll(shape.byClosedForm());
        }
        if (found.isEmpty() && !shape.free().isEmpty()) {
            boolean hopeful = Why.ofFigures(pairing, link.carrier(), now).hopeful();
            List<Trial> searched = shape.bySearch(hopeful);
            best = searched.get(0);
            // What has little hope may come out closed for all that: a head that is brought to
            // rest.
            for (Trial trial : hopeful ? searched : searched.subList(0, 1)) {
                if (shape.closes(trial)) {
                    found.add(trial);
                }
            }
        }
        this.shaped = found;
        this.nearest = found.isEmpty() ? best : found.get(0);
    }

    /** With all the sizes free that leave both motions what they are. */
    public static FitReading of(Pairing pairing, Side carrier) {
        return of(pairing, carrier, usual(pairing));
    }

    /** Touching where the free sizes allow it, else the shape alone. */
    public static FitReading of(Pairing pairing, Side carrier, Set<Size> free) {
        return of(pairing, carrier, free, Limits.USUAL);
    }

    /** Touching where the free sizes and their limits allow it, else the shape alone. */
    public static FitReading of(Pairing pairing, Side carrier, Set<Size> free, Limits limits) {
        return of(pairing, new FitLink(carrier).certified(pairing), free, limits);
    }

    /**
     * As {@link #of(Pairing, Side)}, where the link has been read already.
     *
     * @param now the certified reading of the pairing's link
     */
    public static FitReading of(Pairing pairing, LinkReading now) {
        return of(pairing, now, usual(pairing), Limits.USUAL);
    }

    private static FitReading of(Pairing pairing, LinkReading now, Set<Size> free, Limits limits) {
        Side carrier = now.carrier();
        Fit fit = new Fit(pairing, now, free, limits);
        if (fit.shaped.isEmpty()) {
            return fit.shape();
        }
        FitReading placed = fit.placed();
        // Where the shapes agree already, no change of theirs is an answer.
        if (placed.closes() || ShapeFit.closed(now)) {
            return placed;
        }
        FitReading shape = fit.shape();
        return new FitReading(
                carrier,
                Goal.SHAPE,
                shape.answers(),
                shape.nearest(),
                placed.obstacle(),
                placed.have(),
                placed.need(),
                placed.riding());
    }

    /** One goal alone. */
    public static FitReading of(
            Pairing pairing, Side carrier, Set<Size> free, Limits limits, Goal goal) {
        Fit fit = new Fit(pairing, new FitLink(carrier).certified(pairing), free, limits);
        return goal == Goal.PLACED ? fit.placed() : fit.shape();
    }

    /**
     * Sizes whose change leaves both motions what they are: all but the tempo, and the poi's start
     * where it makes an isolation of an extension or is the figure's tilt.
     */
    public static Set<Size> usual(Pairing pairing) {
        Set<Size> sizes = new LinkedHashSet<>(Size.of(pairing));
        sizes.removeIf(
                s ->
                        s.kind() == Size.Kind.TEMPO
                                || (s.kind() == Size.Kind.START
                                        && !pairing.part(s.side()).still()
                                        && (pairing.part(s.side())
                                                        .motion()
                                                        .spin()
                                                        .even()
                                                        .filter(e -> e.turns() == 1)
                                                        .isPresent()
                                                || Size.of(s.side(), Size.Kind.TILT)
                                                        .read(pairing)
                                                        .isPresent())));
        return sizes;
    }

    private double nearestGap() {
        return link.certified(nearest.pairing()).shapeGap();
    }

    @SuppressWarnings("ReferenceEquality") // a trial covers itself
    private FitReading shape() {
        List<Trial> plain = new ArrayList<>();
        for (Trial trial : shaped) {
            plain.add(trial.plainer(p -> ShapeFit.closed(link.certified(p))));
        }
        List<Remedy> answers = new ArrayList<>();
        for (Trial trial : plain) {
            if (plain.stream().noneMatch(s -> s != trial && s.covers(trial))) {
                answers.add(trial.answer(pairing, link.certified(trial.pairing()).shapeGap()));
            }
        }
        Remedy least = answers.isEmpty() ? nearest.answer(pairing, nearestGap()) : null;
        return reading(Goal.SHAPE, answers, least, whyNoShape());
    }

    private FitReading placed() {
        PlacedFit place = new PlacedFit(link, limits, free);
        List<Trial> found = new ArrayList<>();
        Trial best = Trial.of(pairing);
        double least = link.inPlane(pairing);
        for (Trial from : shaped) {
            for (Trial trial : place.from(from)) {
                if (found.stream().anyMatch(f -> f.covers(trial))
                        || link.inPlane(trial.pairing(), 48) >= Math.max(least, FitLink.CLOSED)) {
                    continue;
                }
                double gap = link.inPlane(trial.pairing());
                if (gap < least) {
                    least = gap;
                    best = trial;
                }
                if (gap < FitLink.CLOSED) {
                    Trial plain = trial.plainer(p -> link.inPlane(p) < FitLink.CLOSED);
                    found.removeIf(plain::covers);
                    found.add(plain);
                }
            }
        }
        List<Remedy> answers = new ArrayList<>();
        for (Trial trial : found) {
            answers.add(trial.answer(pairing, link.inPlane(trial.pairing())));
        }
        Why why = whyNoShape();
        if (answers.isEmpty() && !shaped.isEmpty()) {
            Pairing shapes = shaped.get(0).pairing();
            why = Why.ofPlacing(shapes, link.carrier(), link.certified(shapes), least);
        }
        return reading(
                Goal.PLACED, answers, answers.isEmpty() ? best.answer(pairing, least) : null, why);
    }

    private FitReading reading(Goal goal, List<Remedy> answers, @Nullable Remedy nearest, Why why) {
        List<Remedy> sorted =
                answers.stream()
                        .sorted(
                                Comparator.comparingInt((Remedy a) -> renamed(a.pairing()))
                                        .thenComparingLong(Remedy::sizesChanged)
                                        .thenComparingDouble(Remedy::moved))
                        .limit(MOST)
                        .toList();
        return new FitReading(
                link.carrier(),
                goal,
                sorted,
                nearest == null ? sorted.get(0) : nearest,
                why.obstacle(),
                why.have(),
                why.need(),
                sorted.isEmpty() && why.obstacle().ofPaths()
                        ? Ridden.of(pairing, link)
                        : Optional.empty());
    }

    // How many of the two motions would be called something else.
    private int renamed(Pairing other) {
        int renamed = 0;
        for (Side side : Side.values()) {
            renamed += MotionWords.of(other, side).equals(MotionWords.of(pairing, side)) ? 0 : 1;
        }
        return renamed;
    }

    private Why whyNoShape() {
        if (ShapeFit.closed(now)) {
            return Why.NOT;
        }
        Why figures = Why.ofFigures(pairing, link.carrier(), now);
        if (!shaped.isEmpty()) {
            // Of what is no question of size, sizes have shown otherwise.
            return figures.hopeful() ? figures : Why.NOT;
        }
        if (figures.obstacle() != Obstacle.NONE) {
            return figures;
        }
        if (shape.free().isEmpty()) {
            return new Why(Obstacle.NOTHING_FREE, now.shapeGap(), 0);
        }
        return shape.beyondALimit().orElseGet(() -> Why.ofKinds(pairing, link.carrier()));
    }
}
