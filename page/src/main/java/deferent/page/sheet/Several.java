package deferent.page.sheet;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorCompletionService;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.BooleanSupplier;
import java.util.function.IntConsumer;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;

/** Several things worked out at once, as many as there are processors. */
final class Several {
    private Several() {}

    /**
     * In order; empty where it was stopped.
     *
     * @param count how many
     * @param work works one out, by its number
     * @param listener told after each how many are done, on the calling thread
     * @param stop asked before each is begun, by the thread that begins it
     */
    static <T> Optional<List<T>> of(
            int count, IntFunction<T> work, IntConsumer listener, BooleanSupplier stop) {
        List<@Nullable T> found = new ArrayList<>(Collections.nCopies(count, null));
        ExecutorService workers =
                Executors.newFixedThreadPool(
                        Math.max(1, Math.min(count, Runtime.getRuntime().availableProcessors())),
                        task -> {
                            Thread thread = new Thread(task, "print");
                            thread.setDaemon(true);
                            return thread;
                        });
        try {
            ExecutorCompletionService<Boolean> service = new ExecutorCompletionService<>(workers);
            for (int i = 0; i < count; i++) {
                int at = i;
                service.submit(
                        () -> {
                            if (stop.getAsBoolean()) {
                                return false;
                            }
                            T one = work.apply(at);
                            synchronized (found) {
                                found.set(at, one);
                            }
                            return true;
                        });
            }
            for (int done = 1; done <= count; done++) {
                Future<Boolean> one = service.take();
                if (!one.get()) {
                    return Optional.empty();
                }
                listener.accept(done);
            }
        } catch (InterruptedException hurried) {
            Thread.currentThread().interrupt();
            return Optional.empty();
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            throw new IllegalStateException(failed);
        } finally {
            workers.shutdownNow();
        }
        List<T> all = new ArrayList<>();
        synchronized (found) {
            for (T one : found) {
                if (one == null) {
                    return Optional.empty();
                }
                all.add(one);
            }
        }
        return Optional.of(all);
    }
}
