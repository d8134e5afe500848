package deferent.record.log;

import deferent.motion.shared.Side;
import deferent.record.LogEntry;
import deferent.search.set.SetWork;
import deferent.tell.TellLog;
import deferent.tell.Told;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What grips and shoulders worked in the last seven days, today among them, against a usual week of
 * the four before: force times time, as a set's work ({@link SetWork}).
 *
 * <p>That a load which rises fast goes with more injuries was seen in team players: 1.5 times the
 * mean of the weeks around it and more is called a danger there (Gabbett, "The training-injury
 * prevention paradox: should athletes be training smarter and harder?", British Journal of Sports
 * Medicine 50 (2016) 273-280). Impellizzeri, Woodcock, Coutts, Fanchini, McCall and Vigotsky ("What
 * role do chronic workloads play in the acute to chronic workload ratio? Time to dismiss ACWR and
 * its underlying theory", Sports Medicine, 2020, doi:10.1007/s40279-020-01378-6) found similar
 * effects with random numbers in place of those weeks, and that neither the ratio nor the week
 * alone foretells an injury noticeably better than nothing. And a rise of a tenth a week spared
 * novice runners no injury in a trial (20.8 % against 20.3 %; Buist and others, "No effect of a
 * graded training program on the number of running-related injuries in novice runners", American
 * Journal of Sports Medicine 36 (2008) 33-39). None of them is of poi. So the threshold is our
 * choice, the week is not counted into what it is held against, and what is told is a reason to go
 * easy, never that more is safe.
 *
 * @param minutes of the last seven days
 * @param usualMinutes of a usual week of the four before
 * @param arms grip and shoulder of both arms
 * @param unweighed minutes, of all five weeks, whose pattern could not be read: they count as the
 *     mean of the others, or as minutes alone where there are none
 * @param pause whether the four weeks before are empty, and something was logged before them
 */
public record RecentWork(
        double minutes, double usualMinutes, List<Worked> arms, double unweighed, boolean pause) {
    static final int WEEK = 7;
    static final int BEFORE = 28;

    /** The log has to reach back this many days before the last seven: our choice. */
    static final int LEAST_BEFORE = 14;

    /** Told from so many times a usual week's work on: our choice. */
    public static final double RISE = 1.5;

    /** A week of fewer minutes is never too much at once: our choice. */
    public static final double LEAST_MINUTES = 60;

    private static final double ALIKE = 0.9; // from here on both sides are said

    /** What is worked with. */
    public enum Spot {
        GRIP,
        SHOULDER
    }

    /**
     * The work of one grip or shoulder, N·s.
     *
     * @param week in the last seven days
     * @param usual in a usual week of the four before
     */
    public record Worked(Spot spot, Side side, double week, double usual) {
        /** How many times as much as usual. */
        public double times() {
            return week / usual;
        }
    }

    public RecentWork {
        arms = List.copyOf(arms);
    }

    /** Empty where the log does not reach back far enough to know what is usual. */
    public static Optional<RecentWork> of(
            List<LogEntry> entries, LocalDate today, ArmForces forces) {
        LocalDate first =
                entries.stream().map(LogEntry::date).min(LocalDate::compareTo).orElse(today);
        LocalDate begins = today.minusDays(WEEK - 1L);
        long reach = ChronoUnit.DAYS.between(first, begins);
        if (reach < LEAST_BEFORE) {
            return Optional.empty();
        }
        double weeksBefore = Math.min(BEFORE, reach) / (double) WEEK;
        List<LogEntry> late = between(entries, begins, today);
        List<LogEntry> early = between(entries, begins.minusDays(BEFORE), begins.minusDays(1));
        List<LogEntry> all = new ArrayList<>(early);
        all.addAll(late);
        List<Worked> arms = new ArrayList<>();
        for (Spot spot : Spot.values()) {
            for (Side side : Side.values()) {
                Weighing weighing = new Weighing(spot, side, forces, all);
                arms.add(
                        new Worked(
                                spot,
                                side,
                                weighing.work(late),
                                weighing.work(early) / weeksBefore));
            }
        }
        return Optional.of(
                new RecentWork(
                        minutes(late),
                        minutes(early) / weeksBefore,
                        arms,
                        minutes(all.stream().filter(e -> forces.of(e).isEmpty()).toList()),
                        early.isEmpty()));
    }

    private static List<LogEntry> between(List<LogEntry> entries, LocalDate from, LocalDate to) {
        return entries.stream()
                .filter(e -> !e.date().isBefore(from) && !e.date().isAfter(to))
                .toList();
    }

    private static double minutes(List<LogEntry> entries) {
        return entries.stream().mapToDouble(LogEntry::minutes).sum();
    }

    /** One spot's force over the minutes of entries. */
    private static final class Weighing {
        private final Spot spot;
        private final Side side;
        private final ArmForces forces;
        private final double mean;

        Weighing(Spot spot, Side side, ArmForces forces, List<LogEntry> all) {
            this.spot = spot;
            this.side = side;
            this.forces = forces;
            List<LogEntry> read = all.stream().filter(e -> forces.of(e).isPresent()).toList();
            double sum = read.stream().mapToDouble(e -> 60 * e.minutes() * force(e, 0)).sum();
            this.mean = read.isEmpty() ? 1 : sum / (60 * RecentWork.minutes(read));
        }

        double work(List<LogEntry> entries) {
            return entries.stream().mapToDouble(e -> 60 * e.minutes() * force(e, mean)).sum();
        }

        private double force(LogEntry entry, double unread) {
            Optional<Map<Side, SetWork.Load>> loads = forces.of(entry);
            if (loads.isEmpty()) {
                return unread;
            }
            SetWork.Load load = loads.get().get(side);
            if (load == null) {
                return 0;
            }
            return spot == Spot.GRIP ? load.grip() : load.shoulder();
        }
    }

    /** What worked most above its usual; empty where nothing is usual yet. */
    public Optional<Worked> most() {
        return arms.stream()
                .filter(arm -> arm.usual() > 0)
                // What differs by less than a hundredth is the same; grips stand before shoulders.
                .max(Comparator.comparingLong(arm -> Math.round(100 * arm.times())));
    }

    /** In words: at most one, and none where there is nothing to warn of. */
    public Optional<Told> told() {
        if (pause) {
            return minutes > 0 ? Optional.of(TellLog.afterAPause()) : Optional.empty();
        }
        return most().filter(arm -> arm.times() >= RISE && minutes >= LEAST_MINUTES)
                .map(arm -> TellLog.rise(what(arm), arm.times(), minutes, usualMinutes, weighed()));
    }

    private String what(Worked arm) {
        boolean both =
                arms.stream()
                                .filter(other -> other.spot() == arm.spot() && other.usual() > 0)
                                .filter(other -> other.times() > ALIKE * arm.times())
                                .count()
                        > 1;
        return switch (arm.spot()) {
            case GRIP -> both ? "both your grips" : "your " + arm.side().word() + " grip";
            case SHOULDER ->
                    both ? "both your shoulders" : "your " + arm.side().word() + " shoulder";
        };
    }

    private String weighed() {
        return "each minute weighed by what its pattern asks at its tempo, of the ideal figure and"
                + " usual poi"
                + (unweighed > 0
                        ? " ("
                                + TellLog.minutes(unweighed)
                                + " could not be weighed and count as the mean)."
                        : ".");
    }
}
