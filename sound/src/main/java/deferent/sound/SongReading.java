package deferent.sound;

import deferent.motion.pairing.Refusal;
import deferent.motion.song.Beats;
import deferent.reel.Hearing;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;

/**
 * What is read from a song: its beats, how quick they are and how that moves, and its bars, each
 * with how sure it is.
 *
 * @param seconds how long it plays
 * @param beats when they fall, and the bars
 * @param level whether the tempo might as well be double or half
 * @param bars whether the bars might as well begin elsewhere or be of another length
 * @param clear how well it repeats from beat to beat: wholly is 1, noise is near 0
 * @param loud how loud it is, {@value #LOUD_RATE} times a second, root mean square of full scale
 */
public record SongReading(
        double seconds, Beats beats, Sure level, Sure bars, double clear, List<Float> loud) {
    /** Where the sound stands in {@link #loud}. */
    public static final int LOUD_RATE = 10;

    /** The longest sound that is read, seconds: two hours. */
    public static final double LONGEST = 7200;

    /** The shortest, seconds. */
    public static final double SHORTEST = 8;

    /** A tempo is taken over so many beats. */
    private static final int SPAN = 8;

    /** Quieter than this all along, of full scale, is silence: −60 dB. */
    private static final double SILENT = 1e-3;

    /**
     * What repeats less has no pulse: noise and claps at random came to 0.09 at most, music to 0.13
     * mostly.
     */
    private static final double PULSE = 0.1;

    /** Where something begins less often a second, no beat is: the slowest come oftener. */
    private static final double EVENTFUL = 0.5;

    /** A tempo that beats its double and half by less might be either. */
    private static final double LEVEL_OPEN = 0.08;

    /** How something came to be known. */
    public enum Sure {
        /** Somebody said it. */
        SAID,
        HEARD,
        /** It is the likelier of several. */
        GUESSED
    }

    public SongReading {
        loud = List.copyOf(loud);
    }

    /**
     * Reads a file.
     *
     * @param beatsABar where somebody said it
     * @param progress told shares of the file as they are read
     * @return empty where it was stopped
     * @throws Refusal where it is no sound, is silent, has no pulse, or is too long or too short
     */
    public static Optional<SongReading> of(
            Path file,
            SaidLevel level,
            OptionalInt beatsABar,
            DoubleConsumer progress,
            BooleanSupplier stop)
            throws IOException {
        return listen(file, progress, stop)
                .map(onsets -> of(onsets, level, beatsABar, String.valueOf(file.getFileName())));
    }

    /**
     * Takes a file in, which is what takes long; what is said of its beats may come later, as often
     * as somebody says something else.
     *
     * @param progress told shares of the file as they are read
     * @return empty where it was stopped
     * @throws Refusal where it is no sound, or too long
     */
    public static Optional<Onsets> listen(Path file, DoubleConsumer progress, BooleanSupplier stop)
            throws IOException {
        String name = String.valueOf(file.getFileName());
        Onsets onsets = new Onsets();
        try (Hearing hearing = Hearing.open(file, Onsets.SAMPLES)) {
            double says = hearing.seconds();
            notLonger(says, name);
            for (float[] some = hearing.next(); some.length > 0; some = hearing.next()) {
                onsets.take(some, some.length);
                notLonger(onsets.seconds(), name);
                progress.accept(says > 0 ? Math.min(1, onsets.seconds() / says) : 0);
                if (stop.getAsBoolean()) {
                    return Optional.empty();
                }
            }
        }
        return Optional.of(onsets);
    }

    private static void notLonger(double seconds, String name) {
        if (seconds > LONGEST) {
            throw new Refusal(
                    "plays longer than two hours", name, "cut out the song and give that");
        }
    }

    /** Of a sound that was taken in; {@code name} is how refusals call it. */
    public static SongReading of(
            Onsets onsets, SaidLevel level, OptionalInt beatsABar, String name) {
        if (onsets.seconds() < SHORTEST) {
            throw new Refusal(
                    "plays for %.1f s".formatted(onsets.seconds()),
                    name,
                    "give a sound of " + (int) SHORTEST + " s or more");
        }
        double loudest = 0;
        for (int i = 0; i < onsets.count(); i++) {
            loudest = Math.max(loudest, onsets.loud(i));
        }
        if (loudest < SILENT) {
            throw new Refusal("is silent", name, "give a sound that can be heard");
        }
        float[] strength = onsets.strength();
        float[] low = onsets.low();
        TempoCurve tempo = TempoCurve.of(strength, level);
        boolean pulse = onsets.eventful() > EVENTFUL && tempo.clarity() > PULSE;
        if (!pulse && level.taps().isEmpty()) {
            throw new Refusal(
                    "has no pulse that can be heard", name, "tap its beats: two are enough");
        }
        List<Double> times = BeatPath.of(strength, low, tempo, level);
        if (times.size() < 2) {
            throw new Refusal("has no two beats that can be heard", name, "tap its beats");
        }
        Bars bars =
                beatsABar.isPresent()
                        ? Bars.of(times, onsets, strength, low, beatsABar.getAsInt())
                        : Bars.of(times, onsets, strength, low);
        Sure levelled =
                level.period().isPresent()
                        ? Sure.SAID
                        : tempo.sureness() < LEVEL_OPEN ? Sure.GUESSED : Sure.HEARD;
        return new SongReading(
                onsets.seconds(),
                bars.of(times),
                levelled,
                beatsABar.isPresent()
                        ? Sure.SAID
                        : bars.clear() < Bars.ENOUGH ? Sure.GUESSED : Sure.HEARD,
                tempo.clarity(),
                loud(onsets));
    }

    private static List<Float> loud(Onsets onsets) {
        int each = Onsets.RATE / LOUD_RATE;
        Float[] loud = new Float[(onsets.count() + each - 1) / each];
        for (int i = 0; i < loud.length; i++) {
            double most = 0;
            for (int k = i * each; k < Math.min(onsets.count(), (i + 1) * each); k++) {
                most = Math.max(most, onsets.loud(k));
            }
            loud[i] = (float) most;
        }
        return List.of(loud);
    }

    /** The same with other beats or bars, as somebody set them right. */
    public SongReading with(Beats other, Sure levelNow, Sure barsNow) {
        return new SongReading(seconds, other, levelNow, barsNow, clear, loud);
    }

    /** The slowest that it goes, beats a minute over eight beats. */
    public double slowest() {
        return extreme(true);
    }

    /** The quickest that it goes, beats a minute over eight beats. */
    public double quickest() {
        return extreme(false);
    }

    private double extreme(boolean least) {
        int last = beats.times().size() - 1;
        int span = Math.min(SPAN, last);
        double found = beats.tempo(0, span);
        for (int i = 1; i + span <= last; i++) {
            double tempo = beats.tempo(i, i + span);
            found = least ? Math.min(found, tempo) : Math.max(found, tempo);
        }
        return found;
    }
}
