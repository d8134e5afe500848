package deferent.studio;

import deferent.motion.shared.Refused;

/** A request that does not fit the studio's protocol, with the status it is answered with. */
final class BadRequest extends Refused {
    private static final long serialVersionUID = 1L;

    private final int status;

    BadRequest(int status, String what, String where, String right) {
        super(what, where, right);
        this.status = status;
    }

    int status() {
        return status;
    }
}
