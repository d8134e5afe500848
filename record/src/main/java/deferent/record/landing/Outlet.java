package deferent.record.landing;

import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Locale;
import java.util.Optional;

/**
 * A program's standard output, or what stands for it, which remembers that it could not be written
 * to: writers of text keep that to themselves, and a full disk would pass for a whole answer.
 */
public final class Outlet extends OutputStream {
    private final OutputStream to;
    private Optional<IOException> failure = Optional.empty();

    public Outlet(OutputStream to) {
        this.to = to;
    }

    /** This process's own. */
    public static Outlet standard() {
        return new Outlet(new BufferedOutputStream(new FileOutputStream(FileDescriptor.out)));
    }

    /** Why not all that was given was written. */
    public Optional<IOException> failure() {
        return failure;
    }

    /** Whether nobody reads any longer what is written, as after {@code | head -1}. */
    public boolean closed() {
        // The system tells it in words alone.
        return failure.map(why -> String.valueOf(why.getMessage()))
                .filter(told -> told.toLowerCase(Locale.ROOT).contains("pipe"))
                .isPresent();
    }

    private interface Writing {
        void run() throws IOException;
    }

    private void noting(Writing writing) throws IOException {
        try {
            writing.run();
        } catch (IOException cannot) {
            failure = Optional.of(failure.orElse(cannot));
            throw cannot;
        }
    }

    @Override
    public void write(int one) throws IOException {
        noting(() -> to.write(one));
    }

    @Override
    public void write(byte[] bytes, int from, int count) throws IOException {
        noting(() -> to.write(bytes, from, count));
    }

    @Override
    public void flush() throws IOException {
        noting(to::flush);
    }
}
