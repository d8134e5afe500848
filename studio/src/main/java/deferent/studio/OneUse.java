package deferent.studio;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.LongSupplier;

/**
 * Keys that are good for one use within a minute, each with what it opens. A key is 192 random
 * bits, and is compared with all there are in a time that tells nothing of them.
 */
final class OneUse<T> {
    static final Duration LIVES = Duration.ofSeconds(60);

    /** So many wait to be used; of more the oldest dies. */
    private static final int MOST = 64;

    private static final int BYTES = 24;
    private static final SecureRandom RANDOM = new SecureRandom();

    private final LongSupplier nanos;
    private final Consumer<T> over;
    private final List<Waiting<T>> waiting = new ArrayList<>();

    private record Waiting<T>(String key, long until, T opens) {}

    /**
     * @param nanos the time
     * @param over is told what a key has opened, or would have, once it is used or has died
     */
    OneUse(LongSupplier nanos, Consumer<T> over) {
        this.nanos = nanos;
        this.over = over;
    }

    /** A new key's text: letters, digits, hyphens and underscores. */
    static String random() {
        byte[] bytes = new byte[BYTES];
        RANDOM.nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    static boolean same(String one, String other) {
        return MessageDigest.isEqual(
                one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
    }

    synchronized String issue(T opens) {
        sweep();
        if (waiting.size() == MOST) {
            over.accept(waiting.remove(0).opens());
        }
        String key = random();
        waiting.add(new Waiting<>(key, nanos.getAsLong() + LIVES.toNanos(), opens));
        return key;
    }

    /** What a key opens, this once. */
    synchronized Optional<T> use(String key) {
        sweep();
        Optional<Waiting<T>> found = Optional.empty();
        for (Waiting<T> one : waiting) {
            if (same(one.key(), key)) {
                found = Optional.of(one);
            }
        }
        found.ifPresent(
                one -> {
                    waiting.remove(one);
                    over.accept(one.opens());
                });
        return found.map(Waiting::opens);
    }

    /** Lets those die whose time is over. */
    synchronized void sweep() {
        Iterator<Waiting<T>> all = waiting.iterator();
        while (all.hasNext()) {
            Waiting<T> one = all.next();
            if (nanos.getAsLong() - one.until() >= 0) {
                all.remove();
                over.accept(one.opens());
            }
        }
    }

    /** Lets all of them die. */
    synchronized void clear() {
        waiting.forEach(one -> over.accept(one.opens()));
        waiting.clear();
    }
}
