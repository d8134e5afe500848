package deferent.studio;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.LongSupplier;

/**
 * The keys of one studio. Everybody who has an account on this machine reaches a port of it, so a
 * request is answered only if it has a key:
 *
 * <ul>
 *   <li>an <b>opening key</b>, good for one use, comes to the owner's browser through a file that
 *       only the owner reads;
 *   <li>the page trades it for a <b>session key</b>, which it keeps and with which it asks; it
 *       lives as long as the studio does, and stands in no address that a browser shows or keeps;
 *   <li>a <b>page key</b>, good for one use, fetches the page itself: its address is the one
 *       address with a key that a browser's history may keep, and by then it opens nothing.
 * </ul>
 */
final class KeyRing {
    /** Openings are made by hand, at a terminal; of more than that the first are forgotten. */
    private static final int MOST_SESSIONS = 256;

    private final OneUse<Runnable> openings;
    private final OneUse<String> pages;
    private final List<String> sessions = new CopyOnWriteArrayList<>();

    KeyRing(LongSupplier nanos) {
        this.openings = new OneUse<>(nanos, Runnable::run);
        this.pages = new OneUse<>(nanos, session -> {});
    }

    /**
     * A new opening key.
     *
     * @param over runs once, when the key is used or has died
     */
    String opening(Runnable over) {
        return openings.issue(over);
    }

    /** The session key that an opening key buys. */
    Optional<String> session(String opening) {
        return openings.use(opening)
                .map(
                        over -> {
                            String session = OneUse.random();
                            synchronized (sessions) {
                                if (sessions.size() == MOST_SESSIONS) {
                                    sessions.remove(0);
                                }
                                sessions.add(session);
                            }
                            return session;
                        });
    }

    /** Whether a session has this key. */
    boolean knows(String session) {
        boolean known = false;
        for (String one : sessions) {
            known |= OneUse.same(one, session);
        }
        return known;
    }

    /** A key for fetching the page once, for a session. */
    String page(String session) {
        return pages.issue(session);
    }

    /** The session that a page key was made for. */
    Optional<String> turned(String page) {
        return pages.use(page);
    }

    void sweep() {
        openings.sweep();
        pages.sweep();
    }

    /** Lets every key die. */
    void close() {
        openings.clear();
        pages.clear();
        sessions.clear();
    }
}
