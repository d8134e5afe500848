package deferent.film;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.bytedeco.ffmpeg.global.avutil;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Films rendered of the twelve classics as cords let them be spun, spoilt in all the ways of {@link
 * Spoilt}, read, and held against what was true. Twenty small ones; with {@code
 * -Ddeferent.deep=true} two hundred, as a phone at four metres sees them (2.7 mm a pixel).
 */
class FilmsTest {
    private static final boolean DEEP = Boolean.getBoolean("deferent.deep");
    private static final int COUNT = DEEP ? 200 : 20;
    private static final double METRES = DEEP ? 0.0027 : 0.0055;
    private static final double CYCLES = 6.3;
    private static final int FIRST = 20_000; // seed of the first film

    @BeforeAll
    static void beQuiet() {
        avutil.av_log_set_level(avutil.AV_LOG_ERROR);
    }

    @Test
    void headsPeriodAndHandsAreFoundInSpoiltFilms() {
        List<Tried> films = new ArrayList<>();
        for (int i = 0; i < COUNT; i++) {
            films.add(film(FIRST + i));
        }
        films.forEach(f -> System.out.println(f.line()));
        double[] pixels = all(films.stream().map(Tried::pixels).toList());
        double[] metres = all(films.stream().map(Tried::metres).toList());
        double[] hands = all(films.stream().map(Tried::hands).toList());
        double[] periods = films.stream().mapToDouble(Tried::period).sorted().toArray();
        double band =
                films.stream().mapToInt(Tried::banded).sum() / (double) Math.max(1, hands.length);
        long silent = films.stream().filter(f -> f.swapped() && !f.told()).count();
        long swapped = films.stream().filter(Tried::swapped).count();
        System.out.println(
                table(pixels, metres, hands, periods, band)
                        + String.format(
                                Locale.ROOT,
                                "swapped %d, silently %d of %d",
                                swapped,
                                silent,
                                COUNT));
        assertThat(Tried.quantile(pixels, 0.5)).as("heads, pixels").isLessThan(2);
        assertThat(Tried.quantile(metres, 0.5)).as("heads, metres").isLessThan(0.012);
        assertThat(Tried.quantile(metres, 0.95)).as("heads, metres").isLessThan(0.045);
        assertThat(Tried.quantile(periods, 0.95)).as("period, share").isLessThan(0.001);
        assertThat(Tried.quantile(hands, 0.5)).as("hands, metres").isLessThan(0.02);
        assertThat(Tried.quantile(hands, 0.95)).as("hands, metres").isLessThan(0.06);
        assertThat(band).as("share within the band of 90 %").isBetween(0.80, 0.97);
        assertThat(swapped)
                .as("films in which heads were exchanged")
                .isLessThanOrEqualTo(COUNT / 20);
        assertThat(silent).as("of these, untold").isLessThanOrEqualTo(COUNT / 100);
    }

    /** One film of many, all of it told by its seed. */
    static Tried film(int seed) {
        // Seeds that follow on each other give Random numbers that do, too.
        Random random = new Random(seed * 0x9E3779B97F4A7C15L);
        Spun spun = Spun.of(Classics.TWELVE.get(seed % Classics.TWELVE.size()), random);
        Spoilt spoilt = Spoilt.of(random, random.nextBoolean() ? 30 : 60);
        RenderedFilm film = new RenderedFilm(spun.trace(), spoilt, METRES, random.nextLong());
        return Tried.of(spun, film, CYCLES * spun.trace().period());
    }

    private static String table(
            double[] pixels, double[] metres, double[] hands, double[] periods, double band) {
        StringBuilder text = new StringBuilder();
        text.append(row("heads, pixels", 1, pixels));
        text.append(row("heads, cm", 100, metres));
        text.append(row("hands, cm", 100, hands));
        text.append(row("period, %", 100, periods));
        return text + String.format(Locale.ROOT, "in the band of 90 %%: %.1f %%%n", 100 * band);
    }

    private static String row(String name, double unit, double[] sorted) {
        return String.format(
                Locale.ROOT,
                "%-16s q25 %8.4f  median %8.4f  q75 %8.4f  q95 %8.4f  q99 %8.4f%n",
                name,
                unit * Tried.quantile(sorted, 0.25),
                unit * Tried.quantile(sorted, 0.5),
                unit * Tried.quantile(sorted, 0.75),
                unit * Tried.quantile(sorted, 0.95),
                unit * Tried.quantile(sorted, 0.99));
    }

    private static double[] all(List<double[]> parts) {
        return parts.stream().flatMapToDouble(Arrays::stream).sorted().toArray();
    }
}
