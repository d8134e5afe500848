package deferent.record;

import deferent.motion.shared.Refused;
import java.util.List;

/**
 * A document that cannot be read: says what is wrong, at which key, line and column, and what would
 * be right. The document itself is left as it is.
 */
public final class DocumentError extends Refused {
    private static final long serialVersionUID = 1L;

    private final String source;
    private final String pointer;
    private final List<String> nearest;
    private final int line;
    private final int column;
    private final String underlined;
    private final boolean ofKey;

    private DocumentError(
            String source,
            String pointer,
            String what,
            String right,
            List<String> nearest,
            int line,
            int column,
            String underlined,
            boolean ofKey) {
        super(said(source, pointer, what, right, line, column), what, where(pointer), right);
        this.source = source;
        this.pointer = pointer;
        this.nearest = List.copyOf(nearest);
        this.line = line;
        this.column = column;
        this.underlined = underlined;
        this.ofKey = ofKey;
    }

    /** An error at a JSON pointer, its line not yet known. */
    static DocumentError at(String pointer, String what, String right) {
        return new DocumentError("", pointer, what, right, List.of(), 0, 0, "", false);
    }

    static DocumentError at(String pointer, String what, String right, List<String> nearest) {
        return new DocumentError("", pointer, what, right, nearest, 0, 0, "", false);
    }

    /** An error of the key itself rather than of what stands there. */
    static DocumentError ofKey(String pointer, String what, String right, List<String> nearest) {
        return new DocumentError("", pointer, what, right, nearest, 0, 0, "", true);
    }

    DocumentError placed(int atLine, int atColumn, String withUnderline) {
        return new DocumentError(
                source, pointer, what(), right(), nearest, atLine, atColumn, withUnderline, ofKey);
    }

    /** The same error, told as one of a file or other source. */
    public DocumentError in(String otherSource) {
        return new DocumentError(
                otherSource, pointer, what(), right(), nearest, line, column, underlined, ofKey);
    }

    private static String said(
            String source, String pointer, String what, String right, int line, int column) {
        return place(source, pointer, line, column) + ": " + what + "; " + right;
    }

    private static String place(String source, String pointer, int line, int column) {
        return (source.isEmpty() ? "" : source + ", ")
                + (line > 0 ? "line " + line + ", column " + column + ", " : "")
                + where(pointer);
    }

    /** All that is known of where: "log.json, line 3, column 36, entries.0.minutes". */
    public String place() {
        return place(source, pointer, line, column);
    }

    /** A JSON pointer as people read it; "document" for the whole. */
    public static String where(String pointer) {
        if (pointer.isEmpty()) {
            return "document";
        }
        return pointer.substring(1).replace('/', '.').replace("~1", "/").replace("~0", "~");
    }

    boolean ofKey() {
        return ofKey;
    }

    /** The file it stands in, empty where it is not from a file. */
    public String source() {
        return source;
    }

    /** JSON pointer (RFC 6901) to the key. */
    public String pointer() {
        return pointer;
    }

    /** Known keys or words nearest to the one that is not known, best first. */
    @Override
    public List<String> nearest() {
        return nearest;
    }

    /** Counted from 1; 0 where the document came as a tree, not as text. */
    public int line() {
        return line;
    }

    /** Counted from 1; 0 where the document came as a tree, not as text. */
    public int column() {
        return column;
    }

    /** The line of text with the place underlined; empty where the line is not known. */
    public String underlined() {
        return underlined;
    }
}
