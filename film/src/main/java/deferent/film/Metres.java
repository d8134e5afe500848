package deferent.film;

import deferent.film.cycle.Cycles;
import deferent.film.cycle.Wave;
import deferent.film.hand.Doubt;
import deferent.film.hand.PixelScale;
import deferent.film.hand.StillHand;
import deferent.film.hand.Upright;
import deferent.film.held.Held;
import deferent.film.light.LitSpot;
import deferent.film.measured.HowScaled;
import deferent.film.measured.Measured;
import deferent.film.measured.Measured.HowSided;
import deferent.film.measured.MeasuredSide;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Pixels into metres. Where nothing but the lights is known this cannot be told: for any size of a
 * pixel there is a hand that would have made the heads fly so. It can be told where the size is
 * given, where a phrase says which figure the tethers draw, and where a hand keeps still, since at
 * one size alone the cord then hangs from one place.
 */
final class Metres {
    private static final double STEP = 1.02;
    // A hand counts as still where it moves by less than this share of what its head does.
    private static final double STILL = 0.12;
    // Where it shows which way up is it must keep stiller still, and show it so well.
    private static final double QUITE_STILL = 0.03;
    private static final double SURE = Math.toRadians(1);
    private static final double ABOUT = 1.45;

    private final Cycles cycles;
    private final FilmAsk ask;
    private final double seconds;

    Metres(Cycles cycles, FilmAsk ask, double seconds) {
        this.cycles = cycles;
        this.ask = ask;
        this.seconds = seconds;
    }

    Measured measured() {
        if (ask.metresAPixel().isPresent()) {
            return at(ask.metresAPixel().getAsDouble(), HowScaled.GIVEN);
        }
        if (ask.meant().isPresent()) {
            return ofFigure();
        }
        return at(
                stillHand()
                        .map(StillHand::metres)
                        .orElseThrow(
                                () ->
                                        new Refusal(
                                                "cannot be known from the lights alone, since"
                                                        + " neither hand keeps still",
                                                "how large the film's picture is",
                                                "say what was meant, or how large a pixel is")),
                HowScaled.STILL_HAND);
    }

    /** At a given size of a pixel, metres. */
    Measured at(double metres, HowScaled how) {
        return at(metres, how, upright(metres));
    }

    private Measured at(double metres, HowScaled how, Upright upright) {
        Wave a = cycles.waves().get(0);
        Wave b = cycles.waves().get(1);
        double x = (a.x()[0] + b.x()[0]) / 2;
        double y = (a.y()[0] + b.y()[0]) / 2;
        PixelScale scale = new PixelScale(metres, x, y, ask.mirrored(), upright.roll());
        MeasuredSide one = side(a, scale, ask.tether(Side.LEFT), upright);
        MeasuredSide other = side(b, scale, ask.tether(Side.RIGHT), upright);
        // The picture's right is the performer's left.
        boolean firstIsLeft = xAtFirst(0) > xAtFirst(1) ^ ask.mirrored();
        HowSided sides = HowSided.ASSUMED;
        if (ask.first().isPresent()) {
            boolean firstOnPicturesLeft = !ask.heads().isEmpty() || xAtFirst(0) < xAtFirst(1);
            firstIsLeft = firstOnPicturesLeft == (ask.first().get() == Side.LEFT);
            sides = HowSided.SAID;
        } else if (Math.abs(one.handX() - other.handX()) > handsApart(one, other)) {
            firstIsLeft = one.handX() > other.handX();
            sides = HowSided.HANDS;
        }
        return new Measured(
                cycles.period(),
                cycles.drift(),
                seconds,
                firstIsLeft ? one : other,
                firstIsLeft ? other : one,
                !firstIsLeft,
                sides,
                scale,
                how,
                upright);
    }

    // So far apart that hands about one centre, each led aside by its cord, are not meant.
    private static double handsApart(MeasuredSide one, MeasuredSide other) {
        return Math.max(0.3, 2 * (one.handError() + other.handError()));
    }

    private double xAtFirst(int head) {
        List<@Nullable LitSpot> spots = cycles.sights().get(head);
        for (int i = 0; i < spots.size(); i++) {
            if (cycles.sights().get(0).get(i) != null && cycles.sights().get(1).get(i) != null) {
                LitSpot spot = spots.get(i);
                return spot == null ? 0 : spot.x();
            }
        }
        return cycles.waves().get(head).at(0)[0][0];
    }

    private MeasuredSide side(Wave pixels, PixelScale scale, double tether, Upright upright) {
        Doubt usual = Doubt.USUAL;
        Doubt doubt = new Doubt(usual.scale(), upright.error(), usual.place());
        return MeasuredSide.of(scale.upright(pixels), tether, ask.kit(), doubt);
    }

    // The size at which the film lies best on what was meant.
    private Measured ofFigure() {
        Pairing meant = ask.meant().orElseThrow();
        Upright level = ask.roll().isPresent() ? upright(1) : Upright.ASSUMED;
        double rough = Held.metresAPixel(at(1, HowScaled.FIGURE, level), meant);
        double best = rough;
        double least = Double.POSITIVE_INFINITY;
        for (double s = rough / ABOUT; s < rough * ABOUT; s *= STEP) {
            Measured tried = at(s, HowScaled.FIGURE, level);
            double cost = Held.of(tried, meant, ask.anySense()).cost() / s * rough;
            if (cost < least) {
                least = cost;
                best = s;
            }
        }
        return at(best, HowScaled.FIGURE);
    }

    /** The size at which one head's cord hangs from one place. */
    private Optional<StillHand> stillHand() {
        Optional<StillHand> best = Optional.empty();
        for (Side side : Side.values()) {
            Wave pixels = cycles.waves().get(side.ordinal());
            Optional<StillHand> found = StillHand.of(pixels, ask.tether(side), ask.kit());
            best = stiller(best, found);
        }
        return best.filter(s -> s.moves() < STILL);
    }

    private static Optional<StillHand> stiller(Optional<StillHand> one, Optional<StillHand> other) {
        if (one.isEmpty() || other.isEmpty()) {
            return one.or(() -> other);
        }
        return other.get().moves() < one.get().moves() ? other : one;
    }

    /** Which way up is, at a given size of a pixel. */
    Upright upright(double metres) {
        if (ask.roll().isPresent()) {
            return Upright.given(ask.roll().getAsDouble());
        }
        Optional<StillHand> best = Optional.empty();
        for (Side side : Side.values()) {
            Wave pixels = cycles.waves().get(side.ordinal());
            best = stiller(best, StillHand.of(pixels, ask.tether(side), ask.kit(), metres));
        }
        return best.filter(s -> s.moves() < QUITE_STILL && s.rollError() < SURE)
                .map(s -> new Upright(s.roll(), s.rollError(), Upright.How.STILL_HAND))
                .orElse(Upright.ASSUMED);
    }
}
