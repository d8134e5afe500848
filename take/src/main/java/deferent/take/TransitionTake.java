package deferent.take;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Count;
import deferent.motion.trace.Rate;
import deferent.motion.trace.Trace;
import deferent.page.Chapters;
import deferent.page.Layer;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.StillForm;
import deferent.reading.body.Person;
import deferent.reading.body.PoseOver;
import deferent.reading.tether.Kit;
import deferent.record.Shelf;
import deferent.record.landing.Landing;
import deferent.reel.Clip;
import deferent.search.transition.Bridge;
import deferent.search.transition.Transition;
import deferent.search.transition.TransitionFinder;
import deferent.tell.PassageMoment;
import deferent.tell.TellTransition;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.Stream;

/**
 * A transition that is taken away: a clip that plays it once, or a picture of it.
 *
 * @param shown what is played
 * @param from what the first pattern is called
 * @param into what the second is called
 * @param finder what it was found with, and for whom
 * @param kit with what it is spun
 * @param wishes which file, and what is wished of it
 */
public record TransitionTake(
        ShownTransition shown,
        String from,
        String into,
        TransitionFinder finder,
        Kit kit,
        Wishes wishes) {
    /** What can be wished of its file, beside which one. */
    public static final List<Wish> WISHES =
            List.of(
                    Wish.VIEW,
                    Wish.TURN,
                    Wish.LIFT,
                    Wish.DARK,
                    Wish.TRANSPARENT,
                    Wish.CAPTION,
                    Wish.WITH,
                    Wish.WITHOUT,
                    Wish.SIZE,
                    Wish.FPS,
                    Wish.SLOW);

    /** Points a second that a scene has. */
    private static final int RATE = 240;

    /** Letters in a line of a picture's caption, about. */
    private static final int LINE = 64;

    public TransitionTake {
        if (!written(wishes.ending())) {
            throw new Refusal(
                    "ends in ." + wishes.ending().key() + ", which no transition is written as",
                    "the file",
                    "end it in " + Endings.list(TransitionTake::written));
        }
    }

    /** Whether a transition can be taken away in such a file. */
    public static boolean written(Ending ending) {
        return ending instanceof ClipEnding || ending instanceof PictureEnding;
    }

    /** The name of its file, before the dot. */
    public String fileName() {
        return Shelf.slug(from + " into " + into);
    }

    /** Writes it whole or not at all; empty where it was stopped. */
    public Optional<Taken> write(
            Path target, Consumer<TakeProgress> listener, BooleanSupplier stop) {
        return wishes.ending() instanceof ClipEnding clip
                ? clip(clip, target, listener, stop)
                : picture(target);
    }

    private Scene scene(Trace trace) {
        int count = (int) Math.max(240, RATE * trace.period());
        return Scene.of(
                trace,
                count,
                Scene.nearer(trace),
                wishes.layers().contains(Layer.BODY)
                        ? Optional.of(Person.of(PoseOver.of(trace, finder.request().performer())))
                        : Optional.empty());
    }

    private Still still() {
        Still still = PlayedClip.still(wishes);
        return wishes.yes(Wish.TRANSPARENT) ? still.clear() : still;
    }

    private Optional<Taken> picture(Path target) {
        Still still = picture();
        Scene scene = scene(shown.played().trace());
        try (Landing landing = Landing.at(target)) {
            OutputStream out =
                    new BufferedOutputStream(Channels.newOutputStream(landing.channel()));
            out.write(Endings.picture(target, scene, still));
            out.flush();
            String size = Taken.size(landing.size());
            landing.land();
            return Optional.of(
                    new Taken(
                            List.of(target),
                            still.width() + " by " + still.height() + " pixels, " + size,
                            Optional.empty()));
        } catch (IOException e) {
            throw Landing.cannot(target, e);
        }
    }

    private Still picture() {
        Transition transition = shown.transition();
        List<StillForm.Passing> hands = new ArrayList<>();
        for (Side side : Side.values()) {
            List<PassageMoment> own =
                    shown.moments().stream().filter(m -> m.side() == side).toList();
            Bridge bridge = transition.bridge(side);
            if (!bridge.keeps()) {
                PassageMoment leaves = own.get(0);
                PassageMoment joins = own.get(1);
                hands.add(
                        new StillForm.Passing(
                                side, leaves.time(), joins.time(), leaves.said(), joins.said()));
            }
        }
        Still still = still().with(new StillForm.Passage(hands)).at(shown.leaves());
        return wishes.yes(Wish.CAPTION) ? still.with(caption()) : still;
    }

    private List<String> caption() {
        List<String> lines = new ArrayList<>(List.of(from + " into " + into));
        lines.addAll(sentence());
        return lines;
    }

    /** What is done, in lines that can be read where the picture is small. */
    private List<String> sentence() {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : TellTransition.of(shown.transition()).text().split(" ")) {
            if (line.length() > 0 && line.length() + word.length() >= LINE) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() > 0 ? " " : "").append(word);
        }
        lines.add(line.toString());
        return lines;
    }

    private Optional<Taken> clip(
            ClipEnding ending, Path target, Consumer<TakeProgress> listener, BooleanSupplier stop) {
        Clip clip =
                Clip.of(scene(shown.played().trace()), still(), ending.kind())
                        .titled(from + " into " + into)
                        .slow(wishes.number(Wish.SLOW).orElseThrow())
                        .at(Rate.of(wishes.text(Wish.FPS).orElseThrow()))
                        .in(chapters());
        return PlayedClip.write(clip, target, fastLights(), listener, stop);
    }

    /** The first pattern with its counts, the passage with its sentence, the second with counts. */
    Chapters chapters() {
        Transition transition = shown.transition();
        List<Chapters.Part> parts =
                List.of(
                        new Chapters.Part(0, scene(finder.spun(transition.from())), shown.starts()),
                        new Chapters.Part(shown.leaves(), scene(shown.played().trace()), 0),
                        new Chapters.Part(
                                shown.joined(),
                                scene(finder.spun(transition.to())),
                                transition.joins() - shown.joined()));
        List<Chapters.Said> said = new ArrayList<>();
        boolean passed = false;
        for (Count count : shown.counts()) {
            if (!passed && count.time() >= shown.leaves() - 1e-9) {
                said.add(passing());
                passed = true;
            }
            if (count.time() < shown.leaves() || count.time() >= shown.joined() - 1e-9) {
                said.add(counted(passed ? into : from, count));
            }
        }
        if (!passed) {
            said.add(passing());
        }
        return new Chapters(parts, said);
    }

    /** As many lines as the passage takes, so that the picture stays where it is. */
    private Chapters.Said counted(String name, Count count) {
        List<String> lines = new ArrayList<>(List.of(name, count.said()));
        lines.addAll(Collections.nCopies(sentence().size() - 1, ""));
        return new Chapters.Said(count.time(), lines);
    }

    private Chapters.Said passing() {
        List<String> lines = new ArrayList<>(List.of("Into " + into));
        lines.addAll(sentence());
        return new Chapters.Said(shown.leaves(), lines);
    }

    private Optional<String> fastLights() {
        return FastLights.of(
                Stream.of(shown.transition().from(), shown.transition().to()), kit, wishes);
    }
}
