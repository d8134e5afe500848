package deferent.studio;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.function.IntConsumer;
import java.util.logging.Level;
import java.util.logging.Logger;

/**
 * A few workers and those who wait for them, in their order and no more than a lane has room for.
 * Who waits is told how many are before, and again whenever that changes.
 */
final class Lane implements AutoCloseable {
    private static final Logger LOG = Logger.getLogger(Lane.class.getName());

    private final String name;
    private final int workers;
    private final int room;
    private final ExecutorService threads;
    private final Deque<Turn> waiting = new ArrayDeque<>();
    private int working;
    private boolean closed;

    /**
     * @param workers how many are worked on at a time
     * @param room how many may wait
     */
    Lane(String name, int workers, int room) {
        this.name = name;
        this.workers = workers;
        this.room = room;
        this.threads =
                Executors.newFixedThreadPool(
                        workers,
                        work -> {
                            Thread thread = new Thread(work, "studio-" + name);
                            thread.setDaemon(true);
                            return thread;
                        });
    }

    /** A place in the lane. */
    final class Turn {
        private final Runnable work;
        private final IntConsumer before;
        private int told;

        private Turn(Runnable work, IntConsumer before) {
            this.work = work;
            this.before = before;
        }

        /** Leaves the lane; whether this was in time, before the work began. */
        boolean leave() {
            boolean waited;
            synchronized (Lane.this) {
                waited = waiting.remove(this);
            }
            if (waited) {
                tell();
            }
            return waited;
        }
    }

    /**
     * Waits in the lane for a worker; refuses where it is full.
     *
     * @param before takes how many are before, at work and waiting, while there are any
     */
    Turn take(Runnable work, IntConsumer before) {
        Turn turn = new Turn(work, before);
        synchronized (this) {
            if (closed || waiting.size() >= room) {
                throw new BadRequest(
                        503,
                        "has " + (waiting.size() + working) + " before you and room for no more",
                        "the " + name + " lane",
                        "ask again in a little while");
            }
            waiting.add(turn);
            threads.execute(this::next);
        }
        tell();
        return turn;
    }

    // One call for each turn that was taken; those that left leave one with nothing to do.
    private void next() {
        Turn turn;
        synchronized (this) {
            turn = waiting.poll();
            if (turn == null) {
                return;
            }
            working++;
        }
        tell();
        try {
            turn.work.run();
        } catch (RuntimeException | Error e) {
            LOG.log(Level.SEVERE, "work in the " + name + " lane broke off", e);
        } finally {
            synchronized (this) {
                working--;
            }
            tell();
        }
    }

    private void tell() {
        Map<Turn, Integer> news = new LinkedHashMap<>();
        synchronized (this) {
            int before = working;
            for (Turn turn : waiting) {
                // A free worker is on its way.
                if (before >= workers && turn.told != before) {
                    turn.told = before;
                    news.put(turn, before);
                }
                before++;
            }
        }
        news.forEach((turn, before) -> turn.before.accept(before));
    }

    synchronized int waiting() {
        return waiting.size();
    }

    synchronized int working() {
        return working;
    }

    /** Forgets who waits, and gives who works a little time to clear away what it has begun. */
    @Override
    public void close() {
        synchronized (this) {
            closed = true;
            waiting.clear();
        }
        threads.shutdownNow();
        try {
            threads.awaitTermination(5, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
