package deferent.take;

import deferent.page.Chapters;
import deferent.record.SetReading;
import deferent.search.set.InSong;
import deferent.search.set.Joint;
import deferent.search.set.Stay;
import deferent.tell.TellSet;
import java.util.List;
import java.util.Optional;

/**
 * The words of one pattern of a set in its clip, count by count; for the last few also what comes
 * next. To a song it is counted on the song's beats from where it is counted from 1, and the counts
 * go on through the passage until the next one's begin, as the cue sheet has them.
 *
 * @param take the set
 * @param step which pattern, from 0
 * @param next what the next one is called; empty for the last
 */
record Counted(SetTake take, int step, Stay stay, Optional<String> next) {
    /** For so many counts it is said what comes next; our choice. */
    private static final int SOON = 4;

    private static final double ROUND = 1e-6;

    private boolean sung() {
        return take.song().isPresent();
    }

    private SetReading reading() {
        return take.reading();
    }

    /** Whole counts; one that is hardly begun is none. */
    static int whole(double counts) {
        return (int) Math.max(1, Math.ceil(counts - 0.05));
    }

    private int counts() {
        return whole(sung() ? InSong.counts(reading().plan(), step) : stay.counts());
    }

    private double first() {
        return sung() ? stay.one() : stay.starts();
    }

    private double count() {
        return stay.wanted().count();
    }

    /**
     * Adds what is said on each count, in order of time.
     *
     * @param led what leads on; empty where nothing does
     */
    void say(Optional<Joint> led, List<Chapters.Said> said) {
        String name = reading().places().get(step).name();
        double leaves = led.map(Joint::starts).orElse(Double.POSITIVE_INFINITY);
        for (int k = 0; k < counts() && at(k) < leaves - ROUND; k++) {
            String then = k < counts() - SOON ? "" : next.map(n -> ", then " + n).orElse("");
            said.add(new Chapters.Said(at(k), List.of(name, of(k) + turned(at(k)) + then)));
        }
        if (led.isPresent()) {
            said.add(sung() ? into(leaves) : into(leaves, TellSet.duration(led.get().seconds())));
            for (int k = 0; sung() && k < counts(); k++) {
                if (at(k) > leaves + ROUND) {
                    said.add(into(at(k)));
                }
            }
        }
    }

    private double at(int k) {
        return first() + k * count();
    }

    private Chapters.Said into(double at) {
        int k = (int) Math.floor((at - first()) / count() + ROUND);
        return into(at, of(Math.min(k, counts() - 1)));
    }

    private Chapters.Said into(double at, String below) {
        return new Chapters.Said(at, List.of("Into " + next.orElse(""), below));
    }

    /** "3 of 8". */
    private String of(int k) {
        return (k + 1) + " of " + counts();
    }

    /** ", half turn to the left", while it is made. */
    private String turned(double at) {
        double middle = at + count() / 2;
        return stay.turning()
                .filter(turning -> turning.starts() < middle && middle < turning.ends())
                .map(turning -> ", " + TellSet.turned(turning.quarters()))
                .orElse("");
    }
}
