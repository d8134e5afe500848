package deferent.take;

import deferent.motion.pairing.Facing;
import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Lexicon;
import deferent.motion.trace.Heading;
import deferent.motion.trace.Rate;
import deferent.motion.trace.Trace;
import deferent.page.Chapters;
import deferent.page.Layer;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.sheet.Edition;
import deferent.reading.body.Person;
import deferent.reading.body.PoseOver;
import deferent.record.SetReading;
import deferent.record.cue.SetCue;
import deferent.record.cue.SetCues;
import deferent.record.cue.SungSet;
import deferent.record.landing.Landing;
import deferent.reel.Accompaniment;
import deferent.reel.Clip;
import deferent.reel.Cue;
import deferent.reel.Kind;
import deferent.search.set.Joint;
import deferent.search.set.PairBook;
import deferent.search.set.SetTrace;
import deferent.search.set.Stay;
import deferent.search.set.TurnMade;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
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
 * A set that is taken away, by the table {@link SetEndings}: played once through as a clip that
 * says each pattern and its counts, to its song where it has one; printed; as clicks, cues or
 * markers.
 *
 * @param reading the set worked out
 * @param song that it is spun to, of the same reading; empty for none
 * @param book what is known of its patterns
 * @param wishes which file, and what is wished of it
 * @param lexicon the user's own words
 */
public record SetTake(
        SetReading reading, Optional<SungSet> song, PairBook book, Wishes wishes, Lexicon lexicon) {
    /** What can be wished of a set's file, beside which one. */
    public static final List<Wish> WISHES =
            List.of(
                    Wish.VIEW,
                    Wish.DARK,
                    Wish.SIZE,
                    Wish.FPS,
                    Wish.SLOW,
                    Wish.CAPTIONS,
                    Wish.FORM,
                    Wish.PAPER,
                    Wish.LEFT_HANDED);

    /** Points a second that the framing looks at, and most of them. */
    private static final int RATE = 30;

    private static final int MOST = 9000;

    /** What is meant by one of them of a set. */
    public static String means(Wish wish) {
        return wish == Wish.FORM ? "sheet or cue, of a PDF" : wish.means();
    }

    /** Whether the set is to be worked out of mirrored patterns, and its turns the other way. */
    public static boolean leftHanded(Wishes wishes) {
        return wishes.yes(Wish.LEFT_HANDED);
    }

    public SetTake {
        SetEndings.Row row = SetEndings.of(wishes.ending().key());
        if (row.sung() && song.isEmpty()) {
            throw SetEndings.songless(row);
        }
    }

    /** Of a set without a song. */
    public SetTake(SetReading reading, PairBook book, Wishes wishes, Lexicon lexicon) {
        this(reading, Optional.empty(), book, wishes, lexicon);
    }

    /** What is called in it, and when. */
    SetCues cues() {
        return song.map(SetCues::of).orElseGet(() -> SetCues.of(reading));
    }

    /** The same as captions, each until the next. */
    List<Cue> captions() {
        List<SetCue> cues = cues().cues();
        List<Cue> captions = new ArrayList<>();
        for (int i = 0; i + 1 < cues.size(); i++) {
            double from = Math.max(0, cues.get(i).time());
            if (cues.get(i + 1).time() > from) {
                captions.add(new Cue(from, cues.get(i + 1).time(), cues.get(i).call()));
            }
        }
        return captions;
    }

    /** Writes it whole or not at all; empty where it was stopped. */
    public Optional<Taken> write(
            Path target, Consumer<TakeProgress> listener, BooleanSupplier stop) {
        SetEndings.Row row = SetEndings.of(wishes.ending().key());
        return row.ending() instanceof ClipEnding clip
                ? clip(clip, target, listener, stop)
                : streamed(row.writing().orElseThrow().of(this), target, listener, stop);
    }

    private static Optional<Taken> streamed(
            Streamed.Writing writing,
            Path target,
            Consumer<TakeProgress> listener,
            BooleanSupplier stop) {
        try (Landing landing = Landing.at(target)) {
            OutputStream out =
                    new BufferedOutputStream(Channels.newOutputStream(landing.channel()));
            Optional<String> told = writing.write(out, listener, stop);
            if (told.isEmpty()) {
                return Optional.empty();
            }
            out.flush();
            String size = Taken.size(landing.size());
            landing.land();
            return Optional.of(
                    new Taken(List.of(target), told.get() + ", " + size, Optional.empty()));
        } catch (IOException e) {
            throw Landing.cannot(target, e);
        }
    }

    Edition edition() {
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
        Clip to = song.map(sung -> clip.to(accompaniment(sung))).orElse(clip);
        return PlayedClip.write(to, target, fastLights(), listener, stop)
                .map(taken -> song.map(sung -> heard(taken, sung, ending.kind())).orElse(taken));
    }

    /** The song from where the set begins, and its clock. */
    private static Accompaniment accompaniment(SungSet sung) {
        double begins = sung.begins();
        Accompaniment.Pace pace =
                new Accompaniment.Pace() {
                    @Override
                    public double moment(double seconds) {
                        return sung.clock().plan(begins + seconds);
                    }

                    @Override
                    public double seen(double moment) {
                        return sung.clock().time(moment) - begins;
                    }
                };
        return new Accompaniment(pace, sung.sound(), begins);
    }

    private static Taken heard(Taken taken, SungSet sung, Kind kind) {
        String said =
                !kind.has(Kind.Trait.FILM)
                        ? "; silent, and goes with \"" + sung.song() + "\" from "
                        : sung.sound().isPresent()
                                ? "; with \"" + sung.song() + "\" from "
                                : "; silent, as the file of \"" + sung.song() + "\" is gone; from ";
        return new Taken(
                taken.files(), taken.told() + said + SetCues.clock(sung.begins()), taken.caution());
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
                List<Joint> joints = reading.plan().joints();
                boolean last = i >= joints.size();
                Optional<String> next =
                        last ? Optional.empty() : Optional.of(reading.names().get((i + 1) % all));
                Optional<Joint> led =
                        last || joints.get(i).way() != Joint.Way.LED
                                ? Optional.empty()
                                : Optional.of(joints.get(i));
                new Counted(this, i, stay, next).say(led, said);
                led.ifPresent(joint -> led(stay, joint, parts));
            }
        }
        return new Chapters(parts, said, titles());
    }

    private List<Chapters.Title> titles() {
        List<Chapters.Title> titles = new ArrayList<>();
        for (int i = 0; i < reading.places().size(); i++) {
            String name = reading.places().get(i).name();
            reading.plan()
                    .stays()
                    .get(i)
                    .ifPresent(stay -> titles.add(new Chapters.Title(stay.starts(), name)));
        }
        return titles;
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

    /** A passage, with a cycle of either pattern round it. */
    private void led(Stay from, Joint joint, List<Chapters.Part> parts) {
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
