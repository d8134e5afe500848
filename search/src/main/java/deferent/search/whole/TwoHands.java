package deferent.search.whole;

import deferent.motion.shared.Side;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.Function;

/** What is worked out of either hand by itself. The answer is the same one by one or at once. */
record TwoHands<T>(T left, T right) {
    /**
     * One by one, or the right hand's on a thread of its own that ends with it. Who calls this off
     * by interrupting calls off both.
     */
    static <T> TwoHands<T> of(Function<Side, T> of, boolean atOnce) {
        if (!atOnce) {
            return new TwoHands<>(of.apply(Side.LEFT), of.apply(Side.RIGHT));
        }
        FutureTask<T> right = new FutureTask<>(() -> of.apply(Side.RIGHT));
        Thread thread = new Thread(right, "the right hand");
        thread.setDaemon(true);
        thread.start();
        try {
            return new TwoHands<>(of.apply(Side.LEFT), right.get());
        } catch (ExecutionException failed) {
            throw failed.getCause() instanceof RuntimeException own
                    ? own
                    : new IllegalStateException(failed.getCause());
        } catch (InterruptedException off) {
            Thread.currentThread().interrupt();
            throw new CancellationException("called off");
        } finally {
            right.cancel(true);
        }
    }
}
