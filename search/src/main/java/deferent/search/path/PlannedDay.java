package deferent.search.path;

import java.util.List;

/**
 * What is to be practised on one day, in order; nothing on some.
 *
 * @param day counted from any day
 */
public record PlannedDay(long day, List<Sitting> sittings) {
    public PlannedDay {
        sittings = List.copyOf(sittings);
    }

    /** All of it, minutes. */
    public int minutes() {
        return sittings.stream().mapToInt(Sitting::minutes).sum();
    }
}
