package deferent.motion.pairing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.hipparchus.geometry.euclidean.twod.Vector2D;

/**
 * A closed path as a short Fourier series: the sum of radius·e^{i(2πks + angle)} over its terms. A
 * still hand has none, a circle one (k = 1), an ellipse and a line two (k = ±1).
 *
 * @param terms by rising k, no k twice; terms of radius 0 are dropped
 */
public record Series(List<Term> terms) implements HandPath {
    public static final Series STILL = new Series(List.of());

    /**
     * A circle of its own: k turns a cycle (not 0, at most 24 either way), radius in metres, start
     * angle.
     */
    public record Term(int k, double radius, double angle) {
        public Term {
            if (k == 0 || Math.abs(k) > 24) {
                throw new Refusal(
                        "turns " + k + " times",
                        "term of a hand path",
                        "give 1 to 24 or −24 to −1");
            }
            Refusal.within(radius, 0, 10, "radius of a hand path's term", "m");
            Refusal.angle(angle, "angle of a hand path's term");
        }
    }

    public Series {
        List<Term> sorted = new ArrayList<>(terms);
        sorted.removeIf(t -> t.radius() == 0);
        sorted.sort(Comparator.comparingInt(Term::k));
        for (int i = 1; i < sorted.size(); i++) {
            if (sorted.get(i).k() == sorted.get(i - 1).k()) {
                throw new Refusal(
                        "has two terms that turn " + sorted.get(i).k() + " times",
                        "hand path",
                        "join them into one");
            }
        }
        terms = List.copyOf(sorted);
    }

    public static Series circle(double radius) {
        return new Series(List.of(new Term(1, radius, 0)));
    }

    /**
     * Semi-axes a along {@code tilt} (where the cycle starts) and b across it; b &lt; 0 goes the
     * other way round.
     */
    public static Series ellipse(double a, double b, double tilt) {
        double out = (a + b) / 2;
        double back = (a - b) / 2;
        return new Series(
                List.of(
                        new Term(1, Math.abs(out), out < 0 ? tilt + Math.PI : tilt),
                        new Term(-1, Math.abs(back), back < 0 ? tilt + Math.PI : tilt)));
    }

    /** To and fro along {@code tilt}, {@code a} metres each side, as a cosine. */
    public static Series line(double a, double tilt) {
        return ellipse(a, 0, tilt);
    }

    @Override
    public Course course() {
        Term[] all = terms.toArray(new Term[0]);
        return new Course() {
            @Override
            public PlaneJet at(double phase) {
                PlaneJet sum = PlaneJet.ORIGIN;
                for (Term t : all) {
                    double rate = 2 * Math.PI * t.k();
                    Jet angle = Jet.line(rate * phase + t.angle(), rate);
                    sum = sum.plus(PlaneJet.polar(t.radius(), angle));
                }
                return sum;
            }

            @Override
            public Vector2D place(double phase) {
                double u = 0;
                double v = 0;
                for (Term t : all) {
                    double angle = 2 * Math.PI * t.k() * phase + t.angle();
                    u += t.radius() * Math.cos(angle);
                    v += t.radius() * Math.sin(angle);
                }
                return new Vector2D(u, v);
            }
        };
    }

    @Override
    public List<Break> breaks() {
        return List.of();
    }

    /**
     * The sum of the terms' radii: reached exactly by circles, ellipses, lines and two-term loops.
     */
    @Override
    public double radius() {
        return terms.stream().mapToDouble(Term::radius).sum();
    }

    @Override
    public Series resized(double radius) {
        return circle().map(only -> new Series(List.of(new Term(only.k(), radius, only.angle()))))
                .orElseGet(() -> scaled(radius / radius()));
    }

    @Override
    public OptionalDouble tilt() {
        if (terms.isEmpty()) {
            return OptionalDouble.empty();
        }
        double first = terms.get(0).angle();
        return OptionalDouble.of(terms.size() == 2 ? (terms.get(1).angle() + first) / 2 : first);
    }

    @Override
    public Optional<Term> circle() {
        return terms.size() == 1 ? Optional.of(terms.get(0)) : Optional.empty();
    }

    @Override
    public Optional<List<Term>> asTerms() {
        return Optional.of(terms);
    }

    /** Whether it is an ellipse, or the line that an ellipse collapses to. */
    public boolean elliptic() {
        return terms.size() == 2 && terms.get(0).k() == -1 && terms.get(1).k() == 1;
    }

    /** Of an ellipse, the semi-axis along its tilt; the one across it. */
    public double along() {
        return terms.get(1).radius() + terms.get(0).radius();
    }

    public double across() {
        return terms.get(1).radius() - terms.get(0).radius();
    }

    private boolean line() {
        return elliptic() && Math.abs(across()) < 1e-9;
    }

    @Override
    public String noun() {
        if (terms.size() == 1) {
            return "circle";
        }
        return terms.isEmpty()
                ? "still hand"
                : line() ? "line" : elliptic() ? "ellipse" : "looped path";
    }

    @Override
    public String goes() {
        if (terms.isEmpty()) {
            return "stays where it is";
        }
        if (sense() == 0) {
            return line() ? "goes to and fro on a line" : "goes along a looped path";
        }
        int k = Math.abs(terms.get(0).k());
        return "goes round "
                + (elliptic() ? "an ellipse" : "a circle")
                + (k == 1 ? "" : k == 2 ? " twice" : " " + k + " times");
    }

    @Override
    public int sense() {
        return terms.size() == 1
                ? Integer.signum(terms.get(0).k())
                : elliptic() && !line() ? (int) Math.signum(across()) : 0;
    }

    @Override
    public <T> T match(
            Function<Form.Sized, T> sized, Function<Series, T> summed, Function<Drawn, T> drawn) {
        return summed.apply(this);
    }

    @Override
    public Series scaled(double factor) {
        return new Series(
                terms.stream()
                        .map(t -> new Term(t.k(), settled(t.radius() * factor), t.angle()))
                        .toList());
    }

    // So that half of 0.275 m is said as 13.75 cm.
    private static double settled(double metres) {
        return Math.rint(metres * 1e15) / 1e15;
    }

    @Override
    public Series turned(double angle) {
        return angle == 0
                ? this
                : new Series(
                        terms.stream()
                                .map(t -> new Term(t.k(), t.radius(), t.angle() + angle))
                                .toList());
    }
}
