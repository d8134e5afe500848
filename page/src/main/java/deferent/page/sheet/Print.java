package deferent.page.sheet;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/** What is laid out in pages and written as PDF. */
public interface Print {
    /** Of the file. */
    String title();

    /** The pages laid out; empty where it was stopped. */
    Optional<List<Leaf>> leaves(Consumer<PrintProgress> listener, BooleanSupplier stop);

    /** Writes it as PDF. */
    default void write(OutputStream out) throws IOException {
        write(out, progress -> {}, () -> false);
    }

    /**
     * Writes it as PDF.
     *
     * @param listener told how far it is, on the calling thread
     * @param stop asked now and then, from several threads; once stopped nothing is written
     * @return whether it was written
     */
    default boolean write(OutputStream out, Consumer<PrintProgress> listener, BooleanSupplier stop)
            throws IOException {
        Optional<List<Leaf>> leaves = leaves(listener, stop);
        return leaves.isPresent()
                && Press.print(
                        leaves.get(),
                        title(),
                        out,
                        PrintProgress.printing(listener, leaves.get().size()),
                        stop);
    }
}
