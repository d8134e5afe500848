package deferent.film;

import deferent.film.light.LitSpot;
import deferent.film.practice.PractisedFilm;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Timing;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.record.Practice;
import deferent.record.Practice.Clip;
import deferent.record.Practice.DatedBy;
import deferent.record.PracticeJson;
import deferent.reel.Shot;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;

/**
 * Makes the demo's weeks of practice: the invented duo's static spin vs triquetra as cords let it
 * be spun, the right hand's circle and time a little less off each week, rendered and spoilt as a
 * phone would and read by the module itself. Nobody was filmed.
 */
public final class DemoFilms {
    private static final String MEANT = "static spin vs triquetra at 40";
    private static final Instant BEGAN = Instant.parse("2026-10-25T18:30:00Z");
    private static final double SECONDS = 9;
    private static final double PIXEL = 0.005;

    /** By week: how much too small the right circle was spun, metres, and how late, cycles. */
    private static final double[][] OFF = {
        {0.12, 0.06}, {0.1, 0.05}, {0.07, 0.03}, {0.05, 0.015}, {0.03, 0.01}
    };

    private DemoFilms() {}

    /** What was put in, metres below zero and seconds below zero. */
    public static double[] truth(int week) {
        double period = Phrase.parse(MEANT).pairing().period();
        return new double[] {-OFF[week - 1][0], -OFF[week - 1][1] * period};
    }

    public static int weeks() {
        return OFF.length;
    }

    /** One week, rendered and read. */
    public static Practice week(int week) {
        Pairing meant = Phrase.parse(MEANT).pairing();
        Part right = meant.right();
        double radius = right.motion().path().radius() - OFF[week - 1][0];
        Part small = right.with(right.motion().withPath(right.motion().path().resized(radius)));
        Pairing spun = meant.with(Side.RIGHT, small).with(Timing.of(1 - OFF[week - 1][1]));
        Spoilt phone =
                new Spoilt(30, 1 / 60.0, 1.2, 0.22, 0, 0, 0, Spoilt.TWO_LAMPS, 0, 0, 0, 0, true, 0);
        RenderedFilm film =
                new RenderedFilm(Classics.corded(spun, true).orElseThrow(), phone, PIXEL, week);
        List<List<LitSpot>> spots = Tried.spots(film, SECONDS);
        FilmReading reading =
                FilmReading.of(
                        spots,
                        FilmAsk.NOTHING.scaled(PIXEL).meaning(meant, MEANT),
                        film.height,
                        "week " + week);
        Practice read =
                new PractisedFilm(
                                clip(film, week),
                                BEGAN.plus(7L * (week - 1), ChronoUnit.DAYS),
                                DatedBy.FILM)
                        .read(
                                reading,
                                Optional.of("Lantern practice, week " + week + " (invented)"),
                                Optional.of(meant),
                                Optional.empty());
        return PracticeJson.read(
                PracticeJson.write(read)
                        .replaceFirst(
                                "\"date\"",
                                "\"note\": \"Rendered, not filmed: the right circle and its time"
                                        + " are off on purpose.\", \"author\": \"invented demo"
                                        + " data\", \"date\""));
    }

    // Its content is that of its first rendered picture.
    private static Clip clip(RenderedFilm film, int week) {
        Shot shot = film.shot(0);
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(shot.luma());
            return new Clip(
                    "rendered-week-" + week + ".mp4",
                    shot.luma().length,
                    HexFormat.of().formatHex(hash),
                    false);
        } catch (NoSuchAlgorithmException none) {
            throw new IllegalStateException(none);
        }
    }

    public static void main(String[] to) throws IOException {
        for (int week = 1; week <= OFF.length; week++) {
            Files.writeString(
                    Path.of(to[0]).resolve("demo-week-" + week + ".json"),
                    PracticeJson.write(week(week)));
        }
    }
}
