package deferent.reel;

import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_BGRA;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_PAL8;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUV420P;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUV444P10LE;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUVA420P;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUVA444P10LE;

import deferent.motion.trace.Rate;

/**
 * How a kind of film is made: which container and encoder, with which settings. Nothing but
 * encoders with free licences.
 *
 * @param container FFmpeg's name of it
 * @param encoder FFmpeg's name of it
 * @param pixels FFmpeg's number of the pixel format the encoder takes
 * @param encoding settings of the encoder, as FFmpeg writes them: "key=value:key=value"
 * @param containing settings of the container, written like those
 * @param captions the track inside it that captions go into
 * @param sound how a song goes along
 */
record Recipe(
        String container,
        String encoder,
        int pixels,
        String encoding,
        String containing,
        Captions captions,
        SoundTrack.Coding sound) {
    /**
     * What the index of a second of sound takes at most: of packets of 1024 samples, each alone.
     */
    private static final double SOUND_BYTES = 32 * Listening.RATE / 1024.0;

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
        return mp4(Format.of(clip), index(clip, loop, cues));
    }

    /** H.264, the container's settings given. */
    static Recipe mp4(Format format, String containing) {
        double pixels = (double) format.width() * format.height();
        long bits = Math.round(0.1 * pixels * format.rate().perSecond());
        // Each frame is cut in slices that are encoded side by side.
        int slices = Math.max(1, Math.min(4, Runtime.getRuntime().availableProcessors()));
        return new Recipe(
                "mp4",
                "libopenh264",
                AV_PIX_FMT_YUV420P,
                keyed(format.rate())
                        + (":b=" + bits + ":rc_mode=quality:qmin=12:qmax=24:profile=high")
                        + (":allow_skip_frames=0:slices=" + slices + ":threads=" + slices),
                containing,
                Captions.TIMED_TEXT,
                SoundTrack.Coding.AAC);
    }

    static Recipe webm(Clip clip, Loop loop, int cues) {
        boolean clear = clip.still().transparent();
        // A third of the time of "good", for a quarter more bits and no less likeness.
        String quick = ":deadline=realtime:cpu-used=6:row-mt=1:tile-columns=2:threads=2";
        return new Recipe(
                "webm",
                "libvpx-vp9",
                clear ? AV_PIX_FMT_YUVA420P : AV_PIX_FMT_YUV420P,
                keyed(clip.rate())
                        + (":b=0:crf=20:lag-in-frames=0" + quick)
                        // Two pictures must keep step, which hidden alternate frames would break.
                        + (clear ? ":auto-alt-ref=0" : ""),
                "",
                Captions.WEBVTT,
                SoundTrack.Coding.OPUS);
    }

    static Recipe mov(Clip clip, Loop loop, int cues) {
        // The second finest quantizer (FFmpeg counts in 118ths), rather than a search for one in
        // every slice: a third of the time, and nothing lost that an eye could find.
        int quantizer = 2 * 118;
        return new Recipe(
                "mov",
                "prores_ks",
                clip.still().transparent() ? AV_PIX_FMT_YUVA444P10LE : AV_PIX_FMT_YUV444P10LE,
                "profile=4444:vendor=apl0:threads=2:global_quality=" + quantizer,
                index(clip, loop, cues),
                Captions.NONE,
                SoundTrack.Coding.PCM);
    }

    static Recipe webp(Clip clip, Loop loop, int cues) {
        String how = "quality=85:compression_level=2";
        return new Recipe(
                "webp",
                "libwebp_anim",
                AV_PIX_FMT_BGRA,
                how,
                "loop=0",
                Captions.NONE,
                SoundTrack.Coding.NONE);
    }

    static Recipe gif(Clip clip, Loop loop, int cues) {
        return new Recipe(
                "gif", "gif", AV_PIX_FMT_PAL8, "", "loop=0", Captions.NONE, SoundTrack.Coding.NONE);
    }

    /** Whether its pictures are numbers of colours in a palette. */
    boolean palette() {
        return pixels == AV_PIX_FMT_PAL8;
    }

    /**
     * A key frame every second: an editor can jump, and what the encoder took for standing still
     * and left behind is gone soon.
     */
    private static String keyed(Rate rate) {
        return "g=" + Math.max(1, Math.round(rate.perSecond()));
    }

    /**
     * The index goes first, into room kept for it, so that a clip plays while it loads: the bytes
     * that an index of this many frames, captions, chapters and packets of sound takes at most.
     */
    private static String index(Clip clip, Loop loop, int cues) {
        long room = 8192 + 32L * loop.frames() + 96L * cues + 8L * clip.title().length();
        if (clip.song().isPresent()) {
            room += 4096 + Math.round(SOUND_BYTES * loop.seconds());
        }
        for (Cue chapter : ChapterMarks.of(clip, loop)) {
            room += 192 + 4L * chapter.text().length();
        }
        return "moov_size=" + room;
    }
}
