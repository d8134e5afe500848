package deferent.film.over;

import deferent.film.FilmReading;
import deferent.film.cycle.Drift;
import deferent.film.hand.HandSight;
import deferent.film.hand.PixelScale;
import deferent.film.measured.MeasuredSide;
import deferent.motion.shared.Side;
import java.util.List;

/**
 * What lies over a film: over one cycle at even moments where each head was and was meant to be and
 * where its hand was, with the clock that turns a moment of the film into one of the cycle.
 *
 * @param period seconds of the cycle
 * @param drift how far ahead of an even clock the spinner was
 * @param left the left hand's
 * @param right the right hand's
 */
public record Overlay(double period, Drift drift, Laid left, Laid right) {
    /**
     * What lies over it of one side. Places are pixels of the upright picture, from its left edge
     * and downward from its top, whole numbers being the middles of pixels.
     *
     * @param light where the head was, x and y at even moments of the cycle
     * @param meant where it was meant to be, likewise
     * @param meantHand where the hand was meant to be, likewise
     * @param hands where the hand was, wherever the cord pulled
     */
    public record Laid(
            double[][] light, double[][] meant, double[][] meantHand, List<HandAt> hands) {
        public Laid {
            hands = List.copyOf(hands);
        }
    }

    /**
     * Where a hand was.
     *
     * @param share of the cycle, 0 to 1
     * @param x pixels
     * @param y pixels
     * @param error standard deviation on either axis, pixels
     */
    public record HandAt(double share, double x, double y, double error) {}

    public static Overlay of(FilmReading film) {
        return new Overlay(
                film.measured().period(),
                film.measured().drift(),
                side(film, Side.LEFT),
                side(film, Side.RIGHT));
    }

    private static Laid side(FilmReading film, Side side) {
        MeasuredSide one = film.measured().side(side);
        PixelScale scale = film.measured().scale();
        return new Laid(
                pixels(one.light(), scale),
                pixels(film.held().meantOver(side, true), scale),
                pixels(film.held().meantOver(side, false), scale),
                one.hands().stream().map(hand -> at(hand, one, scale)).toList());
    }

    private static HandAt at(HandSight hand, MeasuredSide side, PixelScale scale) {
        double[] pixel = scale.picture(hand.x(), hand.y());
        return new HandAt(
                hand.time() / side.head().period(),
                pixel[0],
                pixel[1],
                hand.error() / scale.metres());
    }

    private static double[][] pixels(double[][] metres, PixelScale scale) {
        int n = metres[0].length;
        double[][] at = new double[2][n];
        for (int i = 0; i < n; i++) {
            double[] pixel = scale.picture(metres[0][i], metres[1][i]);
            at[0][i] = pixel[0];
            at[1][i] = pixel[1];
        }
        return at;
    }

    /** One side's. */
    public Laid side(Side side) {
        return side == Side.LEFT ? left : right;
    }

    /** Where in the cycle a moment of the film is, 0 to 1; seconds from its first frame. */
    public double share(double time) {
        double share = (time + drift.at(time)) / period;
        return share - Math.floor(share);
    }
}
