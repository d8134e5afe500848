package deferent.search.set;

import deferent.motion.pairing.Pairing;
import deferent.search.transition.Transition;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Puts a set together from what leads from each pattern to the next: what hangs together is one
 * chain, and the same pattern twice in a row is one stay, parted again in the end.
 */
final class Planner {
    private final List<Optional<Wanted>> wanted;
    private final List<SetPlan.Onward> between;
    private final PairBook book;
    private final boolean round;
    private final Optional<ToSong> song;
    private final List<Optional<Stay>> stays = new ArrayList<>();
    private final List<Joint> joints = new ArrayList<>();
    private double clock;

    /**
     * @param between what leads on from each pattern, none where nothing does
     */
    Planner(
            List<Optional<Wanted>> wanted,
            List<SetPlan.Onward> between,
            PairBook book,
            boolean round,
            Optional<ToSong> song) {
        this.wanted = wanted;
        this.between = between;
        this.book = book;
        this.round = round;
        this.song = song;
    }

    /** The same pattern from one step to before another. */
    private record Kept(int from, int to, Pairing pairing) {}

    SetPlan plan() {
        boolean closed = round && all(i -> way(i) == Joint.Way.LED || way(i) == Joint.Way.SAME);
        int at = 0;
        while (at < wanted.size()) {
            int end = at + 1;
            while (end < wanted.size() && onward(end - 1)) {
                end++;
            }
            segment(at, end, closed);
            at = end;
        }
        return new SetPlan(stays, joints, round, song);
    }

    private interface OfAPassing {
        boolean holds(int after);
    }

    private boolean all(OfAPassing what) {
        for (int i = 0; i < between.size(); i++) {
            if (!what.holds(i)) {
                return false;
            }
        }
        return true;
    }

    private boolean onward(int after) {
        Joint.Way way = way(after);
        return way == Joint.Way.LED || way == Joint.Way.SAME;
    }

    private Joint.Way way(int after) {
        Optional<Wanted> from = wanted.get(after);
        Optional<Wanted> to = wanted.get((after + 1) % wanted.size());
        if (from.isEmpty() || to.isEmpty()) {
            return Joint.Way.GONE;
        }
        if (from.get().pairing().equals(to.get().pairing())) {
            return Joint.Way.SAME;
        }
        return between.get(after).list().isEmpty() ? Joint.Way.NONE : Joint.Way.LED;
    }

    /**
     * Steps that hang together, {@code from} to before {@code to}.
     *
     * @param closed whether the last leads into the first
     */
    private void segment(int from, int to, boolean closed) {
        if (wanted.get(from).isEmpty()) {
            stays.add(Optional.empty());
            pass(from, Optional.empty());
            return;
        }
        List<Kept> kept = kept(from, to);
        List<Run> runs = kept.stream().map(this::run).toList();
        List<List<Door>> doors = new ArrayList<>();
        for (int k = 0; k < (closed ? kept.size() : kept.size() - 1); k++) {
            doors.add(doors(kept.get(k).to() - 1));
        }
        // What begins anew does so on a beat.
        clock += song.map(s -> s.toBeat(clock)).orElse(0.0);
        Chain chain = closed ? Chain.round(runs, doors) : Chain.open(runs, doors, bars());
        int last = runs.size() - 1;
        double entered = closed ? doors.get(last).get(chain.door(last)).joins() : 0;
        for (int k = 0; k <= last; k++) {
            stay(kept.get(k), chain.stay(k), entered, k < doors.size() ? chain.door(k) : 0);
            entered = k < doors.size() ? doors.get(k).get(chain.door(k)).joins() : 0;
        }
    }

    private List<Kept> kept(int from, int to) {
        List<Kept> kept = new ArrayList<>();
        int begun = from;
        for (int i = from; i < to; i++) {
            if (i + 1 == to || way(i) != Joint.Way.SAME) {
                kept.add(new Kept(begun, i + 1, wanted.get(i).orElseThrow().pairing()));
                begun = i + 1;
            }
        }
        return kept;
    }

    private Run run(Kept kept) {
        return new Run(
                kept.pairing().period(),
                asked(kept),
                Wanted.count(kept.pairing()),
                song.isPresent());
    }

    private SongBars bars() {
        return song.map(s -> s.bars(clock)).orElse(SongBars.NONE);
    }

    private double asked(Kept kept) {
        double asked = 0;
        for (int i = kept.from(); i < kept.to(); i++) {
            asked += wanted.get(i).orElseThrow().seconds();
        }
        return asked;
    }

    private List<Door> doors(int after) {
        if (way(after) == Joint.Way.SAME) {
            // A round that ends with the pattern it begins with: it goes on where it began.
            return List.of(new Door(0, 0, 0, 0));
        }
        List<Transition> transitions = between.get(after).list();
        List<Door> doors = new ArrayList<>();
        for (int i = 0; i < transitions.size(); i++) {
            Transition one = transitions.get(i);
            doors.add(new Door(one.leaves(), one.joins(), one.seconds(), SetPlan.weight(one, i)));
        }
        return doors;
    }

    /**
     * One pattern for so long, parted among its steps as they were asked.
     *
     * @param door which of the transitions after it is taken, where there are any
     */
    private void stay(Kept kept, double seconds, double entered, int door) {
        double asked = asked(kept);
        double on = entered;
        for (int i = kept.from(); i < kept.to(); i++) {
            Wanted one = wanted.get(i).orElseThrow();
            double part = seconds * one.seconds() / asked;
            stays.add(Optional.of(new Stay(one, book.readings(one.pairing()), on, clock, part)));
            on += part;
            clock += part;
            boolean led = i + 1 == kept.to() && i < between.size() && way(i) == Joint.Way.LED;
            pass(i, led ? Optional.of(between.get(i).list().get(door)) : Optional.empty());
        }
    }

    private void pass(int after, Optional<Transition> transition) {
        if (after < between.size()) {
            joints.add(new Joint(way(after), transition, between.get(after).why(), clock));
            clock += transition.map(Transition::seconds).orElse(0.0);
        }
    }
}
