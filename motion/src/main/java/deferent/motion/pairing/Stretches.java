package deferent.motion.pairing;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * Turning in stretches with rates of their own, which together close.
 *
 * <p>Drawn ideally, one rate becomes the next at once, which takes an infinite force. Eased, it
 * does so over a window about the join, as {@link Eased} has it: the angle, and with it the head,
 * is then four times continuously differentiable, since the hand that keeps a figure hangs on the
 * head's acceleration and that hand's acceleration on the head's fourth derivative. A window is as
 * wide as {@code ease}, or as the shorter of the two stretches it joins where that is less, so that
 * two windows meet at most in the middle of a stretch. A stretch shorter than {@link #LEAST_EASE}
 * leaves no room: its ends stay sharp, and are breaks.
 *
 * @param start the angle that the sharp turning has at the start of the cycle, radians
 * @param stretches in order; their shares sum to 1 and their turns to a whole number
 * @param ease share of the cycle over which one rate becomes the next: 0 for at once, or from
 *     {@link #LEAST_EASE} to 1
 */
public record Stretches(double start, List<Stretch> stretches, double ease) implements SpinLaw {
    /** What it takes where nothing is said of it. */
    public static final double USUAL_EASE = 0.125;

    /** In a narrower window forces would be too great and too short to be read. */
    public static final double LEAST_EASE = 0.01;

    private static final int LOOKS = 720;

    /** How the turning runs within a stretch. */
    public enum Ease {
        /** At one rate. */
        EVEN,
        /**
         * From rest to rest, the stall at either end: smooth to the second derivative, or where it
         * is eased to the fourth.
         */
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

        boolean rests() {
            return ease == Ease.RESTING;
        }

        /** Turns a cycle at both its ends. */
        double endRate() {
            return rests() ? 0 : turns / share;
        }
    }

    public Stretches {
        Refusal.angle(start, "start angle");
        stretches = List.copyOf(stretches);
        if (ease != 0 && !(ease >= LEAST_EASE && ease <= 1)) {
            throw new Refusal(
                    "is " + Plain.number(ease, "of the cycle"),
                    "ease",
                    "give from "
                            + LEAST_EASE
                            + " to 1 of the cycle, or 0 for a rate that changes at once");
        }
        // Never −0.0.
        ease += 0.0;
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

    /** The same with the usual ease. */
    public Stretches(double start, List<Stretch> stretches) {
        this(start, stretches, USUAL_EASE);
    }

    @Override
    public Course course() {
        return new Eased(this);
    }

    /** Width of the window about the start of stretch {@code i}, cycles; 0 where it stays sharp. */
    double window(int i) {
        Stretch b = stretches.get(i);
        Stretch a = stretches.get(i == 0 ? stretches.size() - 1 : i - 1);
        boolean same = Math.abs(a.endRate() - b.endRate()) < 1e-10;
        if (same && !a.rests() && !b.rests()) {
            return 0;
        }
        double width = Math.min(ease, Math.min(a.share(), b.share()));
        return width < LEAST_EASE ? 0 : width;
    }

    /** As {@link SpinLaw#liveliest}; a window counts as half a turn. */
    int fastest() {
        int most = 0;
        for (int i = 0; i < stretches.size(); i++) {
            Stretch s = stretches.get(i);
            double joined = window(i) == 0 ? 0 : 0.5 / window(i);
            most =
                    Math.max(
                            most,
                            (int) Math.ceil(Math.max(joined, Math.abs(s.turns()) / s.share())));
        }
        return most;
    }

    /** The greatest angle by which easing takes the tether from the drawn ideal, radians. */
    public double eased() {
        Course drawn = withEase(0).course();
        Course course = course();
        double most = 0;
        double join = 0;
        for (Stretch stretch : stretches) {
            // Even turning is taken farthest in the middle of a window.
            most = Math.max(most, Math.abs(course.angle(join) - drawn.angle(join)));
            join += stretch.share();
        }
        for (int i = 0; i < LOOKS; i++) {
            double phase = (double) i / LOOKS;
            most = Math.max(most, Math.abs(course.angle(phase) - drawn.angle(phase)));
        }
        return most;
    }

    @Override
    public List<Break> breaks() {
        Course course = course();
        List<Break> found = new ArrayList<>();
        double from = 0;
        for (int i = 0; i < stretches.size(); i++) {
            if (window(i) == 0) {
                Jet a = course.before(from);
                Jet b = course.at(from);
                if (Math.abs(a.d1() - b.d1()) > 1e-9) {
                    found.add(new Break(from, 1, "the poi's rate of turning changes"));
                } else if (Math.abs(a.d2() - b.d2()) > 1e-9) {
                    found.add(new Break(from, 2, "the poi starts to turn faster or slower"));
                } else if (Math.abs(a.d3() - b.d3()) > 1e-9) {
                    found.add(new Break(from, 3, "the poi leaves its stall"));
                }
            }
            from = Math.min(from + stretches.get(i).share(), Math.nextDown(1.0));
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
                        .toList(),
                ease);
    }

    public Stretches withEase(double other) {
        return new Stretches(start, stretches, other);
    }

    @Override
    public Stretches turned(double angle) {
        return new Stretches(start + angle, stretches, ease);
    }
}
