package deferent.search.crossing;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.IntStream;

/**
 * All crossings of a shelf's patterns with each other, as they stand: every two are compared once,
 * since a moment that can be passed one way can be passed the other. Rows are independent slices;
 * between them the table tells how far it is and asks whether to stop, and a stopped table goes on
 * where it stood when run again.
 *
 * <pre>
 * ShelfTable table = new ShelfTable(patterns, CrossingRequest.USUAL);
 * table.run(progress -> show(progress), () -> stopped);
 * ShelfMap map = ShelfMap.of(table);
 * </pre>
 */
public final class ShelfTable {
    private static final int AT_ONCE = 8;

    private final List<Pairing> shelf;
    private final CrossingRequest request;
    private final List<States> states = new ArrayList<>();
    private final List<Boxes> boxes = new ArrayList<>();
    private final ShelfCrossings crossings = new ShelfCrossings();
    private int rows;

    /**
     * @param request with {@link Freedom#NONE}: what one pattern needs moved to be crossed into
     *     would have to be moved back for the next
     */
    public ShelfTable(List<Pairing> shelf, CrossingRequest request) {
        if (!request.freedom().equals(Freedom.NONE)) {
            throw new Refusal(
                    "lets patterns be moved",
                    "table of a shelf",
                    "compare them as they stand, or two of them at a time");
        }
        this.shelf = List.copyOf(shelf);
        this.request = request;
    }

    public int size() {
        return shelf.size();
    }

    public List<Pairing> shelf() {
        return shelf;
    }

    public CrossingRequest request() {
        return request;
    }

    /** Runs to the end; true when all is done. */
    public boolean run() {
        return run(progress -> {}, () -> false);
    }

    /**
     * Runs until done or stopped.
     *
     * @param listener told after every few rows, on the calling thread
     * @param stop asked as often
     * @return whether all is done
     */
    public boolean run(Consumer<TableProgress> listener, BooleanSupplier stop) {
        prepare();
        while (rows < shelf.size()) {
            if (stop.getAsBoolean()) {
                return false;
            }
            int from = rows;
            int to = Math.min(shelf.size(), from + AT_ONCE);
            List<ShelfCrossings> parts =
                    IntStream.range(from, to)
                            .parallel()
                            .mapToObj(row -> slice(row, row + 1))
                            .toList();
            parts.forEach(crossings::addAll);
            rows = to;
            listener.accept(new TableProgress(pairs(rows), pairs(shelf.size()), crossings.count()));
        }
        return true;
    }

    private long pairs(long row) {
        long n = shelf.size();
        return row * (2 * n - row - 1) / 2;
    }

    private void prepare() {
        if (!states.isEmpty()) {
            return;
        }
        List<States> all = shelf.parallelStream().map(States::of).toList();
        for (States s : all) {
            states.add(s);
            boxes.add(Boxes.of(s, new Gauge(request, s)));
        }
    }

    /** The crossings of the patterns {@code from} to below {@code to} with all that come later. */
    public ShelfCrossings slice(int from, int to) {
        prepare();
        ShelfCrossings found = new ShelfCrossings();
        for (int i = from; i < to; i++) {
            for (int j = i + 1; j < shelf.size(); j++) {
                add(i, j, found);
            }
        }
        return found;
    }

    private void add(int i, int j, ShelfCrossings found) {
        States a = states.get(i);
        States b = states.get(j);
        for (Meeting meeting : CrossingSearch.of(a, boxes.get(i), b, boxes.get(j), request)) {
            double fromTime = meeting.a() * a.period();
            double toTime = meeting.b() * b.period();
            double[] x = new double[State24.SIZE];
            double[] y = new double[State24.SIZE];
            a.exact(fromTime, x);
            b.exact(toTime, y);
            Differences d = Differences.of(x, y, request);
            found.add(
                    new ShelfCrossing(
                            i, j, fromTime, toTime, d.place(), d.speed(), d.roughness().weights()));
        }
    }

    /** What has been found so far, by pattern, then by time. */
    public ShelfCrossings crossings() {
        return crossings;
    }

    /** The whole of a crossing: what changes, the props' timing, how long it stays open. */
    public Crossing crossing(ShelfCrossing crossing) {
        prepare();
        States from = states.get(crossing.from());
        States to = states.get(crossing.to());
        return Crossing.of(
                from,
                to,
                new Meeting(
                        crossing.fromTime() / from.period(), crossing.toTime() / to.period(), 0, 0),
                request,
                false);
    }
}
