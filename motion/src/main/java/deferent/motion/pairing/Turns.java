package deferent.motion.pairing;

import java.util.List;
import java.util.function.Function;

/**
 * Even turning: the angle is start + 2π·turns·phase.
 *
 * @param turns whole poi turns a cycle, negative against the hand (antispin), −24 to 24; at 0 the
 *     tether keeps pointing one way
 * @param start radians
 */
public record Turns(int turns, double start) implements SpinLaw {
    public Turns {
        Refusal.within(turns, -24, 24, "poi turns a cycle", "turns");
        Refusal.angle(start, "start angle");
    }

    @Override
    public Course course() {
        double rate = 2 * Math.PI * turns;
        return new Course() {
            @Override
            public Jet at(double phase) {
                return Jet.line(angle(phase), rate);
            }

            @Override
            public double angle(double phase) {
                return start + rate * phase;
            }
        };
    }

    @Override
    public List<Break> breaks() {
        return List.of();
    }

    @Override
    public <T> T match(
            Function<Turns, T> even, Function<Stretches, T> inStretches, Function<Swing, T> swing) {
        return even.apply(this);
    }

    @Override
    public Turns turned(double angle) {
        return new Turns(turns, start + angle);
    }
}
