package deferent.record;

import deferent.motion.pairing.MirrorImage;
import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import java.util.List;
import java.util.Optional;

/**
 * A pairing with sizes, tempo and performer, as kept on the shelf.
 *
 * @param name how the user calls it
 * @param note free text, may be empty
 * @param author whose it is, or that it is invented
 * @param tags words to find it by
 * @param phrase the pairing as it was said; a remark, the pairing itself is what counts
 * @param pairing the two motions, written out
 * @param performer whose body reach and room are read for
 * @param kit the heads and cords spun
 * @param extras what other programs keep in it
 */
public record PatternDocument(
        String name,
        String note,
        Optional<String> author,
        List<String> tags,
        Optional<String> phrase,
        Pairing pairing,
        Performer performer,
        Kit kit,
        Extras extras)
        implements Document {
    public PatternDocument {
        Wording.line(name, Wording.NAME, "name");
        Wording.note(note);
        author.ifPresent(a -> Wording.line(a, Wording.NAME, "author"));
        tags = Wording.tags(tags);
        phrase.ifPresent(p -> Wording.line(p, Wording.PHRASE, "phrase"));
    }

    @Override
    public String kind() {
        return "pattern";
    }

    public static PatternDocument of(String name, Pairing pairing, Performer performer) {
        return new PatternDocument(
                name,
                "",
                Optional.empty(),
                List.of(),
                Optional.empty(),
                pairing,
                performer,
                Kit.USUAL,
                Extras.NONE);
    }

    /** Those of two hands among documents; a motion of one hand is no pattern, nor is a set. */
    public static List<PatternDocument> among(List<? extends Document> documents) {
        return documents.stream()
                .filter(PatternDocument.class::isInstance)
                .map(PatternDocument.class::cast)
                .toList();
    }

    public PatternDocument withName(String other) {
        return new PatternDocument(
                other, note, author, tags, phrase, pairing, performer, kit, extras);
    }

    public PatternDocument withNote(String other) {
        return new PatternDocument(
                name, other, author, tags, phrase, pairing, performer, kit, extras);
    }

    public PatternDocument withPhrase(Optional<String> other) {
        return new PatternDocument(
                name, note, author, tags, other, pairing, performer, kit, extras);
    }

    public PatternDocument withPairing(Pairing other) {
        return new PatternDocument(name, note, author, tags, phrase, other, performer, kit, extras);
    }

    /**
     * With another pairing and the phrase that says it, where there is one short enough to keep.
     */
    public PatternDocument saying(Pairing other, Lexicon lexicon) {
        return withPairing(other)
                .withPhrase(Phrase.write(other, lexicon).filter(p -> p.length() <= Wording.PHRASE));
    }

    /**
     * The left-handed version, under the same name and with the same sizes: each hand does what the
     * other did, mirrored.
     */
    public PatternDocument mirrored(Lexicon lexicon) {
        return saying(MirrorImage.of(pairing), lexicon);
    }

    public PatternDocument withPerformer(Performer other) {
        return new PatternDocument(name, note, author, tags, phrase, pairing, other, kit, extras);
    }

    public PatternDocument withKit(Kit other) {
        return new PatternDocument(
                name, note, author, tags, phrase, pairing, performer, other, extras);
    }

    /** With other keys of other programs. */
    PatternDocument withExtras(Extras other) {
        return new PatternDocument(
                name, note, author, tags, phrase, pairing, performer, kit, other);
    }

    /**
     * Where the phrase says other sizes than the pairing has, both of them and what counts; a
     * phrase that leaves a size unsaid, or cannot be read with these words, says nothing against
     * it.
     */
    public Optional<String> disagreement(Lexicon lexicon) {
        return phrase.flatMap(said -> SaidAndSized.disagreement(said, pairing, lexicon));
    }
}
