package deferent.reading.photo;

import java.util.Optional;

/**
 * How long a light takes for exactly one figure, and the marked shutter speeds about that time.
 *
 * @param time seconds, by a shutter held open by hand or remote
 * @param full the nearest full stop
 * @param third the nearest third of a stop
 * @param closes the shortest marked speed that leaves no part of the figure undrawn; empty where
 *     the figure takes longer than any marked speed
 */
public record FigureTime(double time, Shutter full, Shutter third, Optional<Shutter> closes) {
    // A figure open by less than a thousandth of it is closed to any eye.
    private static final double CLOSED = 1e-3;

    static FigureTime of(double time) {
        return new FigureTime(
                time,
                Shutter.nearestFull(time),
                Shutter.nearest(time),
                Shutter.MARKED.stream()
                        .filter(s -> s.seconds() >= time * (1 - CLOSED))
                        .findFirst());
    }

    /** How many figures an exposure of that many seconds draws. */
    public double figures(double seconds) {
        return seconds / time;
    }
}
