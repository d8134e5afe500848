package deferent.studio;

import java.util.function.Consumer;

/** Passes on how far work has come, at most ten times a second, which is all that a page shows. */
final class Paced<T> implements Consumer<T> {
    private static final long EVERY_NANOS = 100_000_000L;

    private final Consumer<T> to;
    private long last = System.nanoTime() - 2 * EVERY_NANOS;

    Paced(Consumer<T> to) {
        this.to = to;
    }

    @Override
    public void accept(T progress) {
        long now = System.nanoTime();
        if (now - last > EVERY_NANOS) {
            last = now;
            to.accept(progress);
        }
    }
}
