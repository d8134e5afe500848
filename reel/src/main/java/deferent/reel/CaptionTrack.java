package deferent.reel;

import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_ID_MOV_TEXT;
import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_ID_WEBVTT;
import static org.bytedeco.ffmpeg.global.avformat.avformat_new_stream;
import static org.bytedeco.ffmpeg.global.avutil.AVMEDIA_TYPE_SUBTITLE;
import static org.bytedeco.ffmpeg.global.avutil.av_make_q;
import static org.bytedeco.ffmpeg.global.avutil.av_mallocz;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.javacpp.BytePointer;

/**
 * The counts inside a film: WebVTT in WebM, and in MP4 the timed text that its players know (3GPP
 * TS 26.245).
 */
final class CaptionTrack {
    private static final int MILLIS = 1000;
    private static final int PADDING = 64;

    private final AVStream stream;
    private final boolean timedText;
    private final List<Cue> cues;
    private int next;

    CaptionTrack(AVFormatContext container, boolean timedText, List<Cue> cues) throws IOException {
        this.timedText = timedText;
        this.cues = cues;
        stream = avformat_new_stream(container, null);
        stream.time_base(av_make_q(1, MILLIS));
        stream.codecpar().codec_type(AVMEDIA_TYPE_SUBTITLE);
        stream.codecpar().codec_id(timedText ? AV_CODEC_ID_MOV_TEXT : AV_CODEC_ID_WEBVTT);
        if (timedText) {
            byte[] style = style();
            BytePointer kept = new BytePointer(av_mallocz(style.length + PADDING));
            kept.put(style, 0, style.length);
            stream.codecpar().extradata(kept);
            stream.codecpar().extradata_size(style.length);
        }
    }

    /** How the text looks unless said otherwise: white, at the foot, in the middle. */
    private static byte[] style() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        out.writeInt(0);
        out.writeByte(1);
        out.writeByte(-1);
        out.writeInt(0);
        out.writeLong(0);
        out.writeShort(0);
        out.writeShort(0);
        out.writeShort(1);
        out.writeByte(0);
        out.writeByte(18);
        out.writeInt(0xFFFFFFFF);
        byte[] font = "Sans-Serif".getBytes(StandardCharsets.US_ASCII);
        out.writeInt(4 + 4 + 2 + 2 + 1 + font.length);
        out.writeBytes("ftab");
        out.writeShort(1);
        out.writeShort(1);
        out.writeByte(font.length);
        out.write(font);
        return bytes.toByteArray();
    }

    /** Writes the cues that begin by a time, seconds, so that the file stays in order. */
    void until(double time, Film film) throws IOException {
        while (next < cues.size() && cues.get(next).from() <= time) {
            Cue cue = cues.get(next++);
            int num = stream.time_base().num();
            int den = stream.time_base().den();
            long from = Math.round((double) cue.fromMillis() * den / num / MILLIS);
            long to = Math.round((double) cue.toMillis() * den / num / MILLIS);
            film.write(bytes(cue), stream.index(), from, to - from);
        }
    }

    private byte[] bytes(Cue cue) {
        if (!timedText) {
            return WebVtt.text(cue.text()).getBytes(StandardCharsets.UTF_8);
        }
        byte[] text = cue.text().getBytes(StandardCharsets.UTF_8);
        byte[] sample = new byte[2 + text.length];
        sample[0] = (byte) (text.length >> 8);
        sample[1] = (byte) text.length;
        System.arraycopy(text, 0, sample, 2, text.length);
        return sample;
    }
}
