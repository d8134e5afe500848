package deferent.film.practice;

import deferent.film.FilmReading;
import deferent.film.cycle.Wave;
import deferent.film.hand.HandSight;
import deferent.film.held.NearestPairing;
import deferent.film.measured.Measured;
import deferent.film.measured.MeasuredSide;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Sense;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.record.Extras;
import deferent.record.Fingerprint;
import deferent.record.Practice;
import deferent.record.Practice.Clip;
import deferent.record.Practice.DatedBy;
import deferent.record.Practice.Finding;
import deferent.record.Practice.Scale;
import deferent.record.Practice.Size;
import deferent.record.Practice.Track;
import deferent.record.number.Written;
import deferent.reel.Footage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A film as it is kept: which it was, and when.
 *
 * @param clip by name, size and content
 * @param date when it was filmed
 * @param dated how that is known
 */
public record PractisedFilm(Clip clip, Instant date, DatedBy dated) {
    private static final double TENTH = 1e4; // of a millimetre: places are kept to that

    /**
     * Of a film's file.
     *
     * @param called how its file is called
     * @param written when it was last written, which counts where the film does not say more
     */
    public static PractisedFilm of(Path file, String called, Instant written) throws IOException {
        Optional<Instant> made = Footage.made(file);
        Clip clip = new Clip(called, Files.size(file), Fingerprint.of(file), false);
        return new PractisedFilm(
                clip, made.orElse(written), made.isPresent() ? DatedBy.FILM : DatedBy.FILE);
    }

    /** The same, its own file's name and time. */
    public static PractisedFilm of(Path file) throws IOException {
        return of(
                file,
                String.valueOf(file.getFileName()),
                Files.getLastModifiedTime(file).toInstant());
    }

    /**
     * What is compared over weeks: the pairing in trade words, whatever its tempo and whichever way
     * round.
     *
     * @param called the pattern's own name, where trade words cannot say it
     */
    public static String pattern(Pairing pairing, Optional<String> called) {
        Pairing plain = pairing.withTempo(OptionalDouble.empty()).with(Sense.CLOCKWISE);
        return Phrase.write(plain)
                .or(() -> called)
                .orElseThrow(
                        () ->
                                new Refusal(
                                        "has no name in trade words",
                                        "what was spun",
                                        "say what was meant, or save it on the shelf first"));
    }

    /**
     * What is kept of it.
     *
     * @param called how it is to be called; unsaid, the pattern
     * @param meant what was meant; unsaid, the nearest pairing
     * @param pattern the meant pattern's own name
     */
    public Practice read(
            FilmReading film,
            Optional<String> called,
            Optional<Pairing> meant,
            Optional<String> pattern) {
        Pairing spun =
                meant.or(() -> film.nearest().map(NearestPairing::pairing))
                        .orElse(film.held().meant());
        String practised = pattern(spun, pattern);
        Measured measured = film.measured();
        Map<Side, Track> heads = new EnumMap<>(Side.class);
        Map<Side, Track> hands = new EnumMap<>(Side.class);
        for (Side side : Side.values()) {
            heads.put(side, head(measured.side(side)));
            hands.put(side, hand(measured.side(side)));
        }
        return new Practice(
                called.orElse(practised.length() > 120 ? practised.substring(0, 120) : practised),
                "",
                Optional.empty(),
                date,
                dated,
                practised,
                film.held().meant(),
                "film",
                clip,
                measured.period(),
                periodError(measured),
                measured.seconds(),
                new Scale(
                        measured.scale().metres(),
                        measured.how().error(),
                        Written.word(measured.how()),
                        measured.scale().mirrored()),
                film.held().amounts().stream()
                        .map(
                                a ->
                                        new Size(
                                                a.fault().key(),
                                                a.side(),
                                                fine(a.value()),
                                                fine(a.error()),
                                                a.fault().unit()))
                        .toList(),
                film.held().findings().stream()
                        .map(
                                f ->
                                        new Finding(
                                                f.fault().key(),
                                                f.side(),
                                                f.said(),
                                                f.mend(),
                                                fine(f.weight())))
                        .toList(),
                heads,
                hands,
                Extras.NONE);
    }

    /**
     * Of a period: that of the slope of a line through even sights of the phase, each as sure as a
     * head's scatter over its pace (least squares of a straight line).
     */
    private static double periodError(Measured measured) {
        double best = Double.POSITIVE_INFINITY;
        for (Side side : Side.values()) {
            Wave head = measured.side(side).head();
            int sized = head.x().length;
            double error = Math.max(1e-6, head.error(0, 0));
            double sights = sized * Math.pow(Math.max(1, head.scatter() / error), 2);
            double pace = 0;
            for (int i = 0; i < MeasuredSide.MOMENTS; i++) {
                double[] speed = head.at(head.period() * i / MeasuredSide.MOMENTS)[1];
                pace += Math.hypot(speed[0], speed[1]) / MeasuredSide.MOMENTS;
            }
            double late = head.scatter() / Math.max(0.1, pace);
            best =
                    Math.min(
                            best,
                            measured.period() * late * Math.sqrt(12 / sights) / measured.seconds());
        }
        return best;
    }

    private static Track head(MeasuredSide side) {
        List<Integer> moments = new ArrayList<>();
        List<Double> error = new ArrayList<>();
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        double[][] light = side.light();
        for (int i = 0; i < Practice.MOMENTS; i++) {
            moments.add(i);
            x.add(fine(light[0][i]));
            y.add(fine(light[1][i]));
            error.add(fine(side.head().error(side.head().period() * i / Practice.MOMENTS, 0)));
        }
        return new Track(moments, x, y, error);
    }

    private static Track hand(MeasuredSide side) {
        List<Integer> moments = new ArrayList<>();
        List<Double> error = new ArrayList<>();
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        for (HandSight sight : side.hands()) {
            moments.add((int) Math.round(sight.time() / side.head().period() * Practice.MOMENTS));
            x.add(fine(sight.x()));
            y.add(fine(sight.y()));
            error.add(fine(sight.error()));
        }
        return new Track(moments, x, y, error);
    }

    private static double fine(double value) {
        return Math.rint(TENTH * value) / TENTH;
    }
}
