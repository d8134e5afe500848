package deferent.studio;

import deferent.record.landing.Scratch;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The last few files that were taken away, in a folder of this studio alone, until they are
 * fetched: each in a folder of its own under a key nobody guesses. Files are found by what is known
 * here, never by a path that somebody sends.
 */
final class TakenFolder implements AutoCloseable {
    /** Older ones are deleted. */
    static final int MOST = 8;

    private final int most;
    private final Deque<Place> kept = new ArrayDeque<>();
    private Optional<Scratch> scratch = Optional.empty();
    private boolean closed;

    /**
     * @param most how many are kept; older ones are deleted
     */
    TakenFolder(int most) {
        this.most = most;
    }

    /** Where one file goes, and what stands beside it. */
    record Place(String key, Path folder) {}

    /** A new place, empty. */
    synchronized Place open() {
        if (closed) {
            throw new IllegalStateException("the studio is closing");
        }
        try {
            if (scratch.isEmpty()) {
                scratch = Optional.of(Scratch.open());
            }
            String key = OneUse.random();
            return new Place(key, Files.createDirectory(scratch.get().folder().resolve(key)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Keeps what was written there. */
    synchronized void keep(Place place) {
        if (closed) {
            discard(place);
            return;
        }
        kept.addLast(place);
        while (kept.size() > most) {
            discard(kept.removeFirst());
        }
    }

    /** Throws away whatever is there. */
    void discard(Place place) {
        delete(place.folder());
    }

    synchronized Optional<Path> find(String key, String name) {
        return there(key).stream()
                .filter(file -> String.valueOf(file.getFileName()).equals(name))
                .findFirst();
    }

    /** The first file under a key, whatever it is called. */
    synchronized Optional<Path> find(String key) {
        return there(key).stream().findFirst();
    }

    private List<Path> there(String key) {
        Optional<Place> found = Optional.empty();
        for (Place place : kept) {
            if (OneUse.same(place.key(), key)) {
                found = Optional.of(place);
            }
        }
        return found.map(place -> list(place.folder())).orElse(List.of());
    }

    /** Where the files are, once there were any. */
    synchronized Optional<Path> folder() {
        return scratch.map(Scratch::folder);
    }

    @Override
    public synchronized void close() {
        closed = true;
        kept.clear();
        scratch.ifPresent(Scratch::close);
    }

    private static List<Path> list(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void delete(Path folder) {
        try {
            Scratch.delete(folder);
        } catch (IOException e) {
            // Somebody still writes or reads there; it goes with the whole folder.
            return;
        }
    }
}
