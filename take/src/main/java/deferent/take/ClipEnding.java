package deferent.take;

import static deferent.take.Wish.*;

import deferent.motion.trace.Rate;
import deferent.page.Png;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.record.landing.Scratch;
import deferent.reel.Clip;
import deferent.reel.ClipReport;
import deferent.reel.Clips;
import deferent.reel.Kind;
import deferent.reel.Natives;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/** A clip, of whatever kind there is. */
record ClipEnding(Kind kind) implements Ending {
    private static final Family FAMILY = new Family("clip", "Clip", "for films and posts");

    /** The longer edge of a preview, pixels. */
    private static final int EDGE = 320;

    /** What a preview moves at, most and least, frames a second. */
    private static final int RATE = 20;

    private static final int LEAST_RATE = 2;

    /** So many frames are made while somebody waits. */
    private static final int FRAMES = 60;

    /** A length this near to the one asked for needs no word, seconds. */
    private static final double HARDLY = 0.005;

    /** What previews are made as. */
    private static final Kind SHOWN = Kind.WEBP;

    @Override
    public String key() {
        return kind.ending();
    }

    @Override
    public String mediaType() {
        return kind.mediaType();
    }

    @Override
    public String words() {
        return kind.about();
    }

    @Override
    public Family family() {
        return FAMILY;
    }

    @Override
    public List<Offer> offers() {
        List<Wish> usual =
                new ArrayList<>(
                        List.of(
                                CORD,
                                VIEW,
                                TURN,
                                LIFT,
                                DARK,
                                WITH,
                                WITHOUT,
                                CYCLES,
                                SECONDS,
                                SLOW,
                                LEFT_HANDED));
        if (kind.has(Kind.Trait.ALPHA)) {
            usual.add(TRANSPARENT);
            usual.add(OUTLINE);
        }
        if (kind.has(Kind.Trait.CAPTIONS)) {
            usual.add(CAPTIONS);
        }
        return Offer.all(
                usual,
                Offer.size(kind.edge()),
                CAPTION.usual().unsaid("no"),
                FPS.usual()
                        .choosing(kind.rates().stream().map(r -> new Offer.Choice(r, r)).toList())
                        .unsaid(kind.usualRate()));
    }

    @Override
    public boolean filmed() {
        return true;
    }

    @Override
    public OptionalDouble speed(Wishes wishes) {
        return wishes.number(SLOW);
    }

    private Clip clip(Take take) {
        Wishes wishes = take.wishes();
        Subject subject = take.subject();
        Still still = subject.still(wishes);
        Scene scene = subject.scene(still.layers());
        Clip clip =
                Clip.of(scene, still, kind)
                        .titled(subject.named())
                        .counted(wishes.yes(CAPTIONS))
                        .slow(wishes.number(SLOW).orElseThrow())
                        .at(Rate.of(wishes.text(FPS).orElseThrow()));
        if (still.transparent()) {
            clip = clip.outlined(wishes.number(OUTLINE).orElseThrow());
        } else if (wishes.has(OUTLINE)) {
            throw wishes.wrong(OUTLINE, "leave it out, or wish for a transparent ground");
        }
        OptionalDouble seconds = wishes.number(SECONDS);
        if (seconds.isPresent() && wishes.has(CYCLES)) {
            throw wishes.wrong(SECONDS, "give seconds or cycles, not both");
        }
        return seconds.isPresent()
                ? clip.filling(seconds.getAsDouble())
                : clip.cycles(wishes.whole(CYCLES));
    }

    /** That another length was asked for, where it was. */
    private static String asked(Wishes wishes, double came) {
        OptionalDouble seconds = wishes.number(SECONDS);
        return seconds.isEmpty() || Math.abs(seconds.getAsDouble() - came) < HARDLY
                ? ""
                : String.format(
                        Locale.ROOT,
                        "; the whole number of cycles nearest to the %s s asked for",
                        wishes.text(SECONDS).orElse(""));
    }

    @Override
    public Optional<Taken> write(
            Take take, Path target, Consumer<TakeProgress> listener, BooleanSupplier stop) {
        return Clips.write(
                        clip(take),
                        target,
                        p ->
                                listener.accept(
                                        new TakeProgress(
                                                (double) p.done() / p.all(),
                                                "frame " + p.done() + " of " + p.all())),
                        stop)
                .map(
                        report ->
                                new Taken(
                                        report.files(),
                                        report.said() + asked(take.wishes(), report.seconds()),
                                        take.caution()));
    }

    @Override
    public Optional<Preview> preview(Take take, boolean calm, BooleanSupplier stop)
            throws IOException {
        Clip clip = clip(take);
        String told =
                String.format(
                        Locale.ROOT,
                        "%d frames, %.2f s, %d by %d pixels",
                        clip.frames(),
                        clip.seconds(),
                        clip.still().width(),
                        clip.still().height());
        Optional<String> whyNot = Natives.available();
        if (!calm && whyNot.isEmpty()) {
            return moving(clip, stop)
                    .map(webp -> Preview.of(webp, SHOWN.mediaType(), told).moving());
        }
        Still small = Preview.small(clip.still(), Preview.EDGE);
        Preview frame = Preview.of(Png.of(clip.scene(), small), "image/png", told).moving();
        if (whyNot.isEmpty()) {
            return Optional.of(frame);
        }
        return Optional.of(
                !kind.has(Kind.Trait.EVERYWHERE)
                        ? frame.barred(
                                "One frame: "
                                        + whyNot.get()
                                        + "; take numbered PNG files in a .zip instead.")
                        : frame.noted("One frame: " + whyNot.get() + "."));
    }

    /** One cycle of it, small; empty where it was stopped. */
    private static Optional<byte[]> moving(Clip clip, BooleanSupplier stop) throws IOException {
        double seconds = clip.cycles(1).seconds();
        double most = Math.min(RATE, clip.rate().perSecond());
        long rate = (long) Math.max(LEAST_RATE, Math.min(most, FRAMES / seconds));
        Still still = Preview.small(clip.still(), EDGE);
        Clip small =
                new Clip(clip.scene(), still, SHOWN, Rate.of(rate), 1, clip.slow())
                        .outlined(clip.outline());
        try (Scratch scratch = Scratch.open()) {
            Path file = scratch.folder().resolve("preview");
            Optional<ClipReport> report = Clips.write(small, file, p -> {}, stop);
            return report.isPresent() ? Optional.of(Files.readAllBytes(file)) : Optional.empty();
        }
    }
}
