package deferent.search.route;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.search.set.PairBook;
import deferent.search.transition.Hindrance;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.IntStream;

/**
 * What leads from each pattern of a shelf to each other, as far as it is worked out. A pair stands
 * under its two places, and only the gentlest transition is kept of it: all of them are found again
 * in the {@link PairBook} that the table asks.
 *
 * <p>A slice is all that is between a pattern and those before it on the shelf, there and back.
 * Slices are independent, so they can be worked out anywhere in any order; and a shelf to which one
 * pattern was added has one slice more ({@link #with}). Pairs whose tethers differ cost nothing,
 * any other some 0.15 s of one core, and a pattern that is new up to a second once. So a shelf of
 * 24 patterns takes about a minute and one of 200, with 40 000 pairs, about an hour: whoever wants
 * a single route asks a {@link RouteSearch}, which works out a few pairs. Several threads may share
 * a table.
 *
 * <pre>
 * ShelfTable table = new ShelfTable(patterns, new PairBook(Grade.USUAL, performer, kit));
 * table.run(progress -> show(progress), pairs -> draw(pairs), () -> stopped);
 * </pre>
 */
public final class ShelfTable {
    /** Pairs between two looks at the clock; two cores work at them. */
    private static final int AT_ONCE = 4;

    private static final double SAME_LENGTH = 1e-6; // metres

    private final List<Pairing> shelf;
    private final PairBook book;
    private final Looking looking;
    private final Map<Key, ShelfPair> pairs = new ConcurrentHashMap<>();
    private final AtomicInteger leading = new AtomicInteger();

    private record Key(int from, int to) {}

    /** What works a pair out. */
    interface Looking {
        ShelfPair between(int from, int to);
    }

    /**
     * @param book who spins it, with what, how hard it may be, and what is known of pairs
     */
    public ShelfTable(List<Pairing> shelf, PairBook book) {
        this.shelf = List.copyOf(shelf);
        this.book = book;
        this.looking =
                (from, to) ->
                        ShelfPair.of(
                                from, to, book.between(this.shelf.get(from), this.shelf.get(to)));
    }

    /** A table whose pairs are worked out another way. */
    ShelfTable(List<Pairing> shelf, PairBook book, Looking looking) {
        this.shelf = List.copyOf(shelf);
        this.book = book;
        this.looking = looking;
    }

    /** The table of another shelf, with all that is known of the patterns that are on both. */
    public ShelfTable with(List<Pairing> other) {
        ShelfTable table = new ShelfTable(other, book);
        Map<Pairing, Integer> was = new HashMap<>();
        for (int i = 0; i < shelf.size(); i++) {
            was.putIfAbsent(shelf.get(i), i);
        }
        List<Optional<Integer>> old =
                other.stream().map(p -> Optional.ofNullable(was.get(p))).toList();
        for (int from = 0; from < other.size(); from++) {
            for (int to = 0; to < other.size(); to++) {
                if (from != to && old.get(from).isPresent() && old.get(to).isPresent()) {
                    ShelfPair known = pairs.get(new Key(old.get(from).get(), old.get(to).get()));
                    if (known != null) {
                        table.put(known.at(from, to));
                    }
                }
            }
        }
        return table;
    }

    public int size() {
        return shelf.size();
    }

    public List<Pairing> shelf() {
        return shelf;
    }

    /** How far it has come. */
    public TableProgress progress() {
        return new TableProgress(pairs.size(), size() * (size() - 1), leading.get());
    }

    /** Whether every pair is worked out. */
    public boolean complete() {
        return pairs.size() == size() * (size() - 1);
    }

    /** All that is known, by the pattern that is left, then by the one that is joined. */
    public List<ShelfPair> pairs() {
        List<ShelfPair> known = new ArrayList<>();
        for (int from = 0; from < size(); from++) {
            for (int to = 0; to < size(); to++) {
                if (from != to) {
                    known(from, to).ifPresent(known::add);
                }
            }
        }
        return known;
    }

    /** A pair, where it is known or costs nothing. */
    public Optional<ShelfPair> known(int from, int to) {
        return Optional.ofNullable(pairs.get(new Key(place(from), place(to))))
                .or(() -> free(from, to));
    }

    /** A pair, worked out where it is not known. */
    public ShelfPair pair(int from, int to) {
        return known(from, to).orElseGet(() -> put(looking.between(from, to)));
    }

    /** What is told without looking. */
    private Optional<ShelfPair> free(int from, int to) {
        Pairing one = shelf.get(from);
        Pairing other = shelf.get(to);
        if (one.equals(other)) {
            return Optional.of(put(ShelfPair.same(from, to)));
        }
        for (Side side : Side.values()) {
            double by = one.part(side).tether().length() - other.part(side).tether().length();
            if (Math.abs(by) > SAME_LENGTH) {
                return Optional.of(put(ShelfPair.none(from, to, Hindrance.TETHERS)));
            }
        }
        return Optional.empty();
    }

    private ShelfPair put(ShelfPair pair) {
        if (pairs.put(new Key(pair.from(), pair.to()), pair) == null && pair.leads()) {
            leading.incrementAndGet();
        }
        return pair;
    }

    private int place(int i) {
        if (i < 0 || i >= size()) {
            throw new Refusal(
                    "is " + i, "a pattern's place on the shelf", "give 0 to below " + size());
        }
        return i;
    }

    /** The pairs of the patterns {@code from} to below {@code to} with those before each. */
    public List<ShelfPair> slice(int from, int to) {
        List<ShelfPair> slice = new ArrayList<>();
        for (int i = from; i < to; i++) {
            for (int before = 0; before < i; before++) {
                slice.add(pair(before, i));
                slice.add(pair(i, before));
            }
        }
        return slice;
    }

    /**
     * Works out all that is not known yet, slice by slice, until done or stopped; stopped, it goes
     * on where it stood when run again. Those that it tells of are told on the calling thread.
     *
     * @param listener hears after every few pairs how far it has come
     * @param found hears of each pair in turn, those that were known before first
     * @param stop asked every few pairs
     * @return whether all is done
     */
    public boolean run(
            Consumer<TableProgress> listener,
            Consumer<List<ShelfPair>> found,
            BooleanSupplier stop) {
        found.accept(pairs());
        List<List<Key>> slices = new ArrayList<>();
        for (int i = 0; i < size(); i++) {
            slices.add(unknown(i, found));
        }
        List<Integer> left =
                IntStream.range(0, size()).filter(i -> !slices.get(i).isEmpty()).boxed().toList();
        for (int at = 0; at < left.size(); at++) {
            int next = at + 1 < left.size() ? left.get(at + 1) : left.get(at);
            List<Key> slice = slices.get(left.get(at));
            for (int first = 0; first < slice.size(); first += AT_ONCE) {
                if (stop.getAsBoolean()) {
                    return false;
                }
                List<Key> some = slice.subList(first, Math.min(slice.size(), first + AT_ONCE));
                // The next slice's pattern is drawn meanwhile, once.
                boolean ahead = first == 0;
                found.accept(
                        IntStream.range(ahead ? -1 : 0, some.size())
                                .parallel()
                                .mapToObj(i -> i < 0 ? draw(next) : looked(some.get(i)))
                                .flatMap(Optional::stream)
                                .toList());
                listener.accept(progress());
            }
        }
        return true;
    }

    /** Pairs of a slice that have to be worked out; of those that cost nothing it tells. */
    private List<Key> unknown(int i, Consumer<List<ShelfPair>> found) {
        List<Key> unknown = new ArrayList<>();
        List<ShelfPair> free = new ArrayList<>();
        for (int before = 0; before < i; before++) {
            for (Key key : List.of(new Key(before, i), new Key(i, before))) {
                if (!pairs.containsKey(key)) {
                    known(key.from(), key.to()).ifPresentOrElse(free::add, () -> unknown.add(key));
                }
            }
        }
        if (!free.isEmpty()) {
            found.accept(free);
        }
        return unknown;
    }

    private Optional<ShelfPair> draw(int pattern) {
        book.spun(shelf.get(pattern));
        return Optional.empty();
    }

    private Optional<ShelfPair> looked(Key key) {
        return Optional.of(pair(key.from(), key.to()));
    }
}
