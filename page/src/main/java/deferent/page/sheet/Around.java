package deferent.page.sheet;

import java.util.List;

/**
 * What a sheet tells of other patterns.
 *
 * @param asked whether it tells of any at all
 * @param route whether they are the neighbours on a route: its first pattern grows from nothing and
 *     its last leads nowhere, which needs no saying
 * @param from what it grows from
 * @param to what it leads to
 */
record Around(boolean asked, boolean route, List<Onward> from, List<Onward> to) {
    static final Around NOTHING = new Around(false, false, List.of(), List.of());

    Around {
        from = List.copyOf(from);
        to = List.copyOf(to);
    }
}
