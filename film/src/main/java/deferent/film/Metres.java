package deferent.film;

import deferent.film.cycle.Cycles;
import deferent.film.cycle.Wave;
import deferent.film.hand.HandFinder;
import deferent.film.hand.HandSight;
import deferent.film.hand.PixelScale;
import deferent.film.held.Held;
import deferent.film.light.LitSpot;
import deferent.film.measured.HowScaled;
import deferent.film.measured.Measured;
import deferent.film.measured.Measured.HowSided;
import deferent.film.measured.MeasuredSide;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Side;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * Pixels into metres. Where nothing but the lights is known this cannot be told: for any size of a
 * pixel there is a hand that would have made the heads fly so. It can be told where the size is
 * given, where a phrase says which figure the tethers draw, and where a hand keeps still, since at
 * one size alone the cord then hangs from one place.
 */
final class Metres {
    // Of a pixel at the performer: from a close-up at 4K to a far and small film.
    private static final double FINEST = 2e-4;
    private static final double COARSEST = 2e-2;
    private static final double STEP = 1.02;
    private static final int HAND_MOMENTS = 60;
    // A hand counts as still where it moves by less than this share of what its head does.
    private static final double STILL = 0.12;
    private static final double NEARLY_ALL = 0.75; // of the cycle, in which it must be told
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
        Wave a = cycles.waves().get(0);
        Wave b = cycles.waves().get(1);
        double x = (a.x()[0] + b.x()[0]) / 2;
        double y = (a.y()[0] + b.y()[0]) / 2;
        PixelScale scale = new PixelScale(metres, x, y, ask.mirrored());
        MeasuredSide one = side(a, scale, ask.tether(Side.LEFT));
        MeasuredSide other = side(b, scale, ask.tether(Side.RIGHT));
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
                how);
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

    private MeasuredSide side(Wave pixels, PixelScale scale, double tether) {
        double across = scale.mirrored() ? -scale.metres() : scale.metres();
        Wave wave =
                pixels.through(
                        -scale.x() * across, across, scale.y() * scale.metres(), -scale.metres());
        return MeasuredSide.of(wave, tether, ask.kit());
    }

    // The size at which the film lies best on what was meant.
    private Measured ofFigure() {
        Pairing meant = ask.meant().orElseThrow();
        double rough = Held.metresAPixel(at(1, HowScaled.FIGURE), meant);
        Measured best = at(rough, HowScaled.FIGURE);
        double least = Double.POSITIVE_INFINITY;
        for (double s = rough / ABOUT; s < rough * ABOUT; s *= STEP) {
            Measured tried = at(s, HowScaled.FIGURE);
            double cost = Held.of(tried, meant, ask.anySense()).cost() / s * rough;
            if (cost < least) {
                least = cost;
                best = tried;
            }
        }
        return best;
    }

    /** The size at which one head's cord hangs from one place. */
    private OptionalDouble stillHand() {
        double least = STILL;
        double best = Double.NaN;
        for (Side side : Side.values()) {
            Wave pixels = cycles.waves().get(side.ordinal());
            for (double s = FINEST; s < COARSEST; s *= STEP) {
                double moves = moves(pixels, s, ask.tether(side));
                if (moves < least) {
                    least = moves;
                    best = s;
                }
            }
        }
        return Double.isNaN(best) ? OptionalDouble.empty() : OptionalDouble.of(best);
    }

    // How far a hand moves, as a share of what its head does.
    private double moves(Wave pixels, double metres, double tether) {
        Wave wave = pixels.through(0, metres, 0, -metres);
        List<HandSight> hands = HandFinder.of(wave, tether, ask.kit(), HAND_MOMENTS);
        if (hands.size() < NEARLY_ALL * HAND_MOMENTS) {
            return Double.POSITIVE_INFINITY;
        }
        double head = 0;
        for (int k = 1; k < wave.x().length; k++) {
            head += (wave.x()[k] * wave.x()[k] + wave.y()[k] * wave.y()[k]) / 2;
        }
        double mx = hands.stream().mapToDouble(HandSight::x).average().orElse(0);
        double my = hands.stream().mapToDouble(HandSight::y).average().orElse(0);
        double spread =
                hands.stream()
                        .mapToDouble(h -> Math.pow(h.x() - mx, 2) + Math.pow(h.y() - my, 2))
                        .average()
                        .orElse(0);
        return Math.sqrt(spread / Math.max(1e-12, head));
    }
}
