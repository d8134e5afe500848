package deferent.studio;

import static deferent.studio.AskKey.keys;

import deferent.motion.pairing.HandLimits;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Size;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.MotionWords;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import deferent.record.PatternDocument;
import deferent.record.PatternJson;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import tools.jackson.databind.JsonNode;

/**
 * What a question is about: a pattern, as it stands after the changes asked for, and how it is
 * said.
 *
 * @param document the pattern; its phrase is the one that would say it now, if any
 * @param said in words, always
 */
record Matter(PatternDocument document, String said) {
    private static final int MOST_CHANGES = 64;
    private static final int MOST_NAME = 120;

    static final AskKey<String> PHRASE = AskKey.text("phrase", "a pattern in trade words");
    static final AskKey<JsonNode> PATTERN =
            AskKey.tree("pattern", "a pattern document", AskKey.schema("object"));

    private static final AskKey<Double> STATURE =
            AskKey.number("stature_m", "how tall", 1.0, 2.5, "m");
    private static final AskKey<Double> ARM =
            AskKey.number("arm_m", "from shoulder to grip", 0.3, 1.2, "m");
    private static final AskKey<Double> SHOULDERS =
            AskKey.number("shoulder_width_m", "from shoulder to shoulder", 0.2, 0.8, "m");
    private static final AskKey<Double> HAND_SPEED =
            AskKey.number(
                    "hand_speed_m_per_s", "what a hand goes at most", 0, HandLimits.FASTEST, "m/s");
    private static final AskKey<Double> HAND_ACCELERATION =
            AskKey.number(
                    "hand_acceleration_m_per_s2",
                    "what it quickens by at most",
                    0,
                    HandLimits.QUICKEST,
                    "m/s²");
    private static final AskKey<Double> HAND_LEAVE =
            AskKey.number(
                    "hand_leave_m",
                    "how far it may be from where its ideal is",
                    0,
                    HandLimits.FARTHEST,
                    "m");
    private static final AskKey<Question> PERFORMER =
            AskKey.object(
                    "performer",
                    "in the place of the document's",
                    keys(STATURE, ARM, SHOULDERS, HAND_SPEED, HAND_ACCELERATION, HAND_LEAVE));

    private static final AskKey<Double> HEAD_MASS =
            AskKey.number("head_mass_kg", "a head's mass", 0, 5, "kg");
    private static final AskKey<Double> HEAD_DIAMETER =
            AskKey.number("head_diameter_m", "a head's diameter", 0, 0.5, "m");
    private static final AskKey<Double> CORD_MASS =
            AskKey.number("cord_kg_per_m", "a cord's mass a metre", 0, 1, "kg/m");
    private static final AskKey<Boolean> AIR = AskKey.yes("air", "whether air drags");
    private static final AskKey<Kit.Heads> HEADS =
            AskKey.one("heads", "what the heads are made of", Kit.Heads.class);
    private static final AskKey<Question> KIT =
            AskKey.object(
                    "kit",
                    "in the place of the document's; what is unsaid is usual",
                    keys(HEAD_MASS, HEAD_DIAMETER, CORD_MASS, AIR, HEADS));

    private static final AskKey<String> SET = AskKey.text("set", "a size by its key");
    private static final AskKey<String> GRAB = AskKey.text("grab", "a handle by its key");
    private static final AskKey<Change.Key> DO =
            AskKey.one("do", "what one key of the keyboard does", Change.Key.class);
    private static final AskKey<Double> TO_SIZE =
            AskKey.numberOrNull("to", "the size; null unsays it");
    private static final AskKey<Vector3D> TO_POINT =
            AskKey.point("to", "where the handle is dragged to");
    private static final AskKey<Vector3D> GRABBED =
            AskKey.point("from", "where the handle was grabbed");
    private static final AskKey<Double> TIME =
            AskKey.number("time_s", "what the clock shows", -1e6, 1e6, "s");
    private static final AskKey<String> TYPED_IN =
            AskKey.word("typed_in", "the unit a range is told in", List.of("m", "cm"));
    private static final AskKey<List<Question>> CHANGE =
            AskKey.objects(
                    "change",
                    "one after another, each by set, grab or do",
                    MOST_CHANGES,
                    List.of(
                            keys(SET.must(), TO_SIZE.must(), TYPED_IN),
                            keys(GRAB.must(), TO_POINT.must(), GRABBED, TIME),
                            keys(DO.must())));

    private static final List<AskKey<?>> CHANGED = keys(PERFORMER, KIT, CHANGE);

    /** A pattern, said or written down. */
    static final List<AskKey<?>> KEYS =
            keys(keys(PHRASE.orAnother(), PATTERN.orAnother()), CHANGED);

    /** A pattern that may be left out. */
    static final List<AskKey<?>> MAYBE = keys(keys(PHRASE, PATTERN), CHANGED);

    /** A pattern in the place of which something else may stand. */
    static List<AskKey<?>> or(AskKey<?>... others) {
        return keys(KEYS, Stream.of(others).<AskKey<?>>map(AskKey::orAnother).toList());
    }

    Pairing pairing() {
        return document.pairing();
    }

    /** Reads "phrase" or "pattern", "performer", "kit" and "change". */
    static Matter of(Question asked, Lexicon lexicon) {
        Optional<String> phrase = asked.maybe(PHRASE);
        if (phrase.isPresent() && asked.has(PATTERN)) {
            throw new BadRequest(400, "are both there", "phrase and pattern", "give one of them");
        }
        PatternDocument document;
        if (phrase.isPresent()) {
            document =
                    PatternDocument.of(
                            "phrase",
                            Phrase.parse(phrase.get(), lexicon).pairing(),
                            Performer.USUAL);
        } else {
            document = PatternJson.readPattern(asked.get(PATTERN), lexicon);
        }
        Optional<Performer> performer = asked.maybe(PERFORMER).map(Matter::performer);
        if (performer.isPresent()) {
            document = document.withPerformer(performer.get());
        }
        Optional<Kit> kit = asked.maybe(KIT).map(Matter::kit);
        if (kit.isPresent()) {
            document = document.withKit(kit.get());
        }
        Pairing pairing = document.pairing();
        for (Change change : changes(asked)) {
            pairing = change.applied(pairing);
        }
        String said =
                MotionWords.of(pairing, Side.LEFT, lexicon)
                        + " vs "
                        + MotionWords.of(pairing, Side.RIGHT, lexicon);
        document = document.saying(pairing, lexicon);
        if (phrase.isPresent()) {
            document = document.withName(cut(document.phrase().orElse(said)));
        }
        return new Matter(document, said);
    }

    private static String cut(String name) {
        return name.length() <= MOST_NAME ? name : name.substring(0, MOST_NAME - 1) + "…";
    }

    private static Performer performer(Question asked) {
        return new Performer(
                asked.maybeNumber(STATURE),
                asked.maybeNumber(ARM),
                asked.maybeNumber(SHOULDERS),
                hands(asked));
    }

    private static HandLimits hands(Question asked) {
        HandLimits usual = HandLimits.USUAL;
        HandLimits hands =
                usual.withPace(
                        asked.or(HAND_SPEED, usual.speed()),
                        asked.or(HAND_ACCELERATION, usual.acceleration()));
        return asked.maybe(HAND_LEAVE).map(hands::withLeave).orElse(hands);
    }

    private static Kit kit(Question asked) {
        return new Kit(
                asked.or(HEAD_MASS, Kit.USUAL.headMass()),
                asked.or(HEAD_DIAMETER, Kit.USUAL.headDiameter()),
                asked.or(CORD_MASS, Kit.USUAL.cordMass()),
                asked.or(AIR, Kit.USUAL.air()),
                asked.or(HEADS, Kit.USUAL.heads()));
    }

    private static List<Change> changes(Question asked) {
        return asked.or(CHANGE, List.of()).stream().map(Matter::change).toList();
    }

    private static Change change(Question asked) {
        if (asked.knows(SET)) {
            Size size = Size.named(asked.get(SET));
            if (asked.isNull(TO_SIZE)) {
                return new Change.Set(size, OptionalDouble.empty(), "m");
            }
            // The size itself knows its range, and says it in the unit that was typed.
            double to = asked.get(TO_SIZE);
            String unit = asked.or(TYPED_IN, "m");
            return new Change.Set(size, OptionalDouble.of(SizeRow.fromEdge(size, to)), unit);
        }
        if (asked.knows(GRAB)) {
            return new Change.Dragged(
                    Grab.of(
                            asked.get(GRAB),
                            asked.get(TO_POINT),
                            asked.maybe(GRABBED),
                            asked.or(TIME, 0.0)));
        }
        return asked.get(DO);
    }
}
