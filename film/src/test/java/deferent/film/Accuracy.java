package deferent.film;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * How near many films came to what was true, all their moments put together.
 *
 * @param films each by itself
 * @param pixels off in the picture, going up
 * @param metres off, the scale being given
 * @param hands off, metres, where the cord pulls at least its head's weight
 * @param periods off, as shares
 */
record Accuracy(
        List<Tried> films, double[] pixels, double[] metres, double[] hands, double[] periods) {
    private static final int WORST = 5;

    static Accuracy of(List<Tried> films) {
        return new Accuracy(
                films,
                all(films, Tried::pixels),
                all(films, Tried::metres),
                all(films, Tried::hands),
                films.stream().mapToDouble(Tried::period).sorted().toArray());
    }

    private static double[] all(List<Tried> films, Function<Tried, double[]> part) {
        return films.stream().map(part).flatMapToDouble(Arrays::stream).sorted().toArray();
    }

    double pixels(double share) {
        return Tried.quantile(pixels, share);
    }

    double metres(double share) {
        return Tried.quantile(metres, share);
    }

    double hands(double share) {
        return Tried.quantile(hands, share);
    }

    double period(double share) {
        return Tried.quantile(periods, share);
    }

    double band() {
        return films.stream().mapToInt(Tried::banded).sum() / (double) hands.length;
    }

    long swapped() {
        return films.stream().filter(Tried::swapped).count();
    }

    long silent() {
        return films.stream().filter(f -> f.swapped() && !f.told()).count();
    }

    /** Share of the films spun as meant that are called by their name. */
    double named() {
        return right(f -> f.spun().fault().isEmpty());
    }

    /** The same of those whose figure was kept. */
    double namedByFigure() {
        return right(f -> f.spun().fault().isEmpty() && f.spun().figure());
    }

    /** Share of those with a fault of which it is said first. */
    double faults() {
        return right(f -> f.spun().fault().isPresent());
    }

    private double right(Predicate<Tried> these) {
        List<Tried> some = films.stream().filter(these).toList();
        return some.isEmpty()
                ? 1
                : (double) some.stream().filter(f -> f.verdict().right()).count() / some.size();
    }

    private String share(String what, Predicate<Tried> these) {
        long count = films.stream().filter(these).count();
        return String.format(
                Locale.ROOT, "%-42s %5.1f %% of %d%n", what, 100 * right(these), count);
    }

    String table() {
        StringBuilder text = new StringBuilder();
        text.append(row("heads, pixels", 1, pixels));
        text.append(row("heads, cm", 100, metres));
        text.append(row("hands, cm", 100, hands));
        text.append(row("period, %", 100, periods));
        text.append(
                String.format(
                        Locale.ROOT,
                        "period worst %.4f %%, within 0.1 %% in %.1f %%%n"
                                + "in the band of 90 %%: %.1f %%%n"
                                + "swapped %d, untold %d of %d%n",
                        100 * period(1),
                        100.0
                                * Arrays.stream(periods).filter(p -> p < 0.001).count()
                                / periods.length,
                        100 * band(),
                        swapped(),
                        silent(),
                        films.size()));
        Predicate<Tried> meant = f -> f.spun().fault().isEmpty();
        text.append(share("name first", meant));
        text.append(share("name first, figure kept", meant.and(f -> f.spun().figure())));
        text.append(share("name first, hand path kept", meant.and(f -> !f.spun().figure())));
        text.append(share("fault first", meant.negate()));
        text.append("worst:\n");
        films.stream()
                .sorted(Comparator.comparingDouble(Accuracy::bad).reversed())
                .limit(WORST)
                .forEach(f -> text.append(f.line()).append('\n'));
        return text.toString();
    }

    // Against the goals, the worst of them.
    private static double bad(Tried film) {
        double off =
                Math.max(
                        Math.max(
                                Tried.quantile(film.pixels(), 0.5) / 2,
                                Tried.quantile(film.metres(), 0.95) / 0.03),
                        Math.max(film.period() / 0.001, Tried.quantile(film.hands(), 0.95) / 0.06));
        return off + (film.swapped() ? 10 : 0) + (film.verdict().right() ? 0 : 2);
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
}
