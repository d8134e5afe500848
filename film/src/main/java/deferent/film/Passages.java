package deferent.film;

import deferent.film.cycle.Cycles;
import deferent.film.light.LitSpot;
import deferent.film.light.SpotFinder;
import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Interval;
import deferent.reel.Footage;
import deferent.reel.Shot;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;

/**
 * A film of several patterns, with pauses or cuts between them, in passages: frames are added one
 * by one, and no more of them are held than of some half a minute. Of what is held mean cycles are
 * found; the longest stretch that they explain is a passage, and what lies before and after it is
 * looked at likewise. What is left at the end of the half minute waits for what comes after it;
 * passages that go on as they were become one.
 *
 * <p>Not safe to share between threads.
 */
public final class Passages {
    /**
     * A stretch of a film in which one pattern is spun.
     *
     * @param within seconds of the film
     * @param reading of it, or of its first half minute where it lasts longer
     */
    public record Passage(Interval within, FilmReading reading) {}

    static final double HELD = 30; // seconds of frames

    private static final double SHORTEST = 2.5; // seconds, of a passage
    private static final double PART = 0.5; // of a cycle, in which it is looked whether all fits
    private static final double FITS = 0.7; // share of its frames that the mean cycles explain
    private static final double WHOLE = 0.85; // of what is looked at, that needs no second look
    private static final double GAP = 1.5; // seconds between passages that may be one
    private static final double SAME = 0.02; // of a period

    private final FilmAsk ask;
    private final int rows;
    private final String name;
    private final List<List<LitSpot>> held = new ArrayList<>();
    private final List<Passage> found = new ArrayList<>();
    private Optional<Refusal> refusal = Optional.empty();
    private double first;
    private double last;

    /**
     * None yet.
     *
     * @param rows of a picture
     * @param name of the film, for refusals
     */
    public Passages(FilmAsk ask, int rows, String name) {
        if (!ask.heads().isEmpty()) {
            throw new Refusal(
                    "are pointed at in one frame alone",
                    "both heads",
                    "leave them out where passages are looked for");
        }
        this.ask = ask;
        this.rows = rows;
        this.name = name;
    }

    /**
     * Of a film's file, however long.
     *
     * @param progress hears the share of the film that was gone through, 0 to 1
     * @param stop asked at every frame
     * @return empty where it was stopped
     */
    public static Optional<List<Passage>> of(
            Path film, FilmAsk ask, DoubleConsumer progress, BooleanSupplier stop)
            throws IOException {
        try (Footage footage = Footage.open(film)) {
            Passages passages =
                    new Passages(ask, footage.height(), String.valueOf(film.getFileName()));
            SpotFinder finder = new SpotFinder();
            int turned = footage.turned();
            double length = Math.max(1e-3, footage.seconds());
            for (Optional<Shot> next = footage.next(); next.isPresent(); next = footage.next()) {
                if (stop.getAsBoolean()) {
                    return Optional.empty();
                }
                Shot shot = next.get();
                passages.add(
                        finder.find(shot).stream()
                                .map(s -> s.upright(turned, shot.width(), shot.height()))
                                .toList());
                progress.accept(Math.min(1, shot.time() / length));
            }
            return Optional.of(passages.end());
        }
    }

    /** The next frame's spots, upright; where there are none, it does not count. */
    public void add(List<LitSpot> spots) {
        if (spots.isEmpty()) {
            return;
        }
        double time = spots.get(0).time();
        boolean said = ask.passage().map(p -> time < p.start() || time > p.end()).orElse(false);
        if (said) {
            return;
        }
        if (held.isEmpty()) {
            first = time;
        }
        if (time - first >= HELD) {
            look(false);
        }
        held.add(spots);
        last = time;
    }

    /**
     * All passages, by time, there being no further frame.
     *
     * @throws Refusal where nothing in it can be read, with the reason
     */
    public List<Passage> end() {
        look(true);
        if (found.isEmpty()) {
            throw refusal.orElseGet(
                    () ->
                            new Refusal(
                                    "shows no light that moves",
                                    name,
                                    "film lit poi against a dark background"));
        }
        return List.copyOf(found);
    }

    /** How many frames are held at the moment. */
    int frames() {
        return held.size();
    }

    private void look(boolean all) {
        List<Passage> here = new ArrayList<>();
        split(List.copyOf(held), here);
        here.sort((a, b) -> Double.compare(a.within().start(), b.within().start()));
        here.forEach(this::keep);
        double done = here.isEmpty() ? last - HELD / 2 : here.get(here.size() - 1).within().end();
        held.removeIf(spots -> all || spots.get(0).time() <= done);
        // What nothing explains is not held for longer than once.
        double latest = last - HELD / 2;
        held.removeIf(spots -> spots.get(0).time() < latest);
        first = held.isEmpty() ? last : held.get(0).get(0).time();
    }

    private void keep(Passage next) {
        Passage before = found.isEmpty() ? next : found.get(found.size() - 1);
        boolean same =
                !found.isEmpty()
                        && next.within().start() - before.within().end() < GAP
                        && called(next).equals(called(before))
                        && Math.abs(
                                        next.reading().measured().period()
                                                        / before.reading().measured().period()
                                                - 1)
                                < SAME;
        if (same) {
            Interval both = new Interval(before.within().start(), next.within().end());
            found.set(found.size() - 1, new Passage(both, before.reading()));
        } else {
            found.add(next);
        }
    }

    private static Optional<String> called(Passage passage) {
        return passage.reading().nearest().flatMap(nearest -> nearest.phrase());
    }

    private void split(List<List<LitSpot>> frames, List<Passage> into) {
        if (frames.size() < 2 || lasts(frames) < SHORTEST) {
            return;
        }
        Cycles cycles;
        try {
            cycles = FilmReading.cycles(frames, plain(), rows, name);
        } catch (Refusal unread) {
            refusal = Optional.of(unread);
            if (lasts(frames) > 2 * SHORTEST) {
                split(frames.subList(0, frames.size() / 2), into);
                split(frames.subList(frames.size() / 2, frames.size()), into);
            }
            return;
        }
        int[] run = explained(frames, cycles);
        List<List<LitSpot>> fits = frames.subList(run[0], run[1]);
        if (lasts(fits) < Math.max(SHORTEST, 2 * cycles.period())) {
            if (lasts(frames) > 2 * SHORTEST) {
                split(frames.subList(0, frames.size() / 2), into);
                split(frames.subList(frames.size() / 2, frames.size()), into);
            }
            return;
        }
        boolean whole = lasts(fits) > WHOLE * lasts(frames);
        try {
            into.add(
                    new Passage(
                            new Interval(fits.get(0).get(0).time(), end(fits)),
                            whole
                                    ? FilmReading.of(cycles, plain())
                                    : FilmReading.of(fits, plain(), rows, name)));
        } catch (Refusal unread) {
            refusal = Optional.of(unread);
        }
        split(frames.subList(0, run[0]), into);
        split(frames.subList(run[1], frames.size()), into);
    }

    // Whose light is further left is said of the film's beginning.
    private FilmAsk plain() {
        return found.isEmpty() ? ask.whole() : ask.whole().unsided();
    }

    private static double end(List<List<LitSpot>> frames) {
        return frames.get(frames.size() - 1).get(0).time();
    }

    private static double lasts(List<List<LitSpot>> frames) {
        return frames.isEmpty() ? 0 : end(frames) - frames.get(0).get(0).time();
    }

    /** The longest stretch of frames that the mean cycles explain, from and to before. */
    private static int[] explained(List<List<LitSpot>> frames, Cycles cycles) {
        int n = frames.size();
        int[] sum = new int[n + 1];
        for (int i = 0; i < n; i++) {
            boolean both =
                    cycles.sights().get(0).get(i) != null && cycles.sights().get(1).get(i) != null;
            sum[i + 1] = sum[i] + (both ? 1 : 0);
        }
        int part = (int) Math.max(4, PART * cycles.period() / (lasts(frames) / (n - 1)));
        int[] best = {0, 0};
        int begin = 0;
        for (int i = 0; i < n; i++) {
            int a = Math.max(0, i - part / 2);
            int b = Math.min(n, i + part / 2 + 1);
            if (sum[b] - sum[a] < FITS * (b - a)) {
                begin = i + 1;
            } else if (i + 1 - begin > best[1] - best[0]) {
                best = new int[] {begin, i + 1};
            }
        }
        return best;
    }
}
