package deferent.app;

import deferent.record.landing.Litter;
import deferent.take.Take;
import deferent.take.TakeProgress;
import deferent.take.Taken;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/** Writes what is taken away, and says what was written. */
final class Drawing {
    private Drawing() {}

    /** What writes a file. */
    interface Writing {
        Optional<Taken> write(Path file, Consumer<TakeProgress> listener, BooleanSupplier stop);
    }

    static void write(Take take, Path file, PrintWriter out, Progress line, Stopping stop) {
        write(take::write, file, out, line, stop);
    }

    static void write(Writing take, Path file, PrintWriter out, Progress line, Stopping stop) {
        Path folder = file.toAbsolutePath().getParent();
        if (folder != null) {
            Litter.sweep(folder).told().ifPresent(out::println);
        }
        Optional<Taken> taken = take.write(file, at -> line.show(at.told()), stop);
        line.clear();
        if (taken.isEmpty()) {
            throw new NotMade(
                    file + " was not written: stopped", "what stood there before is untouched");
        }
        taken.get().files().forEach(written -> out.println("Drawn: " + written));
        out.println("  " + taken.get().told());
        taken.get()
                .caution()
                .ifPresent(
                        caution ->
                                Paragraphs.wrapped("Caution: ", caution, Paragraphs.width())
                                        .forEach(out::println));
        out.flush();
    }
}
