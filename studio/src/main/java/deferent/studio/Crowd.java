package deferent.studio;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.LongSupplier;
import org.eclipse.jetty.io.Connection;
import org.eclipse.jetty.io.EndPoint;
import org.eclipse.jetty.server.Request;

/**
 * Connections of people who have shown no key. They hold no thread, but each is a socket, and a
 * process has only so many: such a connection is closed after a while, whatever trickles in on it,
 * and where there are many of them the oldest makes room. So nobody without a key keeps out those
 * who have one.
 */
final class Crowd implements Connection.Listener {
    static final Duration LONGEST = Duration.ofSeconds(10);
    static final int MOST = 64;

    private final LongSupplier nanos;
    private final Map<EndPoint, Long> strangers = new LinkedHashMap<>();
    private final Set<EndPoint> known = ConcurrentHashMap.newKeySet();

    Crowd(LongSupplier nanos) {
        this.nanos = nanos;
    }

    @Override
    public void onOpened(Connection connection) {
        EndPoint end = connection.getEndPoint();
        List<EndPoint> leave = new ArrayList<>();
        synchronized (strangers) {
            if (known.contains(end)) {
                return;
            }
            strangers.putIfAbsent(end, nanos.getAsLong());
            if (strangers.size() > MOST) {
                EndPoint oldest = strangers.keySet().iterator().next();
                strangers.remove(oldest);
                leave.add(oldest);
            }
        }
        leave.forEach(EndPoint::close);
    }

    @Override
    public void onClosed(Connection connection) {
        EndPoint end = connection.getEndPoint();
        // A connection that becomes a socket is closed too, while its end stays.
        if (!end.isOpen()) {
            synchronized (strangers) {
                strangers.remove(end);
                known.remove(end);
            }
        }
    }

    /** Whoever sent this has a key. */
    void welcome(Request request) {
        EndPoint end = request.getConnectionMetaData().getConnection().getEndPoint();
        if (known.contains(end)) {
            return;
        }
        synchronized (strangers) {
            strangers.remove(end);
            known.add(end);
        }
    }

    /** Closes those that have been there too long. */
    void sweep() {
        List<EndPoint> leave = new ArrayList<>();
        synchronized (strangers) {
            long now = nanos.getAsLong();
            strangers
                    .entrySet()
                    .removeIf(
                            one -> {
                                boolean late = now - one.getValue() > LONGEST.toNanos();
                                if (late) {
                                    leave.add(one.getKey());
                                }
                                return late;
                            });
        }
        leave.forEach(EndPoint::close);
    }

    /** How many have shown no key; for tests. */
    int strangers() {
        synchronized (strangers) {
            return strangers.size();
        }
    }
}
