package deferent.motion.pairing;

/**
 * A number that depends on phase or time, with its first three derivatives: forward automatic
 * differentiation in one variable, exact to rounding.
 *
 * <p>Our own because Hipparchus stops at the second order for its fast univariate derivatives, and
 * its general structures cost some twenty times as much where every sample of a drag passes through
 * here. Rules: Leibniz for products, Faà di Bruno for compositions (DLMF 1.4(iii)).
 */
public record Jet(double value, double d1, double d2, double d3) {

    public static Jet constant(double value) {
        return new Jet(value, 0, 0, 0);
    }

    /** A straight line: {@code value} now, changing at {@code rate}. */
    public static Jet line(double value, double rate) {
        return new Jet(value, rate, 0, 0);
    }

    public Jet plus(Jet o) {
        return new Jet(value + o.value, d1 + o.d1, d2 + o.d2, d3 + o.d3);
    }

    public Jet minus(Jet o) {
        return new Jet(value - o.value, d1 - o.d1, d2 - o.d2, d3 - o.d3);
    }

    public Jet plus(double o) {
        return new Jet(value + o, d1, d2, d3);
    }

    public Jet times(double k) {
        return new Jet(k * value, k * d1, k * d2, k * d3);
    }

    public Jet times(Jet o) {
        return new Jet(
                value * o.value,
                d1 * o.value + value * o.d1,
                d2 * o.value + 2 * d1 * o.d1 + value * o.d2,
                d3 * o.value + 3 * d2 * o.d1 + 3 * d1 * o.d2 + value * o.d3);
    }

    /** f(this), given f and its first three derivatives at {@code value}. */
    public Jet into(double f0, double f1, double f2, double f3) {
        return new Jet(
                f0,
                f1 * d1,
                f2 * d1 * d1 + f1 * d2,
                f3 * d1 * d1 * d1 + 3 * f2 * d1 * d2 + f1 * d3);
    }

    /** This jet read as a function of a variable that is itself the jet {@code inner}. */
    public Jet of(Jet inner) {
        return inner.into(value, d1, d2, d3);
    }

    public Jet sin() {
        double s = Math.sin(value);
        double c = Math.cos(value);
        return into(s, c, -s, -c);
    }

    public Jet cos() {
        double s = Math.sin(value);
        double c = Math.cos(value);
        return into(c, -s, -c, s);
    }

    /** 1 over this. */
    public Jet reciprocal() {
        double r = 1 / value;
        return into(r, -r * r, 2 * r * r * r, -6 * r * r * r * r);
    }

    /** The same quantity in a variable of which {@code rate} of the old one pass per unit. */
    public Jet atRate(double rate) {
        return new Jet(value, rate * d1, rate * rate * d2, rate * rate * rate * d3);
    }
}
