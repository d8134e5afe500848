package deferent.studio;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.Size;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.MotionWords;
import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import deferent.record.PatternDocument;
import deferent.record.PatternJson;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

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

    Pairing pairing() {
        return document.pairing();
    }

    /** Reads "phrase" or "pattern", "performer", "kit" and "change". */
    static Matter of(Question asked, Lexicon lexicon) {
        Optional<String> phrase = asked.maybeText("phrase");
        if (phrase.isPresent() == asked.has("pattern")) {
            throw new BadRequest(
                    400,
                    phrase.isPresent() ? "are both there" : "are both missing",
                    "phrase and pattern",
                    "give one of them");
        }
        PatternDocument document;
        if (phrase.isPresent()) {
            document =
                    PatternDocument.of(
                            "phrase",
                            Phrase.parse(phrase.get(), lexicon).pairing(),
                            Performer.USUAL);
        } else {
            document = PatternJson.readPattern(asked.node("pattern"), lexicon);
        }
        Optional<Performer> performer = asked.maybeObject("performer").map(Matter::performer);
        if (performer.isPresent()) {
            document = document.withPerformer(performer.get());
        }
        Optional<Kit> kit = asked.maybeObject("kit").map(Matter::kit);
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
        Performer performer =
                new Performer(
                        asked.maybeNumber("stature_m", 1.0, 2.5),
                        asked.maybeNumber("arm_m", 0.3, 1.2),
                        asked.maybeNumber("shoulder_width_m", 0.2, 0.8));
        asked.done();
        return performer;
    }

    private static Kit kit(Question asked) {
        Kit kit =
                new Kit(
                        asked.maybeNumber("head_mass_kg", 0, 5).orElse(Kit.USUAL.headMass()),
                        asked.maybeNumber("head_diameter_m", 0, 0.5)
                                .orElse(Kit.USUAL.headDiameter()),
                        asked.maybeNumber("cord_kg_per_m", 0, 1).orElse(Kit.USUAL.cordMass()),
                        asked.yes("air", Kit.USUAL.air()));
        asked.done();
        return kit;
    }

    private static List<Change> changes(Question asked) {
        List<Change> changes = new ArrayList<>();
        for (Question change : asked.objects("change", MOST_CHANGES)) {
            changes.add(change(change));
            change.done();
        }
        return changes;
    }

    private static Change change(Question asked) {
        if (asked.has("set")) {
            Size size = Size.named(asked.text("set"));
            if (asked.isNull("to")) {
                return new Change.Set(size, OptionalDouble.empty(), "m");
            }
            // The size itself knows its range, and says it in the unit that was typed.
            double to = asked.number("to", -Double.MAX_VALUE, Double.MAX_VALUE);
            String unit = asked.word("typed_in", List.of("m", "cm"));
            return new Change.Set(size, OptionalDouble.of(SizeRow.fromEdge(size, to)), unit);
        }
        if (asked.has("grab")) {
            return new Change.Dragged(
                    Grab.of(
                            asked.text("grab"),
                            asked.point("to"),
                            asked.maybePoint("from"),
                            asked.maybeNumber("time_s", -1e6, 1e6).orElse(0)));
        }
        if (asked.has("do")) {
            return Change.Key.named(asked.text("do"));
        }
        throw new BadRequest(
                400, "changes nothing", asked.where("set"), "say \"set\", \"grab\" or \"do\"");
    }
}
