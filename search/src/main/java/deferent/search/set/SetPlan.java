package deferent.search.set;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Heading;
import deferent.search.transition.Hindrance;
import deferent.search.transition.Transition;
import deferent.search.transition.Transitions;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * A set worked out: how long each pattern is kept, what leads on from it, and when.
 *
 * <p>Each pattern is kept for nearly as many counts as were asked, and left when a transition can
 * leave it. Of all there are between each two, those are taken with which the whole is gentlest: a
 * grade harder is shunned as much as being {@value #GRADE} counts off, and of those as hard those
 * that were listed first are taken before others ({@link Chain}; the weights are our choice). Where
 * nothing leads on, or a pattern is gone, what stands after it begins anew with its own cycle.
 *
 * <p>To a song the patterns have its tempo ({@link ToSong#fitted}), and only those transitions are
 * taken with which each one's counts fall on beats as the first one's do. A pattern's counts go on
 * until the next one's begin, and beginning off the bar is shunned as much as {@link SongBars#OFF}
 * counts. What keeps a time of its own is not led on from, and what comes after it begins anew on a
 * beat.
 *
 * @param stays the patterns; empty where one is gone
 * @param joints what comes after each but the last; in a round after the last too
 * @param round whether it comes round again
 * @param song what it is spun to
 */
public record SetPlan(
        List<Optional<Stay>> stays, List<Joint> joints, boolean round, Optional<ToSong> song) {
    /** How many counts off a grade harder is worth. */
    static final double GRADE = 4;

    // Among transitions that are as hard.
    private static final double LATER = 0.05;

    public SetPlan {
        stays = List.copyOf(stays);
        joints = List.copyOf(joints);
    }

    /** How far a plan has come. */
    public record Progress(int done, int all) {}

    /**
     * Works a set out.
     *
     * @param wanted the patterns in order; empty where one is gone
     * @param book what is known of them; what is not is worked out and put there
     * @param round whether the last is to lead into the first
     * @param listener hears how many pairs were looked at
     * @param stop asked between them
     * @return empty where it was stopped
     */
    public static Optional<SetPlan> of(
            List<Optional<Wanted>> wanted,
            PairBook book,
            boolean round,
            Consumer<Progress> listener,
            BooleanSupplier stop) {
        return of(wanted, book, round, Optional.empty(), listener, stop);
    }

    /**
     * The same to a song, to which the patterns are fitted already.
     *
     * @param song not with a round: what is repeated for practice goes without
     */
    public static Optional<SetPlan> of(
            List<Optional<Wanted>> wanted,
            PairBook book,
            boolean round,
            Optional<ToSong> song,
            Consumer<Progress> listener,
            BooleanSupplier stop) {
        if (round && song.isPresent()) {
            throw new Refusal("is given a song", "a round", "leave one of the two out");
        }
        if (wanted.isEmpty()) {
            throw new Refusal("has no patterns", "the set", "put one in");
        }
        int pairs = round ? wanted.size() : wanted.size() - 1;
        List<Onward> between = new ArrayList<>();
        for (int i = 0; i < pairs; i++) {
            if (stop.getAsBoolean()) {
                return Optional.empty();
            }
            between.add(between(wanted, i, book, song));
            listener.accept(new Progress(i + 1, pairs));
        }
        for (Optional<Wanted> one : wanted) {
            if (stop.getAsBoolean()) {
                return Optional.empty();
            }
            one.ifPresent(w -> book.readings(w.pairing()));
        }
        return Optional.of(new Planner(wanted, between, book, round, song).plan());
    }

    /**
     * As {@link #of(List, PairBook, boolean, Consumer, BooleanSupplier)}, of patterns all there.
     */
    public static SetPlan of(List<Wanted> wanted, PairBook book) {
        return of(wanted.stream().map(Optional::of).toList(), book, false, p -> {}, () -> false)
                .orElseThrow();
    }

    /** What leads on, or why nothing does. */
    record Onward(List<Transition> list, Hindrance why) {
        static final Onward NONE = new Onward(List.of(), Hindrance.NONE);
    }

    private static Onward between(
            List<Optional<Wanted>> wanted, int after, PairBook book, Optional<ToSong> song) {
        Optional<Pairing> from = wanted.get(after).map(Wanted::pairing);
        Optional<Pairing> to = wanted.get((after + 1) % wanted.size()).map(Wanted::pairing);
        if (from.isEmpty() || to.isEmpty() || from.equals(to)) {
            return Onward.NONE;
        }
        if (song.filter(s -> !s.keeps(from.get())).isPresent()) {
            return new Onward(List.of(), Hindrance.OWN_TIME);
        }
        Transitions found = book.between(from.get(), to.get(), song.map(ToSong::beat));
        return new Onward(found.list(), found.why());
    }

    /** How much the choice shuns a transition. */
    static double weight(Transition transition, int place) {
        return GRADE * transition.hardness() + LATER * place;
    }

    /** Seconds from its start to its end. */
    public double seconds() {
        return Math.max(
                stays.stream().flatMap(Optional::stream).mapToDouble(Stay::ends).max().orElse(0),
                joints.stream().mapToDouble(p -> p.starts() + p.seconds()).max().orElse(0));
    }

    /** The counts of all patterns together, as they are kept. */
    public double counts() {
        return stays.stream().flatMap(Optional::stream).mapToDouble(Stay::counts).sum();
    }

    /** How the performer faces, by seconds from the set's start. */
    public Heading heading() {
        return SetHeading.of(turnings());
    }

    /** The turns of the body in order. */
    public List<TurnMade> turnings() {
        return stays.stream()
                .flatMap(Optional::stream)
                .flatMap(stay -> stay.turning().stream())
                .toList();
    }

    /** How many quarters to the left the body has turned when a step begins, or all is over. */
    public int quartersBefore(int step) {
        return stays.subList(0, step).stream()
                .flatMap(Optional::stream)
                .flatMap(stay -> stay.turning().stream())
                .mapToInt(TurnMade::quarters)
                .sum();
    }

    /** Whether every pattern is there and leads into the next. */
    public boolean flows() {
        return joints.stream().allMatch(p -> p.way() == Joint.Way.LED || p.way() == Joint.Way.SAME);
    }

    /**
     * The step that is on at a time of the set, or whose transition is; of those that are there.
     */
    public int at(double seconds) {
        int on = 0;
        for (int i = 0; i < stays.size(); i++) {
            double time = seconds;
            on = stays.get(i).filter(stay -> stay.starts() <= time).isPresent() ? i : on;
        }
        return on;
    }
}
