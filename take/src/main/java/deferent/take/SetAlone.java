package deferent.take;

import deferent.motion.pairing.Refusal;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * How a file ends in which a set is taken away, and which means no pattern, or another file of one.
 */
record SetAlone(String key, String mediaType, String words, Family family, List<Offer> offers)
        implements Ending {
    private static Refusal pattern() {
        return new Refusal("is written of sets alone", "the file", "name a set");
    }

    @Override
    public Optional<Taken> write(
            Take take, Path target, Consumer<TakeProgress> listener, BooleanSupplier stop) {
        throw pattern();
    }

    @Override
    public Optional<Preview> preview(Take take, boolean calm, BooleanSupplier stop) {
        throw pattern();
    }
}
