package deferent.app;

/** Something that was asked for rightly and could not be made: said in one line, exit code 1. */
final class NotMade extends RuntimeException {
    private static final long serialVersionUID = 1L;

    NotMade(String what, String right) {
        super(what + "; " + right);
    }
}
