package deferent.record.landing;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A name that says whose something unfinished is: the process, and a number nobody else draws.
 * Whoever works on it holds a lock besides, which the system takes back when the process dies.
 *
 * @param name "deferent-", the process's number, and the random one
 */
record Claim(String name) {
    private static final Pattern NAME =
            Pattern.compile(
                    "deferent-([1-9][0-9]{0,17})-"
                            + "[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}");

    /**
     * Those of this process; its own lock is no answer, and a container may give its number anew.
     */
    private static final Set<Claim> HELD = ConcurrentHashMap.newKeySet();

    /** A new one, held until it is let go. */
    static Claim held() {
        Claim claim =
                new Claim("deferent-" + ProcessHandle.current().pid() + "-" + UUID.randomUUID());
        HELD.add(claim);
        return claim;
    }

    /** The claim that is in a name, without what stands before and after it. */
    static Optional<Claim> in(String name, String before, String after) {
        if (!name.startsWith(before)
                || !name.endsWith(after)
                || name.length() < before.length() + after.length()) {
            return Optional.empty();
        }
        String bare = name.substring(before.length(), name.length() - after.length());
        return NAME.matcher(bare).matches() ? Optional.of(new Claim(bare)) : Optional.empty();
    }

    void letGo() {
        HELD.remove(this);
    }

    /**
     * Whether nobody who lives works on it: neither its process nor whoever holds the lock.
     *
     * @param locked the file that is locked while there is work on it
     */
    boolean abandoned(Path locked) {
        return !HELD.contains(this) && !processLives(locked) && !locked(locked);
    }

    private boolean processLives(Path file) {
        Matcher parts = NAME.matcher(name);
        long pid = parts.matches() ? Long.parseLong(parts.group(1)) : 0;
        return pid != ProcessHandle.current().pid()
                && ProcessHandle.of(pid)
                        .filter(ProcessHandle::isAlive)
                        .filter(process -> !begunAfter(process, file))
                        .isPresent();
    }

    // A process that began after the last byte was written only bears the same number.
    private static boolean begunAfter(ProcessHandle process, Path file) {
        try {
            Instant written =
                    Files.getLastModifiedTime(file, LinkOption.NOFOLLOW_LINKS).toInstant();
            return process.info()
                    .startInstant()
                    .filter(start -> start.isAfter(written.plusSeconds(2)))
                    .isPresent();
        } catch (IOException gone) {
            return false;
        }
    }

    private static boolean locked(Path file) {
        if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
            return false;
        }
        try (FileChannel channel =
                        FileChannel.open(
                                file, StandardOpenOption.WRITE, LinkOption.NOFOLLOW_LINKS);
                FileLock lock = channel.tryLock()) {
            return lock == null;
        } catch (OverlappingFileLockException ours) {
            return true;
        } catch (IOException noLocksHere) {
            // Then the process's number has to do.
            return false;
        }
    }

    /** Locks a channel for as long as it is open, where the file system has locks. */
    static void lock(FileChannel channel) {
        try {
            FileLock lock = channel.tryLock();
            if (lock == null) {
                throw new IOException("somebody else holds it");
            }
        } catch (IOException | UnsupportedOperationException noLocksHere) {
            // The process's number, which the name carries, has to do.
        }
    }
}
