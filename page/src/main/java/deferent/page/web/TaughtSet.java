package deferent.page.web;

import deferent.motion.trace.Trace;
import deferent.reading.danger.Level;
import deferent.record.SetReading;
import deferent.search.set.Joint;
import deferent.search.set.PairBook;
import deferent.search.set.SetTrace;
import deferent.search.set.Stay;
import deferent.tell.TellSet;
import deferent.tell.TellSungSet;
import deferent.tell.Told;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A set worked out, with what is known of its patterns, so that its passages can be drawn.
 *
 * @param reading the set
 * @param book what is known of its patterns
 * @param author whose it is, or that it is invented
 * @param song that it is spun to
 */
public record TaughtSet(
        SetReading reading, PairBook book, Optional<String> author, Optional<TaughtSong> song) {
    /** Without a song. */
    public TaughtSet(SetReading reading, PairBook book, Optional<String> author) {
        this(reading, book, author, Optional.empty());
    }

    /**
     * How one passes from a step into the next, from the first hand's leaving to the last one's
     * joining, as the body has it; none where nothing leads on.
     *
     * @param step from 0
     */
    Optional<Trace> passage(int step) {
        if (step >= reading.plan().joints().size()) {
            return Optional.empty();
        }
        Joint joint = reading.plan().joints().get(step);
        return joint.way() == Joint.Way.LED
                ? Optional.of(
                        SetTrace.unturned(
                                reading.plan(),
                                book,
                                joint.starts(),
                                joint.starts() + joint.seconds()))
                : Optional.empty();
    }

    /** For how long a step is spun, and from when. */
    static String said(SetReading set, int step) {
        Optional<String> sung =
                set.inSong(step)
                        .map(at -> TellSungSet.counted(at, set.plan().song().orElseThrow()));
        return sung.or(() -> set.plan().stays().get(step).map(TaughtSet::timed))
                .orElse("gone from the shelf");
    }

    private static String timed(Stay stay) {
        return TellSet.counts(stay.counts()) + ", from " + TellSet.duration(stay.starts());
    }

    /** What is told of the whole, then of its song, and why that is not heard, where it is not. */
    List<Told> told(Optional<Told> unheard) {
        List<Told> told = new ArrayList<>(reading.told());
        unheard.ifPresent(why -> told.add(2, why));
        return told;
    }

    /** What is to be minded in a step: the turns of the body, tempo, reach, and what can hurt. */
    static List<Told> lines(SetReading set, int step) {
        List<Told> lines = new ArrayList<>();
        set.turn(step).ifPresent(turn -> lines.addAll(TellSet.turn(turn)));
        set.inSong(step).ifPresent(at -> lines.addAll(TellSungSet.asked(at)));
        set.plan()
                .stays()
                .get(step)
                .ifPresent(
                        stay -> {
                            if (!TellSet.reached(stay)) {
                                lines.add(TellSet.reach(stay));
                            }
                        });
        danger(set, step).ifPresent(lines::add);
        return lines;
    }

    /** What can hurt in a step, at the tempo that it has there. */
    static Optional<Told> danger(SetReading set, int step) {
        return set.level(step) == Level.DANGER ? set.danger(step) : Optional.empty();
    }
}
