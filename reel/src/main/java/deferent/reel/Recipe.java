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
 */
record Recipe(
        String container,
        String encoder,
        int pixels,
        Map<String, String> encoding,
        Map<String, String> containing) {

    /**
     * @param cues how many captions go along
     */
    static Recipe of(Clip clip, Loop loop, int cues) {
        boolean clear = clip.still().transparent();
        Map<String, String> how = new LinkedHashMap<>();
        Map<String, String> into = new LinkedHashMap<>();
        double perSecond = clip.rate().perSecond();
        // A key frame every second: an editor can jump, and what the encoder took for standing
        // still
        // and left behind is gone soon.
        how.put("g", Long.toString(Math.max(1, Math.round(perSecond))));
        switch (clip.kind()) {
            case MP4 -> {
                double pixels = (double) clip.still().width() * clip.still().height();
                how.put("b", Long.toString(Math.round(0.1 * pixels * perSecond)));
                how.put("rc_mode", "quality");
                how.put("qmin", "12");
                how.put("qmax", "24");
                how.put("profile", "high");
                how.put("allow_skip_frames", "0");
                // Each frame is cut in slices that are encoded side by side.
                String slices = Integer.toString(slices());
                how.put("slices", slices);
                how.put("threads", slices);
                // The index goes first, into room kept for it, so that a clip plays while it loads.
                into.put("moov_size", Long.toString(room(clip, loop, cues)));
                return new Recipe("mp4", "libopenh264", AV_PIX_FMT_YUV420P, how, into);
            }
            case WEBM -> {
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
                int pixels = clear ? AV_PIX_FMT_YUVA420P : AV_PIX_FMT_YUV420P;
                return new Recipe("webm", "libvpx-vp9", pixels, how, into);
            }
            case MOV -> {
                how.remove("g");
                how.put("profile", "4444");
                how.put("vendor", "apl0");
                // The second finest quantizer (FFmpeg counts in 118ths), rather than a search for
                // one in every slice: a third of the time, and nothing lost that an eye could find.
                how.put("global_quality", Integer.toString(2 * 118));
                how.put("threads", "2");
                into.put("moov_size", Long.toString(room(clip, loop, cues)));
                int pixels = clear ? AV_PIX_FMT_YUVA444P10LE : AV_PIX_FMT_YUV444P10LE;
                return new Recipe("mov", "prores_ks", pixels, how, into);
            }
            case WEBP -> {
                how.remove("g");
                how.put("quality", "85");
                how.put("compression_level", "2");
                into.put("loop", "0");
                return new Recipe("webp", "libwebp_anim", AV_PIX_FMT_BGRA, how, into);
            }
            case GIF -> {
                how.remove("g");
                into.put("loop", "0");
                return new Recipe("gif", "gif", AV_PIX_FMT_PAL8, how, into);
            }
            case PNGS -> throw new IllegalArgumentException("no film");
        }
        throw new IllegalArgumentException("no film");
    }

    private static int slices() {
        return Math.max(1, Math.min(4, Runtime.getRuntime().availableProcessors()));
    }

    /** Bytes an index of this many frames and captions takes at most. */
    private static long room(Clip clip, Loop loop, int cues) {
        return 8192 + 32L * loop.frames() + 96L * cues + 8L * clip.title().length();
    }
}
