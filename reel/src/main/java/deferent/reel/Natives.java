package deferent.reel;

import deferent.motion.pairing.Refusal;
import java.util.Optional;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.ffmpeg.global.swresample;
import org.bytedeco.ffmpeg.global.swscale;
import org.bytedeco.javacpp.Loader;

/**
 * FFmpeg's libraries, loaded when first asked for. The devices library is never among them: it
 * wants a sound server that a bare machine does not have, and clips need no device.
 */
public final class Natives {
    private Natives() {}

    /** Why films cannot be written on this machine; empty where they can. */
    public static Optional<String> available() {
        return Loaded.CAUSE.map(
                cause -> "the video libraries do not load on this machine " + cause);
    }

    /** Refuses where films cannot be written. */
    static void need() {
        available()
                .ifPresent(
                        why -> {
                            throw missing(
                                    why,
                                    "clip",
                                    "write PNG files in a zip, a still or a page, which need none");
                        });
    }

    /** Refuses where sounds cannot be heard; {@code name} is the file's. */
    static void needToHear(String name, String right) {
        Loaded.CAUSE.ifPresent(
                cause -> {
                    throw unheard(cause, name, right);
                });
    }

    /**
     * @param cause why the libraries do not load, in brackets
     * @param right what can be done all the same
     */
    static Refusal unheard(String cause, String name, String right) {
        return missing(
                "the libraries that decode sound do not load on this machine " + cause,
                "sound of " + name,
                right);
    }

    /** Not the asker's fault, which the cause tells. */
    private static Refusal missing(String what, String where, String right) {
        Refusal refusal = new Refusal(what, where, right);
        refusal.initCause(new UnsatisfiedLinkError(what));
        return refusal;
    }

    private static final class Loaded {
        /** Why not, in brackets. */
        static final Optional<String> CAUSE = load();

        private static Optional<String> load() {
            try {
                Loader.load(avutil.class);
                Loader.load(avcodec.class);
                Loader.load(avformat.class);
                Loader.load(swresample.class);
                Loader.load(swscale.class);
                avutil.av_log_set_level(avutil.AV_LOG_QUIET);
                return Optional.empty();
            } catch (LinkageError | RuntimeException e) {
                return Optional.of(told(e));
            }
        }

        private static String told(Throwable why) {
            String said = String.valueOf(why.getMessage()).lines().findFirst().orElse("");
            return "("
                    + System.getProperty("os.name")
                    + " "
                    + System.getProperty("os.arch")
                    + ": "
                    + said
                    + ")";
        }
    }
}
