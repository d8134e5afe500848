package deferent.take;

import deferent.motion.trace.Rate;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.reading.photo.PhotoReading;
import deferent.reading.worked.Worked;
import deferent.reel.Clip;
import deferent.reel.Clips;
import deferent.reel.Kind;
import deferent.tell.TellPhoto;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/** Clips as wishes ask for them. */
final class Moving {
    private Moving() {}

    static Clip clip(Take take) {
        Wishes wishes = take.wishes();
        Kind kind = Kind.of("clip." + wishes.ending().key());
        Subject subject = take.subject();
        Still still = Pictures.still(subject, wishes);
        Scene scene = subject.scene(still.layers());
        Clip clip =
                Clip.of(scene, still, kind)
                        .titled(subject.said())
                        .counted(wishes.yes(Wish.CAPTIONS, true))
                        .slow(wishes.number(Wish.SLOW).orElse(1));
        if (wishes.has(Wish.FPS)) {
            clip = clip.at(Rate.of(wishes.text(Wish.FPS).orElseThrow()));
        }
        OptionalDouble seconds = wishes.number(Wish.SECONDS);
        if (seconds.isPresent() && wishes.has(Wish.CYCLES)) {
            throw wishes.wrong(Wish.SECONDS, "give seconds or cycles, not both");
        }
        return seconds.isPresent()
                ? clip.filling(seconds.getAsDouble())
                : clip.cycles(wishes.whole(Wish.CYCLES, 1));
    }

    static Optional<Taken> write(
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
                .map(report -> new Taken(report.files(), report.said(), caution(take)));
    }

    /** What to say beside a file that moves by itself and moves fast. */
    static Optional<String> caution(Take take) {
        Wishes wishes = take.wishes();
        boolean moves =
                wishes.ending().family() == Ending.Family.CLIP
                        || wishes.ending() == Ending.SVG && wishes.yes(Wish.MOVING, false);
        if (!moves) {
            return Optional.empty();
        }
        Subject subject = take.subject();
        double speed = wishes.ending() == Ending.SVG ? 1 : wishes.number(Wish.SLOW).orElse(1);
        Worked<PhotoReading> photo =
                Worked.of(
                        "how fast the lights go",
                        () ->
                                PhotoReading.of(
                                        subject.trace(), subject.document().kit().headDiameter()));
        return photo.failure()
                .map(not -> "How fast the lights go could not be worked out: " + not.reason() + ".")
                .or(() -> photo.reading().flatMap(read -> TellPhoto.fastLights(read, speed)));
    }
}
