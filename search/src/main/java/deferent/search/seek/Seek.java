package deferent.search.seek;

import deferent.motion.pairing.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Seeks links among a space's motions: build, key, join, each in slices that can run anywhere.
 * Between slices it tells how far it is and asks whether to stop; a stopped seek goes on where it
 * stood when run again, or in another process from its checkpoint, and what it has found so far can
 * be asked at any time.
 *
 * <pre>
 * Seek seek = new Seek(SeekRequest.of(Space.of(Space.Grid.USUAL)));
 * seek.run(progress -> show(progress), () -> stopped);
 * for (Answer answer : seek.answers().list()) ...
 * </pre>
 */
public final class Seek {
    private static final int SLICE = 4096;
    private static final int AT_ONCE = 16;

    private final SeekRequest request;
    private final Look look;
    private final Bands bands;
    private long[] keys = new long[0];
    private long[] signatures = new long[0];
    private int keyed;
    private boolean built;
    private Optional<HeadClasses> heads = Optional.empty();
    private Optional<HandClasses> hands = Optional.empty();
    private Matches matches = new Matches();
    private int joined;

    public Seek(SeekRequest request) {
        this.request = request;
        this.look = new Look(request.space(), request.tethers());
        this.bands = Bands.at(request, new double[0]);
    }

    /** A seek that goes on where another stood. */
    public static Seek resume(SeekRequest request, Checkpoint checkpoint) {
        if (!request.space().grid().equals(checkpoint.grid())
                || request.tethers() != checkpoint.tethers()
                || request.nearness() != checkpoint.nearness()) {
            throw new Refusal(
                    "was taken of another seek",
                    "checkpoint",
                    "ask for the same space, tethers, tether and tolerance");
        }
        Seek seek = new Seek(request);
        seek.matches = checkpoint.matches();
        seek.joined = checkpoint.joined();
        return seek;
    }

    /** Runs to the end and tells what was found. */
    public Answers found() {
        run();
        return answers();
    }

    /** Runs to the end; true when all is done. */
    public boolean run() {
        return run(progress -> {}, () -> false);
    }

    /**
     * Runs until done or stopped.
     *
     * @param listener told after every few slices, on the calling thread
     * @param stop asked as often
     * @return whether all is done
     */
    public boolean run(Consumer<SeekProgress> listener, BooleanSupplier stop) {
        Space space = request.space();
        if (!built) {
            keys = space.build(0, space.keys());
            signatures = new long[keys.length];
            built = true;
            tell(listener, SeekProgress.Stage.BUILD, keys.length, keys.length);
        }
        while (keyed < keys.length) {
            if (stop.getAsBoolean()) {
                return false;
            }
            int from = keyed;
            int to = (int) Math.min(keys.length, (long) from + SLICE * AT_ONCE);
            slices(from, to)
                    .forEach(
                            at -> {
                                int end = Math.min(to, at + SLICE);
                                Keyed part = bands.key(keys[at], keys[end - 1] + 1);
                                System.arraycopy(
                                        part.signatures(), 0, signatures, at, part.count());
                            });
            keyed = to;
            tell(listener, SeekProgress.Stage.KEY, keyed, keys.length);
        }
        if (stop.getAsBoolean()) {
            return false;
        }
        HeadClasses carriers = heads.orElseGet(() -> HeadClasses.of(look, keys, signatures));
        heads = Optional.of(carriers);
        HandClasses paths = hands.orElseGet(() -> new HandClasses(look));
        hands = Optional.of(paths);
        Join join = new Join(look, carriers, paths, request.nearness());
        while (joined < carriers.count()) {
            if (stop.getAsBoolean()) {
                return false;
            }
            int to = (int) Math.min(carriers.count(), (long) joined + SLICE * AT_ONCE);
            List<Matches> parts =
                    slices(joined, to)
                            .mapToObj(at -> join.slice(at, Math.min(to, at + SLICE)))
                            .collect(Collectors.toCollection(ArrayList::new));
            parts.forEach(matches::addAll);
            joined = to;
            tell(listener, SeekProgress.Stage.JOIN, joined, carriers.count());
        }
        tell(listener, SeekProgress.Stage.DONE, carriers.count(), carriers.count());
        return true;
    }

    private static IntStream slices(int from, int to) {
        return IntStream.range(0, (to - from + SLICE - 1) / SLICE)
                .map(i -> from + i * SLICE)
                .parallel();
    }

    private void tell(
            Consumer<SeekProgress> listener, SeekProgress.Stage stage, long done, long all) {
        listener.accept(new SeekProgress(stage, done, all, matches.count()));
    }

    /** What has been found so far. */
    public Answers answers() {
        if (heads.isEmpty() || hands.isEmpty()) {
            throw new IllegalStateException("the seek has not come to its join yet");
        }
        return new Answers(request, heads.get(), hands.get(), matches);
    }

    /** Where the seek stands. */
    public Checkpoint checkpoint() {
        return new Checkpoint(
                request.space().grid(),
                request.tethers(),
                request.nearness(),
                joined,
                matches.headArray(),
                matches.handArray(),
                matches.gapArray(),
                matches.comparisons());
    }
}
