package deferent.reading.photo;

import deferent.motion.pairing.Refusal;
import java.util.Comparator;
import java.util.List;

/**
 * A speed that cameras mark.
 *
 * <p>Marks are rounded names for powers of two, in thirds of a stop: "1/60" stands for 1/64 s, "1.3
 * s" for 2^(1/3) = 1.26 s, "30 s" for 32 s. Full stops are the rows of ISO 516, Camera shutters –
 * timing (from memory); the thirds between them and the powers behind the marks are common
 * practice, no source, and some shutters keep to the mark instead, so both are given.
 *
 * @param mark as the camera shows it: "1/15", "1.3 s"
 * @param marked what the mark says, seconds
 * @param seconds the power of two it stands for, seconds
 * @param full whether it is a full stop
 */
public record Shutter(String mark, double marked, double seconds, boolean full) {
    private static final List<String> MARKS =
            List.of(
                    "1/8000", "1/6400", "1/5000", "1/4000", "1/3200", "1/2500", "1/2000", "1/1600",
                    "1/1250", "1/1000", "1/800", "1/640", "1/500", "1/400", "1/320", "1/250",
                    "1/200", "1/160", "1/125", "1/100", "1/80", "1/60", "1/50", "1/40", "1/30",
                    "1/25", "1/20", "1/15", "1/13", "1/10", "1/8", "1/6", "1/5", "1/4", "0.3 s",
                    "0.4 s", "1/2", "0.6 s", "0.8 s", "1 s", "1.3 s", "1.6 s", "2 s", "2.5 s",
                    "3.2 s", "4 s", "5 s", "6 s", "8 s", "10 s", "13 s", "15 s", "20 s", "25 s",
                    "30 s");

    /** Every marked speed, shortest first: thirds of a stop from 1/8000 s to 30 s. */
    public static final List<Shutter> MARKED = speeds();

    private static List<Shutter> speeds() {
        int one = MARKS.indexOf("1 s");
        return java.util.stream.IntStream.range(0, MARKS.size())
                .mapToObj(
                        i -> {
                            int thirds = i - one;
                            return new Shutter(
                                    MARKS.get(i),
                                    said(MARKS.get(i)),
                                    Math.pow(2, thirds / 3.0),
                                    Math.floorMod(thirds, 3) == 0);
                        })
                .toList();
    }

    private static double said(String mark) {
        return mark.startsWith("1/")
                ? 1 / Double.parseDouble(mark.substring(2))
                : Double.parseDouble(mark.replace(" s", ""));
    }

    /** The marked speed nearest to a time, counted in stops. */
    public static Shutter nearest(double time) {
        return nearest(time, MARKED);
    }

    /** The full stop nearest to a time, counted in stops. */
    public static Shutter nearestFull(double time) {
        return nearest(time, MARKED.stream().filter(Shutter::full).toList());
    }

    private static Shutter nearest(double time, List<Shutter> among) {
        Refusal.positive(time, 1e6, "exposure", "s");
        return among.stream()
                .min(Comparator.comparingDouble(s -> Math.abs(Math.log(s.seconds() / time))))
                .orElseThrow();
    }

    /** How many stops longer than a time it is; below 0, shorter. */
    public double stopsOver(double time) {
        return Math.log(seconds / time) / Math.log(2);
    }
}
