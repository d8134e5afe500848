package deferent.film.held;

import deferent.motion.shared.Side;
import java.util.Optional;

/**
 * How far off one kind of thing is, worth saying or not: what practice is compared by.
 *
 * @param side whose; empty for both
 * @param value in SI; of {@link Fault#LATE} seconds by which the right is ahead of the left
 * @param error its standard deviation: what the fit leaves over, and what the scale leaves open
 */
public record OffAmount(Fault fault, Optional<Side> side, double value, double error) {}
