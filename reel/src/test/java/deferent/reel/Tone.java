package deferent.reel;

import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_FLAG_GLOBAL_HEADER;
import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_ID_AAC;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_alloc;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_free;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_alloc_context3;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_find_encoder;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_free_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_open2;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_parameters_from_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_receive_packet;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_send_frame;
import static org.bytedeco.ffmpeg.global.avformat.avformat_alloc_context;
import static org.bytedeco.ffmpeg.global.avformat.avformat_free_context;
import static org.bytedeco.ffmpeg.global.avformat.avformat_new_stream;
import static org.bytedeco.ffmpeg.global.avutil.AV_SAMPLE_FMT_FLTP;
import static org.bytedeco.ffmpeg.global.avutil.av_channel_layout_default;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_alloc;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_free;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_get_buffer;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_make_writable;
import static org.bytedeco.ffmpeg.global.avutil.av_make_q;

import java.io.IOException;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.javacpp.FloatPointer;

/** A tone of 440 Hz as AAC, to go along with the pictures of a film as a phone's sound does. */
final class Tone implements AutoCloseable {
    private static final int SAMPLES = 48_000; // a second

    private final AVFormatContext nowhere = avformat_alloc_context();
    private final AVCodecContext encoder;
    private final AVStream stream;

    Tone() {
        AVCodec codec = avcodec_find_encoder(AV_CODEC_ID_AAC);
        encoder = avcodec_alloc_context3(codec);
        encoder.sample_rate(SAMPLES);
        encoder.sample_fmt(AV_SAMPLE_FMT_FLTP);
        encoder.bit_rate(64_000);
        encoder.time_base(av_make_q(1, SAMPLES));
        encoder.flags(encoder.flags() | AV_CODEC_FLAG_GLOBAL_HEADER);
        av_channel_layout_default(encoder.ch_layout(), 1);
        if (avcodec_open2(encoder, codec, (AVDictionary) null) < 0) {
            throw new IllegalStateException("no AAC encoder");
        }
        stream = avformat_new_stream(nowhere, null);
        avcodec_parameters_from_context(stream.codecpar(), encoder);
        stream.time_base(encoder.time_base());
    }

    AVStream stream() {
        return stream;
    }

    /** So many packets into a film. */
    void into(Film film, int packets) throws IOException {
        AVFrame frame = av_frame_alloc();
        AVPacket packet = av_packet_alloc();
        int each = encoder.frame_size();
        frame.format(AV_SAMPLE_FMT_FLTP);
        frame.nb_samples(each);
        frame.sample_rate(SAMPLES);
        av_channel_layout_default(frame.ch_layout(), 1);
        av_frame_get_buffer(frame, 0);
        for (int i = 0; i < packets; i++) {
            av_frame_make_writable(frame);
            FloatPointer to = new FloatPointer(frame.data(0));
            for (int k = 0; k < each; k++) {
                to.put(k, (float) Math.sin(2 * Math.PI * 440 * (i * each + k) / SAMPLES) / 2);
            }
            frame.pts((long) i * each);
            avcodec_send_frame(encoder, frame);
            while (avcodec_receive_packet(encoder, packet) >= 0) {
                film.sound(packet, encoder.time_base(), 0);
            }
        }
        av_frame_free(frame);
        av_packet_free(packet);
    }

    @Override
    public void close() {
        avcodec_free_context(encoder);
        avformat_free_context(nowhere);
    }
}
