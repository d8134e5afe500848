package deferent.page.sheet;

import deferent.record.PatternDocument;
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
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Works out many lessons at once, as many as there are processors. */
final class Lessons {
    private Lessons() {}

    /**
     * In the order of the patterns; empty where it was stopped.
     *
     * @param listener told after each, on the calling thread
     * @param stop asked before each is begun, by the thread that begins it
     */
    static Optional<List<Lesson>> of(
            List<PatternDocument> patterns,
            Edition edition,
            Consumer<PrintProgress> listener,
            BooleanSupplier stop) {
        int n = patterns.size();
        List<@Nullable Lesson> found = new ArrayList<>(Collections.nCopies(n, null));
        ExecutorService workers =
                Executors.newFixedThreadPool(
                        Math.max(1, Math.min(n, Runtime.getRuntime().availableProcessors())),
                        task -> {
                            Thread thread = new Thread(task, "lessons");
                            thread.setDaemon(true);
                            return thread;
                        });
        try {
            ExecutorCompletionService<Boolean> service = new ExecutorCompletionService<>(workers);
            for (int i = 0; i < n; i++) {
                int at = i;
                service.submit(
                        () -> {
                            if (stop.getAsBoolean()) {
                                return false;
                            }
                            Lesson lesson = Lesson.of(patterns.get(at), edition);
                            synchronized (found) {
                                found.set(at, lesson);
                            }
                            return true;
                        });
            }
            for (int done = 1; done <= n; done++) {
                Future<Boolean> one = service.take();
                if (!one.get()) {
                    return Optional.empty();
                }
                listener.accept(new PrintProgress(PrintProgress.Step.READING, done, n));
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
        List<Lesson> all = new ArrayList<>();
        synchronized (found) {
            for (Lesson lesson : found) {
                if (lesson == null) {
                    return Optional.empty();
                }
                all.add(lesson);
            }
        }
        return Optional.of(all);
    }
}
