package deferent.film.held;

import java.util.Optional;
import java.util.function.Supplier;

/** A value that is worked out when it is first asked for, and kept. */
final class WorkedOnce<T> implements Supplier<T> {
    private final Supplier<T> work;
    private Optional<T> kept = Optional.empty();

    WorkedOnce(Supplier<T> work) {
        this.work = work;
    }

    @Override
    public synchronized T get() {
        T value = kept.orElseGet(work);
        kept = Optional.of(value);
        return value;
    }
}
