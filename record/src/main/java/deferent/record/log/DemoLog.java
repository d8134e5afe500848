package deferent.record.log;

import deferent.record.DemoShelf;
import deferent.record.LogEntry;
import deferent.record.LogJson;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/**
 * Five weeks of the invented duo's log, up to their winter market: what they spun between the films
 * that are kept as a demo, and too much of it in the last week. Each entry says that it is
 * invented.
 */
public final class DemoLog {
    private DemoLog() {}

    /** The eldest first. */
    public static List<LogEntry> entries() {
        try (InputStream in = DemoShelf.class.getResourceAsStream("demo-log.json")) {
            byte[] bytes =
                    Objects.requireNonNull(in, "demo-log.json is packed with this module")
                            .readAllBytes();
            return LogJson.read(new String(bytes, StandardCharsets.UTF_8));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
