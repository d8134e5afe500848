package deferent.reel;

import deferent.motion.pairing.Refusal;
import deferent.page.Frames;
import deferent.record.landing.Landing;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * Writes clips. Painters work a few frames ahead of the encoder, each on a cel of its own, and the
 * encoder takes the cels in order; there are never more frames about than cels, however long the
 * clip.
 */
public final class Clips {
    private static final int MOST_PAINTERS = 4;

    private Clips() {}

    /** Writes a clip, whatever it takes. */
    public static ClipReport write(Clip clip, Path target) {
        return write(clip, target, progress -> {}, () -> false)
                .orElseThrow(() -> new IllegalStateException("a clip stopped that nobody stopped"));
    }

    /**
     * Writes a clip to a file. A clip that is stopped or cannot be written leaves what stood there
     * before as it was.
     *
     * @param listener hears of every frame written, on this thread
     * @param stop asked before every frame
     * @return what was written; nothing if it was stopped
     * @throws Refusal where the clip cannot be written there, or this machine cannot write its kind
     */
    public static Optional<ClipReport> write(
            Clip clip, Path target, Consumer<ClipProgress> listener, BooleanSupplier stop) {
        return write(clip, target, listener, stop, Landing.NEW);
    }

    static Optional<ClipReport> write(
            Clip clip,
            Path target,
            Consumer<ClipProgress> listener,
            BooleanSupplier stop,
            Landing.Opening opening) {
        if (!clip.kind().has(Kind.Trait.EVERYWHERE)) {
            Natives.need();
        }
        Loop loop = clip.loop();
        List<Cue> cues =
                clip.captions()
                        ? clip.chapters()
                                .map(chapters -> Captions.of(chapters, loop))
                                .orElseGet(() -> Captions.of(clip.scene().trace(), loop))
                        : List.of();
        Frames frames = clip.painter();
        try (Landing landing = Landing.at(target, opening)) {
            boolean whole;
            try (Spool<?> spool =
                    clip.kind()
                            .opening()
                            .open(clip, loop, cues, frames.fork(), target, landing.channel())) {
                whole = run(clip, loop, frames, spool, listener, stop);
            }
            return whole
                    ? Optional.of(land(clip, loop, cues, target, landing, opening))
                    : Optional.empty();
        } catch (IOException e) {
            throw Landing.cannot(target, e);
        }
    }

    private static ClipReport land(
            Clip clip,
            Loop loop,
            List<Cue> cues,
            Path target,
            Landing landing,
            Landing.Opening opening)
            throws IOException {
        List<Path> files = new ArrayList<>(List.of(target));
        long bytes = landing.size();
        if (cues.isEmpty() || !clip.kind().has(Kind.Trait.CAPTIONS_BESIDE)) {
            landing.land();
        } else {
            Path beside = captions(target);
            try (Landing text = Landing.at(beside, opening)) {
                text.write(WebVtt.of(clip.title(), cues).getBytes(StandardCharsets.UTF_8));
                Landing.landTogether(List.of(landing, text));
            }
            files.add(beside);
        }
        return new ClipReport(
                loop.frames(), loop.seconds(), bytes, loop.cycles(), loop.tempoOff(), files);
    }

    /** Where the captions of a film stand that players look for beside it. */
    static Path captions(Path target) {
        String name = String.valueOf(target.getFileName());
        int dot = name.lastIndexOf('.');
        return target.resolveSibling((dot > 0 ? name.substring(0, dot) : name) + ".vtt");
    }

    private static <C extends Cel> boolean run(
            Clip clip,
            Loop loop,
            Frames frames,
            Spool<C> spool,
            Consumer<ClipProgress> listener,
            BooleanSupplier stop)
            throws IOException {
        int painters =
                Math.max(1, Math.min(MOST_PAINTERS, Runtime.getRuntime().availableProcessors()));
        List<Painting<C>> paintings = new ArrayList<>();
        ExecutorService hands =
                Executors.newFixedThreadPool(
                        painters,
                        work -> {
                            Thread thread = new Thread(work, "clip painter");
                            thread.setDaemon(true);
                            return thread;
                        });
        try {
            for (int i = 0; i < Math.min(painters + 2, loop.frames()); i++) {
                paintings.add(new Painting<>(frames.fork(), picture(clip), spool.cel()));
            }
            return run(clip, loop, paintings, hands, spool, listener, stop);
        } finally {
            // Cels hold native memory: nobody may paint on one that is given back.
            hands.shutdownNow();
            rest(hands);
            paintings.forEach(Painting::close);
        }
    }

    private static void rest(ExecutorService hands) {
        boolean hurried = false;
        while (!hands.isTerminated()) {
            try {
                hands.awaitTermination(1, java.util.concurrent.TimeUnit.MINUTES);
            } catch (InterruptedException e) {
                hurried = true;
            }
        }
        if (hurried) {
            Thread.currentThread().interrupt();
        }
    }

    private static <C extends Cel> boolean run(
            Clip clip,
            Loop loop,
            List<Painting<C>> paintings,
            ExecutorService hands,
            Spool<C> spool,
            Consumer<ClipProgress> listener,
            BooleanSupplier stop)
            throws IOException {
        double start = clip.scene().trace().interval().start();
        Deque<Future<Painting<C>>> ahead = new ArrayDeque<>();
        int begun = 0;
        for (int frame = 0; frame < loop.frames(); frame++) {
            while (begun < loop.frames() && begun < frame + paintings.size()) {
                Painting<C> painting = paintings.get(begun % paintings.size());
                double moment = start + loop.moment(begun);
                ahead.add(hands.submit(() -> painting.paint(moment)));
                begun++;
            }
            if (stop.getAsBoolean() || Thread.currentThread().isInterrupted()) {
                return false;
            }
            spool.add(painted(ahead.remove()).cel(), frame);
            listener.accept(new ClipProgress(frame + 1, loop.frames()));
        }
        spool.finish();
        return true;
    }

    private static <C extends Cel> Painting<C> painted(Future<Painting<C>> ahead)
            throws IOException {
        try {
            return ahead.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted", e);
        } catch (ExecutionException e) {
            Throwable cause = e.getCause();
            if (cause instanceof IOException io) {
                throw io;
            }
            if (cause instanceof RuntimeException own) {
                throw own;
            }
            if (cause instanceof Error own) {
                throw own;
            }
            throw new IllegalStateException(cause);
        }
    }

    static BufferedImage picture(Clip clip) {
        return new BufferedImage(
                clip.still().width(),
                clip.still().height(),
                clip.still().transparent()
                        ? BufferedImage.TYPE_INT_ARGB_PRE
                        : BufferedImage.TYPE_INT_RGB);
    }

    /** A painter with its picture and its cel. */
    private record Painting<C extends Cel>(Frames frames, BufferedImage picture, C cel) {
        Painting<C> paint(double moment) throws IOException {
            frames.paint(moment, picture);
            cel.take(picture);
            return this;
        }

        void close() {
            cel.close();
        }
    }
}
