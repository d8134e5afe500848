package deferent.record.landing;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.ReentrantLock;

/**
 * A folder that one thread of one process looks at and changes at a time: a lock on the file
 * {@value #LOCK} between processes, a queue within one.
 */
public final class FolderLock implements AutoCloseable {
    private static final String LOCK = ".lock";

    // A file lock belongs to the whole process; threads of one process queue here first.
    private static final Map<Path, ReentrantLock> IN_PROCESS = new ConcurrentHashMap<>();

    private final ReentrantLock inProcess;
    private final FileChannel channel;

    private FolderLock(ReentrantLock inProcess, FileChannel channel) {
        this.inProcess = inProcess;
        this.channel = channel;
    }

    /** Waits until the folder is free. */
    public static FolderLock of(Path folder) throws IOException {
        ReentrantLock inProcess =
                IN_PROCESS.computeIfAbsent(folder.toRealPath(), p -> new ReentrantLock());
        inProcess.lock();
        try {
            FileChannel channel =
                    FileChannel.open(
                            folder.resolve(LOCK),
                            StandardOpenOption.CREATE,
                            StandardOpenOption.WRITE);
            try {
                channel.lock();
                return new FolderLock(inProcess, channel);
            } catch (IOException | RuntimeException cannot) {
                channel.close();
                throw cannot;
            }
        } catch (IOException | RuntimeException cannot) {
            inProcess.unlock();
            throw cannot;
        }
    }

    @Override
    public void close() throws IOException {
        try {
            channel.close();
        } finally {
            inProcess.unlock();
        }
    }
}
