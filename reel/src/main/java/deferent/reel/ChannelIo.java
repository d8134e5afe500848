package deferent.reel;

import static org.bytedeco.ffmpeg.global.avformat.AVSEEK_SIZE;
import static org.bytedeco.ffmpeg.global.avformat.avio_alloc_context;
import static org.bytedeco.ffmpeg.global.avformat.avio_context_free;
import static org.bytedeco.ffmpeg.global.avutil.AVERROR_EIO;
import static org.bytedeco.ffmpeg.global.avutil.av_free;
import static org.bytedeco.ffmpeg.global.avutil.av_malloc;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.util.Optional;
import org.bytedeco.ffmpeg.avformat.AVIOContext;
import org.bytedeco.ffmpeg.avformat.Seek_Pointer_long_int;
import org.bytedeco.ffmpeg.avformat.Write_packet_Pointer_BytePointer_int;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.Pointer;

/**
 * Lets FFmpeg write to a channel of ours, so that file names, full disks and permissions are this
 * side's matter and told in its words.
 */
final class ChannelIo implements AutoCloseable {
    private static final int BUFFER = 1 << 18;
    private static final int SEEK_SET = 0;
    private static final int SEEK_CUR = 1;
    private static final int SEEK_END = 2;

    private final FileChannel channel;
    private final Write write = new Write();
    private final Seek seek = new Seek();
    private final AVIOContext context;
    private volatile Optional<IOException> failed = Optional.empty();

    ChannelIo(FileChannel channel) {
        this.channel = channel;
        BytePointer buffer = new BytePointer(av_malloc(BUFFER));
        context = avio_alloc_context(buffer, BUFFER, 1, null, null, write, seek);
    }

    AVIOContext context() {
        return context;
    }

    /** Throws what went wrong in a call from FFmpeg, which cannot be thrown there. */
    void check() throws IOException {
        if (failed.isPresent()) {
            throw failed.get();
        }
    }

    @Override
    public void close() {
        av_free(context.buffer());
        avio_context_free(context);
        write.close();
        seek.close();
    }

    private int failed(IOException why) {
        if (failed.isEmpty()) {
            failed = Optional.of(why);
        }
        return AVERROR_EIO();
    }

    private final class Write extends Write_packet_Pointer_BytePointer_int {
        @Override
        public int call(Pointer opaque, BytePointer bytes, int size) {
            try {
                ByteBuffer left = bytes.capacity(size).asByteBuffer();
                while (left.hasRemaining()) {
                    channel.write(left);
                }
                return size;
            } catch (IOException e) {
                return failed(e);
            } catch (RuntimeException e) {
                return failed(new IOException(e));
            }
        }
    }

    private final class Seek extends Seek_Pointer_long_int {
        @Override
        public long call(Pointer opaque, long offset, int whence) {
            try {
                if ((whence & AVSEEK_SIZE) != 0) {
                    return channel.size();
                }
                long from =
                        switch (whence) {
                            case SEEK_SET -> 0;
                            case SEEK_CUR -> channel.position();
                            case SEEK_END -> channel.size();
                            default -> throw new IOException("cannot seek by " + whence);
                        };
                channel.position(from + offset);
                return channel.position();
            } catch (IOException e) {
                return failed(e);
            } catch (RuntimeException e) {
                return failed(new IOException(e));
            }
        }
    }
}
