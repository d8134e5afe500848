package deferent.film;

import deferent.film.cycle.Cycles;
import deferent.film.cycle.Wave;
import deferent.film.hand.Doubt;
import deferent.film.hand.HandFinder;
import deferent.film.hand.HandSight;
import deferent.film.hand.PixelScale;
import deferent.film.hand.Upright;
import deferent.film.light.LitSpot;
import deferent.film.light.SpotFinder;
import deferent.motion.shared.Side;
import deferent.reading.tether.Kit;
import deferent.reel.Footage;
import deferent.reel.Shot;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * One film rendered, spoilt, read, and held against what was true.
 *
 * @param name what it shows and what was done to it
 * @param spun what it shows
 * @param pixels how far each head was off in the picture, over the cycle
 * @param metres how far, in metres, the scale being given
 * @param period by how much the period was off, as a share
 * @param swapped whether a head was taken for the other for a part of the film
 * @param told whether that was told
 * @param hands how far the hand was off, metres, where the cord pulls at least its head's weight
 * @param banded of these, how many lay within the band of 90 %
 * @param verdict what was said of it
 */
record Tried(
        String name,
        Spun spun,
        double[] pixels,
        double[] metres,
        double period,
        boolean swapped,
        boolean told,
        double[] hands,
        int banded,
        Verdict verdict) {
    /** 90 % of a scatter that is alike on both axes lies within so many standard deviations. */
    static final double NINETY = Math.sqrt(-2 * Math.log(0.1));

    private static final int MOMENTS = 120;
    private static final double LOST = 60; // pixels off on average: another head, or none

    static Tried of(Spun spun, RenderedFilm film, double seconds) {
        FilmAsk ask =
                FilmAsk.NOTHING
                        .tethered(spun.tether())
                        .scaled(film.metres)
                        .reading(film.spoilt.readout());
        Cycles cycles =
                FilmReading.cycles(spots(film, seconds), ask, film.height, "a rendered film");
        Upright upright = new Metres(cycles, ask, seconds).upright(film.metres);
        return held(spun, film, seconds, cycles, upright, Verdict.of(spun, film, cycles, ask));
    }

    static List<List<LitSpot>> spots(RenderedFilm film, double seconds) {
        SpotFinder finder = new SpotFinder();
        List<List<LitSpot>> frames = new ArrayList<>();
        if (film.spoilt.megabits() == 0) {
            for (double time : film.times(seconds)) {
                frames.add(finder.find(film.shot(time)));
            }
            return frames;
        }
        try {
            Path file = Files.createTempFile("deferent", ".mp4");
            try {
                code(film, seconds, file);
                try (Footage footage = Footage.open(file)) {
                    for (Optional<Shot> shot = footage.next();
                            shot.isPresent();
                            shot = footage.next()) {
                        frames.add(finder.find(shot.get()));
                    }
                }
            } finally {
                Files.delete(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return frames;
    }

    static void code(RenderedFilm film, double seconds, Path file) {
        try (PhoneClip clip =
                new PhoneClip(
                        file,
                        film.width,
                        film.height,
                        film.spoilt.rate(),
                        film.spoilt.megabits())) {
            for (double time : film.times(seconds)) {
                clip.add(film.shot(time));
            }
        }
    }

    private static Tried held(
            Spun spun,
            RenderedFilm film,
            double seconds,
            Cycles cycles,
            Upright upright,
            Verdict verdict) {
        double[][] far = new double[2][2];
        for (int h = 0; h < 2; h++) {
            for (Side side : Side.values()) {
                far[h][side.ordinal()] =
                        DoubleStream.of(off(film, seconds, cycles, h, side)).average().orElse(0);
            }
        }
        boolean straight = far[0][0] + far[1][1] < far[0][1] + far[1][0];
        List<Double> pixels = new ArrayList<>();
        List<Double> metres = new ArrayList<>();
        List<Double> hands = new ArrayList<>();
        int banded = 0;
        boolean swapped = false;
        PixelScale scale = film.scale(upright.roll());
        Doubt doubt = new Doubt(Doubt.USUAL.scale(), upright.error(), Doubt.USUAL.place());
        for (int h = 0; h < 2; h++) {
            Side side = straight == (h == 0) ? Side.LEFT : Side.RIGHT;
            double[] off = off(film, seconds, cycles, h, side);
            swapped |= DoubleStream.of(off).average().orElse(0) > LOST;
            DoubleStream.of(off).forEach(pixels::add);
            Wave wave = scale.upright(cycles.waves().get(h));
            for (double t : times(seconds)) {
                double[] at = wave.at(t + cycles.drift().at(t))[0];
                Vector3D p = film.head(side, t);
                metres.add(Math.hypot(at[0] - p.getX(), at[1] - p.getY()));
            }
            for (HandSight sight : HandFinder.of(wave, spun.tether(), Kit.USUAL, MOMENTS, doubt)) {
                if (sight.pull() >= 1) {
                    Vector3D p = film.hand(side, sight.time());
                    double away = Math.hypot(sight.x() - p.getX(), sight.y() - p.getY());
                    hands.add(away);
                    banded += away < NINETY * sight.error() ? 1 : 0;
                }
            }
        }
        return new Tried(
                spun.name() + "; " + film.spoilt.said() + said(upright),
                spun,
                array(pixels),
                array(metres),
                Math.abs(cycles.period() / film.trace.period() - 1),
                swapped,
                cycles.unsure().stream().mapToDouble(u -> u.to() - u.from()).sum() > 0,
                array(hands),
                banded,
                verdict);
    }

    private static String said(Upright upright) {
        return upright.how() == Upright.How.ASSUMED
                ? ""
                : String.format(
                        Locale.ROOT,
                        ", roll seen as %.1f ± %.1f°",
                        Math.toDegrees(upright.roll()),
                        Math.toDegrees(upright.error()));
    }

    private static double[] times(double seconds) {
        return DoubleStream.iterate(0.1, t -> t + (seconds - 0.2) / 160).limit(160).toArray();
    }

    private static double[] off(
            RenderedFilm film, double seconds, Cycles cycles, int h, Side side) {
        return DoubleStream.of(times(seconds))
                .map(
                        t -> {
                            double[] p = film.seen(film.head(side, t));
                            double[] at = cycles.waves().get(h).at(t + cycles.drift().at(t))[0];
                            return Math.hypot(at[0] - p[0], at[1] - p[1]);
                        })
                .toArray();
    }

    private static double[] array(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    }

    /** Of numbers sorted, that below which a share of them lies. */
    static double quantile(double[] sorted, double share) {
        return sorted.length == 0
                ? 0
                : sorted[(int) Math.min(sorted.length - 1, share * sorted.length)];
    }

    /** One line of the table. */
    String line() {
        return String.format(
                Locale.ROOT,
                "%-62s px %5.2f  cm %4.2f %5.2f  period %8.5f %%  hand cm %5.2f %6.2f in %3.0f %%%s%s",
                name,
                quantile(pixels, 0.5),
                100 * quantile(metres, 0.5),
                100 * quantile(metres, 0.95),
                100 * period,
                100 * quantile(hands, 0.5),
                100 * quantile(hands, 0.95),
                hands.length == 0 ? 0 : 100.0 * banded / hands.length,
                swapped ? told ? "  swapped, told" : "  SWAPPED" : "",
                verdict.right() ? "" : "  said " + verdict.said());
    }
}
