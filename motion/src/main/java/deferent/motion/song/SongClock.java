package deferent.motion.song;

import deferent.motion.pairing.Refusal;
import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.analysis.interpolation.LoessInterpolator;

/**
 * A song as the clock of what is planned at one even tempo: which time of the song each second of
 * the plan falls on.
 *
 * <p>Whoever spins to a song follows its drift but no beat that falls early or late by itself. So
 * the kept times are smoothed: local regression (Cleveland, 1979; Hipparchus), once more over what
 * that leaves (Tukey's twicing, 1977), so that a drift that bends is not cut short. What comes out
 * controls a uniform cubic B-spline over the beats. Such a spline is twice differentiable, runs on
 * evenly at its ends, and rises wherever its control points do (its slope is a mean of theirs; de
 * Boor, 1978). Where a song jumps so that the smoothed times would not rise, they are smoothed
 * less, at last not at all: time never stands still or runs back.
 *
 * <p>Plan seconds from 0, the first falling on beat {@link #fromBeat}; song seconds from the start
 * of the sound.
 */
public final class SongClock {
    /** A beat is smoothed over so many around it (our choice). */
    private static final double OVER = 13;

    private static final int ROBUST = 2;
    private static final double ACCURACY = 1e-9;

    private final Beats beats;
    private final double fromBeat;
    private final double beatsAMinute;
    private final double[] control;

    private SongClock(Beats beats, double fromBeat, double beatsAMinute, double[] control) {
        this.beats = beats;
        this.fromBeat = fromBeat;
        this.beatsAMinute = beatsAMinute;
        this.control = control;
    }

    /**
     * The clock of a plan.
     *
     * @param fromBeat the beat on which the plan begins; between beats, before the first and after
     *     the last too
     * @param beatsAMinute the even tempo at which the plan was made
     */
    public static SongClock of(Beats beats, double fromBeat, double beatsAMinute) {
        Refusal.finite(fromBeat, "the beat on which a plan begins");
        Refusal.positive(beatsAMinute, 1e4, "the tempo of a plan", "beats a minute");
        return new SongClock(beats, fromBeat, beatsAMinute, smoothed(beats));
    }

    private static double[] smoothed(Beats beats) {
        // The regression wants a few; a short song goes on as it does beyond its last beat.
        int count = Math.max(beats.times().size(), 4);
        double[] kept = IntStream.range(0, count).mapToDouble(beats::time).toArray();
        double[] once = regressed(kept);
        double[] left = new double[count];
        for (int i = 0; i < count; i++) {
            left[i] = kept[i] - onKnot(once, i);
        }
        double[] over = regressed(left);
        double[] twice = IntStream.range(0, count).mapToDouble(i -> once[i] + over[i]).toArray();
        return List.of(twice, once).stream().filter(SongClock::rises).findFirst().orElse(kept);
    }

    private static double[] regressed(double[] values) {
        double[] places = IntStream.range(0, values.length).asDoubleStream().toArray();
        double share = Math.min(1, (OVER + 0.5) / values.length);
        return new LoessInterpolator(share, ROBUST, ACCURACY).smooth(places, values);
    }

    private static boolean rises(double[] control) {
        return IntStream.range(1, control.length).allMatch(i -> control[i] > control[i - 1]);
    }

    /** A control point; beyond the ends they go on in a line. */
    private static double at(double[] control, int i) {
        int last = control.length - 1;
        return i < 0
                ? control[0] + i * (control[1] - control[0])
                : i > last
                        ? control[last] + (i - last) * (control[last] - control[last - 1])
                        : control[i];
    }

    private static double onKnot(double[] control, int i) {
        return (at(control, i - 1) + 4 * at(control, i) + at(control, i + 1)) / 6;
    }

    /** The spline or one of its derivatives by the beat. */
    private double spline(double beat, int derivative) {
        int knot = (int) Math.floor(beat);
        double x = beat - knot;
        double a = at(control, knot - 1);
        double b = at(control, knot);
        double c = at(control, knot + 1);
        double d = at(control, knot + 2);
        double y = 1 - x;
        return switch (derivative) {
            case 0 ->
                    (a * y * y * y
                                    + b * (4 + 3 * x * x * (x - 2))
                                    + c * (4 + 3 * y * y * (y - 2))
                                    + d * x * x * x)
                            / 6;
            case 1 -> ((b - a) * y * y + (c - b) * (1 + 2 * x * y) + (d - c) * x * x) / 2;
            default -> (a - 2 * b + c) * y + (b - 2 * c + d) * x;
        };
    }

    /** The beats as they are kept, of which this is the smooth course. */
    public Beats beats() {
        return beats;
    }

    /** The beat on which the plan begins. */
    public double fromBeat() {
        return fromBeat;
    }

    /** The even tempo at which the plan was made, beats a minute. */
    public double beatsAMinute() {
        return beatsAMinute;
    }

    /** Which beat, or place between beats, is on at a time of the plan, seconds. */
    public double beat(double plan) {
        return fromBeat + plan * beatsAMinute / 60;
    }

    /** When in the plan a beat is on, seconds. */
    public double onBeat(double beat) {
        return (beat - fromBeat) * 60 / beatsAMinute;
    }

    /** When in the song a time of the plan comes, seconds from the start of the sound. */
    public double time(double plan) {
        return spline(beat(plan), 0);
    }

    /** When in the plan a time of the song comes, seconds: {@link #time} the other way. */
    public double plan(double time) {
        int low = 0;
        int high = control.length - 1;
        if (time <= onKnot(control, low)) {
            return onBeat((time - control[0]) / (control[1] - control[0]));
        }
        if (time >= onKnot(control, high)) {
            return onBeat(high + (time - control[high]) / (control[high] - control[high - 1]));
        }
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (onKnot(control, middle) <= time) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return onBeat(inSpan(low, time));
    }

    /** By Newton's steps, halving where one would leave the span. */
    private double inSpan(int knot, double time) {
        double from = knot;
        double to = knot + 1.0;
        double beat = knot + 0.5;
        for (int i = 0; i < 60 && to - from > 1e-13 * (1 + Math.abs(beat)); i++) {
            double over = spline(beat, 0) - time;
            if (over == 0) {
                return beat;
            }
            if (over > 0) {
                to = beat;
            } else {
                from = beat;
            }
            double next = beat - over / spline(beat, 1);
            boolean inside = next > from && next < to;
            if (inside && Math.abs(next - beat) < 1e-14 * (1 + Math.abs(beat))) {
                return next;
            }
            beat = inside ? next : (from + to) / 2;
        }
        return beat;
    }

    /** How much faster than planned the song goes at a time of the plan, seconds. */
    public double rate(double plan) {
        return tempo(plan) / beatsAMinute;
    }

    /** The song's tempo at a time of the plan, beats a minute. */
    public double tempo(double plan) {
        return tempoOn(beat(plan));
    }

    /**
     * Slowest and fastest tempo of a part of the song.
     *
     * @param slowest beats a minute
     * @param fastest beats a minute
     */
    public record Tempi(double slowest, double fastest) {
        Tempi and(double tempo) {
            return new Tempi(Math.min(slowest, tempo), Math.max(fastest, tempo));
        }
    }

    /**
     * The tempi between two times of the plan, seconds. The slope is extreme at an end, at a beat,
     * or where the bend changes sign between two.
     */
    public Tempi tempi(double from, double to) {
        double first = beat(Math.min(from, to));
        double last = beat(Math.max(from, to));
        Tempi tempi = new Tempi(tempoOn(first), tempoOn(first)).and(tempoOn(last));
        // Beyond its ends it runs on evenly, so there is nothing to look for.
        int begin = (int) Math.floor(Math.max(first, -1));
        for (int knot = begin; knot < Math.min(last, control.length); knot++) {
            double here = spline(knot, 2);
            double next = spline(knot + 1.0, 2);
            double flat = here * next < 0 ? knot + here / (here - next) : knot;
            for (double beat : new double[] {knot, flat}) {
                if (beat > first && beat < last) {
                    tempi = tempi.and(tempoOn(beat));
                }
            }
        }
        return tempi;
    }

    private double tempoOn(double beat) {
        return 60 / spline(beat, 1);
    }

    /**
     * How far the smooth course is from the beats that are kept, at most, seconds, between two
     * times of the plan.
     */
    public double farthest(double from, double to) {
        int first = (int) Math.max(0, Math.ceil(beat(from)));
        int last = (int) Math.min(beats.times().size() - 1.0, Math.floor(beat(to)));
        return IntStream.rangeClosed(first, last)
                .mapToDouble(i -> Math.abs(spline(i, 0) - beats.times().get(i)))
                .max()
                .orElse(0);
    }
}
