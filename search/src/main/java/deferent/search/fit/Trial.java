package deferent.search.fit;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Size;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/** A pairing on the way to an answer, with what was changed so far. */
record Trial(Pairing pairing, List<SizeChange> changes, boolean exact) {
    static Trial of(Pairing pairing) {
        return new Trial(pairing, List.of(), true);
    }

    /** One size more set; empty where it cannot be, or is beyond its limits. */
    Optional<Trial> with(Size size, double found, Limits limits, boolean exactly) {
        // 90 cm is meant where arithmetic left 89.99999999999999 cm.
        double whole = Math.rint(found * 1e9) / 1e9;
        double value = Math.abs(whole - found) < 1e-13 ? whole : found;
        if (size.read(pairing).isEmpty() || !limits.of(size).holds(value)) {
            return Optional.empty();
        }
        double from = size.read(pairing).getAsDouble();
        if (Math.abs(from - value) < 1e-12) {
            return Optional.of(this);
        }
        List<SizeChange> more = new ArrayList<>(changes);
        Optional<SizeChange> before =
                changes.stream().filter(c -> c.size().equals(size)).findFirst();
        before.ifPresent(more::remove);
        more.add(new SizeChange(size, before.map(SizeChange::from).orElse(from), value));
        return FitLink.set(pairing, size, value).map(p -> new Trial(p, more, exact && exactly));
    }

    /** Without the changes too slight to be told, as far as it closes without them too. */
    Trial plainer(Predicate<Pairing> closes) {
        Trial plainer = this;
        for (SizeChange change : changes) {
            if (change.slight()) {
                List<SizeChange> rest = new ArrayList<>(plainer.changes);
                rest.remove(change);
                Optional<Pairing> without =
                        FitLink.set(plainer.pairing, change.size(), change.from()).filter(closes);
                if (without.isPresent()) {
                    plainer = new Trial(without.get(), rest, exact);
                }
            }
        }
        return plainer;
    }

    Set<Size> sizes() {
        Set<Size> sizes = new HashSet<>();
        changes.forEach(c -> sizes.add(c.size()));
        return sizes;
    }

    /**
     * Whether this one already does with fewer changes, none of them greater, or with the same,
     * what the other does.
     */
    boolean covers(Trial other) {
        if (changes.size() < other.changes.size()) {
            return changes.stream()
                    .allMatch(c -> other.changes.stream().anyMatch(o -> c.noGreater(o)));
        }
        return sizes().equals(other.sizes())
                && changes.stream().allMatch(c -> other.changes.stream().anyMatch(c::same));
    }

    Remedy answer(Pairing from, double gapLeft) {
        return new Remedy(pairing, changes, gapLeft, exact, FitLink.moved(from, pairing));
    }
}
