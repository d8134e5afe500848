package deferent.record;

import deferent.motion.phrase.Lexicon;
import deferent.search.set.BodyTurn;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Where each step of a set finds its pattern now. A step knows its pattern by file and by name, of
 * which either may have changed since: what has both is it; else what has the name, wherever its
 * file went; else what stands in the file, whatever it is called by now.
 */
public final class SetPlaces {
    private final Map<String, Kept> byId = new HashMap<>();
    private final Map<String, Kept> byName = new HashMap<>();
    private final Map<String, String> unread = new HashMap<>();

    private SetPlaces() {}

    /**
     * A step with what was found for it.
     *
     * @param step as it is kept
     * @param id where the pattern stands on the shelf; empty where the set holds it, or it is gone
     * @param pattern empty where it is gone
     * @param was what it was called when the step was kept, where it has another name now
     * @param unread why its file cannot be read, where that is why it is gone
     */
    public record Place(
            SetStep step,
            Optional<String> id,
            Optional<PatternDocument> pattern,
            Optional<String> was,
            Optional<String> unread) {
        /** Whether its pattern is gone. */
        public boolean missing() {
            return pattern.isEmpty();
        }

        /** The same kept for so many counts. */
        Place kept(int counts) {
            return new Place(
                    new SetStep(step.what(), counts, step.turn(), step.beatsACycle()),
                    id,
                    pattern,
                    was,
                    unread);
        }

        /** The left-handed version: its pattern mirrored, and its turn to the other side. */
        public Place mirrored(Lexicon lexicon) {
            return new Place(
                    new SetStep(
                            step.what(),
                            step.counts(),
                            step.turn().map(t -> new BodyTurn(-t.quarters(), t.count())),
                            step.beatsACycle()),
                    id,
                    pattern.map(p -> p.mirrored(lexicon)),
                    was,
                    unread);
        }

        /** A pattern that is on no shelf. */
        public static Place of(PatternDocument pattern) {
            return new Place(
                    SetStep.of(pattern, 1),
                    Optional.empty(),
                    Optional.of(pattern),
                    Optional.empty(),
                    Optional.empty());
        }

        /** What it is called now, or was when it was there. */
        public String name() {
            return pattern.map(PatternDocument::name).orElse(step.what().name());
        }
    }

    /** The patterns that can be found on a shelf. */
    public static SetPlaces on(Shelf.Listing listing) {
        SetPlaces places = new SetPlaces();
        for (Kept kept : listing.kept()) {
            if (kept.document() instanceof PatternDocument) {
                places.byId.put(kept.id(), kept);
                places.byName.putIfAbsent(folded(kept.document().name()), kept);
            }
        }
        for (Shelf.Entry entry : listing.entries()) {
            entry.error().ifPresent(why -> places.unread.put(entry.id(), why));
        }
        return places;
    }

    private static String folded(String name) {
        return name.toLowerCase(Locale.ROOT);
    }

    /** The steps of a set, each with its pattern where that is found. */
    public List<Place> of(List<SetStep> steps) {
        List<Place> found = new ArrayList<>();
        steps.forEach(step -> found.add(of(step)));
        return List.copyOf(found);
    }

    /** All patterns of a shelf in its order. */
    public static List<Place> all(Shelf.Listing listing) {
        return on(listing)
                .of(
                        listing.kept().stream()
                                .filter(kept -> kept.document() instanceof PatternDocument)
                                .map(kept -> SetStep.of(kept, 1))
                                .toList());
    }

    private Place of(SetStep step) {
        return step.what() instanceof SetStep.OfShelf shelf
                ? of(step, shelf)
                : new Place(
                        step,
                        Optional.empty(),
                        step.what() instanceof SetStep.Held held
                                ? Optional.of(held.pattern())
                                : Optional.empty(),
                        Optional.empty(),
                        Optional.empty());
    }

    private Place of(SetStep step, SetStep.OfShelf said) {
        Optional<Kept> there = Optional.ofNullable(byId.get(said.id()));
        boolean same =
                there.filter(k -> k.document().name().equalsIgnoreCase(said.name())).isPresent();
        Optional<Kept> found =
                same ? there : Optional.ofNullable(byName.get(folded(said.name()))).or(() -> there);
        return new Place(
                step,
                found.map(Kept::id),
                found.map(kept -> (PatternDocument) kept.document()),
                found.filter(kept -> !kept.document().name().equalsIgnoreCase(said.name()))
                        .map(kept -> said.name()),
                found.isPresent() ? Optional.empty() : Optional.ofNullable(unread.get(said.id())));
    }
}
