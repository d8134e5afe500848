package deferent.film;

import deferent.film.cycle.Cycles;
import deferent.film.held.Finding;
import deferent.film.held.NearestPairing;
import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Side;
import deferent.motion.trade.Seen;
import deferent.motion.trade.Trade;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What was said of a film: its name where it was spun as meant, else what is off first.
 *
 * @param right whether that is so
 * @param said in short
 */
record Verdict(boolean right, String said) {
    static Verdict of(Spun spun, RenderedFilm film, Cycles cycles, FilmAsk ask) {
        return spun.fault().isPresent()
                ? fault(
                        spun,
                        FilmReading.of(
                                cycles,
                                ask.meaning(spun.meant(), false).first(film.further(cycles))))
                : name(spun, FilmReading.of(cycles, ask).nearest().orElseThrow());
    }

    private static Verdict name(Spun spun, NearestPairing nearest) {
        Pairing found = nearest.pairing();
        Pairing meant = spun.meant();
        boolean right =
                names(found).equals(names(meant))
                        && found.direction() == meant.direction()
                        && found.timing().ahead() == meant.timing().ahead();
        return new Verdict(
                right,
                nearest.phrase().orElse(String.join(" vs ", names(found)))
                        + ", kept "
                        + nearest.kept().values());
    }

    private static Verdict fault(Spun spun, FilmReading film) {
        Optional<Finding> first = film.held().findings().stream().findFirst();
        boolean right =
                first.isPresent()
                        && first.get().fault() == spun.fault().orElseThrow()
                        && first.get().side().equals(Optional.of(spun.faulty()));
        return new Verdict(
                right,
                first.map(f -> String.format(Locale.ROOT, "\"%s\"", f.said()))
                        .orElse("nothing is off"));
    }

    // Which hand is which cannot be told from lights about one centre: names count either way.
    static List<String> names(Pairing pairing) {
        return Stream.of(Side.values())
                .map(side -> Trade.called(Seen.of(pairing, side)).name())
                .sorted()
                .toList();
    }
}
