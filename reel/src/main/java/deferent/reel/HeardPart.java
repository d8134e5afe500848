package deferent.reel;

import static org.bytedeco.ffmpeg.avformat.AVFormatContext.AVFMT_FLAG_CUSTOM_IO;
import static org.bytedeco.ffmpeg.global.avformat.av_write_frame;
import static org.bytedeco.ffmpeg.global.avformat.av_write_trailer;
import static org.bytedeco.ffmpeg.global.avformat.avformat_alloc_output_context2;
import static org.bytedeco.ffmpeg.global.avformat.avformat_free_context;
import static org.bytedeco.ffmpeg.global.avformat.avformat_write_header;
import static org.bytedeco.ffmpeg.global.avformat.avio_flush;

import deferent.motion.pairing.Refusal;
import deferent.record.landing.Landing;
import deferent.record.landing.Scratch;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avutil.AVDictionary;

/**
 * A part of a sound as a small file of its own, for a page to carry: AAC in MP4, which every
 * browser that a phone comes with plays, and cuts to the sample.
 */
public final class HeardPart {
    public static final String MEDIA_TYPE = "audio/mp4";

    /** Bits a second at most and at least, and bytes that a part may take between those. */
    private static final int MOST = 128_000;

    private static final int LEAST = 48_000;
    private static final double BYTES = 2e6;

    private HeardPart() {}

    /**
     * A part from one second of a sound on; what is before its start or after its end is silence.
     *
     * @throws Refusal where the file holds no sound, or this machine cannot decode it
     */
    public static byte[] of(Path sound, double begins, double seconds) {
        Natives.needToHear(
                String.valueOf(sound.getFileName()),
                "write it on a machine where they load, or of a set without a song");
        try (Scratch scratch = Scratch.open()) {
            Path file = scratch.folder().resolve("part");
            try (Landing landing = Landing.at(file)) {
                write(sound, begins, seconds, landing.channel());
                landing.land();
            }
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new Refusal(
                    "cannot be taken along: " + e.getMessage(),
                    sound.getFileName().toString(),
                    "look whether the file is whole");
        }
    }

    private static void write(Path sound, double begins, double seconds, FileChannel channel)
            throws IOException {
        ChannelIo io = new ChannelIo(channel);
        AVFormatContext container = new AVFormatContext(null);
        try {
            done(avformat_alloc_output_context2(container, null, "mp4", null));
            container.pb(io.context());
            container.flags(container.flags() | AVFMT_FLAG_CUSTOM_IO);
            int bits = (int) Math.max(LEAST, Math.min(MOST, 8 * BYTES / seconds));
            SoundTrack.Coding coding = SoundTrack.Coding.AAC;
            try (SoundTrack track =
                    SoundTrack.open(container, coding, bits, sound, begins, seconds)) {
                done(avformat_write_header(container, (AVDictionary) null));
                track.until(
                        Double.POSITIVE_INFINITY,
                        packet -> done(av_write_frame(container, packet)));
                done(av_write_trailer(container));
                avio_flush(io.context());
                io.check();
            }
        } finally {
            if (!container.isNull()) {
                avformat_free_context(container);
            }
            io.close();
        }
    }

    private static void done(int answer) throws IOException {
        if (answer < 0) {
            throw new IOException("the sound could not be written");
        }
    }
}
