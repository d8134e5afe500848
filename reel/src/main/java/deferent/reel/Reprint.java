package deferent.reel;

import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_ID_AAC;
import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_ID_MP3;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_clone;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_free;
import static org.bytedeco.ffmpeg.global.avutil.AV_NOPTS_VALUE;

import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Rate;
import deferent.record.landing.Landing;
import java.awt.Dimension;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import java.util.function.UnaryOperator;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.jspecify.annotations.Nullable;

/**
 * A film made from a film, as an optical printer makes one: each frame is painted over and written
 * at its own time, so that an uneven film stays as uneven as it was. One frame is decoded and
 * painted while the one before is encoded; no more are about, however long the film is.
 *
 * @param film the film's file
 * @param slow seconds of the film in a second of the print: 0.5 half as fast
 * @param title said by players; empty for none
 * @param size of the print, pixels, from that of the upright film; made even, and no larger than 4K
 * @param page paints the print's frames
 */
public record Reprint(
        Path film, double slow, String title, UnaryOperator<Dimension> size, Page page) {
    private static final int TICKS = 90_000; // a second
    private static final double USUAL_RATE = 30;
    private static final int LONGEST = 3840;
    private static final int MOST = 3840 * 2160;
    private static final int LEAST = 16;
    private static final int CELS = 2;
    private static final int CLOSING = 60; // seconds

    /** What is painted. */
    public interface Page {
        /**
         * Paints one frame of the print.
         *
         * @param frame the film's, upright
         * @param time seconds into the film
         * @param print the print's, as it was left after the one before
         */
        void paint(BufferedImage frame, double time, BufferedImage print);
    }

    /** What becomes of a film's sound. */
    public enum Sound {
        /** There is none. */
        NONE,
        KEPT,
        /** A slow or quick film has none. */
        LEFT_OUT,
        /** It is coded in a way that an MP4 file does not hold. */
        STRANGE
    }

    /**
     * What was written.
     *
     * @param seconds of the print
     */
    public record Report(
            int frames, double seconds, int width, int height, long bytes, Sound sound) {}

    public Reprint {
        Refusal.within(slow, 0.02, 4, "slow motion", "times as fast as filmed");
    }

    /**
     * Writes it as H.264 in MP4, whole or not at all.
     *
     * @param progress hears the share of the film that was gone through
     * @param stop asked at every frame
     * @return empty where it was stopped
     */
    public Optional<Report> write(Path target, DoubleConsumer progress, BooleanSupplier stop) {
        try (Footage footage = Footage.open(film);
                Landing landing = Landing.at(target)) {
            Optional<Shot> first = footage.next();
            if (first.isEmpty()) {
                throw new Refusal(
                        "has no pictures in it",
                        String.valueOf(film.getFileName()),
                        "give a film as a phone or a camera makes it");
            }
            Optional<Report> report;
            try (Run run = new Run(footage, landing)) {
                report = run.through(first.get(), progress, stop);
            }
            if (report.isPresent()) {
                landing.land();
            }
            return report;
        } catch (IOException e) {
            throw Landing.cannot(target, e);
        }
    }

    /** Even, and no larger than 4K. */
    private static Dimension fitting(Dimension asked) {
        double longest = Math.max(asked.width, asked.height);
        double pixels = (double) asked.width * asked.height;
        double by = Math.min(1, Math.min(LONGEST / longest, Math.sqrt(MOST / pixels)));
        return new Dimension(even(by * asked.width), even(by * asked.height));
    }

    private static int even(double pixels) {
        return Math.max(LEAST, (int) pixels & ~1);
    }

    /** One going through of a film. */
    private final class Run implements AutoCloseable {
        private final Footage footage;
        private final Landing landing;
        private final UprightPicture upright;
        private final Dimension to;
        private final double length; // of a frame, seconds of the print
        private final Sound sound;
        private final List<AVPacket> heard = new ArrayList<>();
        private final List<FrameCel> cels = new ArrayList<>();
        private final BufferedImage print;
        private final Film out;
        private final Optional<AVStream> voice;
        private final ExecutorService encoder =
                Executors.newSingleThreadExecutor(
                        work -> {
                            Thread thread = new Thread(work, "film encoder");
                            thread.setDaemon(true);
                            return thread;
                        });
        private @Nullable Future<?> encoding;

        Run(Footage footage, Landing landing) throws IOException {
            this.footage = footage;
            this.landing = landing;
            upright = new UprightPicture(footage);
            BufferedImage picture = picture();
            to = fitting(size.apply(new Dimension(picture.getWidth(), picture.getHeight())));
            print = new BufferedImage(to.width, to.height, BufferedImage.TYPE_INT_RGB);
            double rate = footage.rate() > 0 ? footage.rate() : USUAL_RATE;
            length = 1 / (rate * slow);
            Optional<AVStream> there = footage.sound();
            sound = sound(there);
            voice = sound == Sound.KEPT ? there : Optional.empty();
            voice.ifPresent(s -> footage.hear(s, p -> heard.add(av_packet_clone(p))));
            Format format =
                    new Format(
                            Kind.MP4,
                            to.width,
                            to.height,
                            false,
                            Rate.of(Math.max(1, Math.min(240, Math.round(rate * slow)))),
                            Rate.of(TICKS),
                            title);
            Recipe recipe = Recipe.mp4(format, index());
            Film opened = null;
            try {
                opened = Film.open(format, recipe, voice, landing.channel());
                for (int i = 0; i < CELS; i++) {
                    cels.add(opened.cel());
                }
            } catch (IOException | RuntimeException | Error e) {
                cels.forEach(FrameCel::close);
                if (opened != null) {
                    opened.close();
                }
                upright.close();
                throw e;
            }
            out = opened;
        }

        private Sound sound(Optional<AVStream> there) {
            if (there.isEmpty()) {
                return Sound.NONE;
            }
            int codec = there.get().codecpar().codec_id();
            return codec != AV_CODEC_ID_AAC && codec != AV_CODEC_ID_MP3
                    ? Sound.STRANGE
                    : slow != 1 ? Sound.LEFT_OUT : Sound.KEPT;
        }

        // The index goes first, into room kept for it, where it is known how much it takes.
        private String index() {
            long frames = footage.frames();
            long packets = voice.map(AVStream::nb_frames).orElse(0L);
            boolean known = frames > 0 && (voice.isEmpty() || packets > 0);
            return known
                    ? "moov_size=" + (16384 + 48 * (frames + packets) + 8L * title.length())
                    : "";
        }

        private BufferedImage picture() {
            BufferedImage picture = upright.of(footage);
            if (picture == null) {
                throw new Refusal(
                        "changes its size on the way",
                        String.valueOf(film.getFileName()),
                        "cut it where the size changes");
            }
            return picture;
        }

        Optional<Report> through(Shot begin, DoubleConsumer progress, BooleanSupplier stop)
                throws IOException {
            Optional<Shot> shot = Optional.of(begin);
            int frames = 0;
            double last = 0;
            while (shot.isPresent()) {
                if (stop.getAsBoolean() || Thread.currentThread().isInterrupted()) {
                    return Optional.empty();
                }
                last = shot.get().time();
                page.paint(picture(), last, print);
                FrameCel cel = cels.get(frames % CELS);
                cel.take(print);
                encode(cel, last / slow);
                frames++;
                if (footage.seconds() > 0) {
                    progress.accept(Math.min(1, last / footage.seconds()));
                }
                shot = footage.next();
            }
            encode(null, 0);
            out.finish();
            return Optional.of(
                    new Report(
                            frames,
                            last / slow + length,
                            to.width,
                            to.height,
                            landing.size(),
                            sound));
        }

        // The cel that is written was painted while the one before was.
        private void encode(@Nullable FrameCel cel, double time) throws IOException {
            done();
            List<AVPacket> sounds = List.copyOf(heard);
            heard.clear();
            encoding =
                    encoder.submit(
                            () -> {
                                if (cel != null) {
                                    out.add(
                                            cel,
                                            Math.round(time * TICKS),
                                            Math.max(1, Math.round(length * TICKS)));
                                }
                                for (AVPacket packet : sounds) {
                                    speak(packet);
                                }
                                return null;
                            });
            if (cel == null) {
                done();
            }
        }

        // What was heard before the first picture is left out.
        private void speak(AVPacket packet) throws IOException {
            AVStream from = voice.orElseThrow();
            double base = (double) from.time_base().num() / from.time_base().den();
            try {
                if (packet.pts() != AV_NOPTS_VALUE && packet.pts() * base >= footage.begins()) {
                    out.sound(packet, from.time_base(), footage.begins());
                }
            } finally {
                av_packet_free(packet);
            }
        }

        private void done() throws IOException {
            Future<?> under = encoding;
            encoding = null;
            if (under == null) {
                return;
            }
            try {
                under.get();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new IOException("interrupted", e);
            } catch (ExecutionException e) {
                if (e.getCause() instanceof IOException io) {
                    throw io;
                }
                throw new IllegalStateException(e.getCause());
            }
        }

        @Override
        public void close() {
            encoder.shutdown();
            try {
                encoder.awaitTermination(CLOSING, TimeUnit.SECONDS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
            heard.forEach(org.bytedeco.ffmpeg.global.avcodec::av_packet_free);
            cels.forEach(FrameCel::close);
            out.close();
            upright.close();
        }
    }

    /**
     * Shows a film's frames one after another without writing any.
     *
     * @param seen hears each frame, upright, with its time; whether to go on
     * @return whether it was gone through, or left off by {@code seen}, and not stopped
     */
    public static boolean look(Path film, Seen seen, DoubleConsumer progress, BooleanSupplier stop)
            throws IOException {
        try (Footage footage = Footage.open(film)) {
            Optional<Shot> shot = footage.next();
            if (shot.isEmpty()) {
                return true;
            }
            try (UprightPicture upright = new UprightPicture(footage)) {
                while (shot.isPresent()) {
                    if (stop.getAsBoolean()) {
                        return false;
                    }
                    BufferedImage picture = upright.of(footage);
                    double time = shot.get().time();
                    if (picture != null && !seen.of(picture, time)) {
                        return true;
                    }
                    if (footage.seconds() > 0) {
                        progress.accept(Math.min(1, time / footage.seconds()));
                    }
                    shot = footage.next();
                }
            }
            return true;
        }
    }

    /** Looks at a frame. */
    public interface Seen {
        /** Whether to go on; the picture is lent. */
        boolean of(BufferedImage frame, double time);
    }
}
