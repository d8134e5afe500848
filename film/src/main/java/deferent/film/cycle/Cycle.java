package deferent.film.cycle;

import java.util.List;

/**
 * What one light does that comes back, where there is no other beside it.
 *
 * @param wave its mean cycle, with its period
 */
public record Cycle(Wave wave) {
    /** Of one light's sights. */
    public static Cycle of(Sights sights) {
        List<Sights> alone = List.of(sights);
        double period = Period.settled(alone, Drift.NONE, Period.of(alone));
        return new Cycle(WaveFit.of(sights, new double[sights.count()], period));
    }
}
