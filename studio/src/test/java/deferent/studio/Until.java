package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;

/** Waits for a condition, half a minute at the most. */
final class Until {
    private Until() {}

    static void holds(String told, BooleanSupplier condition) {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(30);
        while (!condition.getAsBoolean() && System.nanoTime() < end) {
            LockSupport.parkNanos(10_000_000);
        }
        assertThat(condition.getAsBoolean()).as(told).isTrue();
    }
}
