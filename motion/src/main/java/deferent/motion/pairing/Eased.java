package deferent.motion.pairing;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.analysis.polynomials.PolynomialFunction;

/**
 * How a poi turns in stretches, with a window about each join in which one rate becomes the next.
 *
 * <p>Across a window of width w the rate goes from a to b as a + (b − a)·S(v), v from −½ to ½ and
 *
 * <pre>S = ½ + 35/16·v − 35/4·v³ + 21·v⁵ − 20·v⁷</pre>
 *
 * <p>the polynomial of lowest degree from 0 to 1 whose first three derivatives vanish at both ends:
 * its own derivative is 140·(¼ − v²)³. So the rate is smooth to the third derivative and the angle
 * to the fourth. S − ½ is odd, so a window turns the poi exactly as far as the sharp join does, and
 * beside it the angle is the sharp one. In its middle the angle is 35/512·w·(b − a) of a turn from
 * that.
 *
 * <p>A stretch from rest to rest turns at 30x²(1 − x)², x its own share gone by (the quintic 10x³ −
 * 15x⁴ + 6x⁵ of an angle). Within the windows at its ends that rate rises from none by a factor
 * that goes as S does from 0 to 1, and all of it is made greater by as much as keeps its turns. For
 * its neighbour's window it is a stretch of rate 0; so next to one at an even rate that does not
 * stop at once, the poi is still turning when its rest begins.
 *
 * <p>All of it is polynomials, one a piece, so that derivatives are exact.
 */
final class Eased implements SpinLaw.Course {
    private static final PolynomialFunction STEP =
            polynomial(0.5, 35 / 16.0, 0, -35 / 4.0, 0, 21, 0, -20);
    // S(2v − ½): from 0 at a window's middle to 1 at its end.
    private static final PolynomialFunction RISE =
            polynomial(0, 0, 0, 0, 35 * 16, -84 * 32, 70 * 64, -20 * 128);

    /** The integral of S over the first half of its window. */
    private static final double HALFWAY = 35 / 512.0;

    private static final PolynomialFunction NONE = polynomial(0);
    private static final PolynomialFunction REST = polynomial(0, 0, 30, -60, 30);

    /**
     * The angle from {@code from} on: coefficients by rising powers of (phase − middle)/width,
     * radians.
     */
    private record Piece(double from, double middle, double width, double[] angle) {}

    private final List<Piece> pieces = new ArrayList<>();
    private final double cycle;

    Eased(Stretches law) {
        this.cycle = 2 * Math.PI * law.turns();
        List<Stretches.Stretch> all = law.stretches();
        int count = all.size();
        double from = 0;
        double turned = 0;
        for (int i = 0; i < count; i++) {
            int next = (i + 1) % count;
            double end = turned + all.get(i).turns();
            add(
                    from,
                    all.get(i),
                    step(law, i),
                    law.start() + 2 * Math.PI * (turned + early(law, i)),
                    law.window(i),
                    step(law, next),
                    law.start() + 2 * Math.PI * (end + early(law, next)),
                    law.window(next));
            from += all.get(i).share();
            turned = end;
        }
    }

    /** The rate about the start of stretch {@code i}, but for what rests. */
    private static PolynomialFunction step(Stretches law, int i) {
        return STEP.multiply(polynomial(change(law, i)))
                .add(polynomial(law.stretches().get(i).endRate() - change(law, i)));
    }

    /** Turns made before the middle of a window that the sharp join would make after it. */
    private static double early(Stretches law, int i) {
        return HALFWAY * law.window(i) * change(law, i);
    }

    private static double change(Stretches law, int i) {
        int count = law.stretches().size();
        return law.stretches().get(i).endRate()
                - law.stretches().get((i + count - 1) % count).endRate();
    }

    /** One stretch: half a window, what is between, half a window; the angles are at its ends. */
    private void add(
            double from,
            Stretches.Stretch stretch,
            PolynomialFunction stepBefore,
            double angleBefore,
            double before,
            PolynomialFunction stepAfter,
            double angleAfter,
            double after) {
        double share = stretch.share();
        double low = before / 2 / share;
        double high = 1 - after / 2 / share;
        PolynomialFunction rising = NONE;
        PolynomialFunction resting = NONE;
        PolynomialFunction falling = NONE;
        if (stretch.rests()) {
            rising = scaled(REST, before / share).multiply(RISE);
            falling = scaled(scaled(REST, after / share).multiply(RISE), -1);
            double all =
                    rising.integrate(0, 0.5) * before / share
                            + REST.integrate(low, high)
                            + falling.integrate(-0.5, 0) * after / share;
            PolynomialFunction turns = polynomial(stretch.turns() / share / all);
            rising = rising.multiply(turns);
            resting = REST.multiply(turns);
            falling = falling.multiply(turns);
        }
        PolynomialFunction first = angle(stepBefore.add(rising), before, 0, angleBefore);
        PolynomialFunction even = resting.add(polynomial(stretch.endRate()));
        double reached = before == 0 ? angleBefore : first.value(0.5);
        add(from, from, before, 0.5, first);
        add(from + low * share, from, share, high - low, angle(even, share, low, reached));
        double end = from + share;
        add(end - after / 2, end, after, 0.5, angle(stepAfter.add(falling), after, 0, angleAfter));
    }

    /** The angle of that rate, turns a cycle, where it is {@code known} at {@code place}. */
    private static PolynomialFunction angle(
            PolynomialFunction rate, double width, double place, double known) {
        PolynomialFunction turned = rate.antiDerivative().multiply(polynomial(2 * Math.PI * width));
        return turned.add(polynomial(known - turned.value(place)));
    }

    /** Adds a piece so many widths long, if it has any length. */
    private void add(
            double from, double middle, double width, double length, PolynomialFunction angle) {
        if (length * width > 1e-12) {
            pieces.add(new Piece(from, middle, width, angle.getCoefficients()));
        }
    }

    /** As a function of its variable over {@code factor}. */
    private static PolynomialFunction scaled(PolynomialFunction of, double factor) {
        double[] coefficients = of.getCoefficients();
        double power = 1;
        for (int i = 0; i < coefficients.length; i++) {
            coefficients[i] *= power;
            power *= factor;
        }
        return polynomial(coefficients);
    }

    private static PolynomialFunction polynomial(double... coefficients) {
        return new PolynomialFunction(coefficients);
    }

    @Override
    public Jet at(double phase) {
        double whole = Math.floor(phase);
        return jet(after(phase - whole), whole, phase);
    }

    @Override
    public Jet before(double phase) {
        double whole = Math.ceil(phase) - 1;
        int i = 0;
        while (i + 1 < pieces.size() && phase - whole > pieces.get(i + 1).from()) {
            i++;
        }
        return jet(pieces.get(i), whole, phase);
    }

    @Override
    public double angle(double phase) {
        double whole = Math.floor(phase);
        Piece piece = after(phase - whole);
        double x = (phase - whole - piece.middle()) / piece.width();
        double angle = 0;
        for (int k = piece.angle().length - 1; k >= 0; k--) {
            angle = angle * x + piece.angle()[k];
        }
        return angle + whole * cycle;
    }

    private Piece after(double share) {
        int i = 0;
        while (i + 1 < pieces.size() && share >= pieces.get(i + 1).from()) {
            i++;
        }
        return pieces.get(i);
    }

    // Horner's rule for a polynomial and its derivatives.
    private Jet jet(Piece piece, double whole, double phase) {
        double x = (phase - whole - piece.middle()) / piece.width();
        double value = 0;
        double d1 = 0;
        double half2 = 0;
        double sixth3 = 0;
        for (int k = piece.angle().length - 1; k >= 0; k--) {
            sixth3 = sixth3 * x + half2;
            half2 = half2 * x + d1;
            d1 = d1 * x + value;
            value = value * x + piece.angle()[k];
        }
        return new Jet(value + whole * cycle, d1, 2 * half2, 6 * sixth3).atRate(1 / piece.width());
    }
}
