package deferent.take;

import deferent.motion.pairing.Facing;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Lexicon;
import deferent.motion.trace.Heading;
import deferent.motion.trace.Rate;
import deferent.motion.trace.Trace;
import deferent.page.Chapters;
import deferent.page.Layer;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.sheet.Edition;
import deferent.page.sheet.SetSheet;
import deferent.reading.body.Person;
import deferent.reading.body.PoseOver;
import deferent.record.SetJson;
import deferent.record.SetReading;
import deferent.record.landing.Landing;
import deferent.reel.Clip;
import deferent.search.set.Joint;
import deferent.search.set.PairBook;
import deferent.search.set.SetTrace;
import deferent.search.set.Stay;
import deferent.search.set.TurnMade;
import deferent.tell.TellSet;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * A set that is taken away: played once through as a clip that says each pattern and its counts,
 * printed as a sheet, or as JSON.
 *
 * @param reading the set worked out
 * @param book what is known of its patterns
 * @param wishes which file, and what is wished of it
 * @param lexicon the user's own words
 */
public record SetTake(SetReading reading, PairBook book, Wishes wishes, Lexicon lexicon) {
    /** What can be wished of a set's file, beside which one. */
    public static final List<Wish> WISHES =
            List.of(
                    Wish.VIEW,
                    Wish.DARK,
                    Wish.SIZE,
                    Wish.FPS,
                    Wish.SLOW,
                    Wish.CAPTIONS,
                    Wish.PAPER,
                    Wish.LEFT_HANDED);

    /** Points a second that the framing looks at, and most of them. */
    private static final int RATE = 30;

    private static final int MOST = 9000;

    /** Whether the set is to be worked out of mirrored patterns, and its turns the other way. */
    public static boolean leftHanded(Wishes wishes) {
        return wishes.yes(Wish.LEFT_HANDED);
    }

    public SetTake {
        Ending ending = wishes.ending();
        if (!(ending instanceof ClipEnding)
                && !(ending instanceof PrintEnding)
                && !ending.key().equals("json")) {
            throw new Refusal(
                    "ends in ." + ending.key() + ", which no set is written as",
                    "the file",
                    "end it in .json, or "
                            + Endings.list(
                                    e -> e instanceof ClipEnding || e instanceof PrintEnding));
        }
    }

    /** Writes it whole or not at all; empty where it was stopped. */
    public Optional<Taken> write(
            Path target, Consumer<TakeProgress> listener, BooleanSupplier stop) {
        return wishes.ending() instanceof ClipEnding clip
                ? clip(clip, target, listener, stop)
                : streamed(target, listener, stop);
    }

    private Optional<Taken> streamed(
            Path target, Consumer<TakeProgress> listener, BooleanSupplier stop) {
        try (Landing landing = Landing.at(target)) {
            OutputStream out =
                    new BufferedOutputStream(Channels.newOutputStream(landing.channel()));
            boolean print = wishes.ending() instanceof PrintEnding;
            boolean whole = true;
            if (print) {
                whole =
                        new SetSheet(reading, edition())
                                .write(
                                        out,
                                        p ->
                                                listener.accept(
                                                        new TakeProgress(
                                                                (double) p.done()
                                                                        / Math.max(1, p.all()),
                                                                p.told())),
                                        stop);
            } else {
                out.write(SetJson.write(reading).getBytes(StandardCharsets.UTF_8));
            }
            if (!whole) {
                return Optional.empty();
            }
            out.flush();
            String size = Taken.size(landing.size());
            landing.land();
            return Optional.of(
                    new Taken(
                            List.of(target),
                            (print ? "sheet of a set" : "a set worked out") + ", " + size,
                            Optional.empty()));
        } catch (IOException e) {
            throw Landing.cannot(target, e);
        }
    }

    private Edition edition() {
        return Edition.USUAL
                .with(PrintEnding.paper(wishes))
                .with(wishes.view().stand())
                .with(lexicon);
    }

    private Optional<Taken> clip(
            ClipEnding ending, Path target, Consumer<TakeProgress> listener, BooleanSupplier stop) {
        Trace trace = SetTrace.of(reading.plan(), book);
        int count = (int) Math.max(240, Math.min(MOST, RATE * trace.period()));
        Scene whole = Scene.of(trace, count, Scene.nearer(trace), body(trace));
        Clip clip =
                Clip.of(whole, still(), ending.kind())
                        .titled(reading.name())
                        .counted(wishes.yes(Wish.CAPTIONS))
                        .slow(wishes.number(Wish.SLOW).orElseThrow())
                        .at(Rate.of(wishes.text(Wish.FPS).orElseThrow()))
                        .in(chapters());
        return PlayedClip.write(clip, target, fastLights(), listener, stop);
    }

    /** With whoever spins it where the body turns. */
    private Still still() {
        Set<Layer> layers = new HashSet<>(wishes.layers());
        if (!reading.plan().turnings().isEmpty()) {
            layers.add(Layer.BODY);
        }
        return PlayedClip.still(wishes).with(layers);
    }

    /** Each pattern as it comes round again and again, and between them what leads on. */
    Chapters chapters() {
        Map<Turned, Scene> scenes = new HashMap<>();
        List<Chapters.Part> parts = new ArrayList<>();
        List<Chapters.Said> said = new ArrayList<>();
        int all = reading.places().size();
        for (int i = 0; i < all; i++) {
            Optional<Stay> there = reading.plan().stays().get(i);
            if (there.isPresent()) {
                Stay stay = there.get();
                Turned first =
                        new Turned(stay.wanted().pairing(), reading.plan().quartersBefore(i));
                parts.add(
                        new Chapters.Part(
                                stay.starts(),
                                scenes.computeIfAbsent(first, this::scene),
                                stay.entered() - stay.starts()));
                if (stay.turning().isPresent()) {
                    TurnMade turning = stay.turning().get();
                    parts.add(turning(stay, turning));
                    double after = turning.ends() + stay.wanted().pairing().period();
                    if (after < stay.ends()) {
                        Turned then =
                                new Turned(first.pairing(), first.quarters() + turning.quarters());
                        parts.add(
                                new Chapters.Part(
                                        after,
                                        scenes.computeIfAbsent(then, this::scene),
                                        stay.entered() - stay.starts()));
                    }
                }
                counted(stay, reading.places().get(i).name(), said);
                if (i < reading.plan().joints().size()) {
                    Joint joint = reading.plan().joints().get(i);
                    if (joint.way() == Joint.Way.LED) {
                        led(stay, joint, reading.names().get((i + 1) % all), parts, said);
                    }
                }
            }
        }
        return new Chapters(parts, said);
    }

    /** A pattern as it is spun once the body has turned by so many quarters to the left. */
    private record Turned(Pairing pairing, int quarters) {
        Turned {
            quarters = Math.floorMod(quarters, 4);
        }
    }

    private Scene scene(Turned turned) {
        Trace spun = book.spun(turned.pairing());
        Facing facing = new Facing(turned.quarters(), List.of());
        Trace trace = spun.turnedBy(Heading.of(facing, spun.period()), book.performer().axis());
        return Scene.of(trace, Scene.USUAL_COUNT, Scene.nearer(trace), body(trace));
    }

    /** Whoever spins it, where the body turns, so that it is seen which way it faces. */
    private Optional<Person> body(Trace trace) {
        return reading.plan().turnings().isEmpty()
                ? Optional.empty()
                : Optional.of(Person.of(PoseOver.of(trace, book.performer())));
    }

    /** A turn of the body, with a cycle of the pattern on either side. */
    private Chapters.Part turning(Stay stay, TurnMade turning) {
        double cycle = stay.wanted().pairing().period();
        double begin = Math.max(0, turning.starts() - cycle);
        double until = Math.min(reading.plan().seconds(), turning.ends() + cycle);
        Trace trace = SetTrace.of(reading.plan(), book, begin, until);
        int count = (int) Math.max(240, Math.min(MOST, 4 * RATE * trace.period()));
        return new Chapters.Part(
                turning.starts(), Scene.of(trace, count, Scene.nearer(trace), body(trace)), -begin);
    }

    private static void counted(Stay stay, String name, List<Chapters.Said> said) {
        double count = stay.wanted().count();
        int counts = (int) Math.max(1, Math.ceil(stay.counts() - 0.05));
        for (int k = 0; k < counts; k++) {
            said.add(
                    new Chapters.Said(
                            stay.starts() + k * count,
                            List.of(name, (k + 1) + " of " + counts + turned(stay, k * count))));
        }
    }

    /** ", half turn to the left", while it is made. */
    private static String turned(Stay stay, double after) {
        double middle = stay.starts() + after + stay.wanted().count() / 2;
        return stay.turning()
                .filter(turning -> turning.starts() < middle && middle < turning.ends())
                .map(turning -> ", " + TellSet.turned(turning.quarters()))
                .orElse("");
    }

    /** A passage, with a cycle of either pattern round it. */
    private void led(
            Stay from,
            Joint joint,
            String into,
            List<Chapters.Part> parts,
            List<Chapters.Said> said) {
        double cycle = from.wanted().pairing().period();
        double end = joint.starts() + joint.seconds();
        double begin = Math.max(from.starts(), joint.starts() - cycle);
        double until = Math.min(reading.plan().seconds(), end + 0.25 * cycle);
        Trace trace = SetTrace.of(reading.plan(), book, begin, until);
        int count = (int) Math.max(240, Math.min(MOST, 4 * RATE * trace.period()));
        parts.add(
                new Chapters.Part(
                        joint.starts(),
                        Scene.of(trace, count, Scene.nearer(trace), body(trace)),
                        -begin));
        said.add(
                new Chapters.Said(
                        joint.starts(),
                        List.of("Into " + into, TellSet.duration(joint.seconds()))));
    }

    private Optional<String> fastLights() {
        return FastLights.of(
                reading.plan().stays().stream()
                        .flatMap(Optional::stream)
                        .map(stay -> stay.wanted().pairing()),
                book.kit(),
                wishes);
    }
}
