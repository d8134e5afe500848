package deferent.studio;

/** A request that does not fit the studio's protocol, with the status it is answered with. */
final class BadRequest extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final int status;
    private final String what;
    private final String where;
    private final String right;

    BadRequest(int status, String what, String where, String right) {
        super(where + ": " + what + "; " + right);
        this.status = status;
        this.what = what;
        this.where = where;
        this.right = right;
    }

    int status() {
        return status;
    }

    String what() {
        return what;
    }

    String where() {
        return where;
    }

    String right() {
        return right;
    }
}
