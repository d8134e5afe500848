package deferent.reel;

import static org.bytedeco.ffmpeg.global.avutil.av_make_q;

import deferent.motion.trace.Rate;
import org.bytedeco.ffmpeg.avutil.AVRational;

/**
 * What an encoder has to know of the pictures that come.
 *
 * @param kind of file
 * @param width pixels
 * @param height pixels
 * @param alpha whether there is a half-transparent ground
 * @param rate frames a second, on the whole
 * @param ticks of its clock a second, as a rate: frames where they are even
 * @param title said by players; empty for none
 */
record Format(
        Kind kind, int width, int height, boolean alpha, Rate rate, Rate ticks, String title) {
    /** Of a clip, whose frames are even. */
    static Format of(Clip clip) {
        return new Format(
                clip.kind(),
                clip.still().width(),
                clip.still().height(),
                clip.still().transparent(),
                clip.rate(),
                clip.rate(),
                clip.title());
    }

    /** One tick of its clock, seconds. */
    AVRational tick() {
        return av_make_q(Math.toIntExact(ticks.den()), Math.toIntExact(ticks.num()));
    }

    /** Seconds of so many ticks. */
    double seconds(long count) {
        return count * (double) ticks.den() / ticks.num();
    }
}
