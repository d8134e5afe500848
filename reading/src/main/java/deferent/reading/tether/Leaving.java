package deferent.reading.tether;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.CancellationException;

/** What a way of correcting leaves of a slip after a cycle, and the gains that leave least. */
interface Leaving {
    /** What is left, times as much as there was: the greatest multiplier's modulus. */
    double left(Gains gains);

    /** Shares of {@link Gains#MOST} to begin a search at: close about nought, wide beyond. */
    List<Double> SHARES =
            List.of(
                    -0.5, -0.25, -0.12, -0.06, -0.025, -0.008, 0.0, 0.008, 0.025, 0.06, 0.12, 0.25,
                    0.5);

    /** How often a step of the search is halved. */
    int HALVINGS = 5;

    /** Tries to step on with one length of step. */
    int TRIES = 6;

    /** Beginnings that are followed. */
    default int followed() {
        return 2;
    }

    /**
     * The gains that leave least.
     *
     * @param left with them, where they are off by as much as senses are
     */
    record Best(Gains gains, double left) {
        boolean holds() {
            return left < 1;
        }
    }

    /** What is left at the worst where a slip is felt by that share too small or too great. */
    default double left(Gains gains, double unsure) {
        return unsure == 0
                ? left(gains)
                : Math.max(left(gains.times(1 - unsure)), left(gains.times(1 + unsure)));
    }

    /**
     * Looked for from a grid all over what a person does, its best few points followed downhill by
     * steps along either gain and both, ever halved (a compass search; Kolda, Lewis and Torczon,
     * SIAM Review 45 (2003)); no gains may be better than those it finds.
     */
    default Best best(double unsure) {
        List<Best> begun = new ArrayList<>();
        for (double place : SHARES) {
            stop();
            for (double speed : SHARES) {
                Gains gains = Gains.MOST.times(place, speed);
                // What is no better than those to be followed need not be known exactly.
                double enough =
                        begun.size() < followed()
                                ? Double.POSITIVE_INFINITY
                                : begun.get(followed() - 1).left();
                double left = left(gains.times(1 + unsure));
                if (left < enough) {
                    begun.add(new Best(gains, left(gains, unsure)));
                    begun.sort(Comparator.comparingDouble(Best::left));
                }
            }
        }
        Best best = begun.get(0);
        for (Best start : begun.subList(0, Math.min(followed(), begun.size()))) {
            Best found = from(start, unsure);
            best = found.left() < best.left() ? found : best;
        }
        return best;
    }

    /** The same from gains of one's own alone. */
    default Best near(Gains gains, double unsure) {
        return from(new Best(gains, left(gains, unsure)), unsure);
    }

    private Best from(Best start, double unsure) {
        Best best = start;
        double place = Math.max(0.3 * Math.abs(best.gains().place()), 0.01);
        double speed = Math.max(0.3 * Math.abs(best.gains().speed()), 0.002);
        for (int halving = 0; halving < HALVINGS; halving++) {
            for (int tries = 0; tries < TRIES; tries++) {
                stop();
                Best next = best;
                for (int way = 0; way < 8; way++) {
                    double a = Math.rint(Math.cos(way * Math.PI / 4));
                    double b = Math.rint(Math.sin(way * Math.PI / 4));
                    Gains gains =
                            new Gains(
                                    best.gains().place() + a * place,
                                    best.gains().speed() + b * speed);
                    if (gains.within(Gains.MOST)) {
                        double left = left(gains, unsure);
                        next = left < next.left() ? new Best(gains, left) : next;
                    }
                }
                if (next.left() >= best.left()) {
                    break;
                }
                best = next;
            }
            place /= 2;
            speed /= 2;
        }
        return best;
    }

    /** Ends where the work was called off. */
    static void stop() {
        if (Thread.currentThread().isInterrupted()) {
            throw new CancellationException("called off");
        }
    }
}
