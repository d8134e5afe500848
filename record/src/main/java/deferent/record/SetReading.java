package deferent.record;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.reading.body.Performer;
import deferent.reading.danger.Level;
import deferent.reading.tether.Kit;
import deferent.search.set.InSong;
import deferent.search.set.PairBook;
import deferent.search.set.SetPlan;
import deferent.search.set.SetWork;
import deferent.search.set.Stay;
import deferent.search.set.ToSong;
import deferent.search.set.TurnLoad;
import deferent.search.set.Wanted;
import deferent.tell.TellSet;
import deferent.tell.TellSungSet;
import deferent.tell.Told;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.Stream;

/**
 * A set of the shelf, or one that is only said, worked out. One performer with one kit spins all of
 * it: those of the first pattern that is there.
 *
 * @param name what it is called
 * @param places its steps with their patterns as they are now
 * @param plan how it goes
 * @param work what it asks of grips and shoulders
 * @param turns what its turns of the body ask
 * @param song to which it is spun, if it is, though it may be gone
 * @param inSong its patterns that are there in that song
 */
public record SetReading(
        String name,
        List<SetPlaces.Place> places,
        SetPlan plan,
        SetWork work,
        List<TurnLoad> turns,
        Optional<SongPlace> song,
        List<InSong> inSong) {
    public SetReading {
        inSong = List.copyOf(inSong);
        places = List.copyOf(places);
        turns = List.copyOf(turns);
    }

    /**
     * Works a set out.
     *
     * @param round whether the last is to lead into the first
     * @return empty where it was stopped
     */
    public static Optional<SetReading> of(
            String name,
            List<SetPlaces.Place> places,
            PairBook book,
            boolean round,
            Consumer<SetPlan.Progress> listener,
            BooleanSupplier stop) {
        return of(name, places, Optional.empty(), book, round, listener, stop);
    }

    /**
     * The same to a song.
     *
     * @param song which one; where it is gone, or the set is to come round again, the patterns keep
     *     their own tempi
     */
    public static Optional<SetReading> of(
            String name,
            List<SetPlaces.Place> places,
            Optional<SongPlace> song,
            PairBook book,
            boolean round,
            Consumer<SetPlan.Progress> listener,
            BooleanSupplier stop) {
        if (places.isEmpty()) {
            throw new Refusal("has no patterns", "the set \"" + name + "\"", "put one in");
        }
        Optional<ToSong> to = song.filter(s -> !round).flatMap(SongPlace::song);
        List<Optional<Wanted>> wanted =
                places.stream().map(p -> p.pattern().map(d -> wanted(d, p.step(), to))).toList();
        return SetPlan.of(wanted, book, round, to, listener, stop)
                .map(
                        plan ->
                                new SetReading(
                                        name,
                                        places,
                                        plan,
                                        SetWork.of(plan, book),
                                        TurnLoad.of(plan, book),
                                        song,
                                        InSong.of(plan, book)));
    }

    private static Wanted wanted(PatternDocument pattern, SetStep step, Optional<ToSong> song) {
        Pairing pairing =
                song.map(s -> s.fitted(pattern.pairing(), step.beatsACycle()))
                        .orElse(pattern.pairing());
        return new Wanted(pairing, step.counts(), step.turn());
    }

    /** A step in the set's song; empty where it has none, or the pattern is gone. */
    public Optional<InSong> inSong(int step) {
        return inSong.stream().filter(at -> at.step() == step).findFirst();
    }

    /**
     * For how long a step is kept, and at which tempo; in a song also where its counts begin there,
     * and what its tempo asks. None where it is gone.
     */
    public List<Told> kept(int step) {
        Optional<Stay> stay = plan.stays().get(step);
        if (stay.isEmpty()) {
            return List.of();
        }
        List<Told> told = new ArrayList<>();
        inSong(step)
                .ifPresentOrElse(
                        at -> {
                            ToSong to = plan.song().orElseThrow();
                            told.add(TellSungSet.start(at, stay.get(), to));
                            told.addAll(TellSungSet.asked(at));
                        },
                        () -> told.add(TellSet.kept(stay.get())));
        return List.copyOf(told);
    }

    /** The first of what can hurt in a step, at the song's tempo where it has one. */
    public Optional<Told> danger(int step) {
        return inSong(step)
                .map(TellSungSet::danger)
                .orElseGet(() -> plan.stays().get(step).flatMap(TellSet::danger));
    }

    /** How grave what can hurt in a step is; calm where it is gone. */
    public Level level(int step) {
        return inSong(step)
                .map(InSong::level)
                .orElseGet(() -> plan.stays().get(step).map(TellSet::level).orElse(Level.CALM));
    }

    /** Who spins it: the performer of the first pattern that is there. */
    public static Performer performer(List<SetPlaces.Place> places) {
        return first(places).map(PatternDocument::performer).orElse(Performer.USUAL);
    }

    /** With what: the kit of the first pattern that is there. */
    public static Kit kit(List<SetPlaces.Place> places) {
        return first(places).map(PatternDocument::kit).orElse(Kit.USUAL);
    }

    private static Optional<PatternDocument> first(List<SetPlaces.Place> places) {
        return places.stream().flatMap(place -> place.pattern().stream()).findFirst();
    }

    /** What the patterns are called. */
    public List<String> names() {
        return places.stream().map(SetPlaces.Place::name).toList();
    }

    /** What is wrong with it: a song or patterns that are gone, each once. */
    public List<Told> faults() {
        return Stream.concat(
                        song.filter(s -> s.beats().isEmpty()).stream()
                                .map(s -> TellSungSet.gone(s.name(), s.unread())),
                        places.stream()
                                .filter(SetPlaces.Place::missing)
                                .map(place -> TellSet.gone(place.name(), place.unread())))
                .distinct()
                .toList();
    }

    /** The turn of the body in a step, where one is made. */
    public Optional<TurnLoad> turn(int step) {
        return turns.stream().filter(turn -> turn.step() == step).findFirst();
    }

    /** How long it takes, what is wrong with it, and what it asks. */
    public List<Told> told() {
        List<Told> told = new ArrayList<>();
        told.add(TellSet.whole(plan, names()));
        song.ifPresent(
                s ->
                        told.addAll(
                                plan.song()
                                        .map(to -> TellSungSet.whole(plan, to, s.name()))
                                        .orElseGet(
                                                () ->
                                                        s.beats().isPresent()
                                                                ? List.of(
                                                                        TellSungSet.round(s.name()))
                                                                : List.of())));
        told.addAll(faults());
        places.stream()
                .flatMap(
                        place ->
                                place.was().stream().map(was -> TellSet.renamed(was, place.name())))
                .distinct()
                .forEach(told::add);
        song.flatMap(s -> s.was().map(was -> TellSet.renamed(was, s.name()))).ifPresent(told::add);
        TellSet.ending(plan).ifPresent(told::add);
        told.addAll(TellSet.work(work, names(), plan.seconds()));
        return List.copyOf(told);
    }
}
