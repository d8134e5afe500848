package deferent.studio;

import static deferent.studio.AskKey.keys;

import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.motion.song.Beats;
import deferent.reading.body.Performer;
import deferent.record.Kept;
import deferent.record.PatternDocument;
import deferent.record.PatternJson;
import deferent.record.SetDocument;
import deferent.record.SetPlaces;
import deferent.record.SetSong;
import deferent.record.SetStep;
import deferent.record.Shelf;
import deferent.record.SongPlace;
import deferent.search.set.BodyTurn;
import deferent.search.transition.Grade;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import tools.jackson.databind.JsonNode;

/**
 * Which set a question is about: one of the shelf, or patterns in order.
 *
 * @param name what it is called
 * @param places its steps with their patterns
 * @param song to which it is spun
 * @param hardest the hardest transition to take
 * @param round whether the last is to lead into the first
 */
record SetAsk(
        String name,
        List<SetPlaces.Place> places,
        Optional<SongPlace> song,
        Grade hardest,
        boolean round) {
    private static final AskKey<String> NAME = AskKey.text("name", "what it is called");
    private static final AskKey<String> SAVED =
            AskKey.text("saved", "a set of the shelf, by its id or name");
    private static final AskKey<String> ID = AskKey.text("id", "a pattern of the shelf, by its id");
    private static final AskKey<String> CALLED =
            AskKey.text("name", "what the pattern was called when it was put in");
    private static final AskKey<JsonNode> PATTERN =
            AskKey.tree("pattern", "a pattern document", AskKey.schema("object"));
    private static final AskKey<String> PHRASE = AskKey.text("phrase", "a pattern in trade words");
    private static final AskKey<Integer> COUNTS =
            AskKey.whole(
                    "counts",
                    "for how many counts, turns of the poi that turns more often",
                    1,
                    SetStep.MOST_COUNTS);
    private static final AskKey<Integer> TURN_DEG =
            AskKey.whole(
                    "turn_deg",
                    "how far: 90 or 180 to the performer's left, below 0 to the right",
                    -180,
                    180);
    private static final AskKey<Integer> ON_COUNT =
            AskKey.whole(
                    "count", "on which of the pattern's counts it begins", 1, SetStep.MOST_COUNTS);
    private static final AskKey<Question> TURN =
            AskKey.object("turn", "a turn of the body", keys(TURN_DEG.must(), ON_COUNT.must()));
    private static final AskKey<Integer> BEATS =
            AskKey.whole(
                    "beats_a_cycle",
                    "how many beats of the song a cycle lasts; unsaid they are chosen",
                    1,
                    SetStep.MOST_BEATS);
    private static final AskKey<String> SONG_ID =
            AskKey.text("id", "a song of the shelf, by its id");
    private static final AskKey<Integer> FROM_BEAT =
            AskKey.whole(
                    "from_beat", "the beat on which the set begins, from 0", 0, Beats.MOST - 1);
    private static final AskKey<Question> SONG =
            AskKey.object(
                    "song",
                    "the song that it is spun to",
                    keys(SONG_ID.must(), CALLED.must(), FROM_BEAT));
    private static final AskKey<List<Question>> STEPS =
            AskKey.objects(
                    "steps",
                    "patterns in order",
                    SetDocument.MOST_STEPS,
                    List.of(
                            keys(ID.must(), CALLED.must(), COUNTS.must(), TURN, BEATS),
                            keys(PATTERN.must(), COUNTS.must(), TURN, BEATS),
                            keys(PHRASE.must(), COUNTS.must(), TURN, BEATS)));
    static final AskKey<Grade> HARDEST =
            AskKey.one("hardest", "the hardest transition to take", Grade.class);
    private static final AskKey<Boolean> ROUND =
            AskKey.yes("round", "whether the last leads back into the first");

    static final List<AskKey<?>> KEYS =
            keys(NAME, SAVED.orAnother(), STEPS.orAnother(), SONG, HARDEST, ROUND);

    /** Reads "steps" or "saved". */
    static SetAsk of(Question asked, Shelf shelf, Lexicon lexicon) {
        Shelf.Listing listing = shelf.look();
        Optional<String> saved = asked.maybe(SAVED);
        SetDocument set =
                saved.isPresent()
                        ? saved(saved.get(), listing)
                        : SetDocument.of(
                                asked.maybe(NAME).filter(n -> !n.isBlank()).orElse("The set"),
                                asked.get(STEPS).stream().map(s -> step(s, lexicon)).toList());
        return new SetAsk(
                set.name(),
                SetPlaces.on(listing).of(set.steps()),
                asked.maybe(SONG)
                        .map(SetAsk::song)
                        .or(set::song)
                        .map(song -> SongPlace.on(listing, song)),
                asked.or(HARDEST, set.hardest()),
                asked.or(ROUND, false));
    }

    private static SetSong song(Question asked) {
        return new SetSong(asked.get(SONG_ID), asked.get(CALLED), asked.or(FROM_BEAT, 0));
    }

    private static SetDocument saved(String id, Shelf.Listing listing) {
        return listing.kept().stream()
                .filter(kept -> kept.id().equals(id) || kept.document().name().equals(id))
                .map(Kept::document)
                .filter(SetDocument.class::isInstance)
                .map(SetDocument.class::cast)
                .findFirst()
                .orElseThrow(
                        () ->
                                new BadRequest(
                                        422,
                                        "is no set on the shelf",
                                        "\"" + id + "\"",
                                        "give one of the shelf's sets"));
    }

    private static SetStep step(Question asked, Lexicon lexicon) {
        SetStep unturned = unturned(asked, lexicon);
        SetStep step =
                asked.maybe(BEATS)
                        .map(beats -> unturned.with(OptionalInt.of(beats)))
                        .orElse(unturned);
        return asked.maybe(TURN).map(turn -> step.with(turn(turn))).orElse(step);
    }

    private static BodyTurn turn(Question asked) {
        int degrees = asked.get(TURN_DEG);
        if (degrees % 90 != 0 || degrees == 0) {
            throw new BadRequest(
                    422,
                    "is " + degrees + "°",
                    "a turn of the body",
                    "give 90 or 180 to the left, or -90 or -180 to the right");
        }
        return new BodyTurn(degrees / 90, asked.get(ON_COUNT));
    }

    private static SetStep unturned(Question asked, Lexicon lexicon) {
        int counts = asked.get(COUNTS);
        if (asked.knows(ID)) {
            return new SetStep(new SetStep.OfShelf(asked.get(ID), asked.get(CALLED)), counts);
        }
        if (asked.knows(PATTERN)) {
            return SetStep.of(PatternJson.readPattern(asked.get(PATTERN), lexicon), counts);
        }
        String phrase = asked.get(PHRASE);
        return SetStep.of(
                PatternDocument.of(phrase, Phrase.parse(phrase, lexicon).pairing(), Performer.USUAL)
                        .withPhrase(Optional.of(phrase)),
                counts);
    }
}
