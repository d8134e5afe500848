package deferent.film;

import deferent.film.cycle.Cycles;
import deferent.film.cycle.Unsure;
import deferent.film.follow.Follower;
import deferent.film.held.Held;
import deferent.film.held.NearestPairing;
import deferent.film.light.Background;
import deferent.film.light.Lamps;
import deferent.film.light.LitSpot;
import deferent.film.light.RollingShutter;
import deferent.film.light.SpotFinder;
import deferent.film.measured.Measured;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Interval;
import deferent.reel.Footage;
import deferent.reel.Shot;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * All that is read from a film of two lit poi.
 *
 * @param held what was measured against what was meant: the phrase, or else what lies nearest
 * @param asked whether a phrase said what was meant
 * @param nearest what lies nearest, where no phrase was given or the film is far from it
 * @param seen share of the frames in which each head was seen, in the order of followed heads
 * @param unsure stretches in which it is not sure which light is which head's, by time
 * @param readout seconds in which the camera was said to read a picture; 0 where nobody said
 */
public record FilmReading(
        Held held,
        boolean asked,
        Optional<NearestPairing> nearest,
        List<Double> seen,
        List<Unsure> unsure,
        double readout) {
    private static final double SHORTEST = 1; // seconds
    private static final double LONGEST = 3600;
    private static final double MUST_SEE = 0.3; // share of the frames

    public FilmReading {
        seen = List.copyOf(seen);
        unsure = List.copyOf(unsure);
    }

    /** What was measured, its sides settled. */
    public Measured measured() {
        return held.measured();
    }

    /**
     * Of a film's file.
     *
     * @param progress hears the share of the film that was gone through, 0 to 1
     * @param stop asked at every frame
     * @return empty where it was stopped
     */
    public static Optional<FilmReading> of(
            Path film, FilmAsk ask, DoubleConsumer progress, BooleanSupplier stop)
            throws IOException {
        String name = String.valueOf(film.getFileName());
        return Seen.of(film, name, ask, progress, stop).map(seen -> of(seen, ask));
    }

    /** Of what was seen in a film. */
    public static FilmReading of(Seen seen, FilmAsk ask) {
        return of(seen.frames(), ask, seen.rows(), seen.name());
    }

    /**
     * What was seen in a film, whatever it is then taken for: the spots of each frame, upright.
     *
     * @param rows of a picture
     * @param name of the film, for refusals
     */
    public record Seen(List<List<LitSpot>> frames, int rows, String name) {
        public Seen {
            frames = List.copyOf(frames);
        }

        /**
         * Of a film's file.
         *
         * @param progress hears the share of the film that was gone through, 0 to 1
         * @param stop asked at every frame
         * @return empty where it was stopped
         */
        public static Optional<Seen> of(
                Path film, String name, FilmAsk ask, DoubleConsumer progress, BooleanSupplier stop)
                throws IOException {
            List<List<LitSpot>> frames = new ArrayList<>();
            Background.Samples samples = new Background.Samples();
            double last = 0;
            int rows = 1;
            try (Footage footage = Footage.open(film)) {
                SpotFinder finder = new SpotFinder();
                double length = footage.seconds();
                int turned = footage.turned();
                rows = footage.height();
                if (turned != 0 && ask.readout() > 0) {
                    throw new Refusal(
                            "reads its rows from the side, since it was held upright",
                            "the camera of " + name,
                            "leave the readout out");
                }
                Optional<Shot> next = footage.next();
                while (next.isPresent()) {
                    if (stop.getAsBoolean()) {
                        return Optional.empty();
                    }
                    Shot shot = next.get();
                    last = shot.time();
                    if (last > LONGEST) {
                        throw new Refusal(
                                "is longer than an hour", name, "cut it to what you want to see");
                    }
                    samples.add(shot);
                    List<LitSpot> spots = finder.find(shot);
                    frames.add(
                            turned == 0
                                    ? spots
                                    : spots.stream()
                                            .map(
                                                    s ->
                                                            s.upright(
                                                                    turned,
                                                                    shot.width(),
                                                                    shot.height()))
                                            .toList());
                    if (length > 0) {
                        progress.accept(Math.min(1, last / length));
                    }
                    next = footage.next();
                }
            }
            if (last < SHORTEST) {
                throw new Refusal("is shorter than a second", name, "film at least six turns");
            }
            Seen dark = new Seen(frames, rows, name);
            return both(Lamps.without(frames))
                    ? Optional.of(dark)
                    : byDay(film, dark, samples, progress, stop);
        }

        // Where no two lights move, what moves is looked for by day, by its colour first, which
        // arms and clothes have less of.
        private static Optional<Seen> byDay(
                Path film,
                Seen dark,
                Background.Samples samples,
                DoubleConsumer progress,
                BooleanSupplier stop)
                throws IOException {
            Optional<Background> background = samples.background();
            if (background.isEmpty()) {
                return Optional.of(dark);
            }
            for (Background.By by : List.of(Background.By.COLOUR, Background.By.ANY)) {
                Optional<List<List<LitSpot>>> moving =
                        background.get().moving(film, by, progress, stop);
                if (moving.isEmpty()) {
                    return Optional.empty();
                }
                if (both(moving.get())) {
                    return Optional.of(new Seen(moving.get(), dark.rows(), dark.name()));
                }
            }
            return Optional.of(dark);
        }

        private static boolean both(List<List<LitSpot>> moving) {
            long two = moving.stream().filter(spots -> spots.size() >= 2).count();
            return two >= MUST_SEE * moving.size();
        }
    }

    /**
     * Of the spots of each frame, upright.
     *
     * @param rows of a picture
     * @param name of the film, for refusals
     */
    public static FilmReading of(List<List<LitSpot>> frames, FilmAsk ask, int rows, String name) {
        return of(cycles(frames, ask, rows, name), ask);
    }

    /** What comes back in the spots of each frame. */
    static Cycles cycles(List<List<LitSpot>> frames, FilmAsk ask, int rows, String name) {
        List<List<LitSpot>> moving =
                Lamps.without(ask.passage().map(p -> part(frames, p)).orElse(frames));
        if (!ask.heads().isEmpty()) {
            moving = Follower.alike(moving, ask.heads().get(0), ask.heads().get(1));
        }
        long two = moving.stream().filter(spots -> spots.size() >= 2).count();
        long one = moving.stream().filter(spots -> !spots.isEmpty()).count();
        if (one < MUST_SEE * moving.size()) {
            throw new Refusal(
                    "shows no light that moves", name, "film lit poi against a dark background");
        }
        if (two < MUST_SEE * moving.size()) {
            throw new Refusal("shows one moving light alone", name, "film both poi");
        }
        List<List<@Nullable LitSpot>> heads =
                ask.heads().isEmpty()
                        ? Follower.follow(moving)
                        : Follower.follow(moving, ask.heads().get(0), ask.heads().get(1));
        return Cycles.of(heads, moving, new RollingShutter(ask.readout(), rows));
    }

    /** Of what comes back. */
    static FilmReading of(Cycles cycles, FilmAsk ask) {
        DoubleSummaryStatistics times =
                cycles.sights().stream()
                        .flatMap(List::stream)
                        .flatMap(Stream::ofNullable)
                        .mapToDouble(LitSpot::time)
                        .summaryStatistics();
        double seconds = Math.max(SHORTEST, times.getMax() - times.getMin());
        Measured measured = new Metres(cycles, ask, seconds).measured();
        List<Double> seen = cycles.sights().stream().map(FilmReading::share).toList();
        if (ask.meant().isPresent()) {
            Held held = Held.of(measured, ask.meant().get(), ask.anySense());
            Optional<NearestPairing> rather =
                    held.isSomethingElse()
                            ? Optional.of(NearestPairing.of(held.measured()))
                            : Optional.empty();
            return new FilmReading(held, true, rather, seen, cycles.unsure(), ask.readout());
        }
        NearestPairing nearest = NearestPairing.of(measured);
        Pairing pairing = nearest.pairing();
        return new FilmReading(
                Held.of(measured, pairing, false),
                false,
                Optional.of(nearest),
                seen,
                cycles.unsure(),
                ask.readout());
    }

    private static List<List<LitSpot>> part(List<List<LitSpot>> frames, Interval passage) {
        List<List<LitSpot>> part =
                frames.stream()
                        .filter(spots -> !spots.isEmpty())
                        .filter(spots -> spots.get(0).time() >= passage.start())
                        .filter(spots -> spots.get(0).time() <= passage.end())
                        .toList();
        if (part.isEmpty()) {
            throw new Refusal(
                    "shows no light",
                    String.format(
                            Locale.ROOT,
                            "the film from %.1f to %.1f s",
                            passage.start(),
                            passage.end()),
                    "give another passage");
        }
        return part;
    }

    private static double share(List<@Nullable LitSpot> spots) {
        long there = spots.stream().filter(s -> s != null).count();
        return (double) there / Math.max(1, spots.size());
    }
}
