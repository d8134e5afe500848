package deferent.film;

import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_FLAG_GLOBAL_HEADER;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_alloc;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_free;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_rescale_ts;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_alloc_context3;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_find_encoder_by_name;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_free_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_open2;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_parameters_from_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_receive_packet;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_send_frame;
import static org.bytedeco.ffmpeg.global.avformat.AVIO_FLAG_WRITE;
import static org.bytedeco.ffmpeg.global.avformat.av_interleaved_write_frame;
import static org.bytedeco.ffmpeg.global.avformat.av_write_trailer;
import static org.bytedeco.ffmpeg.global.avformat.avformat_alloc_output_context2;
import static org.bytedeco.ffmpeg.global.avformat.avformat_free_context;
import static org.bytedeco.ffmpeg.global.avformat.avformat_new_stream;
import static org.bytedeco.ffmpeg.global.avformat.avformat_write_header;
import static org.bytedeco.ffmpeg.global.avformat.avio_closep;
import static org.bytedeco.ffmpeg.global.avformat.avio_open;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUV420P;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_alloc;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_free;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_get_buffer;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_make_writable;
import static org.bytedeco.ffmpeg.global.avutil.av_make_q;

import deferent.reel.Shot;
import java.nio.file.Path;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVIOContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.javacpp.BytePointer;

/** Writes frames, each at its own time, as H.264 in MP4 at a phone's rate. */
final class PhoneClip implements AutoCloseable {
    private static final AVRational TICK = av_make_q(1, 90_000);

    private final AVFormatContext container = new AVFormatContext(null);
    private final AVCodecContext encoder;
    private final AVStream stream;
    private final AVPacket packet = av_packet_alloc();
    private final AVFrame frame = av_frame_alloc();

    PhoneClip(Path file, int width, int height, double rate, double megabits) {
        avformat_alloc_output_context2(container, null, "mp4", null);
        AVCodec codec = avcodec_find_encoder_by_name("libopenh264");
        encoder = avcodec_alloc_context3(codec);
        encoder.width(width);
        encoder.height(height);
        encoder.pix_fmt(AV_PIX_FMT_YUV420P);
        encoder.time_base(TICK);
        encoder.framerate(av_make_q((int) Math.round(rate), 1));
        encoder.bit_rate((long) (megabits * 1e6));
        encoder.gop_size((int) Math.round(rate));
        encoder.flags(encoder.flags() | AV_CODEC_FLAG_GLOBAL_HEADER);
        done(avcodec_open2(encoder, codec, new AVDictionary(null)));
        stream = avformat_new_stream(container, null);
        avcodec_parameters_from_context(stream.codecpar(), encoder);
        stream.time_base(TICK);
        AVIOContext io = new AVIOContext(null);
        done(avio_open(io, file.toString(), AVIO_FLAG_WRITE));
        container.pb(io);
        done(avformat_write_header(container, new AVDictionary(null)));
        frame.format(AV_PIX_FMT_YUV420P);
        frame.width(width);
        frame.height(height);
        done(av_frame_get_buffer(frame, 0));
    }

    void add(Shot shot) {
        av_frame_make_writable(frame);
        copy(shot.luma(), 0, shot.width(), shot.height());
        copy(shot.blue(), 1, (shot.width() + 1) / 2, (shot.height() + 1) / 2);
        copy(shot.red(), 2, (shot.width() + 1) / 2, (shot.height() + 1) / 2);
        frame.pts(Math.round(shot.time() * 90_000));
        encode(frame);
    }

    private void copy(byte[] from, int plane, int width, int height) {
        BytePointer data = frame.data(plane);
        for (int row = 0; row < height; row++) {
            data.position((long) row * frame.linesize(plane)).put(from, row * width, width);
        }
    }

    private void encode(AVFrame picture) {
        done(avcodec_send_frame(encoder, picture));
        while (avcodec_receive_packet(encoder, packet) >= 0) {
            packet.stream_index(stream.index());
            av_packet_rescale_ts(packet, TICK, stream.time_base());
            done(av_interleaved_write_frame(container, packet));
        }
    }

    private static void done(int answer) {
        if (answer < 0) {
            throw new IllegalStateException("FFmpeg answered " + answer);
        }
    }

    @Override
    public void close() {
        avcodec_send_frame(encoder, null);
        while (avcodec_receive_packet(encoder, packet) >= 0) {
            packet.stream_index(stream.index());
            av_packet_rescale_ts(packet, TICK, stream.time_base());
            done(av_interleaved_write_frame(container, packet));
        }
        av_write_trailer(container);
        avio_closep(container.pb());
        avcodec_free_context(encoder);
        av_frame_free(frame);
        av_packet_free(packet);
        avformat_free_context(container);
    }
}
