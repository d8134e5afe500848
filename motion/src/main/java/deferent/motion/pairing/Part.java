package deferent.motion.pairing;

import java.util.OptionalDouble;

/**
 * One hand's share of a pairing.
 *
 * @param motion what hand and poi do over a cycle
 * @param tether hand to head
 * @param place plane and centre
 * @param cycles how many cycles of this motion fit in the pairing's common cycle, 1 to 24
 */
public record Part(Motion motion, Tether tether, Place place, int cycles) {
    public Part {
        Refusal.within(cycles, 1, 24, "cycles", "cycles");
    }

    public Part with(Motion other) {
        return new Part(other, tether, place, cycles);
    }

    public Part with(Tether other) {
        return new Part(motion, other, place, cycles);
    }

    public Part with(Place other) {
        return new Part(motion, tether, other, cycles);
    }

    /**
     * How far at most easing takes the head from where the drawn ideal has it at the same instant,
     * metres; empty where nothing is eased. What a rider's carrier eases is not in it.
     */
    public OptionalDouble eased() {
        double angle = motion.spin().inStretches().map(Stretches::eased).orElse(0.0);
        return angle < 1e-9
                ? OptionalDouble.empty()
                : OptionalDouble.of(2 * tether.length() * Math.sin(Math.min(angle, Math.PI) / 2));
    }

    /** A still hand about which the poi goes; a rider's hand is not still. */
    public boolean still() {
        return motion.path().still();
    }
}
