package deferent.app;

import deferent.tell.Told;
import java.io.PrintWriter;

/**
 * Sentences onto a screen, wrapped, each with where it comes from below it where that is asked for.
 *
 * @param out where to
 * @param why whether to say where a sentence comes from
 */
record TextOut(PrintWriter out, boolean why) {
    /** One sentence after {@code first}, its continuation indented as far. */
    void told(String first, Told one) {
        line(first, one.text());
        if (why && !one.why().isBlank()) {
            line("      why: ", one.why());
        }
    }

    void line(String first, String text) {
        Paragraphs.wrapped(first, text, Paragraphs.width()).forEach(out::println);
    }
}
