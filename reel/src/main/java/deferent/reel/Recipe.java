package deferent.reel;

import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_BGRA;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_PAL8;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUV420P;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUV444P10LE;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUVA420P;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUVA444P10LE;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * How a kind of film is made: which container and encoder, with which settings. Nothing but
 * encoders with free licences.
 *
 * @param container FFmpeg's name of it
 * @param encoder FFmpeg's name of it
 * @param pixels FFmpeg's number of the pixel format the encoder takes
 * @param encoding settings of the encoder
 * @param containing settings of the container
 * @param captions the track inside it that captions go into
 */
record Recipe(
        String container,
        String encoder,
        int pixels,
        Map<String, String> encoding,
        Map<String, String> containing,
        Captions captions) {
    /** A recipe for one clip. */
    interface Writer {
        /**
         * What it is made by.
         *
         * @param cues how many captions go along
         */
        Recipe of(Clip clip, Loop loop, int cues);
    }

    /** How captions stand inside a container, if they do. */
    enum Captions {
        NONE,
        TIMED_TEXT,
        WEBVTT
    }

    static Recipe mp4(Clip clip, Loop loop, int cues) {
        double pixels = (double) clip.still().width() * clip.still().height();
        // Each frame is cut in slices that are encoded side by side.
        String slices = Integer.toString(slices());
        Map<String, String> how = new LinkedHashMap<>(keyed(clip));
        how.put("b", Long.toString(Math.round(0.1 * pixels * clip.rate().perSecond())));
        how.put("rc_mode", "quality");
        how.put("qmin", "12");
        how.put("qmax", "24");
        how.put("profile", "high");
        how.put("allow_skip_frames", "0");
        how.put("slices", slices);
        how.put("threads", slices);
        return new Recipe(
                "mp4",
                "libopenh264",
                AV_PIX_FMT_YUV420P,
                how,
                index(clip, loop, cues),
                Captions.TIMED_TEXT);
    }

    static Recipe webm(Clip clip, Loop loop, int cues) {
        boolean clear = clip.still().transparent();
        Map<String, String> how = new LinkedHashMap<>(keyed(clip));
        how.put("b", "0");
        how.put("crf", "20");
        // A third of the time of "good", for a quarter more bits and no less likeness.
        how.put("deadline", "realtime");
        how.put("cpu-used", "6");
        how.put("row-mt", "1");
        how.put("tile-columns", "2");
        how.put("threads", "2");
        how.put("lag-in-frames", "0");
        if (clear) {
            // Two pictures must keep step, which the hidden alternate frames would break.
            how.put("auto-alt-ref", "0");
        }
        return new Recipe(
                "webm",
                "libvpx-vp9",
                clear ? AV_PIX_FMT_YUVA420P : AV_PIX_FMT_YUV420P,
                how,
                Map.of(),
                Captions.WEBVTT);
    }

    static Recipe mov(Clip clip, Loop loop, int cues) {
        return new Recipe(
                "mov",
                "prores_ks",
                clip.still().transparent() ? AV_PIX_FMT_YUVA444P10LE : AV_PIX_FMT_YUV444P10LE,
                // The second finest quantizer (FFmpeg counts in 118ths), rather than a search for
                // one in every slice: a third of the time, and nothing lost that an eye could find.
                Map.of(
                        "profile",
                        "4444",
                        "vendor",
                        "apl0",
                        "global_quality",
                        Integer.toString(2 * 118),
                        "threads",
                        "2"),
                index(clip, loop, cues),
                Captions.NONE);
    }

    static Recipe webp(Clip clip, Loop loop, int cues) {
        return new Recipe(
                "webp",
                "libwebp_anim",
                AV_PIX_FMT_BGRA,
                Map.of("quality", "85", "compression_level", "2"),
                Map.of("loop", "0"),
                Captions.NONE);
    }

    static Recipe gif(Clip clip, Loop loop, int cues) {
        return new Recipe(
                "gif", "gif", AV_PIX_FMT_PAL8, Map.of(), Map.of("loop", "0"), Captions.NONE);
    }

    /** Whether its pictures are numbers of colours in a palette. */
    boolean palette() {
        return pixels == AV_PIX_FMT_PAL8;
    }

    /**
     * A key frame every second: an editor can jump, and what the encoder took for standing still
     * and left behind is gone soon.
     */
    private static Map<String, String> keyed(Clip clip) {
        return Map.of("g", Long.toString(Math.max(1, Math.round(clip.rate().perSecond()))));
    }

    private static int slices() {
        return Math.max(1, Math.min(4, Runtime.getRuntime().availableProcessors()));
    }

    /**
     * The index goes first, into room kept for it, so that a clip plays while it loads: the bytes
     * that an index of this many frames and captions takes at most.
     */
    private static Map<String, String> index(Clip clip, Loop loop, int cues) {
        long room = 8192 + 32L * loop.frames() + 96L * cues + 8L * clip.title().length();
        return Map.of("moov_size", Long.toString(room));
    }
}
