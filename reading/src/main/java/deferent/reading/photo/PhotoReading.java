package deferent.reading.photo;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.util.ArithmeticUtils;

/**
 * How to photograph a pairing at its tempo, and what an onlooker sees of it.
 *
 * @param diameter of the light, metres
 * @param tempo hand cycles a minute, or poi beats where both hands are still
 * @param common the shortest time after which both lights are back on the same way: both figures
 *     closed at once
 * @param left the left head's light; empty where it stays in place
 * @param right the right head's
 * @param led how the lights blink, where that was said
 * @param shutter an exposure that was asked about, seconds
 */
public record PhotoReading(
        double diameter,
        double tempo,
        FigureTime common,
        Optional<HeadLight> left,
        Optional<HeadLight> right,
        Optional<Led> led,
        OptionalDouble shutter) {
    /** More flashes or turns than this in a second ask for care: WCAG 2.3.1. */
    public static final double FLASHES = 3;

    /**
     * Flicker up to here can trouble people with photosensitive epilepsy, Hz: Fisher, Harding,
     * Erba, Barkley and Wilkins, Epilepsia 46 (2005), from memory: 1 to 65, worst from 15 to 25.
     */
    public static final double FLICKER = 65;

    /** With steady lights. */
    public static PhotoReading of(Trace trace, double diameter) {
        return of(trace, diameter, Optional.empty(), OptionalDouble.empty());
    }

    /**
     * How to photograph a trace.
     *
     * @param diameter of the light, metres, above 0, at most 0.5
     * @param shutter an exposure to tell about, seconds, at most an hour
     */
    public static PhotoReading of(
            Trace trace, double diameter, Optional<Led> led, OptionalDouble shutter) {
        Refusal.positive(diameter, 0.5, "diameter of the light", "m");
        shutter.ifPresent(s -> Refusal.positive(s, 3600, "shutter time", "s"));
        Way leftWay = Way.of(trace, Side.LEFT);
        Way rightWay = Way.of(trace, Side.RIGHT);
        return new PhotoReading(
                diameter,
                trace.pairing().tempo(),
                FigureTime.of(
                        trace.period() / shared(rounds(trace, leftWay), rounds(trace, rightWay))),
                light(trace, Side.LEFT, leftWay, diameter, led),
                light(trace, Side.RIGHT, rightWay, diameter, led),
                led,
                shutter);
    }

    /** How many figures a trace holds; 0 of a light that stays in place and closes none. */
    private static long rounds(Trace trace, Way way) {
        return way.still() ? 0 : Math.round(trace.period() / way.period());
    }

    /** Into how many parts a trace falls that are whole figures of both; 1 where neither moves. */
    private static long shared(long a, long b) {
        return Math.max(1, ArithmeticUtils.gcd(a, b));
    }

    private static Optional<HeadLight> light(
            Trace trace, Side side, Way way, double diameter, Optional<Led> led) {
        if (way.still()) {
            return Optional.empty();
        }
        double speed = way.fastest();
        return Optional.of(
                new HeadLight(
                        side,
                        FigureTime.of(way.period()),
                        way.length(),
                        speed,
                        speed / diameter,
                        way.length() / way.period() / diameter,
                        turns(trace, side),
                        Persistence.of(way.period()),
                        led.map(l -> Blinks.of(l, way, diameter))));
    }

    /** The angle the tether sweeps in a second, in turns, each way counted. */
    private static double turns(Trace trace, Side side) {
        int cycles = trace.pairing().part(side).cycles();
        int count =
                360 * cycles * (1 + Math.abs(trace.pairing().part(side).motion().spin().turns()));
        double angle = 0;
        Vector3D last = tether(trace, side, 0);
        for (int i = 1; i <= count; i++) {
            Vector3D next = tether(trace, side, trace.period() * i / count);
            angle += Vector3D.angle(last, next);
            last = next;
        }
        return angle / (2 * Math.PI) / trace.period();
    }

    private static Vector3D tether(Trace trace, Side side, double elapsed) {
        double time = trace.interval().start() + elapsed;
        return trace.head(side).position(time).subtract(trace.hand(side).position(time));
    }

    /**
     * The one shutter time that is told of, seconds: the one asked about, or the one advised, which
     * is exactly one whole figure of both lights.
     */
    public double open() {
        return shutter.orElse(common.time());
    }

    public Optional<HeadLight> light(Side side) {
        return side == Side.LEFT ? left : right;
    }

    /** The lights that move. */
    public List<HeadLight> lights() {
        return Stream.of(left, right).flatMap(Optional::stream).toList();
    }

    /** The frame rate above which no light leaves gaps; 0 where none moves. */
    public double frames() {
        return lights().stream().mapToDouble(HeadLight::frames).max().orElse(0);
    }

    /** Turns a second of the faster poi; 0 where none moves. */
    public double turns() {
        return lights().stream().mapToDouble(HeadLight::turns).max().orElse(0);
    }
}
