package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Semaphore;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class LaneTest {
    private static final Logger LOG = Logger.getLogger(Lane.class.getName());

    private final Lane lane = new Lane("test", 1, 3);
    private final Semaphore goOn = new Semaphore(0);
    private final Queue<String> done = new ConcurrentLinkedQueue<>();
    private final Queue<String> told = new ConcurrentLinkedQueue<>();

    @BeforeEach
    void quiet() {
        LOG.setLevel(Level.OFF);
    }

    @AfterEach
    void close() {
        LOG.setLevel(null);
        goOn.release(100);
        lane.close();
    }

    private Lane.Turn take(String name) {
        return lane.take(
                () -> {
                    goOn.acquireUninterruptibly();
                    done.add(name);
                },
                before -> told.add(name + " " + before));
    }

    private void atWork() {
        Until.holds("one is worked on", () -> lane.working() == 1);
    }

    @Test
    void whoWaitsIsToldHowManyAreBeforeWheneverThatChanges() {
        take("first");
        atWork();
        take("second");
        take("third");
        assertThat(told).containsExactly("second 1", "third 2");
        goOn.release();
        Until.holds("the third has come nearer", () -> told.contains("third 1"));
        goOn.release(2);
        Until.holds("all are done", () -> done.size() == 3);
        assertThat(done).containsExactly("first", "second", "third");
        assertThat(told).containsExactly("second 1", "third 2", "third 1");
    }

    @Test
    void whoLeavesIsNotWorkedForAndTheNextComeNearer() {
        take("first");
        atWork();
        Lane.Turn second = take("second");
        take("third");
        assertThat(second.leave()).isTrue();
        assertThat(second.leave()).isFalse();
        assertThat(told).containsExactly("second 1", "third 2", "third 1");
        goOn.release(2);
        Until.holds("two are done", () -> done.size() == 2);
        Until.holds("nobody works or waits", () -> lane.working() + lane.waiting() == 0);
        assertThat(done).containsExactly("first", "third");
    }

    @Test
    void aFullLaneRefusesAndSaysHowManyAreBefore() {
        take("first");
        atWork();
        List.of("second", "third", "fourth").forEach(this::take);
        assertThatThrownBy(() -> take("fifth"))
                .isInstanceOfSatisfying(
                        BadRequest.class, refused -> assertThat(refused.status()).isEqualTo(503))
                .hasMessageContaining("has 4 before you");
        assertThat(lane.waiting()).isEqualTo(3);
    }

    @Test
    void workThatFailsLeavesTheLaneAsItWas() {
        CountDownLatch begun = new CountDownLatch(1);
        lane.take(
                () -> {
                    begun.countDown();
                    throw new IllegalStateException("of the test");
                },
                before -> {});
        goOn.release();
        take("next");
        Until.holds("the next is done", () -> done.contains("next"));
        assertThat(begun.getCount()).isZero();
        Until.holds("nobody works", () -> lane.working() == 0);
    }
}
