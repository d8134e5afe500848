package deferent.motion.pairing;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * Turning in stretches with rates of their own, which together close.
 *
 * @param start the angle at the start of the cycle, radians
 * @param stretches in order; their shares sum to 1 and their turns to a whole number
 */
public record Stretches(double start, List<Stretch> stretches) implements SpinLaw {
    /** How the turning runs within a stretch. */
    public enum Ease {
        /** At one rate. */
        EVEN,
        /** From rest to rest, smooth to the second derivative: the stall at either end. */
        RESTING
    }

    /**
     * A share of the cycle (above 0) in which the poi makes {@code turns} turns, any number, any
     * sign.
     */
    public record Stretch(double share, double turns, Ease ease) {
        public Stretch {
            Refusal.positive(share, 1, "share of a stretch", "cycles");
            Refusal.within(turns, -24, 24, "turns of a stretch", "turns");
        }
    }

    public Stretches {
        Refusal.angle(start, "start angle");
        stretches = List.copyOf(stretches);
        double shares = stretches.stream().mapToDouble(Stretch::share).sum();
        double turns = stretches.stream().mapToDouble(Stretch::turns).sum();
        if (Math.abs(shares - 1) > 1e-9) {
            throw new Refusal(
                    "fill " + shares + " of the cycle", "stretches", "give shares that sum to 1");
        }
        if (Math.abs(turns - Math.rint(turns)) > 1e-9) {
            throw new Refusal(
                    "turn "
                            + turns
                            + " times a cycle, so the poi does not come back to where it began",
                    "stretches",
                    "give turns that sum to a whole number");
        }
    }

    @Override
    public int turns() {
        return (int) Math.rint(stretches.stream().mapToDouble(Stretch::turns).sum());
    }

    @Override
    public Course course() {
        int count = stretches.size();
        double[] from = new double[count + 1];
        double[] angle = new double[count + 1];
        angle[0] = start;
        for (int i = 0; i < count; i++) {
            from[i + 1] = from[i] + stretches.get(i).share();
            angle[i + 1] = angle[i] + 2 * Math.PI * stretches.get(i).turns();
        }
        return new Course() {
            @Override
            public Jet at(double phase) {
                double whole = Math.floor(phase);
                int i = 0;
                while (i < count - 1 && phase - whole >= from[i + 1]) {
                    i++;
                }
                return on(i, whole, phase);
            }

            @Override
            public Jet before(double phase) {
                double whole = Math.ceil(phase) - 1;
                int i = 0;
                while (i < count - 1 && phase - whole > from[i + 1]) {
                    i++;
                }
                return on(i, whole, phase);
            }

            private Jet on(int i, double whole, double phase) {
                Stretch stretch = stretches.get(i);
                Jet share =
                        Jet.line((phase - whole - from[i]) / stretch.share(), 1 / stretch.share());
                Jet eased = stretch.ease() == Ease.EVEN ? share : resting(share);
                return eased.times(2 * Math.PI * stretch.turns())
                        .plus(angle[i] + whole * 2 * Math.PI * turns());
            }
        };
    }

    // The quintic 10x³ − 15x⁴ + 6x⁵ goes from 0 to 1 with no speed and no acceleration at either
    // end.
    private static Jet resting(Jet share) {
        double x = share.value();
        return share.into(
                x * x * x * (10 + x * (6 * x - 15)),
                30 * x * x * (x - 1) * (x - 1),
                60 * x * (1 + x * (2 * x - 3)),
                60 * (1 + x * (6 * x - 6)));
    }

    @Override
    public List<Break> breaks() {
        Course course = course();
        List<Break> found = new ArrayList<>();
        double from = 0;
        for (Stretch stretch : stretches) {
            Jet a = course.before(from);
            Jet b = course.at(from);
            if (Math.abs(a.d1() - b.d1()) > 1e-9) {
                found.add(new Break(from, 1, "the poi's rate of turning changes"));
            } else if (Math.abs(a.d2() - b.d2()) > 1e-9) {
                found.add(new Break(from, 2, "the poi starts to turn faster or slower"));
            } else if (Math.abs(a.d3() - b.d3()) > 1e-9) {
                found.add(new Break(from, 3, "the poi leaves its stall"));
            }
            from = Math.min(from + stretch.share(), Math.nextDown(1.0));
        }
        return List.copyOf(found);
    }

    @Override
    public <T> T match(
            Function<Turns, T> even, Function<Stretches, T> inStretches, Function<Swing, T> swing) {
        return inStretches.apply(this);
    }

    /** The same turns in the same stretches, from rest to rest in each. */
    public Stretches resting() {
        return new Stretches(
                start,
                stretches.stream()
                        .map(s -> new Stretch(s.share(), s.turns(), Ease.RESTING))
                        .toList());
    }

    @Override
    public Stretches turned(double angle) {
        return new Stretches(start + angle, stretches);
    }
}
