package deferent.page.web;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Set;

/** HTML that is written tag by tag; whatever words stand in it are escaped. */
final class Html {
    /** Behind these no line is broken, since a break would be a space. */
    private static final Set<String> INLINE =
            Set.of("a", "b", "button", "picture", "small", "span");

    private final StringBuilder out = new StringBuilder(20_000);
    private final Deque<String> open = new ArrayDeque<>();

    /**
     * Opens a tag.
     *
     * @param attributes names and values in turn; a value of a single dot stands for none
     */
    Html open(String tag, String... attributes) {
        alone(tag, attributes);
        open.push(tag);
        return this;
    }

    /** A tag that holds nothing and is not closed, such as an image. */
    Html alone(String tag, String... attributes) {
        out.append('<').append(tag);
        for (int i = 0; i < attributes.length; i += 2) {
            out.append(' ').append(attributes[i]);
            if (!attributes[i + 1].equals(".")) {
                out.append("=\"").append(LessonPage.escaped(attributes[i + 1])).append('"');
            }
        }
        out.append('>');
        return this;
    }

    /** Closes the tag that was opened last. */
    Html close() {
        String tag = open.pop();
        out.append("</").append(tag).append(INLINE.contains(tag) ? ">" : ">\n");
        return this;
    }

    Html text(String words) {
        out.append(LessonPage.escaped(words));
        return this;
    }

    /** A tag with nothing in it but words. */
    Html line(String tag, String words, String... attributes) {
        return open(tag, attributes).text(words).close();
    }

    /** What is HTML already. */
    Html html(String written) {
        out.append(written);
        return this;
    }

    String whole() {
        if (!open.isEmpty()) {
            throw new IllegalStateException(open + " were not closed");
        }
        return out.toString();
    }
}
