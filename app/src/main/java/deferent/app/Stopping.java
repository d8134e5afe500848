package deferent.app;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;

/**
 * Ctrl-C while long work runs: the work is asked to stop, and the program ends only when what was
 * found so far has been said, or after ten seconds.
 *
 * <pre>
 * try (Stopping stop = new Stopping()) {
 *     boolean done = seek.run(progress, stop);
 *     ... say what was found, and flush
 * }
 * </pre>
 */
final class Stopping implements AutoCloseable, BooleanSupplier {
    private static final long PATIENCE = 10;

    private final CountDownLatch said = new CountDownLatch(1);
    private final Thread hook = new Thread(this::stop, "stopping");
    private volatile boolean stopped;

    Stopping() {
        Runtime.getRuntime().addShutdownHook(hook);
    }

    private void stop() {
        stopped = true;
        try {
            if (!said.await(PATIENCE, TimeUnit.SECONDS)) {
                // Whatever is still at work is cut off.
                return;
            }
        } catch (InterruptedException hurried) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public boolean getAsBoolean() {
        return stopped;
    }

    @Override
    public void close() {
        said.countDown();
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException endingAlready) {
            // Then the hook runs now, and the latch lets it go.
            stopped = true;
        }
    }
}
