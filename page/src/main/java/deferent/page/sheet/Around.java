package deferent.page.sheet;

import java.util.List;

/**
 * What a sheet tells of other patterns.
 *
 * @param asked whether it tells of any at all
 * @param oneWay whether they are gone one way, as on a route; else what it leads to it grows from
 *     too, since a moment that can be passed one way can be passed the other
 * @param from what it grows from, where that is told apart
 * @param to what it leads to
 */
record Around(boolean asked, boolean oneWay, List<Onward> from, List<Onward> to) {
    static final Around NOTHING = new Around(false, false, List.of(), List.of());

    /** What it leads to and grows from. */
    static Around both(List<Onward> to) {
        return new Around(true, false, List.of(), to);
    }

    Around {
        from = List.copyOf(from);
        to = List.copyOf(to);
    }
}
