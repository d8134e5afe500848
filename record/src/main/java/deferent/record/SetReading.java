package deferent.record;

import deferent.motion.pairing.Refusal;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import deferent.search.set.PairBook;
import deferent.search.set.SetPlan;
import deferent.search.set.SetWork;
import deferent.search.set.TurnLoad;
import deferent.search.set.Wanted;
import deferent.tell.TellSet;
import deferent.tell.Told;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * A set of the shelf, or one that is only said, worked out. One performer with one kit spins all of
 * it: those of the first pattern that is there.
 *
 * @param name what it is called
 * @param places its steps with their patterns as they are now
 * @param plan how it goes
 * @param work what it asks of grips and shoulders
 * @param turns what its turns of the body ask
 */
public record SetReading(
        String name,
        List<SetPlaces.Place> places,
        SetPlan plan,
        SetWork work,
        List<TurnLoad> turns) {
    public SetReading {
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
        if (places.isEmpty()) {
            throw new Refusal("has no patterns", "the set \"" + name + "\"", "put one in");
        }
        List<Optional<Wanted>> wanted =
                places.stream().map(p -> p.pattern().map(d -> wanted(d, p.step()))).toList();
        return SetPlan.of(wanted, book, round, listener, stop)
                .map(
                        plan ->
                                new SetReading(
                                        name,
                                        places,
                                        plan,
                                        SetWork.of(plan, book),
                                        TurnLoad.of(plan, book)));
    }

    private static Wanted wanted(PatternDocument pattern, SetStep step) {
        return new Wanted(pattern.pairing(), step.counts(), step.turn());
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

    /** What is wrong with it: patterns that are gone, each once. */
    public List<Told> faults() {
        return places.stream()
                .filter(SetPlaces.Place::missing)
                .map(place -> TellSet.gone(place.name(), place.unread()))
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
        told.addAll(faults());
        places.stream()
                .flatMap(
                        place ->
                                place.was().stream().map(was -> TellSet.renamed(was, place.name())))
                .distinct()
                .forEach(told::add);
        TellSet.ending(plan).ifPresent(told::add);
        told.addAll(TellSet.work(work, names(), plan.seconds()));
        return List.copyOf(told);
    }
}
