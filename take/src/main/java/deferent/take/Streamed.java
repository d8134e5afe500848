package deferent.take;

import deferent.record.landing.Landing;
import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/** An ending whose files are written from the first byte to the last. */
interface Streamed extends Ending {
    /** Writes what was checked. */
    interface Writing {
        /**
         * Writes it.
         *
         * @return what was written, in words; empty where it was stopped
         */
        Optional<String> write(
                OutputStream out, Consumer<TakeProgress> listener, BooleanSupplier stop)
                throws IOException;

        /** What is written; empty where it was stopped. */
        default Optional<byte[]> bytes(BooleanSupplier stop) throws IOException {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            return write(out, p -> {}, stop).map(told -> out.toByteArray());
        }

        static Writing whole(String told, byte[] bytes) {
            return (out, listener, stop) -> {
                out.write(bytes);
                return Optional.of(told);
            };
        }
    }

    /** All of a take is checked here, before any file is touched. */
    Writing writing(Take take);

    @Override
    default Optional<Taken> write(
            Take take, Path target, Consumer<TakeProgress> listener, BooleanSupplier stop) {
        Writing writing = writing(take);
        try (Landing landing = Landing.at(target)) {
            OutputStream out =
                    new BufferedOutputStream(Channels.newOutputStream(landing.channel()));
            Optional<String> told = writing.write(out, listener, stop);
            if (told.isEmpty()) {
                return Optional.empty();
            }
            out.flush();
            String size = Taken.size(landing.size());
            landing.land();
            return Optional.of(
                    new Taken(List.of(target), told.get() + ", " + size, take.caution()));
        } catch (IOException e) {
            throw Landing.cannot(target, e);
        }
    }
}
