package deferent.film.practice;

import deferent.record.Practice;
import deferent.record.PracticeJson;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Five weeks of the invented duo's static spin vs triquetra, each read from a film that was
 * rendered from a corded trace with what is off put in on purpose. Nobody was filmed.
 */
public final class DemoPractice {
    private static final int WEEKS = 5;

    private DemoPractice() {}

    /** The eldest first. */
    public static List<Practice> records() {
        List<Practice> all = new ArrayList<>();
        for (int week = 1; week <= WEEKS; week++) {
            try (InputStream in =
                    DemoPractice.class.getResourceAsStream("demo-week-" + week + ".json")) {
                byte[] bytes =
                        Objects.requireNonNull(in, "the demo is packed with this class")
                                .readAllBytes();
                all.add(PracticeJson.read(new String(bytes, StandardCharsets.UTF_8)));
            } catch (IOException unreadable) {
                throw new UncheckedIOException(unreadable);
            }
        }
        return List.copyOf(all);
    }
}
