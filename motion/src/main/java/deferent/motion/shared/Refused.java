package deferent.motion.shared;

import java.util.List;

/**
 * Something that cannot be as it was asked or written: what is wrong, where it stands, and what
 * would be right. All that a user can mend is told by one of these, whatever face it came through.
 */
public abstract class Refused extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    /** What is wrong. */
    private final String what;

    /** Where it stands. */
    private final String where;

    /** What would be right. */
    private final String right;

    /**
     * A refusal with a message of its own.
     *
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

    /**
     * As the other, with the message made of the three.
     *
     * @param what what is wrong, a clause without a full stop
     * @param where the size, word, key or file it stands at
     * @param right what would be right
     */
    protected Refused(String what, String where, String right) {
        this(where + ": " + what + "; " + right, what, where, right);
    }

    /**
     * What is wrong.
     *
     * @return a clause without a full stop
     */
    public String what() {
        return what;
    }

    /**
     * Where it stands.
     *
     * @return the size, word, key or file
     */
    public String where() {
        return where;
    }

    /**
     * What would be right.
     *
     * @return a clause or a sentence to go by
     */
    public String right() {
        return right;
    }

    /**
     * Known words nearest to one that is not known.
     *
     * @return best first; none where nothing is near, or no word is what is wrong
     */
    public List<String> nearest() {
        return List.of();
    }
}
