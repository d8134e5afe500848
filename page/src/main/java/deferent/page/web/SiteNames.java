package deferent.page.web;

import deferent.record.Shelf;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What the files of a site are called, before the dot: after their patterns and sets. */
record SiteNames(TaughtShelf shelf, List<String> patterns, List<String> sets) {
    static SiteNames of(TaughtShelf shelf) {
        Set<String> taken = new HashSet<>(Set.of("index"));
        List<String> patterns = new ArrayList<>();
        shelf.patterns().forEach(one -> patterns.add(free(one.pattern().name(), taken)));
        List<String> sets = new ArrayList<>();
        shelf.sets().forEach(one -> sets.add(free(one.reading().name(), taken)));
        return new SiteNames(shelf, List.copyOf(patterns), List.copyOf(sets));
    }

    private static String free(String wanted, Set<String> taken) {
        String name = Shelf.slug(wanted);
        for (int i = 2; !taken.add(name); i++) {
            name = Shelf.slug(wanted) + "-" + i;
        }
        return name;
    }

    String pattern(int i) {
        return patterns.get(i);
    }

    String set(int i) {
        return sets.get(i);
    }

    /** The pattern that is spun in a step of a set. */
    Optional<String> spun(TaughtSet set, int step) {
        return shelf.spun(set.reading(), step).map(patterns::get);
    }
}
