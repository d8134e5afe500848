package deferent.motion.shared;

import java.util.List;

/**
 * Something that cannot be as it was asked or written: what is wrong, where it stands, and what
 * would be right. All that a user can mend is told by one of these, whatever face it came through.
 */
public abstract class Refused extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    private final String what;
    private final String where;
    private final String right;

    /**
     * @param message all of it in one line
     * @param what what is wrong, a clause without a full stop
     * @param where the size, word, key or file it stands at
     * @param right what would be right
     */
    protected Refused(String message, String what, String where, String right) {
        super(message);
        this.what = what;
        this.where = where;
        this.right = right;
    }

    protected Refused(String what, String where, String right) {
        this(where + ": " + what + "; " + right, what, where, right);
    }

    public String what() {
        return what;
    }

    public String where() {
        return where;
    }

    public String right() {
        return right;
    }

    /** Known words nearest to one that is not known, best first. */
    public List<String> nearest() {
        return List.of();
    }
}
